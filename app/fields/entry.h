#pragma once

#include "core/plan/number_text.h"

#include <QString>

#include <optional>

namespace stemwright {

// What a maker types, in fields and in cells of tables alike: read with the plan's units and either decimal
// mark, refused with a sentence, never mended silently.

/// What a text has come to: a value, or the sentence that says why it is none.
template <class T> struct Entry {
    std::optional<T> value;
    QString refusal;
};

/// The decimal mark of the maker's language.
DecimalMark decimalMark();

/// Exactly what is kept, ready to be edited: "6.5 mm", "6 1/4 in".
QString entryText(Length length, LengthUnit unit);
QString entryText(double value, int decimals);

Entry<Length> readLength(const QString& text, LengthUnit unit, Length least, Length most);
Entry<double> readNumber(const QString& text, double least, double most, int decimals);
/// A whole number.
Entry<int> readCount(const QString& text, int least, int most);

/// "AWG 28", "28 swg", "steel 18"; a bare number is of `usual`. An empty text is no number, and fits.
Entry<std::optional<GaugeNumber>> readGauge(const QString& text, GaugeSystem usual);

/// A wire's thickness, in millimetres whatever the rest is measured in. A number that can only be that of a
/// gauge is refused with what it would be in each system.
Entry<Length> readWire(const QString& text);

/// Empty where the text fits into a name of a plan.
QString nameRefusal(const QString& text);

} // namespace stemwright

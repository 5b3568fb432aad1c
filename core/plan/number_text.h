#pragma once

#include "core/plan/plan.h"

#include <optional>
#include <string>
#include <string_view>

namespace stemwright {

// Numbers and lengths as makers type them and tables of theirs hold them. All text is UTF-8.

/// The mark that the maker's language puts before decimals. Both marks are always understood; this decides only
/// what cannot be told from the text itself: "1,250" is 1250 where the point is the decimal mark and 1.25 where
/// the comma is.
enum class DecimalMark { point, comma };

/// A plain number: digits with one decimal mark, groups of three set off by the other mark or by spaces, a sign
/// in front, fractions such as "6 1/4", "3/8" and "6½". Nothing for anything else: no exponents, no words, no
/// NaN, nothing that does not fit a finite number, no empty text.
std::optional<double> parseNumber(std::string_view text, DecimalMark mark);

/// A number with a unit behind it: mm, cm, m, in (also inch, inches, ″ and "), ft (also feet, ′ and '), the
/// last with inches following ("2 ft 3 1/2 in"); a bare number is in `unit`. Nothing for anything else.
std::optional<Length> parseLength(std::string_view text, LengthUnit unit, DecimalMark mark);

/// The number with at most `decimals` decimals and none that say nothing: 6.5, not 6.50.
std::string numberText(double value, int decimals, DecimalMark mark);

/// The length as a number in `unit`, exact enough that reading it back is the same to a maker: millimetres with
/// at most three decimals; inches as whole numbers and fractions where they are whole 64ths ("6 1/4"), with at
/// most four decimals otherwise.
std::string lengthNumberText(Length length, LengthUnit unit, DecimalMark mark);

} // namespace stemwright

#pragma once

#include "core/plan/lookup.h"
#include "core/plan/plan.h"

#include <QString>

namespace stemwright {

// Figures and parts of a plan as the maker reads them: sensible digits, the plan's units, the locale's marks.

/// A size: whole millimetres from 20 mm up, one decimal below; inches with fractions to 1/16.
QString sizeText(Length length, const Units& units);
/// A length to cut or buy: millimetres below 100 mm, centimetres below a metre, metres with two decimals below
/// 10 m and one above; inches below 3 feet, feet and inches above.
QString cutText(Length length, const Units& units);
/// A wire's thickness: millimetres with two decimals and the number it was bought by, where there is one.
QString wireText(Length diameter, const std::optional<GaugeNumber>& gauge);
/// "AWG 28".
QString gaugeText(GaugeNumber gauge);
/// "AWG", "SWG", "steel gauge".
QString systemText(GaugeSystem system);
QString metalText(Metal metal);
/// The plan's own metal by the maker's name, or the handbook's.
QString metalText(const MetalName& metal);
/// Grams with one decimal below 10 and none above; ounces likewise.
QString massText(Mass mass, const Units& units);
/// A count with the locale's group marks.
QString countText(qint64 count);
/// What is said of hours that leave out what has no time yet.
QString partlyKnownTimeText();
/// One decimal, for ΔE00.
QString driftText(double drift);
/// At most two decimals, for unevenness and fair shares.
QString shareText(double value);

QString arrangementText(Arrangement arrangement);
QString endText(LeafEnd end);
QString shapeText(PotShape shape);
QString openingText(PotOpening opening);
/// Wire, floss or tape.
QString wrapText(WrapWith with);
/// Where a leaf points: left, front, right, back.
QString sideText(Side side);
/// "side to side" or "front to back".
QString planeText(Plane plane);
/// "small leaf, Plum on frost (PF)", or "empty, waits for a small leaf".
QString slotText(const Plan& plan, const Slot& slot);
/// "Stem 3, tier 5, left", for messages and screen readers.
QString placeText(const Plan& plan, SlotRef at);
/// What a maker wrote, as part of a line: line breaks and other control characters, which a file may hold,
/// would break it or move a terminal's cursor, and become a space.
QString lineText(const QString& said);
QString lineText(const std::string& utf8);
/// Names, as lineText.
QString nameText(const Plan& plan, KindId kind);
QString nameText(const Plan& plan, MixId mix);
QString nameText(const Plan& plan, StemId stem);

inline QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

} // namespace stemwright

#pragma once

#include <QString>
#include <QStringList>

namespace stemwright {

/// The cautions of the craft: the one home of their words. Sheets print those that belong to them.
enum class Caution { cutWire, sharpEnds, smallParts, oldGlass, plated, tallPlant, wetClay, estimate };

/// One sentence or two, brief enough for paper.
QString cautionText(Caution caution);
/// All of them, in the order of the work.
QStringList cautionTexts();
/// What stands above them: local rules and licensed practice come first.
QString cautionPreface();

} // namespace stemwright

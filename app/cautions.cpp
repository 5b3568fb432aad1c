#include "app/cautions.h"

#include <QCoreApplication>

namespace stemwright {

namespace {
QString tr(const char* source) {
    return QCoreApplication::translate("Cautions", source);
}
} // namespace

QString cautionText(Caution caution) {
    switch (caution) {
    // Basis: Canadian Centre for Occupational Health and Safety, hand-tool pages; holding both ends is common
    // practice, no source.
    case Caution::cutWire:
        return tr("Cut wire ends fly: wear eye protection and hold both ends.");
    // Common practice, no source.
    case Caution::sharpEnds:
        return tr("Wire ends are sharp: turn them in or bury them.");
    // Basis: 16 CFR 1501.4, the small-parts cylinder, which every seed bead fits.
    case Caution::smallParts:
        return tr("Beads are small parts: keep them from children under three and from pets.");
    // Basis: REACH annex XVII, entries 23 and 63, as a yardstick; no study of seed beads is known.
    case Caution::oldGlass:
        return tr(
            "Old or unknown glass and painted beads can hold lead or cadmium: do not mouth, grind or dry-sand "
            "them, and wash your hands.");
    // Basis: REACH annex XVII, entry 27.
    case Caution::plated:
        return tr("Plated wire and findings can release nickel, which irritates some skins.");
    // Textbook statics.
    case Caution::tallPlant:
        return tr("A tall plant in a light pot falls: weigh it down and keep it from the edge.");
    // Common practice, no source; setting plaster from memory.
    case Caution::wetClay:
        return tr(
            "Bare steel rusts in wet clay or plaster; plaster sets hot, so never cast it on skin, and its dust "
            "irritates.");
    // The program's own.
    case Caution::estimate:
        return tr("The figures are a planner's, not a guarantee: try one stem first.");
    }
    return {};
}

QStringList cautionTexts() {
    QStringList all;
    for (const Caution caution : {Caution::cutWire, Caution::sharpEnds, Caution::smallParts, Caution::oldGlass,
                                  Caution::plated, Caution::tallPlant, Caution::wetClay, Caution::estimate})
        all << cautionText(caution);
    return all;
}

QString cautionPreface() {
    return tr("Where a rule of the place or a licensed trade applies, that comes first.");
}

} // namespace stemwright

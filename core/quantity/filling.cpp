#include "core/quantity/filling.h"

namespace stemwright {

double densityOf(Filling filling) {
    switch (filling) {
    case Filling::plasterSet:
        return 1570; // freshly cast, at 65 to 74 % water: 1550 to 1600 (recomputed from the dry values)
    case Filling::plasterDry:
        return 1110; // at 70 % water: 1106 (published: a maker's table on a studio's page)
    case Filling::airDryClayWet:
        return 1800; // 1700 to 1900 (from memory, no source)
    case Filling::airDryClayDry:
        return 1450; // 1300 to 1600 (from memory, no source)
    case Filling::sand:
    case Filling::gravel:
        return 1600; // in bulk, 1520 to 1680 (published: extract of a concrete text)
    case Filling::pebbles:
        break;
    }
    return 1600; // as gravel
}

} // namespace stemwright

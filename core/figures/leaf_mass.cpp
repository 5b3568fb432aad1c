#include "core/figures/leaf_mass.h"

#include "core/quantity/bead.h"

namespace stemwright {

Mass leafMass(const KindForm& kind) {
    const auto size = beadSizeNamed(kind.beadSize);
    return (size ? kind.beads * size->mass : Mass{}) + massOfWire(kind.metal, kind.wireDiameter, kind.wire);
}

} // namespace stemwright

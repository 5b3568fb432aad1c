#include "core/figures/leaf_mass.h"

#include "core/plan/lookup.h"

namespace stemwright {

Mass leafMass(const Plan& plan, const KindForm& kind) {
    const auto size = beadSizeNamed(plan, kind.beadSize);
    return (size ? kind.beads * size->mass : Mass{}) +
           massOfWire(figuresOf(plan, metalNameOf(kind)), kind.wireDiameter, kind.wire);
}

bool beadsUnweighed(const Plan& plan, const KindForm& kind) {
    const auto size = beadSizeNamed(plan, kind.beadSize);
    return kind.beads > 0 && (!size || size->mass <= Mass{});
}

} // namespace stemwright

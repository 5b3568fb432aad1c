#pragma once

#include "core/figures/bundle.h"
#include "core/figures/height.h"
#include "core/figures/wrap.h"
#include "core/plan/stem.h"

#include <vector>

namespace stemwright {

/// Fills `out` with the stretches of a stem that a binding goes around: one below each tier, the last of them
/// the tail, or the tail alone where there is no tier. Each is as thick as the wires of all leaves above it and
/// the core. `addLeaf(bundle, tier, slot)` adds the wires of the leaf in a filled slot of the tier with that
/// number. Gives the bundle at the foot.
template <class AddLeaf>
Bundle stretchesOf(const Stem& stem, std::vector<Stretch>& out, const AddLeaf& addLeaf) {
    out.clear();
    Bundle bundle;
    for (std::size_t i = 0; i < stem.tiers.size(); ++i) {
        for (const Slot& slot : stem.tiers[i].slots)
            if (slot.filled())
                addLeaf(bundle, i, slot);
        const bool last = i + 1 == stem.tiers.size();
        out.push_back({last ? stem.tail : spacingBelow(stem, stem.tiers[i]), bundle.diameter(stem.core)});
    }
    if (stem.tiers.empty())
        out.push_back({stem.tail, bundle.diameter(stem.core)});
    return bundle;
}

} // namespace stemwright

#pragma once

#include "core/plan/plan.h"

#include <vector>

namespace stemwright {

// The order of work at the bench: how one stem is bound from tip to base, and how much of each wrap is used up
// by then. Common practice, no source; lengths by core/figures/wrap.h.

enum class BindingStepCode {
    cut,    ///< cut the wraps, the core wire and the stake
    begin,  ///< lay the start tail in along the first leaves' wires
    tier,   ///< bind a tier's leaves on, and wrap down to the next; the last one's wrap is the tail's step
    stake,  ///< lay the stake along the tail
    tail,   ///< wrap the tail down to the foot
    finish, ///< knot or twist off, and cut off what the hand held
    cover,  ///< wind the next layer over the whole stem
};

struct BindingStep {
    BindingStepCode code{};
    int tier = -1; ///< place in the stem's tiers, for `tier`
    /// How the stem is turned in the hand before this tier, counter-clockwise seen from above: in [0, 360).
    Angle turn;
    Length along;         ///< the stretch of stem that is wrapped in this step
    std::size_t wrap = 0; ///< the layer that is wound, for `begin`, `tier`, `tail`, `finish` and `cover`
    /// What has been used of each wrap when the step is done, by wrap; ends at StemFigures::wraps' `used`.
    std::vector<Length> used;
};

/// The steps of a stem. The first layer binds the tiers, each further one covers the stem afterwards. A stem
/// without leaves wires takes no wrap and has steps for its tiers alone; one without tiers and core has none.
std::vector<BindingStep> bindingSteps(const Plan& plan, const Stem& stem);

/// Whether any tier of the stem is bound: the steps before the first tier stand as done then.
bool isBegun(const Stem& stem);

/// Whether what is bound around a stem and what stiffens it is still on its spool: every wrap, the core and the
/// stake are cut in the first step (BindingStepCode::cut), whatever is done with them later. False for a stem
/// that has no steps.
bool isStillToCut(const Stem& stem);

/// How far the work on the stem is: the place in `steps`, which must be the stem's own, of the first that is
/// not done; their number when all are. A tier's step is done when the tier is bound. Of the others so many are
/// done as Stem::bench counts, those before the first tier also once any tier is bound, and none after a tier
/// that is not.
std::size_t stepNow(const Stem& stem, const std::vector<BindingStep>& steps);

} // namespace stemwright

#pragma once

#include "core/plan/edit.h"

#include <vector>

namespace stemwright {

// A tier that is bound is a thing in her hand, and the plan only its record: whoever changes the plan there
// asks her first.

struct BoundTier {
    StemId stem;
    int tier = 0;
    friend bool operator==(const BoundTier&, const BoundTier&) = default;
};

/// The tiers bound in `before` that `after` has otherwise: another leaf, another turn, another place from the
/// tip, another spacing between two that are bound, or not at all. A mark alone that is taken back is none.
std::vector<BoundTier> boundTouched(const Plan& before, const Plan& after);
/// The same of an edit that is not made yet: none for a step of the bench itself, and for an edit that cannot
/// be.
std::vector<BoundTier> boundTouched(const Plan& plan, const Edit& edit);

/// What makes `after` say that those tiers, and all below them, are to be bound again: marks taken back on
/// every stem from the first tier that is no longer as it was bound, and the steps that followed the last tier.
std::vector<Edit> unbound(const Plan& before, const Plan& after);

} // namespace stemwright

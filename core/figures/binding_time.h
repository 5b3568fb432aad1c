#pragma once

#include "core/plan/plan.h"

namespace stemwright {

/// What is left to bind, and how long a tier takes.
struct BindingTime {
    int tiersToBind = 0;
    /// The mean of the bound tiers that were timed, else Binding::minutesPerTier; 0 where neither is there.
    double minutesPerTier = 0;

    double minutesLeft() const { return tiersToBind * minutesPerTier; }
};
BindingTime bindingTime(const Plan& plan);

} // namespace stemwright

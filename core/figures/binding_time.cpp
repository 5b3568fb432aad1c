#include "core/figures/binding_time.h"

namespace stemwright {

BindingTime bindingTime(const Plan& plan) {
    BindingTime out;
    double spent = 0;
    int timed = 0;
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers) {
            out.tiersToBind += !tier.progress.bound;
            if (tier.progress.bound && tier.progress.minutes > 0) {
                spent += tier.progress.minutes;
                ++timed;
            }
        }
    out.minutesPerTier = timed > 0 ? spent / timed : plan.binding.minutesPerTier;
    return out;
}

} // namespace stemwright

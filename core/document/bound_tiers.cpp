#include "core/document/bound_tiers.h"

#include "core/document/bench.h"
#include "core/figures/binding_steps.h"
#include "core/figures/height.h"

#include <algorithm>

namespace stemwright {

namespace {

bool alike(const Tier& a, const Tier& b) {
    return a.turn == b.turn && std::equal(a.slots.begin(), a.slots.end(), b.slots.begin(), b.slots.end(),
                                          [](const Slot& x, const Slot& y) { return x.leaf == y.leaf; });
}

/// Whether the tier, bound in `before`, stands in `after` as it was bound.
bool stands(const Stem& before, const Stem& after, std::size_t tier) {
    if (tier >= after.tiers.size() || !alike(before.tiers[tier], after.tiers[tier]))
        return false;
    const std::size_t next = tier + 1;
    // What is wrapped down to the next bound tier is wrapped; below the last one it is still open.
    return next >= before.tiers.size() || !before.tiers[next].progress.bound || next >= after.tiers.size() ||
           spacingBelow(before, before.tiers[tier]) == spacingBelow(after, after.tiers[tier]);
}

} // namespace

std::vector<BoundTier> boundTouched(const Plan& before, const Plan& after) {
    std::vector<BoundTier> out;
    for (const Stem& stem : before.stems) {
        const Stem* now = nullptr;
        for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
            if (!stem.tiers[t].progress.bound)
                continue;
            if (!now && !(now = find(after, stem.id))) {
                out.push_back({stem.id, static_cast<int>(t)});
                break;
            }
            if (!stands(stem, *now, t))
                out.push_back({stem.id, static_cast<int>(t)});
        }
    }
    return out;
}

std::vector<BoundTier> boundTouched(const Plan& plan, const Edit& edit) {
    // Asked on every move of a drag: most plans have nothing bound, and need no copy.
    const bool anyBound = std::any_of(plan.stems.begin(), plan.stems.end(), isBegun);
    Plan after;
    if (!anyBound || std::holds_alternative<MarkTier>(edit.what) || !apply(after = plan, edit))
        return {};
    return boundTouched(plan, after);
}

std::vector<Edit> unbound(const Plan& before, const Plan& after) {
    std::vector<Edit> out;
    for (const Stem& now : after.stems) {
        const Stem* was = find(before, now.id);
        std::size_t t = 0;
        while (was && t < was->tiers.size() && was->tiers[t].progress.bound && stands(*was, now, t))
            ++t;
        bool any = false;
        for (; t < now.tiers.size(); ++t)
            if (now.tiers[t].progress.bound) {
                Progress progress = now.tiers[t].progress;
                progress.bound = false;
                out.emplace_back(MarkTier{now.id, static_cast<int>(t), std::move(progress)});
                any = true;
            }
        if (any && now.bench.steps > stepsBeforeTiers(after, now)) {
            StemForm form = now;
            form.bench.steps = stepsBeforeTiers(after, now);
            out.emplace_back(ReformStem{now.id, std::move(form)});
        }
    }
    return out;
}

} // namespace stemwright

#include "core/figures/binding_steps.h"

#include "core/figures/stretches.h"
#include "core/figures/wrap.h"

#include <algorithm>
#include <array>

namespace stemwright {

namespace {

std::vector<Stretch> stretchesOf(const Plan& plan, const Stem& stem) {
    std::vector<Stretch> out;
    stretchesOf(stem, out, [&](Bundle& bundle, std::size_t, const Slot& slot) {
        if (const Kind* kind = find(plan, slot.leaf.kind))
            bundle.add(kind->wiresAtBase, kind->wireDiameter);
    });
    return out;
}

} // namespace

std::vector<BindingStep> bindingSteps(const Plan& plan, const Stem& stem) {
    const std::vector<Stretch> stretches = stretchesOf(plan, stem);
    const std::vector<WrapFigures> whole = wrapFigures(plan.binding, stretches);
    const bool bare = stretches.back().bundle <= Length{};
    std::vector<BindingStep> steps;
    if (stem.tiers.empty() && bare)
        return steps;
    std::vector<Length> used(plan.binding.wraps.size());
    const auto add = [&](BindingStepCode code) -> BindingStep& {
        steps.push_back({code, -1, {}, {}, 0, {}});
        return steps.back();
    };
    const bool wraps = !whole.empty() && whole[0].used > Length{};
    // The turns of one stretch alone, without what is added once for the whole stem.
    const auto turns = [&](std::size_t stretch) {
        const std::array one{stretches[stretch]};
        const Length taken = wrapFigures(plan.binding, one)[0].used;
        return taken > Length{} ? taken - plan.binding.wraps[0].startTail - plan.binding.wraps[0].finish
                                : Length{};
    };

    add(BindingStepCode::cut).used = used;
    if (wraps) {
        used[0] += plan.binding.wraps[0].startTail;
        add(BindingStepCode::begin).used = used;
    }
    for (std::size_t i = 0; i < stem.tiers.size(); ++i) {
        BindingStep& step = add(BindingStepCode::tier);
        step.tier = static_cast<int>(i);
        if (i > 0)
            step.turn = wrapped(stem.tiers[i].turn - stem.tiers[i - 1].turn, degrees(360));
        if (i + 1 < stem.tiers.size()) {
            step.along = stretches[i].along;
            if (wraps)
                used[0] += turns(i);
        }
        step.used = used;
    }
    if (bare)
        return steps;
    add(BindingStepCode::stake).used = used;
    if (wraps) {
        BindingStep& tail = add(BindingStepCode::tail);
        tail.along = stem.tail;
        // Whatever rounding the parts have, the last one ends where the whole does.
        used[0] = whole[0].used - plan.binding.wraps[0].finish;
        tail.used = used;
        used[0] = whole[0].used;
        add(BindingStepCode::finish).used = used;
    }
    const Length length = lengthOfStem(stem);
    for (std::size_t w = 1; w < whole.size(); ++w) {
        used[w] = whole[w].used;
        BindingStep& cover = add(BindingStepCode::cover);
        cover.wrap = w;
        cover.along = length;
        cover.used = used;
    }
    return steps;
}

bool isBegun(const Stem& stem) {
    return std::any_of(stem.tiers.begin(), stem.tiers.end(), [](const Tier& t) { return t.progress.bound; });
}

bool isStillToCut(const Stem& stem) {
    const bool hasSteps = !stem.tiers.empty() || stem.core;
    return hasSteps && stem.bench.steps == 0 && !isBegun(stem);
}

std::size_t stepNow(const Stem& stem, const std::vector<BindingStep>& steps) {
    const bool firstAreDone = isBegun(stem);
    int others = 0;
    bool tiersBegin = false;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (steps[i].code == BindingStepCode::tier) {
            tiersBegin = true;
            if (!stem.tiers[static_cast<std::size_t>(steps[i].tier)].progress.bound)
                return i;
            continue;
        }
        const bool first = !tiersBegin && !stem.tiers.empty();
        if (++others > stem.bench.steps && !(first && firstAreDone))
            return i;
    }
    return steps.size();
}

} // namespace stemwright

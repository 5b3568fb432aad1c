#include "core/document/bench.h"

#include "core/figures/binding_steps.h"
#include "core/figures/calibration.h"
#include "core/plan/limits.h"

#include <algorithm>

namespace stemwright {

namespace {

/// The stem with so many of its steps done that bind no tier.
Edit withSteps(const Stem& stem, int steps) {
    StemForm form = stem;
    form.bench.steps = steps;
    return Batch{Deed::benchStep, {ReformStem{stem.id, std::move(form)}}};
}

/// How many of the first `end` steps bind no tier.
int othersIn(const std::vector<BindingStep>& steps, std::size_t end) {
    return static_cast<int>(
        std::count_if(steps.begin(), steps.begin() + static_cast<std::ptrdiff_t>(end),
                      [](const BindingStep& step) { return step.code != BindingStepCode::tier; }));
}

int othersBeforeTiers(const std::vector<BindingStep>& steps) {
    const auto tier = std::find_if(steps.begin(), steps.end(),
                                   [](const BindingStep& step) { return step.code == BindingStepCode::tier; });
    return tier == steps.end() ? 0 : static_cast<int>(tier - steps.begin());
}

/// The mark of a tier, and with it the steps before the tiers where they do not stand as done: what follows the
/// last tier follows this one too, whatever was done before there was a tier here.
Edit marked(const Stem& stem, const std::vector<BindingStep>& steps, MarkTier mark) {
    const int before = othersBeforeTiers(steps);
    if (stem.bench.steps == before)
        return mark;
    Batch both = std::get<Batch>(withSteps(stem, before).what);
    both.edits.emplace_back(std::move(mark));
    return both;
}

} // namespace

Length tookOf(const Stem& stem, std::size_t wrap) {
    const auto found = std::find_if(stem.took.begin(), stem.took.end(),
                                    [&](const Took& took) { return took.wrap == static_cast<int>(wrap); });
    return found == stem.took.end() ? Length{} : found->used;
}

void setTook(StemForm& form, std::size_t wrap, Length used) {
    const auto number = static_cast<int>(wrap);
    const auto at =
        std::find_if(form.took.begin(), form.took.end(), [&](const Took& took) { return took.wrap == number; });
    const bool measured = used > Length{};
    if (at == form.took.end()) {
        if (measured)
            form.took.insert(std::find_if(form.took.begin(), form.took.end(),
                                          [&](const Took& took) { return took.wrap > number; }),
                             {number, used});
    } else if (measured) {
        at->used = used; // not a new entry: this one may have keys that are not ours
    } else {
        form.took.erase(at);
    }
}

int stepsBeforeTiers(const Plan& plan, const Stem& stem) {
    return othersBeforeTiers(bindingSteps(plan, stem));
}

std::optional<Edit> stepDone(const Plan& plan, StemId id, double minutes) {
    const Stem* stem = find(plan, id);
    if (!stem)
        return std::nullopt;
    const std::vector<BindingStep> steps = bindingSteps(plan, *stem);
    const std::size_t now = stepNow(*stem, steps);
    if (now == steps.size())
        return std::nullopt;
    if (steps[now].code != BindingStepCode::tier)
        return withSteps(*stem, othersIn(steps, now + 1));
    Progress progress = stem->tiers[static_cast<std::size_t>(steps[now].tier)].progress;
    progress.bound = true;
    progress.minutes = std::min(progress.minutes + std::max(minutes, 0.0), limits::minutes);
    return marked(*stem, steps, {id, steps[now].tier, std::move(progress)});
}

std::optional<Edit> stepBack(const Plan& plan, StemId id) {
    const Stem* stem = find(plan, id);
    if (!stem)
        return std::nullopt;
    const std::vector<BindingStep> steps = bindingSteps(plan, *stem);
    const std::size_t now = stepNow(*stem, steps);
    if (now == 0)
        return std::nullopt;
    const BindingStep& last = steps[now - 1];
    if (last.code != BindingStepCode::tier)
        return withSteps(*stem, othersIn(steps, now - 1));
    Progress progress = stem->tiers[static_cast<std::size_t>(last.tier)].progress;
    progress.bound = false;
    return marked(*stem, steps, {id, last.tier, std::move(progress)});
}

MeasureTaken calibrated(const Plan& plan, StemId id, const std::vector<Length>& used) {
    Batch batch{Deed::calibrate, {}};
    std::vector<std::size_t> unfitted;
    if (const Stem* stem = find(plan, id)) {
        StemForm form = *stem;
        for (std::size_t w = 0; w < plan.binding.wraps.size(); ++w)
            setTook(form, w, w < used.size() ? used[w] : Length{});
        batch.edits.emplace_back(ReformStem{id, std::move(form)});
    }
    Binding binding = plan.binding;
    for (std::size_t w = 0; w < binding.wraps.size(); ++w) {
        std::vector<MeasuredStem> measured;
        for (const Stem& stem : plan.stems) {
            const Length took = stem.id == id ? (w < used.size() ? used[w] : Length{}) : tookOf(stem, w);
            if (took > Length{})
                measured.push_back({stem.id, took});
        }
        if (measured.empty())
            continue;
        if (const std::optional<double> overlap = fittedOverlap(plan, w, measured)) {
            binding.wraps[w].overlap = *overlap;
            binding.wraps[w].overlapMeasured = true;
        } else {
            unfitted.push_back(w);
        }
    }
    batch.edits.emplace_back(Set<Binding>{std::move(binding)});
    return {Edit(std::move(batch)), std::move(unfitted)};
}

std::vector<StemId> measuredStems(const Plan& plan) {
    std::vector<StemId> out;
    for (const Stem& stem : plan.stems)
        if (!stem.took.empty())
            out.push_back(stem.id);
    return out;
}

} // namespace stemwright

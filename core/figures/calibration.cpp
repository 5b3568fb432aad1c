#include "core/figures/calibration.h"

#include "core/figures/stem_figures.h"
#include "core/plan/limits.h"

namespace stemwright {

std::optional<double> fittedOverlap(const Plan& plan, std::size_t wrap,
                                    std::span<const MeasuredStem> measured) {
    if (wrap >= plan.binding.wraps.size() || measured.empty())
        return std::nullopt;
    Length wanted;
    for (const MeasuredStem& stem : measured) {
        if (!find(plan, stem.stem))
            return std::nullopt;
        wanted += stem.used;
    }
    // The stems stay in the plan; only its binding and pot are asked for.
    Plan form;
    form.colours = plan.colours;
    form.mixes = plan.mixes;
    form.kinds = plan.kinds;
    form.binding = plan.binding;
    form.pot = plan.pot;
    const PlanTables tables(form);
    StemReckoner reckoner;
    const auto usedWith = [&](double overlap) {
        form.binding.wraps[wrap].overlap = overlap;
        Length used;
        for (const MeasuredStem& stem : measured)
            used += reckoner(*find(plan, stem.stem), form, tables).wraps[wrap].used;
        return used;
    };
    double least = 0;
    double most = limits::mostOverlap;
    if (wanted < usedWith(least) || wanted > usedWith(most))
        return std::nullopt;
    for (int i = 0; i < 60; ++i) {
        const double middle = (least + most) / 2;
        (usedWith(middle) < wanted ? least : most) = middle;
    }
    return (least + most) / 2;
}

} // namespace stemwright

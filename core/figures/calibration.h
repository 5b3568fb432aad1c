#pragma once

#include "core/plan/plan.h"

#include <optional>
#include <span>

namespace stemwright {

/// What one bound stem really took of one layer, without what was cut off in the end.
struct MeasuredStem {
    StemId stem;
    Length used;
};

/// The overlap of a wrap (by its place in the binding) with which the stems' figures add up to what was
/// measured on them; every other stem's figure then rests on the maker's own hand. The more the turns overlap
/// the more is used, so there is one such overlap at most. Nothing where none from 0 to limits::mostOverlap
/// fits: the turns lie apart, the measure is wrong, or what was measured is no stem of the plan.
std::optional<double> fittedOverlap(const Plan& plan, std::size_t wrap, std::span<const MeasuredStem> measured);

} // namespace stemwright

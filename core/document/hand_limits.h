#pragma once

#include "core/plan/plan.h"

#include <optional>

namespace stemwright::hand {

// What a hand may not touch: nothing that is not there, no locked stem, no pinned slot. A tier that is bound
// may be touched, but she is asked first (bound_tiers.h).

/// Where the stem stands among the plan's; their number where it is not there.
int indexOf(const Plan& plan, StemId stem);

std::optional<Problem> missing(const Plan& plan, SlotRef at);
std::optional<Problem> missingGap(const Plan& plan, StemId stem, int index);

/// What forbids changing the leaf of a slot.
std::optional<Problem> barred(const Plan& plan, SlotRef at);
/// What forbids changing a stem as a whole.
std::optional<Problem> barredStem(const Plan& plan, StemId stem);
/// What forbids changing the turn or the leaves of every one of these tiers. `count` is at least 1.
std::optional<Problem> barredTiers(const Plan& plan, StemId stem, int first, int count);
/// What forbids opening a tier in a gap.
std::optional<Problem> barredGap(const Plan& plan, StemId stem, int index);

} // namespace stemwright::hand

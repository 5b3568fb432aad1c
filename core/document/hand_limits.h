#pragma once

#include "core/plan/plan.h"

#include <optional>

namespace stemwright::hand {

// What a hand may not touch: nothing that is not there, no locked stem, no pinned slot, no tier that is bound.

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
/// What forbids opening a tier in a gap: binding goes from tip to base, so nothing comes in above a bound tier.
std::optional<Problem> barredGap(const Plan& plan, StemId stem, int index);
/// What forbids taking these tiers out.
std::optional<Problem> barredTaking(const Plan& plan, StemId stem, int first, int count);

} // namespace stemwright::hand

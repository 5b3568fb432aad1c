#pragma once

#include "core/plan/plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace stemwright {

// What stands in the way of an edit, for edit.cpp: nothing where it can be made.

/// The name, or nothing where there is no such part.
const std::string& nameOf(const Plan& plan, KindId id);
const std::string& nameOf(const Plan& plan, MixId id);

Problem noStem(StemId id);
Problem noPlace(int index, std::size_t most);
std::optional<Problem> missingTier(const Plan& plan, StemId stem, int tier);
std::optional<Problem> missingSlot(const Plan& plan, SlotRef at);

/// Of taking `wanted` leaves of this sort out of the tray and into slots.
std::optional<Problem> unfit(const Plan& plan, Leaf leaf, int wanted = 1);
/// The same for all leaves of some tiers at once.
std::optional<Problem> unfit(const Plan& plan, const std::vector<Tier>& tiers);

/// What still needs the part.
std::optional<Problem> inUse(const Plan& plan, const Colour& colour);
std::optional<Problem> inUse(const Plan& plan, const Mix& mix);
std::optional<Problem> inUse(const Plan& plan, const Kind& kind);

} // namespace stemwright

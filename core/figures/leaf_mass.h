#pragma once

#include "core/plan/plan.h"
#include "core/quantity/quantity.h"

namespace stemwright {

/// Of one leaf: its beads, and its wire as it was cut, by the plan's tables (core/plan/lookup.h). Beads whose
/// mass nobody knows weigh nothing; who shows the figure asks beadsUnweighed().
Mass leafMass(const Plan& plan, const KindForm& kind);

/// Whether nobody knows what its beads weigh: their size is in no table, or in the plan's own without a mass.
bool beadsUnweighed(const Plan& plan, const KindForm& kind);

} // namespace stemwright

#pragma once

#include "core/plan/plan.h"
#include "core/quantity/quantity.h"

namespace stemwright {

/// Of one leaf: its beads, and its wire as it was cut, by the plan's tables (core/plan/lookup.h). Beads of a
/// size that is in no table weigh nothing.
Mass leafMass(const Plan& plan, const KindForm& kind);

} // namespace stemwright

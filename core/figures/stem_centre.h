#pragma once

#include "core/figures/hold.h"
#include "core/figures/plan_tables.h"
#include "core/plan/plan.h"
#include "core/quantity/point3.h"

namespace stemwright {

/// Where the centre of a stem's mass is, posed as the plan says, in millimetres from where it leaves the clay:
/// x and y as those of standings, z up. A leaf weighs in the middle of its length, on the side it points to;
/// the core and the binding are spread evenly along the stem's axis, as in holdFigures(). Σ mass · place / Σ
/// mass (textbook); along a bent axis the sum is an integral, by Simpson's rule (textbook, good to a millionth
/// of the length). z may be below 0 for a stem that hangs over. At the foot for a stem that weighs nothing.
///
/// Of an upright stem z is HoldFigures::centre. `hold` are the stem's own figures.
Point3 centreOfStem(const Stem& stem, const Plan& plan, const PlanTables& tables, const HoldFigures& hold);

} // namespace stemwright

#pragma once

#include "core/plan/plan.h"

#include <cstdint>

namespace stemwright {

// Counts over a whole plan by which suggestions are measured. Each is what core/figures or its findings report.

/// Σ (x − n·m/M)² over all stems, kinds and mixes.
double unevennessOf(const Plan& plan);

/// Tiers that are unmatched pairs.
int unmatchedPairsOf(const Plan& plan);

/// Leaves above another of their kind, in another tier, that comes before them in the kind's stock.
std::int64_t inversionsOf(const Plan& plan);

/// Empty slots that name a kind and may be filled, as far as the tray has leaves of that kind.
int fillableSlots(const Plan& plan);

} // namespace stemwright

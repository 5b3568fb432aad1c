#pragma once

#include "core/figures/earth_mover.h"
#include "core/figures/plan_tables.h"

#include <cstdint>
#include <span>
#include <vector>

namespace stemwright {

// How a stem's colours compare with the board's. Lists of leaves go by line (PlanTables::lines), of beads by
// colour.

/// What a stem would hold of a mix if every stem had the board's proportions: n·m/M, n the stem's leaves of the
/// kind, m the board's leaves of that kind and mix, M the board's of the kind, placed ones only. 0 where M is
/// 0.
double fairShare(int onStem, int ofMix, int ofKind);

/// What stands on all stems together.
struct BoardCounts {
    std::vector<int> placed; ///< by line
    std::vector<int> ofKind;
    std::vector<std::int64_t> beads; ///< by colour

    explicit BoardCounts(const PlanTables& tables);
    void add(std::span<const int> held, const PlanTables& tables);

    friend bool operator==(const BoardCounts&, const BoardCounts&) = default;
};

/// The fair shares of a stem by line, and Σ (held − fair share)² over the lines of all kinds.
double unevennessOf(std::span<const int> held, const BoardCounts& board, const PlanTables& tables,
                    std::vector<double>* fairShares = nullptr);

/// The earth mover's distance in ΔE00 between a stem's beads and the pot's (all beads on stems), each as shares
/// of its own total. 0 where either has no beads.
double driftOf(EarthMover& mover, std::span<const std::int64_t> stem, const BoardCounts& board,
               const PlanTables& tables);

} // namespace stemwright

#pragma once

#include "core/figures/balance.h"
#include "core/figures/figures.h"
#include "core/figures/plan_tables.h"
#include "core/figures/stem_figures.h"

#include <vector>

namespace stemwright {

// The steps that figures() and Reckoner share, so that both give the same to the last digit.

/// What of a stem goes into the pot's figures.
struct StemShare {
    double drift = 0;
    double unevenness = 0;
    Length height;
    bool tiered = false;
    std::int64_t beads = 0;
};
StemShare shareOf(const StemFigures& stem);

struct PotShare {
    double drift = 0;
    double unevenness = 0;
};
PotShare potShareOf(const std::vector<StemShare>& stems);
/// The heights that make the skyline: those of stems with a tier.
std::vector<Length> skylineHeights(const std::vector<StemShare>& stems);

BoardCounts countBoard(const std::vector<StemFigures>& stems, const PlanTables& tables);
std::vector<TrayLine> linesOf(const PlanTables& tables, const BoardCounts& board);
void compareWithBoard(StemFigures& stem, const BoardCounts& board, const PlanTables& tables, EarthMover& mover);
PotFigures potFiguresOf(const std::vector<StemFigures>& stems, const Plan& plan, const PlanTables& tables,
                        const BoardCounts& board);

Figures figuresOf(const Plan& plan, const PlanTables& tables, StemReckoner& reckoner, EarthMover& mover);

} // namespace stemwright

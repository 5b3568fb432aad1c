#pragma once

#include "core/figures/balance.h"
#include "core/figures/figures.h"
#include "core/figures/plan_tables.h"
#include "core/figures/stem_figures.h"

#include <vector>

namespace stemwright {

// What can be done about each finding: remedyFor() of findings.h asks these. Each gives the edits of its
// remedy, none where there is no way that leaves pinned slots, locked stems and bound tiers as they are.

/// Whether a remedy may change what is in the slot.
bool isFree(const Stem& stem, const Tier& tier, const Slot& slot);

/// Everything that remedies look at, with what of it is worked out once.
struct Remedying {
    const Plan& plan;
    const Figures& figures;
    PlanTables tables;
    BoardCounts board;

    Remedying(const Plan& p, const Figures& f);

    std::size_t line(Leaf leaf) const { return static_cast<std::size_t>(tables.lineOf(leaf)); }
    /// Unevenness of the stem at that place if it held one leaf of `out` less and one of `in` more.
    double unevennessWith(std::size_t stem, std::size_t out, std::size_t in) const;
};

// remedies_of_form.cpp: turns and places.
std::vector<Edit> turnAway(const Stem& stem, int tier);
std::vector<Edit> turnIntoPlane(const Stem& stem, int tier);
std::vector<Edit> openMissingSlots(const Stem& stem, int tier);
std::vector<Edit> closeEmptySlots(const Stem& stem, int tier);
std::vector<Edit> changeTail(const Remedying& about, std::size_t stem);
std::vector<Edit> addCore(const Remedying& about, std::size_t stem);

// remedies_of_order.cpp: which leaf stands above which on one stem.
std::vector<Edit> orderColours(const Remedying& about, const Stem& stem);
std::vector<Edit> orderSizes(const Plan& plan, const Stem& stem);

// remedies_of_balance.cpp: leaves from other stems and the tray.
std::vector<Edit> fillFromTray(const Remedying& about, std::size_t stem, int tier);
std::vector<Edit> matchPair(const Remedying& about, std::size_t stem, int tier);
std::vector<Edit> bestSwapForShare(const Remedying& about, std::size_t stem, std::size_t line);
std::vector<Edit> bestSwapForDrift(const Remedying& about, std::size_t stem);

/// How large a tier's leaves are, by the longest kind in it, waiting slots included; 0 without any kind.
Length sizeOfTier(const Plan& plan, const Tier& tier);

} // namespace stemwright

#pragma once

#include "core/quantity/quantity.h"

#include <cstdint>
#include <span>
#include <vector>

namespace stemwright {

/// So many pieces of one length to be cut.
struct CutPiece {
    Length length;
    int count = 0;
};

/// A way to cut one bar, and how many bars are cut so.
struct CutBar {
    Length bar;
    std::vector<int> pieces; ///< how many of each piece, in the order they were asked for
    int times = 0;
    Length left; ///< what remains of one
};

struct CuttingPlan {
    std::vector<CutBar> bars; ///< longest pieces first
    int barCount = 0;
    Length bought; ///< all bars together
    Length waste;  ///< bought less the pieces
    /// Whether no plan has fewer bars, and none of as few less waste. Not so only where the search gave up.
    bool proved = false;
    /// No plan has fewer bars than this.
    int fewestBars = 0;
    /// No plan of barCount bars buys less than this; `bought` itself where that is proved.
    Length leastBought;
    /// Pieces, by place in the list, that no bar is long enough for; the plan leaves them out.
    std::vector<std::size_t> tooLong;
};

struct CuttingLimits {
    /// Ways to cut a bar that the search looks at before it gives up.
    std::int64_t steps = 2'000'000;
};

/// How to cut the pieces from bars of the lengths on sale, as many of each as it takes: the fewest bars, and of
/// all plans with so few the one with least waste. Exact: a bound by column generation (Gilmore & Gomory,
/// Operations Research 9, 1961, from memory) whose prices are whole numbers, so that rounding cannot spoil it,
/// and a search that tries everything the bound allows.
///
/// Lengths count in tenths of a millimetre, pieces rounded up and bars down; cutting itself takes nothing.
/// Pieces without length or count are left out, bars of no length too. The same input gives the same plan.
CuttingPlan cuttingPlan(std::span<const CutPiece> pieces, std::span<const Length> bars,
                        CuttingLimits limits = {});

} // namespace stemwright

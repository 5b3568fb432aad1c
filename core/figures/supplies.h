#pragma once

#include "core/figures/cutting_plan.h"
#include "core/figures/figures.h"
#include "core/figures/pot_figures.h"
#include "core/plan/lookup.h"

#include <cstdint>
#include <string>
#include <vector>

namespace stemwright {

// What to buy and to make for a plan. Beads and leaf wire are for the leaves that are still to make; binding,
// cores and stakes for the stems whose pieces are not cut yet: all of a stem's are cut in the first step of its
// work (isStillToCut of binding_steps.h), so from then on none of them is bought any more, and before it all.

/// So many as it is sold, and what they cost; 0 where the plan does not say how it is sold.
struct Purchase {
    std::int64_t packs = 0;
    double cost = 0;
};

struct BeadSupply {
    ColourId colour;
    std::string size;           ///< as the kinds have it: "11/0"
    std::int64_t beads = 0;     ///< in the leaves to make
    std::int64_t withSpare = 0; ///< rounded up
    Mass mass;                  ///< of withSpare; 0 for a size that is in no table
    Length strung;              ///< of withSpare; likewise
    Purchase buy;
};

struct LeafWireSupply {
    Length diameter;
    MetalName metal;
    Length length; ///< to cut, with spare
    Mass mass;
    Purchase buy;
};

struct WrapSupply {
    Length toCut; ///< of all stems that are still to cut
    /// Skeins, spools or rolls, since a stem is bound in one piece; without the length sold, nothing.
    CuttingPlan cutting;
    std::vector<StemId> stems; ///< the pieces of the cutting plan, in its order
    Purchase buy;
};

/// Straight wire of one sort, for stakes and cores together.
struct BarSupply {
    Length diameter;
    MetalName metal;
    std::vector<CutPiece> pieces;
    std::vector<StemId> stems; ///< whose each piece is
    std::vector<bool> stakes;  ///< whether the piece is a stake, or else a core
    Length length;             ///< of all pieces
    CuttingPlan cutting;       ///< from the bars on sale; empty where none are
    Purchase buy;
};

struct Supplies {
    std::vector<BeadSupply> beads; ///< by colour in the plan's order, then by size; what needs none is left out
    std::vector<LeafWireSupply> leafWire;
    std::vector<WrapSupply> wraps; ///< by wrap
    std::vector<BarSupply> bars;
    Mass clay;
    Purchase clayToBuy;
    Mass cover;
    Purchase coverToBuy;
    std::int64_t leavesToMake = 0;
    int tiersToBind = 0;
    /// Of the leaves to make by their kinds' minutes, and of the tiers to bind by binding_time.h.
    double minutesLeft = 0;
    /// Whether a part of that is not known: a kind without minutes, or what a tier takes.
    bool minutesPartly = false;
    double cost = 0; ///< of all that has a price
};

/// Pieces of straight wire are rounded up to whole millimetres: nobody cuts closer.
Supplies supplies(const Plan& plan, const Figures& figures);

} // namespace stemwright

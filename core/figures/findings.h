#pragma once

#include "core/figures/figures.h"
#include "core/plan/edit.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

// Chosen parameters, our own, no source: where a maker begins to see it.

/// Heights closer than this look alike.
inline constexpr Length nearTwin = millimetres(3);
/// A stem holds this many leaves of a mix more than its fair share before it is said to lean.
inline constexpr double leaningLeaves = 1.5;
/// ΔE00 of a stem's drift from which it is called high: sources put "another colour" anywhere from 5 to 12.
inline constexpr double highDrift = 5;

enum class FindingCode {
    sameFacing,     ///< values: this tier's number and the one above (from 1): both face the same way
    outOfPlane,     ///< values: tier number: turned out of the plane of a one-plane stem
    shortTier,      ///< values: tier number, slots it has, slots the arrangement asks for
    longTier,       ///< values: the same: more slots than the arrangement asks for
    emptySlot,      ///< values: tier number
    unmatchedPair,  ///< values: tier number: opposite leaves of unlike mix or kind
    largerAbove,    ///< values: tier number, next tier's number: a larger kind stands above a smaller one
    outOfOrder,     ///< values: inversions of the colours' order from tip to base
    leans,          ///< values: mix name, kind name, leaves held, fair share (one decimal)
    drifts,         ///< values: drift in ΔE00 (one decimal)
    nearTwins,      ///< values: the other stem's name, difference in mm (one decimal)
    noLeaves,       ///< the stem has no leaf at all
    tooFewLeaves,   ///< values: empty slots waiting for the kind, kind name, leaves of it in the tray: pot-wide
    holdsTooLittle, ///< values: hold (one decimal), the core wire in mm that would do (one decimal; empty for
                    ///< none)
    // in the pot (pot_findings.h)
    leavesTouch, ///< values: the other stem's name (its own where both are its), pairs of leaves, longest cut
                 ///< in mm (one decimal); at the leaf of this stem with the longest cut
    outsideClay, ///< values: mm by which it stands too far out (one decimal)
    stakesTouch, ///< values: the other stem's name, mm apart, mm needed (one decimal each)
    potTooSmall, ///< values: mm across that the stakes need, mm that the clay measures (one decimal each):
                 ///< pot-wide
    // of wire, thread and pot again
    threadRunsOut, ///< values: the wrap's place in the binding (from 1), mm to cut, mm in one as sold (one
                   ///< decimal each), how many it takes; at the tier in whose wrap the first one ends, −1 for a
                   ///< layer that covers the bound stem
    tooThickForPot, ///< values: mm across the stem's foot, mm inside the pot (one decimal each)
    cannotBeMade,   ///< values: kind name, the fault as a number (MakeFault), rows of the pattern: pot-wide
    plantTips, ///< values: degrees it may be tilted (one decimal; 0.0 where it falls by itself), grams in the
               ///< middle of its floor that would mend it (whole): pot-wide
    leafOutOfScale, ///< values: kind name, its length in mm, mm of stem from the clay to the highest tier of
                    ///< any (one decimal each); at the first leaf of that kind (pot_findings.h)
    // of kinds again
    beadsUnweighed, ///< values: kind name, bead size, "own" where it is one of the plan's own that nobody
                    ///< weighed and nothing where no table has it; at the first leaf of that kind, pot-wide
                    ///< where none is on a stem
};

/// What the board noticed. The words stand in app/messages.
struct Finding {
    FindingCode code{};
    StemId stem;   ///< none for the whole pot
    int tier = -1; ///< from 0; −1 for the whole stem
    int slot = -1;
    std::vector<std::string> values;
};

/// All findings, stems in the plan's order and within each what concerns the whole stem, then its tiers from
/// tip to base; the pot's own come last. Remedies are worked out only when asked for (remedyFor), since a large
/// board has many findings and few are taken.
///
/// What a maker means is no finding: a single leaf in the tip tier of any stem, an empty slot that is pinned,
/// a turn of a spiral that is no golden angle. A tier's empty slots are one finding, at the first of them, and
/// a stem without any leaf is said once and not slot by slot. Near twins are neighbours in height, said at the
/// stem that comes later, and only among stems that have tiers.
std::vector<Finding> findings(const Plan& plan, const Figures& figures);

/// The kind and mix that a `leans` finding speaks of, by its names; nothing for other findings.
std::optional<Leaf> leaningLeaf(const Plan& plan, const Figures& figures, const Finding& finding);

/// The finding's remedy, a Batch with Deed::remedy, found exactly where the code says so:
/// - sameFacing: the tier turned one step of the arrangement from the one above; where that makes it face like
///   the next, all below turn with it;
/// - outOfPlane: turned into the plane, leaves keeping their sides;
/// - shortTier, longTier: the missing places opened; surplus empty ones closed (a leaf is never sent
///   away); nothing where a pinned leaf would then point elsewhere;
/// - emptySlot: each of the tier's empty slots in turn filled with the leaf of the tray that leaves least
///   unevenness, of the kind it waits for;
/// - unmatchedPair: one leaf exchanged for the other's like, from where fewest pairs of the board remain
///   unmatched, then least unevenness, then nearest;
/// - largerAbove: the stem's tiers exchange their leaves until they grow from tip to base;
/// - outOfOrder: the order with the fewest inversions that the pins allow, none where there are no pins;
/// - leans: the best single swap of two leaves of the kind between stems, by unevenness;
/// - drifts: the same by the pot's drift, this stem's own falling;
/// - holdsTooLittle: the thinnest core wire with which the stem reaches wantedHold (hold.h);
/// - nearTwins: the least change of the tail that makes the stem nobody's near twin.
/// It never touches a pinned slot, a locked stem or a bound tier. Nothing where there is none.
std::optional<Edit> remedyFor(const Plan& plan, const Figures& figures, const Finding& finding);

} // namespace stemwright

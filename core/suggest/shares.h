#pragma once

#include "core/plan/plan.h"
#include "core/suggest/grid.h"

#include <vector>

namespace stemwright {

/// A slot that a suggestion may fill as it likes: not pinned, on no locked stem, in no bound tier.
struct OpenSlot {
    SlotRef at;
    /// The column of the mix that it holds; −1 where it is empty.
    int now = -1;
};

/// How the open slots of one stem stand together.
struct PairShape {
    /// Tiers of two open slots of the kind.
    int pairs = 0;
    /// Open slots on their own: single leaves, whorls, or beside a leaf of another kind or a gap that stays.
    int singles = 0;
};

/// The sharing-out problem of one kind as counts: rows are the stems that hold or await leaves of the kind, by
/// id, so that nothing depends on the order of stems in the file; columns are the lines of the kind's stock.
struct Shares {
    KindId kind;
    std::vector<MixId> mixes;
    std::vector<int> stock;        ///< by column
    std::vector<StemId> stems;     ///< by row, ascending
    Grid<int> fixed;               ///< leaves that no suggestion may touch
    Grid<int> now;                 ///< leaves in open slots as they are
    Grid<int> mates;               ///< open slots opposite a leaf of this mix that may not be touched
    std::vector<PairShape> shapes; ///< by row
    /// By row, from tip to base: the slots that get a leaf. Open slots that no leaf is left for are not here.
    std::vector<std::vector<OpenSlot>> open;
    /// By row and open slot: the column of the untouchable leaf opposite in its pair, or −1.
    std::vector<std::vector<int>> mateOf;
    std::vector<int> free;   ///< by row: how many open slots get a leaf
    std::vector<int> leaves; ///< by row: n, all leaves of the kind that the stem will hold
    int total = 0;           ///< M, the sum of the leaves
    int emptySlots = 0;      ///< open slots that stay empty since the leaves do not suffice

    int rows() const { return static_cast<int>(stems.size()); }
    int columns() const { return static_cast<int>(mixes.size()); }
};

/// One for each kind of the plan, in its order.
///
/// Every open slot that names a kind wants a leaf of it. Where the stock has fewer than that, slots that hold a
/// leaf keep holding one, and what the tray has is given out leaf by leaf, each to the stem that then has the
/// least part of its places filled (ties: the smaller id), from its tip down. So each stem's number of leaves
/// is settled before the colours are.
std::vector<Shares> sharesOf(const Plan& plan);

} // namespace stemwright

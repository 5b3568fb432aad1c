#pragma once

#include "core/plan/plan.h"

#include <optional>

namespace stemwright {

/// Two leaves that would do better in each other's place.
struct Swap {
    SlotRef a;
    SlotRef b;
    /// What the swap adds to the pot's unevenness: below 0.
    double change = 0;
};

/// Of all swaps of two leaves of one kind between two stems, the one that lessens the pot's unevenness most;
/// with a stem given, of those that this stem takes part in. Found exactly: swapping a leaf of mix i on stem a
/// with one of mix j on stem b changes nothing but four counts, and with d = x − n·m/M the change of the
/// unevenness is 4 + 2 (d(b,i) − d(a,i) + d(a,j) − d(b,j)), so that for each two stems the best i and the best
/// j are found apart. Pinned slots, locked stems and bound tiers stay as they are. Of equally good swaps: the
/// one of the earlier kind, then of the stems with the smaller ids, then of the earlier lines of stock; within
/// a stem the leaf that leaves no matched pair, and of those the one nearest the base. Nothing where no swap
/// helps.
std::optional<Swap> bestSwap(const Plan& plan, StemId stem = {});

} // namespace stemwright

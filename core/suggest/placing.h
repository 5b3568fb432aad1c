#pragma once

#include "core/suggest/exchange.h"
#include "core/suggest/shares.h"

namespace stemwright {

/// Gives the open slots of the kind their leaves, so many of each mix on each stem as `units` says. Slots keep
/// their leaf where the stem keeps it; of leaves that must go, those in unmatched pairs go first, and from the
/// base up. What comes goes first beside a leaf of its own mix, and else in the stock's order from tip to base.
std::vector<Change> placeLeaves(const Shares& shares, const Grid<int>& units);

/// The same, but with as many matched pairs on each stem as its leaves allow: leaves change places within the
/// stem too, only where a pair asks for it.
std::vector<Change> placePairs(const Shares& shares, const Grid<int>& units);

/// The pairs that `units` leave unmatched at least on one stem, of those that an answer can match.
int unmatchedPairs(const Shares& shares, int row, const int* units);

} // namespace stemwright

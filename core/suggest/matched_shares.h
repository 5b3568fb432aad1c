#pragma once

#include "core/suggest/leaf_choice.h"

#include <memory>

namespace stemwright {

/// Shares out for the fewest unmatched pairs, and then for the least unevenness.
///
/// On a stem of pairs a mix that is there an odd number of times, after the leaves beside pinned ones of their
/// mix are set aside, leaves one over; two left over make an unmatched pair, unless single places take them. So
/// the counts alone say how many pairs stay unmatched (unmatchedPairs in placing.h), and the search is over
/// counts: a branch and bound over the intervals in which cells lie, with a minimum-cost flow as its bound.
///
/// The bound: let c be a cell's cost and e the function that equals c at the even counts and runs straight
/// between them. c is quadratic, so at odd counts e − c is one and the same number B (one leaf squared; the
/// lesser wish can add half a unit, which is allowed for). An answer with k odd cells costs Σ e − B·k and the
/// sum of e is separable and convex: a flow gives its least. How many odd cells there can be follows from the
/// number of unmatched pairs, and that number is bounded below by the mixes whose count is odd: each leaves one
/// over on some stem. Where pairs are all there is, k is thereby given, and the bound misses only what it costs
/// that cells cannot be odd anywhere.
///
/// Costs: W·(unmatched pairs) + 2·(cost by ShareCells), W above all that the second can come to.
class MatchedShares : public ShareSolver {
public:
    MatchedShares(const Shares& shares, const Scale& scale, const Grid<int>* whim);
    ~MatchedShares() override;

    /// What the scale must leave room for (Scale::of).
    static Cost room(const Shares& shares);

    Cost improve(const std::vector<int>& placed, ShareAnswer& best, Budget& budget) override;
    Cost columnBound(int column, int placed) override;

    /// The cost of an answer, whatever it is.
    Cost costOf(const std::vector<int>& placed, const Grid<int>& units);
    int unmatched(Cost cost) const;
    Cost shareCost(Cost cost) const; ///< as ShareCells counts it

private:
    class Impl;
    std::unique_ptr<Impl> impl_;
};

} // namespace stemwright

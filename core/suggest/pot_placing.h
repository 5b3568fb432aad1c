#pragma once

#include "core/figures/standings.h"
#include "core/suggest/suggestion.h"

namespace stemwright {

// Which stem stands where in the pot: tall stems in the middle (looked at from all round) or at the back (from
// the front), neighbours unlike in height and in colour, all evenly spaced.
//
// The places are computed (evenPlaces of standings.h), so spacing is even by construction, and what is left is
// which stem gets which place: a quadratic assignment problem. Its cost is the sum of
// - for each stem, (its height's rank − the place's rank)² as parts of the number of stems: 0 where the tallest
// has
//   the innermost (or hindmost) place and so on down; equals share their mean rank;
// - for each two neighbours, their likeness in height, 1 for equal heights and falling evenly to 0 at a fifth
// of the
//   tallest, and their likeness in colour, 1 for equal mean colours to 0 at ΔE00 20, each times its weight.
// Neighbours are places no farther apart than 1.35 times the spacing. All these numbers are our own, no source.

struct PlacingOptions {
    ViewedFrom viewedFrom = ViewedFrom::allRound;
    /// Another arrangement of the same rules: where the search starts, and which of equal answers it takes.
    std::uint32_t seed = 0;
    /// One step is one arrangement looked at, or the part of one.
    Search search{5'000'000, std::nullopt, {}, {}};
};

inline constexpr double heightLikenessWeight = 0.35;
inline constexpr double colourLikenessWeight = 0.35;
inline constexpr double neighbourReach = 1.35;
inline constexpr double unlikeHeights = 0.2; ///< of the tallest
inline constexpr double unlikeColours = 20;  ///< ΔE00
/// Up to so many stems to place every arrangement is looked at or ruled out by a bound.
inline constexpr int exactStems = 9;

/// The cost of the stems standing where they are, for any standings: places rank by their distance from the
/// middle (or to the back), neighbours by the nearest two stems' distance.
double placingCost(const Plan& plan, const std::vector<PlaceMm>& at, ViewedFrom viewedFrom);

/// The suggestion, for a valid plan: `before` and `after` are placingCost(). Locked stems stay where they
/// stand, each taking the place nearest to it; one without a standing counts as standing at its computed place.
///
/// With up to nine stems to place `proved` is true: depth first over the places, a part left out only where
/// what it has and the least that the rest must cost (each stem's ranks, each pair's least likeness) is no less
/// than the best. Beyond, exchanges of two stems from several starts until none helps, and `bound` is that of
/// Gilmore and Lawler (1962/63, from memory) up to 120 stems, or the ranks' part alone beyond; `proved` only
/// where the two meet. Where the stems stand at least as well already, no edits.
Suggestion placeInPot(const Plan& plan, const PlacingOptions& options = {});

} // namespace stemwright

#pragma once

#include "core/quantity/quantity.h"
#include "core/suggest/tier_numbers.h"

#include <functional>
#include <optional>

namespace stemwright {

/// The height of a stem, by its row, with so many tiers of each kind, by column.
using HeightWith = std::function<Length(int row, const std::vector<int>& tiers)>;

/// The stems from the lowest to the tallest as they are now, by row; ties by orderAmongAlike().
std::vector<int> byHeight(const TierNumbers& numbers, const HeightWith& height);

/// Neighbours in height that are closer than the difference.
int closeNeighbours(std::vector<Length> heights, Length difference);

/// Tiers for each stem and kind with as few neighbours closer than `difference` as can be, and among those with
/// the least Σ (tiers − target)²: over all answers in which the stems keep their order by height. Exact: stem
/// after stem in that order, every choice of tiers within the ranges, where two choices that have used as many
/// tiers of each kind so far and end equally high are one (dynamic programming); first with the kinds taken
/// together, which is enough where the answer can be shared out to the kinds. Nothing where no answer keeps the
/// order, or where more than `mostStates` would have to be looked at.
std::optional<Grid<int>> keepApart(const TierNumbers& numbers, const HeightWith& height, Length difference,
                                   std::size_t mostStates = 300'000);

} // namespace stemwright

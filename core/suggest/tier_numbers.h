#pragma once

#include "core/plan/plan.h"
#include "core/suggest/grid.h"

#include <optional>
#include <vector>

namespace stemwright {

/// How many tiers of each kind each stem shall have, as numbers: rows are the stems that may change, by id,
/// columns the kinds that ranges were given for.
class TierNumbers {
public:
    std::vector<const Stem*> stems;
    std::vector<const Kind*> kinds;
    Grid<int> now;
    Grid<int> least;
    Grid<int> most;
    std::vector<int> total;  ///< tiers of each kind, by column
    std::vector<int> others; ///< tiers of other kinds, which stay, by row

    int rows() const { return static_cast<int>(stems.size()); }
    int columns() const { return static_cast<int>(kinds.size()); }

    /// What each stem's number of tiers, of all kinds, should be, by row: evenly spaced through the mean, as
    /// wide as the ranges let them be; the stems taller now get the higher, those as tall by orderAmongAlike().
    std::vector<double> targets() const;

    /// The tiers for each stem and kind with the least Σ (tiers − target)²; nothing where none fit. Unit by
    /// unit to the stem for which it is cheapest and that can still take one: whether it can is a path in the
    /// residual network of the flow from kinds to stems.
    std::optional<Grid<int>> solve() const;

    /// The kinds for stems with so many tiers of all kinds, by row; nothing where the ranges and the numbers of
    /// leaves allow no such.
    std::optional<Grid<int>> split(const std::vector<int>& tiers) const;
};

/// The order of stems that are alike, in [0, 1): the fractional part of the id times the golden section, so
/// that stems that come one after another are not alike in height.
double orderAmongAlike(StemId id);

} // namespace stemwright

#pragma once

#include "core/suggest/budget.h"
#include "core/suggest/share_costs.h"

namespace stemwright {

/// How many leaves of each mix may be on the board, by column.
struct PlacedRange {
    std::vector<int> least;
    std::vector<int> most;

    bool open() const { return least != most; }
};

/// An answer to a sharing-out problem.
struct ShareAnswer {
    std::vector<int> placed; ///< m by column
    Grid<int> units;         ///< leaves in open slots by stem and mix
    Cost cost = noCost;
    Cost bound = noCost; ///< no answer costs less
};

/// Solves the sharing-out problem for one m after another.
class ShareSolver {
public:
    virtual ~ShareSolver() = default;
    /// Looks for an answer with `placed` leaves that costs less than best.cost, and puts it there. Gives what
    /// every answer with these leaves costs at least (its cost where the answer was found and is the best).
    virtual Cost improve(const std::vector<int>& placed, ShareAnswer& best, Budget& budget) = 0;
    /// What the cells of one column cost at least with so many leaves, whatever the other columns hold; noCost
    /// where that many cannot be.
    virtual Cost columnBound(int column, int placed) = 0;
};

/// The least cost over every m in the range whose sum is `total`, improving on `best` (whose bound is set).
///
/// Depth-first over the columns. For columns decided so far their column bounds, and for the rest the least sum
/// of column bounds that uses up the leaves (a table made once), bound every answer below; a part of the search
/// is left out only where that bound is no less than the best answer's cost, so when the search ends, nothing
/// better exists. If the budget ends first, the bound is the least among the parts not looked at; some answer
/// is always found.
void chooseLeaves(const PlacedRange& range, int total, ShareSolver& solver, Budget& budget, ShareAnswer& best);

} // namespace stemwright

#pragma once

#include "core/suggest/grid.h"

namespace stemwright {

/// The least sum of picking one cell of every row and column of a square table: the assignment problem, solved
/// by shortest augmenting paths with potentials in n³ (Jonker & Volgenant 1987 and earlier, from memory). 0 for
/// an empty table.
double leastAssignment(const Grid<double>& costs);

} // namespace stemwright

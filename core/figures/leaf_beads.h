#pragma once

#include "core/plan/mix.h"

#include <span>
#include <vector>

namespace stemwright {

/// Shares `total` out in whole parts by weight: each gets the whole part of its quota, and the largest
/// remainders one more each until nothing is left (largest remainder method; textbook). Of equal remainders the
/// earlier one comes first. Weights are proportions; one that is not above 0 gets nothing, and where none is
/// above 0, or the total is not, all get nothing.
std::vector<int> apportioned(int total, std::span<const double> weights);

/// The beads of one leaf in each colour of its mix, in the mix's order (outer row inward): whole beads that add
/// up to `beads`.
std::vector<int> leafBeads(int beads, const Mix& mix);

/// The same by row: `rows` are the beads of each row from the outer one inward, and each row of the answer has
/// its beads in each colour of the mix. The outer colour fills rows from the outside until its beads are used
/// up, then the next one goes on; rows and colours both add up to whole beads, colours to leafBeads of the sum.
/// Rows below 0 count as 0.
std::vector<std::vector<int>> rowBeads(std::span<const int> rows, const Mix& mix);

} // namespace stemwright

#pragma once

#include "core/quantity/quantity.h"

#include <vector>

namespace stemwright {

/// The heights of a pot's stems side by side.
struct Skyline {
    Length shortest;
    Length tallest;
    Length mean;
    /// Coefficient of variation, s / mean with n − 1 (textbook); 0 for fewer than two heights or a mean of 0.
    double variation = 0;
};

/// All 0 for no heights.
Skyline skylineOf(const std::vector<Length>& heights);

/// Pairs of heights that are closer than `near`.
int countNearTwins(std::vector<Length> heights, Length near);

} // namespace stemwright

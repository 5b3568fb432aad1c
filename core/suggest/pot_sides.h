#pragma once

#include "core/figures/standings.h"
#include "core/suggest/grid.h"

#include <vector>

namespace stemwright {

// The two sides of the cost of placing in the pot (pot_placing.h).

inline std::size_t nth(int i) {
    return static_cast<std::size_t>(i);
}
inline constexpr double placingHair = 1e-9;

/// The stems' side: their ranks by height, and how alike each two are.
struct PottedStems {
    int count = 0;
    std::vector<double> rank; ///< 0 for the tallest
    Grid<double> likeness;    ///< weighted, stem by stem

    explicit PottedStems(const Plan& plan);
};

/// The places' side: their ranks, and which are neighbours.
struct PotPlaces {
    std::vector<PlaceMm> list;
    std::vector<double> rank; ///< 0 for the innermost or hindmost
    std::vector<std::vector<int>> neighbours;

    PotPlaces(std::vector<PlaceMm> places, ViewedFrom viewedFrom);
};

} // namespace stemwright

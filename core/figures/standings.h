#pragma once

#include "core/plan/plan.h"

#include <vector>

namespace stemwright {

/// A place on the clay, millimetres from the middle of the opening, x to the right and y to the back.
struct PlaceMm {
    double x = 0;
    double y = 0;

    friend bool operator==(const PlaceMm&, const PlaceMm&) = default;
};

/// So many places spread evenly over a round opening: rings around the middle, the outermost at `radius`, as
/// far apart from ring to ring and within a ring as the number allows, found by halving (own arrangement, no
/// source). From the middle outward, each ring counter-clockwise from the front. One place is the middle; none
/// for a count below 1.
std::vector<PlaceMm> evenPlaces(int count, double radius);

/// How far the nearest two of some places are apart; 0 for fewer than two.
double nearestApart(const std::vector<PlaceMm>& places);

/// The radius that evenPlaces() is asked for in a pot: so much of the clay's, so that leaves find room inside
/// the rim (own choice, no source), and never so near to the rim that the stake would be outside the clay.
double placingRadius(const Plan& plan);
inline constexpr double placingPart = 0.68;

/// Where each stem stands, in the plan's order. A stem that has no standing of its own gets one of
/// evenPlaces(number of stems), always the one farthest from what is taken already; nothing is stored.
std::vector<PlaceMm> standings(const Plan& plan);

} // namespace stemwright

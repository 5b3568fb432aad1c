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

/// Places for all stems of a plan, spread evenly over the clay of its pot: evenPlaces() in a round one; in an
/// oval or rectangular one each in the middle of the part of the clay that is nearest to it (Lloyd 1982, from
/// memory, over a grid of samples), from the middle outward.
std::vector<PlaceMm> placesInPot(const Plan& plan);

/// The radius that evenPlaces() is asked for in a pot: so much of the clay's, so that leaves find room inside
/// the rim (own choice, no source), and never so near to the rim that the stake would be outside the clay.
double placingRadius(const Plan& plan);
inline constexpr double placingPart = 0.68;

/// Where each stem stands, in the plan's order. A stem that has no standing of its own gets one of
/// placesInPot(), always the one farthest from what is taken already; nothing is stored.
std::vector<PlaceMm> standings(const Plan& plan);

} // namespace stemwright

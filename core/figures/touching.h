#pragma once

#include "core/figures/plant_shape.h"

#include <vector>

namespace stemwright {

/// Two leaves that would run into each other.
struct LeafTouch {
    std::size_t one = 0; ///< places in PlantBody::leaves, the smaller first
    std::size_t other = 0;
    /// How long the cut is in which they would pass through each other, mm; of leaves in one plane the square
    /// root of the area that they share.
    double length = 0;
};

/// A cut shorter than this is no touch: leaves give way so much (own choice, no source).
inline constexpr double leastTouch = 2;
/// Leaves in parallel planes closer than this lie in one: the thickness of a seed bead (own choice, no source).
inline constexpr double onePlaneMm = 1;

/// All of them, in the order of their places, from the leaves' outlines in their planes. Leaves of one tier
/// never count: they are bound at one place and are bent apart by hand.
std::vector<LeafTouch> touchingLeaves(const PlantBody& plant);

/// The cut of two leaves, 0 where they do not meet. For tests and single questions.
double cutLength(const PlantBody& plant, const LeafBody& one, const LeafBody& other);

} // namespace stemwright

#pragma once

#include "core/quantity/quantity.h"

namespace stemwright {

/// How much fits, in mm³, and how high above its floor the middle of that is.
struct Solid {
    double volume = 0;
    Length centre;
};

// Textbook solids, filled from their floor up to a height; a height below 0 counts as 0.

/// A cone cut off level, from the diameter at the floor to the one at that height; equal ones make a cylinder:
/// π h (R² + R r + r²) / 3, centre h (R² + 2 R r + 3 r²) / (4 (R² + R r + r²)), R at the floor.
Solid frustum(Length floorDiameter, Length topDiameter, Length height);

/// A cap of a sphere standing on its pole: π h² (3 R − h) / 3, centre h (8 R − 3 h) / (4 (3 R − h)) above the
/// pole. More than the whole sphere counts as that.
Solid cap(Length radius, Length height);

/// The part of a solid above its lower part.
Solid between(const Solid& lower, const Solid& whole);

/// The radius of the sphere that a bowl is part of, by its opening and its depth.
Length bowlRadius(Length opening, Length depth);

} // namespace stemwright

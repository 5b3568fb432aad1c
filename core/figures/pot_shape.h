#pragma once

#include "core/figures/leaf_rows.h"
#include "core/plan/pot.h"
#include "core/quantity/quantity.h"

#include <vector>

namespace stemwright {

// The inside of a pot by height. Heights are millimetres above the clay's surface, which is where the stems'
// own heights are counted from.

/// How far the clay's surface lies below the rim: the pot's depth less the clay's, 0 where the clay is deeper.
Length rimAboveClay(const Pot& pot);

/// The inner radius at a depth below the rim, from 0 at the rim to pot.depth at the floor; beyond either end
/// what it is there. A cylinder is as wide as its rim throughout; a frustum narrows evenly to its bottom
/// diameter; a bowl is the part of a sphere that has this rim and depth (of one deeper than half its width:
/// half a spheroid).
Length innerRadius(const Pot& pot, Length belowRim);

/// The radius of the clay's surface; of an oval or rectangular pot half its way from side to side.
Length clayRadius(const Pot& pot);

/// From front to back as a part of side to side: 1 for a round opening, and the same at every level.
double breadthPart(const Pot& pot);

/// The area of the opening, and of every level cut, as a part of the circle's about half its way from side to
/// side: 1 round, the breadth's part oval, 4/π of that rectangular.
double openingArea(const Pot& pot);

/// The opening with half its way from side to side as 1: corners counter-clockwise from the right. Eight and
/// any multiple of it hit a rectangle's own corners; at least four.
std::vector<PointMm> openingOutline(const Pot& pot, int corners);

/// How far a place on the clay (millimetres from its middle, y to the back) lies outside it; negative inside,
/// by how far its edge is.
double beyondClay(const Pot& pot, double x, double y);

/// The farthest that the opening reaches from its middle, mm: half a rectangle's diagonal.
double widestReach(const Pot& pot);

} // namespace stemwright

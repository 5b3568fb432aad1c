#pragma once

#include "core/plan/pot.h"
#include "core/quantity/quantity.h"

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

/// The radius of the clay's surface: where a stem can stand.
Length clayRadius(const Pot& pot);

} // namespace stemwright

#pragma once

#include "core/figures/figures.h"
#include "core/plan/plan.h"

namespace stemwright {

/// The wire that carries one stem in the clay: as long as the clay is deep and bound to the stem above it. It
/// thus ends where the clay does, short of the rim of a pot that is not full.
Length stakeLength(const Pot& pot);

/// A plant tilted by less than this should not fall (own choice, no source).
inline constexpr Angle steadyTilt = degrees(10);

/// What is in the pot and whether it stands.
struct PotBalance {
    double clayVolume = 0;  ///< mm³
    double coverVolume = 0; ///< mm³
    Mass clay;
    Mass cover;
    Mass whole; ///< pot, clay, cover and stems
    /// The centre of all of it, above the table, and how far it is from the middle.
    Length centre;
    Length aside;
    /// From the middle to the nearest edge it could tip over.
    Length foot;
    /// How far it may be tilted towards where it is heaviest before it falls: tan = (foot − aside) / centre
    /// (textbook). 0 where it falls by itself.
    Angle tilt;
    bool stands = false; ///< whether it stands by itself: its centre is over its foot
    bool steady = false; ///< whether it bears steadyTilt
    /// What would have to lie in the middle of its floor to make it steady; 0 where it is.
    Mass weightToAdd;
};

/// The pot with its clay and cover as deep as the plan says (no deeper than the pot), and the stems where they
/// stand, those without a place in the middle, leaning and bent as they are posed (core/figures/stem_centre.h);
/// a stem that hangs below the table counts as if at its height. Walls and floor count as one height (the pot's
/// own mass at half its depth), stakes are left out. It stands on footDiameter; without one a cylinder or
/// frustum on its floor and a bowl on a third of its opening (own choice). On n feet of such a circle the
/// nearest edge is that of the polygon between them, radius · cos(π / n) from the middle (textbook).
PotBalance potBalance(const Plan& plan, const Figures& figures);

} // namespace stemwright

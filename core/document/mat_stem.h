#pragma once

#include "core/figures/leaf_rows.h"
#include "core/plan/plan.h"

#include <vector>

namespace stemwright {

// Where everything of a stem lies when it is laid flat: along the stem from its first joint down, and to the
// sides in two views. In the first the stem is seen from the front, with the leaves that point left and right;
// in the second it is turned a quarter, its front to the left, with those that point to the front and back.
// So every leaf lies at its real size and angle, and none lies over the stem. Millimetres.

struct MatLeaf {
    int slot = 0;
    Leaf leaf;
    bool sideView = false;
    double degrees = 0; ///< clockwise from straight up along the stem; negative to the left
    double out = 0;     ///< its base from the stem's middle, along the leaf: apart where leaves share a place
    /// What its outline covers from the joint: to the left and right, up and down. All 0 or more.
    double left = 0, right = 0, up = 0, down = 0;
    /// It is longer than any sheet can show and is not drawn.
    bool tooLong = false;
};

struct MatTier {
    double along = 0; ///< of its joint
    double thick = 0; ///< of the wrapped stem below it
    double wrap = 0;  ///< the stretch wrapped below it, to the next joint or to the foot
    std::vector<MatLeaf> leaves;

    double up() const;
    double down() const;
};

struct MatStem {
    std::vector<MatTier> tiers;
    double length = 0; ///< from the first joint to the foot
    double clay = 0;   ///< where the clay line meets it, along
    bool frontView = true;
    bool sideView = false;
    double halfFront = 0; ///< the widest reach of either view to either side
    double halfSide = 0;
    /// Leaves that had to be drawn steeper than they stand, so that the paper holds them.
    bool steeper = false;
    bool tooLong = false;
};

/// The most that a leaf may reach: to either side, and up and down together. What reaches further to the side
/// is drawn steeper; what is longer than `tall` is not drawn.
struct MatRoom {
    double half = 90;
    double tall = 200;
};

MatStem layFlat(const Plan& plan, const Stem& stem, MatRoom room);

} // namespace stemwright

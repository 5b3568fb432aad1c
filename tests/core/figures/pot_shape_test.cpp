#include "core/figures/pot_shape.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

Pot pot(PotShape shape, double top, double bottom, double depth) {
    Pot out;
    out.shape = shape;
    out.topDiameter = millimetres(top);
    out.bottomDiameter = millimetres(bottom);
    out.depth = millimetres(depth);
    return out;
}

double at(const Pot& pot, double depth) {
    return inMillimetres(innerRadius(pot, millimetres(depth)));
}

TEST(PotShape, NarrowsAsItsShapeSays) {
    const Pot cylinder = pot(PotShape::cylinder, 120, 40, 60);
    EXPECT_EQ(at(cylinder, 0), 60);
    EXPECT_EQ(at(cylinder, 60), 60);
    const Pot frustum = pot(PotShape::frustum, 120, 80, 60);
    EXPECT_EQ(at(frustum, 0), 60);
    EXPECT_EQ(at(frustum, 30), 50);
    EXPECT_EQ(at(frustum, 60), 40);
    EXPECT_EQ(at(frustum, 100), 40) << "below the floor";
    EXPECT_EQ(at(frustum, -5), 60) << "above the rim";
}

TEST(PotShape, BowlIsPartOfASphere) {
    // Rim radius 4 and depth 2 lie on a sphere of radius 5: 4² + 3² = 5².
    const Pot shallow = pot(PotShape::bowl, 8, 8, 2);
    EXPECT_NEAR(at(shallow, 0), 4, 1e-12);
    EXPECT_NEAR(at(shallow, 1), 3, 1e-12); // 5² − 4²
    EXPECT_NEAR(at(shallow, 2), 0, 1e-9);
    // Deeper than half its width: a spheroid of half axes 3 and 10; at 6 below the rim √(1 − 0.36) × 3.
    const Pot deep = pot(PotShape::bowl, 6, 6, 10);
    EXPECT_NEAR(at(deep, 0), 3, 1e-12);
    EXPECT_NEAR(at(deep, 6), 2.4, 1e-12);
}

TEST(PotShape, ClayLiesBelowTheRim) {
    Pot frustum = pot(PotShape::frustum, 120, 80, 60);
    frustum.clay.depth = millimetres(45);
    EXPECT_EQ(inMillimetres(rimAboveClay(frustum)), 15);
    EXPECT_EQ(inMillimetres(clayRadius(frustum)), 55);
    frustum.clay.depth = millimetres(90);
    EXPECT_EQ(inMillimetres(rimAboveClay(frustum)), 0);
    EXPECT_EQ(inMillimetres(clayRadius(frustum)), 60);
}

} // namespace
} // namespace stemwright

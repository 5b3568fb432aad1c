#include "core/figures/pot_shape.h"

#include <gtest/gtest.h>

#include <cmath>

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

Pot opening(PotOpening opening, double wide, double breadth) {
    Pot out = pot(PotShape::cylinder, wide, wide, 60);
    out.opening = opening;
    out.topBreadth = millimetres(breadth);
    return out;
}

TEST(PotOpening, AreasAndOutlines) {
    EXPECT_EQ(openingArea(opening(PotOpening::round, 100, 60)), 1) << "a round one heeds no breadth";
    EXPECT_NEAR(openingArea(opening(PotOpening::oval, 100, 60)), 0.6, 1e-12);
    // 100 × 60 over the circle's π · 50².
    EXPECT_NEAR(openingArea(opening(PotOpening::rectangular, 100, 60)), 6000 / (M_PI * 2500), 1e-12);
    EXPECT_NEAR(widestReach(opening(PotOpening::rectangular, 80, 60)), 50, 1e-12); // 3, 4, 5
    EXPECT_NEAR(widestReach(opening(PotOpening::oval, 80, 120)), 60, 1e-12);
    const auto corners = openingOutline(opening(PotOpening::rectangular, 80, 60), 8);
    ASSERT_EQ(corners.size(), 8u);
    EXPECT_NEAR(corners[1].x, 1, 1e-12);
    EXPECT_NEAR(corners[1].y, 0.75, 1e-12) << "a corner";
    EXPECT_NEAR(corners[2].x, 0, 1e-12);
    EXPECT_NEAR(corners[2].y, 0.75, 1e-12);
}

TEST(PotOpening, HowFarAPlaceIsOutsideTheClay) {
    const Pot round = opening(PotOpening::round, 100, 60);
    EXPECT_NEAR(beyondClay(round, 30, 40), 0, 1e-12);
    EXPECT_NEAR(beyondClay(round, 60, -80), 50, 1e-12);
    const Pot box = opening(PotOpening::rectangular, 100, 60);
    EXPECT_NEAR(beyondClay(box, 0, 0), -30, 1e-12);
    EXPECT_NEAR(beyondClay(box, -45, 0), -5, 1e-12);
    EXPECT_NEAR(beyondClay(box, 53, 34), 5, 1e-12) << "from a corner";
    const Pot oval = opening(PotOpening::oval, 120, 80);
    EXPECT_NEAR(beyondClay(oval, 0, 0), -40, 1e-9);
    EXPECT_NEAR(beyondClay(oval, 70, 0), 10, 1e-9);
    EXPECT_NEAR(beyondClay(oval, 0, -55), 15, 1e-9);
    EXPECT_NEAR(beyondClay(oval, 50, 0), -10, 1e-9);
    // Near the middle of the longer axis the nearest edge lies aside: at x = 60² · 10 / (60² − 40²) = 18.
    EXPECT_NEAR(beyondClay(oval, 10, 0), -std::hypot(8, 40 * std::sqrt(1 - 0.09)), 1e-9);
    // Along the edge's normal a place is as far out as it was moved.
    for (const double t : {0.1, 0.7, 1.2, 2.5, 4.0, 5.9})
        for (const double off : {-12.0, 0.5, 30.0}) {
            const double x = 60 * std::cos(t), y = 40 * std::sin(t);
            const double nx = x / 3600, ny = y / 1600, n = std::hypot(nx, ny);
            EXPECT_NEAR(beyondClay(oval, x + off * nx / n, y + off * ny / n), off, 1e-6) << t << " " << off;
        }
}

} // namespace
} // namespace stemwright

#include "core/figures/pot_figures.h"

#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stemwright {
namespace {

PotBalance balanceOf(const Plan& plan) {
    return potBalance(plan, figures(plan));
}

TEST(PotFigures, AStakeReachesThroughTheClayAndUpTheStem) {
    Pot pot;
    pot.depth = millimetres(50);
    pot.clay.depth = millimetres(45);
    pot.stake.overlap = millimetres(20);
    EXPECT_EQ(inMillimetres(stakeLength(pot)), 65);
    pot.clay.depth = millimetres(80);
    EXPECT_EQ(inMillimetres(stakeLength(pot)), 70) << "no clay above the rim";
}

TEST(PotFigures, ClayAndCoverByShape) {
    Plan plan = test::smallBoard();
    plan.pot.shape = PotShape::cylinder;
    plan.pot.topDiameter = millimetres(100);
    plan.pot.depth = millimetres(60);
    plan.pot.clay = {millimetres(40), 1500, ""};
    plan.pot.cover = Cover{millimetres(10), 1600, ""};
    const PotBalance balance = balanceOf(plan);
    EXPECT_NEAR(balance.clayVolume, std::numbers::pi * 2500 * 40, 1e-6);
    EXPECT_NEAR(inGrams(balance.clay), std::numbers::pi * 2500 * 40 * 1500e-6, 1e-9);
    EXPECT_NEAR(inGrams(balance.cover), std::numbers::pi * 2500 * 10 * 1600e-6, 1e-9);

    plan.pot.shape = PotShape::frustum;
    plan.pot.bottomDiameter = millimetres(40);
    // Clay to two thirds of the depth: 40 at the floor, 80 across at its top.
    EXPECT_NEAR(balanceOf(plan).clayVolume, std::numbers::pi * 40 / 3 * (400 + 800 + 1600), 1e-6);

    plan.pot.shape = PotShape::bowl;
    plan.pot.depth = millimetres(50);
    EXPECT_NEAR(balanceOf(plan).clayVolume, std::numbers::pi * 1600 * (3 * 50 - 40) / 3, 1e-6);
}

TEST(PotFigures, OvalAndRectangularPotsHoldTheirShareOfARoundOne) {
    Plan plan = test::smallBoard();
    plan.pot.shape = PotShape::cylinder;
    plan.pot.opening = PotOpening::rectangular;
    plan.pot.topDiameter = millimetres(100);
    plan.pot.topBreadth = millimetres(60);
    plan.pot.depth = millimetres(60);
    plan.pot.clay = {millimetres(40), 1500, ""};
    EXPECT_NEAR(balanceOf(plan).clayVolume, 100 * 60 * 40, 1e-6) << "a box";
    EXPECT_NEAR(inMillimetres(balanceOf(plan).foot), 30, 1e-9) << "it tips over its longer edge";
    plan.pot.opening = PotOpening::oval;
    EXPECT_NEAR(balanceOf(plan).clayVolume, std::numbers::pi * 50 * 30 * 40, 1e-6);
    // A pyramid cut off level, 40 × 24 at the floor and 80 × 48 at the clay: h/3 (A + B + √(A B)).
    plan.pot.opening = PotOpening::rectangular;
    plan.pot.shape = PotShape::frustum;
    plan.pot.bottomDiameter = millimetres(40);
    EXPECT_NEAR(balanceOf(plan).clayVolume, 40.0 / 3 * (960 + 3840 + std::sqrt(960.0 * 3840)), 1e-6);
}

TEST(PotFigures, ABowlDeeperThanHalfItsWidthIsHalfASpheroid) {
    Plan plan = test::smallBoard();
    plan.pot.shape = PotShape::bowl;
    plan.pot.topDiameter = millimetres(60);
    plan.pot.depth = millimetres(80);
    plan.pot.clay = {millimetres(80), 1000, ""};
    // Filled to the rim: half of 4/3 π · 30 · 30 · 80, its middle at 5/8 of the depth.
    EXPECT_NEAR(balanceOf(plan).clayVolume, 2.0 / 3 * std::numbers::pi * 30 * 30 * 80, 1e-6);
    // Where it is as deep as half its width both formulas are the half sphere.
    plan.pot.depth = plan.pot.clay.depth = millimetres(30);
    const double sphere = balanceOf(plan).clayVolume;
    plan.pot.depth = plan.pot.clay.depth = millimetres(30 + 1e-9);
    EXPECT_NEAR(balanceOf(plan).clayVolume, sphere, 1e-3);
}

TEST(PotFigures, AStemToOneSideTipsALightPotAndAWeightMendsIt) {
    Plan plan = test::smallBoard();
    plan.pot.topDiameter = millimetres(60);
    plan.pot.footDiameter = millimetres(12);
    plan.pot.clay.depth = millimetres(0);
    for (Stem& stem : plan.stems)
        stem.standing = Standing{millimetres(20), millimetres(0), ""};
    PotBalance balance = balanceOf(plan);
    EXPECT_FALSE(balance.stands);
    EXPECT_LT(balance.tilt, degrees(0));
    EXPECT_GT(balance.weightToAdd, Mass{});
    EXPECT_NEAR(inMillimetres(balance.aside), 20, 1e-9);
    // As so much clay of no height, which lies on the floor: the pot's own weight at half of no depth.
    plan.pot.mass = balance.weightToAdd;
    plan.pot.depth = millimetres(1e-6);
    balance = balanceOf(plan);
    EXPECT_TRUE(balance.stands);
    EXPECT_NEAR(inDegrees(balance.tilt), inDegrees(steadyTilt), 1e-3);
}

TEST(PotFigures, AHeavyPotIsSteady) {
    const PotBalance balance = balanceOf(test::smallBoard());
    EXPECT_TRUE(balance.stands);
    EXPECT_TRUE(balance.steady);
    EXPECT_EQ(balance.weightToAdd, Mass{});
    EXPECT_GT(balance.tilt, steadyTilt);
}

} // namespace
} // namespace stemwright

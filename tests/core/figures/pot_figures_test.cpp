#include "core/figures/pot_figures.h"

#include "core/plan/plan.h"
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
    EXPECT_EQ(balance.tilt, degrees(0));
    EXPECT_GT(balance.weightToAdd, Mass{});
    EXPECT_NEAR(inMillimetres(balance.aside), 20, 1e-9);
    // As so much clay of no height, which lies on the floor: the pot's own weight at half of no depth.
    plan.pot.mass = balance.weightToAdd;
    plan.pot.depth = millimetres(1e-6);
    balance = balanceOf(plan);
    EXPECT_TRUE(balance.stands);
    EXPECT_NEAR(inDegrees(balance.tilt), inDegrees(steadyTilt), 1e-3);
}

/// Stem 1 alone in a pot that weighs nothing, on a ring 60 across: all its weight is the stem's.
Plan onlyStem(const std::optional<Pose>& pose) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].standing = Standing{millimetres(0), millimetres(0), ""};
    plan.stems[0].pose = pose;
    plan.pot.clay.depth = millimetres(0);
    plan.pot.footDiameter = millimetres(60);
    return plan;
}

double tiltOf(double foot, double aside, double centre) {
    return std::atan((foot - aside) / centre) * 180 / std::numbers::pi;
}

TEST(PotFigures, ALeaningStemStandsAsideAndLower) {
    const Plan upright = onlyStem(std::nullopt);
    const double high = inMillimetres(figures(upright).stems[0].hold.centre);
    EXPECT_NEAR(inMillimetres(balanceOf(upright).aside), 0, 1e-9);
    EXPECT_NEAR(inMillimetres(balanceOf(upright).centre), high, 1e-9);
    EXPECT_NEAR(inDegrees(balanceOf(upright).tilt), tiltOf(30, 0, high), 1e-9);
    // Its pairs are full, so its centre is on its axis, as far up that as before.
    const PotBalance leaning = balanceOf(onlyStem(Pose{degrees(30), degrees(0), degrees(180), ""}));
    EXPECT_NEAR(inMillimetres(leaning.aside), high / 2, 1e-9);
    EXPECT_NEAR(inMillimetres(leaning.centre), high * std::sqrt(0.75), 1e-9);
    EXPECT_NEAR(inDegrees(leaning.tilt), tiltOf(30, high / 2, high * std::sqrt(0.75)), 1e-9);
    EXPECT_TRUE(leaning.stands);
    // Its place and its lean add up as arrows do.
    Plan placed = onlyStem(Pose{degrees(30), degrees(0), degrees(270), ""}); // to the back
    placed.stems[0].standing = Standing{millimetres(3), millimetres(4), ""};
    EXPECT_NEAR(inMillimetres(balanceOf(placed).aside), std::hypot(3, 4 + high / 2), 1e-9);
}

TEST(PotFigures, WhatLeansOutOverItsFootFallsByItself) {
    Plan plan = onlyStem(Pose{degrees(85), degrees(0), degrees(0), ""});
    const double high = inMillimetres(figures(plan).stems[0].hold.centre);
    ASSERT_GT(high * std::sin(85 * std::numbers::pi / 180), 30);
    const PotBalance balance = balanceOf(plan);
    EXPECT_FALSE(balance.stands);
    EXPECT_FALSE(balance.steady);
    EXPECT_EQ(balance.tilt, degrees(0));
    EXPECT_GT(balance.weightToAdd, Mass{});
    // So much more in the middle of the floor, as a pot of no height, and it bears the tilt to the last.
    plan.pot.mass = balance.weightToAdd;
    plan.pot.depth = millimetres(1e-6);
    EXPECT_TRUE(balanceOf(plan).stands);
    EXPECT_NEAR(inDegrees(balanceOf(plan).tilt), inDegrees(steadyTilt), 1e-3);
}

TEST(PotFigures, StemsThatLeanOppositeWaysBalance) {
    Plan plan = onlyStem(Pose{degrees(60), degrees(20), degrees(30), ""});
    Stem other = plan.stems[0];
    other.id = StemId{2};
    other.pose->toward = degrees(210);
    plan.stems.push_back(other);
    for (Kind& kind : plan.kinds)
        for (StockLine& line : kind.stock)
            line.made = 10;
    ASSERT_FALSE(firstProblem(plan));
    EXPECT_NEAR(inMillimetres(balanceOf(plan).aside), 0, 1e-9);
    plan.stems[1].pose->toward = degrees(30);
    EXPECT_GT(inMillimetres(balanceOf(plan).aside), 20);
}

TEST(PotFigures, AStemThatHangsBelowTheTableMakesNoPlantSteadier) {
    const Plan plan = onlyStem(Pose{degrees(90), degrees(90), degrees(0), ""});
    EXPECT_EQ(balanceOf(plan).centre, Length{});
    EXPECT_GT(balanceOf(plan).aside, Length{});
}

TEST(PotFigures, OnFeetItTipsOverTheLineBetweenTwo) {
    Plan plan = test::smallBoard();
    plan.pot.footDiameter = millimetres(60);
    const auto foot = [&](int feet) {
        plan.pot.feet = feet;
        return inMillimetres(balanceOf(plan).foot);
    };
    EXPECT_NEAR(foot(0), 30, 1e-9);
    EXPECT_NEAR(foot(3), 15, 1e-9) << "a triangle's side is half the circle's radius from its middle";
    EXPECT_NEAR(foot(4), 30 / std::sqrt(2), 1e-9);
    EXPECT_NEAR(foot(6), 30 * std::sqrt(0.75), 1e-9);
    plan.pot.footDiameter = {};
    plan.pot.topDiameter = millimetres(100);
    EXPECT_NEAR(foot(3), 25, 1e-9) << "nobody measured across them: as wide as its floor";
}

TEST(PotFigures, WhatStandsOnARingMayFallFromThreeFeet) {
    Plan plan = onlyStem(std::nullopt);
    plan.stems[0].standing = Standing{millimetres(20), millimetres(0), ""};
    EXPECT_TRUE(balanceOf(plan).stands);
    plan.pot.feet = 3;
    EXPECT_FALSE(balanceOf(plan).stands);
    EXPECT_EQ(balanceOf(plan).tilt, degrees(0));
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

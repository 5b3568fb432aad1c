#include "core/figures/stem_centre.h"

#include "core/figures/figures.h"
#include "core/figures/leaf_mass.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stemwright {
namespace {

constexpr double pi = std::numbers::pi;

/// Stem 1 alone: three pairs of Small (14 long) at 46, 38 and 30 above the clay.
Plan one(const std::optional<Pose>& pose, double angle = 60) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.kinds[0].angle = degrees(angle);
    plan.stems[0].pose = pose;
    plan.pot.plantingDepth = millimetres(0);
    return plan;
}

HoldFigures holdOf(const Plan& plan) {
    return figures(plan).stems[0].hold;
}

Point3 centreOf(const Plan& plan) {
    return centreOfStem(plan.stems[0], plan, PlanTables(plan), holdOf(plan));
}

void expectNear(const Point3& a, const Point3& b, double off = 1e-9) {
    EXPECT_NEAR(a.x, b.x, off);
    EXPECT_NEAR(a.y, b.y, off);
    EXPECT_NEAR(a.z, b.z, off);
}

TEST(StemCentre, UprightItIsWhereHoldSays) {
    const Plan plan = one(std::nullopt);
    expectNear(centreOf(plan), {0, 0, inMillimetres(holdOf(plan).centre)});
    for (std::uint32_t seed = 0; seed < 20; ++seed) {
        const Plan board = test::randomBoard(seed, 6, 13, 4);
        const Figures all = figures(board);
        const PlanTables tables(board);
        for (std::size_t s = 0; s < board.stems.size(); ++s)
            EXPECT_NEAR(centreOfStem(board.stems[s], board, tables, all.stems[s].hold).z,
                        inMillimetres(all.stems[s].hold.centre), 1e-6);
    }
}

TEST(StemCentre, LeaningItGoesOutAndDown) {
    const double high = inMillimetres(holdOf(one(std::nullopt)).centre);
    const double sine = std::sin(20 * pi / 180), cosine = std::cos(20 * pi / 180);
    expectNear(centreOf(one(Pose{degrees(20), degrees(0), degrees(0), ""})), {-high * sine, 0, high * cosine});
    expectNear(centreOf(one(Pose{degrees(20), degrees(0), degrees(90), ""})), {0, -high * sine, high * cosine});
    expectNear(centreOf(one(Pose{degrees(90), degrees(0), degrees(180), ""})), {high, 0, 0});
}

// By hand: a quarter of a circle of 46 mm, to the right; the pairs' middles go half a leaf's rise along it.
TEST(StemCentre, BentItFollowsTheArc) {
    const Plan plan = one(Pose{degrees(0), degrees(90), degrees(180), ""});
    const double leaf = inGrams(leafMass(plan, plan.kinds[0]));
    const double rest = inGrams(holdOf(plan).mass) - 6 * leaf;
    ASSERT_GT(rest, 0.01);
    const double radius = 46 / (pi / 2), rise = 7 * std::cos(pi / 3);
    // The middle of the arc, from its centre, which lies at (radius, 0): 2 radius / π both ways (textbook).
    double x = rest * (radius - 2 * radius / pi), z = rest * 2 * radius / pi;
    for (const double joint : {46.0, 38.0, 30.0}) {
        const double turned = joint / radius;
        x += 2 * leaf * (radius - radius * std::cos(turned) + rise * std::sin(turned));
        z += 2 * leaf * (radius * std::sin(turned) + rise * std::cos(turned));
    }
    const double all = rest + 6 * leaf;
    expectNear(centreOf(plan), {x / all, 0, z / all}, 1e-5);
    // Bent back by as much as it leans it stands out less than one that only leans.
    EXPECT_LT(centreOf(one(Pose{degrees(40), degrees(-40), degrees(180), ""})).x,
              centreOf(one(Pose{degrees(40), degrees(0), degrees(180), ""})).x);
}

TEST(StemCentre, ALeafOnOneSideOnlyPullsItThere) {
    Plan plan = one(std::nullopt, 90);
    plan.stems[0].tiers[0].slots[1].leaf.mix = {}; // the tip keeps the leaf to the left
    const double leaf = inGrams(leafMass(plan, plan.kinds[0]));
    const Point3 centre = centreOf(plan);
    EXPECT_NEAR(centre.x, -leaf * 7 / inGrams(holdOf(plan).mass), 1e-9);
    EXPECT_NEAR(centre.y, 0, 1e-9);
    // Leaning to the front turns the leaf's side not; leaning to the left turns it down.
    plan.stems[0].pose = Pose{degrees(30), degrees(0), degrees(90), ""};
    EXPECT_NEAR(centreOf(plan).x, centre.x, 1e-9);
    plan.stems[0].pose = Pose{degrees(30), degrees(0), degrees(0), ""};
    EXPECT_NEAR(centreOf(plan).z, centre.z * std::cos(pi / 6) + centre.x / 2, 1e-9);
}

TEST(StemCentre, OfNothingItIsTheFoot) {
    Plan plan = one(Pose{degrees(45), degrees(0), degrees(0), ""});
    plan.stems[0].tiers.clear();
    expectNear(centreOf(plan), {0, 0, 0});
    // What is all under the clay stands there upright.
    plan = one(Pose{degrees(45), degrees(0), degrees(0), ""});
    plan.stems[0].tiers.resize(1);
    plan.pot.plantingDepth = millimetres(100);
    EXPECT_NEAR(centreOf(plan).x, 0, 1e-9);
}

} // namespace
} // namespace stemwright

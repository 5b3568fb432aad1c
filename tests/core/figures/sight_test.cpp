#include "core/figures/sight.h"

#include "core/document/examples.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <numeric>

namespace stemwright {
namespace {

/// One upright stem with one tier of two leaves that hang on it as squares would: seen from the side.
Plan pairOf(std::uint32_t left, std::uint32_t right, double turn) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].tiers.resize(1);
    plan.stems[0].tiers[0].turn = degrees(turn);
    plan.stems[0].tiers[0].slots[0].leaf = {KindId{1}, MixId{left}};
    plan.stems[0].tiers[0].slots[1].leaf = {KindId{1}, MixId{right}};
    plan.stems[0].standing = Standing{};
    plan.kinds[0].angle = degrees(90);
    return plan;
}

TEST(Sight, TwoLeavesSideBySideAreHalfAndHalf) {
    // From above, both are seen whole: plum (mix 1) at the left, sea (mix 3) at the right.
    const Plan plan = pairOf(1, 3, 0);
    const Sight sight = sightOf(plan, plantBody(plan), View(degrees(0), degrees(90)), 0.1);
    EXPECT_NEAR(sight.shares[0], 0.5, 0.005);
    EXPECT_NEAR(sight.shares[1], 0.5, 0.005);
    EXPECT_EQ(sight.ofAll[0], 0.5);
    EXPECT_GT(sight.uncovered, 0.99);
}

TEST(Sight, AFrontLeafHidesTheOneBehind) {
    // Upright leaves at the front and the back: from level only the front one, but for what shows of the stem.
    Plan plan = pairOf(1, 3, 90);
    plan.kinds[0].angle = degrees(0);
    const Sight front = sightOf(plan, plantBody(plan), View(), 0.1);
    EXPECT_NEAR(front.shares[0], 1, 0.005);
    EXPECT_NEAR(front.uncovered, 0.5, 0.02);
    const Sight back = sightOf(plan, plantBody(plan), View(degrees(180)), 0.1);
    EXPECT_NEAR(back.shares[1], 1, 0.005);
    EXPECT_EQ(back.ofAll, front.ofAll);
}

TEST(Sight, ColoursWithinALeafCountByTheirBeads) {
    const Plan plan = pairOf(2, 2, 0); // plum on sea, half and half
    const Sight sight = sightOf(plan, plantBody(plan), View(degrees(0), degrees(90)), 0.1);
    EXPECT_NEAR(sight.ofAll[0], 0.5, 1e-12);
    EXPECT_NEAR(sight.shares[0], 0.5, 0.1);
    EXPECT_NEAR(sight.shares[0] + sight.shares[1], 1, 1e-12);
}

TEST(Sight, EdgeOnNothingIsSeen) {
    const Plan plan = pairOf(1, 3, 0);
    const Sight sight = sightOf(plan, plantBody(plan), View(), 0.1); // level leaves from level
    EXPECT_EQ(sight.uncovered, 0);
    EXPECT_EQ(sight.shares[0], 0);
}

TEST(Sight, BareStretchIsWhatNoLeafCovers) {
    // Side to side, level leaves seen from level: the stem shows from tip to its lowest tier, 16 mm.
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].standing = Standing{};
    plan.kinds[0].angle = degrees(90);
    EXPECT_NEAR(sightOf(plan, plantBody(plan), View(), 0.1).bare[0], 16, 0.3);
    // A leaf that stands up at the front covers what is above its tier: half as wide as long, it hides all 8 mm
    // up.
    plan.kinds[0].angle = degrees(0);
    plan.stems[0].arrangement = Arrangement::onePlane;
    for (Tier& tier : plan.stems[0].tiers)
        tier.turn = degrees(90);
    EXPECT_LT(sightOf(plan, plantBody(plan), View(), 0.1).bare[0], 1);
}

TEST(Sight, WithoutLeavesAllIsNothing) {
    Plan plan = test::smallBoard();
    for (Stem& stem : plan.stems)
        stem.tiers.clear();
    const Sight sight = sightOf(plan, plantBody(plan), View());
    EXPECT_EQ(sight.uncovered, 0);
    EXPECT_EQ(std::accumulate(sight.shares.begin(), sight.shares.end(), 0.0), 0);
    plan.stems.clear();
    EXPECT_TRUE(sightOf(plan, plantBody(plan), View()).bare.empty());
}

TEST(Sight, CoarseAndFineAgree) {
    const Plan plan = example("succulent");
    const PlantBody plant = plantBody(plan);
    const View view(degrees(40), degrees(20));
    const Sight coarse = sightOf(plan, plant, view), fine = sightOf(plan, plant, view, 0.08);
    for (std::size_t i = 0; i < plan.colours.size(); ++i)
        EXPECT_NEAR(coarse.shares[i], fine.shares[i], 0.015) << plan.colours[i].name;
    EXPECT_NEAR(coarse.uncovered, fine.uncovered, 0.015);
}

TEST(Sight, ALeafAMetreLongKeepsTheRasterSmall) {
    Plan plan = test::smallBoard();
    plan.kinds[0].length = millimetres(1000);
    const Sight sight = sightOf(plan, plantBody(plan), View(degrees(10), degrees(30)));
    EXPECT_GT(sight.step, 1);
    EXPECT_GT(sight.uncovered, 0.2);
}

} // namespace
} // namespace stemwright

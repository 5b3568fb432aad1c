#include "core/figures/pot_findings.h"
#include "core/figures/touching.h"

#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stemwright {
namespace {

/// Two stems `apart` from left to right, each with one tier of two level leaves, 14 × 9, side to side.
Plan two(double apart, double firstTail = 30, double secondTail = 30) {
    Plan plan = test::smallBoard();
    plan.stems.resize(2);
    plan.kinds[0].angle = degrees(90);
    for (std::size_t i = 0; i < 2; ++i) {
        plan.stems[i].tiers.resize(1);
        plan.stems[i].standing = Standing{millimetres(i == 0 ? 0 : apart), millimetres(0), ""};
        plan.stems[i].tail = millimetres(i == 0 ? firstTail : secondTail);
    }
    return plan;
}

bool has(const std::vector<Finding>& findings, FindingCode code) {
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
}

TEST(Touching, LevelLeavesInOnePlaneShareAnArea) {
    // The right leaf of one and the left of the other reach 14 mm and more to each other.
    EXPECT_TRUE(touchingLeaves(plantBody(two(40))).empty());
    const auto touches = touchingLeaves(plantBody(two(20)));
    ASSERT_EQ(touches.size(), 1u);
    EXPECT_EQ(touches[0].one, 1u);
    EXPECT_EQ(touches[0].other, 2u);
    EXPECT_GT(touches[0].length, 5);
}

TEST(Touching, OneAboveTheOtherDoesNotMeet) {
    EXPECT_TRUE(touchingLeaves(plantBody(two(20, 30, 34))).empty());
    EXPECT_EQ(touchingLeaves(plantBody(two(20, 30, 30.5))).size(), 1u) << "half a bead apart they do";
}

TEST(Touching, CutOfCrossedLeavesIsAsLongAsTheyShare) {
    // A level leaf of the first stem and an upright one of the second, across it at 7 mm: the cut is as wide as
    // the narrower of the two where they meet.
    Plan plan = two(7 + 0.7, 30, 25);
    plan.kinds[1].angle = degrees(0);
    plan.kinds[1].length = millimetres(14);
    plan.kinds[1].width = millimetres(9);
    plan.stems[1].tiers[0].slots[0].leaf.kind = KindId{2};
    plan.stems[1].tiers[0].slots[1].leaf = {};
    const PlantBody plant = plantBody(plan);
    const auto touches = touchingLeaves(plant);
    ASSERT_EQ(touches.size(), 1u);
    EXPECT_GT(touches[0].length, 7);
    EXPECT_LE(touches[0].length, 9);
    EXPECT_NEAR(cutLength(plant, plant.leaves[touches[0].other], plant.leaves[touches[0].one]),
                touches[0].length, 1e-9)
        << "whichever way it is asked";
}

TEST(Touching, LeavesOfOneTierNeverDo) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].tiers.resize(1);
    plan.stems[0].tiers[0].slots.push_back(plan.stems[0].tiers[0].slots[0]);
    EXPECT_TRUE(touchingLeaves(plantBody(plan)).empty());
}

TEST(Touching, SweepFindsWhatComparingAllFinds) {
    const Plan plan = test::randomBoard(5, 6, 12, 4);
    const PlantBody plant = plantBody(plan);
    std::size_t expected = 0;
    for (std::size_t i = 0; i < plant.leaves.size(); ++i)
        for (std::size_t j = i + 1; j < plant.leaves.size(); ++j) {
            const LeafBody &a = plant.leaves[i], &b = plant.leaves[j];
            if (a.stem == b.stem && a.at.tier == b.at.tier)
                continue;
            expected += cutLength(plant, a, b) >= leastTouch;
        }
    EXPECT_EQ(touchingLeaves(plant).size(), expected);
}

TEST(PotFindings, TellWhoMeetsWhomAndWhere) {
    const Plan plan = two(20);
    const auto found = potFindings(plan, plantBody(plan));
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].code, FindingCode::leavesTouch);
    EXPECT_EQ(found[0].stem, StemId{1});
    EXPECT_EQ(found[0].tier, 0);
    EXPECT_EQ(found[0].slot, 1);
    EXPECT_EQ(found[0].values[0], "Stem 2");
    EXPECT_EQ(found[0].values[1], "1");
}

TEST(PotFindings, StakesAndClay) {
    Plan plan = two(2.4); // feet of 1.3 mm stakes, or as thick as their stems
    auto found = potFindings(plan, plantBody(plan));
    EXPECT_FALSE(has(found, FindingCode::outsideClay));
    const double needed = 2 * footRadius(plan, plantBody(plan).stems[0]);
    plan.stems[1].standing->x = millimetres(needed - 0.2);
    EXPECT_TRUE(has(potFindings(plan, plantBody(plan)), FindingCode::stakesTouch));
    plan.stems[1].standing->x = millimetres(needed + 0.2);
    EXPECT_FALSE(has(potFindings(plan, plantBody(plan)), FindingCode::stakesTouch));

    plan.stems[1].standing->x = millimetres(59.5); // the clay reaches 60 mm
    found = potFindings(plan, plantBody(plan));
    ASSERT_TRUE(has(found, FindingCode::outsideClay));
    EXPECT_EQ(std::find_if(found.begin(), found.end(),
                           [](const Finding& f) { return f.code == FindingCode::outsideClay; })
                  ->stem,
              StemId{2});
}

TEST(PotFindings, APotSmallerThanItsStakes) {
    Plan plan = test::smallBoard();
    plan.pot.topDiameter = millimetres(2.5); // three stakes of 1.3 need 2.155 × 1.3 = 2.8
    const auto found = potFindings(plan, plantBody(plan));
    EXPECT_TRUE(has(found, FindingCode::potTooSmall));
    EXPECT_FALSE(found.back().stem);
    EXPECT_EQ(found.back().values, (std::vector<std::string>{"2.8", "2.5"}));
    plan.pot.topDiameter = millimetres(3);
    EXPECT_FALSE(has(potFindings(plan, plantBody(plan)), FindingCode::potTooSmall));
    plan.pot.opening = PotOpening::rectangular;
    plan.pot.topDiameter = millimetres(4);
    plan.pot.topBreadth = millimetres(1.4);
    EXPECT_FALSE(has(potFindings(plan, plantBody(plan)), FindingCode::potTooSmall)) << "3 × 1.3 in a row";
    plan.pot.topBreadth = millimetres(1.2);
    EXPECT_TRUE(has(potFindings(plan, plantBody(plan)), FindingCode::potTooSmall)) << "narrower than one";
    plan.pot.topBreadth = millimetres(2);
    plan.pot.topDiameter = millimetres(2);
    EXPECT_TRUE(has(potFindings(plan, plantBody(plan)), FindingCode::potTooSmall))
        << "three of 1.3 fill 3.98 mm² of 4, more than discs can";
    plan.stems.clear();
    EXPECT_TRUE(potFindings(plan, plantBody(plan)).empty());
}

TEST(PotFindings, ALeafAMetreLongIsOutOfScaleAndSaidOnce) {
    Plan plan = test::smallBoard();
    EXPECT_FALSE(has(potFindings(plan, plantBody(plan)), FindingCode::leafOutOfScale));
    plan.kinds[0].length = millimetres(1000);
    const auto found = potFindings(plan, plantBody(plan));
    EXPECT_EQ(std::count_if(found.begin(), found.end(),
                            [](const Finding& f) { return f.code == FindingCode::leafOutOfScale; }),
              1);
    const auto it = std::find_if(found.begin(), found.end(),
                                 [](const Finding& f) { return f.code == FindingCode::leafOutOfScale; });
    ASSERT_NE(it, found.end());
    EXPECT_EQ(it->values[0], plan.kinds[0].name);
    EXPECT_EQ(it->values[1], "1000.0");
    const Slot* at = find(plan, SlotRef{it->stem, it->tier, it->slot});
    ASSERT_NE(at, nullptr);
    EXPECT_EQ(at->leaf.kind, plan.kinds[0].id);
}

TEST(PotFindings, AStemOutsideAnOvalsClay) {
    Plan plan = test::smallBoard();
    plan.pot.opening = PotOpening::oval;
    plan.pot.topDiameter = plan.pot.bottomDiameter = millimetres(120);
    plan.pot.topBreadth = millimetres(60);
    plan.stems[0].standing = Standing{millimetres(0), millimetres(45), ""};
    const auto found = potFindings(plan, plantBody(plan));
    EXPECT_TRUE(has(found, FindingCode::outsideClay));
    plan.pot.opening = PotOpening::round;
    EXPECT_FALSE(has(potFindings(plan, plantBody(plan)), FindingCode::outsideClay));
}

} // namespace
} // namespace stemwright

#include "core/figures/hold.h"

#include "core/figures/findings.h"
#include "core/figures/leaf_mass.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

HoldFigures holdOf(const Plan& plan, std::size_t stem = 0) {
    return figures(plan).stems[stem].hold;
}

/// A stem of many heavy leaves on thin wire.
Plan topHeavy() {
    Plan plan = test::largeBoard(2, 40);
    for (Kind& kind : plan.kinds)
        kind.wireDiameter = millimetres(0.2);
    EXPECT_FALSE(firstProblem(plan));
    return plan;
}

TEST(Hold, ALeafWeighsItsBeadsAndItsWire) {
    KindForm kind;
    kind.beads = 105; // of 11/0 to the gram
    kind.wire = millimetres(0);
    EXPECT_NEAR(inGrams(leafMass({}, kind)), 1, 1e-9);
    kind.wire = millimetres(1000);
    kind.wireDiameter = millimetres(0.32);
    // π/4 · 0.32² mm² · 1 m · 8940 kg/m³
    EXPECT_NEAR(inGrams(leafMass({}, kind)), 1 + 0.71899, 1e-4);
    kind.beadSize = "of glass";
    EXPECT_NEAR(inGrams(leafMass({}, kind)), 0.71899, 1e-4);
}

TEST(Hold, NothingToHoldIsNoHold) {
    Plan plan = test::smallBoard();
    const HoldFigures hold = holdOf(plan, 2);
    EXPECT_EQ(hold, HoldFigures{});
    EXPECT_FALSE(smallestCore(plan.stems[2], plan, PlanTables(plan), {}));
}

TEST(Hold, MoreAndStrongerWireHoldsMore) {
    Plan plan = test::smallBoard();
    const double before = holdOf(plan).hold;
    EXPECT_GT(before, 0);
    plan.kinds[0].metal = Metal::hardCopper;
    EXPECT_GT(holdOf(plan).hold, before);
    plan.kinds[0].metal = Metal::softCopper;
    plan.stems[0].core = CoreWire{millimetres(1), std::nullopt, Metal::softSteel, ""};
    EXPECT_GT(holdOf(plan).hold, before);
    EXPECT_LT(holdOf(plan).sag, holdOf(test::smallBoard()).sag);
}

TEST(Hold, WhatIsUnderTheClayDoesNotWeighOnIt) {
    Plan plan = test::smallBoard();
    const HoldFigures before = holdOf(plan);
    plan.pot.plantingDepth = plan.stems[0].tail;
    EXPECT_LT(holdOf(plan).moment, before.moment);
    EXPECT_LT(holdOf(plan).mass, before.mass);
    plan.pot.plantingDepth = plan.stems[0].tail + millimetres(100);
    EXPECT_GT(holdOf(plan).moment, 0) << "leaves rise above their joints";
}

TEST(Hold, TheSmallestCoreIsEnoughAndNoThinnerOneIs) {
    Plan plan = topHeavy();
    const PlanTables tables(plan);
    const auto wraps = figures(plan).stems[0].wraps;
    const auto core = smallestCore(plan.stems[0], plan, tables, wraps);
    ASSERT_TRUE(core);
    EXPECT_EQ(core->metal, Metal::softSteel);
    Stem with = plan.stems[0];
    with.core = core;
    EXPECT_GE(holdFigures(with, plan, tables, wraps).hold, wantedHold);
    with.core->diameter = core->diameter - millimetres(0.1);
    EXPECT_LT(holdFigures(with, plan, tables, wraps).hold, wantedHold);
}

TEST(Hold, AWeakStemIsFoundAndItsRemedyIsTheCore) {
    const Plan plan = topHeavy();
    const Figures all = figures(plan);
    int found = 0;
    for (const Finding& finding : findings(plan, all)) {
        if (finding.code != FindingCode::holdsTooLittle)
            continue;
        ++found;
        EXPECT_LT(std::stod(finding.values[0]), weakHold + 0.05);
        const auto remedy = remedyFor(plan, all, finding);
        ASSERT_TRUE(remedy);
        Plan after = plan;
        ASSERT_TRUE(apply(after, *remedy));
        const Stem& stem = *find(after, finding.stem);
        ASSERT_TRUE(stem.core);
        EXPECT_NEAR(inMillimetres(stem.core->diameter), std::stod(finding.values[1]), 1e-9);
        for (const Finding& then : findings(after, figures(after)))
            EXPECT_FALSE(then.code == FindingCode::holdsTooLittle && then.stem == finding.stem);
        after = plan;
        after.stems[0].tiers[0].progress.bound = after.stems[1].tiers[0].progress.bound = true;
        EXPECT_FALSE(remedyFor(after, all, finding)) << "a core goes in before the first pair";
    }
    EXPECT_EQ(found, 2);
}

} // namespace
} // namespace stemwright

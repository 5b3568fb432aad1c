#include "core/figures/figures.h"
#include "tests/support/boards.h"
#include "tests/support/random_edits.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stemwright {
namespace {

/// Compares to the last digit, and says which figure differs.
void expectSame(const Figures& kept, const Figures& fresh) {
    EXPECT_EQ(kept.lines, fresh.lines);
    ASSERT_EQ(kept.stems.size(), fresh.stems.size());
    for (std::size_t i = 0; i < kept.stems.size(); ++i) {
        const StemFigures& a = kept.stems[i];
        const StemFigures& b = fresh.stems[i];
        EXPECT_EQ(a.stem, b.stem);
        EXPECT_EQ(a.height, b.height);
        EXPECT_EQ(a.tiers, b.tiers);
        EXPECT_EQ(a.slots, b.slots);
        EXPECT_EQ(a.leaves, b.leaves);
        EXPECT_EQ(a.held, b.held);
        EXPECT_EQ(a.fairShare, b.fairShare);
        EXPECT_EQ(a.unevenness, b.unevenness);
        EXPECT_EQ(a.drift, b.drift);
        EXPECT_EQ(a.beads, b.beads);
        EXPECT_EQ(a.inversions, b.inversions);
        EXPECT_EQ(a.unmatchedPairs, b.unmatchedPairs);
        EXPECT_EQ(a.wires, b.wires);
        EXPECT_EQ(a.bundle, b.bundle);
        EXPECT_EQ(a.leafWire, b.leafWire);
        EXPECT_EQ(a.wraps, b.wraps);
        EXPECT_EQ(a.hold, b.hold);
    }
    const PotFigures& a = kept.pot;
    const PotFigures& b = fresh.pot;
    EXPECT_EQ(a.stems, b.stems);
    EXPECT_EQ(a.slots, b.slots);
    EXPECT_EQ(a.leaves, b.leaves);
    EXPECT_EQ(a.inTray, b.inTray);
    EXPECT_EQ(a.unevenness, b.unevenness);
    EXPECT_EQ(a.drift, b.drift);
    EXPECT_EQ(a.shortest, b.shortest);
    EXPECT_EQ(a.tallest, b.tallest);
    EXPECT_EQ(a.meanHeight, b.meanHeight);
    EXPECT_EQ(a.heightVariation, b.heightVariation);
    EXPECT_EQ(a.nearTwins, b.nearTwins);
    EXPECT_EQ(a.beads, b.beads);
    EXPECT_EQ(a.allBeads, b.allBeads);
    EXPECT_EQ(a.leafWire, b.leafWire);
    EXPECT_EQ(a.allLeafWire, b.allLeafWire);
    EXPECT_EQ(a.toMake, b.toMake);
    EXPECT_EQ(a.mass, b.mass);
    EXPECT_EQ(a.wraps, b.wraps);
}

void expectForetold(const WhatIf& what, const Figures& before, const Figures& after, const Reach& reach) {
    EXPECT_EQ(what.potDriftBefore, before.pot.drift);
    EXPECT_EQ(what.potDriftAfter, after.pot.drift);
    EXPECT_EQ(what.potUnevennessBefore, before.pot.unevenness);
    EXPECT_EQ(what.potUnevennessAfter, after.pot.unevenness);
    EXPECT_EQ(what.shortestBefore, before.pot.shortest);
    EXPECT_EQ(what.shortestAfter, after.pot.shortest);
    EXPECT_EQ(what.tallestBefore, before.pot.tallest);
    EXPECT_EQ(what.tallestAfter, after.pot.tallest);
    std::size_t listed = 0;
    for (const StemFigures& then : after.stems)
        for (const StemFigures& was : before.stems) {
            if (was.stem != then.stem)
                continue;
            if (!reach.everything &&
                std::find(reach.stems.begin(), reach.stems.end(), was.stem) == reach.stems.end())
                continue;
            ASSERT_LT(listed, what.stems.size());
            const StemWhatIf& told = what.stems[listed++];
            EXPECT_EQ(told.stem, was.stem);
            EXPECT_EQ(told.driftBefore, was.drift);
            EXPECT_EQ(told.driftAfter, then.drift);
            EXPECT_EQ(told.unevennessBefore, was.unevenness);
            EXPECT_EQ(told.unevennessAfter, then.unevenness);
            EXPECT_EQ(told.heightBefore, was.height);
            EXPECT_EQ(told.heightAfter, then.height);
            EXPECT_EQ(told.leavesBefore, was.leaves);
            EXPECT_EQ(told.leavesAfter, then.leaves);
            EXPECT_EQ(told.inversionsBefore, was.inversions);
            EXPECT_EQ(told.inversionsAfter, then.inversions);
            EXPECT_EQ(told.unmatchedBefore, was.unmatchedPairs);
            EXPECT_EQ(told.unmatchedAfter, then.unmatchedPairs);
        }
    EXPECT_EQ(listed, what.stems.size());
    const auto sum = [](const Figures& all, int StemFigures::*of) {
        int total = 0;
        for (const StemFigures& stem : all.stems)
            total += stem.*of;
        return total;
    };
    EXPECT_EQ(what.inversionsBefore, sum(before, &StemFigures::inversions));
    EXPECT_EQ(what.inversionsAfter, sum(after, &StemFigures::inversions));
    EXPECT_EQ(what.unmatchedBefore, sum(before, &StemFigures::unmatchedPairs));
    EXPECT_EQ(what.unmatchedAfter, sum(after, &StemFigures::unmatchedPairs));
}

// Whatever is edited, the kept figures are those of the plan, and what was foretold is what came.
TEST(ReckonerProperty, AgreesWithFiguresFromNothingToTheLastDigit) {
    int made = 0;
    for (std::uint32_t seed = 0; seed < 400 && !HasFailure(); ++seed) {
        Plan plan = test::randomBoard(seed % 40, 4, 8, 4);
        Reckoner reckoner(plan);
        test::RandomEdits random(seed);
        for (int step = 0; step < 12 && !plan.stems.empty() && !HasFailure(); ++step) {
            SCOPED_TRACE("seed " + std::to_string(seed) + ", step " + std::to_string(step));
            const Edit edit = random.next(plan);
            const Reach reach = reachOf(edit);
            Plan after = plan;
            const auto applied = apply(after, edit);
            const Figures before = reckoner.figures();
            const auto what = reckoner.whatIf(edit);
            ASSERT_EQ(what.ok(), applied.ok());
            EXPECT_EQ(reckoner.plan(), plan) << "asking has changed the plan";
            expectSame(reckoner.figures(), before);
            if (!applied) {
                EXPECT_EQ(what.problem(), applied.problem());
                continue;
            }
            ++made;
            const Figures fresh = figures(after);
            expectForetold(what.value(), before, fresh, reach);
            reckoner.follow(after, reach);
            EXPECT_EQ(reckoner.plan(), after);
            expectSame(reckoner.figures(), fresh);
            plan = after;
        }
    }
    EXPECT_GT(made, 1'200) << "too few of the edits were possible for the test to mean anything";
}

} // namespace
} // namespace stemwright

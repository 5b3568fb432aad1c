#include "core/figures/best_swap.h"
#include "core/figures/figures.h"
#include "core/figures/findings.h"
#include "core/plan/edit.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

double unevenness(const Plan& plan) {
    return figures(plan).pot.unevenness;
}

/// Every swap tried on the plan itself.
double bestByTrying(const Plan& plan, StemId only, std::optional<Leaf> gives = {}) {
    const double before = unevenness(plan);
    double best = 0;
    std::vector<SlotRef> open;
    for (const Stem& stem : plan.stems)
        for (int t = 0; t < static_cast<int>(stem.tiers.size()); ++t)
            for (int s = 0; s < static_cast<int>(stem.tiers[static_cast<std::size_t>(t)].slots.size()); ++s)
                if (const SlotRef at{stem.id, t, s}; find(plan, at)->filled() && !find(plan, at)->pinned &&
                                                     !stem.locked &&
                                                     !stem.tiers[static_cast<std::size_t>(t)].progress.bound)
                    open.push_back(at);
    for (const SlotRef& a : open)
        for (const SlotRef& b : open)
            if (a < b && a.stem != b.stem && find(plan, a)->leaf.kind == find(plan, b)->leaf.kind &&
                (!only || a.stem == only || b.stem == only) &&
                (!gives || find(plan, a.stem == only ? a : b)->leaf == *gives)) {
                Plan after = plan;
                EXPECT_TRUE(apply(after, SwapSlots{a, b}));
                best = std::min(best, unevenness(after) - before);
            }
    return best;
}

TEST(BestSwap, IsTheBestOfAllSwaps) {
    for (std::uint32_t seed = 0; seed < 25; ++seed) {
        Plan plan = test::randomBoard(seed, 4, 8, 3 + static_cast<int>(seed % 3));
        plan.stems[seed % 4].locked = seed % 3 == 0;
        plan.stems[1].tiers[0].progress.bound = true;
        for (const StemId only : {StemId{}, StemId{1}, StemId{3}}) {
            const double expected = bestByTrying(plan, only);
            const auto swap = bestSwap(plan, {only, {}});
            if (expected > -1e-9) {
                EXPECT_FALSE(swap);
                continue;
            }
            ASSERT_TRUE(swap);
            EXPECT_NEAR(swap->change, expected, 1e-9);
            Plan after = plan;
            ASSERT_TRUE(apply(after, SwapSlots{swap->a, swap->b}));
            EXPECT_NEAR(unevenness(after) - unevenness(plan), expected, 1e-9);
            EXPECT_FALSE(find(plan, swap->a)->pinned || find(plan, swap->b)->pinned);
        }
    }
}

// What a finding that a stem leans offers is the best swap of the leaf that it leans to.
TEST(BestSwap, IsTheRemedyOfAStemThatLeans) {
    int leaning = 0;
    for (std::uint32_t seed = 0; seed < 25; ++seed) {
        const Plan plan = test::randomBoard(seed, 4, 12, 4);
        const Figures now = figures(plan);
        for (const Finding& finding : findings(plan, now)) {
            if (finding.code != FindingCode::leans)
                continue;
            double best = 0;
            for (const TrayLine& line : now.lines)
                if (find(plan, line.leaf.mix)->name == finding.values[0] &&
                    find(plan, line.leaf.kind)->name == finding.values[1])
                    best = bestByTrying(plan, finding.stem, line.leaf);
            const auto remedy = remedyFor(plan, now, finding);
            ASSERT_EQ(remedy.has_value(), best < -1e-9);
            if (!remedy)
                continue;
            Plan after = plan;
            ASSERT_TRUE(apply(after, *remedy));
            EXPECT_NEAR(unevenness(after) - unevenness(plan), best, 1e-9);
            ++leaning;
        }
    }
    EXPECT_GT(leaning, 20);
}

TEST(BestSwap, IsNoneOnBoardsWithoutLeavesOrWithOneStem) {
    EXPECT_FALSE(bestSwap(Plan{}));
    EXPECT_FALSE(bestSwap(test::randomBoard(1, 1, 12, 4)));
}

} // namespace
} // namespace stemwright

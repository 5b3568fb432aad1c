#include "core/suggest/order.h"

#include "core/suggest/plan_counts.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace stemwright {
namespace {

/// One stem, its tiers given by their mixes (1 …), with pins and one kind.
Plan oneStem(const std::vector<std::vector<int>>& tiers, int mixes, Arrangement arrangement) {
    Plan plan = test::randomBoard(1, 1, 0, mixes, 1);
    Stem& stem = plan.stems[0];
    stem.arrangement = arrangement;
    for (const std::vector<int>& mixesOfTier : tiers) {
        Tier tier = newTier(stem, stem.tiers.empty() ? nullptr : &stem.tiers.back(), KindId{1});
        tier.slots.assign(mixesOfTier.size(), Slot{});
        for (std::size_t i = 0; i < mixesOfTier.size(); ++i) {
            tier.slots[i].leaf = {KindId{1}, MixId{static_cast<std::uint32_t>(mixesOfTier[i])}};
            ++plan.kinds[0].stock[static_cast<std::size_t>(mixesOfTier[i]) - 1].made;
        }
        stem.tiers.push_back(tier);
    }
    return plan;
}

std::vector<std::vector<int>> mixesOf(const Stem& stem) {
    std::vector<std::vector<int>> tiers;
    for (const Tier& tier : stem.tiers) {
        tiers.emplace_back();
        for (const Slot& slot : tier.slots)
            tiers.back().push_back(static_cast<int>(slot.leaf.mix.value));
    }
    return tiers;
}

/// The least pair of wishes over every way to put the leaves.
std::pair<int, int> leastOf(Plan plan, bool pairsFirst) {
    std::vector<Slot*> open;
    std::vector<MixId> leaves;
    for (Tier& tier : plan.stems[0].tiers)
        for (Slot& slot : tier.slots)
            if (!slot.pinned) {
                open.push_back(&slot);
                leaves.push_back(slot.leaf.mix);
            }
    std::sort(leaves.begin(), leaves.end());
    std::pair<int, int> least{1 << 20, 0};
    do {
        for (std::size_t i = 0; i < open.size(); ++i)
            open[i]->leaf.mix = leaves[i];
        const int unmatched = unmatchedPairsOf(plan), inversions = static_cast<int>(inversionsOf(plan));
        least =
            std::min(least, pairsFirst ? std::pair(unmatched, inversions) : std::pair(inversions, unmatched));
    } while (std::next_permutation(leaves.begin(), leaves.end()));
    return least;
}

TEST(Order, IsNeverBeatenOnSmallStems) {
    std::mt19937 random(3);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    for (int round = 0; round < 120; ++round) {
        const auto arrangement = static_cast<Arrangement>(below(5));
        std::vector<std::vector<int>> tiers;
        const int mixes = 2 + below(4);
        int leaves = 0;
        while (leaves < 7) {
            const int slots = arrangement == Arrangement::whorled ? 3 : 1 + below(2);
            tiers.emplace_back();
            for (int i = 0; i < slots; ++i)
                tiers.back().push_back(1 + below(mixes));
            leaves += slots;
        }
        Plan plan = oneStem(tiers, mixes, arrangement);
        for (Tier& tier : plan.stems[0].tiers)
            for (Slot& slot : tier.slots)
                slot.pinned = round % 2 == 0 && below(4) == 0;
        for (const bool pairsFirst : {true, false}) {
            OrderOptions options;
            options.matchedPairs = pairsFirst;
            const Suggestion suggestion = order(plan, options);
            const Plan after = taken(plan, suggestion);
            ASSERT_FALSE(firstProblem(after));
            const int unmatched = unmatchedPairsOf(after), inversions = static_cast<int>(inversionsOf(after));
            ASSERT_EQ(pairsFirst ? std::pair(unmatched, inversions) : std::pair(inversions, unmatched),
                      leastOf(plan, pairsFirst))
                << round;
            EXPECT_TRUE(suggestion.proved);
            EXPECT_EQ(suggestion.unmatchedAfter, unmatched);
            EXPECT_EQ(suggestion.inversionsAfter, inversions);
            EXPECT_EQ(suggestion.inversionsBound, inversions);
            for (std::size_t t = 0; t < tiers.size(); ++t)
                for (std::size_t s = 0; s < tiers[t].size(); ++s)
                    if (plan.stems[0].tiers[t].slots[s].pinned) {
                        EXPECT_EQ(after.stems[0].tiers[t].slots[s], plan.stems[0].tiers[t].slots[s]);
                    }
            EXPECT_TRUE(order(after, options).edits.edits.empty());
        }
    }
}

TEST(Order, UnmatchedLeavesJoinTheNextInTheOrder) {
    const Plan plan = oneStem({{3, 1}, {2, 1}, {4, 2}, {1, 2}}, 4, Arrangement::decussate);
    const Suggestion suggestion = order(plan);
    const Plan after = taken(plan, suggestion);
    EXPECT_EQ(suggestion.unmatchedAfter, 2);
    EXPECT_EQ(suggestion.inversionsAfter, 0);
    auto tiers = mixesOf(after.stems[0]);
    for (std::vector<int>& tier : tiers)
        std::sort(tier.begin(), tier.end());
    EXPECT_EQ(tiers, (std::vector<std::vector<int>>{{1, 1}, {1, 2}, {2, 2}, {3, 4}}));
}

TEST(Order, SmallerKindsGoAbove) {
    Plan plan = test::smallBoard();
    Stem& stem = plan.stems[2];
    for (const std::uint32_t kind : {2U, 1U, 2U, 1U}) {
        Tier tier = newTier(stem, stem.tiers.empty() ? nullptr : &stem.tiers.back(), KindId{kind});
        for (Slot& slot : tier.slots)
            slot.leaf.mix = MixId{kind == 2U ? 2U : 1U + 2U * static_cast<unsigned>(stem.tiers.size() > 1)};
        if (kind == 1)
            tier.slots[1].leaf.mix = MixId{};
        stem.tiers.push_back(tier);
    }
    ASSERT_FALSE(firstProblem(plan));
    const Plan after = taken(plan, order(plan));
    EXPECT_FALSE(firstProblem(after));
    std::vector<std::uint32_t> kinds;
    for (const Tier& tier : after.stems[2].tiers)
        for (const Slot& slot : tier.slots)
            if (slot.filled())
                kinds.push_back(slot.leaf.kind.value);
    EXPECT_EQ(kinds, (std::vector<std::uint32_t>{1, 1, 2, 2, 2, 2}));
}

TEST(Order, KeepsEveryStemsLeavesAndTouchesNoPin) {
    for (std::uint32_t seed = 0; seed < 30; ++seed) {
        Plan plan = test::randomBoard(seed, 4, 24, 5);
        plan.stems[1].locked = true;
        plan.stems[2].tiers[0].progress.bound = true;
        const Suggestion suggestion = order(plan);
        const Plan after = taken(plan, suggestion);
        EXPECT_TRUE(suggestion.proved);
        EXPECT_NEAR(suggestion.after, suggestion.before, 1e-9);
        EXPECT_LE(suggestion.unmatchedBound, suggestion.unmatchedAfter);
        EXPECT_EQ(after.stems[1], plan.stems[1]);
        EXPECT_EQ(after.stems[2].tiers[0], plan.stems[2].tiers[0]);
        for (std::size_t s = 0; s < plan.stems.size(); ++s) {
            const auto leaves = [](const Stem& stem) {
                std::vector<std::pair<KindId, MixId>> all;
                for (const Tier& tier : stem.tiers)
                    for (const Slot& slot : tier.slots)
                        if (slot.filled())
                            all.emplace_back(slot.leaf.kind, slot.leaf.mix);
                std::sort(all.begin(), all.end());
                return all;
            };
            EXPECT_EQ(leaves(plan.stems[s]), leaves(after.stems[s]));
        }
        EXPECT_TRUE(order(after).edits.edits.empty());
        // One stem's part of it can be taken alone.
        Plan one = plan;
        ASSERT_TRUE(apply(one, takenForStem(plan, suggestion, plan.stems[0].id).value()));
        EXPECT_EQ(one.stems[0], after.stems[0]);
        EXPECT_EQ(one.stems[3], plan.stems[3]);
    }
}

TEST(Order, OutOfStepsItGivesAGoodOrderAndSaysSo) {
    const Plan plan = test::randomBoard(9, 3, 40, 9, 1);
    OrderOptions options;
    options.search.steps = 5;
    const Suggestion quick = order(plan, options);
    EXPECT_TRUE(quick.stopped);
    EXPECT_FALSE(firstProblem(taken(plan, quick)));
    const Suggestion full = order(plan);
    EXPECT_LE(quick.unmatchedBound, full.unmatchedAfter);
    EXPECT_GE(quick.unmatchedAfter, full.unmatchedAfter);
}

} // namespace
} // namespace stemwright

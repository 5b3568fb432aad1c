#include "core/suggest/plan_counts.h"
#include "core/suggest/spread.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <map>
#include <random>

namespace stemwright {
namespace {

using Counts = std::array<int, 3>;

/// Everything one stem can hold in its open slots, and the fewest unmatched pairs with it.
std::map<Counts, int> waysOf(Stem stem) {
    std::vector<Slot*> open;
    for (Tier& tier : stem.tiers)
        for (Slot& slot : tier.slots)
            if (!slot.pinned)
                open.push_back(&slot);
    std::map<Counts, int> ways;
    int all = 1;
    for (std::size_t i = 0; i < open.size(); ++i)
        all *= 3;
    Plan plan;
    for (int way = 0; way < all; ++way) {
        Counts counts{};
        int rest = way;
        for (Slot* slot : open) {
            ++counts[static_cast<std::size_t>(rest % 3)];
            slot->leaf.mix = MixId{static_cast<std::uint32_t>(rest % 3) + 1};
            rest /= 3;
        }
        plan.stems = {stem};
        // The plan holds a copy; its slots are filled above before it is made.
        const int unmatched = unmatchedPairsOf(plan);
        const auto [it, isNew] = ways.emplace(counts, unmatched);
        if (!isNew)
            it->second = std::min(it->second, unmatched);
    }
    return ways;
}

/// The least (unmatched, unevenness) over everything the stems can hold.
std::pair<int, double> leastOf(const Plan& plan) {
    std::vector<std::map<Counts, int>> ways;
    std::vector<Counts> pinned;
    std::vector<int> leaves;
    Counts left{};
    for (std::size_t m = 0; m < 3; ++m)
        left[m] = plan.kinds[0].stock[m].total();
    int total = 0;
    for (const Stem& stem : plan.stems) {
        ways.push_back(waysOf(stem));
        pinned.push_back({});
        leaves.push_back(0);
        for (const Tier& tier : stem.tiers)
            for (const Slot& slot : tier.slots) {
                ++leaves.back();
                if (slot.pinned) {
                    ++pinned.back()[slot.leaf.mix.value - 1];
                    --left[slot.leaf.mix.value - 1];
                }
            }
        total += leaves.back();
    }
    std::pair<int, double> least{1 << 20, 0};
    std::vector<Counts> held(plan.stems.size());
    const auto visit = [&](const auto& self, std::size_t s, Counts rest, int unmatched) -> void {
        if (s == held.size()) {
            double sum = 0;
            for (std::size_t m = 0; m < 3; ++m) {
                int placed = 0;
                for (std::size_t i = 0; i < held.size(); ++i)
                    placed += held[i][m] + pinned[i][m];
                for (std::size_t i = 0; i < held.size(); ++i) {
                    const double off =
                        held[i][m] + pinned[i][m] - static_cast<double>(leaves[i]) * placed / total;
                    sum += off * off;
                }
            }
            if (unmatched < least.first || (unmatched == least.first && sum < least.second))
                least = {unmatched, sum};
            return;
        }
        for (const auto& [counts, pairs] : ways[s])
            if (counts[0] <= rest[0] && counts[1] <= rest[1] && counts[2] <= rest[2]) {
                held[s] = counts;
                self(self, s + 1, {rest[0] - counts[0], rest[1] - counts[1], rest[2] - counts[2]},
                     unmatched + pairs);
            }
    };
    visit(visit, 0, left, 0);
    return least;
}

/// Stems of one to two pairs, some with a pinned leaf in them, some with a single leaf at the tip.
Plan smallPairs(std::uint32_t seed) {
    std::mt19937 random(seed);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    Plan plan = test::randomBoard(seed, 2 + below(2), 0, 3, 1);
    for (StockLine& line : plan.kinds[0].stock)
        line.toMake = 0;
    const auto leaf = [&] {
        const int mix = below(3);
        ++plan.kinds[0].stock[static_cast<std::size_t>(mix)].made;
        return Leaf{KindId{1}, MixId{static_cast<std::uint32_t>(mix) + 1}};
    };
    for (Stem& stem : plan.stems) {
        if (below(8) == 0)
            stem.arrangement = Arrangement::alternate;
        const int tiers = 1 + below(2);
        for (int t = 0; t < tiers; ++t) {
            Tier tier = newTier(stem, nullptr, KindId{1});
            for (Slot& slot : tier.slots) {
                slot.leaf = leaf();
                slot.pinned = below(4) == 0;
                if (!slot.pinned && below(4) == 0)
                    slot.leaf.mix = MixId{};
            }
            stem.tiers.push_back(tier);
        }
        if (below(4) == 0) {
            Tier tip = newTier(stem, nullptr, KindId{1});
            tip.slots.resize(1);
            tip.slots[0].leaf = leaf();
            stem.tiers.insert(stem.tiers.begin(), tip);
        }
    }
    for (int spare = below(3); spare > 0; --spare)
        leaf();
    return plan;
}

TEST(MatchedPairs, AreNeverBeatenOnSmallBoards) {
    SpreadOptions options;
    options.matchedPairs = true;
    for (std::uint32_t seed = 0; seed < 900; ++seed) {
        const Plan plan = smallPairs(seed);
        ASSERT_FALSE(firstProblem(plan));
        const Suggestion suggestion = spread(plan, options).value();
        const auto [unmatched, unevenness] = leastOf(plan);
        ASSERT_EQ(suggestion.unmatchedAfter, unmatched) << seed;
        ASSERT_NEAR(suggestion.after, unevenness, 1e-9) << seed;
        ASSERT_TRUE(suggestion.proved) << seed;
        ASSERT_EQ(suggestion.unmatchedBound, unmatched);
        ASSERT_NEAR(suggestion.bound, unevenness, 1e-9);
        const Plan after = taken(plan, suggestion);
        ASSERT_EQ(unmatchedPairsOf(after), unmatched);
        ASSERT_NEAR(unevennessOf(after), unevenness, 1e-9);
        ASSERT_TRUE(spread(after, options).value().edits.edits.empty()) << seed;
    }
}

TEST(MatchedPairs, KeepLeavesAndPins) {
    SpreadOptions options;
    options.matchedPairs = true;
    options.search.steps = 3000;
    for (std::uint32_t seed = 0; seed < 40; ++seed) {
        options.trayUse = static_cast<TrayUse>(seed % 3);
        Plan plan = test::randomBoard(seed, 6, 12, 4);
        plan.stems[seed % 6].locked = seed % 2 == 0;
        const Suggestion suggestion = spread(plan, options).value();
        const Plan after = taken(plan, suggestion);
        EXPECT_FALSE(firstProblem(after));
        EXPECT_NEAR(unevennessOf(after), suggestion.after, 1e-9);
        EXPECT_EQ(unmatchedPairsOf(after), suggestion.unmatchedAfter);
        EXPECT_LE(suggestion.unmatchedBound, suggestion.unmatchedAfter);
        EXPECT_LE(suggestion.bound, suggestion.after + 1e-9);
        for (std::size_t s = 0; s < plan.stems.size(); ++s)
            for (std::size_t t = 0; t < plan.stems[s].tiers.size(); ++t)
                for (std::size_t i = 0; i < 2; ++i)
                    if (const Slot& slot = plan.stems[s].tiers[t].slots[i];
                        slot.pinned || plan.stems[s].locked) {
                        EXPECT_EQ(slot, after.stems[s].tiers[t].slots[i]);
                    }
        // Pairs can only be matched more evenly where they need not match at all.
        SpreadOptions even = options;
        even.matchedPairs = false;
        const Suggestion freely = spread(plan, even).value();
        EXPECT_LE(freely.bound, suggestion.after + 1e-9);
    }
}

TEST(MatchedPairs, AStopGivesTheBestFoundAndAProvenBound) {
    int open = 0;
    for (std::uint32_t seed = 0; seed < 8; ++seed) {
        Plan plan = test::randomBoard(seed, 9, 16, 6, 1);
        for (Stem& stem : plan.stems)
            for (Tier& tier : stem.tiers)
                for (Slot& slot : tier.slots) {
                    slot.pinned = false;
                    if (!slot.filled()) {
                        slot.leaf.mix = MixId{1};
                        ++plan.kinds[0].stock[0].made;
                    }
                }
        SpreadOptions options;
        options.matchedPairs = true;
        options.trayUse = TrayUse::keep;
        const Suggestion full = spread(plan, options).value();
        ASSERT_TRUE(full.proved);
        options.search.steps = 2;
        const Suggestion quick = spread(plan, options).value();
        open += !quick.proved;
        EXPECT_TRUE(quick.stopped || quick.proved);
        EXPECT_LE(quick.unmatchedBound, full.unmatchedAfter);
        EXPECT_GE(quick.unmatchedAfter, full.unmatchedAfter);
        if (quick.unmatchedAfter == full.unmatchedAfter) {
            EXPECT_LE(quick.bound, full.after + 1e-9);
            EXPECT_GE(quick.after, full.after - 1e-9);
        }
    }
    EXPECT_GT(open, 2);
}

} // namespace
} // namespace stemwright

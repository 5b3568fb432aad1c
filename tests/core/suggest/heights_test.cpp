#include "core/suggest/heights.h"

#include "core/suggest/order.h"
#include "core/suggest/plan_counts.h"
#include "core/suggest/start.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>

namespace stemwright {
namespace {

/// Stems without tiers and a stock of each kind in three mixes.
Plan bare(int stems, const std::vector<int>& stock) {
    Plan plan = test::randomBoard(1, stems, 0, 3, static_cast<int>(stock.size()));
    for (std::size_t k = 0; k < stock.size(); ++k)
        for (std::size_t m = 0; m < 3; ++m)
            plan.kinds[k].stock[m] = {MixId{static_cast<std::uint32_t>(m + 1)},
                                      stock[k] / 3 + (static_cast<int>(m) < stock[k] % 3), 0, ""};
    return plan;
}

int tiersOf(const Stem& stem, KindId kind) {
    return static_cast<int>(std::count_if(stem.tiers.begin(), stem.tiers.end(),
                                          [&](const Tier& tier) { return tier.slots[0].leaf.kind == kind; }));
}

double missOf(std::vector<int> tiers, int low, int high) {
    std::sort(tiers.begin(), tiers.end());
    const double n = static_cast<double>(tiers.size());
    double mean = 0;
    for (int t : tiers)
        mean += t / n;
    const double step = n > 1 ? 2 * std::min(mean - low, high - mean) / (n - 1) : 0;
    double sum = 0;
    for (std::size_t i = 0; i < tiers.size(); ++i) {
        const double off = tiers[i] - (mean + (static_cast<double>(i) - (n - 1) / 2) * step);
        sum += off * off;
    }
    return sum;
}

// Every way to give up to four stems their tiers of two kinds: none comes nearer to even steps.
TEST(Heights, AreNeverBeatenOnSmallPlans) {
    std::mt19937 random(5);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    int solved = 0;
    for (int round = 0; round < 150; ++round) {
        const int stems = 2 + below(3);
        const int least[] = {below(2), below(2)}, most[] = {least[0] + 1 + below(3), least[1] + below(3)};
        const int total[] = {stems * least[0] + below(stems * (most[0] - least[0]) + 1),
                             stems * least[1] + below(stems * (most[1] - least[1]) + 1)};
        const Plan plan = bare(stems, {2 * total[0], 2 * total[1]});
        HeightsOptions options;
        for (std::uint32_t k = 0; k < 2; ++k)
            options.ranges.push_back({KindId{k + 1}, 2 * least[k], 2 * most[k], 0});
        const auto result = heights(plan, options);
        ASSERT_TRUE(result);
        const Plan after = taken(plan, result.value());
        std::vector<int> tiers;
        int used[] = {0, 0};
        for (const Stem& stem : after.stems) {
            tiers.push_back(static_cast<int>(stem.tiers.size()));
            for (std::uint32_t k = 0; k < 2; ++k) {
                const int own = tiersOf(stem, KindId{k + 1});
                EXPECT_GE(own, least[k]);
                EXPECT_LE(own, most[k]);
                used[k] += own;
            }
        }
        EXPECT_EQ(used[0], total[0]);
        EXPECT_EQ(used[1], total[1]);
        double best = 1e9;
        std::vector<int> tried(static_cast<std::size_t>(stems));
        const auto visit = [&](const auto& self, std::size_t s, int a, int b) -> void {
            if (s == tried.size()) {
                if (a == 0 && b == 0)
                    best = std::min(best, missOf(tried, least[0] + least[1], most[0] + most[1]));
                return;
            }
            for (int i = least[0]; i <= std::min(a, most[0]); ++i)
                for (int j = least[1]; j <= std::min(b, most[1]); ++j) {
                    tried[s] = i + j;
                    self(self, s + 1, a - i, b - j);
                }
        };
        visit(visit, 0, total[0], total[1]);
        EXPECT_NEAR(missOf(tiers, least[0] + least[1], most[0] + most[1]), best, 1e-9) << round;
        ++solved;
    }
    EXPECT_EQ(solved, 150);
}

TEST(Heights, DifferWhereTheyCanAndSmallKindsStandAbove) {
    const Plan plan = bare(6, {132, 60});
    HeightsOptions options{{{KindId{1}, 8, 36, 0}, {KindId{2}, 4, 16, 0}}};
    const Plan after = taken(plan, heights(plan, options).value());
    std::set<std::size_t> sizes;
    for (const Stem& stem : after.stems) {
        sizes.insert(stem.tiers.size());
        for (std::size_t t = 1; t < stem.tiers.size(); ++t) {
            EXPECT_GE(stem.tiers[t].slots[0].leaf.kind, stem.tiers[t - 1].slots[0].leaf.kind);
            EXPECT_EQ(apart(stem.tiers[t].turn, stem.tiers[t - 1].turn, degrees(180)), degrees(90));
        }
    }
    EXPECT_EQ(sizes.size(), 6U);
    EXPECT_FALSE(firstProblem(after));
}

TEST(Heights, SayWhichRangeCannotBeMetAndTheNearest) {
    const Plan plan = bare(4, {40, 20});
    const auto problem = [&](KindRange range) { return heights(plan, {{range}}).problem(); };
    EXPECT_EQ(problem({KindId{1}, 12, 14, 0}),
              (Problem{ProblemCode::rangeTooHigh, "", {"Kind 1", "48", "40", "10", "8"}}));
    EXPECT_EQ(problem({KindId{1}, 2, 8, 0}),
              (Problem{ProblemCode::rangeTooLow, "", {"Kind 1", "40", "32", "10", "8"}}));
    EXPECT_EQ(problem({KindId{1}, 3, 3, 0}),
              (Problem{ProblemCode::badRange, "", {"Kind 1", "3", "3", "2", "2", "4"}}));
    EXPECT_EQ(problem({KindId{1}, 9, 6, 0}),
              (Problem{ProblemCode::badRange, "", {"Kind 1", "9", "6", "2", "6", "10"}}));
    EXPECT_EQ(problem({KindId{9}, 2, 4, 0}).code, ProblemCode::noSuchId);
    EXPECT_TRUE(heights(plan, {{{KindId{1}, 2, 8, {}}}}));
    EXPECT_EQ(heights(Plan{}, {{{KindId{1}, 2, 8, {}}}}).problem().code, ProblemCode::nothingToShare);
}

// Every way to give up to four alike stems their tiers of two kinds: none has fewer neighbours closer than
// asked, and none with as few comes nearer to even steps.
TEST(Heights, KeepApartWhereAnyAnswerDoes) {
    std::mt19937 random(9);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    int unavoidable = 0, avoided = 0;
    for (int round = 0; round < 200; ++round) {
        const int stems = 2 + below(3);
        const int least[] = {1 + below(2), below(2)}, most[] = {least[0] + below(4), least[1] + below(3)};
        const int total[] = {stems * least[0] + below(stems * (most[0] - least[0]) + 1),
                             stems * least[1] + below(stems * (most[1] - least[1]) + 1)};
        Plan plan = bare(stems, {2 * total[0], 2 * total[1]});
        for (Stem& stem : plan.stems)
            stem.spacing = millimetres(8), stem.tail = millimetres(30);
        // Steps of a tier are 8 mm: 3 mm asks for different numbers of tiers, 12 mm for two tiers between.
        const int apart = round % 2 == 0 ? 1 : 2;
        HeightsOptions options;
        for (std::uint32_t k = 0; k < 2; ++k)
            options.ranges.push_back({KindId{k + 1}, 2 * least[k], 2 * most[k], 0});
        options.difference = millimetres(apart == 1 ? 3 : 12);
        const auto result = heights(plan, options);
        ASSERT_TRUE(result);
        EXPECT_TRUE(result.value().proved);
        std::vector<int> tiers;
        for (const Stem& stem : taken(plan, result.value()).stems)
            tiers.push_back(static_cast<int>(stem.tiers.size()));
        const auto measure = [&](std::vector<int> all) {
            const double miss = missOf(all, least[0] + least[1], most[0] + most[1]);
            std::sort(all.begin(), all.end());
            int close = 0;
            for (std::size_t i = 1; i < all.size(); ++i)
                close += all[i] - all[i - 1] < apart;
            return std::pair(close, miss);
        };
        std::pair best(1000, 1e9);
        std::vector<int> tried(static_cast<std::size_t>(stems));
        const auto visit = [&](const auto& self, std::size_t s, int a, int b) -> void {
            if (s == tried.size()) {
                if (a == 0 && b == 0)
                    best = std::min(best, measure(tried));
                return;
            }
            for (int i = least[0]; i <= std::min(a, most[0]); ++i)
                for (int j = least[1]; j <= std::min(b, most[1]); ++j) {
                    tried[s] = i + j;
                    self(self, s + 1, a - i, b - j);
                }
        };
        visit(visit, 0, total[0], total[1]);
        EXPECT_EQ(result.value().closeAfter, best.first) << round;
        EXPECT_EQ(measure(tiers).first, best.first) << round;
        EXPECT_NEAR(measure(tiers).second, best.second, 1e-9) << round;
        unavoidable += best.first > 0;
        avoided += best.first == 0;
    }
    EXPECT_GT(unavoidable, 20);
    EXPECT_GT(avoided, 20);
}

TEST(Heights, OnThirtyStemsAsManyAsCanBeAreKeptApart) {
    Plan plan = bare(30, {30 * 18, 30 * 8});
    for (Stem& stem : plan.stems)
        stem.spacing = millimetres(8), stem.tail = millimetres(30);
    const HeightsOptions options{{{KindId{1}, 12, 24, 0}, {KindId{2}, 4, 12, 0}}, millimetres(3)};
    const Suggestion found = heights(plan, options).value();
    // Eleven numbers of tiers for thirty stems: nineteen are like a neighbour at least.
    EXPECT_EQ(found.closeAfter, 19);
    EXPECT_TRUE(found.proved);
    EXPECT_EQ(found.closeBound, found.closeAfter);
}

TEST(Heights, StemsThatAreAlikeBecomeUnlikeTheirNeighbours) {
    const Plan after = [] {
        const Plan plan = bare(7, {7 * 12, 7 * 6});
        HeightsOptions options;
        options.ranges = {{KindId{1}, 6, 18, {}}, {KindId{2}, 2, 10, {}}};
        return taken(plan, heights(plan, options).value());
    }();
    int rises = 0;
    for (std::size_t s = 1; s < after.stems.size(); ++s)
        rises += after.stems[s].tiers.size() > after.stems[s - 1].tiers.size();
    EXPECT_GE(rises, 2) << "no staircase";
    EXPECT_LE(rises, 4);
}

TEST(Heights, PinsThatContradictARangeAreSaid) {
    Plan plan = test::randomBoard(4, 3, 12, 3, 1);
    for (Tier& tier : plan.stems[1].tiers)
        tier.slots[0].pinned = true;
    EXPECT_EQ(heights(plan, {{{KindId{1}, 0, 8, {}}}}).problem(),
              (Problem{ProblemCode::pinsBeyondRange, "", {"Stem 2", "Kind 1", "12", "8"}}));
    EXPECT_EQ(heights(plan, {{{KindId{1}, 0, 12, {}}, {KindId{1}, 0, 14, {}}}}).problem().code,
              ProblemCode::rangeTwice);
}

TEST(Heights, StemsOfUnlikeTiersAreNamedWithTheirLeaves) {
    Plan plan = test::smallBoard();
    plan.stems[2].arrangement = Arrangement::whorled;
    plan.stems[2].whorl = 4;
    const HeightsOptions options{{{KindId{1}, 0, 12, {}}}};
    EXPECT_EQ(heights(plan, options).problem(),
              (Problem{ProblemCode::mixedTiers, "", {"Stem 3", "4", "Stem 1", "2"}}));
    plan.stems[2].locked = true;
    EXPECT_TRUE(heights(plan, options));
}

TEST(Heights, UsualRangesCanBeMet) {
    for (std::uint32_t seed = 0; seed < 40; ++seed) {
        Plan plan = test::randomBoard(seed, 2 + static_cast<int>(seed % 9), 12, 4);
        for (Stem& stem : plan.stems)
            for (Tier& tier : stem.tiers)
                for (Slot& slot : tier.slots)
                    slot.pinned = false;
        HeightsOptions options;
        options.ranges = usualRanges(plan, static_cast<int>(plan.stems.size()));
        const auto outlook = heightsOutlook(plan, options);
        ASSERT_TRUE(outlook) << seed;
        const Plan after = taken(plan, heights(plan, options).value());
        for (const KindOutlook& kind : outlook.value()) {
            int places = 0;
            for (const Stem& stem : after.stems)
                places += 2 * tiersOf(stem, kind.kind);
            EXPECT_EQ(places, kind.placed);
            EXPECT_LT(kind.leaves - kind.placed, 2);
        }
    }
}

TEST(Heights, FilledFromTheTrayKeepWhatStandsThere) {
    const Plan plan = test::randomBoard(6, 5, 10, 4, 1);
    HeightsOptions options{usualRanges(plan, 5), std::nullopt};
    options.ranges[0].least = 2;
    options.ranges[0].most = 40;
    const auto found = heightsFilled(plan, options, {});
    ASSERT_TRUE(found);
    const Plan after = taken(plan, found.value());
    EXPECT_FALSE(firstProblem(after));
    EXPECT_NEAR(found.value().after, unevennessOf(after), 1e-9);
    int empty = 0;
    for (const Stem& stem : after.stems)
        for (const Tier& tier : stem.tiers)
            for (const Slot& slot : tier.slots)
                empty += !slot.filled() && !slot.pinned;
    EXPECT_EQ(empty, 0);
}

TEST(Heights, KeepPinnedTiersAndLockedStems) {
    Plan plan = test::randomBoard(4, 5, 12, 3, 1);
    plan.stems[1].locked = true;
    plan.stems[2].tiers[5].slots[0].pinned = true;
    plan.stems[3].tiers[0].progress.bound = true;
    const Plan after = taken(plan, heights(plan, {{{KindId{1}, 4, 20, {}}}}).value());
    EXPECT_FALSE(firstProblem(after));
    EXPECT_EQ(after.stems[1], plan.stems[1]);
    EXPECT_EQ(after.stems[3].tiers[0], plan.stems[3].tiers[0]);
    for (std::size_t s = 0; s < plan.stems.size(); ++s)
        for (const Tier& tier : plan.stems[s].tiers)
            for (const Slot& slot : tier.slots)
                if (slot.pinned) {
                    EXPECT_TRUE(std::any_of(after.stems[s].tiers.begin(), after.stems[s].tiers.end(),
                                            [&](const Tier& t) { return t.slots == tier.slots; }));
                }
}

TEST(Start, MakesACompleteBoardFromStockAlone) {
    Plan plan = bare(0, {90, 48});
    plan.stems.clear();
    StartOptions options;
    options.stems = 6;
    options.form.name = "Stem";
    options.heights.ranges = {{KindId{1}, 8, 22, {}}, {KindId{2}, 4, 12, {}}};
    const auto result = startMeOff(plan, options);
    ASSERT_TRUE(result);
    const Plan after = taken(plan, result.value());
    EXPECT_FALSE(firstProblem(after));
    ASSERT_EQ(after.stems.size(), 6U);
    int leaves = 0;
    for (const Stem& stem : after.stems)
        for (const Tier& tier : stem.tiers)
            for (const Slot& slot : tier.slots)
                leaves += slot.filled();
    EXPECT_EQ(leaves, 138);
    EXPECT_EQ(result.value().unmatchedAfter, unmatchedPairsOf(after));
    EXPECT_EQ(result.value().inversionsAfter, inversionsOf(after));
    EXPECT_NEAR(result.value().after, unevennessOf(after), 1e-9);
    EXPECT_EQ(startMeOff(plan, options).value().edits, result.value().edits);
}

TEST(Shuffle, GivesAnotherBoardOfEqualFigures) {
    int unlike = 0;
    for (std::uint32_t board = 0; board < 6; ++board) {
        Plan plan = test::randomBoard(board, 7, 12, 5, 1);
        SpreadOptions options;
        options.matchedPairs = true;
        options.trayUse = TrayUse::keep;
        plan = taken(plan, spread(plan, options).value());
        plan = taken(plan, order(plan));
        for (std::uint32_t seed = 0; seed < 3; ++seed) {
            const Suggestion other = shuffle(plan, seed).value();
            EXPECT_EQ(other.edits, shuffle(plan, seed).value().edits);
            EXPECT_NEAR(other.after, unevennessOf(plan), 1e-9);
            EXPECT_EQ(other.unmatchedAfter, unmatchedPairsOf(plan));
            EXPECT_EQ(unmatchedPairsOf(taken(plan, other)), other.unmatchedAfter);
            unlike += !other.edits.edits.empty();
        }
    }
    EXPECT_GT(unlike, 9);
}

} // namespace
} // namespace stemwright

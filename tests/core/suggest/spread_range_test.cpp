// What a spread counts besides its aim, and how far it can count.
#include "core/suggest/matched_shares.h"
#include "core/suggest/plan_counts.h"
#include "core/suggest/share_costs.h"
#include "core/suggest/spread.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stemwright {
namespace {

TEST(Spread, CountsTheOrderTooWhereverItIs) {
    const Plan plan = test::smallBoard(); // Stem 2 has two steps against the order
    const auto found = spread(plan);
    ASSERT_TRUE(found);
    EXPECT_EQ(found.value().inversionsBefore, inversionsOf(plan));
    EXPECT_GT(found.value().inversionsBefore, 0);
    EXPECT_EQ(found.value().inversionsAfter, inversionsOf(taken(plan, found.value())));
    EXPECT_FALSE(found.value().differenceAsked);
}

// Two stems alike of one kind: what can be counted is what spread.h says, and the value of the problem is a
// number that does.
TEST(Spread, SaysHowManyLeavesCanBeCounted) {
    const auto board = [](bool pairs, int tiers) {
        Plan plan = test::smallBoard();
        plan.stems.resize(2, plan.stems[2]);
        plan.kinds.resize(1, plan.kinds[0]);
        for (StockLine& line : plan.kinds[0].stock)
            line.made = 1'000'000;
        for (Stem& stem : plan.stems) {
            stem.arrangement = pairs ? Arrangement::decussate : Arrangement::whorled;
            stem.whorl = 24;
            stem.tiers.assign(static_cast<std::size_t>(tiers), newTier(stem, nullptr, KindId{1}));
        }
        return plan;
    };
    for (const bool pairs : {true, false}) {
        const int tiers = pairs ? 900 : 800, ofTiers = pairs ? 4 : 48; // leaves in a tier of both
        SpreadOptions options;
        options.matchedPairs = pairs;
        options.search.steps = 1;
        const auto refused = spread(board(pairs, tiers), options);
        ASSERT_FALSE(refused);
        const Problem& problem = refused.problem();
        EXPECT_EQ(problem.code, ProblemCode::beyondExact);
        ASSERT_EQ(problem.values.size(), 4u);
        EXPECT_EQ(problem.values[0], std::to_string(tiers * ofTiers));
        EXPECT_EQ(problem.values[1], "Small");
        EXPECT_EQ(problem.values[3], pairs ? "pairs" : "");
        const int most = std::stoi(problem.values[2]);
        const double exact = pairs ? std::pow(2 * 1e18 / 6, 0.2) : std::pow(2 * 5e17, 0.25);
        EXPECT_LE(most, exact);
        EXPECT_GT(most, exact * 0.9);
        // Solving so many takes long; whether they can be counted is asked of the scale.
        const auto counts = [&](int leaves) {
            const Plan plan = board(pairs, leaves / ofTiers);
            const Shares shares = sharesOf(plan).front();
            return Scale::of(shares, shares.total, pairs ? MatchedShares::room(shares) : 1).has_value();
        };
        EXPECT_TRUE(counts(most)) << most;
        EXPECT_FALSE(counts(static_cast<int>(exact * 1.02))) << exact;
    }
}

} // namespace
} // namespace stemwright

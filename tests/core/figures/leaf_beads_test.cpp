#include "core/figures/leaf_beads.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>

namespace stemwright {
namespace {

TEST(Apportioned, GivesLargestRemaindersTheRest) {
    // Votes from memory, the result recomputed: largest remainder 5 2 1 1 1 0.
    const std::vector<double> votes{47000, 16000, 15800, 12000, 6100, 3100};
    EXPECT_EQ(apportioned(10, votes), (std::vector<int>{5, 2, 1, 1, 1, 0}));
}

TEST(Apportioned, EqualRemaindersGoToTheOuterRow) {
    const std::vector<double> halves{1, 1};
    EXPECT_EQ(apportioned(5, halves), (std::vector<int>{3, 2}));
}

TEST(Apportioned, AThirdOfSixtyIsTwenty) {
    const std::vector<double> thirds{1.0 / 3, 1.0 / 3, 1.0 / 3};
    EXPECT_EQ(apportioned(60, thirds), (std::vector<int>{20, 20, 20}));
}

TEST(Apportioned, NothingToShareOrNobodyToShareWith) {
    const std::vector<double> weights{0, 2, -1};
    EXPECT_EQ(apportioned(7, weights), (std::vector<int>{0, 7, 0}));
    EXPECT_EQ(apportioned(0, weights), (std::vector<int>{0, 0, 0}));
    EXPECT_EQ(apportioned(7, std::vector<double>{0, 0}), (std::vector<int>{0, 0}));
    EXPECT_TRUE(apportioned(7, {}).empty());
}

// Quota rule and sum, over weights of very unlike sizes.
TEST(Apportioned, AddsUpAndStaysWithinOneOfTheQuota) {
    std::mt19937 random(3);
    for (int round = 0; round < 20'000; ++round) {
        std::vector<double> weights(1 + random() % 6);
        for (double& weight : weights)
            weight = std::pow(10.0, static_cast<int>(random() % 7) - 3) * static_cast<double>(1 + random() % 9);
        const int total = static_cast<int>(random() % 500);
        const std::vector<int> parts = apportioned(total, weights);
        const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
        ASSERT_EQ(std::accumulate(parts.begin(), parts.end(), 0), total);
        for (std::size_t i = 0; i < parts.size(); ++i)
            ASSERT_LT(std::abs(parts[i] - total * weights[i] / sum), 1 + 1e-6) << "round " << round;
    }
}

TEST(LeafBeads, FollowTheMixFromItsOuterRowInward) {
    Mix mix;
    mix.colours = {{ColourId{4}, 2, ""}, {ColourId{1}, 1, ""}};
    EXPECT_EQ(leafBeads(40, mix), (std::vector<int>{27, 13}));
}

} // namespace
} // namespace stemwright

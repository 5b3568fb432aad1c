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

TEST(RowBeads, TheOuterColourFillsTheOuterRows) {
    Mix mix;
    mix.colours = {{ColourId{1}, 1, ""}, {ColourId{2}, 1, ""}};
    EXPECT_EQ(rowBeads(std::vector<int>{15, 15, 10, 10, 5}, mix),
              (std::vector<std::vector<int>>{{15, 0}, {13, 2}, {0, 10}, {0, 10}, {0, 5}}));
    EXPECT_EQ(rowBeads(std::vector<int>{3, -1, 0}, mix),
              (std::vector<std::vector<int>>{{2, 1}, {0, 0}, {0, 0}}));
    EXPECT_TRUE(rowBeads({}, mix).empty());
}

TEST(RowBeads, RowsAndColoursBothAddUp) {
    std::mt19937 random(11);
    for (int round = 0; round < 2'000; ++round) {
        Mix mix;
        for (std::uint32_t c = 0; c < 1 + random() % 5; ++c)
            mix.colours.push_back({ColourId{c + 1}, 0.1 * static_cast<double>(1 + random() % 30), ""});
        std::vector<int> rows(1 + random() % 9);
        for (int& row : rows)
            row = static_cast<int>(random() % 40);
        const auto beads = rowBeads(rows, mix);
        std::vector<int> byColour(mix.colours.size(), 0);
        for (std::size_t row = 0; row < rows.size(); ++row) {
            ASSERT_EQ(std::accumulate(beads[row].begin(), beads[row].end(), 0), rows[row]);
            for (std::size_t c = 0; c < byColour.size(); ++c)
                byColour[c] += beads[row][c];
        }
        ASSERT_EQ(byColour, leafBeads(std::accumulate(rows.begin(), rows.end(), 0), mix));
    }
}

} // namespace
} // namespace stemwright

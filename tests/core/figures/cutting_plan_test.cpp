#include "core/figures/cutting_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace stemwright {
namespace {

using Pieces = std::vector<std::pair<double, int>>;

std::vector<CutPiece> piecesOf(const Pieces& all) {
    std::vector<CutPiece> pieces;
    for (const auto& [length, count] : all)
        pieces.push_back({millimetres(length), count});
    return pieces;
}

std::vector<Length> barsOf(std::initializer_list<double> all) {
    std::vector<Length> bars;
    for (const double bar : all)
        bars.push_back(millimetres(bar));
    return bars;
}

/// That the plan cuts just what was asked for, from bars on sale, and says right what it takes.
void expectSound(const CuttingPlan& plan, const std::vector<CutPiece>& pieces,
                 const std::vector<Length>& bars) {
    std::vector<int> cut(pieces.size(), 0);
    int count = 0;
    double bought = 0;
    double waste = 0;
    for (const CutBar& bar : plan.bars) {
        EXPECT_NE(std::find(bars.begin(), bars.end(), bar.bar), bars.end());
        double used = 0;
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            cut[i] += bar.times * bar.pieces[i];
            used += bar.pieces[i] * inMillimetres(pieces[i].length);
        }
        EXPECT_LE(used, inMillimetres(bar.bar) + 1e-6);
        EXPECT_NEAR(inMillimetres(bar.left), inMillimetres(bar.bar) - used, 0.1 * 50);
        count += bar.times;
        bought += bar.times * inMillimetres(bar.bar);
        waste += bar.times * inMillimetres(bar.left);
    }
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const bool left = std::find(plan.tooLong.begin(), plan.tooLong.end(), i) != plan.tooLong.end();
        EXPECT_EQ(cut[i], left ? 0 : std::max(0, pieces[i].count)) << "piece " << i;
    }
    EXPECT_EQ(count, plan.barCount);
    EXPECT_GE(count, plan.fewestBars);
    EXPECT_NEAR(bought, inMillimetres(plan.bought), 1e-6);
    EXPECT_NEAR(waste, inMillimetres(plan.waste), 1e-6);
}

TEST(CuttingPlan, BetterThanTheLongestFirst) {
    // 60 + 40 twice, and 30 + 30 + 20 + 20. (Own example.)
    const auto pieces = piecesOf({{60, 2}, {40, 2}, {30, 2}, {20, 2}});
    const auto bars = barsOf({100});
    const CuttingPlan plan = cuttingPlan(pieces, bars);
    expectSound(plan, pieces, bars);
    EXPECT_EQ(plan.barCount, 3);
    EXPECT_TRUE(plan.proved);
    EXPECT_NEAR(inMillimetres(plan.waste), 0, 1e-9);

    const auto hard = piecesOf({{41, 2}, {30, 2}, {29, 2}});
    const CuttingPlan two = cuttingPlan(hard, bars);
    expectSound(two, hard, bars);
    EXPECT_EQ(two.barCount, 2); // 41 + 30 + 29 twice; longest first takes 41 + 41 and needs a third
    EXPECT_TRUE(two.proved);
}

TEST(CuttingPlan, FewestBarsComeBeforeLeastWaste) {
    const auto pieces = piecesOf({{100, 3}});
    const CuttingPlan plan = cuttingPlan(pieces, barsOf({100, 350}));
    EXPECT_EQ(plan.barCount, 1);
    EXPECT_NEAR(inMillimetres(plan.waste), 50, 1e-9);
    // Of as many bars, the shorter ones.
    const CuttingPlan four = cuttingPlan(piecesOf({{100, 4}}), barsOf({100, 350}));
    EXPECT_EQ(four.barCount, 2);
    EXPECT_NEAR(inMillimetres(four.bought), 450, 1e-9);
    EXPECT_TRUE(four.proved);
}

TEST(CuttingPlan, NothingToCutAndNothingToCutFrom) {
    EXPECT_EQ(cuttingPlan({}, barsOf({100})).barCount, 0);
    EXPECT_TRUE(cuttingPlan({}, barsOf({100})).proved);
    const auto pieces = piecesOf({{120, 2}, {0, 3}, {50, -1}, {80, 1}});
    const CuttingPlan plan = cuttingPlan(pieces, barsOf({100}));
    EXPECT_EQ(plan.tooLong, std::vector<std::size_t>{0});
    EXPECT_EQ(plan.barCount, 1);
    EXPECT_EQ(cuttingPlan(pieces, {}).tooLong, (std::vector<std::size_t>{0, 3}));
}

TEST(CuttingPlan, PiecesOfOneLengthKeepTheirOwners) {
    const auto pieces = piecesOf({{50, 1}, {50, 2}, {50, 1}});
    const auto bars = barsOf({100});
    const CuttingPlan plan = cuttingPlan(pieces, bars);
    expectSound(plan, pieces, bars);
    EXPECT_EQ(plan.barCount, 2);
}

TEST(CuttingPlan, IsSoundOnRandomPieces) {
    std::mt19937 random(4);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<std::uint32_t>(n)); };
    for (int round = 0; round < 60; ++round) {
        Pieces all;
        for (int i = 1 + below(8); i > 0; --i)
            all.push_back({10 + 0.1 * below(900), 1 + below(6)});
        const auto pieces = piecesOf(all);
        const auto bars = round % 2 ? barsOf({100, 60}) : barsOf({100});
        expectSound(cuttingPlan(pieces, bars), pieces, bars);
    }
}

// Where the search gives up it says so, and the plan is still one that can be cut.
TEST(CuttingPlan, GivesUpHonestly) {
    const auto pieces = piecesOf({{33, 7}, {27, 9}, {21, 11}, {19, 13}, {17, 5}});
    const auto bars = barsOf({100, 80});
    const CuttingPlan plan = cuttingPlan(pieces, bars, {1});
    expectSound(plan, pieces, bars);
}

} // namespace
} // namespace stemwright

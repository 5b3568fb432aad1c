#include "core/figures/figures.h"

#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace stemwright {
namespace {

// smallBoard: "Stem 1" has P P / O O / S S, "Stem 2" P S / O O, "Stem 3" nothing, all of kind "Small": 40
// beads, 14 mm at 60 degrees, two wires of 0.32 mm, 300 mm of wire a leaf.
class SmallBoard : public testing::Test {
protected:
    const Plan plan = test::smallBoard();
    const Figures all = figures(plan);
    const StemFigures& one = all.stems[0];
    const StemFigures& two = all.stems[1];
    const StemFigures& three = all.stems[2];
};

TEST_F(SmallBoard, CountsLeavesAndBeads) {
    EXPECT_EQ(all.lines, tray(plan));
    EXPECT_EQ(one.held, (std::vector<int>{2, 2, 2, 0, 0, 0}));
    EXPECT_EQ(two.held, (std::vector<int>{1, 2, 1, 0, 0, 0}));
    EXPECT_EQ(one.beads,
              (std::vector<std::int64_t>{120, 120})); // P P of 40 plum, O O of 20 and 20, S S of 40 sea
    EXPECT_EQ(all.pot.beads, (std::vector<std::int64_t>{200, 200}));
    EXPECT_EQ(all.pot.allBeads, (std::vector<std::int64_t>{12 * 20 + 12 * 45, 12 * 20 + 12 * 45}));
    EXPECT_EQ(all.pot.leaves, 10);
    EXPECT_EQ(all.pot.slots, 10);
    EXPECT_EQ(all.pot.inTray, 14);
    EXPECT_EQ(all.pot.toMake, 12);
    EXPECT_EQ(all.pot.stems, 3);
}

TEST_F(SmallBoard, FairShareUnevennessAndDrift) {
    // 3 P, 4 O, 3 S of 10 leaves; stem 1 has 6 of them: 1.8, 2.4, 1.8; stem 2 has 4: 1.2, 1.6, 1.2.
    const std::vector<double> shares{1.8, 2.4, 1.8, 0, 0, 0};
    for (std::size_t i = 0; i < shares.size(); ++i)
        EXPECT_NEAR(one.fairShare[i], shares[i], 1e-12);
    EXPECT_NEAR(one.unevenness, 0.04 + 0.16 + 0.04, 1e-12);
    EXPECT_NEAR(two.unevenness, 0.04 + 0.16 + 0.04, 1e-12);
    EXPECT_NEAR(all.pot.unevenness, 0.48, 1e-12);
    EXPECT_EQ(one.drift, 0); // half plum, half sea, as the pot is
    EXPECT_EQ(two.drift, 0);
    EXPECT_EQ(three.unevenness, 0);
    EXPECT_EQ(three.drift, 0);
}

TEST_F(SmallBoard, DriftIsThePartThatMustMoveTimesTheDifference) {
    Plan other = plan;
    ASSERT_TRUE(apply(other, SwapSlots{{StemId{1}, 0, 0}, {StemId{2}, 0, 1}})); // P for S
    const Figures then = figures(other);
    // Stem 1: 80 plum of 240, the pot half: a sixth moves. Stem 2: 120 of 160, a quarter too many.
    const double apart = difference(toLab(plan.colours[0].srgb), toLab(plan.colours[1].srgb));
    EXPECT_NEAR(then.stems[0].drift, apart / 6, 1e-9);
    EXPECT_NEAR(then.stems[1].drift, apart / 4, 1e-9);
    EXPECT_NEAR(then.pot.drift, apart * (240.0 / 6 + 160.0 / 4) / 400, 1e-9);
}

TEST_F(SmallBoard, HeightsAndSkyline) {
    EXPECT_NEAR(inMillimetres(one.height), 30 + 2 * 8 + 7, 1e-12);
    EXPECT_NEAR(inMillimetres(two.height), 30 + 8 + 7, 1e-12);
    EXPECT_NEAR(inMillimetres(three.height), 30, 1e-12);
    // Stem 3 has no tier yet and is no part of the skyline.
    EXPECT_NEAR(inMillimetres(all.pot.shortest), 45, 1e-12);
    EXPECT_NEAR(inMillimetres(all.pot.tallest), 53, 1e-12);
    EXPECT_NEAR(inMillimetres(all.pot.meanHeight), 49, 1e-12);
    EXPECT_NEAR(all.pot.heightVariation, std::sqrt(32.0) / 49, 1e-12);
    EXPECT_EQ(all.pot.nearTwins, 0);
}

TEST_F(SmallBoard, WiresBundleAndBinding) {
    EXPECT_EQ(one.wires, 12);
    EXPECT_NEAR(inMillimetres(one.bundle), 4.029602 * 0.32, 1e-5);
    EXPECT_NEAR(inMillimetres(one.leafWire), 6 * 300, 1e-9);
    EXPECT_NEAR(inMillimetres(all.pot.leafWire), 10 * 300, 1e-9);
    EXPECT_NEAR(inMillimetres(all.pot.allLeafWire), 24 * 300, 1e-9);
    const Wrap& floss = plan.binding.wraps[0];
    const double advance = 6 * 0.2 * (1 - floss.overlap);
    double turns = 0;
    for (const auto& [along, ratio] : {std::pair{8.0, 2.414213562}, {8.0, 3.304764857}, {30.0, 4.029601930}})
        turns += along / advance * std::hypot(3.14159265358979 * (ratio * 0.32 + 0.2), advance);
    EXPECT_NEAR(inMillimetres(one.wraps[0].used), turns + 90, 1e-5);
    EXPECT_NEAR(inMillimetres(one.wraps[0].toCut), turns + 190, 1e-5);
    EXPECT_EQ(inMillimetres(three.wraps[0].toCut), 0);
    EXPECT_NEAR(inMillimetres(all.pot.wraps[0].toCut), inMillimetres(one.wraps[0].toCut + two.wraps[0].toCut),
                1e-9);
}

TEST_F(SmallBoard, InversionsFollowTheOrderOfTheStock) {
    EXPECT_EQ(one.inversions, 0); // P P / O O / S S
    EXPECT_EQ(two.inversions, 2); // P S / O O: the S stands above two O
}

TEST(Figures, AnEmptyPlanHasEmptyFigures) {
    const Figures all = figures(Plan{});
    EXPECT_TRUE(all.lines.empty());
    EXPECT_TRUE(all.stems.empty());
    EXPECT_EQ(all.pot.drift, 0);
    EXPECT_EQ(inMillimetres(all.pot.tallest), 0);
}

TEST(Figures, SumsAgreeOnRandomBoards) {
    for (std::uint32_t seed = 0; seed < 60; ++seed) {
        const Plan plan = test::randomBoard(seed, 9, 12, 7, 3);
        const Figures all = figures(plan);
        EXPECT_EQ(all.lines, tray(plan));
        std::vector<std::int64_t> beads(plan.colours.size(), 0);
        std::vector<double> shares(all.lines.size(), 0);
        std::int64_t inLeaves = 0;
        for (const StemFigures& stem : all.stems) {
            EXPECT_EQ(std::accumulate(stem.held.begin(), stem.held.end(), 0), stem.leaves);
            EXPECT_GE(stem.drift, 0);
            for (std::size_t i = 0; i < beads.size(); ++i)
                beads[i] += stem.beads[i];
            for (std::size_t i = 0; i < shares.size(); ++i) {
                shares[i] += stem.fairShare[i];
                inLeaves += std::int64_t{stem.held[i]} * find(plan, all.lines[i].leaf.kind)->beads;
            }
        }
        EXPECT_EQ(beads, all.pot.beads);
        EXPECT_EQ(std::accumulate(beads.begin(), beads.end(), std::int64_t{0}), inLeaves);
        // The stems' fair shares of a mix add up to what the board holds of it.
        for (std::size_t i = 0; i < shares.size(); ++i)
            EXPECT_NEAR(shares[i], all.lines[i].placed, 1e-9);
    }
}

} // namespace
} // namespace stemwright

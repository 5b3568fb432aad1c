#include "core/figures/height.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

Stem stemOf(int tiers) {
    Stem stem;
    stem.spacing = millimetres(8);
    stem.tail = millimetres(30);
    stem.tiers.resize(static_cast<std::size_t>(tiers));
    return stem;
}

double height(const Stem& stem, const std::vector<Length>& reach, double planted = 0) {
    return inMillimetres(heightOf(stem, reach, millimetres(planted)));
}

TEST(Height, TailSpacingsAndTheTipLeaf) {
    EXPECT_DOUBLE_EQ(height(stemOf(3), {millimetres(9), {}, {}}), 30 + 2 * 8 + 9);
    EXPECT_DOUBLE_EQ(height(stemOf(3), {millimetres(9), {}, {}}, 12), 18 + 2 * 8 + 9);
}

TEST(Height, ATiersOwnSpacingCountsButTheLastOnesDoesNot) {
    Stem stem = stemOf(3);
    stem.tiers[0].spacing = millimetres(5);
    stem.tiers[2].spacing = millimetres(50);
    EXPECT_DOUBLE_EQ(height(stem, {{}, {}, {}}), 30 + 5 + 8);
}

TEST(Height, ALongLeafBelowTheTipMayStandHighest) {
    EXPECT_DOUBLE_EQ(height(stemOf(2), {millimetres(1), millimetres(20)}), 30 + 20);
}

TEST(Height, OfAStemWithoutTiersAndOfOneUnderTheClay) {
    EXPECT_DOUBLE_EQ(height(stemOf(0), {}), 30);
    EXPECT_DOUBLE_EQ(height(stemOf(0), {}, 45), 0);
    EXPECT_DOUBLE_EQ(height(stemOf(1), {millimetres(20)}, 45), 5);
}

TEST(Height, ReachIsTheCosineAndNothingFromLevelOn) {
    KindForm kind;
    kind.length = millimetres(20);
    kind.angle = degrees(60);
    EXPECT_NEAR(inMillimetres(reachAbove(kind)), 10, 1e-12);
    kind.angle = degrees(0);
    EXPECT_EQ(inMillimetres(reachAbove(kind)), 20);
    kind.angle = degrees(90);
    EXPECT_EQ(inMillimetres(reachAbove(kind)), 0);
    kind.angle = degrees(150);
    EXPECT_EQ(inMillimetres(reachAbove(kind)), 0);
}

} // namespace
} // namespace stemwright

#include "core/quantity/circle_packing.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stemwright {
namespace {

TEST(CirclePacking, OfNothingIsNothing) {
    EXPECT_EQ(packingRatio(0), 0);
    EXPECT_EQ(packingRatio(-3), 0);
    EXPECT_EQ(packingRatio(1), 1);
    EXPECT_EQ(packingRatio(2), 2);
}

TEST(CirclePacking, NeverFalls) {
    for (int n = 2; n <= 20'000; ++n)
        ASSERT_GE(packingRatio(n), packingRatio(n - 1)) << n;
}

TEST(CirclePacking, JoinsTheTableWithoutAStep) {
    const double atJoin = packingRatio(largestPackedCount);
    const double beyond = packingRatio(largestPackedCount + 1);
    EXPECT_GT(beyond, atJoin);
    EXPECT_LT(beyond - atJoin, 0.08);
}

TEST(CirclePacking, OneWireMoreNeverAddsMoreThanItsDiameterOnEachSide) {
    // A wire laid against the bundle is held by a circle larger by that wire.
    for (int n = 1; n < 500; ++n)
        EXPECT_LE(packingRatio(n + 1), packingRatio(n) + 1 + 1e-12) << n;
}

TEST(CirclePacking, ComesNearTheDensestPackingInTheLimit) {
    const int many = 100'000'000;
    const double ratio = packingRatio(many);
    EXPECT_NEAR(many / (ratio * ratio), densestPacking, 1e-4);
    EXPECT_DOUBLE_EQ(densestPacking, std::acos(-1.0) / std::sqrt(12.0));
}

} // namespace
} // namespace stemwright

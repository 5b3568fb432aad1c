#include "core/figures/skyline.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace stemwright {
namespace {

std::vector<Length> heights(std::initializer_list<double> all) {
    std::vector<Length> lengths;
    for (const double height : all)
        lengths.push_back(millimetres(height));
    return lengths;
}

TEST(Skyline, VariationOfAWorkedExample) {
    // Own example, recomputed: mean 27.2, s 7.01427 with n - 1, coefficient of variation 0.25788.
    const Skyline sky = skylineOf(heights({20, 24, 24, 30, 38}));
    EXPECT_NEAR(inMillimetres(sky.mean), 27.2, 1e-12);
    EXPECT_NEAR(sky.variation, 0.25788, 5e-6);
    EXPECT_EQ(inMillimetres(sky.shortest), 20);
    EXPECT_EQ(inMillimetres(sky.tallest), 38);
}

TEST(Skyline, OfNoneAndOfOne) {
    EXPECT_EQ(skylineOf({}).variation, 0);
    EXPECT_EQ(inMillimetres(skylineOf({}).tallest), 0);
    EXPECT_EQ(skylineOf(heights({40})).variation, 0);
    EXPECT_EQ(skylineOf(heights({0, 0})).variation, 0);
}

TEST(Skyline, NearTwinsArePairsCloserThanTheLimit) {
    EXPECT_EQ(countNearTwins(heights({20, 23, 26.5, 25}), millimetres(3)), 2);
    EXPECT_EQ(countNearTwins(heights({20, 23}), millimetres(3)), 0);
    EXPECT_EQ(countNearTwins({}, millimetres(3)), 0);
    std::mt19937 random(9);
    for (int round = 0; round < 500; ++round) {
        std::vector<Length> all(random() % 12);
        for (Length& height : all)
            height = millimetres(static_cast<double>(random() % 40) / 2);
        int pairs = 0;
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                pairs += std::abs(inMillimetres(all[i] - all[j])) < 3;
        ASSERT_EQ(countNearTwins(all, millimetres(3)), pairs);
    }
}

} // namespace
} // namespace stemwright

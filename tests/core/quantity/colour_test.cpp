#include "core/quantity/colour.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <random>

namespace stemwright {
namespace {

constexpr Srgb black{0, 0, 0};
constexpr Srgb white{255, 255, 255};

TEST(ColourText, IsReadAndWritten) {
    EXPECT_EQ(parseSrgb("#2E8b57"), (Srgb{0x2e, 0x8b, 0x57}));
    EXPECT_EQ(toText(Srgb{0x2e, 0x8b, 0x57}), "#2e8b57");
}

TEST(ColourText, RefusesAnythingElse) {
    for (const char* text :
         {"", "#", "2e8b57", "#2e8b5", "#2e8b577", "#2e8b5g", "#2e8b5 ", "#+28b57", "#2e-b57"})
        EXPECT_EQ(parseSrgb(text), std::nullopt) << text;
}

TEST(LinearLight, GoesThereAndBackForEveryChannelValue) {
    for (int v = 0; v < 256; ++v) {
        const auto c = static_cast<std::uint8_t>(v);
        EXPECT_EQ(toSrgb(toLinear(Srgb{c, 0, 0})), (Srgb{c, 0, 0}));
    }
    EXPECT_EQ(toLinear(white), (LinearRgb{1, 1, 1}));
    EXPECT_EQ(toLinear(black), (LinearRgb{0, 0, 0}));
}

TEST(LinearLight, ClampsWhatNoScreenShows) {
    EXPECT_EQ(toSrgb(LinearRgb{-0.5, 1.5, std::nan("")}), (Srgb{0, 255, 0}));
    EXPECT_EQ(toSrgb(LinearRgb{std::numeric_limits<double>::infinity(), 0, 1}), (Srgb{255, 0, 255}));
}

TEST(Lab, GreysHaveNoColour) {
    for (int v = 0; v < 256; ++v) {
        const auto c = static_cast<std::uint8_t>(v);
        const Lab lab = toLab(Srgb{c, c, c});
        EXPECT_NEAR(lab.a, 0, 1e-12);
        EXPECT_NEAR(lab.b, 0, 1e-12);
    }
    EXPECT_NEAR(toLab(white).l, 100, 1e-12);
    EXPECT_NEAR(toLab(black).l, 0, 1e-12);
}

TEST(Lab, GoesThereAndBackForEveryColourOfAGrid) {
    for (int r = 0; r < 256; r += 15) {
        for (int g = 0; g < 256; g += 5) {
            for (int b = 0; b < 256; b += 5) {
                const Srgb c{static_cast<std::uint8_t>(r), static_cast<std::uint8_t>(g),
                             static_cast<std::uint8_t>(b)};
                ASSERT_EQ(toSrgb(toLab(c)), c) << toText(c);
            }
        }
    }
}

TEST(Lab, ClampsOnTheWayBack) {
    EXPECT_EQ(toSrgb(Lab{150, 0, 0}), white);
    EXPECT_EQ(toSrgb(Lab{-20, 0, 0}), black);
    EXPECT_EQ(toSrgb(Lab{50, 200, 0}).green, 0);
}

// Sharma, Wu & Dalal 2005 describe the discontinuity at opposite hues; the branch is theirs, the colours our
// own.
TEST(ColourDifference, TakesExactlyOppositeHuesTheSameWayInBothOrders) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> coordinate(-60, 60);
    int jumps = 0;
    for (int i = 0; i < 2000; ++i) {
        const double a = coordinate(random);
        const double b = coordinate(random);
        const Lab one{50, a, b};
        const Lab other{50, -a, -b};
        const double exact = difference(one, other);
        EXPECT_NEAR(exact, difference(other, one), 1e-12);
        // Two hues less than half a turn apart, not counted through 0°, have their plain mean, and so do
        // opposite ones: bringing them a hair nearer to each other on that side hardly changes the difference,
        // while a hair to the other side makes it jump.
        const double hair = b > 0 ? 1e-7 : -1e-7;
        EXPECT_NEAR(exact, difference(one, Lab{50, -a - b * hair, -b + a * hair}), 1e-4) << a << ' ' << b;
        jumps += std::abs(exact - difference(one, Lab{50, -a + b * hair, -b - a * hair})) > 1e-3;
    }
    EXPECT_GT(jumps, 1900);
}

TEST(ColourDifference, IsNothingForTheSameColourAndSymmetric) {
    std::mt19937 random(3);
    std::uniform_int_distribution<int> channel(0, 255);
    const auto colour = [&] {
        const auto next = [&] { return static_cast<std::uint8_t>(channel(random)); };
        return toLab(Srgb{next(), next(), next()});
    };
    for (int i = 0; i < 1000; ++i) {
        const Lab one = colour();
        const Lab other = colour();
        EXPECT_EQ(difference(one, one), 0);
        EXPECT_NEAR(difference(one, other), difference(other, one), 1e-12);
        EXPECT_GE(difference(one, other), 0);
    }
}

TEST(ColourDifference, OfGreysIsTheirWeightedLightness) {
    // With no chroma only the lightness term is left, and around L* 50 its weight is 1.
    EXPECT_NEAR(difference(Lab{49, 0, 0}, Lab{51, 0, 0}), 2, 1e-12);
    EXPECT_NEAR(difference(toLab(black), toLab(white)), 100, 1e-9);
}

TEST(Contrast, RunsFromOneToTwentyOneInEitherOrder) {
    EXPECT_NEAR(contrast(black, white), 21, 1e-12);
    EXPECT_NEAR(contrast(white, black), 21, 1e-12);
    EXPECT_EQ(contrast(white, white), 1);
    // The grey that just passes 4.5 on white, and the one that just fails: recomputed from WCAG 2.2.
    EXPECT_NEAR(contrast({0x76, 0x76, 0x76}, white), 4.542, 5e-4);
    EXPECT_NEAR(contrast({0x77, 0x77, 0x77}, white), 4.478, 5e-4);
}

TEST(Mixture, IsTheMeanInLinearLight) {
    const std::array halves = {WeightedSrgb{black, 2}, WeightedSrgb{white, 2}};
    // Half of the light is #bcbcbc; half of the numbers would be #808080.
    EXPECT_EQ(mixed(halves), (Srgb{0xbc, 0xbc, 0xbc}));
    const std::array one = {WeightedSrgb{{12, 200, 99}, 0.001}};
    EXPECT_EQ(mixed(one), (Srgb{12, 200, 99}));
}

TEST(Mixture, HeedsOnlyWeightsAboveZero) {
    const std::array parts = {WeightedSrgb{black, 0}, WeightedSrgb{{9, 8, 7}, 3}, WeightedSrgb{white, -1},
                              WeightedSrgb{white, std::nan("")}};
    EXPECT_EQ(mixed(parts), (Srgb{9, 8, 7}));
    EXPECT_EQ(mixed({}), std::nullopt);
    EXPECT_EQ(mixed(std::span(parts).first(1)), std::nullopt);
}

} // namespace
} // namespace stemwright

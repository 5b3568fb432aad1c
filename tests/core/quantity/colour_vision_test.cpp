#include "core/quantity/colour_vision.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>

namespace stemwright {
namespace {

constexpr ColourVision all[] = {ColourVision::full, ColourVision::protan, ColourVision::deutan,
                                ColourVision::tritan, ColourVision::grey};

TEST(ColourVision, LeavesGreysAlone) {
    for (const ColourVision vision : all) {
        for (int v = 0; v < 256; ++v) {
            const auto c = static_cast<std::uint8_t>(v);
            EXPECT_EQ(seenBy(vision, Srgb{c, c, c}), (Srgb{c, c, c}));
        }
    }
}

TEST(ColourVision, FullChangesNothing) {
    EXPECT_EQ(seenBy(ColourVision::full, Srgb{1, 2, 3}), (Srgb{1, 2, 3}));
}

TEST(ColourVision, GreyKeepsTheLuminance) {
    for (const Srgb c : {Srgb{255, 0, 0}, Srgb{0, 255, 0}, Srgb{0, 0, 255}, Srgb{0x2e, 0x8b, 0x57}}) {
        const Srgb grey = seenBy(ColourVision::grey, c);
        EXPECT_EQ(grey.red, grey.green);
        EXPECT_EQ(grey.red, grey.blue);
        EXPECT_NEAR(luminance(grey), luminance(c), 0.004);
    }
}

// The published matrix's column is what a primary alone turns into; negative light is clamped.
TEST(ColourVision, TurnsAPrimaryIntoItsColumn) {
    EXPECT_EQ(seenBy(ColourVision::protan, Srgb{255, 0, 0}), toSrgb(LinearRgb{0.152286, 0.114503, -0.003882}));
    EXPECT_EQ(seenBy(ColourVision::deutan, Srgb{0, 255, 0}), toSrgb(LinearRgb{0.860646, 0.672501, 0.042940}));
    EXPECT_EQ(seenBy(ColourVision::tritan, Srgb{0, 0, 255}), toSrgb(LinearRgb{-0.178779, 0.147602, 0.303900}));
}

TEST(ColourVision, BringsConfusedColoursTogether) {
    // A red and a green of like brightness are what red-green blindness takes for one another.
    const Srgb red{0xc0, 0x50, 0x30};
    const Srgb green{0x70, 0x80, 0x28};
    const double seen = difference(toLab(red), toLab(green));
    for (const ColourVision vision : {ColourVision::protan, ColourVision::deutan}) {
        const double left = difference(toLab(seenBy(vision, red)), toLab(seenBy(vision, green)));
        EXPECT_LT(left, seen / 2);
    }
}

} // namespace
} // namespace stemwright

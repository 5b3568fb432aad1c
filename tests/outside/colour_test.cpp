#include "core/quantity/colour.h"
#include "support/csv.h"

#include <gtest/gtest.h>
#include <lcms2.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <random>
#include <string>

namespace stemwright {
namespace {

/// Random colours, every time the same.
class Colours {
public:
    Srgb next() { return {channel(), channel(), channel()}; }

private:
    std::uint8_t channel() { return static_cast<std::uint8_t>(distribution_(random_)); }
    std::mt19937 random_{2005};
    std::uniform_int_distribution<int> distribution_{0, 255};
};

// Sharma, Wu & Dalal 2005, table 1, in tests/data.
TEST(PublishedColours, DifferencesOfThirtyFourPairs) {
    const auto pairs = test::readNumbers("ciede2000.csv");
    ASSERT_EQ(pairs.size(), 34U);
    for (const auto& p : pairs) {
        ASSERT_EQ(p.size(), 8U);
        const Lab one{p[1], p[2], p[3]};
        const Lab other{p[4], p[5], p[6]};
        EXPECT_NEAR(difference(one, other), p[7], 5.0e-5) << "pair " << p[0];
        EXPECT_NEAR(difference(other, one), p[7], 5.0e-5) << "pair " << p[0] << " turned";
    }
}

// The 24 published pairs in tests/data, whose sRGB side is rounded to whole numbers.
TEST(PublishedColours, TwentyFourPatchesInLab) {
    const auto patches = test::readNumbers("srgb_lab.csv");
    ASSERT_EQ(patches.size(), 24U);
    for (const auto& p : patches) {
        ASSERT_EQ(p.size(), 6U);
        const Lab lab = toLab({static_cast<std::uint8_t>(p[0]), static_cast<std::uint8_t>(p[1]),
                               static_cast<std::uint8_t>(p[2])});
        EXPECT_NEAR(lab.l, p[3], 0.1);
        EXPECT_NEAR(lab.a, p[4], 0.1);
        EXPECT_NEAR(lab.b, p[5], 0.1);
    }
}

TEST(LittleCms, FindsTheSameDifferences) {
    Colours colours;
    double worst = 0;
    for (int i = 0; i < 10'000; ++i) {
        const Lab one = toLab(colours.next());
        const Lab other = toLab(colours.next());
        const cmsCIELab theirOne{one.l, one.a, one.b};
        const cmsCIELab theirOther{other.l, other.a, other.b};
        const double theirs = cmsCIE2000DeltaE(&theirOne, &theirOther, 1, 1, 1);
        worst = std::max(worst, std::abs(difference(one, other) - theirs));
    }
    EXPECT_LT(worst, 1e-9);
    RecordProperty("worst", std::to_string(worst));
}

struct CloseProfile {
    void operator()(void* profile) const { cmsCloseProfile(profile); }
};
struct DeleteTransform {
    void operator()(void* transform) const { cmsDeleteTransform(transform); }
};

// Another path to Lab: the library's own sRGB profile, whose matrix comes from the primaries to full precision,
// to XYZ under D50, brought to D65 by its own adaptation, then its own formula for Lab.
TEST(LittleCms, FindsTheSameLab) {
    const std::unique_ptr<void, CloseProfile> srgb(cmsCreate_sRGBProfile());
    const std::unique_ptr<void, CloseProfile> xyz(cmsCreateXYZProfile());
    const std::unique_ptr<void, DeleteTransform> transform(cmsCreateTransform(
        srgb.get(), TYPE_RGB_DBL, xyz.get(), TYPE_XYZ_DBL, INTENT_RELATIVE_COLORIMETRIC, cmsFLAGS_NOOPTIMIZE));
    ASSERT_TRUE(transform);
    const cmsCIExyY d65 = {0.3127, 0.3290, 1.0};
    cmsCIEXYZ white;
    cmsxyY2XYZ(&white, &d65);

    Colours colours;
    double worst = 0;
    for (int i = 0; i < 10'000; ++i) {
        const Srgb colour = colours.next();
        const double channels[3] = {colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0};
        cmsCIEXYZ underD50;
        cmsDoTransform(transform.get(), channels, &underD50, 1);
        cmsCIEXYZ underD65;
        ASSERT_TRUE(cmsAdaptToIlluminant(&underD65, cmsD50_XYZ(), &white, &underD50));
        cmsCIELab theirs;
        cmsXYZ2Lab(&white, &theirs, &underD65);
        const Lab ours = toLab(colour);
        worst = std::max(
            {worst, std::abs(ours.l - theirs.L), std::abs(ours.a - theirs.a), std::abs(ours.b - theirs.b)});
    }
    EXPECT_LT(worst, 0.03);
    RecordProperty("worst", std::to_string(worst));
}

} // namespace
} // namespace stemwright

// What makers cut, as far as it is known: common practice, no source.
#include "core/figures/figures.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

/// Pairs of leaves of 28 gauge (AWG) wire, 0.321 mm, two wires each, a quarter of an inch apart and with a last
/// wrap of 25 mm, bound with six strands of floss without a core.
Plan stemOfPairs(int pairs) {
    Plan plan;
    plan.colours = {{ColourId{1}, "Green", {60, 120, 80}, ""}};
    plan.mixes = {{MixId{1}, "Green", "G", {{ColourId{1}, 1, ""}}, ""}};
    Kind kind;
    kind.id = KindId{1};
    kind.wiresAtBase = 2;
    kind.wireDiameter = millimetres(0.321);
    kind.stock = {{MixId{1}, 2 * pairs, 0, ""}};
    plan.kinds = {kind};
    plan.binding.wraps = {Wrap{}};
    Stem stem;
    stem.id = StemId{1};
    stem.spacing = inches(0.25);
    stem.tail = millimetres(25);
    for (int i = 0; i < pairs; ++i) {
        Tier tier = newTier(stem, stem.tiers.empty() ? nullptr : &stem.tiers.back(), KindId{1});
        for (Slot& slot : tier.slots)
            slot.leaf.mix = MixId{1};
        stem.tiers.push_back(tier);
    }
    plan.stems = {stem};
    EXPECT_FALSE(firstProblem(plan));
    return plan;
}

double toCut(int pairs) {
    return inMillimetres(figures(stemOfPairs(pairs)).stems[0].wraps[0].toCut);
}

// Common practice, no source: for seven such pairs makers cut about two feet, 610 mm, and have some to spare.
TEST(BindingPractice, SevenPairsTakeAboutTwoFeetOfFloss) {
    EXPECT_EQ(Wrap{}.with, WrapWith::floss);
    EXPECT_EQ(Wrap{}.strands, 6);
    EXPECT_GT(toCut(7), 610 * 0.75);
    EXPECT_LT(toCut(7), 610 * 1.25);
}

TEST(BindingPractice, LongerStemsNeedMore) {
    for (int pairs = 2; pairs < 30; ++pairs)
        EXPECT_GT(toCut(pairs), toCut(pairs - 1));
}

} // namespace
} // namespace stemwright

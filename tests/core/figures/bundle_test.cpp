#include "core/figures/bundle.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stemwright {
namespace {

double across(const Bundle& bundle, const std::optional<CoreWire>& core = std::nullopt) {
    return inMillimetres(bundle.diameter(core));
}

TEST(Bundle, SevenEqualWiresAreThreeAcross) {
    Bundle bundle;
    bundle.add(3, millimetres(0.32));
    bundle.add(4, millimetres(0.32));
    EXPECT_EQ(bundle.wires(), 7);
    EXPECT_NEAR(across(bundle), 3 * 0.32, 1e-12);
}

TEST(Bundle, UnlikeWiresCountByTheirArea) {
    Bundle bundle;
    bundle.add(2, millimetres(0.3));
    bundle.add(2, millimetres(0.4));
    // Four wires of √((2·0.09 + 2·0.16) / 4) = 0.353553 mm at 1 + √2 (closed form for four circles).
    EXPECT_NEAR(across(bundle), (1 + std::sqrt(2.0)) * std::sqrt(0.125), 1e-9);
}

TEST(Bundle, ACoreIsAddedByArea) {
    Bundle bundle;
    EXPECT_EQ(across(bundle), 0);
    CoreWire core;
    core.diameter = millimetres(1.2);
    EXPECT_EQ(across(bundle, core), 1.2);
    bundle.add(2, millimetres(0.25));
    EXPECT_NEAR(across(bundle, core), 1.3, 1e-12);
}

TEST(Bundle, NeverGetsThinner) {
    Bundle bundle;
    double before = 0;
    for (int i = 0; i < 200; ++i) {
        bundle.add(1, millimetres(0.32));
        EXPECT_GE(across(bundle), before);
        before = across(bundle);
    }
}

} // namespace
} // namespace stemwright

#include "core/quantity/metal.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stemwright {
namespace {

constexpr Metal all[] = {Metal::softCopper, Metal::hardCopper, Metal::softBrass, Metal::hardBrass,
                         Metal::mildSteel,  Metal::softSteel,  Metal::aluminium};

TEST(Metal, EveryOneHasItsFigures) {
    for (const Metal metal : all) {
        const MetalFigures& figures = figuresOf(metal);
        EXPECT_GT(figures.density, 2000);
        EXPECT_LT(figures.density, 9000);
        EXPECT_GT(figures.modulus, 60'000);
        EXPECT_LE(figures.modulus, 200'000);
        EXPECT_GT(figures.yield, 0);
        EXPECT_GE(figures.yieldAtMost, figures.yield);
    }
}

TEST(Metal, HardWireBearsMoreThanSoftOfTheSameMetal) {
    EXPECT_GT(figuresOf(Metal::hardCopper).yield, figuresOf(Metal::softCopper).yieldAtMost);
    EXPECT_GT(figuresOf(Metal::hardBrass).yield, figuresOf(Metal::softBrass).yieldAtMost);
    EXPECT_EQ(figuresOf(Metal::hardBrass).density, figuresOf(Metal::softBrass).density);
}

// A metre of one square millimetre is a cubic centimetre.
TEST(WireMass, OfAMetreOfCopper) {
    const double diameter = std::sqrt(4 / std::numbers::pi);
    EXPECT_NEAR(inGrams(massOfWire(Metal::softCopper, millimetres(diameter), millimetres(1000))), 8.94, 1e-12);
}

TEST(WireMass, OfNothingIsNothing) {
    EXPECT_EQ(massOfWire(Metal::aluminium, millimetres(1), Length()), Mass());
    EXPECT_EQ(massOfWire(Metal::aluminium, Length(), millimetres(1)), Mass());
    EXPECT_EQ(massOfWire(Metal::aluminium, millimetres(-1), millimetres(-1)), Mass());
}

} // namespace
} // namespace stemwright

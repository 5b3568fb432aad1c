#include "core/quantity/solid.h"
#include "core/quantity/wire_strength.h"

#include <gtest/gtest.h>

#include <numbers>

namespace stemwright {
namespace {

TEST(Solid, ACylinderIsAFrustumOfEqualEnds) {
    const Solid solid = frustum(millimetres(20), millimetres(20), millimetres(30));
    EXPECT_NEAR(solid.volume, std::numbers::pi * 100 * 30, 1e-9);
    EXPECT_NEAR(inMillimetres(solid.centre), 15, 1e-12);
}

TEST(Solid, ACapOfTheWholeSphereIsTheSphere) {
    const Solid solid = cap(millimetres(6), millimetres(50));
    EXPECT_NEAR(solid.volume, 4.0 / 3 * std::numbers::pi * 216, 1e-9);
    EXPECT_NEAR(inMillimetres(solid.centre), 6, 1e-12);
}

TEST(Solid, NothingIsNothing) {
    EXPECT_EQ(frustum(millimetres(20), millimetres(20), millimetres(-1)).volume, 0);
    EXPECT_EQ(cap(millimetres(6), millimetres(0)).volume, 0);
    const Solid some = cap(millimetres(6), millimetres(3));
    EXPECT_EQ(between(some, some).volume, 0);
    EXPECT_EQ(bowlRadius(millimetres(10), millimetres(0)), Length{});
}

TEST(Solid, ABowlAsDeepAsHalfItsOpeningIsHalfASphere) {
    EXPECT_NEAR(inMillimetres(bowlRadius(millimetres(80), millimetres(40))), 40, 1e-12);
}

TEST(WireStrength, GrowsWithTheCubeAndTheFourthPower) {
    const Length one = millimetres(1);
    EXPECT_NEAR(plasticMoment(Metal::mildSteel, 2 * one) / plasticMoment(Metal::mildSteel, one), 8, 1e-12);
    EXPECT_NEAR(wireStiffness(Metal::mildSteel, 2 * one) / wireStiffness(Metal::mildSteel, one), 16, 1e-12);
}

} // namespace
} // namespace stemwright

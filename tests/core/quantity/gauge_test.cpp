#include "core/quantity/gauge.h"

#include <gtest/gtest.h>

#include <cmath>

namespace stemwright {
namespace {

constexpr GaugeSystem systems[] = {GaugeSystem::awg, GaugeSystem::swg, GaugeSystem::steel};

TEST(Gauge, HasEveryNumberOfItsRangeAndNoOther) {
    for (const GaugeSystem system : systems) {
        EXPECT_FALSE(diameterOf({system, thickestGauge - 1}));
        EXPECT_FALSE(diameterOf({system, thinnestGauge + 1}));
        EXPECT_FALSE(diameterOf({system, -1}));
        for (int number = thickestGauge + 1; number <= thinnestGauge; ++number)
            EXPECT_LT(*diameterOf({system, number}), *diameterOf({system, number - 1})) << number;
    }
}

TEST(NearestGauge, FindsEveryNumberByItsOwnDiameter) {
    for (const GaugeSystem system : systems) {
        for (int number = thickestGauge; number <= thinnestGauge; ++number) {
            const NearestGauge nearest = nearestGauge(*diameterOf({system, number}), system);
            EXPECT_EQ(nearest.gauge, (GaugeNumber{system, number}));
            EXPECT_EQ(nearest.off, Length());
        }
    }
}

TEST(NearestGauge, SaysHowFarOff) {
    // 0.7 mm sold as "22": thinner than imperial 22 (0.7112 mm), thicker than American 22 (0.6438 mm).
    const NearestGauge swg = nearestGauge(millimetres(0.7), GaugeSystem::swg);
    EXPECT_EQ(swg.gauge.number, 22);
    EXPECT_NEAR(inMillimetres(swg.off), -0.0112, 1e-9);
    const NearestGauge awg = nearestGauge(millimetres(0.66), GaugeSystem::awg);
    EXPECT_EQ(awg.gauge.number, 22);
    EXPECT_NEAR(inMillimetres(awg.off), 0.0162, 5e-5);
}

TEST(NearestGauge, StopsAtTheEnds) {
    const NearestGauge rod = nearestGauge(millimetres(10), GaugeSystem::swg);
    EXPECT_EQ(rod.gauge.number, thickestGauge);
    EXPECT_NEAR(inMillimetres(rod.off), 10 - 0.128 * 25.4, 1e-12);
    const NearestGauge hair = nearestGauge(millimetres(0.05), GaugeSystem::swg);
    EXPECT_EQ(hair.gauge.number, thinnestGauge);
    EXPECT_LT(hair.off, Length());
}

TEST(NearestGauge, ChangesHalfwayBetweenTwoNumbers) {
    const Length middle = (*diameterOf({GaugeSystem::swg, 18}) + *diameterOf({GaugeSystem::swg, 19})) / 2;
    EXPECT_EQ(nearestGauge(middle - millimetres(1e-9), GaugeSystem::swg).gauge.number, 19);
    EXPECT_EQ(nearestGauge(middle + millimetres(1e-9), GaugeSystem::swg).gauge.number, 18);
}

} // namespace
} // namespace stemwright

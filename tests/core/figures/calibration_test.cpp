#include "core/figures/calibration.h"

#include "core/figures/figures.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

TEST(Calibration, FindsTheOverlapThatMadeTheFigures) {
    const Plan before = test::smallBoard();
    for (const double overlap : {0.0, 0.1, 0.45, 0.9}) {
        Plan plan = before;
        plan.binding.wraps[0].overlap = overlap;
        const Figures all = figures(plan);
        const std::vector<MeasuredStem> one{{StemId{1}, all.stems[0].wraps[0].used}};
        const std::vector<MeasuredStem> two{{StemId{1}, all.stems[0].wraps[0].used},
                                            {StemId{2}, all.stems[1].wraps[0].used}};
        ASSERT_TRUE(fittedOverlap(before, 0, one));
        EXPECT_NEAR(*fittedOverlap(before, 0, one), overlap, 1e-6);
        EXPECT_NEAR(*fittedOverlap(before, 0, two), overlap, 1e-6);
    }
}

TEST(Calibration, StemsThatDisagreeMeetInTheirSum) {
    Plan plan = test::smallBoard();
    const Figures all = figures(plan);
    const std::vector<MeasuredStem> measured{{StemId{1}, all.stems[0].wraps[0].used + millimetres(30)},
                                             {StemId{2}, all.stems[1].wraps[0].used - millimetres(10)}};
    plan.binding.wraps[0].overlap = *fittedOverlap(plan, 0, measured);
    const Figures then = figures(plan);
    EXPECT_NEAR(inMillimetres(then.stems[0].wraps[0].used + then.stems[1].wraps[0].used),
                inMillimetres(all.stems[0].wraps[0].used + all.stems[1].wraps[0].used) + 20, 1e-6);
}

TEST(Calibration, WhatFitsNoOverlapIsNotGuessed) {
    const Plan plan = test::smallBoard();
    const auto fitted = [&](std::size_t wrap, StemId stem, double mm) {
        return fittedOverlap(plan, wrap, std::vector<MeasuredStem>{{stem, millimetres(mm)}});
    };
    EXPECT_FALSE(fitted(0, StemId{1}, 100)); // less than edge to edge
    EXPECT_FALSE(fitted(0, StemId{1}, 1e6));
    EXPECT_FALSE(fitted(0, StemId{9}, 500));
    EXPECT_FALSE(fitted(1, StemId{1}, 500));
    EXPECT_FALSE(fittedOverlap(plan, 0, {}));
}

} // namespace
} // namespace stemwright

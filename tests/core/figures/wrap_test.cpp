#include "core/figures/wrap.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stemwright {
namespace {

constexpr double pi = std::numbers::pi;

Wrap bare(WrapWith with, Length width, Length thickness) {
    Wrap wrap;
    wrap.with = with;
    wrap.strands = 1;
    wrap.width = width;
    wrap.thickness = thickness;
    wrap.overlap = 0;
    wrap.startTail = wrap.finish = wrap.hold = Length{};
    return wrap;
}

TEST(Wrap, OneWireOverOneStretch) {
    Binding binding;
    binding.wraps = {bare(WrapWith::wire, millimetres(0.3), millimetres(0.3))};
    const std::vector<Stretch> stretches{{millimetres(6), millimetres(1.2)}};
    const auto figures = wrapFigures(binding, stretches);
    // 20 turns of √((1.5 π)² + 0.3²).
    EXPECT_NEAR(inMillimetres(figures[0].used), 20 * std::hypot(1.5 * pi, 0.3), 1e-9);
    EXPECT_EQ(figures[0].used, figures[0].toCut);
}

TEST(Wrap, TailFinishAndHold) {
    Binding binding;
    binding.wraps = {Wrap{}};
    const std::vector<Stretch> stretches{{millimetres(8), millimetres(1)}, {millimetres(30), millimetres(1.4)}};
    const auto figures = wrapFigures(binding, stretches);
    const double advance = 6 * 0.2 * 0.7;
    const double turns =
        8 / advance * std::hypot(1.2 * pi, advance) + 30 / advance * std::hypot(1.6 * pi, advance);
    EXPECT_NEAR(inMillimetres(figures[0].used), turns + 40 + 50, 1e-9);
    EXPECT_NEAR(inMillimetres(figures[0].toCut), turns + 40 + 50 + 100, 1e-9);
}

TEST(Wrap, AnOuterLayerGoesRoundTheInnerOne) {
    Binding both;
    both.wraps = {bare(WrapWith::wire, millimetres(0.3), millimetres(0.3)),
                  bare(WrapWith::floss, millimetres(1), millimetres(0.2))};
    Binding alone;
    alone.wraps = {both.wraps[1]};
    const std::vector<Stretch> thin{{millimetres(10), millimetres(1)}};
    const std::vector<Stretch> thick{{millimetres(10), millimetres(1.6)}};
    EXPECT_EQ(wrapFigures(both, thin)[1], wrapFigures(alone, thick)[0]);
}

TEST(Wrap, TapeIsStretched) {
    Binding binding;
    binding.wraps = {bare(WrapWith::tape, millimetres(12), millimetres(0.1))};
    const std::vector<Stretch> stretches{{millimetres(50), millimetres(2)}};
    const Length unstretched = wrapFigures(binding, stretches)[0].used;
    binding.wraps[0].stretch = 2;
    EXPECT_NEAR(wrapFigures(binding, stretches)[0].used / unstretched, 0.5, 1e-12);
}

TEST(Wrap, WhereThereIsNothingToBindNothingIsCut) {
    Binding binding;
    binding.wraps = {Wrap{}, Wrap{}};
    const std::vector<Stretch> empty{{millimetres(30), millimetres(0)}, {millimetres(0), millimetres(2)}};
    for (const WrapFigures& figures : wrapFigures(binding, empty))
        EXPECT_EQ(figures, WrapFigures{});
    EXPECT_TRUE(wrapFigures({}, empty).empty());
}

} // namespace
} // namespace stemwright

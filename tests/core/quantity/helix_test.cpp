#include "core/quantity/helix.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stemwright {
namespace {

const Layer wire{millimetres(2), millimetres(0.3), millimetres(0.3), 0};

TEST(Helix, WithoutRadiusIsAStraightLineAndWithoutPitchARing) {
    EXPECT_DOUBLE_EQ(inMillimetres(helixLength(5, Length(), millimetres(2))), 10);
    EXPECT_DOUBLE_EQ(inMillimetres(helixLength(1, millimetres(1), Length())), 2 * std::numbers::pi);
    EXPECT_EQ(helixLength(0, millimetres(1), millimetres(1)), Length());
}

TEST(Winding, CountsTurnsByTheAdvance) {
    EXPECT_DOUBLE_EQ(wound(wire, millimetres(30)).turns, 100);
    Layer lapped = wire;
    lapped.overlap = 0.5;
    EXPECT_DOUBLE_EQ(wound(lapped, millimetres(30)).turns, 200);
}

TEST(Winding, RunsAtTheMiddleOfTheLayer) {
    const Winding winding = wound(wire, millimetres(0.3));
    EXPECT_DOUBLE_EQ(winding.turns, 1);
    EXPECT_NEAR(inMillimetres(winding.length), std::hypot(std::numbers::pi * 2.3, 0.3), 1e-12);
    EXPECT_DOUBLE_EQ(inMillimetres(wrappedDiameter(wire)), 2.6);
}

TEST(Winding, OfTwoStretchesAddsUp) {
    const Length whole = wound(wire, millimetres(17.3)).length;
    const Length parts = wound(wire, millimetres(10)).length + wound(wire, millimetres(7.3)).length;
    EXPECT_NEAR(inMillimetres(whole), inMillimetres(parts), 1e-9);
}

// Textbook: a flat strip of width w laid edge to edge on a circumference C covers C · along / w of its own
// length.
TEST(Winding, OfANarrowBandIsThatOfTheExactCover) {
    const Layer floss{millimetres(3), millimetres(0.2), millimetres(1.2), 0.3};
    const double circumference = std::numbers::pi * 3.2;
    const double advance = 1.2 * 0.7;
    const double exact = circumference * 50 / advance;
    const double ours = inMillimetres(wound(floss, millimetres(50)).length);
    EXPECT_GT(ours, exact);
    EXPECT_NEAR(ours / exact, std::hypot(1, advance / circumference), 1e-12);
    EXPECT_LT(ours / exact, 1.004);
}

TEST(Winding, OfNothingTakesNothing) {
    const auto none = [](const Layer& layer, Length along) {
        const Winding winding = wound(layer, along);
        return winding.turns == 0 && winding.length == Length();
    };
    EXPECT_TRUE(none(wire, Length()));
    EXPECT_TRUE(none(wire, millimetres(-1)));
    EXPECT_TRUE(none(Layer{millimetres(2), millimetres(0.3), Length(), 0}, millimetres(5)));
    EXPECT_TRUE(none(Layer{millimetres(2), millimetres(0.3), millimetres(0.3), 1}, millimetres(5)));
}

} // namespace
} // namespace stemwright

// Leaves against published patterns of the last century. They state no bead size, so the spread they show is
// that of their beads and hands.
#include "core/figures/leaf_make.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>

namespace stemwright {
namespace {

std::vector<int> loopsOf(int first, int count) {
    LeafMake make;
    make.making = Making::loops;
    make.beads = first;
    make.rows = count;
    return madeLeaf(make, LeafEnd::round, LeafEnd::round, *beadSizeNamed("11/0")).rows;
}

void expectClose(const std::vector<int>& published, int most) {
    const std::vector<int> ours = loopsOf(published.front(), static_cast<int>(published.size()));
    for (std::size_t i = 0; i < published.size(); ++i)
        EXPECT_LE(std::abs(ours[i] - published[i]), most) << "loop " << i + 1;
}

// Vintage patterns, published counts: a loop gains 9 to 11 beads over the one inside it.
TEST(PublishedPatterns, LoopsRoundLoops) {
    expectClose({9, 19}, 0);              // an apple blossom's petal
    expectClose({11, 21}, 0);             // and its leaf
    expectClose({19, 28, 39, 50, 60}, 1); // an iris petal
}

// A tulip petal's loops of 2, 2½, 3½, 4 and 4½ inches of strung beads: 0.625 in more each on the mean. In
// lengths, a loop gains 2π row pitches.
TEST(PublishedPatterns, LoopsByLength) {
    const double gain = 2 * std::acos(-1.0) * rowPitchInBeads * inInches(beadSizeNamed("11/0")->pitch);
    EXPECT_NEAR(gain, 0.625, 0.1);
}

// A heart leaf's tutorial adds one bead a row for a very pointed tip: of one end, at 30 degrees.
TEST(PublishedPatterns, APointedTipTakesABeadMoreARow) {
    const double alpha = std::acos(-1.0) / 6;
    const double more = rowPitchInBeads * (alpha + 1 / std::tan(alpha) - std::acos(-1.0) / 2);
    EXPECT_NEAR(more, 1, 0.2);
}

// An iris leaf of bugle beads, 40, 44 and 48: four more a loop. The geometry says ten, since beads of 7 to 8 mm
// cannot follow the curve; it must be refused and not guessed.
TEST(PublishedPatterns, BugleBeadsAreRefused) {
    const BeadSize bugle{"bugle", millimetres(2), millimetres(7.5), grams(0.03)};
    LeafMake make;
    make.making = Making::loops;
    make.beads = 40;
    make.rows = 3;
    EXPECT_EQ(faultOf(make, bugle), MakeFault::longBead);
    EXPECT_GT(madeLeaf(make, LeafEnd::round, LeafEnd::round, bugle).rows[1], 44 + 4);
}

} // namespace
} // namespace stemwright

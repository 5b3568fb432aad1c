#include "core/figures/leaf_make.h"

#include <gtest/gtest.h>

#include <numeric>

namespace stemwright {
namespace {

const BeadSize eleven = *beadSizeNamed("11/0");

LeafMake rowsOf(int basic, int rows) {
    LeafMake make;
    make.beads = basic;
    make.rows = rows;
    return make;
}

TEST(LeafMake, RowsComeInPairsAroundTheBasic) {
    const MadeLeaf leaf = madeLeaf(rowsOf(5, 5), LeafEnd::round, LeafEnd::round, eleven);
    // A round end adds π/2 · 1.6 beads: five beads more a pair.
    EXPECT_EQ(leaf.rows, (std::vector<int>{5, 10, 10, 15, 15}));
    EXPECT_EQ(leaf.beads, 55);
    EXPECT_EQ(leaf.wiresAtBase, 3);
    EXPECT_NEAR(inMillimetres(leaf.length), 5 * 1.4 + 2 * 2 * 1.6 * 1.4, 1e-9);
    EXPECT_NEAR(inMillimetres(leaf.width), 2 + 4 * 1.6 * 1.4, 1e-9);
    EXPECT_GT(leaf.wire, leaf.beads * eleven.pitch + leaf.length);
}

TEST(LeafMake, APointTakesMoreBeadsAndMakesALongerLeaf) {
    const MadeLeaf round = madeLeaf(rowsOf(8, 7), LeafEnd::round, LeafEnd::round, eleven);
    const MadeLeaf pointed = madeLeaf(rowsOf(8, 7), LeafEnd::pointed, LeafEnd::round, eleven);
    EXPECT_GT(pointed.beads, round.beads);
    EXPECT_GT(pointed.length, round.length);
    EXPECT_EQ(pointed.width, round.width);
}

TEST(LeafMake, LoopsHaveTwoWiresAndAreTwiceAsWideAsOneRow) {
    LeafMake make;
    make.making = Making::loops;
    make.beads = 9;
    make.rows = 1;
    const MadeLeaf one = madeLeaf(make, LeafEnd::round, LeafEnd::round, eleven);
    EXPECT_EQ(one.rows, std::vector<int>{9});
    EXPECT_EQ(one.wiresAtBase, 2);
    EXPECT_NEAR(inMillimetres(one.wire), 9 * 1.4 + 6 * 25.4, 1e-9);
    make.rows = 3;
    const MadeLeaf three = madeLeaf(make, LeafEnd::round, LeafEnd::round, eleven);
    EXPECT_EQ(three.rows, (std::vector<int>{9, 19, 29}));
    EXPECT_GT(three.width, one.width);
}

TEST(LeafMake, WhatSheCountedStandsInPlaceOfWhatIsReckoned) {
    LeafMake make = rowsOf(5, 5);
    const MadeLeaf reckoned = madeLeaf(make, LeafEnd::round, LeafEnd::round, eleven);
    make.counted = {{3, 17, ""}, {0, 6, ""}, {9, 99, ""}};
    const MadeLeaf counted = madeLeaf(make, LeafEnd::round, LeafEnd::round, eleven);
    EXPECT_EQ(counted.rows, (std::vector<int>{6, 10, 10, 17, 15}));
    EXPECT_EQ(counted.counted, (std::vector<bool>{true, false, false, true, false}));
    EXPECT_EQ(counted.beads, 58);
    EXPECT_NEAR(inMillimetres(counted.length - reckoned.length), 1.4, 1e-9) << "the basic is a bead longer";
    EXPECT_NEAR(inMillimetres(counted.wire - reckoned.wire), 3 * 1.4 + 1.4, 1e-9);
}

TEST(LeafMake, AKindFollowsItsPatternButForWhatIsHers) {
    const Plan plan;
    KindForm form;
    form.beads = 1;
    form.wire = millimetres(1);
    form.wiresAtBase = 1;
    EXPECT_EQ(followPattern(plan, form), form) << "a kind without a pattern is as she measured it";
    form.make = rowsOf(5, 5);
    form.own.wiresAtBase = true;
    const KindForm followed = followPattern(plan, form);
    EXPECT_EQ(followed.beads, 55);
    EXPECT_EQ(followed.wiresAtBase, 1) << "she cuts two away";
    EXPECT_NEAR(inMillimetres(followed.width), 11, 1e-9) << "2 + 4 · 1.6 · 1.4";
    EXPECT_EQ(followPattern(plan, followed), followed);
    form.make->rows = 4;
    EXPECT_EQ(followPattern(plan, form), form) << "no leaf ends at its tip";
    EXPECT_EQ(faultOf(plan, form), MakeFault::evenRows);
}

TEST(LeafMake, ThePlansOwnBeadsGoBeforeTheHandbooks) {
    Plan plan;
    plan.own.beads = {{"11/0", millimetres(2), millimetres(1.5), grams(0.01), ""}};
    KindForm form;
    form.make = rowsOf(5, 5);
    EXPECT_NEAR(followPattern(plan, form).length / followPattern({}, form).length, 1.5 / 1.4, 0.005);
    plan.own.beads[0].pitch = millimetres(7);
    EXPECT_EQ(faultOf(plan, form), MakeFault::longBead);
    form.beadSize = "of glass";
    EXPECT_EQ(faultOf(plan, form), MakeFault::none);
    EXPECT_EQ(followPattern(plan, form), form);
}

TEST(LeafMake, WhatCannotBeMadeIsSaid) {
    EXPECT_EQ(faultOf(rowsOf(5, 5), eleven), MakeFault::none);
    EXPECT_EQ(faultOf(rowsOf(0, 5), eleven), MakeFault::noBeads);
    EXPECT_EQ(faultOf(rowsOf(5, 0), eleven), MakeFault::noBeads);
    EXPECT_EQ(faultOf(rowsOf(5, 4), eleven), MakeFault::evenRows);
    LeafMake loops = rowsOf(5, 4);
    loops.making = Making::loops;
    EXPECT_EQ(faultOf(loops, eleven), MakeFault::none);
    const BeadSize bugle{"bugle", millimetres(2), millimetres(7.5), grams(0.03)};
    EXPECT_EQ(faultOf(rowsOf(5, 5), bugle), MakeFault::longBead);
    for (const BeadSize& size : beadSizes())
        EXPECT_EQ(faultOf(rowsOf(5, 5), size), MakeFault::none) << size.name;
}

} // namespace
} // namespace stemwright

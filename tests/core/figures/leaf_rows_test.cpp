#include "core/figures/leaf_rows.h"

#include "core/figures/leaf_beads.h"
#include "core/figures/leaf_make.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace stemwright {
namespace {

LeafShape leaf(double length, double width, int beads, std::vector<double> shares = {}) {
    return {length, width, LeafEnd::round, LeafEnd::round, beads, std::move(shares)};
}

std::vector<double> drawnShares(const LeafRows& rows, std::size_t bands) {
    std::vector<double> out(bands);
    for (const BeadMark& bead : rows.beads)
        out[static_cast<std::size_t>(bead.band)] += 1.0 / static_cast<double>(rows.beads.size());
    return out;
}

TEST(LeafRows, KeepsTheNumberOfBeads) {
    for (const int beads : {1, 2, 3, 17, 40, 60, 90, 250, 1500})
        EXPECT_EQ(leafRows(leaf(18, 10, beads)).beads.size(), static_cast<std::size_t>(beads));
    EXPECT_EQ(leafRows(leaf(18, 10, 100'000)).beads.size(), static_cast<std::size_t>(mostBeadsShown));
    EXPECT_EQ(leafRows(leaf(18, 10, 0)).beads.size(), 1u);
}

TEST(LeafRows, RowsCoverEveryBeadOnceFromTheOuterRowInward) {
    const LeafRows rows = leafRows(leaf(22, 14, 90));
    ASSERT_GE(rows.rows.size(), 3u);
    std::size_t next = 0;
    for (const LeafRow& row : rows.rows) {
        EXPECT_EQ(row.first, next);
        next += row.count;
    }
    EXPECT_EQ(next, rows.beads.size());
    EXPECT_FALSE(rows.rows.back().closed);
    for (std::size_t i = 1; i < rows.rows.size(); ++i)
        EXPECT_GT(rows.rows[i - 1].count, rows.rows[i].count);
    for (std::size_t i = 0; i < rows.rows.back().count; ++i)
        EXPECT_EQ(rows.beads[rows.rows.back().first + i].middle.x, 0);
}

// 18 × 10 mm of 60 beads: five rows across, as the bead's proportions ask.
TEST(LeafRows, TakesTheNumberOfRowsThatFitsTheBeads) {
    const LeafRows rows = leafRows(leaf(18, 10, 60));
    EXPECT_EQ(rows.rows.size(), 3u);
    EXPECT_DOUBLE_EQ(rows.pitch, 2);
    const double along = rows.beads.front().along;
    EXPECT_GT(rows.pitch / along, 1.2);
    EXPECT_LT(rows.pitch / along, 1.9);
}

TEST(LeafRows, EveryBeadLiesInsideTheLeaf) {
    std::mt19937 random(5);
    const auto between = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
    };
    for (int i = 0; i < 500; ++i) {
        LeafShape shape = leaf(between(1, 80), between(1, 60), 1 + static_cast<int>(random() % 300));
        shape.tipEnd = random() % 2 ? LeafEnd::round : LeafEnd::pointed;
        shape.baseEnd = random() % 2 ? LeafEnd::round : LeafEnd::pointed;
        for (const BeadMark& bead : leafRows(shape).beads) {
            ASSERT_LE(std::abs(bead.middle.x), shape.width / 2);
            ASSERT_LE(bead.middle.y, 1e-9);
            ASSERT_GE(bead.middle.y, -shape.length - 1e-9);
            ASSERT_GT(bead.along, 0);
            ASSERT_GE(bead.degrees, 0);
            ASSERT_LT(bead.degrees, 180);
        }
    }
}

TEST(LeafRows, OutlineHasTheLeafsMeasure) {
    for (const LeafEnd end : {LeafEnd::round, LeafEnd::pointed}) {
        LeafShape shape = leaf(22, 14, 90);
        shape.tipEnd = end;
        double left = 0, right = 0, top = 0, bottom = -1;
        for (const PointMm& p : leafOutline(shape)) {
            left = std::min(left, p.x);
            right = std::max(right, p.x);
            top = std::min(top, p.y);
            bottom = std::max(bottom, p.y);
        }
        EXPECT_NEAR(right - left, 14, 1e-9);
        EXPECT_NEAR(top, -22, 1e-9);
        EXPECT_NEAR(bottom, 0, 1e-9);
    }
}

TEST(LeafRows, MirrorsLeftAndRight) {
    const LeafRows rows = leafRows(leaf(18, 10, 61));
    for (const BeadMark& bead : rows.beads) {
        const bool there = std::any_of(rows.beads.begin(), rows.beads.end(), [&](const BeadMark& other) {
            return std::abs(other.middle.x + bead.middle.x) < 1e-6 &&
                   std::abs(other.middle.y - bead.middle.y) < 1e-6;
        });
        EXPECT_TRUE(there) << bead.middle.x << ", " << bead.middle.y;
    }
}

TEST(LeafRows, OuterColourIsOutside) {
    LeafShape shape = leaf(18, 10, 60, {1, 1});
    shape.rows = {30, 20, 10};
    const LeafRows rows = leafRows(shape);
    const LeafRow& outer = rows.rows.front();
    for (std::size_t i = 0; i < outer.count; ++i)
        EXPECT_EQ(rows.beads[outer.first + i].band, 0);
    for (std::size_t r = 1; r < rows.rows.size(); ++r)
        for (std::size_t i = 0; i < rows.rows[r].count; ++i)
            EXPECT_EQ(rows.beads[rows.rows[r].first + i].band, 1);
}

TEST(LeafRows, SharesAreHonestForAnyMix) {
    std::mt19937 random(11);
    for (int i = 0; i < 2000; ++i) {
        std::vector<double> shares(1 + random() % 5);
        for (double& share : shares)
            share = 1 + static_cast<double>(random() % 9);
        const int beads = 30 + static_cast<int>(random() % 170);
        const LeafRows rows = leafRows(leaf(14, 9, beads, shares));
        const std::vector<double> drawn = drawnShares(rows, shares.size());
        const std::vector<int> wanted = apportioned(beads, shares);
        for (std::size_t b = 0; b < shares.size(); ++b)
            ASSERT_NEAR(drawn[b] * beads, wanted[b], 1e-6) << "the picture has the beads that are counted";
        // And row by row as they are counted from the outer one inward.
        Mix mix;
        for (const double share : shares)
            mix.colours.push_back({ColourId{1}, share, ""});
        std::vector<int> counts;
        for (const LeafRow& row : rows.rows)
            counts.push_back(static_cast<int>(row.count));
        const std::vector<std::vector<int>> byRow = rowBeads(counts, mix);
        for (std::size_t r = 0; r < rows.rows.size(); ++r)
            for (std::size_t b = 0; b < shares.size(); ++b) {
                const auto* first = rows.beads.data() + rows.rows[r].first;
                ASSERT_EQ(std::count_if(first, first + rows.rows[r].count,
                                        [&](const BeadMark& bead) { return bead.band == static_cast<int>(b); }),
                          byRow[r][b]);
            }
    }
}

TEST(LeafRows, MoreColoursThanBeadsIsHarmless) {
    const LeafRows rows = leafRows(leaf(14, 9, 2, {1, 1, 1, 1}));
    ASSERT_EQ(rows.beads.size(), 2u);
    EXPECT_LT(rows.beads[0].band, 4);
}

TEST(LeafRows, KnownRowsAreKeptRowByRow) {
    LeafShape shape = leaf(18, 10, 1, {1, 1});
    shape.rows = {25, 17, 6};
    const LeafRows rows = leafRows(shape);
    ASSERT_EQ(rows.rows.size(), 3u);
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_EQ(rows.rows[i].count, static_cast<std::size_t>(shape.rows[i]));
    EXPECT_FALSE(rows.rows.back().closed);
    EXPECT_EQ(rows.beads.size(), 48u) << "the sum of the rows, not the number beside it";
    for (const BeadMark& bead : rows.beads) {
        EXPECT_LE(std::abs(bead.middle.x), 5);
        EXPECT_LE(bead.middle.y, 0);
        EXPECT_GE(bead.middle.y, -18);
    }
}

TEST(LeafRows, LoopsHaveNoCentreRow) {
    LeafShape shape = leaf(18, 10, 1);
    shape.rows = {30, 20, 10};
    shape.loops = true;
    const LeafRows rows = leafRows(shape);
    ASSERT_EQ(rows.rows.size(), 3u);
    EXPECT_TRUE(std::all_of(rows.rows.begin(), rows.rows.end(), [](const LeafRow& r) { return r.closed; }));
    EXPECT_EQ(rows.beads.size(), 60u);
    // Six rows of beads lie across: three loops, left and right of nothing.
    EXPECT_DOUBLE_EQ(rows.pitch, 10.0 / 6);
    shape.rows = {0, 0};
    EXPECT_EQ(leafRows(shape).beads.size(), 1u) << "rows without a bead are not known rows";
}

TEST(LeafRows, AKindShowsItsPatternWithTheBeadsItHas) {
    KindForm form;
    form.make = LeafMake{Making::rows, 5, 5, degrees(30), ""};
    const MadeLeaf made = madeLeaf(*form.make, form.tipEnd, form.baseEnd, *beadSizeNamed("11/0"));
    form.beads = made.beads;
    // Two rows around the basic lie on one ring, one on either side.
    EXPECT_EQ(shapeOf(form).rows,
              (std::vector<int>{made.rows[3] + made.rows[4], made.rows[1] + made.rows[2], 5}));
    form.make->making = Making::loops;
    form.beads = madeLeaf(*form.make, form.tipEnd, form.baseEnd, *beadSizeNamed("11/0")).beads;
    EXPECT_EQ(shapeOf(form).rows.size(), 5u);
    EXPECT_TRUE(shapeOf(form).loops);
    form.make->rows = 0;
    EXPECT_TRUE(shapeOf(form).rows.empty());
}

TEST(PatternRows, AddUpToTheKindsBeadsAndKeepWhatWasCounted) {
    KindForm form;
    form.make = LeafMake{Making::rows, 5, 5, degrees(30), ""};
    for (const int beads : {5, 20, 47, 48, 61, 300}) {
        form.beads = beads;
        const std::vector<int> rows = patternRows(form);
        ASSERT_EQ(rows.size(), 5u);
        EXPECT_EQ(std::accumulate(rows.begin(), rows.end(), 0), beads);
    }
    form.make->counted = {{0, 7, ""}, {4, 16, ""}};
    form.beads = 60;
    const std::vector<int> rows = patternRows(form);
    EXPECT_EQ(rows[0], 7);
    EXPECT_EQ(rows[4], 16);
    EXPECT_EQ(std::accumulate(rows.begin(), rows.end(), 0), 60);
    form.beads = 10; // fewer than she counted in two rows: all rows give
    const std::vector<int> few = patternRows(form);
    EXPECT_EQ(std::accumulate(few.begin(), few.end(), 0), 10);
    form.make->rows = 4;
    EXPECT_TRUE(patternRows(form).empty()) << "it would end at the tip";
    form.make.reset();
    EXPECT_TRUE(patternRows(form).empty());
}

} // namespace
} // namespace stemwright

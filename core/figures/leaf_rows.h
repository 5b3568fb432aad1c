#pragma once

#include "core/plan/kind.h"

#include <cstddef>
#include <vector>

namespace stemwright {

// Where the beads of a leaf lie: rows around a centre row, as a leaf on a basic is made. The geometry is our
// own, no source; what a maker measured (length, width, number of beads) is kept, the rest follows from it.

/// A place on a leaf or a page, millimetres, y down. A leaf's base is the origin and its tip at (0, −length).
struct PointMm {
    double x = 0;
    double y = 0;

    friend bool operator==(const PointMm&, const PointMm&) = default;
};

/// What is known of a leaf before its rows are laid out. Measures below a tenth of a millimetre and fewer than
/// one bead are taken as those.
struct LeafShape {
    double length = 18; ///< mm
    double width = 10;  ///< mm
    LeafEnd tipEnd = LeafEnd::round;
    LeafEnd baseEnd = LeafEnd::round;
    int beads = 60;
    /// The colours' shares of the beads, outer row inward, as proportions; none for a leaf without colours.
    std::vector<double> shares;
    /// The beads of each row from the outer one inward, where they are known: `beads` is not looked at then.
    /// The last one is the centre row, unless all are loops.
    std::vector<int> rows{};
    bool loops = false;
    /// How much further a row goes around a point than around a round end.
    double pointReach = usualPointReach;

    static constexpr double usualPointReach = 1.3;

    friend bool operator==(const LeafShape&, const LeafShape&) = default;
};

/// The shape of a kind's leaves. Its rows are those of its pattern (patternRows of core/figures/leaf_make.h),
/// where it has one.
LeafShape shapeOf(const KindForm& form);

/// One bead, seen from the side of the leaf.
struct BeadMark {
    PointMm middle;
    double degrees = 0; ///< of the row's run through it, clockwise from straight up, in [0, 180)
    double along = 0;   ///< mm, its length along the row
    double across = 0;  ///< mm, its breadth
    int band = 0;       ///< the index of its colour in the shares; 0 where there are none
};

struct LeafRow {
    std::size_t first = 0; ///< its first bead in LeafRows::beads
    std::size_t count = 0;
    std::vector<PointMm> run; ///< the wire's path; closed but for the centre row
    bool closed = true;
};

struct LeafRows {
    std::vector<BeadMark> beads; ///< row by row
    std::vector<LeafRow> rows;   ///< from the outer row inward; the last is the centre row
    double pitch = 0;            ///< mm between neighbouring rows in the middle of the leaf
};

/// More beads than this are not laid out, since no picture shows them; fewer, longer ones take their place.
inline constexpr int mostBeadsShown = 1500;

/// Lays out as many beads as the leaf has (up to mostBeadsShown), all inside its length and width. Where its
/// rows are not known, their number is the one that brings breadth over length of a bead nearest to 1.5:
/// published counts of loops around loops give row pitch over bead length of about 1.6 and touching seed
/// beads 1.45 to 1.5 (recomputed). Every colour has as many beads as leafBeads says
/// (core/figures/leaf_beads.h), from the outer row inward; in a row of several colours the outer one has the
/// beads nearest to the tip.
LeafRows leafRows(const LeafShape& shape);

/// Colours the beads of rows that are laid out already, as leafRows() does, whatever colours they had.
void colourRows(LeafRows& rows, const std::vector<double>& shares);

/// The closed outline, from the base up the left side to the tip and down the right.
std::vector<PointMm> leafOutline(const LeafShape& shape);

} // namespace stemwright

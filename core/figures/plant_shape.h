#pragma once

#include "core/figures/leaf_rows.h"
#include "core/figures/standings.h"
#include "core/plan/plan.h"
#include "core/quantity/point3.h"

#include <span>
#include <vector>

namespace stemwright {

// The plant in space: every stem from the clay up and every leaf in its plane. The origin is the middle of the
// pot's opening at the level of the clay. A leaf is flat and as long and wide as its kind; the geometry of the
// stems is that of core/figures/height.h, their thickness that of core/figures/bundle.h and the wraps around
// it.

/// A length of a stem that is straight and equally thick.
struct StemPiece {
    Point3 from; ///< the lower end
    Point3 to;
    double radius = 0; ///< mm, with the wraps
};

struct StemBody {
    StemId stem;
    Point3 foot; ///< where it leaves the clay
    Point3 tip;  ///< the joint of its topmost tier; of a stem without tiers the top of its tail
    /// From the clay up. None for a stem that is all under the clay.
    std::vector<StemPiece> pieces;
    /// The radius of the upright cylinder about its foot that holds all its leaves, and so what it needs around
    /// it.
    double clearance = 0;
    /// The highest point of the stem and its leaves above the clay.
    double top = 0;
};

struct LeafBody {
    SlotRef at;
    std::size_t stem = 0; ///< its place in the plan's list
    std::size_t kind = 0; ///< likewise
    Leaf leaf;
    Point3 base;  ///< on the stem's skin
    Point3 along; ///< from base to tip, length 1
    Point3 right; ///< across it, length 1: to the right for who looks at its face with the tip up
    Point3 face;  ///< the side that is turned up and to the stem, length 1
    double length = 0;
    double width = 0;

    /// A place on the leaf as leaf_rows.h counts: x across, y from 0 at the base to −length at the tip.
    Point3 at3(double x, double y) const { return base + right * x + along * -y; }
};

struct PlantBody {
    std::vector<StemBody> stems;  ///< in the plan's order
    std::vector<LeafBody> leaves; ///< by stem, tier and slot; empty slots have none
    /// By kind: the outline of its leaf with few corners, convex, for order, sight and touch.
    std::vector<std::vector<PointMm>> outlines;

    /// The corners of a leaf in space, in the outline's order.
    std::vector<Point3> corners(const LeafBody& leaf) const;
};

/// The horizontal direction that an angle of turn names: 0 is −x (left), 90 −y (front), 180 +x, 270 +y.
Point3 towards(Angle turn);

/// The whole plant, for a valid plan. Where `at` is given its places stand in for standings(plan): what is
/// being dragged. A stem whose tail is shorter than the planting depth begins below the clay, its lower leaves
/// too.
PlantBody plantBody(const Plan& plan);
PlantBody plantBody(const Plan& plan, std::span<const PlaceMm> at);

/// Where a posed stem's axis is, and its frame, at a height measured along the stem from the clay line.
struct StemFrame {
    Point3 at;
    Point3 along; ///< length 1, up the stem
    /// Turns a direction of the straight stem into one of the posed stem.
    Point3 turned(const Point3& v) const;

    Point3 bow{1, 0, 0}; ///< horizontal, towards where it leans
    double sine = 0;
    double cosine = 1;
};
/// `whole` is the height of the topmost joint along the stem, over which the bend is spread. Below the clay the
/// stem is straight up.
StemFrame stemFrame(const std::optional<Pose>& pose, const Point3& foot, double whole, double height);

} // namespace stemwright

#pragma once

#include "core/figures/view.h"
#include "core/plan/plan.h"

#include <vector>

namespace stemwright {

/// What is in sight of a plant from one side.
struct Sight {
    /// By plan.colours: the colour's part of all leaf that is in sight; they add up to 1, or are all 0 where no
    /// leaf is.
    std::vector<double> shares;
    /// By plan.colours: its part of the beads of all leaves on stems.
    std::vector<double> ofAll;
    /// The part of the leaves' area, as it would be seen if nothing were in its way, that is in sight; 0
    /// without leaves.
    double uncovered = 0;
    /// By plan.stems: the longest run of the stem between its tip and its lowest tier that shows without a leaf
    /// before it, mm along the stem.
    std::vector<double> bare;
    double step = 0; ///< mm between samples
};

/// Which colour a leaf shows where, sampled from its beads: the colour of the nearest one.
class LeafColours {
public:
    LeafColours(const Plan& plan, Leaf leaf);
    /// The place in plan.colours at a place on the leaf (leaf_rows.h); −1 for a leaf without colours.
    int at(double x, double y) const;

private:
    static constexpr int columns = 24, rows = 36;
    double length_ = 1, width_ = 1;
    std::vector<int> colour_;
};

/// Found by a depth raster: the leaves and stems are sampled at points `step` mm apart across the line of sight
/// and the nearest at each point counts, leaves by LeafColours. The pot hides nothing. The error of a share is
/// about the part of the samples that lie on an outline: with 1 mm and leaves of 10 mm a few per cent of that
/// leaf. 0 chooses the step: 0.5 mm, more for plants beyond 400 mm, so that the raster has 800 points a side at
/// most.
Sight sightOf(const Plan& plan, const PlantBody& plant, const View& view, double step = 0);

} // namespace stemwright

#pragma once

#include "core/figures/view.h"

#include <vector>

namespace stemwright {

/// A flat convex piece of what is seen: a leaf, a part of one, or a length of stem turned to the eye. Its
/// corners go around it, either way.
struct Pane {
    std::vector<SeenPoint> corners;
    std::size_t tag = 0;  ///< the caller's; pieces keep that of the whole
    bool divided = false; ///< a piece of what was cut
};

/// The plane of a pane as nearness over the picture: near = x·alongX + y·alongY + near0.
struct PanePlane {
    double alongX = 0;
    double alongY = 0;
    double near0 = 0;
    double at(double x, double y) const { return x * alongX + y * alongY + near0; }
};
/// A pane seen edge-on, or of no size, gets the level plane of its mean.
PanePlane planeOf(const Pane& pane);

/// What two convex panes share on the picture, its corners with the nearness of the first; empty where that is
/// less than a ten-thousandth of a square millimetre.
std::vector<SeenPoint> sharedPart(const Pane& one, const Pane& other);

/// The area on the picture, mm², never negative.
double seenArea(const std::vector<SeenPoint>& corners);

/// Panes in the order to paint them: whatever lies behind comes first wherever two share a part of the picture.
/// Panes that cut through each other are divided along the cut, one of the two, and so is one of those that
/// overlap in a ring; so the order is right everywhere (after Newell, Newell & Sancha 1972, from memory). Panes
/// that lie in one plane to within a thousandth of a millimetre come in the order given. Past 20,000 pieces
/// nothing more is divided, and what still cuts through each other is ordered by its mean.
std::vector<Pane> backToFront(std::vector<Pane> panes);

/// The quick order for a picture in motion: by mean nearness. Right for leaves that do not reach around each
/// other.
void sortByMean(std::vector<Pane>& panes);

/// The plant's leaves and pieces of stem as panes. Tags up to the leaves' count are leaves, then come the
/// pieces of the stems in their order.
std::vector<Pane> panesOf(const PlantBody& plant, const View& view);

} // namespace stemwright

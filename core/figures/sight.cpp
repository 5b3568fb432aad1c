#include "core/figures/sight.h"

#include "core/figures/leaf_beads.h"
#include "core/figures/panes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace stemwright {

namespace {

constexpr double finest = 0.5;     ///< mm
constexpr double mostPoints = 800; ///< a side

/// The nearest thing at each point of a grid over the picture.
class Raster {
public:
    Raster(const std::vector<Pane>& panes, double wanted) {
        double left = 1e300, top = 1e300, right = -1e300, bottom = -1e300;
        for (const Pane& pane : panes)
            for (const SeenPoint& p : pane.corners) {
                left = std::min(left, p.x);
                right = std::max(right, p.x);
                top = std::min(top, p.y);
                bottom = std::max(bottom, p.y);
            }
        if (panes.empty())
            left = top = right = bottom = 0;
        const double whole = std::max(right - left, bottom - top);
        step = wanted > 0 ? std::max(wanted, whole / 4000) : std::max(finest, whole / mostPoints);
        left_ = left;
        top_ = top;
        width_ = static_cast<int>((right - left) / step) + 1;
        height_ = static_cast<int>((bottom - top) / step) + 1;
        const auto points = static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_);
        near.assign(points, -std::numeric_limits<double>::max());
        tag.assign(points, -1);
    }

    /// Calls use(point, x, y) at the grid's points inside a convex outline. Points lie in the middle of their
    /// cells.
    template <class Use> void over(const std::vector<SeenPoint>& corners, const Use& use) const {
        double top = 1e300, bottom = -1e300;
        for (const SeenPoint& p : corners) {
            top = std::min(top, p.y);
            bottom = std::max(bottom, p.y);
        }
        const int last = std::min(height_ - 1, static_cast<int>(std::floor((bottom - top_) / step - 0.5)));
        for (int row = std::max(0, static_cast<int>(std::ceil((top - top_) / step - 0.5))); row <= last;
             ++row) {
            const double y = top_ + (row + 0.5) * step;
            double from = 1e300, to = -1e300;
            for (std::size_t i = 0; i < corners.size(); ++i) {
                const SeenPoint &a = corners[i], &b = corners[(i + 1) % corners.size()];
                if ((a.y <= y) == (b.y <= y))
                    continue;
                const double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
                from = std::min(from, x);
                to = std::max(to, x);
            }
            const int right = std::min(width_ - 1, static_cast<int>(std::floor((to - left_) / step - 0.5)));
            for (int column = std::max(0, static_cast<int>(std::ceil((from - left_) / step - 0.5)));
                 column <= right; ++column)
                use(static_cast<std::size_t>(row) * static_cast<std::size_t>(width_) +
                        static_cast<std::size_t>(column),
                    left_ + (column + 0.5) * step, y);
        }
    }

    int tagAt(double x, double y) const {
        const int column = static_cast<int>((x - left_) / step), row = static_cast<int>((y - top_) / step);
        if (column < 0 || row < 0 || column >= width_ || row >= height_)
            return -1;
        return tag[static_cast<std::size_t>(row) * static_cast<std::size_t>(width_) +
                   static_cast<std::size_t>(column)];
    }
    double nearAt(double x, double y) const {
        const int column = static_cast<int>((x - left_) / step), row = static_cast<int>((y - top_) / step);
        if (column < 0 || row < 0 || column >= width_ || row >= height_)
            return -std::numeric_limits<double>::max();
        return near[static_cast<std::size_t>(row) * static_cast<std::size_t>(width_) +
                    static_cast<std::size_t>(column)];
    }

    double step = 1;
    std::vector<double> near;
    std::vector<int> tag;

private:
    double left_ = 0, top_ = 0;
    int width_ = 1, height_ = 1;
};

/// The longest run of a stem that shows, walked from the tip to the lowest tier in steps of half a sample.
double barestRun(const StemBody& stem, double lowest, const View& view, const Raster& raster, int leaves) {
    double run = 0, longest = 0;
    for (std::size_t i = stem.pieces.size(); i-- > 0;) {
        const StemPiece& piece = stem.pieces[i];
        const double whole = length(piece.to - piece.from);
        const int steps = std::max(1, static_cast<int>(whole / (raster.step / 2)));
        for (int k = 0; k < steps; ++k) {
            const Point3 at = piece.to + (piece.from - piece.to) * ((k + 0.5) / steps);
            if (at.z < lowest)
                return longest;
            const SeenPoint seen = view.point(at);
            const int tag = raster.tagAt(seen.x, seen.y);
            const bool hidden =
                tag >= 0 && tag < leaves && raster.nearAt(seen.x, seen.y) > seen.near + piece.radius;
            run = hidden ? 0 : run + whole / steps;
            longest = std::max(longest, run);
        }
    }
    return longest;
}

} // namespace

LeafColours::LeafColours(const Plan& plan, Leaf leaf) {
    const Kind* kind = find(plan, leaf.kind);
    const Mix* mix = find(plan, leaf.mix);
    if (!kind || !mix || mix->colours.empty())
        return;
    LeafShape shape = shapeOf(*kind);
    std::vector<int> places;
    for (const BeadShare& share : mix->colours) {
        shape.shares.push_back(share.share);
        const auto found = std::find_if(plan.colours.begin(), plan.colours.end(),
                                        [&](const Colour& colour) { return colour.id == share.colour; });
        places.push_back(found == plan.colours.end() ? -1 : static_cast<int>(found - plan.colours.begin()));
    }
    length_ = std::max(shape.length, 0.1);
    width_ = std::max(shape.width, 0.1);
    if (places.size() == 1) {
        colour_.assign(columns * rows, places[0]);
        return;
    }
    const LeafRows beads = leafRows(shape);
    colour_.reserve(columns * rows);
    for (int r = 0; r < rows; ++r)
        for (int c = 0; c < columns; ++c) {
            const double x = ((c + 0.5) / columns - 0.5) * width_, y = -(r + 0.5) / rows * length_;
            int band = 0;
            double least = 1e300;
            for (const BeadMark& bead : beads.beads) {
                const double dx = bead.middle.x - x, dy = bead.middle.y - y;
                if (const double off = dx * dx + dy * dy; off < least)
                    least = off, band = bead.band;
            }
            colour_.push_back(places[static_cast<std::size_t>(band)]);
        }
}

int LeafColours::at(double x, double y) const {
    if (colour_.empty())
        return -1;
    const int c = std::clamp(static_cast<int>((x / width_ + 0.5) * columns), 0, columns - 1);
    const int r = std::clamp(static_cast<int>(-y / length_ * rows), 0, rows - 1);
    return colour_[static_cast<std::size_t>(r * columns + c)];
}

Sight sightOf(const Plan& plan, const PlantBody& plant, const View& view, double step) {
    Sight out;
    out.shares.assign(plan.colours.size(), 0);
    out.ofAll.assign(plan.colours.size(), 0);
    out.bare.assign(plan.stems.size(), 0);
    const std::vector<Pane> panes = panesOf(plant, view);
    Raster raster(panes, step);
    out.step = raster.step;
    std::size_t alone = 0;
    for (const Pane& pane : panes) {
        const PanePlane plane = planeOf(pane);
        const bool leaf = pane.tag < plant.leaves.size();
        raster.over(pane.corners, [&](std::size_t point, double x, double y) {
            alone += leaf;
            if (const double near = plane.at(x, y); near > raster.near[point]) {
                raster.near[point] = near;
                raster.tag[point] = static_cast<int>(pane.tag);
            }
        });
    }

    std::map<std::pair<std::uint32_t, std::uint32_t>, LeafColours> colours;
    std::size_t seen = 0;
    for (std::size_t i = 0; i < plant.leaves.size(); ++i) {
        const LeafBody& leaf = plant.leaves[i];
        const auto key = std::pair{leaf.leaf.kind.value, leaf.leaf.mix.value};
        auto found = colours.find(key);
        if (found == colours.end())
            found = colours.emplace(key, LeafColours(plan, leaf.leaf)).first;
        // From the picture back onto the leaf: the two directions across the line of sight.
        const SeenPoint base = view.point(leaf.base);
        const Point3 right = view.direction(leaf.right), along = view.direction(leaf.along);
        const double det = right.x * along.y - right.y * along.x;
        raster.over(panes[i].corners, [&](std::size_t point, double x, double y) {
            if (raster.tag[point] != static_cast<int>(i))
                return;
            ++seen;
            const double dx = x - base.x, dy = y - base.y;
            const double u = std::abs(det) > 1e-12 ? (dx * along.y - dy * along.x) / det : 0;
            const double v = std::abs(det) > 1e-12 ? (right.x * dy - right.y * dx) / det : 0;
            if (const int colour = found->second.at(u, -v); colour >= 0)
                ++out.shares[static_cast<std::size_t>(colour)];
        });
    }
    const double shown = std::accumulate(out.shares.begin(), out.shares.end(), 0.0);
    if (shown > 0)
        for (double& share : out.shares)
            share /= shown;
    out.uncovered = alone > 0 ? static_cast<double>(seen) / static_cast<double>(alone) : 0;

    double all = 0;
    for (const LeafBody& leaf : plant.leaves) {
        const Mix* mix = find(plan, leaf.leaf.mix);
        if (!mix)
            continue;
        const std::vector<int> beads = leafBeads(plan.kinds[leaf.kind].beads, *mix);
        for (std::size_t i = 0; i < beads.size(); ++i)
            for (std::size_t c = 0; c < plan.colours.size(); ++c)
                if (plan.colours[c].id == mix->colours[i].colour)
                    out.ofAll[c] += beads[i], all += beads[i];
    }
    if (all > 0)
        for (double& share : out.ofAll)
            share /= all;

    std::vector<double> lowest(plan.stems.size(), 1e300);
    for (const LeafBody& leaf : plant.leaves)
        lowest[leaf.stem] = std::min(lowest[leaf.stem], leaf.base.z);
    for (std::size_t i = 0; i < plant.stems.size(); ++i)
        if (lowest[i] < 1e300)
            out.bare[i] =
                barestRun(plant.stems[i], lowest[i], view, raster, static_cast<int>(plant.leaves.size()));
    return out;
}

} // namespace stemwright

#include "core/figures/panes.h"

#include "core/figures/pane_parts.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

double seenArea(const std::vector<SeenPoint>& corners) {
    return std::abs(doubleArea(corners)) / 2;
}

PanePlane planeOf(const Pane& pane) {
    // Newell's normal (from memory): sound for corners that are not quite in one plane.
    double nx = 0, ny = 0, nz = 0, x = 0, y = 0;
    const auto& p = pane.corners;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const SeenPoint &a = p[i], &b = p[(i + 1) % p.size()];
        nx += (a.y - b.y) * (a.near + b.near);
        ny += (a.near - b.near) * (a.x + b.x);
        nz += (a.x - b.x) * (a.y + b.y);
        x += a.x;
        y += a.y;
    }
    const double n = std::max<double>(1, static_cast<double>(p.size()));
    const double mean = meanNear(p);
    if (std::abs(nz) < 1e-9 + 1e-4 * std::hypot(nx, ny))
        return {0, 0, mean};
    PanePlane plane{-nx / nz, -ny / nz, 0};
    plane.near0 = mean - plane.alongX * x / n - plane.alongY * y / n;
    return plane;
}

std::vector<SeenPoint> sharedPart(const Pane& one, const Pane& other) {
    std::vector<SeenPoint> part = one.corners, next;
    const auto& clip = other.corners;
    const double way = doubleArea(clip) >= 0 ? 1 : -1;
    for (std::size_t i = 0; i < clip.size() && !part.empty(); ++i) {
        const SeenPoint &a = clip[i], &b = clip[(i + 1) % clip.size()];
        keep(part, next,
             [&](const SeenPoint& p) { return way * ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)); });
        part.swap(next);
    }
    if (seenArea(part) < leastArea)
        part.clear();
    return part;
}

void sortByMean(std::vector<Pane>& panes) {
    std::vector<std::pair<double, std::size_t>> keys;
    keys.reserve(panes.size());
    for (std::size_t i = 0; i < panes.size(); ++i)
        keys.emplace_back(meanNear(panes[i].corners), i);
    std::sort(keys.begin(), keys.end());
    std::vector<Pane> out;
    out.reserve(panes.size());
    for (const auto& [near, i] : keys)
        out.push_back(std::move(panes[i]));
    panes = std::move(out);
}

std::vector<Pane> panesOf(const PlantBody& plant, const View& view) {
    std::vector<Pane> panes;
    std::size_t pieces = 0;
    for (const StemBody& stem : plant.stems)
        pieces += stem.pieces.size();
    panes.reserve(plant.leaves.size() + pieces);
    for (const LeafBody& leaf : plant.leaves) {
        Pane pane{{}, panes.size(), false};
        const auto& outline = plant.outlines[leaf.kind];
        pane.corners.reserve(outline.size());
        const SeenPoint base = view.point(leaf.base);
        const Point3 right = view.direction(leaf.right), along = view.direction(leaf.along);
        for (const PointMm& p : outline)
            pane.corners.push_back({base.x + right.x * p.x - along.x * p.y,
                                    base.y + right.y * p.x - along.y * p.y,
                                    base.near + right.z * p.x - along.z * p.y});
        panes.push_back(std::move(pane));
    }
    for (const StemBody& stem : plant.stems)
        for (const StemPiece& piece : stem.pieces) {
            const SeenPoint a = view.point(piece.from), b = view.point(piece.to);
            // Across the line of sight and the stem; a stem seen from straight above has no length.
            double x = -(b.y - a.y), y = b.x - a.x;
            const double long_ = std::hypot(x, y);
            if (long_ > 1e-9)
                x *= piece.radius / long_, y *= piece.radius / long_;
            else
                x = piece.radius, y = 0;
            panes.push_back({{{a.x - x, a.y - y, a.near},
                              {b.x - x, b.y - y, b.near},
                              {b.x + x, b.y + y, b.near},
                              {a.x + x, a.y + y, a.near}},
                             panes.size(),
                             false});
        }
    return panes;
}

} // namespace stemwright

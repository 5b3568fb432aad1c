#include "core/figures/touching.h"

#include "core/figures/panes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>

namespace stemwright {

namespace {

struct Span {
    double from = 1e300;
    double to = -1e300;
};

/// Where an outline meets a plane, as a stretch along a line in that plane.
Span meeting(const std::vector<Point3>& corners, const Point3& normal, double offset, const Point3& line) {
    Span span;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Point3 &a = corners[i], &b = corners[(i + 1) % corners.size()];
        const double da = dot(normal, a) - offset, db = dot(normal, b) - offset;
        if ((da > 0) == (db > 0))
            continue;
        const Point3 at = a + (b - a) * (da / (da - db));
        const double along = dot(line, at);
        span.from = std::min(span.from, along);
        span.to = std::max(span.to, along);
    }
    return span;
}

double sharedInPlane(const std::vector<Point3>& one, const std::vector<Point3>& other, const LeafBody& frame) {
    const auto flat = [&](const std::vector<Point3>& corners) {
        Pane pane;
        for (const Point3& p : corners)
            pane.corners.push_back({dot(p, frame.right), dot(p, frame.along), 0});
        return pane;
    };
    return std::sqrt(seenArea(sharedPart(flat(one), flat(other))));
}

double cut(const std::vector<Point3>& a, const LeafBody& one, const std::vector<Point3>& b,
           const LeafBody& other) {
    const Point3 line = cross(one.face, other.face);
    const double sine = length(line);
    if (sine < 1e-3) {
        const double apart = std::abs(dot(one.face, other.base - one.base));
        return apart < onePlaneMm ? sharedInPlane(a, b, one) : 0;
    }
    const Point3 along = line * (1 / sine);
    const Span first = meeting(a, other.face, dot(other.face, other.base), along);
    const Span second = meeting(b, one.face, dot(one.face, one.base), along);
    return std::max(0.0, std::min(first.to, second.to) - std::max(first.from, second.from));
}

struct Box {
    std::array<double, 3> least{1e300, 1e300, 1e300};
    std::array<double, 3> most{-1e300, -1e300, -1e300};
};

} // namespace

double cutLength(const PlantBody& plant, const LeafBody& one, const LeafBody& other) {
    return cut(plant.corners(one), one, plant.corners(other), other);
}

std::vector<LeafTouch> touchingLeaves(const PlantBody& plant) {
    const std::size_t count = plant.leaves.size();
    std::vector<std::vector<Point3>> corners;
    std::vector<Box> boxes(count);
    for (std::size_t i = 0; i < count; ++i) {
        corners.push_back(plant.corners(plant.leaves[i]));
        for (const Point3& p : corners.back()) {
            const std::array<double, 3> v{p.x, p.y, p.z};
            for (std::size_t k = 0; k < 3; ++k) {
                boxes[i].least[k] = std::min(boxes[i].least[k], v[k]);
                boxes[i].most[k] = std::max(boxes[i].most[k], v[k]);
            }
        }
        // Leaves in neighbouring planes count as one plane.
        for (std::size_t k = 0; k < 3; ++k)
            boxes[i].most[k] += onePlaneMm;
    }
    // Swept along x: only leaves whose stretches of x meet are compared.
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return boxes[a].least[0] != boxes[b].least[0] ? boxes[a].least[0] < boxes[b].least[0] : a < b;
    });
    std::vector<LeafTouch> out;
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t a = order[i];
        for (std::size_t j = i + 1; j < count && boxes[order[j]].least[0] <= boxes[a].most[0]; ++j) {
            const std::size_t b = order[j];
            if (boxes[a].least[1] > boxes[b].most[1] || boxes[b].least[1] > boxes[a].most[1] ||
                boxes[a].least[2] > boxes[b].most[2] || boxes[b].least[2] > boxes[a].most[2])
                continue;
            const LeafBody &one = plant.leaves[a], &other = plant.leaves[b];
            if (one.stem == other.stem && one.at.tier == other.at.tier)
                continue;
            if (const double long_ = cut(corners[a], one, corners[b], other); long_ >= leastTouch)
                out.push_back({std::min(a, b), std::max(a, b), long_});
        }
    }
    std::sort(out.begin(), out.end(), [](const LeafTouch& a, const LeafTouch& b) {
        return a.one != b.one ? a.one < b.one : a.other < b.other;
    });
    return out;
}

} // namespace stemwright

#include "app/pot/shadow_map.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {
constexpr double mostSamples = 640;
constexpr float nothing = -1e30F;
} // namespace

ShadowMap::ShadowMap(const PlantBody& plant, const Point3& from, double finest) : from_(unit(from)) {
    const Point3 any = std::abs(from_.z) < 0.9 ? Point3{0, 0, 1} : Point3{0, 1, 0};
    across_ = unit(cross(any, from_));
    up_ = cross(from_, across_);
    std::vector<std::vector<Point3>> outlines; // x, y across the light, z along it
    double right = -1e300, bottom = -1e300;
    left_ = top_ = 1e300;
    for (const LeafBody& leaf : plant.leaves) {
        std::vector<Point3> outline = plant.corners(leaf);
        for (Point3& p : outline) {
            p = {dot(p, across_), dot(p, up_), dot(p, from_)};
            left_ = std::min(left_, p.x);
            right = std::max(right, p.x);
            top_ = std::min(top_, p.y);
            bottom = std::max(bottom, p.y);
        }
        outlines.push_back(std::move(outline));
    }
    if (outlines.empty())
        left_ = right = top_ = bottom = 0;
    step_ = std::max(finest, std::max(right - left_, bottom - top_) / mostSamples);
    width_ = static_cast<int>((right - left_) / step_) + 1;
    height_ = static_cast<int>((bottom - top_) / step_) + 1;
    near_.assign(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_), nothing);
    for (const auto& outline : outlines) {
        Pane pane;
        for (const Point3& p : outline)
            pane.corners.push_back({p.x, p.y, p.z});
        const PanePlane plane = planeOf(pane);
        double low = 1e300, high = -1e300;
        for (const Point3& p : outline)
            low = std::min(low, p.y), high = std::max(high, p.y);
        const int last = std::min(height_ - 1, static_cast<int>((high - top_) / step_));
        for (int row = std::max(0, static_cast<int>((low - top_) / step_)); row <= last; ++row) {
            const double y = top_ + (row + 0.5) * step_;
            double a = 1e300, b = -1e300;
            for (std::size_t i = 0; i < outline.size(); ++i) {
                const Point3 &p = outline[i], &q = outline[(i + 1) % outline.size()];
                if ((p.y <= y) == (q.y <= y))
                    continue;
                const double x = p.x + (q.x - p.x) * (y - p.y) / (q.y - p.y);
                a = std::min(a, x), b = std::max(b, x);
            }
            const int end = std::min(width_ - 1, static_cast<int>(std::floor((b - left_) / step_ - 0.5)));
            for (int column = std::max(0, static_cast<int>(std::ceil((a - left_) / step_ - 0.5)));
                 column <= end; ++column) {
                float& near = near_[static_cast<std::size_t>(row) * static_cast<std::size_t>(width_) +
                                    static_cast<std::size_t>(column)];
                near = std::max(near, static_cast<float>(plane.at(left_ + (column + 0.5) * step_, y)));
            }
        }
    }
}

double ShadowMap::light(const Point3& at, double soft, double slack) const {
    // Twelve places spread over the disc as seeds on a sunflower.
    static constexpr double spread[12][2] = {{0.20, 0.00},   {-0.26, 0.24}, {0.04, -0.45}, {0.33, 0.43},
                                             {-0.60, -0.11}, {0.56, -0.35}, {-0.19, 0.71}, {-0.35, -0.70},
                                             {0.79, 0.27},   {-0.81, 0.37}, {0.34, -0.86}, {0.36, 0.90}};
    const double x = dot(at, across_), y = dot(at, up_), z = dot(at, from_) + slack;
    int lit = 0;
    for (const auto& offset : spread) {
        const int column = static_cast<int>(std::floor((x + offset[0] * soft - left_) / step_));
        const int row = static_cast<int>(std::floor((y + offset[1] * soft - top_) / step_));
        const bool shaded = column >= 0 && row >= 0 && column < width_ && row < height_ &&
                            near_[static_cast<std::size_t>(row) * static_cast<std::size_t>(width_) +
                                  static_cast<std::size_t>(column)] > static_cast<float>(z);
        lit += !shaded;
    }
    return lit / 12.0;
}

} // namespace stemwright

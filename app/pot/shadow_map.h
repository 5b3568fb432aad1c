#pragma once

#include "core/figures/panes.h"

#include <vector>

namespace stemwright {

/// What of a plant lies in the light that falls from one direction, all rays parallel: the leaves' depths along
/// the light, sampled.
class ShadowMap {
public:
    /// `from` points to the light, length 1, in the plan's space. `finest` is the least step of the samples,
    /// mm.
    ShadowMap(const PlantBody& plant, const Point3& from, double finest = 0.7);

    /// How much light reaches a place, from 0 to 1, taken over a disc of `soft` mm; what is nearer to the light
    /// than `slack` mm counts as the surface itself.
    double light(const Point3& at, double soft, double slack) const;

private:
    Point3 across_, up_, from_;
    double left_ = 0, top_ = 0, step_ = 1;
    int width_ = 1, height_ = 1;
    std::vector<float> near_;
};

} // namespace stemwright

#include "core/quantity/solid.h"

#include <algorithm>
#include <numbers>

namespace stemwright {

Solid frustum(Length floorDiameter, Length topDiameter, Length height) {
    const double a = inMillimetres(floorDiameter) / 2;
    const double b = inMillimetres(topDiameter) / 2;
    const double h = std::max(0.0, inMillimetres(height));
    const double sum = a * a + a * b + b * b;
    if (!(sum > 0) || h == 0)
        return {};
    return {std::numbers::pi * h * sum / 3, millimetres(h * (a * a + 2 * a * b + 3 * b * b) / (4 * sum))};
}

Solid cap(Length radius, Length height) {
    const double r = inMillimetres(radius);
    const double h = std::clamp(inMillimetres(height), 0.0, 2 * std::max(r, 0.0));
    if (h == 0)
        return {};
    return {std::numbers::pi * h * h * (3 * r - h) / 3, millimetres(h * (8 * r - 3 * h) / (4 * (3 * r - h)))};
}

Solid between(const Solid& lower, const Solid& whole) {
    Solid part{whole.volume - lower.volume, {}};
    if (part.volume > 0)
        part.centre = (whole.volume * whole.centre - lower.volume * lower.centre) / part.volume;
    else
        part = {};
    return part;
}

Length bowlRadius(Length opening, Length depth) {
    const double a = inMillimetres(opening) / 2;
    const double h = inMillimetres(depth);
    return h > 0 ? millimetres((a * a + h * h) / (2 * h)) : Length{};
}

} // namespace stemwright

#include "core/figures/pot_shape.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

Length rimAboveClay(const Pot& pot) {
    return std::max(pot.depth - pot.clay.depth, Length{});
}

Length innerRadius(const Pot& pot, Length belowRim) {
    const double rim = inMillimetres(pot.topDiameter) / 2;
    const double depth = inMillimetres(pot.depth);
    const double down = std::clamp(inMillimetres(belowRim), 0.0, depth);
    switch (pot.shape) {
    case PotShape::cylinder:
        return millimetres(rim);
    case PotShape::frustum:
        return millimetres(rim + (inMillimetres(pot.bottomDiameter) / 2 - rim) * down / depth);
    case PotShape::bowl: {
        const double up = depth - down; // above the lowest point
        if (depth <= rim) {
            const double sphere = (rim * rim + depth * depth) / (2 * depth);
            return millimetres(std::sqrt(std::max(0.0, up * (2 * sphere - up))));
        }
        const double part = down / depth;
        return millimetres(rim * std::sqrt(std::max(0.0, 1 - part * part)));
    }
    }
    return millimetres(rim);
}

Length clayRadius(const Pot& pot) {
    return innerRadius(pot, rimAboveClay(pot));
}

} // namespace stemwright

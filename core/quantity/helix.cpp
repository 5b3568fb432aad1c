#include "core/quantity/helix.h"

#include <cmath>
#include <numbers>

namespace stemwright {

Length helixLength(double turns, Length radius, Length pitch) {
    return millimetres(turns * std::hypot(2 * std::numbers::pi * inMillimetres(radius), inMillimetres(pitch)));
}

Winding wound(const Layer& layer, Length along) {
    const Length advance = layer.width * (1 - layer.overlap);
    if (!(along > Length()) || !(advance > Length()))
        return {};
    const double turns = along / advance;
    return {turns, helixLength(turns, (layer.core + layer.thickness) / 2, advance)};
}

} // namespace stemwright

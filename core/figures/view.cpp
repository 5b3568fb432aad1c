#include "core/figures/view.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

/// Exact at quarter turns, so that a leaf seen edge-on is.
void sineAndCosine(Angle angle, double& sine, double& cosine) {
    const double deg = inDegrees(angle);
    if (std::fmod(deg, 90) == 0) {
        const int quarters = static_cast<int>(std::fmod(std::fmod(deg / 90, 4) + 4, 4));
        constexpr double sines[] = {0, 1, 0, -1};
        sine = sines[quarters];
        cosine = sines[(quarters + 1) % 4];
        return;
    }
    sine = std::sin(inRadians(angle));
    cosine = std::cos(inRadians(angle));
}

} // namespace

View::View(Angle turn, Angle tilt)
    : turn_(wrapped(turn, degrees(360))), tilt_(std::clamp(tilt, degrees(0), degrees(90))) {
    sineAndCosine(turn_, turnSin_, turnCos_);
    sineAndCosine(tilt_, tiltSin_, tiltCos_);
}

Point3 View::onLevel(double x, double y, double height) const {
    const double back = tiltSin_ > 1e-9 ? (-y - height * tiltCos_) / tiltSin_ : 0;
    return {x * turnCos_ + back * turnSin_, back * turnCos_ - x * turnSin_, height};
}

} // namespace stemwright

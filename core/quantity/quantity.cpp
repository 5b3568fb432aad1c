#include "core/quantity/quantity.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

Angle wrapped(Angle a, Angle period) {
    const double p = inDegrees(period);
    if (p <= 0)
        return a;
    double r = std::fmod(inDegrees(a), p);
    if (r < 0)
        r += p;
    // A tiny negative remainder rounds up to the period itself, which is the same direction as none.
    return degrees(r >= p ? 0.0 : r);
}

Angle apart(Angle a, Angle b, Angle period) {
    const double p = inDegrees(period);
    const double d = inDegrees(wrapped(a - b, period));
    return degrees(std::min(d, p - d));
}

} // namespace stemwright

#pragma once

#include "core/figures/panes.h"

#include <vector>

namespace stemwright {

// What panes.cpp and depth_order.cpp both need.

inline constexpr double leastArea = 1e-4; ///< mm²: two panes that share less share nothing

/// Twice the area within the corners, by its sign the way they go around.
inline double doubleArea(const std::vector<SeenPoint>& p) {
    double sum = 0;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const SeenPoint &a = p[i], &b = p[(i + 1) % p.size()];
        sum += a.x * b.y - b.x * a.y;
    }
    return sum;
}

inline double meanNear(const std::vector<SeenPoint>& p) {
    double sum = 0;
    for (const SeenPoint& c : p)
        sum += c.near;
    return p.empty() ? 0 : sum / static_cast<double>(p.size());
}

inline SeenPoint between(const SeenPoint& a, const SeenPoint& b, double part) {
    return {a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part, a.near + (b.near - a.near) * part};
}

/// The corners on the side where `side` is not below 0.
template <class Side>
void keep(const std::vector<SeenPoint>& from, std::vector<SeenPoint>& to, const Side& side) {
    to.clear();
    for (std::size_t i = 0; i < from.size(); ++i) {
        const SeenPoint &a = from[i], &b = from[(i + 1) % from.size()];
        const double da = side(a), db = side(b);
        if (da >= 0)
            to.push_back(a);
        if ((da > 0 && db < 0) || (da < 0 && db > 0))
            to.push_back(between(a, b, da / (da - db)));
    }
}

} // namespace stemwright

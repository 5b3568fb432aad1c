#include "core/figures/pot_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>

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

double breadthPart(const Pot& pot) {
    return pot.opening == PotOpening::round ? 1 : pot.topBreadth / pot.topDiameter;
}

double openingArea(const Pot& pot) {
    return breadthPart(pot) * (pot.opening == PotOpening::rectangular ? 4 / std::numbers::pi : 1);
}

std::vector<PointMm> openingOutline(const Pot& pot, int corners) {
    std::vector<PointMm> out;
    const double part = breadthPart(pot);
    const int count = std::max(corners, 4);
    for (int i = 0; i < count; ++i) {
        const double a = 2 * std::numbers::pi * i / count;
        const double x = std::cos(a), y = std::sin(a);
        if (pot.opening == PotOpening::rectangular) {
            // The place where a ray would leave a square, a fair share of them on each side.
            const double side = std::max(std::abs(x), std::abs(y));
            out.push_back({x / side, y / side * part});
        } else {
            out.push_back({x, y * part});
        }
    }
    return out;
}

namespace {

/// How far a point with x, y ≥ 0 is outside an ellipse about the origin; negative inside. The nearest point
/// lies where the ellipse's normal runs through the one given: a root found by halving (textbook).
double beyondEllipse(double a, double b, double x, double y) {
    if (a <= 0 || b <= 0)
        return std::hypot(x, y);
    // ((a x)/(t + a²))² + ((b y)/(t + b²))² = 1, falling in t.
    const auto over = [&](double t) {
        const double u = a * x / (t + a * a), v = b * y / (t + b * b);
        return u * u + v * v - 1;
    };
    const double least = std::min(a, b), reach = std::hypot(a * x, b * y) + a * a + b * b;
    double low = -least * least * (1 - 1e-12), high = reach;
    for (int i = 0; i < 100; ++i) {
        const double middle = (low + high) / 2;
        (over(middle) > 0 ? low : high) = middle;
    }
    const double t = (low + high) / 2;
    double nearX = a * a * x / (t + a * a), nearY = b * b * y / (t + b * b);
    // On the longer axis near the middle the nearest points lie aside of it.
    if (over(-least * least * (1 - 1e-12)) < 0) {
        if (b < a) {
            nearX = std::min(a, a * a * x / (a * a - b * b));
            nearY = b * std::sqrt(std::max(0.0, 1 - nearX * nearX / (a * a)));
        } else {
            nearY = b > a ? std::min(b, b * b * y / (b * b - a * a)) : 0;
            nearX = a * std::sqrt(std::max(0.0, 1 - nearY * nearY / (b * b)));
        }
    }
    const double far = std::hypot(nearX - x, nearY - y);
    return x * x / (a * a) + y * y / (b * b) > 1 ? far : -far;
}

} // namespace

double beyondClay(const Pot& pot, double x, double y) {
    const double a = inMillimetres(clayRadius(pot)), b = a * breadthPart(pot);
    switch (pot.opening) {
    case PotOpening::round:
        return std::hypot(x, y) - a;
    case PotOpening::oval:
        return beyondEllipse(a, b, std::abs(x), std::abs(y));
    case PotOpening::rectangular: {
        const double out = std::abs(x) - a, back = std::abs(y) - b;
        return out > 0 && back > 0 ? std::hypot(out, back) : std::max(out, back);
    }
    }
    return 0;
}

double widestReach(const Pot& pot) {
    const double a = inMillimetres(pot.topDiameter) / 2, b = a * breadthPart(pot);
    return pot.opening == PotOpening::rectangular ? std::hypot(a, b) : std::max(a, b);
}

} // namespace stemwright

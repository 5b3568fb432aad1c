#pragma once

#include <cmath>

namespace stemwright {

/// A place or a direction in space, millimetres or parts of one: x to the right, y to the back, z up.
struct Point3 {
    double x = 0;
    double y = 0;
    double z = 0;

    friend bool operator==(const Point3&, const Point3&) = default;
    friend Point3 operator+(const Point3& a, const Point3& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
    friend Point3 operator-(const Point3& a, const Point3& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
    friend Point3 operator*(const Point3& a, double k) { return {a.x * k, a.y * k, a.z * k}; }
    friend Point3 operator*(double k, const Point3& a) { return a * k; }
};

inline double dot(const Point3& a, const Point3& b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline Point3 cross(const Point3& a, const Point3& b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(const Point3& a) {
    return std::sqrt(dot(a, a));
}
/// Of length 1 in the same direction; straight up where there is none.
inline Point3 unit(const Point3& a) {
    const double long_ = length(a);
    return long_ > 1e-12 ? a * (1 / long_) : Point3{0, 0, 1};
}

} // namespace stemwright

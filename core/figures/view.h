#pragma once

#include "core/figures/plant_shape.h"
#include "core/quantity/quantity.h"

namespace stemwright {

/// A place as the eye sees it, millimetres: x to the right, y down, near towards the eye.
struct SeenPoint {
    double x = 0;
    double y = 0;
    double near = 0;

    friend bool operator==(const SeenPoint&, const SeenPoint&) = default;
};

/// From which side and how high the plant is looked at; lines of sight are parallel (textbook orthographic
/// projection), so that lengths across the line of sight are true.
class View {
public:
    /// `turn` turns the plant counter-clockwise seen from above: by 90 what was at the left comes to the front.
    /// `tilt` is 0 level, 90 from straight above, and is held within the two.
    explicit View(Angle turn = {}, Angle tilt = {});

    SeenPoint point(const Point3& p) const {
        const Point3 d = direction(p);
        return {d.x, d.y, d.z};
    }
    /// The same for a direction, the nearness as z.
    Point3 direction(const Point3& p) const {
        const double x = p.x * turnCos_ - p.y * turnSin_;
        const double back = p.x * turnSin_ + p.y * turnCos_;
        return {x, -(p.z * tiltCos_ + back * tiltSin_), p.z * tiltSin_ - back * tiltCos_};
    }
    /// The horizontal place that is seen there, at the given height above the clay; from level the place at the
    /// same x in the plane through the middle.
    Point3 onLevel(double x, double y, double height = 0) const;

    Angle turn() const { return turn_; }
    Angle tilt() const { return tilt_; }

private:
    Angle turn_, tilt_;
    double turnCos_ = 1, turnSin_ = 0, tiltCos_ = 1, tiltSin_ = 0;
};

} // namespace stemwright

// The pot and what is in it: the wall turned or drawn along its outline, the clay, the stones that cover it.
#include "app/pot/plant_sculptor.h"

#include "core/figures/pot_shape.h"

#include <algorithm>
#include <cmath>
#include <random>

namespace stemwright {

namespace {
constexpr double pi = 3.14159265358979323846;
} // namespace

void Sculptor::pot() {
    const std::vector<PotRing> rings = potProfile(scene_.pot);
    const PotOutline outline(scene_.pot);
    const std::size_t sides = outline.corner.size();
    const double tall = std::max(1.0, scene_.rim - scene_.floor);
    std::vector<Tint> tints;
    std::vector<Vec3f> places;
    places.reserve(rings.size() * sides);
    tints.reserve(rings.size() * sides);
    for (std::size_t i = 0; i < rings.size(); ++i) {
        const PotRing& ring = rings[i];
        const PotRing &before = rings[i == 0 ? 0 : i - 1], &after = rings[std::min(i + 1, rings.size() - 1)];
        const double outRun = after.radius + after.out - before.radius - before.out,
                     upRun = after.height - before.height;
        const double long_ = std::max(1e-9, std::hypot(outRun, upRun));
        // The profile runs up the outside, so its outer side is at its right.
        const double out = upRun / long_, up = -outRun / long_;
        const double depth = (scene_.rim - ring.height) / tall;
        // The glaze thins towards the foot, where the stoneware shows.
        const float bare = static_cast<float>(std::clamp((depth - 0.86) / 0.06, 0.0, 1.0));
        Tint tint = tintOf(scene_.potColour);
        if (!ring.inside)
            tint = tint * (1 - bare) + tintOf(scene_.clayColour) * (0.78F * bare);
        for (std::size_t k = 0; k < sides; ++k) {
            const Point3 at = outline.at(ring, k);
            places.push_back(place(at));
            Lit lit;
            if (ring.inside) {
                lit = litAt(at - outline.outward[k], 1);
                const float shut = static_cast<float>(std::clamp(1 - depth * 2.2, 0.35, 1.0));
                lit.sky *= shut;
                lit.lamp *= shut;
            } else {
                // The plant's shadow on its pot is soft and light: a large lamp, and a wall that throws
                // back.
                lit.lamp = static_cast<float>(0.9 + 0.3 * lamp_.light(at + outline.outward[k], 14, 3));
                lit.sky = 1.25F;
            }
            tints.push_back(shaded(tint, normal(outline.outward[k] * out + Point3{0, 0, up}), lit,
                                   ring.inside ? 0.1F : 0.34F * (1 - bare)));
        }
    }
    for (std::size_t i = 0; i + 1 < rings.size(); ++i)
        for (std::size_t k = 0; k < sides; ++k) {
            const std::size_t next = (k + 1) % sides;
            const std::size_t a = i * sides + k, b = i * sides + next, c = (i + 1) * sides + next,
                              d = (i + 1) * sides + k;
            // What is turned away is behind what is turned to the eye.
            const Vec3f one = places[c] - places[a], other = places[d] - places[b];
            if (one.x * other.y - one.y * other.x > 0)
                continue;
            out_.triangles.push_back({{places[a], places[b], places[c]}, {tints[a], tints[b], tints[c]}});
            out_.triangles.push_back({{places[a], places[c], places[d]}, {tints[a], tints[c], tints[d]}});
        }
}

/// The clay, and the stones that cover it.
void Sculptor::clay() {
    if (picture_.view.tilt() <= degrees(0) && scene_.rim > 0)
        return;
    const double radius = inMillimetres(clayRadius(scene_.pot));
    const PotOutline outline(scene_.pot);
    const std::size_t sides = outline.corner.size();
    const Vec3f upward = normal({0, 0, 1});
    const Tint earth = tintOf(scene_.clayColour) * 0.75F;
    const PotRing edge{radius, 0.3, -0.8, true};
    const Point3 middle{0, 0, -0.8};
    std::vector<Vec3f> places;
    std::vector<Tint> tints;
    for (std::size_t k = 0; k < sides; ++k) {
        const Point3 at = outline.at(edge, k);
        places.push_back(place(at));
        tints.push_back(shaded(earth, upward, litAt(at, 1), 0));
    }
    for (std::size_t k = 0; k < sides; ++k) {
        const std::size_t next = (k + 1) % sides;
        out_.triangles.push_back({{place(middle), places[k], places[next]},
                                  {shaded(earth, upward, litAt(middle, 1), 0), tints[k], tints[next]}});
    }
    if (upward.z >= 0.02F)
        stones(radius);
}

/// Close together in staggered rows, always the same ones.
void Sculptor::stones(double radius) {
    const double size = std::max(1.7, radius / 16), step = size * 1.6;
    const double broad_ = radius * std::max(1.0, breadthPart(scene_.pot));
    std::mt19937 random(20);
    const auto draw = [&random] { return static_cast<double>(random() >> 8U) / 16777216.0; };
    const int rows = static_cast<int>(broad_ / (step * 0.87)), columns = static_cast<int>(radius / step) + 1;
    for (int row = -rows; row <= rows; ++row)
        for (int column = -columns; column <= columns; ++column) {
            const double x = (column + (row & 1) * 0.5 + (draw() - 0.5) * 0.5) * step,
                         y = (row * 0.87 + (draw() - 0.5) * 0.4) * step;
            const double long_ = size * (0.75 + 0.4 * draw()), broad = size * (0.65 + 0.3 * draw());
            const double turn = pi * draw(), shade = 0.82 + 0.3 * draw();
            if (beyondClay(scene_.pot, x, y) > -size * 0.6)
                continue;
            const Point3 at{x, y, -0.5};
            BeadSolid stone;
            stone.middle = place(at);
            stone.axes[0] = arrow(Point3{std::cos(turn), std::sin(turn), 0} * long_);
            stone.axes[1] = arrow(Point3{-std::sin(turn), std::cos(turn), 0} * broad);
            stone.axes[2] = arrow({0, 0, size * 0.55});
            stone.tint = tintOf(scene_.clayColour) * static_cast<float>(shade);
            stone.lit = litAt(at, 1.5);
            stone.gloss = 0.06F;
            stone.bound();
            out_.beads.push_back(stone);
        }
}

} // namespace stemwright

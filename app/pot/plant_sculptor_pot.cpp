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

/// The clay, or the stones that cover it.
void Sculptor::ground(LeafTextures& kept) {
    if (picture_.view.tilt() <= degrees(0) && scene_.rim > scene_.ground)
        return;
    const PotOutline outline(scene_.pot);
    const std::size_t sides = outline.corner.size();
    const Vec3f upward = normal({0, 0, 1});
    const Tint earth = tintOf(scene_.clayColour) * (scene_.pot.cover ? 0.7F : 0.88F);
    const double height = scene_.ground - 0.8;
    // In rings, so that a shadow falls where it falls; a soft one, since the lamp is large.
    const int rings = moving() ? 5 : 16;
    const auto corner = [&](int ring, std::size_t k) {
        const double part = static_cast<double>(ring) / rings;
        return outline.at({scene_.groundRadius * part, 0.3 * part, height, true}, k % sides);
    };
    std::vector<Vec3f> places;
    std::vector<Tint> tints;
    for (int ring = 0; ring <= rings; ++ring)
        for (std::size_t k = 0; k < sides; ++k) {
            const Point3 at = corner(ring, k);
            places.push_back(place(at));
            Lit lit = litAt(at, 1);
            lit.lamp = static_cast<float>(0.45 + 0.55 * lamp_.light(at, 7, 1));
            tints.push_back(shaded(earth, upward, lit, 0));
        }
    for (std::size_t ring = 0; ring < static_cast<std::size_t>(rings); ++ring)
        for (std::size_t k = 0; k < sides; ++k) {
            const std::size_t next = (k + 1) % sides;
            const std::size_t a = ring * sides + k, b = ring * sides + next, c = a + sides, d = b + sides;
            out_.triangles.push_back({{places[c], places[d], places[a]}, {tints[c], tints[d], tints[a]}});
            if (ring > 0)
                out_.triangles.push_back({{places[a], places[b], places[d]}, {tints[a], tints[b], tints[d]}});
        }
    if (!scene_.pot.cover || upward.z < 0.02F)
        return;
    if (moving())
        flatStones(kept);
    else
        stones();
}

namespace {

struct Stone {
    Point3 at;
    Point3 run, side; ///< its half axes that lie level
    double tall = 0;  ///< the one that stands
    float shade = 1;
};

/// Close together in staggered rows, always the same ones.
std::vector<Stone> stonesOf(const PlantScene& scene) {
    const double radius = scene.groundRadius, size = std::max(1.7, radius / 16), step = size * 1.6;
    const double back = radius * breadthPart(scene.pot);
    // Places are asked about on the clay, which a pot keeps its outline down to.
    const double toClay = inMillimetres(clayRadius(scene.pot)) / std::max(radius, 1e-9);
    std::mt19937 random(20);
    const auto draw = [&random] { return static_cast<double>(random() >> 8U) / 16777216.0; };
    const int rows = std::min(200, static_cast<int>(back / (step * 0.87)) + 1);
    const int columns = std::min(200, static_cast<int>(radius / step) + 1);
    std::vector<Stone> stones;
    for (int row = -rows; row <= rows; ++row)
        for (int column = -columns; column <= columns; ++column) {
            const double x = (column + (row & 1) * 0.5 + (draw() - 0.5) * 0.5) * step,
                         y = (row * 0.87 + (draw() - 0.5) * 0.4) * step;
            const double long_ = size * (0.75 + 0.4 * draw()), broad = size * (0.65 + 0.3 * draw());
            const double turn = pi * draw(), shade = 0.82 + 0.3 * draw();
            if (beyondClay(scene.pot, x * toClay, y * toClay) > -size * 0.6 * toClay)
                continue;
            stones.push_back({{x, y, scene.ground - 0.5},
                              Point3{std::cos(turn), std::sin(turn), 0} * long_,
                              Point3{-std::sin(turn), std::cos(turn), 0} * broad,
                              size * 0.55,
                              static_cast<float>(shade)});
        }
    return stones;
}

constexpr float stoneGloss = 0.06F;

} // namespace

void Sculptor::stones() {
    for (const Stone& stone : stonesOf(scene_)) {
        BeadSolid solid;
        solid.middle = place(stone.at);
        solid.axes[0] = arrow(stone.run);
        solid.axes[1] = arrow(stone.side);
        solid.axes[2] = arrow({0, 0, stone.tall});
        solid.tint = tintOf(scene_.clayColour) * stone.shade;
        solid.lit = litAt(stone.at, 1.5);
        solid.gloss = stoneGloss;
        solid.bound();
        out_.beads.push_back(solid);
    }
}

/// In motion the stones are a picture of themselves from above.
void Sculptor::flatStones(LeafTextures& kept) {
    constexpr double mostTexels = 512;
    const double right = scene_.groundRadius, back = right * breadthPart(scene_.pot);
    if (kept.cover.isNull()) {
        const double texels = std::min(kept.scale, mostTexels / (2 * std::max(right, back)));
        QImage cover(std::max(1, static_cast<int>(std::ceil(2 * right * texels))),
                     std::max(1, static_cast<int>(std::ceil(2 * back * texels))),
                     QImage::Format_ARGB32_Premultiplied);
        const auto flat = [texels](const Point3& v) {
            return Vec3f{static_cast<float>(v.x * texels), static_cast<float>(-v.y * texels), 0};
        };
        Solids solids;
        for (const Stone& stone : stonesOf(scene_)) {
            BeadSolid solid;
            solid.middle = flat(stone.at + Point3{right, -back, 0});
            solid.axes[0] = flat(stone.run);
            solid.axes[1] = flat(stone.side);
            solid.axes[2] = {0, 0, static_cast<float>(stone.tall * texels)};
            solid.tint = tintOf(scene_.clayColour) * stone.shade;
            solid.gloss = stoneGloss;
            solid.bound();
            solids.beads.push_back(solid);
        }
        fillRows(cover, 0, cover.height(), 1, solids);
        kept.cover = std::move(cover);
    }
    LeafSolid solid;
    solid.base = place({0, -back, scene_.ground});
    solid.across = arrow({2 * right, 0, 0});
    solid.along = arrow({0, 2 * back, 0});
    solid.texture = &kept.cover;
    solid.light = 0.86F;
    out_.leaves.push_back(solid);
}

} // namespace stemwright

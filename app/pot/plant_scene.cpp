#include "app/pot/plant_scene.h"

#include "app/look.h"
#include "app/pot/shadow_map.h"

#include "core/figures/panes.h"
#include "core/figures/pot_shape.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

QColor seen(ColourVision vision, const QColor& colour) {
    const Srgb out =
        seenBy(vision, {static_cast<std::uint8_t>(colour.red()), static_cast<std::uint8_t>(colour.green()),
                        static_cast<std::uint8_t>(colour.blue())});
    return {out.red, out.green, out.blue};
}

constexpr double pi = 3.14159265358979323846;

/// A margin around the plant, as a part of the picture's shorter side.
constexpr double margin = 0.045;

} // namespace

std::vector<QPointF> hull(std::vector<QPointF> points) {
    std::sort(points.begin(), points.end(), [](const QPointF& a, const QPointF& b) {
        return a.x() != b.x() ? a.x() < b.x() : a.y() < b.y();
    });
    std::vector<QPointF> out;
    for (int pass = 0; pass < 2; ++pass) {
        const std::size_t start = out.size();
        for (const QPointF& p : points) {
            while (out.size() >= start + 2) {
                const QPointF a = out[out.size() - 1] - out[out.size() - 2], b = p - out[out.size() - 1];
                if (a.x() * b.y() - a.y() * b.x() > 0)
                    break;
                out.pop_back();
            }
            out.push_back(p);
        }
        out.pop_back();
        std::reverse(points.begin(), points.end());
    }
    return out;
}

PlantScene::PlantScene(const Plan& plan, ColourVision vision, std::optional<std::span<const PlaceMm>> at)
    : body(at ? plantBody(plan, *at) : plantBody(plan)),
      pot(plan.pot),
      stemColour(seen(vision, look::stem)),
      clayColour(seen(vision, look::clay)),
      potColour(seen(vision, look::pot)) {
    std::vector<Leaf> known;
    for (const LeafBody& leaf : body.leaves) {
        const auto found = std::find(known.begin(), known.end(), leaf.leaf);
        lookOf.push_back(static_cast<std::size_t>(found - known.begin()));
        if (found != known.end())
            continue;
        known.push_back(leaf.leaf);
        LeafLook leafLook = stemwright::lookOf(plan, leaf.leaf);
        LeafShape shape{leafLook.length, leafLook.width, leafLook.tipEnd, leafLook.baseEnd, leafLook.beads, {}};
        for (LeafLook::Band& band : leafLook.bands) {
            band.colour = seen(vision, band.colour);
            shape.shares.push_back(band.share);
        }
        looks.push_back({std::move(leafLook), leafRows(shape)});
    }
    sky = std::make_shared<const ShadowMap>(body, Point3{0, 0, 1});
    if (!plan.binding.wraps.empty()) {
        const Wrap& outer = plan.binding.wraps.back();
        wrapAdvance = inMillimetres(outer.width) * outer.strands * (1 - outer.overlap);
    }

    rim = inMillimetres(rimAboveClay(pot));
    if (pot.cover)
        ground = std::clamp(inMillimetres(pot.cover->depth), 0.0, std::max(rim - 1, 0.0));
    groundRadius = inMillimetres(innerRadius(pot, millimetres(rim - ground)));
    floor = rim - inMillimetres(pot.depth) - potWall;
    std::vector<QPointF> points;
    const double corner = widestReach(pot) / std::max(1e-9, inMillimetres(pot.topDiameter) / 2);
    for (const PotRing& ring : potProfile(pot))
        points.push_back({ring.radius * corner + ring.out, ring.height});
    const auto add = [&points](const Point3& p) { points.push_back({std::hypot(p.x, p.y), p.z}); };
    for (const StemBody& stem : body.stems) {
        add(stem.foot);
        for (const StemPiece& piece : stem.pieces)
            add(piece.to);
    }
    for (const LeafBody& leaf : body.leaves)
        for (const Point3& p : body.corners(leaf))
            add(p);
    swept = hull(std::move(points));
}

Framing framed(const PlantScene& scene, Angle tilt, QSizeF size) {
    const double sine = std::sin(inRadians(tilt)), cosine = std::cos(inRadians(tilt));
    // Of a swept circle the far side is seen highest, and the near side lowest.
    double up = -1e300, down = -1e300, aside = 1;
    for (const QPointF& p : scene.swept) {
        up = std::max(up, p.y() * cosine + p.x() * sine);
        down = std::max(down, p.x() * sine - p.y() * cosine);
        aside = std::max(aside, p.x());
    }
    const double edge = margin * std::min(size.width(), size.height());
    Framing out;
    out.scale = std::max(0.001, std::min((size.width() - 2 * edge) / (2 * aside),
                                         (size.height() - 2 * edge) / std::max(1.0, up + down)));
    out.origin = {size.width() / 2, (size.height() + (up - down) * out.scale) / 2};
    return out;
}

std::optional<std::size_t> leafAt(const PlantScene& scene, const View& view, const Framing& framing,
                                  QPointF at) {
    const QPointF mm = (at - framing.origin) / framing.scale;
    std::optional<std::size_t> nearest;
    double near = -1e300;
    for (const Pane& pane : panesOf(scene.body, view)) {
        bool left = false, right = false;
        for (std::size_t i = 0; i < pane.corners.size(); ++i) {
            const SeenPoint &a = pane.corners[i], &b = pane.corners[(i + 1) % pane.corners.size()];
            const double side = (b.x - a.x) * (mm.y() - a.y) - (b.y - a.y) * (mm.x() - a.x);
            left = left || side > 0;
            right = right || side < 0;
        }
        if (left && right)
            continue;
        const double here = planeOf(pane).at(mm.x(), mm.y());
        if (here <= near)
            continue;
        near = here;
        nearest = pane.tag < scene.body.leaves.size() ? std::optional(pane.tag) : std::nullopt;
    }
    return nearest;
}

std::vector<PotRing> potProfile(const Pot& pot) {
    const double rim = inMillimetres(rimAboveClay(pot)), depth = inMillimetres(pot.depth);
    constexpr int steps = 14;
    std::vector<PotRing> rings;
    const auto inner = [&](double down) { return inMillimetres(innerRadius(pot, millimetres(down))); };
    const double foot = pot.shape == PotShape::bowl ? inner(0) * 0.42 : inner(depth);
    rings.push_back({0, 0, rim - depth - potWall, false});
    rings.push_back({foot, potWall * 0.4, rim - depth - potWall, false});
    rings.push_back({foot, potWall * 0.8, rim - depth - potWall * 0.7, false});
    for (int i = steps; i >= 0; --i) {
        const double down = depth * i / steps;
        const double radius = std::max(inner(down), foot);
        rings.push_back({radius, potWall * (i == steps && radius == foot ? 0.9 : 1.0), rim - down, false});
    }
    // The lip: half round, over the wall.
    for (int i = 1; i < 6; ++i) {
        const double a = pi * i / 6;
        rings.push_back({inner(0), potWall / 2 * (1 + std::cos(a)), rim + std::sin(a) * potWall / 2, i > 3});
    }
    // A little deeper than the clay, so that no light shows between the two.
    for (int i = 0; i <= 4; ++i)
        rings.push_back({inner(rim * i / 4), 0, rim - rim * i / 4, true});
    rings.push_back({inner(rim), 0, -3, true});
    return rings;
}

PotOutline::PotOutline(const Pot& pot) {
    // A rectangle's corners are drawn a little round, as a potter would make them.
    constexpr double rounding = 0.12; // of half its shorter side
    const double part = breadthPart(pot);
    constexpr int corners = 96;
    if (pot.opening == PotOpening::rectangular) {
        const double r = rounding * std::min(1.0, part);
        constexpr int turns = 6; // pieces of each rounded corner, and of each side
        const double sides[4][2] = {{1, 1}, {-1, 1}, {-1, -1}, {1, -1}};
        for (int q = 0; q < 4; ++q) {
            const Point3 middle{sides[q][0] * (1 - r), sides[q][1] * (part - r), 0};
            for (int i = 0; i <= turns; ++i) {
                const double a = pi / 2 * (q + static_cast<double>(i) / turns);
                outward.push_back({std::cos(a), std::sin(a), 0});
                corner.push_back(middle + outward.back() * r);
            }
            const double* next = sides[(q + 1) % 4];
            const Point3 from = corner.back();
            const Point3 to = Point3{next[0] * (1 - r), next[1] * (part - r), 0} + outward.back() * r;
            for (int i = 1; i < turns; ++i) {
                outward.push_back(outward.back());
                corner.push_back(from + (to - from) * (static_cast<double>(i) / turns));
            }
        }
        return;
    }
    for (const PointMm& p : openingOutline(pot, corners)) {
        corner.push_back({p.x, p.y, 0});
        // Across an ellipse's edge: the gradient of x² + (y/part)².
        outward.push_back(unit(Point3{p.x, p.y / (part * part), 0}));
    }
}

} // namespace stemwright

#pragma once

#include "app/leaf_painter.h"

#include "core/figures/plant_shape.h"
#include "core/figures/view.h"
#include "core/plan/plan.h"
#include "core/quantity/colour_vision.h"

#include <QColor>
#include <QPointF>
#include <QSizeF>

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace stemwright {

class ShadowMap;

/// The wall of a pot, mm; no plan tells it (own choice, no source).
inline constexpr double potWall = 3;

/// All that is drawn of a plant, worked out once and then seen from any side. A value that any thread may read.
struct PlantScene {
    /// `at` stands in for where the stems stand, while one is being dragged.
    explicit PlantScene(const Plan& plan, ColourVision vision = ColourVision::full,
                        std::optional<std::span<const PlaceMm>> at = {});

    struct Look {
        LeafLook look;
        LeafRows rows;
    };
    PlantBody body;
    std::vector<Look> looks;         ///< each distinct kind and mix once
    std::vector<std::size_t> lookOf; ///< by leaf
    Pot pot;
    /// mm along a stem from one turn of the outermost wrap to the next; 0 without wraps.
    double wrapAdvance = 0;
    QColor stemColour, clayColour, potColour;
    /// What the leaves keep from the light that comes from straight above, from whichever side they are seen.
    std::shared_ptr<const ShadowMap> sky;

    /// What a full turn about the middle sweeps: the corners (radius, height) of the outline that holds all of
    /// it.
    std::vector<QPointF> swept;
    double ground = 0;       ///< the cover's surface above the clay, or the clay's own: 0
    double groundRadius = 0; ///< as clayRadius() counts, at that height
    double floor = 0;        ///< the pot's outer bottom, mm above the clay and so below 0
    double rim = 0;          ///< the pot's rim, mm above the clay
};

/// The convex hull of places in a plane (Andrew's monotone chain, textbook).
std::vector<QPointF> hull(std::vector<QPointF> points);

/// How a scene lies on a picture: the middle of the clay at `origin`, `scale` pixels a millimetre.
struct Framing {
    double scale = 1;
    QPointF origin;

    QPointF onPicture(const SeenPoint& p) const { return origin + QPointF(p.x, p.y) * scale; }
};

/// The largest framing that shows everything at this tilt whatever the turn, with a margin around it.
Framing framed(const PlantScene& scene, Angle tilt, QSizeF size);

/// The leaf that is seen at a place of the picture, by its place in the scene's body; nothing where none is.
std::optional<std::size_t> leafAt(const PlantScene& scene, const View& view, const Framing& framing,
                                  QPointF at);

/// One level of the pot's skin: the opening's outline (openingOutline of pot_shape.h) times `radius`, moved
/// outward by `out`, at a height above the clay.
struct PotRing {
    double radius = 0;
    double out = 0;
    double height = 0;
    bool inside = false; ///< the inner side of the wall
};
/// From the middle of the foot up the outside, over the rim and down the inside to below the clay.
std::vector<PotRing> potProfile(const Pot& pot);

/// The corners of the pot's outline, and where outward is at each.
struct PotOutline {
    explicit PotOutline(const Pot& pot);
    std::vector<Point3> corner; ///< for a radius of 1
    std::vector<Point3> outward;
    Point3 at(const PotRing& ring, std::size_t k) const {
        return corner[k] * ring.radius + outward[k] * ring.out + Point3{0, 0, ring.height};
    }
};

} // namespace stemwright

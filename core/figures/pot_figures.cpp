#include "core/figures/pot_figures.h"

#include "core/figures/pot_shape.h"
#include "core/figures/stem_centre.h"
#include "core/plan/lookup.h"
#include "core/quantity/solid.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stemwright {

namespace {

/// Half a spheroid standing on its pole, filled from there up: the level cut at height z has the area
/// π R² (1 − (1 − z/D)²) = π R² (2 z/D − z²/D²), so π R² (h²/D − h³/(3 D²)) fits below h, and its moment is
/// π R² (2 h³/(3 D) − h⁴/(4 D²)).
Solid spheroid(Length radius, Length depth, Length height) {
    const double r = inMillimetres(radius), d = inMillimetres(depth);
    const double h = std::clamp(inMillimetres(height), 0.0, d);
    if (h == 0)
        return {};
    const double volume = h * h / d - h * h * h / (3 * d * d);
    return {std::numbers::pi * r * r * volume,
            millimetres((2 * h * h * h / (3 * d) - h * h * h * h / (4 * d * d)) / volume)};
}

Solid roundFilledTo(const Pot& pot, Length height) {
    switch (pot.shape) {
    case PotShape::cylinder:
        return frustum(pot.topDiameter, pot.topDiameter, height);
    case PotShape::frustum: {
        const double part = height / pot.depth;
        return frustum(pot.bottomDiameter, pot.bottomDiameter + (pot.topDiameter - pot.bottomDiameter) * part,
                       height);
    }
    case PotShape::bowl:
        if (const Length rim = pot.topDiameter / 2; pot.depth > rim)
            return spheroid(rim, pot.depth, height);
        return cap(bowlRadius(pot.topDiameter, pot.depth), height);
    }
    return {};
}

/// Every level cut is that of a round pot with its area times the same factor.
Solid filledTo(const Pot& pot, Length height) {
    Solid out = roundFilledTo(pot, height);
    out.volume *= openingArea(pot);
    return out;
}

Length roundFootOf(const Pot& pot) {
    switch (pot.shape) {
    case PotShape::cylinder:
        return pot.topDiameter / 2;
    case PotShape::frustum:
        return pot.bottomDiameter / 2;
    case PotShape::bowl:
        return pot.topDiameter / 6;
    }
    return {};
}

/// It tips over the nearest edge: of an oval or rectangular foot the one across its shorter way; on feet the
/// line between two neighbours, since nobody says which way it will be pushed.
Length footOf(const Pot& pot) {
    const Length ring =
        pot.footDiameter > Length{} ? pot.footDiameter / 2 : roundFootOf(pot) * std::min(1.0, breadthPart(pot));
    return pot.feet > 0 ? ring * std::cos(std::numbers::pi / pot.feet) : ring;
}

Mass massOf(double volume, double density) {
    return grams(volume * density * 1e-6);
}

/// Masses and where their centre is.
struct Heap {
    double mass = 0, x = 0, y = 0, height = 0;

    void add(Mass m, double atX, double atY, Length atHeight) {
        const double more = inGrams(m);
        mass += more;
        x += more * atX;
        y += more * atY;
        height += more * inMillimetres(atHeight);
    }
};

} // namespace

Length stakeLength(const Pot& pot) {
    return std::min(pot.clay.depth, pot.depth) + pot.stake.overlap;
}

PotBalance potBalance(const Plan& plan, const Figures& figures) {
    const Pot& pot = plan.pot;
    PotBalance out;
    const Length clayTop = std::min(pot.clay.depth, pot.depth);
    const Solid clay = filledTo(pot, clayTop);
    out.clayVolume = clay.volume;
    out.clay = massOf(clay.volume, densityOf(plan, pot.clay));
    Heap heap;
    heap.add(pot.mass, 0, 0, pot.depth / 2);
    heap.add(out.clay, 0, 0, clay.centre);
    if (pot.cover) {
        const Solid cover = between(clay, filledTo(pot, std::min(clayTop + pot.cover->depth, pot.depth)));
        out.coverVolume = cover.volume;
        out.cover = massOf(cover.volume, densityOf(plan, *pot.cover));
        heap.add(out.cover, 0, 0, cover.centre);
    }
    const PlanTables tables(plan);
    for (std::size_t i = 0; i < plan.stems.size(); ++i) {
        const auto& standing = plan.stems[i].standing;
        const HoldFigures& hold = figures.stems[i].hold;
        const Point3 centre = centreOfStem(plan.stems[i], plan, tables, hold);
        heap.add(hold.mass, (standing ? inMillimetres(standing->x) : 0) + centre.x,
                 (standing ? inMillimetres(standing->y) : 0) + centre.y,
                 std::max(Length{}, clayTop + millimetres(centre.z)));
    }
    out.foot = footOf(pot);
    out.whole = grams(heap.mass);
    const double foot = inMillimetres(out.foot);
    const double moment = std::hypot(heap.x, heap.y);
    if (heap.mass > 0) {
        out.aside = millimetres(moment / heap.mass);
        out.centre = millimetres(heap.height / heap.mass);
    }
    out.stands = out.aside < out.foot;
    if (out.stands)
        out.tilt = degrees(std::atan2(inMillimetres(out.foot - out.aside), inMillimetres(out.centre)) * 180 /
                           std::numbers::pi);
    out.steady = heap.mass <= 0 || out.tilt >= steadyTilt;
    // foot · (mass + w) − moment ≥ tan(steadyTilt) · height, for a weight w on the floor.
    if (!out.steady && foot > 0)
        out.weightToAdd =
            grams(std::max(0.0, (std::tan(inRadians(steadyTilt)) * heap.height + moment) / foot - heap.mass));
    return out;
}

} // namespace stemwright

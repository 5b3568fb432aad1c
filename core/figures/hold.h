#pragma once

#include "core/figures/plan_tables.h"
#include "core/figures/wrap.h"
#include "core/plan/plan.h"

#include <optional>
#include <vector>

namespace stemwright {

// Whether a stem stands by itself. Estimates: wire temper and binding move strength and stiffness by a factor
// of 1.5 to 4 (own judgement), and a hand that bends copper makes it stronger.

/// m/s² (standard gravity, ISO 80000-3).
inline constexpr double gravity = 9.80665;
/// The hold that a core wire is chosen for (own choice).
inline constexpr double wantedHold = 2;
/// The hold below which a stem is said to hold too little (own choice): it would bend when it leans by 45
/// degrees, which asks sin 45° of what lying level does. Wires are taken at their softest, and makers' light
/// stems that lie below 1 stand well upright.
inline constexpr double weakHold = 0.7;
/// Sag beyond this part of the length is more than the formula is good for (textbook: small deflections).
inline constexpr double smallSag = 0.1;

struct HoldFigures {
    /// Everything above the clay: beads, leaf wire, core and binding. Beads whose mass nobody knows weigh
    /// nothing (FindingCode::beadsUnweighed says so), nor does a tape that nobody weighed.
    Mass mass;
    /// Of that mass about the clay line with the stem laid level, its worst pose. N·mm.
    double moment = 0;
    /// What the wires at the clay line bear, each bending for itself as if nothing bound them, and the core:
    /// Σ yield · d³ / 6 (textbook, fully plastic). N·mm.
    double plasticMoment = 0;
    /// plasticMoment / moment; 0 where there is nothing to hold.
    double hold = 0;
    /// Of the topmost joint below the clay line, the stem laid level: the cantilever of wires that bend each
    /// for itself, thicker from joint to joint (textbook).
    Length sag;
    /// Height of the centre of that mass above the clay line, the stem upright.
    Length centre;
    /// Whether the sag is more than its formula is good for.
    bool sagBeyondFormula = false;

    friend bool operator==(const HoldFigures&, const HoldFigures&) = default;
};

/// `wraps` is what the binding takes of the stem. Leaves weigh in the middle of their length,
/// their wires there too; a core runs from the foot to the topmost joint; the binding is spread over the stem.
HoldFigures holdFigures(const Stem& stem, const Plan& plan, const PlanTables& tables,
                        const std::vector<WrapFigures>& wraps);

/// The thinnest core, in tenths of a millimetre, with which the stem's hold reaches `wanted`: of its own core's
/// metal, or of soft steel. Nothing where the stem has nothing to hold, or none up to 6 mm does.
std::optional<CoreWire> smallestCore(const Stem& stem, const Plan& plan, const PlanTables& tables,
                                     const std::vector<WrapFigures>& wraps, double wanted = wantedHold);

} // namespace stemwright

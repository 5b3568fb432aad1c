#include "core/figures/hold.h"

#include "core/figures/height.h"
#include "core/plan/lookup.h"
#include "core/quantity/wire_strength.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double newtonsPerGram = gravity / 1000;

/// Of the binding on one millimetre of the stem.
double bindingGramsPerMillimetre(const Plan& plan, const std::vector<WrapFigures>& wraps, double length) {
    double mass = 0;
    for (std::size_t i = 0; i < plan.binding.wraps.size() && i < wraps.size(); ++i) {
        const Wrap& wrap = plan.binding.wraps[i];
        mass += wrap.strands * gramsPerMetre(plan, wrap) * inMetres(wraps[i].used);
    }
    return length > 0 ? mass / length : 0;
}

} // namespace

HoldFigures holdFigures(const Stem& stem, const Plan& plan, const PlanTables& tables,
                        const std::vector<WrapFigures>& wraps) {
    HoldFigures out;
    const std::size_t count = stem.tiers.size();
    if (count == 0)
        return out;
    // Weight a millimetre of what runs along the stem, N/mm.
    double along = bindingGramsPerMillimetre(plan, wraps, inMillimetres(lengthOfStem(stem))) * newtonsPerGram;
    double bending = 0; // E·I where we are
    if (stem.core) {
        const MetalFigures metal = figuresOf(plan, metalNameOf(*stem.core));
        along += inGrams(massOfWire(metal, stem.core->diameter, millimetres(1))) * newtonsPerGram;
        bending += wireStiffness(metal, stem.core->diameter);
        out.plasticMoment += plasticMoment(metal, stem.core->diameter);
    }

    // From the topmost joint down: the weight above, its moment here, and how far below the top we are.
    double weight = 0;
    double moment = 0;
    double below = 0;
    double sag = 0;
    for (std::size_t i = 0; i < count; ++i) {
        for (const Slot& slot : stem.tiers[i].slots) {
            if (!slot.filled())
                continue;
            const auto place = static_cast<std::size_t>(tables.kindOf(slot.leaf.kind));
            const KindForm& kind = plan.kinds[place];
            const PlanTables::KindRow& row = tables.kinds()[place];
            const double newtons = inGrams(row.leafMass) * newtonsPerGram;
            weight += newtons;
            moment += newtons * inMillimetres(kind.length) / 2 * std::cos(inRadians(kind.angle));
            bending += kind.wiresAtBase * row.wireStiffness;
            out.plasticMoment += kind.wiresAtBase * row.wirePlasticMoment;
        }
        const bool last = i + 1 == count;
        const Length toNext = last ? stem.tail - plan.pot.plantingDepth : spacingBelow(stem, stem.tiers[i]);
        const double l = std::max(0.0, inMillimetres(toNext));
        // ∫ M(s)·(below + s)/EI ds over the stretch, M(s) = moment + weight·s + along·s²/2.
        if (bending > 0)
            sag += (moment * below * l + (moment + weight * below) * l * l / 2 +
                    (weight + along * below / 2) * l * l * l / 3 + along / 2 * l * l * l * l / 4) /
                   bending;
        moment += weight * l + along * l * l / 2;
        weight += along * l;
        below += l;
    }
    out.mass = grams(weight / newtonsPerGram);
    out.moment = moment;
    out.hold = moment > 0 ? out.plasticMoment / moment : 0;
    out.sag = millimetres(sag);
    out.centre = weight > 0 ? millimetres(moment / weight) : Length{};
    out.sagBeyondFormula = sag > smallSag * below;
    return out;
}

std::optional<CoreWire> smallestCore(const Stem& stem, const Plan& plan, const PlanTables& tables,
                                     const std::vector<WrapFigures>& wraps, double wanted) {
    Stem with = stem;
    if (!with.core)
        with.core = CoreWire{};
    with.core->gauge.reset();
    // A thicker core weighs with the square and bears with the cube of its diameter: from where it first
    // reaches the wanted hold on, every thicker one does.
    constexpr int thickest = 60;
    const auto reaches = [&](int tenths) {
        with.core->diameter = millimetres(tenths / 10.0);
        return holdFigures(with, plan, tables, wraps).hold >= wanted;
    };
    if (holdFigures(stem, plan, tables, wraps).moment <= 0)
        return std::nullopt;
    if (!reaches(thickest))
        return std::nullopt;
    int least = 1;
    for (int most = thickest; least < most;) {
        const int middle = (least + most) / 2;
        if (reaches(middle))
            most = middle;
        else
            least = middle + 1;
    }
    with.core->diameter = millimetres(least / 10.0);
    return with.core;
}

} // namespace stemwright

#include "core/figures/stem_centre.h"

#include "core/figures/height.h"
#include "core/figures/plant_shape.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace stemwright {

namespace {

/// The middle of the stem's axis from the clay to its topmost joint.
Point3 middleOfAxis(const std::optional<Pose>& pose, double whole) {
    const auto at = [&](double part) { return stemFrame(pose, {}, whole, whole * part).at; };
    if (!pose || pose->bend == Angle{})
        return at(0.5);
    constexpr int steps = 32; // even
    Point3 sum = at(0) + at(1);
    for (int i = 1; i < steps; ++i)
        sum = sum + (i % 2 == 1 ? 4.0 : 2.0) * at(static_cast<double>(i) / steps);
    return sum * (1.0 / (3 * steps));
}

} // namespace

Point3 centreOfStem(const Stem& stem, const Plan& plan, const PlanTables& tables, const HoldFigures& hold) {
    const std::size_t count = stem.tiers.size();
    if (count == 0 || hold.mass <= Mass{})
        return {};
    std::vector<double> heights(count); // of the joints, along the stem
    double whole = std::max(0.0, inMillimetres(stem.tail - plan.pot.plantingDepth));
    for (std::size_t i = count; i-- > 0;) {
        if (i + 1 < count)
            whole += inMillimetres(spacingBelow(stem, stem.tiers[i]));
        heights[i] = whole;
    }

    Point3 moment;
    double leaves = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const Tier& tier = stem.tiers[i];
        const StemFrame frame = stemFrame(stem.pose, {}, whole, heights[i]);
        for (std::size_t s = 0; s < tier.slots.size(); ++s) {
            if (!tier.slots[s].filled())
                continue;
            const auto place = static_cast<std::size_t>(tables.kindOf(tier.slots[s].leaf.kind));
            const KindForm& kind = plan.kinds[place];
            const double angle = inRadians(kind.angle);
            const Point3 along = towards(slotTurn(tier, s)) * std::sin(angle) + Point3{0, 0, std::cos(angle)};
            const double mass = inGrams(tables.kinds()[place].leafMass);
            moment = moment + mass * (frame.at + frame.turned(along) * (inMillimetres(kind.length) / 2));
            leaves += mass;
        }
    }
    const double rest = std::max(0.0, inGrams(hold.mass) - leaves);
    return (moment + rest * middleOfAxis(stem.pose, whole)) * (1 / (leaves + rest));
}

} // namespace stemwright

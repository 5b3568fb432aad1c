#include "core/figures/pot_findings.h"

#include "core/figures/height.h"
#include "core/figures/pot_shape.h"
#include "core/figures/touching.h"
#include "core/quantity/circle_packing.h"
#include "core/quantity/digits.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>

namespace stemwright {

namespace {

/// The touches of two stems.
struct Meeting {
    int pairs = 0;
    double longest = 0;
    SlotRef at;
};

/// What the clay must measure across its shorter way so that so many stakes have room. In a round pot the
/// smallest circle that holds them; in another, one stake, and two or more discs fill no more than π/√12 of any
/// convex room (L. Fejes Tóth, from memory): what is said to be too small surely is.
double acrossForStakes(const Pot& pot, int count, double stake) {
    if (pot.opening == PotOpening::round)
        return packingRatio(count) * stake;
    if (count < 2)
        return stake;
    const double area = count * stake * stake * std::sqrt(3.0) / 2; // of the room, not of the discs
    const double shorter = std::min(1.0, breadthPart(pot));
    const double ofSquare =
        openingArea(pot) * std::numbers::pi / 4 / (shorter * shorter); // the clay's, over across²
    return std::max(stake, std::sqrt(area / ofSquare));
}

/// From the clay to the highest tier of any stem, without what leaves reach beyond.
Length tallestStem(const Plan& plan) {
    Length tallest;
    for (const Stem& stem : plan.stems)
        tallest = std::max(tallest, lengthOfStem(stem) - plan.pot.plantingDepth);
    return tallest;
}

void addOutOfScale(std::vector<Finding>& out, const Plan& plan) {
    const Length tallest = tallestStem(plan);
    for (const Kind& kind : plan.kinds) {
        if (kind.length <= 2 * tallest || kind.length <= 2 * plan.pot.topDiameter)
            continue;
        const auto first = [&]() -> std::optional<SlotRef> {
            for (const Stem& stem : plan.stems)
                for (std::size_t t = 0; t < stem.tiers.size(); ++t)
                    for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s)
                        if (stem.tiers[t].slots[s].filled() && stem.tiers[t].slots[s].leaf.kind == kind.id)
                            return SlotRef{stem.id, static_cast<int>(t), static_cast<int>(s)};
            return std::nullopt;
        }();
        if (first)
            out.push_back(
                {FindingCode::leafOutOfScale,
                 first->stem,
                 first->tier,
                 first->slot,
                 {kind.name, oneDecimal(inMillimetres(kind.length)), oneDecimal(inMillimetres(tallest))}});
    }
}

} // namespace

double footRadius(const Plan& plan, const StemBody& stem) {
    const double stake = inMillimetres(plan.pot.stake.diameter) / 2;
    return std::max(stake, stem.pieces.empty() ? 0.0 : stem.pieces.front().radius);
}

std::vector<Finding> potFindings(const Plan& plan, const PlantBody& plant) {
    std::vector<Finding> out;
    std::map<std::pair<std::size_t, std::size_t>, Meeting> meetings;
    for (const LeafTouch& touch : touchingLeaves(plant)) {
        const LeafBody& one = plant.leaves[touch.one];
        Meeting& meeting = meetings[{one.stem, plant.leaves[touch.other].stem}];
        ++meeting.pairs;
        if (touch.length > meeting.longest) {
            meeting.longest = touch.length;
            meeting.at = one.at;
        }
    }
    const double stake = inMillimetres(plan.pot.stake.diameter);
    const auto count = static_cast<int>(plan.stems.size());
    for (std::size_t i = 0; i < plant.stems.size(); ++i) {
        const StemBody& stem = plant.stems[i];
        const double foot = footRadius(plan, stem);
        const double over = beyondClay(plan.pot, stem.foot.x, stem.foot.y) + foot;
        if (over > 0.05)
            out.push_back({FindingCode::outsideClay, stem.stem, -1, -1, {oneDecimal(over)}});
        for (std::size_t j = i + 1; j < plant.stems.size(); ++j) {
            const StemBody& other = plant.stems[j];
            const double apart = std::hypot(other.foot.x - stem.foot.x, other.foot.y - stem.foot.y);
            const double needed = foot + footRadius(plan, other);
            if (apart < needed - 0.05)
                out.push_back({FindingCode::stakesTouch,
                               stem.stem,
                               -1,
                               -1,
                               {plan.stems[j].name, oneDecimal(apart), oneDecimal(needed)}});
        }
        for (auto at = meetings.lower_bound({i, 0}); at != meetings.end() && at->first.first == i; ++at)
            out.push_back({FindingCode::leavesTouch,
                           stem.stem,
                           at->second.at.tier,
                           at->second.at.slot,
                           {plan.stems[at->first.second].name, std::to_string(at->second.pairs),
                            oneDecimal(at->second.longest)}});
    }
    addOutOfScale(out, plan);
    const double across = 2 * inMillimetres(clayRadius(plan.pot)) * std::min(1.0, breadthPart(plan.pot));
    const double needed = acrossForStakes(plan.pot, count, stake);
    if (count > 0 && needed > across)
        out.push_back({FindingCode::potTooSmall, {}, -1, -1, {oneDecimal(needed), oneDecimal(across)}});
    return out;
}

} // namespace stemwright

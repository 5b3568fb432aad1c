#include "core/figures/pot_findings.h"

#include "core/figures/pot_shape.h"
#include "core/figures/touching.h"
#include "core/quantity/circle_packing.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>

namespace stemwright {

namespace {

std::string oneDecimal(double v) {
    char buffer[40];
    const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, std::round(v * 10) / 10 + 0.0,
                                            std::chars_format::fixed, 1);
    return error == std::errc() ? std::string(buffer, end) : std::string("?");
}

/// The touches of two stems.
struct Meeting {
    int pairs = 0;
    double longest = 0;
    SlotRef at;
};

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
    const double clay = inMillimetres(clayRadius(plan.pot));
    const double stake = inMillimetres(plan.pot.stake.diameter);
    const auto count = static_cast<int>(plan.stems.size());
    for (std::size_t i = 0; i < plant.stems.size(); ++i) {
        const StemBody& stem = plant.stems[i];
        const double foot = footRadius(plan, stem);
        const double over = std::hypot(stem.foot.x, stem.foot.y) + foot - clay;
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
    if (count > 0 && packingRatio(count) * stake > 2 * clay)
        out.push_back({FindingCode::potTooSmall,
                       {},
                       -1,
                       -1,
                       {oneDecimal(packingRatio(count) * stake), oneDecimal(2 * clay)}});
    return out;
}

} // namespace stemwright

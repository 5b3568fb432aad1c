#include "core/plan/making.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

namespace stemwright {

std::vector<int> stillToMake(const Plan& plan) {
    std::map<std::pair<KindId, MixId>, int> bound;
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            if (tier.progress.bound)
                for (const Slot& slot : tier.slots)
                    if (slot.filled())
                        ++bound[{slot.leaf.kind, slot.leaf.mix}];
    std::vector<int> lines;
    for (const Kind& kind : plan.kinds)
        for (const StockLine& line : kind.stock) {
            const auto found = bound.find({kind.id, line.mix});
            const int made = std::max(line.made, found == bound.end() ? 0 : found->second);
            lines.push_back(std::clamp(line.made + line.toMake - made, 0, line.toMake));
        }
    return lines;
}

std::vector<int> stillToMakeByKind(const Plan& plan) {
    const std::vector<int> lines = stillToMake(plan);
    std::vector<int> kinds;
    auto line = lines.begin();
    for (const Kind& kind : plan.kinds) {
        const auto end = line + static_cast<std::ptrdiff_t>(kind.stock.size());
        kinds.push_back(std::accumulate(line, end, 0));
        line = end;
    }
    return kinds;
}

} // namespace stemwright

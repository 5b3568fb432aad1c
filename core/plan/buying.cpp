#include "core/plan/buying.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

bool sameWire(Length a, Length b) {
    return std::abs(inMillimetres(a - b)) < 0.01;
}

const Pack& leafWirePack(const Buying& buying, Length wire) {
    const auto own = std::find_if(buying.leafWires.begin(), buying.leafWires.end(),
                                  [&](const LeafWirePack& each) { return sameWire(each.wire, wire); });
    return own == buying.leafWires.end() || !(own->sold.amount > 0) ? buying.leafWire : own->sold;
}

std::vector<Bar> barsFor(const Buying& buying, Length wire) {
    std::vector<Bar> own, any;
    for (const Bar& bar : buying.bars) {
        if (bar.wire == Length{})
            any.push_back(bar);
        else if (sameWire(bar.wire, wire))
            own.push_back(bar);
    }
    return own.empty() ? any : own;
}

} // namespace stemwright

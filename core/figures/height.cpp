#include "core/figures/height.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

Length reachAbove(const KindForm& kind) {
    // The cosine of 90 degrees comes out a hair above 0; a level leaf rises nothing.
    if (kind.angle >= degrees(90))
        return {};
    return kind.length * std::cos(inRadians(kind.angle));
}

Length spacingBelow(const StemForm& form, const Tier& tier) {
    return tier.spacing.value_or(form.spacing);
}

Length lengthOfStem(const Stem& stem) {
    Length length = stem.tail;
    for (std::size_t i = 0; i + 1 < stem.tiers.size(); ++i)
        length += spacingBelow(stem, stem.tiers[i]);
    return length;
}

Length heightOf(const Stem& stem, std::span<const Length> reach, Length plantingDepth) {
    Length joint = stem.tail - plantingDepth;
    Length highest = std::max(joint, Length{});
    for (std::size_t i = stem.tiers.size(); i-- > 0;) {
        if (i + 1 < stem.tiers.size())
            joint += spacingBelow(stem, stem.tiers[i]);
        highest = std::max(highest, joint + reach[i]);
    }
    return highest;
}

} // namespace stemwright

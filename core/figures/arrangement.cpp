#include "core/figures/arrangement.h"

#include <array>
#include <cmath>
#include <numeric>

namespace stemwright {

bool facesLikeAbove(const StemForm& form, const Tier& above, const Tier& tier) {
    if (form.arrangement == Arrangement::onePlane)
        return false;
    const Angle period = turnPeriod(form);
    const Angle between = apart(above.turn, tier.turn, period);
    if (form.arrangement == Arrangement::spiral)
        return between <= facingTolerance;
    return between < apart(turnStep(form), degrees(0), period) / 2;
}

Angle planeOfStem(const Stem& stem) {
    std::array<int, 180> sharing{};
    const auto bucket = [](const Tier& tier) {
        return static_cast<std::size_t>(std::lround(inDegrees(wrapped(tier.turn, degrees(180))))) % 180;
    };
    for (const Tier& tier : stem.tiers)
        ++sharing[bucket(tier)];
    const Tier* first = nullptr;
    for (const Tier& tier : stem.tiers)
        if (!first || sharing[bucket(tier)] > sharing[bucket(*first)])
            first = &tier;
    return first ? first->turn : Angle{};
}

bool isOutOfPlane(Angle plane, const Tier& tier) {
    return apart(plane, tier.turn, degrees(180)) > facingTolerance;
}

bool isUnmatchedPair(const StemForm& form, const Tier& tier) {
    return leavesPerTier(form) == 2 && tier.slots.size() == 2 && tier.slots[0].filled() &&
           tier.slots[1].filled() && tier.slots[0].leaf != tier.slots[1].leaf;
}

void InversionCounter::begin(int places) {
    above_.assign(static_cast<std::size_t>(places), 0);
    tier_.clear();
    inversions_ = 0;
}

void InversionCounter::endTier() {
    for (const int place : tier_)
        inversions_ += std::accumulate(above_.begin() + place + 1, above_.end(), 0);
    for (const int place : tier_)
        ++above_[static_cast<std::size_t>(place)];
    tier_.clear();
}

} // namespace stemwright

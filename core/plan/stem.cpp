#include "core/plan/stem.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {
constexpr Angle wholeTurn = degrees(360);
/// 180° (3 − √5).
constexpr Angle goldenAngle = degrees(137.50776405003785);
} // namespace

int leavesPerTier(const StemForm& form) {
    switch (form.arrangement) {
    case Arrangement::decussate:
    case Arrangement::onePlane:
        return 2;
    case Arrangement::alternate:
    case Arrangement::spiral:
        return 1;
    case Arrangement::whorled:
        return std::max(form.whorl, 3);
    }
    return 1;
}

Angle turnStep(const StemForm& form) {
    switch (form.arrangement) {
    case Arrangement::decussate:
        return degrees(90);
    case Arrangement::onePlane:
        return degrees(0);
    case Arrangement::alternate:
        return degrees(180);
    case Arrangement::whorled:
        return degrees(180.0 / leavesPerTier(form));
    case Arrangement::spiral:
        return goldenAngle;
    }
    return degrees(0);
}

Angle turnPeriod(const StemForm& form) {
    return wholeTurn / leavesPerTier(form);
}

Plane planeOf(const Tier& tier) {
    return apart(tier.turn, degrees(0), degrees(180)) <= degrees(45) ? Plane::sideToSide : Plane::frontToBack;
}

Angle slotTurn(const Tier& tier, std::size_t slot) {
    const auto count = static_cast<double>(std::max<std::size_t>(tier.slots.size(), 1));
    return wrapped(tier.turn + wholeTurn * (static_cast<double>(slot) / count), wholeTurn);
}

Side sideOf(Angle turn) {
    const auto quarter = static_cast<int>(std::lround(inDegrees(wrapped(turn, wholeTurn)) / 90.0)) % 4;
    return static_cast<Side>(quarter);
}

Tier newTier(const StemForm& form, const Tier* above, KindId kind) {
    Tier tier;
    tier.turn = above ? wrapped(above->turn + turnStep(form), wholeTurn) : degrees(0);
    tier.slots.resize(static_cast<std::size_t>(leavesPerTier(form)));
    for (Slot& slot : tier.slots)
        slot.leaf.kind = kind;
    return tier;
}

} // namespace stemwright

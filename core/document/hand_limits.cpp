#include "core/document/hand_limits.h"

#include <algorithm>
#include <string>

namespace stemwright::hand {

namespace {

Problem noStem(StemId id) {
    return {ProblemCode::noSuchStem, "", {std::to_string(id.value)}};
}

Problem atTier(ProblemCode code, const Stem& stem, int tier) {
    return {code, "", {stem.name, std::to_string(tier + 1)}};
}

} // namespace

int indexOf(const Plan& plan, StemId id) {
    const auto it =
        std::find_if(plan.stems.begin(), plan.stems.end(), [&](const Stem& s) { return s.id == id; });
    return static_cast<int>(it - plan.stems.begin());
}

std::optional<Problem> missing(const Plan& plan, SlotRef at) {
    const Stem* stem = find(plan, at.stem);
    if (!stem)
        return noStem(at.stem);
    if (at.tier < 0 || static_cast<std::size_t>(at.tier) >= stem->tiers.size())
        return atTier(ProblemCode::noSuchTier, *stem, at.tier);
    if (!find(plan, at))
        return Problem{ProblemCode::noSuchSlot,
                       "",
                       {stem->name, std::to_string(at.tier + 1), std::to_string(at.slot + 1)}};
    return std::nullopt;
}

std::optional<Problem> missingGap(const Plan& plan, StemId id, int index) {
    const Stem* stem = find(plan, id);
    if (!stem)
        return noStem(id);
    if (index < 0 || static_cast<std::size_t>(index) > stem->tiers.size())
        return Problem{
            ProblemCode::noSuchPlace, "", {std::to_string(index), std::to_string(stem->tiers.size())}};
    return std::nullopt;
}

std::optional<Problem> barredStem(const Plan& plan, StemId id) {
    const Stem* stem = find(plan, id);
    if (!stem)
        return noStem(id);
    if (stem->locked)
        return Problem{ProblemCode::stemLocked, "", {stem->name}};
    return std::nullopt;
}

std::optional<Problem> barred(const Plan& plan, SlotRef at) {
    if (auto problem = missing(plan, at))
        return problem;
    if (auto problem = barredStem(plan, at.stem))
        return problem;
    const Stem& stem = *find(plan, at.stem);
    if (find(plan, at)->pinned)
        return atTier(ProblemCode::slotPinned, stem, at.tier);
    return std::nullopt;
}

std::optional<Problem> barredTiers(const Plan& plan, StemId id, int first, int count) {
    if (auto problem = barredStem(plan, id))
        return problem;
    const Stem& stem = *find(plan, id);
    const int size = static_cast<int>(stem.tiers.size());
    if (first < 0 || first >= size)
        return atTier(ProblemCode::noSuchTier, stem, first);
    if (count < 1 || count > size - first)
        return atTier(ProblemCode::noSuchTier, stem, first + count - 1);
    for (int t = first; t < first + count; ++t) {
        const Tier& tier = stem.tiers[static_cast<std::size_t>(t)];
        for (const Slot& slot : tier.slots)
            if (slot.pinned)
                return atTier(ProblemCode::slotPinned, stem, t);
    }
    return std::nullopt;
}

std::optional<Problem> barredGap(const Plan& plan, StemId id, int index) {
    if (auto problem = missingGap(plan, id, index))
        return problem;
    return barredStem(plan, id);
}

} // namespace stemwright::hand

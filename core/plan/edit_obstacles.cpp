#include "core/plan/edit_obstacles.h"

#include <algorithm>
#include <concepts>
#include <utility>

namespace stemwright {

namespace {

std::string text(std::integral auto v) {
    return std::to_string(v);
}

bool inList(int index, std::size_t size) {
    return index >= 0 && static_cast<std::size_t>(index) < size;
}

} // namespace

const std::string& nameOf(const Plan& plan, KindId id) {
    static const std::string none;
    const Kind* kind = find(plan, id);
    return kind ? kind->name : none;
}
const std::string& nameOf(const Plan& plan, MixId id) {
    static const std::string none;
    const Mix* mix = find(plan, id);
    return mix ? mix->name : none;
}

Problem noStem(StemId id) {
    return {ProblemCode::noSuchStem, "", {text(id.value)}};
}
Problem noPlace(int index, std::size_t most) {
    return {ProblemCode::noSuchPlace, "", {text(index), text(most)}};
}

std::optional<Problem> missingTier(const Plan& plan, StemId stem, int tier) {
    const Stem* at = find(plan, stem);
    if (!at)
        return noStem(stem);
    if (!inList(tier, at->tiers.size()))
        return Problem{ProblemCode::noSuchTier, "", {at->name, text(tier + 1)}};
    return std::nullopt;
}

std::optional<Problem> missingSlot(const Plan& plan, SlotRef at) {
    if (auto problem = missingTier(plan, at.stem, at.tier))
        return problem;
    if (!find(plan, at))
        return Problem{
            ProblemCode::noSuchSlot, "", {find(plan, at.stem)->name, text(at.tier + 1), text(at.slot + 1)}};
    return std::nullopt;
}

std::optional<Problem> unfit(const Plan& plan, Leaf leaf, int wanted) {
    if (leaf.kind && !find(plan, leaf.kind))
        return Problem{ProblemCode::noSuchId, "", {"kind", text(leaf.kind.value)}};
    if (!leaf.mix)
        return std::nullopt;
    if (!leaf.kind)
        return Problem{ProblemCode::missingKey, "", {"kind"}};
    if (!find(plan, leaf.mix))
        return Problem{ProblemCode::noSuchId, "", {"mix", text(leaf.mix.value)}};
    if (!stockLine(*find(plan, leaf.kind), leaf.mix))
        return Problem{ProblemCode::mixNotOfKind, "", {nameOf(plan, leaf.kind), nameOf(plan, leaf.mix)}};
    if (inTray(plan, leaf) < wanted)
        return Problem{ProblemCode::trayEmpty, "", {nameOf(plan, leaf.kind), nameOf(plan, leaf.mix)}};
    return std::nullopt;
}

std::optional<Problem> unfit(const Plan& plan, const std::vector<Tier>& tiers) {
    std::vector<std::pair<Leaf, int>> wanted;
    for (const Tier& tier : tiers)
        for (const Slot& slot : tier.slots) {
            const auto it = std::find_if(wanted.begin(), wanted.end(),
                                         [&](const auto& entry) { return entry.first == slot.leaf; });
            if (it == wanted.end())
                wanted.emplace_back(slot.leaf, 1);
            else
                ++it->second;
        }
    for (const auto& [leaf, count] : wanted)
        if (auto problem = unfit(plan, leaf, count))
            return problem;
    return std::nullopt;
}

std::optional<Problem> inUse(const Plan& plan, const Colour& colour) {
    for (const Mix& mix : plan.mixes)
        for (const BeadShare& share : mix.colours)
            if (share.colour == colour.id)
                return Problem{ProblemCode::stillUsed, "", {colour.name, mix.name}};
    return std::nullopt;
}
std::optional<Problem> inUse(const Plan& plan, const Mix& mix) {
    for (const Kind& kind : plan.kinds)
        if (stockLine(kind, mix.id))
            return Problem{ProblemCode::stillUsed, "", {mix.name, kind.name}};
    return std::nullopt;
}
std::optional<Problem> inUse(const Plan& plan, const Kind& kind) {
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            for (const Slot& slot : tier.slots)
                if (slot.leaf.kind == kind.id)
                    return Problem{ProblemCode::stillUsed, "", {kind.name, stem.name}};
    return std::nullopt;
}

} // namespace stemwright

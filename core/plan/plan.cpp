#include "core/plan/plan.h"

#include <algorithm>
#include <unordered_map>

namespace stemwright {

namespace {

template <class Part, class AnyId> Part* findIn(std::vector<Part>& parts, AnyId id) {
    const auto it = std::find_if(parts.begin(), parts.end(), [&](const Part& p) { return p.id == id; });
    return it == parts.end() ? nullptr : &*it;
}

template <class Part, class AnyId> const Part* findIn(const std::vector<Part>& parts, AnyId id) {
    const auto it = std::find_if(parts.begin(), parts.end(), [&](const Part& p) { return p.id == id; });
    return it == parts.end() ? nullptr : &*it;
}

template <class AnyId, class Part> AnyId freeIdIn(const std::vector<Part>& parts) {
    std::uint32_t most = 0;
    for (const Part& part : parts)
        most = std::max(most, part.id.value);
    return AnyId{most + 1};
}

} // namespace

const Colour* find(const Plan& plan, ColourId id) {
    return findIn(plan.colours, id);
}
const Mix* find(const Plan& plan, MixId id) {
    return findIn(plan.mixes, id);
}
const Kind* find(const Plan& plan, KindId id) {
    return findIn(plan.kinds, id);
}
const Stem* find(const Plan& plan, StemId id) {
    return findIn(plan.stems, id);
}
Stem* find(Plan& plan, StemId id) {
    return findIn(plan.stems, id);
}
Kind* find(Plan& plan, KindId id) {
    return findIn(plan.kinds, id);
}

const StockLine* stockLine(const Kind& kind, MixId mix) {
    const auto it = std::find_if(kind.stock.begin(), kind.stock.end(),
                                 [&](const StockLine& line) { return line.mix == mix; });
    return it == kind.stock.end() ? nullptr : &*it;
}

const Slot* find(const Plan& plan, SlotRef at) {
    const Stem* stem = find(plan, at.stem);
    if (!stem || at.tier < 0 || static_cast<std::size_t>(at.tier) >= stem->tiers.size())
        return nullptr;
    const Tier& tier = stem->tiers[static_cast<std::size_t>(at.tier)];
    if (at.slot < 0 || static_cast<std::size_t>(at.slot) >= tier.slots.size())
        return nullptr;
    return &tier.slots[static_cast<std::size_t>(at.slot)];
}

Slot* find(Plan& plan, SlotRef at) {
    return const_cast<Slot*>(find(static_cast<const Plan&>(plan), at));
}

int placed(const Plan& plan, Leaf leaf) {
    int count = 0;
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            for (const Slot& slot : tier.slots)
                count += slot.filled() && slot.leaf == leaf;
    return count;
}

int inTray(const Plan& plan, Leaf leaf) {
    const Kind* kind = find(plan, leaf.kind);
    const StockLine* line = kind ? stockLine(*kind, leaf.mix) : nullptr;
    return line ? line->total() - placed(plan, leaf) : 0;
}

std::vector<TrayLine> tray(const Plan& plan) {
    std::vector<TrayLine> lines;
    const auto key = [](Leaf leaf) { return (std::uint64_t{leaf.kind.value} << 32) | leaf.mix.value; };
    std::unordered_map<std::uint64_t, std::size_t> lineOf;
    for (const Kind& kind : plan.kinds)
        for (const StockLine& line : kind.stock) {
            const Leaf leaf{kind.id, line.mix};
            lineOf.emplace(key(leaf), lines.size());
            lines.push_back({leaf, line.total(), 0});
        }
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            for (const Slot& slot : tier.slots)
                if (slot.filled())
                    if (const auto it = lineOf.find(key(slot.leaf)); it != lineOf.end())
                        ++lines[it->second].placed;
    return lines;
}

ColourId freeColourId(const Plan& plan) {
    return freeIdIn<ColourId>(plan.colours);
}
MixId freeMixId(const Plan& plan) {
    return freeIdIn<MixId>(plan.mixes);
}
KindId freeKindId(const Plan& plan) {
    return freeIdIn<KindId>(plan.kinds);
}
StemId freeStemId(const Plan& plan) {
    return freeIdIn<StemId>(plan.stems);
}

} // namespace stemwright

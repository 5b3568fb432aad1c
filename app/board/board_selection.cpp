#include "app/board/board_selection.h"

#include <algorithm>
#include <unordered_map>

namespace stemwright {

bool BoardSelection::contains(SlotRef at) const {
    return std::binary_search(slots_.begin(), slots_.end(), at);
}

std::vector<SlotRef> BoardSelection::inOrder(const Plan& plan) const {
    std::unordered_map<StemId, std::size_t> order;
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        order.emplace(plan.stems[i].id, i);
    std::vector<SlotRef> slots = slots_;
    std::stable_sort(slots.begin(), slots.end(),
                     [&](SlotRef a, SlotRef b) { return order[a.stem] < order[b.stem]; });
    return slots;
}

std::vector<SlotRef> BoardSelection::filled(const Plan& plan) const {
    std::vector<SlotRef> slots = inOrder(plan);
    std::erase_if(slots, [&](SlotRef at) { return !find(plan, at) || !find(plan, at)->filled(); });
    return slots;
}

void BoardSelection::set(std::vector<SlotRef> slots) {
    slots_ = std::move(slots);
    std::sort(slots_.begin(), slots_.end());
    slots_.erase(std::unique(slots_.begin(), slots_.end()), slots_.end());
}

void BoardSelection::add(const std::vector<SlotRef>& slots) {
    std::vector<SlotRef> all = slots_;
    all.insert(all.end(), slots.begin(), slots.end());
    set(std::move(all));
}

void BoardSelection::toggle(SlotRef at) {
    const auto it = std::lower_bound(slots_.begin(), slots_.end(), at);
    if (it != slots_.end() && *it == at)
        slots_.erase(it);
    else
        slots_.insert(it, at);
}

void BoardSelection::keepExisting(const Plan& plan) {
    std::erase_if(slots_, [&](SlotRef at) { return !find(plan, at); });
}

std::vector<SlotRef> BoardSelection::tier(const Plan& plan, StemId id, int tier) {
    std::vector<SlotRef> slots;
    const Stem* stem = find(plan, id);
    if (!stem || tier < 0 || static_cast<std::size_t>(tier) >= stem->tiers.size())
        return slots;
    for (std::size_t s = 0; s < stem->tiers[static_cast<std::size_t>(tier)].slots.size(); ++s)
        slots.push_back({id, tier, static_cast<int>(s)});
    return slots;
}

std::vector<SlotRef> BoardSelection::stem(const Plan& plan, StemId id) {
    std::vector<SlotRef> slots;
    if (const Stem* stem = find(plan, id))
        for (int t = 0; t < static_cast<int>(stem->tiers.size()); ++t) {
            const std::vector<SlotRef> more = tier(plan, id, t);
            slots.insert(slots.end(), more.begin(), more.end());
        }
    return slots;
}

std::vector<SlotRef> BoardSelection::range(const Plan& plan, SlotRef from, SlotRef to) {
    std::vector<SlotRef> slots;
    const auto [upper, lower] = std::minmax(from.tier, to.tier);
    bool inside = false;
    for (const Stem& stem : plan.stems) {
        const bool edge = stem.id == from.stem || stem.id == to.stem;
        if (!inside && !edge)
            continue;
        for (int t = upper; t <= lower; ++t) {
            const std::vector<SlotRef> more = tier(plan, stem.id, t);
            slots.insert(slots.end(), more.begin(), more.end());
        }
        if (edge && (inside || from.stem == to.stem))
            break;
        inside = true;
    }
    return slots;
}

} // namespace stemwright

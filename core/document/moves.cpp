#include "core/document/moves.h"

#include "core/document/hand_limits.h"
#include "core/document/stem_draft.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace stemwright {

using namespace hand;

namespace {

Leaf waiting(Leaf leaf) {
    return {leaf.kind, MixId{}};
}

Problem alike(const Plan& plan, Leaf leaf) {
    const Kind* kind = find(plan, leaf.kind);
    const Mix* mix = find(plan, leaf.mix);
    return {ProblemCode::leavesAlike, "", {kind ? kind->name : "", mix ? mix->name : ""}};
}

Problem noRoom(const Stem& stem) {
    return {ProblemCode::noRoom, "", {stem.name}};
}

/// Brings the content of places[source[i]] to places[i], by swaps. Whether anything came of it.
bool permute(StemDraft& draft, const Plan& plan, const std::vector<SlotRef>& places,
             const std::vector<std::size_t>& source) {
    std::vector<std::size_t> holds(places.size()); // which content is at a place by now
    std::iota(holds.begin(), holds.end(), std::size_t{0});
    const auto content = [&](std::size_t i) { return find(plan, places[i])->leaf; };
    bool changed = false;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto at =
            static_cast<std::size_t>(std::find(holds.begin(), holds.end(), source[i]) - holds.begin());
        if (at == i)
            continue;
        if (!(content(holds[i]) == content(holds[at]))) {
            draft.swap(places[i], places[at]);
            changed = true;
        }
        std::swap(holds[i], holds[at]);
    }
    return changed;
}

class Putter {
public:
    Putter(const Plan& plan, const Target& target) : plan_(plan), target_(target), draft_(plan) {}

    Result<Put> operator()(const HeldLeaves& held) {
        if (const auto* slot = std::get_if<OntoSlot>(&target_))
            return leavesOntoSlots(held, slot->at);
        if (const auto* gap = std::get_if<IntoGap>(&target_)) {
            if (const auto tiers = wholeTiers(held))
                return tiersIntoGap(*tiers, *gap);
            return leavesIntoGap(held, *gap);
        }
        auto edit = emptySlots(plan_, held.from);
        if (!edit)
            return edit.problem();
        return Put{std::move(edit).value(), {}};
    }

    Result<Put> operator()(const HeldTiers& held) {
        if (const auto* slot = std::get_if<OntoSlot>(&target_))
            return tiersOntoTiers(held, slot->at);
        if (const auto* gap = std::get_if<IntoGap>(&target_))
            return tiersIntoGap(held, *gap);
        auto edit = removeTiers(plan_, held.stem, held.first, held.count);
        if (!edit)
            return edit.problem();
        return Put{std::move(edit).value(), {}};
    }

    Result<Put> operator()(const HeldFromTray& held) {
        if (const auto* slot = std::get_if<OntoSlot>(&target_)) {
            if (auto problem = barred(plan_, slot->at))
                return *problem;
            if (find(plan_, slot->at)->leaf == held.leaf)
                return alike(plan_, held.leaf);
            return Put{FillSlot{slot->at, held.leaf}, {slot->at}};
        }
        if (const auto* gap = std::get_if<IntoGap>(&target_)) {
            if (auto problem = barredGap(plan_, gap->stem, gap->index))
                return *problem;
            openFor(*gap, {{0, held.leaf}});
            draft_.turnAgain();
            return Put{std::move(draft_).asOne(Deed::openTier), {{gap->stem, gap->index, 0}}};
        }
        return Problem{ProblemCode::samePlace, "", {}};
    }

private:
    /// A new tier at the gap that holds these leaves, each in its slot or the next that is free.
    std::vector<int> openFor(IntoGap gap, const std::vector<std::pair<int, Leaf>>& leaves) {
        const Stem& stem = draft_.stem(gap.stem);
        const Tier* above = gap.index > 0 ? &stem.tiers[static_cast<std::size_t>(gap.index - 1)] : nullptr;
        Tier tier = newTier(stem, above, leaves.front().second.kind);
        std::vector<int> taken;
        for (const auto& [wanted, leaf] : leaves) {
            auto at = std::min(static_cast<std::size_t>(wanted), tier.slots.size() - 1);
            while (tier.slots[at].filled())
                at = (at + 1) % tier.slots.size();
            tier.slots[at].leaf = leaf;
            taken.push_back(static_cast<int>(at));
        }
        draft_.open(gap.stem, gap.index, std::move(tier));
        return taken;
    }

    Result<Put> leavesOntoSlots(const HeldLeaves& held, SlotRef onto) {
        const SlotRef grabbed = held.from[held.grabbed];
        if (onto == grabbed)
            return Problem{ProblemCode::samePlace, "", {}};
        std::vector<SlotRef> goals;
        for (const SlotRef& from : held.from) {
            const int stemIndex =
                indexOf(plan_, from.stem) + indexOf(plan_, onto.stem) - indexOf(plan_, grabbed.stem);
            if (stemIndex < 0 || stemIndex >= static_cast<int>(plan_.stems.size()))
                return noRoom(*find(plan_, onto.stem));
            const Stem& stem = plan_.stems[static_cast<std::size_t>(stemIndex)];
            const int tier = from.tier + onto.tier - grabbed.tier;
            if (tier < 0 || static_cast<std::size_t>(tier) >= stem.tiers.size())
                return noRoom(stem);
            const int slots = static_cast<int>(stem.tiers[static_cast<std::size_t>(tier)].slots.size());
            int slot = from.slot + onto.slot - grabbed.slot;
            if (slots > 0)
                slot = ((slot % slots) + slots) % slots;
            const SlotRef goal{stem.id, tier, slot};
            if (auto problem = barred(plan_, goal))
                return *problem;
            if (std::find(goals.begin(), goals.end(), goal) != goals.end())
                return noRoom(stem);
            goals.push_back(goal);
        }
        // What the goals held goes, in order, to the places that the held leaves leave behind.
        std::vector<SlotRef> places = goals;
        for (const SlotRef& from : held.from)
            if (std::find(goals.begin(), goals.end(), from) == goals.end())
                places.push_back(from);
        const auto placeOf = [&](SlotRef at) {
            return static_cast<std::size_t>(std::find(places.begin(), places.end(), at) - places.begin());
        };
        std::vector<std::size_t> source;
        for (const SlotRef& from : held.from)
            source.push_back(placeOf(from));
        bool displaced = false;
        for (const SlotRef& goal : goals)
            if (std::find(held.from.begin(), held.from.end(), goal) == held.from.end()) {
                source.push_back(placeOf(goal));
                displaced = displaced || find(plan_, goal)->filled();
            }
        if (!permute(draft_, plan_, places, source))
            return alike(plan_, find(plan_, grabbed)->leaf);
        for (std::size_t i = 0; i < places.size(); ++i) {
            const Slot& now = draft_.stem(places[i].stem)
                                  .tiers[static_cast<std::size_t>(places[i].tier)]
                                  .slots[static_cast<std::size_t>(places[i].slot)];
            const KindId kind = find(plan_, places[i])->leaf.kind;
            if (!now.filled() && kind && now.leaf.kind != kind)
                draft_.fill(places[i], {kind, MixId{}});
        }
        const Deed deed = displaced              ? Deed::swapLeaves
                          : held.from.size() > 1 ? Deed::moveLeaves
                                                 : Deed::moveLeaf;
        return Put{std::move(draft_).asOne(deed), goals};
    }

    /// The held leaves as a run of tiers, where they are all the slots of one.
    std::optional<HeldTiers> wholeTiers(const HeldLeaves& held) const {
        std::map<int, std::size_t> perTier;
        for (const SlotRef& at : held.from) {
            if (at.stem != held.from.front().stem)
                return std::nullopt;
            ++perTier[at.tier];
        }
        const Stem& stem = *find(plan_, held.from.front().stem);
        const int first = perTier.begin()->first;
        const int count = static_cast<int>(perTier.size());
        if (perTier.rbegin()->first != first + count - 1)
            return std::nullopt;
        for (const auto& [tier, slots] : perTier)
            if (slots != stem.tiers[static_cast<std::size_t>(tier)].slots.size())
                return std::nullopt;
        return HeldTiers{stem.id, first, count, held.from[held.grabbed].tier - first};
    }

    Result<Put> leavesIntoGap(const HeldLeaves& held, IntoGap gap) {
        if (auto problem = barredGap(plan_, gap.stem, gap.index))
            return *problem;
        std::map<std::pair<int, int>, std::vector<std::size_t>>
            groups; // by stem and tier, in the board's order
        for (std::size_t i = 0; i < held.from.size(); ++i)
            groups[{indexOf(plan_, held.from[i].stem), held.from[i].tier}].push_back(i);
        for (const SlotRef& from : held.from)
            draft_.fill(from, waiting(find(plan_, from)->leaf));
        std::vector<SlotRef> landed(held.from.size());
        const auto room = static_cast<std::size_t>(leavesPerTier(*find(plan_, gap.stem)));
        for (const auto& [where, members] : groups)
            for (std::size_t begin = 0; begin < members.size(); begin += room) {
                std::vector<std::pair<int, Leaf>> leaves;
                const std::size_t end = std::min(members.size(), begin + room);
                for (std::size_t m = begin; m < end; ++m)
                    leaves.emplace_back(held.from[members[m]].slot, find(plan_, held.from[members[m]])->leaf);
                const std::vector<int> slots = openFor(gap, leaves);
                for (std::size_t m = begin; m < end; ++m)
                    landed[members[m]] = {gap.stem, gap.index, slots[m - begin]};
                ++gap.index;
            }
        draft_.turnAgain();
        return Put{std::move(draft_).asOne(held.from.size() > 1 ? Deed::moveLeaves : Deed::moveLeaf), landed};
    }

    std::vector<SlotRef> slotsOf(StemId id, int first, int count) {
        std::vector<SlotRef> slots;
        for (int t = first; t < first + count; ++t)
            for (std::size_t s = 0; s < draft_.stem(id).tiers[static_cast<std::size_t>(t)].slots.size(); ++s)
                slots.push_back({id, t, static_cast<int>(s)});
        return slots;
    }

    Result<Put> tiersOntoTiers(const HeldTiers& held, SlotRef onto) {
        const Stem& to = *find(plan_, onto.stem);
        const int first = onto.tier - held.grabbed;
        if (first < 0 || static_cast<std::size_t>(first + held.count) > to.tiers.size())
            return noRoom(to);
        const bool sameStem = held.stem == onto.stem;
        if (sameStem && first == held.first)
            return Problem{ProblemCode::samePlace, "", {}};
        if (sameStem && std::abs(first - held.first) < held.count)
            // It lies partly on itself, so it can only be shifted.
            return tiersIntoGap(held, {held.stem, first > held.first ? first + held.count : first});
        if (auto problem = barredTiers(plan_, onto.stem, first, held.count))
            return *problem;
        const Stem& from = *find(plan_, held.stem);
        bool fits = true;
        for (int k = 0; k < held.count; ++k)
            fits = fits && from.tiers[static_cast<std::size_t>(held.first + k)].slots.size() ==
                               to.tiers[static_cast<std::size_t>(first + k)].slots.size();
        if (fits) {
            const std::vector<SlotRef> a = slotsOf(held.stem, held.first, held.count);
            const std::vector<SlotRef> b = slotsOf(onto.stem, first, held.count);
            bool changed = false;
            for (std::size_t i = 0; i < a.size(); ++i)
                if (!(find(plan_, a[i])->leaf == find(plan_, b[i])->leaf)) {
                    draft_.swap(a[i], b[i]);
                    changed = true;
                }
            if (!changed)
                return a.empty() ? Problem{ProblemCode::samePlace, "", {}}
                                 : alike(plan_, find(plan_, a[0])->leaf);
            return Put{std::move(draft_).asOne(Deed::moveTiers), b};
        }
        if (sameStem) {
            const int upper = std::min(held.first, first);
            const int lower = std::max(held.first, first);
            draft_.move(held.stem, lower, held.count, held.stem, upper);
            draft_.move(held.stem, upper + held.count, held.count, held.stem, lower);
        } else {
            draft_.move(held.stem, held.first, held.count, onto.stem, first);
            draft_.move(onto.stem, first + held.count, held.count, held.stem, held.first);
        }
        draft_.turnAgain();
        std::vector<SlotRef> landed = slotsOf(onto.stem, first, held.count);
        return Put{std::move(draft_).asOne(Deed::moveTiers), std::move(landed)};
    }

    /// The tiers as another stem's arrangement wants them; the same ones where they need not change.
    static std::vector<Tier> fitted(const StemForm& from, const StemForm& to, const std::vector<Tier>& tiers) {
        const auto had = static_cast<std::size_t>(leavesPerTier(from));
        const auto wanted = static_cast<std::size_t>(leavesPerTier(to));
        std::vector<Tier> all;
        for (const Tier& tier : tiers) {
            if (tier.slots.size() != had || had == wanted) {
                all.push_back(tier);
                continue;
            }
            for (std::size_t begin = 0; begin < had; begin += wanted) {
                Tier part = tier;
                part.slots.assign(tier.slots.begin() + static_cast<std::ptrdiff_t>(begin),
                                  tier.slots.begin() +
                                      static_cast<std::ptrdiff_t>(std::min(had, begin + wanted)));
                while (part.slots.size() < wanted) {
                    Slot slot;
                    slot.leaf.kind = part.slots.front().leaf.kind;
                    part.slots.push_back(std::move(slot));
                }
                if (begin > 0)
                    part.spacing.reset();
                all.push_back(std::move(part));
            }
        }
        return all;
    }

    Result<Put> tiersIntoGap(const HeldTiers& held, IntoGap gap) {
        const bool sameStem = held.stem == gap.stem;
        if (sameStem && gap.index >= held.first && gap.index <= held.first + held.count)
            return Problem{ProblemCode::samePlace, "", {}};
        if (auto problem = barredGap(plan_, gap.stem, gap.index))
            return *problem;
        if (auto problem = barredTiers(plan_, held.stem, held.first, held.count))
            return *problem;
        const Stem& from = *find(plan_, held.stem);
        const int index = sameStem && gap.index > held.first ? gap.index - held.count : gap.index;
        const std::vector<Tier> tiers(from.tiers.begin() + held.first,
                                      from.tiers.begin() + held.first + held.count);
        const std::vector<Tier> fit = fitted(from, *find(plan_, gap.stem), tiers);
        if (fit == tiers) {
            draft_.move(held.stem, held.first, held.count, gap.stem, index);
        } else {
            for (int k = 0; k < held.count; ++k)
                draft_.close(held.stem, held.first);
            for (std::size_t k = 0; k < fit.size(); ++k)
                draft_.open(gap.stem, index + static_cast<int>(k), fit[k]);
        }
        draft_.turnAgain();
        std::vector<SlotRef> landed = slotsOf(gap.stem, index, static_cast<int>(fit.size()));
        return Put{std::move(draft_).asOne(Deed::moveTiers), std::move(landed)};
    }

    const Plan& plan_;
    const Target& target_;
    StemDraft draft_;
};

std::optional<Problem> noTarget(const Plan& plan, const Target& target) {
    if (const auto* slot = std::get_if<OntoSlot>(&target))
        return missing(plan, slot->at);
    if (const auto* gap = std::get_if<IntoGap>(&target))
        return missingGap(plan, gap->stem, gap->index);
    return std::nullopt;
}

} // namespace

std::optional<Problem> cannotHold(const Plan& plan, const Held& held) {
    if (const auto* leaves = std::get_if<HeldLeaves>(&held)) {
        if (leaves->from.empty() || leaves->grabbed >= leaves->from.size())
            return Problem{ProblemCode::noSuchSlot, "", {"", "0", "0"}};
        for (const SlotRef& at : leaves->from) {
            if (auto problem = barred(plan, at))
                return problem;
            if (!find(plan, at)->filled())
                return Problem{
                    ProblemCode::slotEmpty, "", {find(plan, at.stem)->name, std::to_string(at.tier + 1)}};
        }
        return std::nullopt;
    }
    if (const auto* tiers = std::get_if<HeldTiers>(&held))
        return barredTiers(plan, tiers->stem, tiers->first, tiers->count);
    const Leaf leaf = std::get<HeldFromTray>(held).leaf;
    const Kind* kind = find(plan, leaf.kind);
    const Mix* mix = find(plan, leaf.mix);
    if (!kind || !mix)
        return Problem{ProblemCode::noSuchId,
                       "",
                       {kind ? "mix" : "kind", std::to_string(kind ? leaf.mix.value : leaf.kind.value)}};
    if (inTray(plan, leaf) < 1)
        return Problem{ProblemCode::trayEmpty, "", {kind->name, mix->name}};
    return std::nullopt;
}

Result<Put> put(const Plan& plan, const Held& held, const Target& target) {
    if (auto problem = cannotHold(plan, held))
        return *problem;
    if (auto problem = noTarget(plan, target))
        return *problem;
    return std::visit(Putter(plan, target), held);
}

} // namespace stemwright

#include "core/document/stem_draft.h"

#include "core/document/moves.h"

#include <algorithm>
#include <iterator>

namespace stemwright {

namespace {

constexpr Angle wholeTurn = degrees(360);

/// Whether `tier` stands as it should below `above`.
bool follows(const StemForm& form, const Tier& above, const Tier& tier) {
    return apart(tier.turn, above.turn + turnStep(form), turnPeriod(form)) < degrees(1);
}

} // namespace

bool alternates(const StemForm& form, const std::vector<Tier>& tiers) {
    for (std::size_t i = 1; i < tiers.size(); ++i)
        if (!follows(form, tiers[i - 1], tiers[i]))
            return false;
    return true;
}

StemDraft::Copy& StemDraft::copy(StemId id) {
    const auto it =
        std::find_if(copies_.begin(), copies_.end(), [&](const Copy& c) { return c.stem.id == id; });
    if (it != copies_.end())
        return *it;
    const Stem& stem = *find(plan_, id);
    copies_.push_back({stem, alternates(stem, stem.tiers)});
    return copies_.back();
}

const Stem& StemDraft::stem(StemId id) {
    return copy(id).stem;
}

Slot& StemDraft::slot(SlotRef at) {
    return copy(at.stem).stem.tiers[static_cast<std::size_t>(at.tier)].slots[static_cast<std::size_t>(at.slot)];
}

void StemDraft::open(StemId id, int index, Tier tier) {
    std::vector<Tier>& tiers = copy(id).stem.tiers;
    tiers.insert(tiers.begin() + index, tier);
    edits_.emplace_back(OpenTier{id, index, std::move(tier)});
}

void StemDraft::close(StemId id, int index) {
    std::vector<Tier>& tiers = copy(id).stem.tiers;
    tiers.erase(tiers.begin() + index);
    edits_.emplace_back(CloseTier{id, index});
}

void StemDraft::move(StemId from, int index, int count, StemId to, int toIndex) {
    std::vector<Tier>& source = copy(from).stem.tiers;
    const std::vector<Tier> moved(source.begin() + index, source.begin() + index + count);
    source.erase(source.begin() + index, source.begin() + index + count);
    std::vector<Tier>& goal = copy(to).stem.tiers;
    goal.insert(goal.begin() + toIndex, moved.begin(), moved.end());
    edits_.emplace_back(MoveTiers{from, index, count, to, toIndex});
}

void StemDraft::turn(StemId id, int index, Angle turn) {
    copy(id).stem.tiers[static_cast<std::size_t>(index)].turn = turn;
    edits_.emplace_back(TurnTier{id, index, turn});
}

void StemDraft::swap(SlotRef a, SlotRef b) {
    copy(a.stem), copy(b.stem); // both are there before a reference to either is held
    std::swap(slot(a).leaf, slot(b).leaf);
    edits_.emplace_back(SwapSlots{a, b});
}

void StemDraft::fill(SlotRef at, Leaf leaf) {
    slot(at).leaf = leaf;
    edits_.emplace_back(FillSlot{at, leaf});
}

void StemDraft::turnAgain() {
    for (std::size_t c = 0; c < copies_.size(); ++c) {
        if (!copies_[c].alternated)
            continue;
        const StemId id = copies_[c].stem.id;
        const std::vector<Tier>& tiers = copies_[c].stem.tiers;
        const std::vector<Tier>& before = find(plan_, id)->tiers;
        const StemForm& form = copies_[c].stem;
        // What stands below a change at the very tip can stay: then the new tiers are turned upward from it.
        std::size_t same = 0;
        while (same < tiers.size() && same < before.size() &&
               tiers[tiers.size() - 1 - same] == before[before.size() - 1 - same])
            ++same;
        if (same > 0 && same < tiers.size() && same == before.size())
            for (std::size_t i = tiers.size() - same; i-- > 0;)
                if (!follows(form, tiers[i], tiers[i + 1]))
                    turn(id, static_cast<int>(i), wrapped(tiers[i + 1].turn - turnStep(form), wholeTurn));
        for (std::size_t i = 1; i < tiers.size(); ++i)
            if (!follows(form, tiers[i - 1], tiers[i]))
                turn(id, static_cast<int>(i), wrapped(tiers[i - 1].turn + turnStep(form), wholeTurn));
    }
}

Edit StemDraft::asOne(Deed deed) && {
    if (edits_.size() == 1 && std::holds_alternative<SwapSlots>(edits_.front().what))
        return std::move(edits_.front());
    return Batch{deed, std::move(edits_)};
}

} // namespace stemwright

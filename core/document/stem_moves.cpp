#include "core/document/hand_limits.h"
#include "core/document/moves.h"
#include "core/document/stem_draft.h"
#include "core/plan/limits.h"

#include <algorithm>

namespace stemwright {

using namespace hand;

namespace {

constexpr Angle wholeTurn = degrees(360);
constexpr Angle quarterTurn = degrees(90);

/// The kind that a new tier at the gap waits for: its neighbours', or the plan's first.
KindId kindAround(const Plan& plan, const Stem& stem, int index) {
    const auto kindOf = [&](int tier) {
        if (tier >= 0 && static_cast<std::size_t>(tier) < stem.tiers.size())
            for (const Slot& slot : stem.tiers[static_cast<std::size_t>(tier)].slots)
                if (slot.leaf.kind)
                    return slot.leaf.kind;
        return KindId{};
    };
    if (const KindId above = kindOf(index - 1))
        return above;
    if (const KindId below = kindOf(index))
        return below;
    return plan.kinds.empty() ? KindId{} : plan.kinds.front().id;
}

} // namespace

Result<Edit> turnTier(const Plan& plan, StemId id, int tier) {
    if (auto problem = barredStem(plan, id))
        return *problem;
    if (auto problem = missing(plan, {id, tier, 0}); problem && problem->code == ProblemCode::noSuchTier)
        return *problem;
    const Stem& stem = *find(plan, id);
    const Tier& at = stem.tiers[static_cast<std::size_t>(tier)];
    const Angle step = at.slots.size() == 2 || turnStep(stem) == degrees(0) ? quarterTurn : turnStep(stem);
    return Edit(TurnTier{id, tier, wrapped(at.turn + step, wholeTurn)});
}

Result<Edit> pinSlots(const Plan& plan, const std::vector<SlotRef>& slots, bool pinned) {
    Batch batch{Deed::pinSlots, {}};
    for (const SlotRef& at : slots) {
        if (auto problem = missing(plan, at))
            return *problem;
        if (find(plan, at)->pinned != pinned)
            batch.edits.emplace_back(PinSlot{at, pinned});
    }
    return Edit(std::move(batch));
}

Result<Edit> emptySlots(const Plan& plan, const std::vector<SlotRef>& slots) {
    Batch batch{Deed::emptySlots, {}};
    for (const SlotRef& at : slots) {
        if (auto problem = barred(plan, at))
            return *problem;
        const Slot& slot = *find(plan, at);
        if (slot.filled())
            batch.edits.emplace_back(FillSlot{at, {slot.leaf.kind, MixId{}}});
    }
    return Edit(std::move(batch));
}

Result<Edit> openTier(const Plan& plan, StemId id, int index) {
    if (auto problem = barredGap(plan, id, index))
        return *problem;
    StemDraft draft(plan);
    const Stem& stem = *find(plan, id);
    const Tier* above = index > 0 ? &stem.tiers[static_cast<std::size_t>(index - 1)] : nullptr;
    draft.open(id, index, newTier(stem, above, kindAround(plan, stem, index)));
    draft.turnAgain();
    return std::move(draft).asOne(Deed::openTier);
}

Result<Edit> removeTiers(const Plan& plan, StemId id, int first, int count) {
    if (auto problem = barredTiers(plan, id, first, count))
        return *problem;
    StemDraft draft(plan);
    for (int k = 0; k < count; ++k)
        draft.close(id, first);
    draft.turnAgain();
    return std::move(draft).asOne(Deed::closeTiers);
}

Result<Edit> addStem(const Plan& plan, StemId after, const std::string& name) {
    Insert<Stem> insert;
    if (const Stem* model = find(plan, after)) {
        insert.index = indexOf(plan, after) + 1;
        static_cast<StemForm&>(insert.part) = *model;
        insert.part.locked = false;
        insert.part.standing.reset();
        insert.part.took.clear();
        insert.part.bench = {};
        insert.part.extra.clear();
    } else {
        insert.index = static_cast<int>(plan.stems.size());
    }
    insert.part.name = name;
    insert.part.id = freeStemId(plan);
    return Edit(std::move(insert));
}

Result<Edit> copyStem(const Plan& plan, StemId id, const std::string& name) {
    const Stem* model = find(plan, id);
    if (!model)
        return Problem{ProblemCode::noSuchStem, "", {std::to_string(id.value)}};
    Stem copy = *model;
    copy.id = freeStemId(plan);
    copy.name = name;
    copy.locked = false;
    copy.standing.reset();
    copy.took.clear();
    copy.bench = {};
    std::vector<TrayLine> lines = tray(plan);
    for (Tier& tier : copy.tiers) {
        tier.progress = {};
        for (Slot& slot : tier.slots) {
            slot.pinned = false;
            if (!slot.filled())
                continue;
            const auto line = std::find_if(lines.begin(), lines.end(),
                                           [&](const TrayLine& l) { return l.leaf == slot.leaf; });
            if (line != lines.end() && line->left() > 0)
                ++line->placed;
            else
                slot.leaf.mix = MixId{};
        }
    }
    return Edit(Batch{Deed::copyStem, {Insert<Stem>{indexOf(plan, id) + 1, std::move(copy)}}});
}

Result<Edit> removeStem(const Plan& plan, StemId id) {
    if (auto problem = barredStem(plan, id))
        return *problem;
    return Edit(Batch{Deed::removeStem, {Remove<StemId>{id}}});
}

Result<Edit> renameStem(const Plan& plan, StemId id, const std::string& name) {
    const Stem* stem = find(plan, id);
    if (!stem)
        return Problem{ProblemCode::noSuchStem, "", {std::to_string(id.value)}};
    StemForm form = *stem;
    form.name = name;
    return Edit(ReformStem{id, std::move(form)});
}

Result<Edit> moveStem(const Plan& plan, StemId id, int index) {
    if (!find(plan, id))
        return Problem{ProblemCode::noSuchStem, "", {std::to_string(id.value)}};
    return Edit(Move<StemId>{id, std::clamp(index, 0, static_cast<int>(plan.stems.size()) - 1)});
}

Result<Edit> lockStem(const Plan& plan, StemId id, bool locked) {
    const Stem* stem = find(plan, id);
    if (!stem)
        return Problem{ProblemCode::noSuchStem, "", {std::to_string(id.value)}};
    StemForm form = *stem;
    form.locked = locked;
    return Edit(ReformStem{id, std::move(form)});
}

Result<Edit> rearrangeStem(const Plan& plan, StemId id, Arrangement arrangement, int whorl) {
    if (auto problem = barredStem(plan, id))
        return *problem;
    const Stem& stem = *find(plan, id);
    StemForm form = stem;
    form.arrangement = arrangement;
    if (arrangement == Arrangement::whorled)
        form.whorl = std::clamp(whorl, 3, limits::whorl);
    Batch batch{Deed::changeArrangement, {ReformStem{id, form}}};
    const auto wanted = static_cast<std::size_t>(leavesPerTier(form));
    Angle turn = stem.tiers.empty() ? degrees(0) : stem.tiers.front().turn;
    for (std::size_t t = 0; t < stem.tiers.size(); ++t, turn = wrapped(turn + turnStep(form), wholeTurn)) {
        const Tier& was = stem.tiers[t];
        const int index = static_cast<int>(t);
        if (was.slots.size() == wanted) {
            if (was.turn != turn)
                batch.edits.emplace_back(TurnTier{id, index, turn});
            continue;
        }
        Tier tier = was;
        tier.turn = turn;
        // Empty slots go first, then leaves from the last slot on; what is pinned stays.
        const auto drop = [&](auto unwanted) {
            for (auto s = tier.slots.size(); s-- > 0 && tier.slots.size() > wanted;)
                if (unwanted(tier.slots[s]))
                    tier.slots.erase(tier.slots.begin() + static_cast<std::ptrdiff_t>(s));
        };
        drop([](const Slot& slot) { return !slot.filled() && !slot.pinned; });
        drop([](const Slot& slot) { return !slot.pinned; });
        if (tier.slots.size() > wanted)
            return Problem{ProblemCode::slotPinned, "", {stem.name, std::to_string(t + 1)}};
        const KindId kind = was.slots.empty() ? kindAround(plan, stem, index) : was.slots.front().leaf.kind;
        while (tier.slots.size() < wanted) {
            Slot slot;
            slot.leaf.kind = kind;
            tier.slots.push_back(std::move(slot));
        }
        batch.edits.emplace_back(CloseTier{id, index});
        batch.edits.emplace_back(OpenTier{id, index, std::move(tier)});
    }
    return Edit(std::move(batch));
}

Result<Edit> reformStem(const Plan& plan, StemId id, const StemForm& form) {
    const Stem* stem = find(plan, id);
    if (!stem)
        return Problem{ProblemCode::noSuchStem, "", {std::to_string(id.value)}};
    if (form.arrangement == stem->arrangement && leavesPerTier(form) == leavesPerTier(*stem))
        return Edit(ReformStem{id, form});
    Result<Edit> rearranged = rearrangeStem(plan, id, form.arrangement, form.whorl);
    if (!rearranged)
        return rearranged;
    Batch batch = std::get<Batch>(std::move(rearranged).value().what);
    batch.edits.emplace_back(ReformStem{id, form});
    return Edit(std::move(batch));
}

} // namespace stemwright

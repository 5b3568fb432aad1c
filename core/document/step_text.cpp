#include "core/document/step_text.h"

#include "core/document/bench.h"
#include "core/figures/height.h"
#include "core/figures/pot_figures.h"

#include <cmath>

namespace stemwright {

namespace {

std::string leavesOf(const Plan& plan, const Tier& tier, const SheetWords& words) {
    std::string out;
    KindId kind;
    bool oneKind = true;
    for (std::size_t i = 0; i < tier.slots.size(); ++i) {
        const Slot& slot = tier.slots[i];
        const Mix* mix = find(plan, slot.leaf.mix);
        if (!out.empty())
            out += ", ";
        const std::string side = words.side(sideOf(slotTurn(tier, i)));
        out += words.word(SheetWord::cardLeaf, {side, mix ? mix->code.empty() ? mix->name : mix->code
                                                          : words.word(SheetWord::emptySlot)});
        if (mix) {
            oneKind = oneKind && (!kind || kind == slot.leaf.kind);
            kind = slot.leaf.kind;
        }
    }
    // The kind once, where all leaves are of it; the mat shows it otherwise.
    if (const Kind* found = oneKind ? find(plan, kind) : nullptr)
        out += " (" + found->name + ")";
    return out;
}

/// The wraps, the core and the stake, each with its length.
std::string toCut(const Plan& plan, const Stem& stem, const StemFigures& figures, const SheetWords& words) {
    std::string out;
    const auto list = [&](const std::string& what, Length length) {
        out += (out.empty() ? "" : "; ") + words.word(SheetWord::cardPiece, {what, words.cut(length)});
    };
    for (std::size_t i = 0; i < figures.wraps.size(); ++i)
        if (const Length took = tookOf(stem, i); took > Length{})
            // Bound and measured: what was cut then is past, and what the figures say now is of stems to come.
            out += (out.empty() ? "" : "; ") +
                   words.word(SheetWord::cardTook, {words.wrap(plan.binding.wraps[i]), words.cut(took)});
        else if (figures.wraps[i].toCut > Length{})
            list(words.wrap(plan.binding.wraps[i]), figures.wraps[i].toCut);
    if (stem.core)
        list(words.word(SheetWord::cardCore, {words.wire(stem.core->diameter, stem.core->gauge)}),
             lengthOfStem(stem));
    const Stake& stake = plan.pot.stake;
    list(words.word(SheetWord::cardStakeWire, {words.wire(stake.diameter, stake.gauge)}),
         stakeLength(plan.pot));
    return out;
}

SheetWord finishOf(WrapWith with) {
    switch (with) {
    case WrapWith::wire:
        return SheetWord::cardFinishWire;
    case WrapWith::floss:
        return SheetWord::cardFinishFloss;
    case WrapWith::tape:
        return SheetWord::cardFinishTape;
    }
    return SheetWord::cardFinishFloss;
}

} // namespace

std::string facingText(const Tier& tier, const SheetWords& words) {
    if (tier.slots.size() == 2)
        return words.plane(planeOf(tier));
    const std::string first = words.side(sideOf(slotTurn(tier, 0)));
    if (tier.slots.size() <= 1)
        return first;
    return words.word(SheetWord::around, {std::to_string(tier.slots.size()), first});
}

std::string turnText(const Stem& stem, const BindingStep& step, const SheetWords& words) {
    // A pair looks the same after half a turn, so what counts is the shorter way to the same look.
    const double period = inDegrees(turnPeriod(stem));
    const double by = inDegrees(
        apart(step.turn, degrees(0), degrees(stem.arrangement == Arrangement::spiral ? 360 : period)));
    if (by < 1)
        return {};
    if (std::abs(by - 90) < 1)
        return words.word(SheetWord::cardTurn);
    if (std::abs(by - 180) < 1)
        return words.word(SheetWord::cardHalfTurn);
    return words.word(SheetWord::cardTurnBy, {std::to_string(std::lround(by))});
}

bool cutsWire(const Plan& plan, const BindingStep& step) {
    return step.code == BindingStepCode::cut || step.code == BindingStepCode::finish ||
           (step.code == BindingStepCode::cover && plan.binding.wraps[step.wrap].with == WrapWith::wire);
}

std::string stepText(const Plan& plan, const Stem& stem, const StemFigures& figures, const BindingStep& step,
                     const SheetWords& words) {
    const std::vector<Wrap>& wraps = plan.binding.wraps;
    switch (step.code) {
    case BindingStepCode::cut:
        return words.word(SheetWord::cardCut, {toCut(plan, stem, figures, words)});
    case BindingStepCode::begin: {
        std::string out =
            words.word(SheetWord::cardBegin, {words.cut(wraps[0].startTail), words.wrap(wraps[0])});
        if (stem.core)
            out = words.word(SheetWord::cardLayCore) + " " + out;
        return out;
    }
    case BindingStepCode::tier: {
        const Tier& tier = stem.tiers[static_cast<std::size_t>(step.tier)];
        const std::string turn = turnText(stem, step, words);
        const std::string number = std::to_string(step.tier + 1), leaves = leavesOf(plan, tier, words);
        const std::size_t count = tier.slots.size();
        // Where a leaf points, its own words say; only of a pair is its plane worth saying too.
        const std::string said =
            count <= 1 ? words.word(SheetWord::cardTierOne, {number, leaves})
                       : words.word(SheetWord::cardTier,
                                    {number,
                                     count == 2 ? facingText(tier, words)
                                                : words.word(SheetWord::cardAround, {std::to_string(count)}),
                                     leaves});
        return turn + (turn.empty() ? "" : " ") + said;
    }
    case BindingStepCode::stake: {
        const Stake& stake = plan.pot.stake;
        return words.word(SheetWord::cardStake,
                          {words.wire(stake.diameter, stake.gauge), words.size(stake.overlap)});
    }
    case BindingStepCode::tail:
        return words.word(SheetWord::cardTail);
    case BindingStepCode::finish:
        return words.word(finishOf(wraps[0].with), {words.cut(wraps[0].finish)});
    case BindingStepCode::cover:
        return words.word(wraps[step.wrap].with == WrapWith::tape ? SheetWord::cardTape : SheetWord::cardCover,
                          {words.wrap(wraps[step.wrap])});
    }
    return {};
}

} // namespace stemwright

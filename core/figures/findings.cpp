#include "core/figures/findings.h"

#include "core/figures/arrangement.h"
#include "core/figures/binding_steps.h"
#include "core/figures/leaf_make.h"
#include "core/figures/leaf_mass.h"
#include "core/figures/pot_figures.h"
#include "core/figures/pot_shape.h"
#include "core/figures/remedies.h"
#include "core/plan/lookup.h"
#include "core/quantity/digits.h"

#include <algorithm>
#include <cmath>
#include <concepts>
#include <unordered_map>

namespace stemwright {

namespace {

std::string text(std::integral auto v) {
    return std::to_string(v);
}

class Noticer {
public:
    Noticer(const Plan& plan, const Figures& figures) : plan_(plan), figures_(figures), tables_(plan) {
        findTwins();
    }

    std::vector<Finding> run() {
        for (at_ = 0; at_ < plan_.stems.size(); ++at_) {
            wholeStem(figures_.stems[at_]);
            tiers(plan_.stems[at_], figures_.stems[at_]);
        }
        wholePot();
        return std::move(found_);
    }

private:
    void say(FindingCode code, int tier, int slot, std::vector<std::string> values) {
        found_.push_back({code, plan_.stems[at_].id, tier, slot, std::move(values)});
    }

    void wholeStem(const StemFigures& figures) {
        if (figures.leaves == 0)
            say(FindingCode::noLeaves, -1, -1, {});
        if (figures.hold.moment > 0 && figures.hold.hold < weakHold) {
            const auto core = smallestCore(plan_.stems[at_], plan_, tables_, figures.wraps);
            say(FindingCode::holdsTooLittle, -1, -1,
                {oneDecimal(figures.hold.hold),
                 core ? oneDecimal(inMillimetres(core->diameter)) : std::string()});
        }
        for (std::size_t w = 0; w < figures.wraps.size(); ++w)
            if (const auto& sold = plan_.binding.wraps[w].sold; sold && figures.wraps[w].toCut > *sold)
                runsOut(figures, w, *sold);
        if (figures.bundle > narrowest())
            say(FindingCode::tooThickForPot, -1, -1,
                {oneDecimal(inMillimetres(figures.bundle)), oneDecimal(inMillimetres(narrowest()))});
        if (figures.inversions > 0)
            say(FindingCode::outOfOrder, -1, -1, {text(figures.inversions)});
        for (std::size_t i = 0; i < figures.held.size(); ++i)
            if (figures.held[i] - figures.fairShare[i] >= leaningLeaves) {
                const Leaf leaf = figures_.lines[i].leaf;
                say(FindingCode::leans, -1, -1,
                    {find(plan_, leaf.mix)->name, find(plan_, leaf.kind)->name, text(figures.held[i]),
                     oneDecimal(figures.fairShare[i])});
            }
        if (figures.drift >= highDrift)
            say(FindingCode::drifts, -1, -1, {oneDecimal(figures.drift)});
        for (const std::size_t other : twins_[at_])
            say(FindingCode::nearTwins, -1, -1,
                {plan_.stems[other].name,
                 oneDecimal(std::abs(inMillimetres(figures.height - figures_.stems[other].height)))});
    }

    /// Where in the work the first skein or spool of a layer ends: the hand needs its part to the last.
    void runsOut(const StemFigures& figures, std::size_t wrap, Length sold) {
        const Length hold = plan_.binding.wraps[wrap].hold;
        int tier = -1;
        for (const BindingStep& step : bindingSteps(plan_, plan_.stems[at_])) {
            if (step.wrap == wrap && step.code == BindingStepCode::tier)
                tier = step.tier;
            if (wrap < step.used.size() && step.used[wrap] + hold > sold)
                break;
        }
        const Length toCut = figures.wraps[wrap].toCut;
        say(FindingCode::threadRunsOut, tier, -1,
            {text(wrap + 1), oneDecimal(inMillimetres(toCut)), oneDecimal(inMillimetres(sold)),
             text(static_cast<int>(std::ceil(toCut / sold - 1e-9)))});
    }

    /// Inside the pot, where stems stand in it.
    Length narrowest() const {
        const Pot& pot = plan_.pot;
        const Length across =
            pot.shape == PotShape::frustum ? std::min(pot.topDiameter, pot.bottomDiameter) : pot.topDiameter;
        return across * std::min(1.0, breadthPart(pot));
    }

    void tiers(const Stem& stem, const StemFigures& figures) {
        const Angle plane = stem.arrangement == Arrangement::onePlane ? planeOfStem(stem) : Angle{};
        Length size = stem.tiers.empty() ? Length{} : sizeOfTier(plan_, stem.tiers[0]);
        for (std::size_t i = 0; i < stem.tiers.size(); ++i) {
            const Tier& tier = stem.tiers[i];
            const int number = static_cast<int>(i);
            if (i > 0 && facesLikeAbove(stem, stem.tiers[i - 1], tier))
                say(FindingCode::sameFacing, number, -1, {text(number + 1), text(number)});
            if (stem.arrangement == Arrangement::onePlane && isOutOfPlane(plane, tier))
                say(FindingCode::outOfPlane, number, -1, {text(number + 1)});
            slots(stem, tier, number, figures.leaves > 0);
            if (isUnmatchedPair(stem, tier))
                say(FindingCode::unmatchedPair, number, -1, {text(number + 1)});
            const Length next = i + 1 < stem.tiers.size() ? sizeOfTier(plan_, stem.tiers[i + 1]) : Length{};
            if (next > Length{} && size > next)
                say(FindingCode::largerAbove, number, -1, {text(number + 1), text(number + 2)});
            size = next;
        }
    }

    void slots(const Stem& stem, const Tier& tier, int number, bool sayEmpty) {
        const int has = static_cast<int>(tier.slots.size());
        const int wants = leavesPerTier(stem);
        if (has < wants && !isTipLeaf(tier, number))
            say(FindingCode::shortTier, number, -1, {text(number + 1), text(has), text(wants)});
        if (has > wants)
            say(FindingCode::longTier, number, -1, {text(number + 1), text(has), text(wants)});
        if (!sayEmpty)
            return;
        const auto empty = std::find_if(tier.slots.begin(), tier.slots.end(), isWaiting);
        if (empty != tier.slots.end())
            say(FindingCode::emptySlot, number, static_cast<int>(empty - tier.slots.begin()),
                {text(number + 1)});
    }

    /// Who pins an empty slot wants it empty.
    static bool isWaiting(const Slot& slot) { return !slot.filled() && !slot.pinned; }
    /// Many a stem ends in one leaf.
    static bool isTipLeaf(const Tier& tier, int number) { return number == 0 && tier.slots.size() == 1; }

    /// Neighbours in height, each pair said once, at the stem that comes later.
    void findTwins() {
        twins_.resize(plan_.stems.size());
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < plan_.stems.size(); ++i)
            if (!plan_.stems[i].tiers.empty())
                order.push_back(i);
        const auto height = [&](std::size_t i) { return figures_.stems[i].height; };
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return height(a) < height(b); });
        for (std::size_t i = 1; i < order.size(); ++i)
            if (height(order[i]) - height(order[i - 1]) < nearTwin) {
                const auto [first, later] = std::minmax(order[i - 1], order[i]);
                twins_[later].push_back(first);
            }
    }

    void wholePot() {
        const PotBalance balance = potBalance(plan_, figures_);
        if (!balance.steady)
            found_.push_back({FindingCode::plantTips,
                              StemId{},
                              -1,
                              -1,
                              {oneDecimal(inDegrees(balance.tilt)),
                               text(static_cast<std::int64_t>(std::ceil(inGrams(balance.weightToAdd))))}});
        for (const Kind& kind : plan_.kinds)
            if (const MakeFault fault = faultOf(plan_, kind); fault != MakeFault::none)
                found_.push_back({FindingCode::cannotBeMade,
                                  StemId{},
                                  -1,
                                  -1,
                                  {kind.name, text(static_cast<int>(fault)), text(kind.make->rows)}});
        for (const Kind& kind : plan_.kinds)
            if (beadsUnweighed(plan_, kind))
                found_.push_back(unweighed(kind));
        std::unordered_map<KindId, int> waiting;
        for (const Stem& stem : plan_.stems)
            for (const Tier& tier : stem.tiers)
                for (const Slot& slot : tier.slots)
                    if (slot.leaf.kind && isWaiting(slot))
                        ++waiting[slot.leaf.kind];
        for (const Kind& kind : plan_.kinds) {
            const auto it = waiting.find(kind.id);
            if (it == waiting.end())
                continue;
            std::int64_t left = 0;
            for (const TrayLine& line : figures_.lines)
                if (line.leaf.kind == kind.id)
                    left += line.left();
            if (left < it->second)
                found_.push_back(
                    {FindingCode::tooFewLeaves, StemId{}, -1, -1, {text(it->second), kind.name, text(left)}});
        }
    }

    Finding unweighed(const Kind& kind) const {
        Finding found{
            FindingCode::beadsUnweighed,
            StemId{},
            -1,
            -1,
            {kind.name, kind.beadSize, beadSizeNamed(plan_, kind.beadSize) ? std::string("own") : ""}};
        for (const Stem& stem : plan_.stems)
            for (std::size_t t = 0; t < stem.tiers.size(); ++t)
                for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s)
                    if (const Slot& slot = stem.tiers[t].slots[s]; slot.filled() && slot.leaf.kind == kind.id) {
                        found.stem = stem.id;
                        found.tier = static_cast<int>(t);
                        found.slot = static_cast<int>(s);
                        return found;
                    }
        return found;
    }

    const Plan& plan_;
    const Figures& figures_;
    PlanTables tables_;
    std::vector<std::vector<std::size_t>> twins_;
    std::size_t at_ = 0;
    std::vector<Finding> found_;
};

} // namespace

std::vector<Finding> findings(const Plan& plan, const Figures& figures) {
    return Noticer(plan, figures).run();
}

} // namespace stemwright

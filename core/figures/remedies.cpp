#include "core/figures/remedies.h"

#include "core/figures/findings.h"

#include <algorithm>

namespace stemwright {

bool isFree(const Stem& stem, const Tier& tier, const Slot& slot) {
    return !stem.locked && !tier.progress.bound && !slot.pinned;
}

Length sizeOfTier(const Plan& plan, const Tier& tier) {
    Length size;
    for (const Slot& slot : tier.slots)
        if (const Kind* kind = slot.leaf.kind ? find(plan, slot.leaf.kind) : nullptr)
            size = std::max(size, kind->length);
    return size;
}

Remedying::Remedying(const Plan& p, const Figures& f) : plan(p), figures(f), tables(p), board(tables) {
    for (const StemFigures& stem : f.stems)
        board.add(stem.held, tables);
}

double Remedying::unevennessWith(std::size_t stem, std::size_t out, std::size_t in) const {
    std::vector<int> held = figures.stems[stem].held;
    --held[out];
    ++held[in];
    return unevennessOf(held, board, tables);
}

namespace {

std::vector<Edit> editsFor(const Remedying& about, const Finding& finding, std::size_t place) {
    const Stem& stem = about.plan.stems[place];
    switch (finding.code) {
    case FindingCode::sameFacing:
        return turnAway(stem, finding.tier);
    case FindingCode::outOfPlane:
        return turnIntoPlane(stem, finding.tier);
    case FindingCode::shortTier:
        return openMissingSlots(stem, finding.tier);
    case FindingCode::longTier:
        return closeEmptySlots(stem, finding.tier);
    case FindingCode::emptySlot:
        return fillFromTray(about, place, finding.tier);
    case FindingCode::unmatchedPair:
        return matchPair(about, place, finding.tier);
    case FindingCode::largerAbove:
        return orderSizes(about.plan, stem);
    case FindingCode::outOfOrder:
        return orderColours(about, stem);
    case FindingCode::leans:
        if (const auto leaf = leaningLeaf(about.plan, about.figures, finding))
            return bestSwapForShare(about, place, about.line(*leaf));
        return {};
    case FindingCode::drifts:
        return bestSwapForDrift(about, place);
    case FindingCode::nearTwins:
        return changeTail(about, place);
    case FindingCode::holdsTooLittle:
        return addCore(about, place);
    case FindingCode::noLeaves:
    case FindingCode::tooFewLeaves:
    case FindingCode::leavesTouch:
    case FindingCode::outsideClay:
    case FindingCode::stakesTouch:
    case FindingCode::potTooSmall:
    case FindingCode::threadRunsOut:
    case FindingCode::tooThickForPot:
    case FindingCode::cannotBeMade:
    case FindingCode::plantTips:
    case FindingCode::leafOutOfScale:
    case FindingCode::beadsUnweighed:
        return {};
    }
    return {};
}

} // namespace

std::optional<Leaf> leaningLeaf(const Plan& plan, const Figures& figures, const Finding& finding) {
    if (finding.code != FindingCode::leans || finding.values.size() < 2)
        return std::nullopt;
    // It has room for no ids; of lines with the same names the first that the stem leans to.
    for (const StemFigures& stem : figures.stems)
        for (std::size_t i = 0; stem.stem == finding.stem && i < stem.held.size(); ++i) {
            const Leaf leaf = figures.lines[i].leaf;
            if (stem.held[i] - stem.fairShare[i] >= leaningLeaves &&
                find(plan, leaf.mix)->name == finding.values[0] &&
                find(plan, leaf.kind)->name == finding.values[1])
                return leaf;
        }
    return std::nullopt;
}

std::optional<Edit> remedyFor(const Plan& plan, const Figures& figures, const Finding& finding) {
    const auto it = std::find_if(plan.stems.begin(), plan.stems.end(),
                                 [&](const Stem& stem) { return stem.id == finding.stem; });
    if (it == plan.stems.end() || it->locked || finding.tier >= static_cast<int>(it->tiers.size()))
        return std::nullopt;
    std::vector<Edit> edits =
        editsFor(Remedying(plan, figures), finding, static_cast<std::size_t>(it - plan.stems.begin()));
    if (edits.empty())
        return std::nullopt;
    return Edit(Batch{Deed::remedy, std::move(edits)});
}

} // namespace stemwright

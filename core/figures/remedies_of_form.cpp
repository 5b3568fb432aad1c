// Remedies that turn tiers, open or close places and change a stem's tail.
#include "core/figures/arrangement.h"
#include "core/figures/binding_steps.h"
#include "core/figures/findings.h"
#include "core/figures/height.h"
#include "core/figures/remedies.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr Angle wholeTurn = degrees(360);

/// A pinned leaf shall point where it points.
bool mayTurn(const Tier& tier) {
    return !tier.progress.bound &&
           std::none_of(tier.slots.begin(), tier.slots.end(), [](const Slot& slot) { return slot.pinned; });
}

/// What a tier with another number of places does to its pinned leaves: they must keep their number, and
/// point where they point.
bool keepsPinned(const Tier& before, const Tier& after) {
    constexpr Angle same = degrees(1e-6);
    for (std::size_t i = 0; i < before.slots.size(); ++i)
        if (before.slots[i].pinned && (i >= after.slots.size() || after.slots[i] != before.slots[i] ||
                                       apart(slotTurn(before, i), slotTurn(after, i), wholeTurn) > same))
            return false;
    return true;
}

std::vector<Edit> replaced(const Stem& stem, int tier, const Tier& after) {
    return {CloseTier{stem.id, tier}, OpenTier{stem.id, tier, after}};
}

int countAlike(const Stem& stem) {
    int count = 0;
    for (std::size_t i = 1; i < stem.tiers.size(); ++i)
        count += facesLikeAbove(stem, stem.tiers[i - 1], stem.tiers[i]);
    return count;
}

/// Turns the tiers [from, to) by an angle where all of them may be turned and fewer of the stem's then face
/// alike.
std::vector<Edit> turnRun(const Stem& stem, std::size_t from, std::size_t to, Angle by) {
    Stem after = stem;
    std::vector<Edit> edits;
    for (std::size_t i = from; i < to; ++i) {
        if (!mayTurn(stem.tiers[i]))
            return {};
        after.tiers[i].turn = wrapped(stem.tiers[i].turn + by, wholeTurn);
        edits.push_back(TurnTier{stem.id, static_cast<int>(i), after.tiers[i].turn});
    }
    return countAlike(after) < countAlike(stem) ? edits : std::vector<Edit>{};
}

} // namespace

/// The tier alone if that does it, else it and all below, else all above it.
std::vector<Edit> turnAway(const Stem& stem, int tier) {
    if (tier < 1)
        return {};
    const auto at = static_cast<std::size_t>(tier);
    const Angle by = stem.tiers[at - 1].turn + turnStep(stem) - stem.tiers[at].turn;
    std::vector<Edit> edits = turnRun(stem, at, at + 1, by);
    if (edits.empty())
        edits = turnRun(stem, at, stem.tiers.size(), by);
    if (edits.empty())
        edits = turnRun(stem, 0, at, -by);
    return edits;
}

std::vector<Edit> turnIntoPlane(const Stem& stem, int tier) {
    const Tier& at = stem.tiers[static_cast<std::size_t>(tier)];
    if (!mayTurn(at))
        return {};
    // The nearer of the plane's two directions, so that the leaves keep their sides.
    const Angle plane = planeOfStem(stem);
    const bool same = apart(plane, at.turn, wholeTurn) <= degrees(90);
    return {TurnTier{stem.id, tier, wrapped(same ? plane : plane + degrees(180), wholeTurn)}};
}

std::vector<Edit> openMissingSlots(const Stem& stem, int tier) {
    const Tier& before = stem.tiers[static_cast<std::size_t>(tier)];
    if (before.progress.bound)
        return {};
    Tier at = before;
    Slot waiting;
    for (const Slot& slot : at.slots)
        if (!waiting.leaf.kind)
            waiting.leaf.kind = slot.leaf.kind;
    at.slots.resize(static_cast<std::size_t>(leavesPerTier(stem)), waiting);
    return keepsPinned(before, at) ? replaced(stem, tier, at) : std::vector<Edit>{};
}

std::vector<Edit> closeEmptySlots(const Stem& stem, int tier) {
    const Tier& before = stem.tiers[static_cast<std::size_t>(tier)];
    const auto wanted = static_cast<std::size_t>(leavesPerTier(stem));
    if (before.progress.bound)
        return {};
    Tier at = before;
    for (std::size_t i = before.slots.size(); i-- > 0 && at.slots.size() > wanted;)
        if (!at.slots[i].pinned && !at.slots[i].filled())
            at.slots.erase(at.slots.begin() + static_cast<std::ptrdiff_t>(i));
    if (at.slots.size() == before.slots.size() || !keepsPinned(before, at))
        return {};
    return replaced(stem, tier, at);
}

/// Not where a tier is bound already: the core goes in first.
std::vector<Edit> addCore(const Remedying& about, std::size_t place) {
    const Stem& stem = about.plan.stems[place];
    if (isBegun(stem))
        return {};
    StemForm form = stem;
    form.core = smallestCore(stem, about.plan, about.tables, about.figures.stems[place].wraps);
    if (!form.core)
        return {};
    return {ReformStem{stem.id, form}};
}

/// The least change of the tail, in half millimetres, that makes the stem no other's near twin.
std::vector<Edit> changeTail(const Remedying& about, std::size_t place) {
    const Stem& stem = about.plan.stems[place];
    if (stem.tiers.empty() || stem.tiers.back().progress.bound)
        return {};
    const Length height = about.figures.stems[place].height;
    std::vector<Length> others;
    for (std::size_t i = 0; i < about.plan.stems.size(); ++i)
        if (i != place && !about.plan.stems[i].tiers.empty())
            others.push_back(about.figures.stems[i].height);
    std::sort(others.begin(), others.end());
    const auto isTwin = [&](Length h) {
        const auto above = std::lower_bound(others.begin(), others.end(), h);
        return (above != others.end() && *above - h < nearTwin) ||
               (above != others.begin() && h - *(above - 1) < nearTwin);
    };
    constexpr double step = 0.5;
    constexpr int most = 1000;
    for (int i = 1; i <= most; ++i)
        for (const double by : {i * step, -i * step}) {
            StemForm form = stem;
            form.tail = millimetres(std::round(inMillimetres(stem.tail + millimetres(by)) / step) * step);
            // A stem that all but sinks into the clay cannot be told from its figures; leave it alone.
            if (form.tail <= about.plan.pot.plantingDepth || form.tail == stem.tail)
                continue;
            if (!isTwin(height + (form.tail - stem.tail)))
                return {ReformStem{stem.id, form}};
        }
    return {};
}

} // namespace stemwright

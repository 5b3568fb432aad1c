#include "core/suggest/heights.h"

#include "core/figures/height.h"
#include "core/suggest/apart_heights.h"
#include "core/suggest/plan_counts.h"
#include "core/suggest/tier_numbers.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

bool isKept(const Tier& tier) {
    return tier.progress.bound ||
           std::any_of(tier.slots.begin(), tier.slots.end(), [](const Slot& slot) { return slot.pinned; });
}

/// The kind a tier counts for: that of its first slot with one.
KindId kindOf(const Tier& tier) {
    for (const Slot& slot : tier.slots)
        if (slot.leaf.kind)
            return slot.leaf.kind;
    return {};
}

std::string text(int n) {
    return std::to_string(n);
}

int roundUp(int n, int unit) {
    return (n + unit - 1) / unit;
}

std::optional<Problem> badRange(const Kind& kind, const KindRange& range, int perTier) {
    const int low = roundUp(std::max(0, range.least), perTier), high = range.most / perTier;
    if (range.least >= 0 && range.least <= range.most && low <= high)
        return std::nullopt;
    // The nearest that whole tiers can make: the ends the other way round, or a tier more or less.
    int nearLow = std::max(0, std::min(range.least, range.most)) / perTier * perTier;
    int nearHigh = roundUp(std::max(0, std::max(range.least, range.most)), perTier) * perTier;
    return Problem{
        ProblemCode::badRange,
        "",
        {kind.name, text(range.least), text(range.most), text(perTier), text(nearLow), text(nearHigh)}};
}

/// Leaves of the kind that stand on no locked stem.
int leavesToShare(const Plan& plan, const Kind& kind) {
    int leaves = 0;
    for (const StockLine& line : kind.stock)
        leaves += line.total();
    for (const Stem& stem : plan.stems)
        if (stem.locked)
            for (const Tier& tier : stem.tiers)
                for (const Slot& slot : tier.slots)
                    leaves -= slot.filled() && slot.leaf.kind == kind.id;
    return leaves;
}

/// The greatest number of tiers that every stem can have at least, when there are so many in all.
int greatestLeast(const std::vector<int>& kept, int tiers) {
    for (int least = tiers / std::max(1, static_cast<int>(kept.size())); least > 0; --least) {
        int sum = 0;
        for (const int own : kept)
            sum += std::max(own, least);
        if (sum <= tiers)
            return least;
    }
    return 0;
}

/// Sets a kind's column: its tiers and ranges on every stem, and how many tiers there are in all.
Result<KindOutlook> setColumn(const Plan& plan, const KindRange& range, int perTier, TierNumbers& numbers,
                              int c) {
    const Kind& kind = *numbers.kinds[index(c)];
    if (auto problem = badRange(kind, range, perTier))
        return *problem;
    const int low = roundUp(range.least, perTier), high = range.most / perTier;
    std::vector<int> kept(index(numbers.rows()), 0);
    int atLeast = 0;
    for (int r = 0; r < numbers.rows(); ++r) {
        const Stem& stem = *numbers.stems[index(r)];
        for (const Tier& tier : stem.tiers)
            if (kindOf(tier) == kind.id) {
                ++numbers.now(r, c);
                kept[index(r)] += isKept(tier);
            }
        if (kept[index(r)] > high)
            return Problem{ProblemCode::pinsBeyondRange,
                           "",
                           {stem.name, kind.name, text(kept[index(r)] * perTier), text(range.most)}};
        numbers.least(r, c) = std::max(low, kept[index(r)]);
        numbers.most(r, c) = high;
        atLeast += numbers.least(r, c);
    }
    const int atMost = high * numbers.rows();
    KindOutlook outlook{kind.id, leavesToShare(plan, kind), 0, atLeast * perTier, atMost * perTier};
    const int toPlace = std::max(0, outlook.leaves - range.rest.value_or(0)) / perTier;
    if (toPlace < atLeast)
        return Problem{ProblemCode::rangeTooHigh,
                       "",
                       {kind.name, text(atLeast * perTier), text(toPlace * perTier),
                        text(greatestLeast(kept, toPlace) * perTier), text((atLeast - toPlace) * perTier)}};
    if (range.rest && toPlace > atMost)
        return Problem{ProblemCode::rangeTooLow,
                       "",
                       {kind.name, text(toPlace * perTier), text(atMost * perTier),
                        text(roundUp(toPlace, numbers.rows()) * perTier), text((toPlace - atMost) * perTier)}};
    numbers.total[index(c)] = std::min(toPlace, atMost);
    outlook.placed = numbers.total[index(c)] * perTier;
    return outlook;
}

/// The numbers of a plan, and what is known of each kind before they are solved.
struct Start {
    TierNumbers numbers;
    std::vector<KindOutlook> kinds;
};

Result<Start> numbersOf(const Plan& plan, const HeightsOptions& options) {
    Start start;
    TierNumbers& numbers = start.numbers;
    for (const Stem& stem : plan.stems)
        if (!stem.locked)
            numbers.stems.push_back(&stem);
    if (numbers.stems.empty() || options.ranges.empty())
        return Problem{ProblemCode::nothingToShare, "", {}};
    std::sort(numbers.stems.begin(), numbers.stems.end(),
              [](const Stem* a, const Stem* b) { return a->id < b->id; });
    const int perTier = leavesPerTier(*numbers.stems.front());
    for (const Stem* stem : numbers.stems)
        if (leavesPerTier(*stem) != perTier)
            return Problem{
                ProblemCode::mixedTiers,
                "",
                {stem->name, text(leavesPerTier(*stem)), numbers.stems.front()->name, text(perTier)}};
    for (const KindRange& range : options.ranges) {
        const Kind* kind = find(plan, range.kind);
        if (!kind)
            return Problem{ProblemCode::noSuchId, "", {"kind", std::to_string(range.kind.value)}};
        if (std::find(numbers.kinds.begin(), numbers.kinds.end(), kind) != numbers.kinds.end())
            return Problem{ProblemCode::rangeTwice, "", {kind->name}};
        numbers.kinds.push_back(kind);
    }
    numbers.now = numbers.least = numbers.most = Grid<int>(numbers.rows(), numbers.columns());
    numbers.total.assign(numbers.kinds.size(), 0);
    for (int c = 0; c < numbers.columns(); ++c) {
        auto column = setColumn(plan, options.ranges[index(c)], perTier, numbers, c);
        if (!column)
            return column.problem();
        start.kinds.push_back(column.value());
    }
    for (int r = 0; r < numbers.rows(); ++r) {
        numbers.others.push_back(static_cast<int>(numbers.stems[index(r)]->tiers.size()));
        for (int c = 0; c < numbers.columns(); ++c)
            numbers.others.back() -= numbers.now(r, c);
    }
    return start;
}

/// A stem's tiers as they shall be, and the edits that lead there: tiers that stay are turned at most.
struct Regrown {
    std::vector<Tier> tiers;
    std::vector<Edit> edits;
};

/// The stem with `wanted` tiers of each kind in the numbers; others stay.
Regrown regrown(const Plan& plan, const TierNumbers& numbers, int row, const int* wanted) {
    const Stem& stem = *numbers.stems[index(row)];
    Regrown all{stem.tiers, {}};
    std::vector<Tier>& tiers = all.tiers;
    const auto length = [&](KindId id) {
        const Kind* kind = find(plan, id);
        return kind ? std::pair(kind->length, kind->width) : std::pair(Length{}, Length{});
    };
    for (int c = 0; c < numbers.columns(); ++c) {
        const KindId kind = numbers.kinds[index(c)]->id;
        int more = wanted[c] - numbers.now(row, c);
        for (std::size_t t = tiers.size(); more < 0 && t-- > 0;)
            if (kindOf(tiers[t]) == kind && !isKept(tiers[t])) {
                tiers.erase(tiers.begin() + static_cast<std::ptrdiff_t>(t));
                all.edits.push_back(CloseTier{stem.id, static_cast<int>(t)});
                ++more;
            }
        for (; more > 0; --more) {
            // Below the last tier of a kind that is not larger.
            std::size_t at = tiers.size();
            while (at > 0 && length(kindOf(tiers[at - 1])) > length(kind))
                --at;
            const Tier tier = newTier(stem, at > 0 ? &tiers[at - 1] : nullptr, kind);
            tiers.insert(tiers.begin() + static_cast<std::ptrdiff_t>(at), tier);
            all.edits.push_back(OpenTier{stem.id, static_cast<int>(at), tier});
        }
    }
    // From the first tier that changed its place, each is turned from the one above, but those that are bound.
    std::size_t first = 0;
    while (first < tiers.size() && first < stem.tiers.size() && tiers[first] == stem.tiers[first])
        ++first;
    for (std::size_t t = first; t < tiers.size(); ++t) {
        const Angle turn = newTier(stem, t > 0 ? &tiers[t - 1] : nullptr, KindId{}).turn;
        if (tiers[t].progress.bound || tiers[t].turn == turn)
            continue;
        tiers[t].turn = turn;
        all.edits.push_back(TurnTier{stem.id, static_cast<int>(t), turn});
    }
    return all;
}

/// The height once every place has its leaf.
Length heightWith(const Plan& plan, const Stem& stem, std::vector<Tier> tiers) {
    std::vector<Length> reach;
    for (const Tier& tier : tiers) {
        const Kind* kind = find(plan, kindOf(tier));
        reach.push_back(kind ? reachAbove(*kind) : Length{});
    }
    Stem grown;
    static_cast<StemForm&>(grown) = stem;
    grown.tiers = std::move(tiers);
    return heightOf(grown, reach, plan.pot.plantingDepth);
}

/// As few neighbours in height closer than the difference as can be, where the even steps leave some.
void keepDifference(const Plan& plan, const TierNumbers& numbers, Length difference, Grid<int>& wanted,
                    Suggestion& suggestion) {
    const HeightWith height = [&](int row, const std::vector<int>& tiers) {
        return heightWith(plan, *numbers.stems[index(row)], regrown(plan, numbers, row, tiers.data()).tiers);
    };
    const auto close = [&](const Grid<int>& grid) {
        std::vector<Length> heights;
        for (int r = 0; r < numbers.rows(); ++r)
            heights.push_back(height(r, {grid.row(r), grid.row(r) + numbers.columns()}));
        return closeNeighbours(std::move(heights), difference);
    };
    suggestion.closeBefore = close(numbers.now);
    suggestion.closeAfter = close(wanted);
    if (suggestion.closeAfter > 0) {
        if (const auto apart = keepApart(numbers, height, difference)) {
            wanted = *apart;
            suggestion.closeAfter = suggestion.closeBound = close(wanted);
        } else {
            suggestion.proved = false;
        }
    }
}

} // namespace

Result<std::vector<KindOutlook>> heightsOutlook(const Plan& plan, const HeightsOptions& options) {
    auto start = numbersOf(plan, options);
    if (!start)
        return start.problem();
    return std::move(start.value().kinds);
}

Result<Suggestion> heights(const Plan& plan, const HeightsOptions& options) {
    const auto start = numbersOf(plan, options);
    if (!start)
        return start.problem();
    const TierNumbers& numbers = start.value().numbers;
    auto wanted = numbers.solve();
    if (!wanted)
        return Problem{ProblemCode::rangesCollide, "", {}};
    Suggestion suggestion;
    suggestion.aim = Aim::heights;
    suggestion.differenceAsked = options.difference.has_value();
    if (options.difference)
        keepDifference(plan, numbers, *options.difference, *wanted, suggestion);
    suggestion.before = unevennessOf(plan);
    suggestion.unmatchedBefore = unmatchedPairsOf(plan);
    suggestion.inversionsBefore = inversionsOf(plan);
    for (int r = 0; r < numbers.rows(); ++r) {
        const std::vector<Edit> edits = regrown(plan, numbers, r, wanted->row(r)).edits;
        suggestion.edits.edits.insert(suggestion.edits.edits.end(), edits.begin(), edits.end());
    }
    const Plan after = taken(plan, suggestion);
    suggestion.after = suggestion.bound = unevennessOf(after);
    suggestion.unmatchedAfter = unmatchedPairsOf(after);
    suggestion.inversionsAfter = inversionsOf(after);
    return suggestion;
}

std::vector<KindRange> usualRanges(const Plan& plan, int stems) {
    const int perTier = plan.stems.empty() ? leavesPerTier(StemForm{}) : leavesPerTier(plan.stems.front());
    int locked = 0;
    for (const Stem& stem : plan.stems)
        locked += stem.locked;
    const int sharing = std::max(1, stems - locked);
    std::vector<KindRange> ranges;
    for (const Kind& kind : plan.kinds) {
        const double mean = static_cast<double>(leavesToShare(plan, kind)) / sharing / perTier;
        const int least = static_cast<int>(std::floor(mean * (1 - usualPart)));
        const int most = static_cast<int>(std::ceil(mean * (1 + usualPart)));
        if (most > 0)
            ranges.push_back({kind.id, least * perTier, most * perTier, std::nullopt});
    }
    return ranges;
}

} // namespace stemwright

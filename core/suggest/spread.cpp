#include "core/suggest/spread.h"

#include "core/suggest/draw.h"
#include "core/suggest/even_shares.h"
#include "core/suggest/matched_shares.h"
#include "core/suggest/placing.h"
#include "core/suggest/plan_counts.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

constexpr std::uint32_t whims = 64;

/// A random wish for every cell, drawn in the order of stems' ids.
Grid<int> drawWhim(const Shares& shares, std::mt19937& random) {
    Grid<int> whim(shares.rows(), shares.columns());
    for (int r = 0; r < shares.rows(); ++r)
        for (int c = 0; c < shares.columns(); ++c)
            whim(r, c) = static_cast<int>(drawBelow(random, whims));
    return whim;
}

/// Each mix's part of the stock, as near as its untouchable leaves let it be: clamp(θ·stock, fixed, stock) with
/// θ such that the sum is the board's; found by halving, then rounded down and up.
void narrowToStock(const Shares& shares, PlacedRange& range) {
    const auto share = [&](std::size_t c, double theta) {
        return std::clamp(theta * shares.stock[c], double(range.least[c]), double(range.most[c]));
    };
    double low = 0, high = 1;
    for (int i = 0; i < 60; ++i) {
        const double theta = (low + high) / 2;
        double sum = 0;
        for (std::size_t c = 0; c < shares.stock.size(); ++c)
            sum += share(c, theta);
        (sum < shares.total ? low : high) = theta;
    }
    for (std::size_t c = 0; c < shares.stock.size(); ++c) {
        double exact = share(c, high);
        // A share that is whole is not rounded away from itself.
        constexpr double whisker = 1e-6;
        if (std::abs(exact - std::round(exact)) < whisker)
            exact = std::round(exact);
        range.least[c] = static_cast<int>(std::floor(exact));
        range.most[c] = static_cast<int>(std::ceil(exact));
    }
}

PlacedRange rangeOf(const Shares& shares, TrayUse use) {
    PlacedRange range{std::vector<int>(shares.stock.size(), 0), shares.stock};
    bool waiting = false;
    for (int r = 0; r < shares.rows(); ++r) {
        int held = 0;
        for (int c = 0; c < shares.columns(); ++c) {
            range.least[index(c)] += shares.fixed(r, c);
            held += shares.now(r, c);
        }
        waiting |= held < shares.free[index(r)];
    }
    if (use == TrayUse::likeStock)
        narrowToStock(shares, range);
    if (use == TrayUse::keep) {
        for (int r = 0; r < shares.rows(); ++r)
            for (int c = 0; c < shares.columns(); ++c)
                range.least[index(c)] += shares.now(r, c);
        if (!waiting)
            range.most = range.least;
    }
    // What the other mixes cannot fill this one must, and the other way round.
    const int most = std::accumulate(range.most.begin(), range.most.end(), 0);
    const int least = std::accumulate(range.least.begin(), range.least.end(), 0);
    for (std::size_t c = 0; c < shares.stock.size(); ++c) {
        const int own = range.least[c];
        range.least[c] = std::max(own, shares.total - (most - range.most[c]));
        range.most[c] = std::min(range.most[c], shares.total - (least - own));
    }
    return range;
}

bool within(const PlacedRange& range, const std::vector<int>& placed) {
    for (std::size_t c = 0; c < placed.size(); ++c)
        if (placed[c] < range.least[c] || placed[c] > range.most[c])
            return false;
    return true;
}

/// Costs grow with the fourth power of the leaves where stems keep their proportions, the room that pairs need
/// with the first, so the root says how many could be counted: to two digits, downward.
Problem beyondExact(const Plan& plan, const Shares& shares, bool pairs) {
    const double room = pairs ? static_cast<double>(MatchedShares::room(shares)) : 1;
    const double part =
        std::pow(Scale::greatestCost / (Scale::greatestFirst(shares) * room), pairs ? 1.0 / 5 : 1.0 / 4);
    const double most = part * shares.total;
    const double digit = std::pow(10, std::floor(std::log10(most)) - 1);
    return {ProblemCode::beyondExact,
            "",
            {std::to_string(shares.total), find(plan, shares.kind)->name,
             std::to_string(std::lround(std::floor(most / digit) * digit)), pairs ? "pairs" : ""}};
}

/// One kind's answer: its share of the pot's figures, and the leaves.
struct KindAnswer {
    double found = 0;
    double bound = 0;
    int unmatched = 0;
    int unmatchedBound = 0;
    bool proved = true;
    Grid<int> units;
};

Cost greatestSecond(const Shares& shares, const Grid<int>* whim) {
    return whim ? Cost{shares.total} * whims : Cost{shares.total};
}

std::optional<KindAnswer> solveEven(const Shares& shares, TrayUse use, const Grid<int>* whim, Budget& budget) {
    const auto scale = Scale::of(shares, greatestSecond(shares, whim));
    if (!scale)
        return std::nullopt;
    const PlacedRange range = rangeOf(shares, use);
    ShareAnswer share;
    if (auto standing = asItStands(shares, *scale, whim); standing && within(range, standing->placed))
        share = std::move(*standing);
    EvenShares solver(shares, *scale, whim);
    chooseLeaves(range, shares.total, solver, budget, share);
    KindAnswer answer;
    answer.found = scale->unevenness(share.cost);
    answer.bound = scale->unevenness(share.bound);
    answer.proved = share.bound / scale->weight == share.cost / scale->weight;
    answer.units = std::move(share.units);
    return answer;
}

std::optional<KindAnswer> solveMatched(const Shares& shares, TrayUse use, const Grid<int>* whim,
                                       Budget& budget) {
    const auto scale = Scale::of(shares, greatestSecond(shares, whim), MatchedShares::room(shares));
    if (!scale)
        return std::nullopt;
    const PlacedRange range = rangeOf(shares, use);
    MatchedShares solver(shares, *scale, whim);
    ShareAnswer share;
    if (auto standing = asItStands(shares, *scale, whim); standing && within(range, standing->placed)) {
        share = std::move(*standing);
        share.cost = solver.costOf(share.placed, share.units);
    }
    chooseLeaves(range, shares.total, solver, budget, share);
    KindAnswer answer;
    answer.unmatched = solver.unmatched(share.cost);
    answer.unmatchedBound = solver.unmatched(share.bound);
    answer.found = scale->unevenness(solver.shareCost(share.cost));
    // With fewer unmatched pairs, if there are such answers, the unevenness may be anything.
    const bool pairsProved = answer.unmatched == answer.unmatchedBound;
    answer.bound = pairsProved ? scale->unevenness(solver.shareCost(share.bound)) : 0;
    answer.proved = pairsProved && solver.shareCost(share.bound) / scale->weight ==
                                       solver.shareCost(share.cost) / scale->weight;
    answer.units = std::move(share.units);
    return answer;
}

} // namespace

Result<Suggestion> spread(const Plan& plan, const SpreadOptions& options) {
    Suggestion suggestion;
    suggestion.before = unevennessOf(plan);
    suggestion.aim = options.matchedPairs ? Aim::pairs : Aim::unevenness;
    Budget budget(options.search);
    std::optional<std::mt19937> random;
    if (options.seed)
        random.emplace(*options.seed);
    int pairsMissed = 0;
    std::vector<Change> changes;
    for (const Shares& shares : sharesOf(plan)) {
        if (shares.emptySlots > 0)
            suggestion.shortages.push_back({shares.kind, shares.emptySlots});
        if (shares.total == 0)
            continue;
        Grid<int> whim;
        if (random)
            whim = drawWhim(shares, *random);
        const auto solve = options.matchedPairs ? solveMatched : solveEven;
        const auto answer = solve(shares, options.trayUse, random ? &whim : nullptr, budget);
        if (!answer)
            return beyondExact(plan, shares, options.matchedPairs);
        suggestion.after += answer->found;
        suggestion.bound += answer->bound;
        suggestion.proved &= answer->proved;
        pairsMissed += answer->unmatched - answer->unmatchedBound;
        const auto placed =
            options.matchedPairs ? placePairs(shares, answer->units) : placeLeaves(shares, answer->units);
        changes.insert(changes.end(), placed.begin(), placed.end());
    }
    suggestion.stopped = budget.ended();
    suggestion.steps = budget.steps();
    for (const Change& change : changes)
        (change.now.mix ? suggestion.moved : suggestion.filled) += 1;
    suggestion.edits.edits = exchanges(std::move(changes));
    const Plan after = taken(plan, suggestion);
    suggestion.unmatchedBefore = unmatchedPairsOf(plan);
    suggestion.unmatchedAfter = suggestion.unmatchedBound = unmatchedPairsOf(after);
    suggestion.inversionsBefore = inversionsOf(plan);
    suggestion.inversionsAfter = inversionsOf(after);
    if (options.matchedPairs)
        suggestion.unmatchedBound -= pairsMissed;
    else
        suggestion.unmatchedBound = 0;
    return suggestion;
}

LeastUnevenness leastUnevenness(const Plan& plan, TrayUse trayUse, std::uint64_t steps) {
    LeastUnevenness least;
    Search search;
    search.steps = steps;
    Budget budget(search);
    for (const Shares& shares : sharesOf(plan)) {
        if (shares.total == 0)
            continue;
        const auto answer = solveEven(shares, trayUse, nullptr, budget);
        if (!answer)
            return {0, 0, false};
        least.found += answer->found;
        least.bound += answer->bound;
        least.proved &= answer->proved;
    }
    return least;
}

} // namespace stemwright

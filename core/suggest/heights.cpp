#include "core/suggest/heights.h"

#include "core/suggest/plan_counts.h"
#include "core/suggest/transport.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// Whether the numbers of tiers can be made up from the kinds, and how: rows are stems, columns kinds, and the
/// last column takes what is not given yet.
struct KindCells {
    const Grid<int>& least;
    const Grid<int>& spread; ///< most − least
    const std::vector<int>& kindTiers;
    int stems;

    int rows() const { return stems; }
    int columns() const { return least.columns(); }
    int most(int r, int c) const { return spread(r, c); }
    int guess(int, int c) const { return kindTiers[index(c)] / std::max(1, stems); }
    /// Evenly over the stems, as far as that goes.
    Cost at(int, int c, int y) const { return Cost{stems} * y * y - 2 * Cost{kindTiers[index(c)]} * y; }
    Cost step(int r, int c, int y) const { return at(r, c, y + 1) - at(r, c, y); }
};

/// The problem of one plan in tiers.
class TierNumbers {
public:
    std::vector<const Stem*> stems;
    std::vector<const Kind*> kinds;
    Grid<int> now;
    Grid<int> least;
    Grid<int> most;
    std::vector<int> total; ///< tiers of each kind, by column

    int rows() const { return static_cast<int>(stems.size()); }
    int columns() const { return static_cast<int>(kinds.size()); }

    /// The tiers for each stem and kind with the least Σ (tiers − target)²; nothing where none fit.
    std::optional<Grid<int>> solve() const {
        std::vector<int> tiers(index(rows()), 0);
        for (int r = 0; r < rows(); ++r)
            for (int c = 0; c < columns(); ++c)
                tiers[index(r)] += least(r, c);
        const int all = std::accumulate(total.begin(), total.end(), 0);
        const std::vector<double> targets = targetsFor(tiers, all);
        int given = std::accumulate(tiers.begin(), tiers.end(), 0);
        if (!distribute(tiers, all - given))
            return std::nullopt;
        std::vector<char> full(tiers.size(), 0);
        for (; given < all; ++given) {
            for (;;) {
                int next = -1;
                double cheapest = 0;
                for (int r = 0; r < rows(); ++r) {
                    const double cost = tiers[index(r)] - targets[index(r)];
                    if (!full[index(r)] && (next < 0 || cost < cheapest - 1e-9))
                        next = r, cheapest = cost;
                }
                if (next < 0)
                    return std::nullopt;
                ++tiers[index(next)];
                if (distribute(tiers, all - given - 1))
                    break;
                // What cannot be completed now cannot be later: the numbers only grow.
                --tiers[index(next)];
                full[index(next)] = 1;
            }
        }
        return distribute(tiers, 0);
    }

private:
    /// Evenly spaced through the mean, as wide as the ranges let them be; the stems taller now get the higher.
    std::vector<double> targetsFor(const std::vector<int>& lowest, int all) const {
        double low = 0, high = 0;
        for (int r = 0; r < rows(); ++r) {
            low += lowest[index(r)];
            for (int c = 0; c < columns(); ++c)
                high += most(r, c);
        }
        const double n = rows(), mean = all / n;
        const double step =
            rows() > 1 ? 2 * std::max(0.0, std::min(mean - low / n, high / n - mean)) / (n - 1) : 0;
        std::vector<int> order(index(rows()));
        std::iota(order.begin(), order.end(), 0);
        std::vector<int> tall(index(rows()), 0);
        for (int r = 0; r < rows(); ++r)
            for (int c = 0; c < columns(); ++c)
                tall[index(r)] += now(r, c);
        std::stable_sort(order.begin(), order.end(),
                         [&](int a, int b) { return tall[index(a)] < tall[index(b)]; });
        std::vector<double> targets(index(rows()));
        for (int i = 0; i < rows(); ++i)
            targets[index(order[index(i)])] = mean + (i - (n - 1) / 2) * step;
        return targets;
    }

    /// Tiers by stem and kind with these sums by stem, when `open` more are still to come somewhere.
    std::optional<Grid<int>> distribute(const std::vector<int>& tiers, int open) const {
        // One more row takes what is still to come; it may be of any kind.
        Grid<int> low(rows() + 1, columns()), width(rows() + 1, columns());
        std::vector<int> supply, demand = total;
        for (int r = 0; r < rows(); ++r) {
            supply.push_back(tiers[index(r)]);
            for (int c = 0; c < columns(); ++c) {
                low(r, c) = least(r, c);
                width(r, c) = most(r, c) - least(r, c);
                supply.back() -= least(r, c);
                demand[index(c)] -= least(r, c);
            }
            if (supply.back() < 0)
                return std::nullopt;
        }
        supply.push_back(open);
        for (int c = 0; c < columns(); ++c) {
            if (demand[index(c)] < 0)
                return std::nullopt;
            int room = 0;
            for (int r = 0; r < rows(); ++r)
                room += width(r, c);
            width(rows(), c) = std::min(open, room);
        }
        // What comes later must fit into the stems too: as much of a kind as all of them take, less what they
        // have, which the columns' sums see to.
        Transport<KindCells> flow;
        if (flow.solve({low, width, demand, rows() + 1}, supply, demand) != Outcome::optimal)
            return std::nullopt;
        Grid<int> result(rows(), columns());
        for (int r = 0; r < rows(); ++r)
            for (int c = 0; c < columns(); ++c)
                result(r, c) = low(r, c) + flow.flow()(r, c);
        return result;
    }
};

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

/// Sets a kind's column: its tiers and ranges on every stem, and how many tiers there are in all.
std::optional<Problem> setColumn(const Plan& plan, const KindRange& range, int perTier, TierNumbers& numbers,
                                 int c) {
    const Kind& kind = *numbers.kinds[index(c)];
    const int low = roundUp(std::max(0, range.least), perTier), high = range.most / perTier;
    if (range.least < 0 || range.most < range.least || low > high)
        return Problem{ProblemCode::badRange, "", {kind.name, text(range.least), text(range.most)}};
    int leaves = 0;
    for (const StockLine& line : kind.stock)
        leaves += line.total();
    for (const Stem& stem : plan.stems)
        if (stem.locked)
            for (const Tier& tier : stem.tiers)
                for (const Slot& slot : tier.slots)
                    leaves -= slot.filled() && slot.leaf.kind == kind.id;
    int atLeast = 0, atMost = 0;
    for (int r = 0; r < numbers.rows(); ++r) {
        int kept = 0;
        for (const Tier& tier : numbers.stems[index(r)]->tiers)
            if (kindOf(tier) == kind.id) {
                ++numbers.now(r, c);
                kept += isKept(tier);
            }
        numbers.least(r, c) = std::max(low, kept);
        numbers.most(r, c) = std::max(high, kept);
        atLeast += numbers.least(r, c);
        atMost += numbers.most(r, c);
    }
    const int toPlace = std::max(0, leaves - range.rest.value_or(0)) / perTier;
    if (toPlace < atLeast)
        return Problem{ProblemCode::rangeTooHigh,
                       "",
                       {kind.name, text(atLeast * perTier), text(toPlace * perTier),
                        text(toPlace / numbers.rows() * perTier)}};
    if (range.rest && toPlace > atMost)
        return Problem{ProblemCode::rangeTooLow,
                       "",
                       {kind.name, text(toPlace * perTier), text(atMost * perTier),
                        text(roundUp(toPlace, numbers.rows()) * perTier)}};
    numbers.total[index(c)] = std::min(toPlace, atMost);
    return std::nullopt;
}

/// The stem with `wanted` tiers of each kind in the numbers; others stay.
std::vector<Tier> tiersWanted(const Plan& plan, const TierNumbers& numbers, int row, const Grid<int>& wanted) {
    const Stem& stem = *numbers.stems[index(row)];
    std::vector<Tier> tiers = stem.tiers;
    const auto length = [&](KindId id) {
        const Kind* kind = find(plan, id);
        return kind ? std::pair(kind->length, kind->width) : std::pair(Length{}, Length{});
    };
    for (int c = 0; c < numbers.columns(); ++c) {
        const KindId kind = numbers.kinds[index(c)]->id;
        int more = wanted(row, c) - numbers.now(row, c);
        for (std::size_t t = tiers.size(); more < 0 && t-- > 0;)
            if (kindOf(tiers[t]) == kind && !isKept(tiers[t])) {
                tiers.erase(tiers.begin() + static_cast<std::ptrdiff_t>(t));
                ++more;
            }
        for (; more > 0; --more) {
            // Below the last tier of a kind that is not larger.
            std::size_t at = tiers.size();
            while (at > 0 && length(kindOf(tiers[at - 1])) > length(kind))
                --at;
            tiers.insert(tiers.begin() + static_cast<std::ptrdiff_t>(at), newTier(stem, nullptr, kind));
        }
    }
    // From the first tier that changed its place, each is turned from the one above, but those that are bound.
    std::size_t first = 0;
    while (first < tiers.size() && first < stem.tiers.size() && tiers[first] == stem.tiers[first])
        ++first;
    for (std::size_t t = first; t < tiers.size(); ++t)
        if (!tiers[t].progress.bound)
            tiers[t].turn = newTier(stem, t > 0 ? &tiers[t - 1] : nullptr, KindId{}).turn;
    return tiers;
}

/// Edits that bring a stem from its tiers to these: those that differ go, and come as they shall be.
void addEdits(const Stem& stem, const std::vector<Tier>& wanted, std::vector<Edit>& edits) {
    std::size_t same = 0;
    while (same < wanted.size() && same < stem.tiers.size() && wanted[same] == stem.tiers[same])
        ++same;
    for (std::size_t t = stem.tiers.size(); t-- > same;)
        edits.push_back(CloseTier{stem.id, static_cast<int>(t)});
    for (std::size_t t = same; t < wanted.size(); ++t)
        edits.push_back(OpenTier{stem.id, static_cast<int>(t), wanted[t]});
}

} // namespace

Result<Suggestion> heights(const Plan& plan, const HeightsOptions& options) {
    TierNumbers numbers;
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
            return Problem{ProblemCode::mixedTiers, "", {stem->name}};
    for (const KindRange& range : options.ranges) {
        const Kind* kind = find(plan, range.kind);
        if (!kind)
            return Problem{ProblemCode::noSuchId, "", {"kind", std::to_string(range.kind.value)}};
        numbers.kinds.push_back(kind);
    }
    numbers.now = numbers.least = numbers.most = Grid<int>(numbers.rows(), numbers.columns());
    numbers.total.assign(numbers.kinds.size(), 0);
    for (int c = 0; c < numbers.columns(); ++c)
        if (auto problem = setColumn(plan, options.ranges[index(c)], perTier, numbers, c))
            return *problem;
    const auto wanted = numbers.solve();
    if (!wanted)
        return Problem{ProblemCode::rangesCollide, "", {}};
    Suggestion suggestion;
    suggestion.before = unevennessOf(plan);
    suggestion.unmatchedBefore = unmatchedPairsOf(plan);
    suggestion.inversionsBefore = inversionsOf(plan);
    for (int r = 0; r < numbers.rows(); ++r)
        addEdits(*numbers.stems[index(r)], tiersWanted(plan, numbers, r, *wanted), suggestion.edits.edits);
    const Plan after = taken(plan, suggestion);
    suggestion.after = suggestion.bound = unevennessOf(after);
    suggestion.unmatchedAfter = unmatchedPairsOf(after);
    suggestion.inversionsAfter = inversionsOf(after);
    return suggestion;
}

} // namespace stemwright

#include "core/suggest/apart_heights.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numeric>
#include <tuple>
#include <unordered_map>
#include <utility>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// Heights that differ by less are one: the millionth of a millimetre.
std::int64_t ticks(Length height) {
    return std::llround(inMillimetres(height) * 1e6);
}

/// One way to make a stem.
struct Choice {
    std::vector<int> tiers; ///< by kind, or all of them together
    std::int64_t height = 0;
    double miss = 0; ///< (tiers − target)²
};

/// The ways to make each stem, in the order by height, and how much of each sort of tiers there is.
struct Ways {
    std::vector<std::vector<Choice>> choices;
    std::vector<int> total;
};

std::vector<Choice> choicesOf(const TierNumbers& numbers, int row, double target, const HeightWith& height) {
    std::vector<Choice> choices;
    std::vector<int> tiers;
    for (int c = 0; c < numbers.columns(); ++c)
        tiers.push_back(numbers.least(row, c));
    for (;;) {
        const double off = std::accumulate(tiers.begin(), tiers.end(), numbers.others[index(row)]) - target;
        choices.push_back({tiers, ticks(height(row, tiers)), off * off});
        int c = 0;
        while (c < numbers.columns() && tiers[index(c)] == numbers.most(row, c)) {
            tiers[index(c)] = numbers.least(row, c);
            ++c;
        }
        if (c == numbers.columns())
            return choices;
        ++tiers[index(c)];
    }
}

/// The same ways with the kinds' tiers taken together, each once.
Ways together(const Ways& ways) {
    Ways one;
    one.total = {std::accumulate(ways.total.begin(), ways.total.end(), 0)};
    for (const std::vector<Choice>& stem : ways.choices) {
        std::vector<Choice>& own = one.choices.emplace_back();
        for (const Choice& choice : stem) {
            const std::vector<int> sum{std::accumulate(choice.tiers.begin(), choice.tiers.end(), 0)};
            if (std::none_of(own.begin(), own.end(), [&](const Choice& known) {
                    return known.tiers == sum && known.height == choice.height;
                }))
                own.push_back({sum, choice.height, choice.miss});
        }
    }
    return one;
}

/// What the stems so far have come to, the best way to get there, and the state before it.
struct State {
    std::vector<int> used; ///< tiers by kind
    std::int64_t height = 0;
    int close = 0;
    double miss = 0;
    std::size_t from = 0; ///< in the stage before
    const Choice* choice = nullptr;
};

using Stage = std::vector<State>;

struct KeyHash {
    std::size_t operator()(const std::pair<std::vector<int>, std::int64_t>& key) const {
        auto hash = static_cast<std::uint64_t>(key.second);
        for (const int used : key.first)
            hash = (hash ^ static_cast<std::uint64_t>(used)) * std::uint64_t{0x9e3779b97f4a7c15};
        return static_cast<std::size_t>(hash ^ (hash >> 29u));
    }
};

/// For each stem in its order the choice with which fewest neighbours are closer than `apart`, and with so few
/// the least miss; nothing where there is none or it takes too many states.
std::optional<std::vector<const Choice*>> bestChoices(const Ways& ways, std::int64_t apart,
                                                      std::size_t mostStates) {
    const std::size_t sorts = ways.total.size(), stems = ways.choices.size();
    // What the stems still to come take at least and at most.
    std::vector<std::vector<int>> least(stems + 1, std::vector<int>(sorts, 0)), most = least;
    for (std::size_t i = stems; i-- > 0;)
        for (std::size_t c = 0; c < sorts; ++c) {
            const auto [low, high] =
                std::minmax_element(ways.choices[i].begin(), ways.choices[i].end(),
                                    [c](const Choice& x, const Choice& y) { return x.tiers[c] < y.tiers[c]; });
            least[i][c] = least[i + 1][c] + low->tiers[c];
            most[i][c] = most[i + 1][c] + high->tiers[c];
        }
    // Far below every height, so that the first stem is near to none.
    constexpr std::int64_t none = std::numeric_limits<std::int64_t>::min() / 2;
    std::vector<Stage> stages{{State{std::vector<int>(sorts, 0), none, 0, 0, 0, nullptr}}};
    std::size_t states = 0;
    for (std::size_t i = 0; i < stems; ++i) {
        const Stage& before = stages[i];
        Stage after;
        // Where a state stands in `after`, by what it has used and its height.
        std::unordered_map<std::pair<std::vector<int>, std::int64_t>, std::size_t, KeyHash> known;
        for (std::size_t from = 0; from < before.size(); ++from)
            for (const Choice& choice : ways.choices[i]) {
                if (choice.height < before[from].height)
                    continue;
                State next{before[from].used,
                           choice.height,
                           before[from].close + (choice.height - before[from].height < apart),
                           before[from].miss + choice.miss,
                           from,
                           &choice};
                bool fits = true;
                for (std::size_t c = 0; c < sorts; ++c) {
                    const int used = next.used[c] += choice.tiers[c];
                    const int open = ways.total[c] - used;
                    fits &= open >= least[i + 1][c] && open <= most[i + 1][c];
                }
                if (!fits)
                    continue;
                const auto [at, isNew] = known.try_emplace({next.used, next.height}, after.size());
                if (isNew) {
                    if (++states > mostStates)
                        return std::nullopt;
                    after.push_back(std::move(next));
                } else if (State& there = after[at->second];
                           std::tie(next.close, next.miss) < std::tie(there.close, there.miss)) {
                    there = std::move(next);
                }
            }
        stages.push_back(std::move(after));
    }
    const State* best = nullptr;
    for (const State& last : stages.back())
        if (!best || std::tie(last.close, last.miss) < std::tie(best->close, best->miss))
            best = &last;
    if (!best)
        return std::nullopt;
    std::vector<const Choice*> chosen(stems, nullptr);
    for (std::size_t i = stems; i-- > 0; best = &stages[i][best->from])
        chosen[i] = best->choice;
    return chosen;
}

} // namespace

std::vector<int> byHeight(const TierNumbers& numbers, const HeightWith& height) {
    std::vector<std::int64_t> heights;
    for (int r = 0; r < numbers.rows(); ++r) {
        std::vector<int> tiers;
        for (int c = 0; c < numbers.columns(); ++c)
            tiers.push_back(numbers.now(r, c));
        heights.push_back(ticks(height(r, tiers)));
    }
    std::vector<int> order(heights.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return std::pair(heights[index(a)], orderAmongAlike(numbers.stems[index(a)]->id)) <
               std::pair(heights[index(b)], orderAmongAlike(numbers.stems[index(b)]->id));
    });
    return order;
}

int closeNeighbours(std::vector<Length> heights, Length difference) {
    std::sort(heights.begin(), heights.end());
    int close = 0;
    for (std::size_t i = 1; i < heights.size(); ++i)
        close += ticks(heights[i]) - ticks(heights[i - 1]) < ticks(difference);
    return close;
}

std::optional<Grid<int>> keepApart(const TierNumbers& numbers, const HeightWith& height, Length difference,
                                   std::size_t mostStates) {
    const std::vector<int> order = byHeight(numbers, height);
    const std::vector<double> targets = numbers.targets();
    Ways ways{{}, numbers.total};
    for (const int row : order)
        ways.choices.push_back(choicesOf(numbers, row, targets[index(row)], height));
    const std::int64_t apart = ticks(difference);
    // Which kind a tier is of hardly ever matters for the height. The best answer that does not heed the kinds'
    // numbers is the best of all wherever the kinds can be shared out for it.
    const Ways sums = together(ways);
    if (const auto chosen = bestChoices(sums, apart, mostStates)) {
        std::vector<int> tiers = numbers.others;
        std::vector<std::int64_t> heights(order.size());
        for (std::size_t i = 0; i < order.size(); ++i) {
            tiers[index(order[i])] += (*chosen)[i]->tiers.front();
            heights[i] = (*chosen)[i]->height;
        }
        if (const auto split = numbers.split(tiers)) {
            bool asMeant = true;
            for (std::size_t i = 0; i < order.size(); ++i) {
                const int* row = split->row(order[i]);
                asMeant &= ticks(height(order[i], {row, row + numbers.columns()})) == heights[i];
            }
            if (asMeant)
                return split;
        }
    }
    const auto chosen = bestChoices(ways, apart, mostStates);
    if (!chosen)
        return std::nullopt;
    Grid<int> tiers(numbers.rows(), numbers.columns());
    for (std::size_t i = 0; i < order.size(); ++i)
        for (int c = 0; c < numbers.columns(); ++c)
            tiers(order[i], c) = (*chosen)[i]->tiers[index(c)];
    return tiers;
}

} // namespace stemwright

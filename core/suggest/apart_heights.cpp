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
    std::vector<int> tiers;
    std::int64_t height = 0;
    double miss = 0; ///< (tiers − target)²
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
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return heights[index(a)] < heights[index(b)]; });
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
    const int columns = numbers.columns();
    const std::vector<int> order = byHeight(numbers, height);
    const std::vector<double> targets = numbers.targets();
    // What the stems still to come take at least and at most.
    std::vector<std::vector<int>> least(order.size() + 1, std::vector<int>(index(columns), 0)), most = least;
    for (std::size_t i = order.size(); i-- > 0;)
        for (int c = 0; c < columns; ++c) {
            least[i][index(c)] = least[i + 1][index(c)] + numbers.least(order[i], c);
            most[i][index(c)] = most[i + 1][index(c)] + numbers.most(order[i], c);
        }
    const std::int64_t apart = ticks(difference);
    // Far below every height, so that the first stem is near to none.
    constexpr std::int64_t first = std::numeric_limits<std::int64_t>::min() / 2;
    std::vector<std::vector<Choice>> choices;
    for (const int row : order)
        choices.push_back(choicesOf(numbers, row, targets[index(row)], height));
    std::vector<Stage> stages{{State{std::vector<int>(index(columns), 0), first, 0, 0, 0, nullptr}}};
    std::size_t states = 0;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Stage& before = stages[i];
        Stage after;
        // Where a state stands in `after`, by what it has used and its height.
        std::unordered_map<std::pair<std::vector<int>, std::int64_t>, std::size_t, KeyHash> known;
        for (std::size_t from = 0; from < before.size(); ++from)
            for (const Choice& choice : choices[i]) {
                if (choice.height < before[from].height)
                    continue;
                State next{before[from].used,
                           choice.height,
                           before[from].close + (choice.height - before[from].height < apart),
                           before[from].miss + choice.miss,
                           from,
                           &choice};
                bool fits = true;
                for (int c = 0; c < columns; ++c) {
                    const int used = next.used[index(c)] += choice.tiers[index(c)];
                    const int open = numbers.total[index(c)] - used;
                    fits &= open >= least[i + 1][index(c)] && open <= most[i + 1][index(c)];
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
    Grid<int> tiers(numbers.rows(), columns);
    for (std::size_t i = order.size(); i-- > 0; best = &stages[i][best->from])
        for (int c = 0; c < columns; ++c)
            tiers(order[i], c) = best->choice->tiers[index(c)];
    return tiers;
}

} // namespace stemwright

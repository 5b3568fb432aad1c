#include "core/suggest/apart_heights.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <numeric>
#include <tuple>

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

/// What the stems so far have come to.
struct Key {
    std::vector<int> used; ///< tiers by kind
    std::int64_t height = 0;

    friend auto operator<=>(const Key&, const Key&) = default;
};

struct State {
    int close = 0;
    double miss = 0;
    const std::pair<const Key, State>* from = nullptr;
    const Choice* choice = nullptr;
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
    std::vector<std::vector<Choice>> choices;
    for (const int row : order)
        choices.push_back(choicesOf(numbers, row, targets[index(row)], height));
    // Maps keep their entries where they are, so that a state can point at the one it came from.
    std::vector<std::map<Key, State>> stages(order.size() + 1);
    stages[0][Key{std::vector<int>(index(columns), 0), std::numeric_limits<std::int64_t>::min() / 2}] = {};
    std::size_t states = 0;
    for (std::size_t i = 0; i < order.size(); ++i) {
        for (const auto& before : stages[i])
            for (const Choice& choice : choices[i]) {
                if (choice.height < before.first.height)
                    continue;
                Key key{before.first.used, choice.height};
                bool fits = true;
                for (int c = 0; c < columns; ++c) {
                    const int used = key.used[index(c)] += choice.tiers[index(c)];
                    const int open = numbers.total[index(c)] - used;
                    fits &= open >= least[i + 1][index(c)] && open <= most[i + 1][index(c)];
                }
                if (!fits)
                    continue;
                const State next{before.second.close + (choice.height - before.first.height < apart),
                                 before.second.miss + choice.miss, &before, &choice};
                const auto [at, isNew] = stages[i + 1].try_emplace(std::move(key), next);
                if (isNew && ++states > mostStates)
                    return std::nullopt;
                if (!isNew && std::tie(next.close, next.miss) < std::tie(at->second.close, at->second.miss))
                    at->second = next;
            }
    }
    const std::pair<const Key, State>* best = nullptr;
    for (const auto& last : stages.back())
        if (!best ||
            std::tie(last.second.close, last.second.miss) < std::tie(best->second.close, best->second.miss))
            best = &last;
    if (!best)
        return std::nullopt;
    Grid<int> tiers(numbers.rows(), columns);
    for (std::size_t i = order.size(); i-- > 0; best = best->second.from)
        for (int c = 0; c < columns; ++c)
            tiers(order[i], c) = best->second.choice->tiers[index(c)];
    return tiers;
}

} // namespace stemwright

#include "core/suggest/tier_numbers.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// Tiers given to stems by kind, and those of each kind that are not given yet. They always find room: a kind's
/// tiers are never more than the stems' ranges hold together.
struct Giving {
    Grid<int> given;
    std::vector<int> rest;
    const Grid<int>& least;
    const Grid<int>& most;

    /// One tier more for a stem, of whichever kind: one that is left over, or one that another stem changes for
    /// such a one, and so on along the shortest such path. False where there is no path, now and later.
    bool raise(int stem) {
        const int kinds = given.columns();
        constexpr int unseen = -2, start = -1;
        struct Step {
            int from = unseen; ///< the kind that is taken instead; `start` at the stem itself
            int by = -1;       ///< the stem that changes the one for the other
        };
        std::vector<Step> steps(index(kinds));
        std::vector<int> queue;
        for (int c = 0; c < kinds; ++c)
            if (given(stem, c) < most(stem, c)) {
                steps[index(c)].from = start;
                queue.push_back(c);
            }
        for (std::size_t i = 0; i < queue.size(); ++i) {
            const int c = queue[i];
            if (rest[index(c)] > 0) {
                take(stem, c, steps);
                return true;
            }
            for (int r = 0; r < given.rows(); ++r)
                for (int other = 0; other < kinds && given(r, c) > least(r, c); ++other)
                    if (steps[index(other)].from == unseen && given(r, other) < most(r, other)) {
                        steps[index(other)] = {c, r};
                        queue.push_back(other);
                    }
        }
        return false;
    }

private:
    template <class Steps> void take(int stem, int kind, const Steps& steps) {
        --rest[index(kind)];
        while (steps[index(kind)].from >= 0) {
            const auto& step = steps[index(kind)];
            ++given(step.by, kind);
            --given(step.by, step.from);
            kind = step.from;
        }
        ++given(stem, kind);
    }
};

} // namespace

double orderAmongAlike(StemId id) {
    constexpr double golden = 0.6180339887498949;
    return std::fmod(id.value * golden, 1.0);
}

std::vector<double> TierNumbers::targets() const {
    const double all =
        std::accumulate(total.begin(), total.end(), std::accumulate(others.begin(), others.end(), 0.0));
    double low = 0, high = 0;
    for (int r = 0; r < rows(); ++r) {
        low += others[index(r)];
        high += others[index(r)];
        for (int c = 0; c < columns(); ++c) {
            low += least(r, c);
            high += most(r, c);
        }
    }
    const double n = rows(), mean = all / n;
    const double step = rows() > 1 ? 2 * std::max(0.0, std::min(mean - low / n, high / n - mean)) / (n - 1) : 0;
    std::vector<int> order(index(rows()));
    std::iota(order.begin(), order.end(), 0);
    std::vector<int> tall = others;
    for (int r = 0; r < rows(); ++r)
        for (int c = 0; c < columns(); ++c)
            tall[index(r)] += now(r, c);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return std::pair(tall[index(a)], orderAmongAlike(stems[index(a)]->id)) <
               std::pair(tall[index(b)], orderAmongAlike(stems[index(b)]->id));
    });
    std::vector<double> wanted(index(rows()));
    for (int i = 0; i < rows(); ++i)
        wanted[index(order[index(i)])] = mean + (i - (n - 1) / 2) * step;
    return wanted;
}

std::optional<Grid<int>> TierNumbers::solve() const {
    Giving giving{least, total, least, most};
    std::vector<int> tiers = others;
    int open = 0;
    for (int c = 0; c < columns(); ++c) {
        int room = 0;
        for (int r = 0; r < rows(); ++r) {
            giving.rest[index(c)] -= least(r, c);
            room += most(r, c) - least(r, c);
            tiers[index(r)] += least(r, c);
        }
        if (giving.rest[index(c)] < 0 || giving.rest[index(c)] > room)
            return std::nullopt;
        open += giving.rest[index(c)];
    }
    const std::vector<double> wanted = targets();
    std::vector<char> full(tiers.size(), 0);
    while (open > 0) {
        int next = -1;
        double cheapest = 0;
        for (int r = 0; r < rows(); ++r) {
            const double cost = tiers[index(r)] - wanted[index(r)];
            if (!full[index(r)] && (next < 0 || cost < cheapest - 1e-9))
                next = r, cheapest = cost;
        }
        if (next < 0)
            return std::nullopt;
        if (!giving.raise(next)) {
            // What it cannot take now it cannot later: the numbers only grow.
            full[index(next)] = 1;
            continue;
        }
        ++tiers[index(next)];
        --open;
    }
    return giving.given;
}

std::optional<Grid<int>> TierNumbers::split(const std::vector<int>& tiers) const {
    Giving giving{least, total, least, most};
    for (int c = 0; c < columns(); ++c)
        for (int r = 0; r < rows(); ++r)
            giving.rest[index(c)] -= least(r, c);
    for (int r = 0; r < rows(); ++r) {
        int reached = others[index(r)];
        for (int c = 0; c < columns(); ++c)
            reached += least(r, c);
        for (; reached < tiers[index(r)]; ++reached)
            if (!giving.raise(r))
                return std::nullopt;
        if (reached > tiers[index(r)])
            return std::nullopt;
    }
    for (const int rest : giving.rest)
        if (rest != 0)
            return std::nullopt;
    return giving.given;
}

} // namespace stemwright

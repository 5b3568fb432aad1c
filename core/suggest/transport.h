#pragma once

#include "core/suggest/grid.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <functional>
#include <limits>
#include <utility>
#include <vector>

namespace stemwright {

/// Whole costs: sums and comparisons are exact.
using Cost = std::int64_t;
inline constexpr Cost noCost = std::numeric_limits<Cost>::max() / 4;

/// Gives `supply` units to the cells of one line at the least cost. `most(c)` bounds a cell, `step(c, y)` is
/// the cost of its unit after y, which never falls as y grows; `units` holds a first guess and then the answer.
/// The cost is separable and convex, so an answer is the best once no single unit can be moved with gain; a
/// guess near the answer is mended in a few moves. False where the bounds cannot hold the supply.
template <class Most, class Step>
bool settleLine(int cells, int supply, int* units, const Most& most, const Step& step) {
    int sum = 0;
    for (int c = 0; c < cells; ++c) {
        units[c] = std::clamp(units[c], 0, most(c));
        sum += units[c];
    }
    // Far from the supply, the cheapest next units are kept in a heap rather than looked for each time.
    if (constexpr int far = 8; std::abs(supply - sum) > far) {
        const int change = sum < supply ? 1 : -1;
        std::vector<std::pair<Cost, int>> next;
        const auto offer = [&](int c) {
            if (change > 0 ? units[c] < most(c) : units[c] > 0) {
                next.emplace_back(change > 0 ? step(c, units[c]) : -step(c, units[c] - 1), c);
                return true;
            }
            return false;
        };
        next.reserve(static_cast<std::size_t>(cells));
        for (int c = 0; c < cells; ++c)
            offer(c);
        std::make_heap(next.begin(), next.end(), std::greater<>());
        for (; sum != supply; sum += change) {
            if (next.empty())
                return false;
            std::pop_heap(next.begin(), next.end(), std::greater<>());
            const int c = next.back().second;
            next.pop_back();
            units[c] += change;
            if (offer(c))
                std::push_heap(next.begin(), next.end(), std::greater<>());
        }
    }
    for (;;) {
        int into = -1, outOf = -1;
        Cost least = noCost, greatest = -noCost;
        for (int c = 0; c < cells; ++c) {
            if (units[c] < most(c))
                if (const Cost cost = step(c, units[c]); cost < least)
                    least = cost, into = c;
            if (units[c] > 0)
                if (const Cost cost = step(c, units[c] - 1); cost > greatest)
                    greatest = cost, outOf = c;
        }
        if (sum < supply) {
            if (into < 0)
                return false;
            ++units[into], ++sum;
        } else if (sum > supply) {
            --units[outOf], --sum;
        } else if (into >= 0 && outOf >= 0 && least < greatest) {
            ++units[into], --units[outOf];
        } else {
            return true;
        }
    }
}

enum class Outcome {
    optimal,
    cut,       ///< every answer costs the cutoff or more
    infeasible ///< supplies, demands and bounds contradict each other
};

/// The separable convex transportation problem, exactly: whole units from rows to columns, row r sends
/// supply[r], column c takes demand[c] (the sums are equal), at the least sum of the cells' costs.
///
/// `Cells` describes the costs:
///   int rows(), columns();
///   int guess(r, c);      where a good answer probably is; any number is allowed
///   int most(r, c);       the most that the cell may hold
///   Cost at(r, c, y);     the cost of y units
///   Cost step(r, c, y);   at(r, c, y + 1) − at(r, c, y); must never fall as y grows
///
/// Method: every row is settled by itself, which is the least cost without the columns' demands, and so a
/// minimum-cost flow for the column sums that it happens to have; surplus units then travel one by one along
/// shortest paths of the residual network to columns that lack one, which keeps the flow a minimum-cost flow
/// (successive shortest paths: Ahuja, Magnanti & Orlin, Network Flows, 1993, chapters 9 and 14; from memory).
/// A path that goes column → row → column is kept as one arc, the cheapest over all rows, so the network has as
/// many nodes as columns: callers with more columns than rows transpose first. A rounded start leaves few
/// surplus units, so the work is close to rows × columns².
///
/// Costs rise with every unit that travels, so the search stops as soon as the cutoff is reached.
template <class Cells> class Transport {
public:
    Outcome solve(const Cells& cells, const std::vector<int>& supply, const std::vector<int>& demand,
                  Cost cutoff = noCost) {
        rows_ = cells.rows();
        columns_ = cells.columns();
        flow_ = Grid<int>(rows_, columns_);
        cost_ = 0;
        potential_.assign(index(columns_), 0);
        for (int r = 0; r < rows_; ++r) {
            for (int c = 0; c < columns_; ++c)
                flow_(r, c) = cells.guess(r, c);
            if (!settleLine(
                    columns_, supply[index(r)], flow_.row(r), [&](int c) { return cells.most(r, c); },
                    [&](int c, int y) { return cells.step(r, c, y); }))
                return Outcome::infeasible;
            for (int c = 0; c < columns_; ++c)
                cost_ += cells.at(r, c, flow_(r, c));
        }
        if (cost_ >= cutoff)
            return Outcome::cut;
        excess_.assign(index(columns_), 0);
        for (int c = 0; c < columns_; ++c) {
            excess_[index(c)] = -demand[index(c)];
            for (int r = 0; r < rows_; ++r)
                excess_[index(c)] += flow_(r, c);
        }
        if (std::all_of(excess_.begin(), excess_.end(), [](int e) { return e == 0; }))
            return Outcome::optimal;
        layArcs(cells);
        for (int from = 0; from < columns_; ++from)
            while (excess_[index(from)] > 0) {
                const int to = shortestPath(from);
                if (to < 0)
                    return Outcome::infeasible;
                send(cells, from, to);
                if (cost_ >= cutoff)
                    return Outcome::cut;
            }
        return Outcome::optimal;
    }

    const Grid<int>& flow() const { return flow_; }
    /// Of the answer; after a cut, what every answer costs at least.
    Cost cost() const { return cost_; }
    /// Prices by column with which every row's part of the answer is the best that the row alone could do: the
    /// certificate that the answer is optimal. Settling row r by step(r, c, y) − price(c) gives a row of the
    /// same cost.
    const std::vector<Cost>& prices() const { return potential_; }

private:
    static std::size_t index(int i) { return static_cast<std::size_t>(i); }

    void look(const Cells& cells, int r, int c) {
        const int y = flow_(r, c);
        // What cannot be is dear enough that no gain elsewhere makes up for it.
        constexpr Cost never = 2 * noCost;
        up_(c, r) = y < cells.most(r, c) ? cells.step(r, c, y) : never;
        down_(c, r) = y > 0 ? -cells.step(r, c, y - 1) : never;
    }

    void bestArc(int from, int to) {
        const Cost* down = down_.row(from);
        const Cost* up = up_.row(to);
        // Rows that did as well the last time still do if their cost is the same: nothing became cheaper that
        // mendArc has not seen.
        std::vector<int>& equals = equals_(from, to);
        while (!equals.empty()) {
            const int r = equals.back();
            equals.pop_back();
            if (down[r] + up[r] == arc_(from, to)) {
                by_(from, to) = r;
                return;
            }
        }
        Cost least = noCost;
        int by = -1;
        for (int r = 0; r < rows_; ++r)
            if (const Cost cost = down[r] + up[r]; cost < least) {
                least = cost, by = r;
                equals.clear();
            } else if (cost == least && equals.size() < mostEquals) {
                equals.push_back(r);
            }
        if (by < 0)
            equals.clear();
        arc_(from, to) = least;
        by_(from, to) = by;
    }

    void layArcs(const Cells& cells) {
        up_ = Grid<Cost>(columns_, rows_);
        down_ = Grid<Cost>(columns_, rows_);
        arc_ = Grid<Cost>(columns_, columns_, noCost);
        by_ = Grid<int>(columns_, columns_, -1);
        equals_ = Grid<std::vector<int>>(columns_, columns_);
        for (int r = 0; r < rows_; ++r)
            for (int c = 0; c < columns_; ++c)
                look(cells, r, c);
        for (int from = 0; from < columns_; ++from)
            for (int to = 0; to < columns_; ++to)
                if (from != to)
                    bestArc(from, to);
    }

    /// Dijkstra on reduced costs from one column to the nearest that lacks a unit; −1 where none is reached.
    int shortestPath(int from) {
        distance_.assign(index(columns_), noCost);
        previous_.assign(index(columns_), -1);
        done_.assign(index(columns_), 0);
        distance_[index(from)] = 0;
        for (;;) {
            int near = -1;
            for (int c = 0; c < columns_; ++c)
                if (!done_[index(c)] && distance_[index(c)] < noCost &&
                    (near < 0 || distance_[index(c)] < distance_[index(near)]))
                    near = c;
            if (near < 0)
                return -1;
            done_[index(near)] = 1;
            if (excess_[index(near)] < 0) {
                const Cost reach = distance_[index(near)];
                cost_ += reach - potential_[index(from)] + potential_[index(near)];
                for (int c = 0; c < columns_; ++c)
                    potential_[index(c)] += std::min(distance_[index(c)], reach);
                return near;
            }
            for (int c = 0; c < columns_; ++c) {
                if (done_[index(c)] || arc_(near, c) == noCost)
                    continue;
                const Cost reach =
                    distance_[index(near)] + arc_(near, c) + potential_[index(near)] - potential_[index(c)];
                if (reach < distance_[index(c)])
                    distance_[index(c)] = reach, previous_[index(c)] = near;
            }
        }
    }

    void send(const Cells& cells, int from, int to) {
        --excess_[index(from)];
        ++excess_[index(to)];
        touched_.clear();
        for (int c = to; c != from; c = previous_[index(c)]) {
            const int before = previous_[index(c)];
            const int r = by_(before, c);
            --flow_(r, before);
            ++flow_(r, c);
            touched_.push_back({r, before});
            touched_.push_back({r, c});
        }
        std::sort(touched_.begin(), touched_.end());
        touched_.erase(std::unique(touched_.begin(), touched_.end()), touched_.end());
        for (const auto& [r, c] : touched_)
            look(cells, r, c);
        for (const auto& [r, c] : touched_)
            for (int other = 0; other < columns_; ++other) {
                if (other == c)
                    continue;
                mendArc(c, other, r);
                mendArc(other, c, r);
            }
    }

    void mendArc(int from, int to, int r) {
        if (by_(from, to) == r) {
            bestArc(from, to);
        } else if (const Cost cost = down_(from, r) + up_(to, r); cost < arc_(from, to)) {
            arc_(from, to) = cost;
            by_(from, to) = r;
            equals_(from, to).clear();
        }
    }

    int rows_ = 0;
    int columns_ = 0;
    Grid<int> flow_;
    Cost cost_ = 0;
    std::vector<int> excess_;
    std::vector<Cost> potential_;
    Grid<Cost> up_;   ///< by column and row: what one more unit costs
    Grid<Cost> down_; ///< by column and row: what one unit less costs
    Grid<Cost> arc_;
    Grid<int> by_; ///< the row that gives an arc its cost
    /// Other rows that give it the same, some of them; boards have few different stems, so there are many.
    Grid<std::vector<int>> equals_;
    static constexpr std::size_t mostEquals = 256;
    std::vector<Cost> distance_;
    std::vector<int> previous_;
    std::vector<char> done_;
    std::vector<std::pair<int, int>> touched_;
};

/// The same costs with rows and columns exchanged.
template <class Cells> struct Transposed {
    const Cells& cells;
    int rows() const { return cells.columns(); }
    int columns() const { return cells.rows(); }
    int guess(int r, int c) const { return cells.guess(c, r); }
    int most(int r, int c) const { return cells.most(c, r); }
    Cost at(int r, int c, int y) const { return cells.at(c, r, y); }
    Cost step(int r, int c, int y) const { return cells.step(c, r, y); }
};

} // namespace stemwright

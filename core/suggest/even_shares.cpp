#include "core/suggest/even_shares.h"

#include <numeric>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

std::vector<int> columnSums(const Grid<int>& grid) {
    std::vector<int> sums(index(grid.columns()), 0);
    for (int r = 0; r < grid.rows(); ++r)
        for (int c = 0; c < grid.columns(); ++c)
            sums[index(c)] += grid(r, c);
    return sums;
}

Grid<int> transposed(const Grid<int>& grid) {
    Grid<int> across(grid.columns(), grid.rows());
    for (int r = 0; r < grid.rows(); ++r)
        for (int c = 0; c < grid.columns(); ++c)
            across(c, r) = grid(r, c);
    return across;
}

} // namespace

EvenShares::EvenShares(const Shares& shares, const Scale& scale, const Grid<int>* whim)
    : shares_(shares), cells_(shares, scale, whim), columnFixed_(columnSums(shares.fixed)) {}

Cost EvenShares::improve(const std::vector<int>& placed, ShareAnswer& best, Budget&) {
    cells_.setPlaced(placed);
    demand_.resize(placed.size());
    for (std::size_t c = 0; c < placed.size(); ++c)
        demand_[c] = placed[c] - columnFixed_[c];
    const bool across = cells_.columns() > cells_.rows();
    const Outcome outcome = across ? flowAcross_.solve({cells_}, demand_, shares_.free, best.cost)
                                   : flow_.solve(cells_, shares_.free, demand_, best.cost);
    if (outcome == Outcome::infeasible)
        return noCost;
    const Cost cost = across ? flowAcross_.cost() : flow_.cost();
    if (outcome == Outcome::optimal) {
        best.placed = placed;
        best.units = across ? transposed(flowAcross_.flow()) : flow_.flow();
        best.cost = cost;
    }
    return cost;
}

Cost EvenShares::columnBound(int column, int placed) {
    cells_.setPlaced(column, placed);
    units_.resize(index(cells_.rows()));
    for (int r = 0; r < cells_.rows(); ++r)
        units_[index(r)] = cells_.guess(r, column);
    if (!settleLine(
            cells_.rows(), placed - columnFixed_[index(column)], units_.data(),
            [&](int r) { return cells_.most(r, column); },
            [&](int r, int y) { return cells_.step(r, column, y); }))
        return noCost;
    Cost cost = 0;
    for (int r = 0; r < cells_.rows(); ++r)
        cost += cells_.at(r, column, units_[index(r)]);
    return cost;
}

std::optional<ShareAnswer> asItStands(const Shares& shares, const Scale& scale, const Grid<int>* whim) {
    ShareAnswer answer;
    answer.units = shares.now;
    answer.placed = columnSums(shares.now);
    const std::vector<int> fixed = columnSums(shares.fixed);
    for (std::size_t c = 0; c < fixed.size(); ++c)
        answer.placed[c] += fixed[c];
    if (std::accumulate(answer.placed.begin(), answer.placed.end(), 0) != shares.total)
        return std::nullopt;
    ShareCells cells(shares, scale, whim);
    cells.setPlaced(answer.placed);
    answer.cost = 0;
    for (int r = 0; r < shares.rows(); ++r)
        for (int c = 0; c < shares.columns(); ++c)
            answer.cost += cells.at(r, c, shares.now(r, c));
    return answer;
}

} // namespace stemwright

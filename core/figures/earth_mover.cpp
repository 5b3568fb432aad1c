#include "core/figures/earth_mover.h"

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <limits>
#include <numeric>
#include <vector>

namespace stemwright {
namespace {

/// A transportation problem in which every supply is to be moved whole, and its solution as it grows. A row is
/// a supply, a column a demand. The potentials prove what has been moved so far to be the cheapest way: for
/// each arc cost − potential of the row − potential of the column is not below 0, and it is 0 where there is
/// flow.
template <class Amount> class Transport {
public:
    void reset(std::size_t rows, std::size_t columns) {
        rows_ = rows;
        columns_ = columns;
        supply.assign(rows, 0);
        demand.assign(columns, 0);
        costs.resize(rows * columns);
        flow_.assign(rows * columns, 0);
        rowPotential_.assign(rows, 0);
        columnPotential_.assign(columns, 0);
        senders_.resize(columns);
        for (std::vector<std::size_t>& list : senders_)
            list.clear();
        reached_.resize(columns);
        columnReached_.resize(columns);
        rowsBefore_.resize(columns);
        rowReached_.resize(rows);
        through_.resize(rows);
        settled_.assign(rows, 0);
    }

    /// Moves what a free arc can carry. Only before solve(): all potentials are 0 then, which proves it.
    void moveFree(std::size_t row, std::size_t column) {
        assert(costs[row * columns_ + column] == 0);
        const Amount amount = std::min(supply[row], demand[column]);
        supply[row] -= amount;
        demand[column] -= amount;
        add(row, column, amount);
    }

    void solve() {
        for (std::size_t row = 0; row < rows_; ++row) {
            while (supply[row] > 0)
                send(row);
        }
    }

    /// What a unit of the flow costs in the mean.
    double meanCost() const {
        double sum = 0;
        double amount = 0;
        for (std::size_t column = 0; column < columns_; ++column) {
            for (const std::size_t row : senders_[column]) {
                const auto moved = static_cast<double>(flow_[column * rows_ + row]);
                amount += moved;
                sum += moved * costs[row * columns_ + column];
            }
        }
        return sum / amount;
    }

    std::vector<Amount> supply; ///< what is still to be moved
    std::vector<Amount> demand; ///< what is still wanted
    std::vector<double> costs;  ///< row-major

private:
    /// One search for the nearest demands from a row (Dijkstra over the columns), in which as many as come up
    /// are served. It ends when the row is empty, or when an arc that the search had come by is emptied: the
    /// solution has changed under it, and the caller starts another.
    void send(std::size_t start) {
        settledRows_.clear();
        settledColumns_.clear();
        std::fill(reached_.begin(), reached_.end(), infinity);
        openPotential_ = columnPotential_;
        settle(start, 0);

        double distance = 0;
        for (;;) {
            const std::size_t column = nearestOpen();
            if (column == columns_) {
                // All demands are met: what is left of the supply is a rounding error in the masses.
                supply[start] = 0;
                break;
            }
            distance = reached_[column];
            columnReached_[column] = distance;
            rowsBefore_[column] = settledRows_.size();
            settledColumns_.push_back(column);
            // Out of the search: infinitely far, and no row brings it nearer.
            reached_[column] = infinity;
            openPotential_[column] = -infinity;
            if (demand[column] > 0 && (!serve(start, column) || supply[start] == 0))
                break;
            for (const std::size_t row : senders_[column]) {
                // Back along an arc with flow costs nothing in these potentials.
                if (!settled_[row]) {
                    through_[row] = column;
                    settle(row, distance);
                }
            }
        }
        for (const std::size_t row : settledRows_) {
            rowPotential_[row] += distance - rowReached_[row];
            settled_[row] = 0;
        }
        for (const std::size_t column : settledColumns_)
            columnPotential_[column] -= distance - columnReached_[column];
    }

    /// The nearest column that is not settled; columns_ where all are.
    std::size_t nearestOpen() const {
        const double* const reached = reached_.data();
        // Four minima side by side: a single one would make each step wait for the one before.
        double least[4] = {infinity, infinity, infinity, infinity};
        std::size_t column = 0;
        for (; column + 4 <= columns_; column += 4) {
            for (std::size_t lane = 0; lane < 4; ++lane)
                least[lane] = lesser(least[lane], reached[column + lane]);
        }
        for (; column < columns_; ++column)
            least[0] = lesser(least[0], reached[column]);
        const double nearest = lesser(lesser(least[0], least[1]), lesser(least[2], least[3]));
        if (nearest == infinity)
            return columns_;
        return static_cast<std::size_t>(std::find(reached, reached + columns_, nearest) - reached);
    }

    void settle(std::size_t row, double distance) {
        settled_[row] = 1;
        settledRows_.push_back(row);
        rowReached_[row] = distance;
        // Nothing but minima, which compilers turn into vector instructions. Settled columns are no farther
        // than `distance`, so nothing here is less for them.
        const double* __restrict const cost = &costs[row * columns_];
        const double* __restrict const potential = openPotential_.data();
        double* __restrict const reached = reached_.data();
        const double ownPotential = rowPotential_[row];
        const std::size_t columns = columns_;
        for (std::size_t column = 0; column < columns; ++column) {
            const double there = reachedBy(distance, cost[column], ownPotential, potential[column]);
            reached[column] = lesser(reached[column], there);
        }
    }

    /// The settled row from which a settled column was reached: looked for only where something is moved, which
    /// is less work than keeping it for every column on the way.
    std::size_t cameFrom(std::size_t column) const {
        double least = infinity;
        std::size_t from = rows_;
        // Only rows that were settled before the column can have been on the way, so that it cannot run in a
        // ring.
        for (std::size_t i = 0; i < rowsBefore_[column]; ++i) {
            const std::size_t row = settledRows_[i];
            const double there = reachedBy(rowReached_[row], costs[row * columns_ + column], rowPotential_[row],
                                           columnPotential_[column]);
            if (there < least) {
                least = there;
                from = row;
            }
        }
        return from;
    }

    static double lesser(double a, double b) { return b < a ? b : a; }

    static double reachedBy(double distance, double cost, double rowPotential, double columnPotential) {
        // Rounding can leave a reduced cost a hair below 0.
        const double reduced = cost - rowPotential - columnPotential;
        return distance + (reduced > 0 ? reduced : 0);
    }

    /// Moves as much as it can from the start to a column, back along the way by which it was reached. False
    /// when that empties an arc of this way.
    bool serve(std::size_t start, std::size_t goal) {
        way_.clear();
        Amount amount = std::min(supply[start], demand[goal]);
        for (std::size_t column = goal;;) {
            const std::size_t row = cameFrom(column);
            way_.push_back(row);
            if (row == start)
                break;
            column = through_[row];
            amount = std::min(amount, flow_[column * rows_ + row]);
        }
        bool whole = true;
        std::size_t column = goal;
        for (const std::size_t row : way_) {
            add(row, column, amount);
            if (row == start)
                break;
            column = through_[row];
            Amount& rest = flow_[column * rows_ + row];
            rest -= amount;
            if (!(rest > 0)) {
                whole = false;
                std::erase(senders_[column], row);
            }
        }
        supply[start] -= amount;
        demand[goal] -= amount;
        return whole;
    }

    void add(std::size_t row, std::size_t column, Amount amount) {
        Amount& flow = flow_[column * rows_ + row];
        if (flow == 0 && amount > 0)
            senders_[column].push_back(row);
        flow += amount;
    }

    static constexpr double infinity = std::numeric_limits<double>::infinity();

    std::size_t rows_ = 0;
    std::size_t columns_ = 0;
    std::vector<Amount> flow_;                      ///< column-major: a column is asked for its rows
    std::vector<std::vector<std::size_t>> senders_; ///< the rows that a column has flow from
    std::vector<double> rowPotential_;
    std::vector<double> columnPotential_;
    // Of the search in hand.
    std::vector<double> reached_; ///< a column's distance from the start so far; infinity for a settled one
    std::vector<double> openPotential_;   ///< of the columns; minus infinity for a settled one
    std::vector<double> columnReached_;   ///< a settled column's distance from the start
    std::vector<std::size_t> rowsBefore_; ///< how many rows were settled before a settled column
    std::vector<double> rowReached_;      ///< a settled row's distance from the start
    std::vector<std::size_t> through_;    ///< the column by which a row was reached
    std::vector<char> settled_;           ///< rows, by their number
    std::vector<std::size_t> settledRows_;
    std::vector<std::size_t> settledColumns_;
    std::vector<std::size_t> way_; ///< the rows from a served column back to the start
};

/// The places of the masses above 0: the others take no part.
template <class Amount> void listPresent(std::span<const Amount> masses, std::vector<std::size_t>& present) {
    present.clear();
    for (std::size_t i = 0; i < masses.size(); ++i) {
        assert(masses[i] >= 0);
        if (masses[i] > 0)
            present.push_back(i);
    }
}

template <class Amount> Amount sum(std::span<const Amount> masses) {
    return std::accumulate(masses.begin(), masses.end(), Amount{0});
}

} // namespace

struct EarthMover::Buffers {
    std::vector<std::size_t> rows;
    std::vector<std::size_t> columns;
    Transport<std::int64_t> whole;
    Transport<double> real;

    /// `massOne` and `massOther` turn a weight into a mass, so that both sides have the same total.
    template <class Amount, class MassOne, class MassOther>
    double samePoints(Transport<Amount>& transport, std::span<const std::int64_t> one,
                      std::span<const std::int64_t> other, std::span<const double> costs, MassOne massOne,
                      MassOther massOther) {
        transport.reset(rows.size(), columns.size());
        for (std::size_t j = 0; j < columns.size(); ++j)
            transport.demand[j] = massOther(other[columns[j]]);
        for (std::size_t i = 0; i < rows.size(); ++i) {
            transport.supply[i] = massOne(one[rows[i]]);
            for (std::size_t j = 0; j < columns.size(); ++j)
                transport.costs[i * columns.size() + j] = costs[rows[i] * other.size() + columns[j]];
        }
        // What both sides have in one place stays there to begin with. It need not stay in the end: where a
        // detour is shorter than the straight way, as can be in ΔE00, some of it is moved on and replaced.
        for (std::size_t i = 0, j = 0; i < rows.size() && j < columns.size();) {
            if (rows[i] < columns[j])
                ++i;
            else if (rows[i] > columns[j])
                ++j;
            else {
                if (transport.costs[i * columns.size() + j] == 0)
                    transport.moveFree(i, j);
                ++i, ++j;
            }
        }
        transport.solve();
        return transport.meanCost();
    }
};

EarthMover::EarthMover() : buffers_(std::make_unique<Buffers>()) {}
EarthMover::~EarthMover() = default;
EarthMover::EarthMover(EarthMover&&) noexcept = default;
EarthMover& EarthMover::operator=(EarthMover&&) noexcept = default;

std::optional<double> EarthMover::betweenWeightings(std::span<const std::int64_t> one,
                                                    std::span<const std::int64_t> other,
                                                    std::span<const double> costs) {
    assert(one.size() == other.size() && costs.size() == one.size() * other.size());
    listPresent(one, buffers_->rows);
    listPresent(other, buffers_->columns);
    if (buffers_->rows.empty() || buffers_->columns.empty())
        return std::nullopt;

    const std::int64_t totalOne = sum(one);
    const std::int64_t totalOther = sum(other);
    const std::int64_t common = std::gcd(totalOne, totalOther);
    const std::int64_t timesOne = totalOther / common;
    const std::int64_t timesOther = totalOne / common;
    if (timesOne <= std::numeric_limits<std::int64_t>::max() / totalOne) {
        return buffers_->samePoints(
            buffers_->whole, one, other, costs, [&](std::int64_t w) { return w * timesOne; },
            [&](std::int64_t w) { return w * timesOther; });
    }
    const auto shareOf = [](std::int64_t total) {
        return [total](std::int64_t w) { return static_cast<double>(w) / static_cast<double>(total); };
    };
    return buffers_->samePoints(buffers_->real, one, other, costs, shareOf(totalOne), shareOf(totalOther));
}

std::optional<double> EarthMover::between(std::span<const double> supplies, std::span<const double> demands,
                                          std::span<const double> costs) {
    assert(costs.size() == supplies.size() * demands.size());
    // The side with less is the one that is moved whole; costs are then read the other way round.
    const bool turned = sum(supplies) > sum(demands);
    const std::span<const double> less = turned ? demands : supplies;
    const std::span<const double> more = turned ? supplies : demands;
    std::vector<std::size_t>& rows = buffers_->rows;
    std::vector<std::size_t>& columns = buffers_->columns;
    listPresent(less, rows);
    listPresent(more, columns);
    if (rows.empty() || columns.empty())
        return std::nullopt;

    Transport<double>& transport = buffers_->real;
    transport.reset(rows.size(), columns.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        transport.supply[i] = less[rows[i]];
        for (std::size_t j = 0; j < columns.size(); ++j) {
            transport.costs[i * columns.size() + j] = turned ? costs[columns[j] * demands.size() + rows[i]]
                                                             : costs[rows[i] * demands.size() + columns[j]];
        }
    }
    for (std::size_t j = 0; j < columns.size(); ++j)
        transport.demand[j] = more[columns[j]];
    transport.solve();
    return transport.meanCost();
}

std::optional<double> earthMoversDistance(std::span<const double> supplies, std::span<const double> demands,
                                          std::span<const double> costs) {
    return EarthMover().between(supplies, demands, costs);
}

} // namespace stemwright

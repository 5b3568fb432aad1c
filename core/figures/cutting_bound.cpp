#include "core/figures/cutting_bound.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

namespace {

/// A knapsack by branch and bound, pieces in the order of their worth by length; by dynamic programming where
/// that takes too long, as with many pieces that are worth the same by length.
class Knapsack {
public:
    Knapsack(const CutProblem& problem, const std::vector<std::int64_t>& values, const std::vector<int>& most)
        : pieces_(problem.pieces),
          values_(values),
          most_(most),
          order_(values.size()),
          now_(values.size(), 0),
          best_(values.size(), 0) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::erase_if(order_, [&](std::size_t i) { return values[i] <= 0 || most[i] <= 0; });
        std::sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            const auto left = static_cast<double>(values[a]) * static_cast<double>(pieces_[b]);
            const auto right = static_cast<double>(values[b]) * static_cast<double>(pieces_[a]);
            return left != right ? left > right : a < b;
        });
    }

    std::int64_t fill(std::int64_t room) {
        visit(0, room, 0);
        if (steps_ <= 0)
            tabulate(room);
        return value_;
    }
    const std::vector<int>& counts() const { return best_; }

private:
    void visit(std::size_t at, std::int64_t room, std::int64_t value) {
        if (--steps_ <= 0)
            return;
        if (value > value_) {
            value_ = value;
            best_ = now_;
        }
        if (at == order_.size())
            return;
        const std::size_t piece = order_[at];
        // All that is still to come is worth no more by length than this piece.
        const double most = static_cast<double>(values_[piece]) * static_cast<double>(room) /
                            static_cast<double>(pieces_[piece]);
        if (static_cast<double>(value) + most * (1 + 1e-12) < static_cast<double>(value_) + 1)
            return;
        const auto fits = static_cast<int>(std::min<std::int64_t>(room / pieces_[piece], most_[piece]));
        for (int count = fits; count >= 0; --count) {
            now_[piece] = count;
            visit(at + 1, room - count * pieces_[piece], value + count * values_[piece]);
        }
        now_[piece] = 0;
    }

    /// Bundles of 1, 2, 4 … of a piece, each taken or not.
    void tabulate(std::int64_t room) {
        std::int64_t unit = 0;
        for (const std::size_t piece : order_)
            unit = std::gcd(unit, pieces_[piece]);
        const auto cells = static_cast<std::size_t>(room / unit) + 1;
        std::vector<std::int64_t> worth(cells, 0);
        struct Bundle {
            std::size_t piece;
            int count;
            std::vector<bool> taken;
        };
        std::vector<Bundle> bundles;
        for (const std::size_t piece : order_) {
            int left = static_cast<int>(std::min<std::int64_t>(room / pieces_[piece], most_[piece]));
            for (int count = 1; left > 0; count *= 2) {
                count = std::min(count, left);
                left -= count;
                bundles.push_back({piece, count, std::vector<bool>(cells)});
                const auto size = static_cast<std::size_t>(count * pieces_[piece] / unit);
                const std::int64_t value = count * values_[piece];
                for (std::size_t c = cells; c-- > size;)
                    if (worth[c - size] + value > worth[c]) {
                        worth[c] = worth[c - size] + value;
                        bundles.back().taken[c] = true;
                    }
            }
        }
        value_ = worth.back();
        std::fill(best_.begin(), best_.end(), 0);
        std::size_t at = cells - 1;
        for (std::size_t b = bundles.size(); b-- > 0;)
            if (bundles[b].taken[at]) {
                best_[bundles[b].piece] += bundles[b].count;
                at -= static_cast<std::size_t>(bundles[b].count * pieces_[bundles[b].piece] / unit);
            }
    }

    const std::vector<std::int64_t>& pieces_;
    const std::vector<std::int64_t>& values_;
    const std::vector<int>& most_;
    std::vector<std::size_t> order_;
    std::vector<int> now_, best_;
    std::int64_t value_ = 0;
    int steps_ = 20'000;
};

/// The primal simplex method on the inverse of its basis; patterns are made as they are asked for.
class Master {
public:
    Master(const CutProblem& problem, const std::vector<std::int64_t>& costs)
        : problem_(problem), costs_(costs), rows_(problem.pieces.size()) {
        inverse_.assign(rows_ * rows_, 0);
        for (std::size_t i = 0; i < rows_; ++i) {
            CutPattern pattern{std::vector<int>(rows_, 0), cheapestFor(problem.pieces[i])};
            const std::int64_t fits = problem.bars[pattern.bar] / problem.pieces[i];
            pattern.counts[i] = static_cast<int>(std::min<std::int64_t>(fits, problem.demand[i]));
            inverse_[i * rows_ + i] = 1.0 / pattern.counts[i];
            amounts_.push_back(static_cast<double>(problem.demand[i]) / pattern.counts[i]);
            basis_.push_back({pattern, static_cast<double>(costs[pattern.bar]), false});
        }
    }

    std::vector<double> prices() const {
        std::vector<double> y(rows_, 0);
        for (std::size_t r = 0; r < rows_; ++r)
            if (basis_[r].cost != 0)
                for (std::size_t i = 0; i < rows_; ++i)
                    y[i] += basis_[r].cost * inverse_[r * rows_ + i];
        return y;
    }

    void enter(CutPattern pattern) {
        const auto cost = static_cast<double>(costs_[pattern.bar]);
        std::vector<double> column(pattern.counts.begin(), pattern.counts.end());
        pivot({std::move(pattern), cost, false}, column);
    }

    /// Lets more of a piece be cut than is asked for, where its price fell below 0.
    bool enterSurplus(const std::vector<double>& y) {
        const auto least = std::min_element(y.begin(), y.end());
        if (*least >= -1e-9)
            return false;
        std::vector<double> column(rows_, 0);
        column[static_cast<std::size_t>(least - y.begin())] = -1;
        pivot({{}, 0, true}, column);
        return true;
    }

    void take(CutPrices& out) const {
        for (std::size_t r = 0; r < rows_; ++r)
            if (!basis_[r].surplus && amounts_[r] > 1e-9) {
                out.patterns.push_back(basis_[r].pattern);
                out.times.push_back(amounts_[r]);
            }
    }

private:
    struct Column {
        CutPattern pattern;
        double cost = 0;
        bool surplus = false;
    };

    std::size_t cheapestFor(std::int64_t piece) const {
        std::size_t best = problem_.bars.size() - 1;
        for (std::size_t t = 0; t < problem_.bars.size(); ++t)
            if (problem_.bars[t] >= piece && costs_[t] < costs_[best])
                best = t;
        return best;
    }

    void pivot(Column column, const std::vector<double>& entries) {
        std::vector<double> change(rows_, 0);
        for (std::size_t r = 0; r < rows_; ++r)
            for (std::size_t i = 0; i < rows_; ++i)
                change[r] += inverse_[r * rows_ + i] * entries[i];
        std::size_t leaves = rows_;
        double ratio = 0;
        for (std::size_t r = 0; r < rows_; ++r)
            if (change[r] > 1e-9 && (leaves == rows_ || amounts_[r] / change[r] < ratio)) {
                leaves = r;
                ratio = amounts_[r] / change[r];
            }
        if (leaves == rows_)
            return;
        for (std::size_t i = 0; i < rows_; ++i)
            inverse_[leaves * rows_ + i] /= change[leaves];
        amounts_[leaves] = ratio;
        for (std::size_t r = 0; r < rows_; ++r) {
            if (r == leaves || change[r] == 0)
                continue;
            for (std::size_t i = 0; i < rows_; ++i)
                inverse_[r * rows_ + i] -= change[r] * inverse_[leaves * rows_ + i];
            amounts_[r] = std::max(0.0, amounts_[r] - change[r] * ratio);
        }
        basis_[leaves] = std::move(column);
    }

    const CutProblem& problem_;
    const std::vector<std::int64_t>& costs_;
    std::size_t rows_;
    std::vector<double> inverse_;
    std::vector<double> amounts_;
    std::vector<Column> basis_;
};

std::vector<std::int64_t> wholePrices(const std::vector<double>& y, std::int64_t scale) {
    std::vector<std::int64_t> whole;
    for (const double price : y)
        whole.push_back(
            static_cast<std::int64_t>(std::floor(std::max(0.0, price) * static_cast<double>(scale))));
    return whole;
}

} // namespace

std::int64_t bestPattern(const CutProblem& problem, const std::vector<std::int64_t>& values,
                         const std::vector<int>& demand, std::int64_t bar, std::vector<int>* counts) {
    Knapsack knapsack(problem, values, demand);
    const std::int64_t value = knapsack.fill(bar);
    if (counts)
        *counts = knapsack.counts();
    return value;
}

CutPrices cutPrices(const CutProblem& problem, const std::vector<std::int64_t>& costs, std::int64_t scale) {
    Master master(problem, costs);
    CutPrices out;
    // Far more steps than such problems take; the prices are made good in the end wherever it stops.
    constexpr int mostSteps = 5'000;
    for (int step = 0; step < mostSteps; ++step) {
        const std::vector<double> y = master.prices();
        if (master.enterSurplus(y))
            continue;
        out.piece = wholePrices(y, scale);
        CutPattern best;
        double gain = 1e-7;
        for (std::size_t t = 0; t < problem.bars.size(); ++t) {
            std::vector<int> counts;
            const std::int64_t value =
                bestPattern(problem, out.piece, problem.demand, problem.bars[t], &counts);
            const double worth = static_cast<double>(value) / static_cast<double>(costs[t] * scale) - 1;
            if (worth > gain) {
                gain = worth;
                best = {std::move(counts), t};
            }
        }
        if (best.counts.empty())
            break;
        master.enter(std::move(best));
    }
    // What is left of the rounding is taken off every price.
    double least = 1;
    for (std::size_t t = 0; t < problem.bars.size(); ++t) {
        const std::int64_t value = bestPattern(problem, out.piece, problem.demand, problem.bars[t]);
        if (value > costs[t] * scale)
            least = std::min(least, static_cast<double>(costs[t] * scale) / static_cast<double>(value));
    }
    if (least < 1)
        for (std::int64_t& price : out.piece)
            price =
                std::max<std::int64_t>(0, static_cast<std::int64_t>(static_cast<double>(price) * least) - 1);
    master.take(out);
    return out;
}

} // namespace stemwright

#include "core/suggest/matched_shares.h"

#include "core/suggest/even_shares.h"
#include "core/suggest/placing.h"

#include <algorithm>
#include <numeric>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// The intervals in which the cells must lie.
struct Part {
    Grid<int> least;
    Grid<int> most;
};

/// What follows from a part without solving anything.
struct PartFacts {
    int unmatched = 0;    ///< pairs that stay unmatched at least
    Cost bonus = 0;       ///< what odd cells not yet settled can take off at most
    Cost matePenalty = 0; ///< what a place beside a pinned leaf costs that is not filled with its like
};

/// The cells of a part, counted from their least.
class PartCells {
public:
    PartCells(const ShareCells& cells, const Shares& shares, const std::vector<char>& paired, const Part& part,
              Cost matePenalty)
        : cells_(cells), shares_(shares), paired_(paired), part_(part), matePenalty_(matePenalty) {}

    int rows() const { return cells_.rows(); }
    int columns() const { return cells_.columns(); }
    int guess(int r, int c) const { return cells_.guess(r, c) - part_.least(r, c); }
    int most(int r, int c) const { return part_.most(r, c) - part_.least(r, c); }
    Cost at(int r, int c, int y) const { return whole(r, c, part_.least(r, c) + y); }
    Cost step(int r, int c, int y) const { return at(r, c, y + 1) - at(r, c, y); }

private:
    Cost whole(int r, int c, int y) const {
        const int mates = shares_.mates(r, c);
        if (y < mates)
            return 2 * cells_.at(r, c, y) + matePenalty_ * (std::min(mates, part_.most(r, c)) - y);
        if (!paired_[index(r)] || (y - mates) % 2 == 0 || part_.least(r, c) == part_.most(r, c))
            return 2 * cells_.at(r, c, y);
        return cells_.at(r, c, y - 1) + cells_.at(r, c, y + 1);
    }

    const ShareCells& cells_;
    const Shares& shares_;
    const std::vector<char>& paired_;
    const Part& part_;
    Cost matePenalty_;
};

} // namespace

class MatchedShares::Impl {
public:
    Impl(const Shares& shares, const Scale& scale, const Grid<int>* whim)
        : shares_(shares),
          cells_(shares, scale, whim),
          even_(shares, scale, whim),
          rows_(shares.rows()),
          columns_(shares.columns()),
          paired_(index(rows_), 0) {
        perPair_ = 2 * greatestCost(shares, scale);
        oddBonus_ = 2 * scale.weight * scale.leaves * scale.leaves + 1;
        for (int r = 0; r < rows_; ++r) {
            const PairShape& shape = shares.shapes[index(r)];
            // With a single place for every mix, none that is left over breaks a pair.
            paired_[index(r)] = shape.pairs > 0 && shape.singles < columns_;
            singles_ += paired_[index(r)] ? shape.singles : 0;
            loose_ |= !paired_[index(r)] && shape.pairs + shape.singles > 0;
        }
        columnFixed_.assign(index(columns_), 0);
        columnMates_.assign(index(columns_), 0);
        for (int r = 0; r < rows_; ++r)
            for (int c = 0; c < columns_; ++c) {
                columnFixed_[index(c)] += shares.fixed(r, c);
                columnMates_[index(c)] += shares.mates(r, c);
            }
    }

    static Cost greatestCost(const Shares& shares, const Scale& scale) {
        Cost most = 0;
        for (int n : shares.leaves)
            most += 2 * Cost{n} * n;
        return (most * scale.leaves * scale.leaves + 1) * scale.weight;
    }

    Cost improve(const std::vector<int>& placed, ShareAnswer& best, Budget& budget) {
        cells_.setPlaced(placed);
        placed_ = &placed;
        best_ = &best;
        budget_ = &budget;
        demand_.resize(placed.size());
        for (std::size_t c = 0; c < placed.size(); ++c)
            demand_[c] = placed[c] - columnFixed_[c];
        Part all{Grid<int>(rows_, columns_, 0), Grid<int>(rows_, columns_, 0)};
        for (int r = 0; r < rows_; ++r)
            for (int c = 0; c < columns_; ++c)
                all.most(r, c) = shares_.free[index(r)];
        open_ = noCost;
        Grid<int> units;
        const Cost bound = boundOf(all, units);
        if (bound < best.cost)
            visit(all, units, bound);
        else
            open_ = bound;
        return std::max(bound, std::min(open_, best.cost));
    }

    Cost columnBound(int column, int placed) {
        const Cost bound = even_.columnBound(column, placed);
        if (bound >= noCost)
            return noCost;
        // Half a pair for a mix whose count is odd: see unmatchedAtLeast.
        return 2 * bound + (loose_ || singles_ > 0 ? 0 : oddColumn(column, placed) * (perPair_ / 2));
    }

    Cost costOf(const std::vector<int>& placed, const Grid<int>& units) {
        cells_.setPlaced(placed);
        Cost cost = 0;
        for (int r = 0; r < rows_; ++r) {
            cost += perPair_ * unmatchedPairs(shares_, r, units.row(r));
            for (int c = 0; c < columns_; ++c)
                cost += 2 * cells_.at(r, c, units(r, c));
        }
        return cost;
    }

    Cost perPair() const { return perPair_; }

private:
    struct Child {
        Part part;
        Grid<int> units;
        Cost bound = 0;
    };

    int oddColumn(int c, int placed) const {
        return (placed - columnFixed_[index(c)] - columnMates_[index(c)]) & 1;
    }

    /// What is known of each column: counts that are odd beyond the places beside pinned leaves, and such
    /// places that are not matched.
    struct Settled {
        std::vector<int> odd; ///< by column: odd counts, and unmatched places, which change what is odd too
        int mateless = 0;
    };

    /// A mix whose leaves, less those meant for places beside its pinned ones, are odd in number leaves one
    /// over on an odd number of stems, and otherwise on an even number. Single places take some of what is left
    /// over; a place beside a pinned leaf that is filled with another mix changes one mix from odd to even or
    /// back, and takes one; a pair that is broken takes two. So each unmatched pair that is not settled is good
    /// for two of those left over, and never for more.
    int unmatchedAtLeast(const std::vector<int>& placed, const Settled& settled) const {
        if (loose_)
            return settled.mateless;
        int odd = -settled.mateless;
        for (int c = 0; c < columns_; ++c) {
            const int known = settled.odd[index(c)];
            odd += known + ((known ^ oddColumn(c, placed[index(c)])) & 1);
        }
        return settled.mateless + std::max(0, odd - settled.mateless - singles_ + 1) / 2;
    }

    PartFacts factsOf(const Part& part) const {
        Settled& settled = settled_;
        settled.odd.assign(index(columns_), 0);
        settled.mateless = 0;
        int forced = 0, settledOdd = 0, openCells = 0, mateless = 0;
        for (int r = 0; r < rows_; ++r) {
            int odd = 0, open = 0, matelessHere = 0;
            for (int c = 0; c < columns_; ++c) {
                const int missing = shares_.mates(r, c) - part.most(r, c);
                matelessHere += std::max(0, missing);
                if (part.least(r, c) != part.most(r, c)) {
                    ++open;
                } else if (missing > 0) {
                    settled.odd[index(c)] += missing;
                    settled.mateless += missing;
                } else if (missing % 2 != 0) {
                    ++odd;
                    ++settled.odd[index(c)];
                }
            }
            mateless += matelessHere;
            if (open == 0) {
                forced += unmatchedPairs(shares_, r, part.least.row(r));
            } else {
                forced += matelessHere;
                if (paired_[index(r)])
                    forced += std::max(0, odd - shares_.shapes[index(r)].singles - matelessHere + 1) / 2;
            }
            if (paired_[index(r)]) {
                settledOdd += odd;
                openCells += open;
            }
        }
        PartFacts facts;
        facts.unmatched = std::max(forced, unmatchedAtLeast(*placed_, settled));
        facts.bonus =
            oddBonus_ * std::clamp(singles_ + 2 * facts.unmatched - mateless - settledOdd, 0, openCells);
        // A place beside a pinned leaf that is not matched may be one of the unmatched that there are at least;
        // where those are all known to be such places, any more are on top of them.
        facts.matePenalty = facts.unmatched > mateless ? 0 : perPair_ - oddBonus_;
        return facts;
    }

    /// What every answer in the part costs at least, and the counts that the bound came from. noCost, or any
    /// number not below the best answer's cost, where the part is of no use.
    Cost boundOf(const Part& part, Grid<int>& units) {
        const PartFacts facts = factsOf(part);
        const Cost fixedPart = perPair_ * facts.unmatched - facts.bonus;
        if (fixedPart >= best_->cost)
            return fixedPart;
        supply_ = shares_.free;
        partDemand_ = demand_;
        for (int r = 0; r < rows_; ++r)
            for (int c = 0; c < columns_; ++c) {
                supply_[index(r)] -= part.least(r, c);
                partDemand_[index(c)] -= part.least(r, c);
            }
        const auto negative = [](int n) { return n < 0; };
        if (std::any_of(supply_.begin(), supply_.end(), negative) ||
            std::any_of(partDemand_.begin(), partDemand_.end(), negative))
            return noCost;
        const PartCells cells(cells_, shares_, paired_, part, facts.matePenalty);
        const Cost cutoff = best_->cost >= noCost ? noCost : best_->cost - fixedPart;
        const Outcome outcome = flow_.solve(cells, supply_, partDemand_, cutoff);
        if (outcome == Outcome::infeasible)
            return noCost;
        if (outcome == Outcome::optimal) {
            units = flow_.flow();
            for (int r = 0; r < rows_; ++r)
                for (int c = 0; c < columns_; ++c)
                    units(r, c) += part.least(r, c);
        }
        return std::max(perPair_ * facts.unmatched, fixedPart + flow_.cost());
    }

    void take(const Grid<int>& units) {
        Cost cost = 0;
        for (int r = 0; r < rows_; ++r) {
            cost += perPair_ * unmatchedPairs(shares_, r, units.row(r));
            for (int c = 0; c < columns_; ++c)
                cost += 2 * cells_.at(r, c, units(r, c));
        }
        if (cost < best_->cost) {
            best_->cost = cost;
            best_->units = units;
            best_->placed = *placed_;
        }
    }

    /// Looks through a part whose bound is below the best answer's cost.
    void visit(const Part& part, const Grid<int>& units, Cost bound) {
        take(units);
        if (bound >= best_->cost)
            return;
        const Branch branch = branchAt(part, units);
        if (branch.row < 0)
            return;
        const int row = branch.row, column = branch.column;
        std::vector<Child> children;
        const auto add = [&](int least, int most) {
            if (least > most)
                return;
            if (!budget_->step()) {
                open_ = std::min(open_, bound);
                return;
            }
            Child child{part, {}, 0};
            child.part.least(row, column) = least;
            child.part.most(row, column) = most;
            child.bound = boundOf(child.part, child.units);
            if (child.bound < best_->cost) {
                take(child.units);
                children.push_back(std::move(child));
            }
        };
        if (branch.first <= branch.last)
            add(branch.first, branch.last);
        add(part.least(row, column), branch.first - 1);
        add(branch.last + 1, part.most(row, column));
        std::stable_sort(children.begin(), children.end(),
                         [](const Child& a, const Child& b) { return a.bound < b.bound; });
        for (const Child& child : children) {
            if (child.bound >= best_->cost)
                return;
            if (budget_->ended())
                open_ = std::min(open_, child.bound);
            else
                visit(child.part, child.units, child.bound);
        }
    }

    /// Divides a part at one cell into the counts before, in and after a range, which may be empty.
    struct Branch {
        int row = -1;
        int column = -1;
        int first = 0;
        int last = 0;
    };

    /// Where the answer and the bound that it gave disagree: at a place beside a pinned leaf that is not
    /// matched; else at an odd cell, on the stem where most are odd; else at any that the bound may still be
    /// wrong about. Row −1 where it is right.
    Branch branchAt(const Part& part, const Grid<int>& units) const {
        Branch branch;
        int most = 0;
        for (int r = 0; r < rows_; ++r) {
            int odd = 0, first = -1;
            for (int c = 0; c < columns_; ++c) {
                const int mates = shares_.mates(r, c), over = units(r, c) - mates;
                if (over < 0 && part.most(r, c) >= mates)
                    return {r, c, mates, mates - 1};
                if (!paired_[index(r)] || over <= 0 || over % 2 == 0)
                    continue;
                ++odd;
                if (first < 0 && part.least(r, c) != part.most(r, c))
                    first = c;
            }
            if (first >= 0 && odd > most)
                most = odd, branch = {r, first, units(r, first), units(r, first)};
        }
        if (branch.row >= 0)
            return branch;
        for (int r = 0; r < rows_; ++r)
            for (int c = 0; c < columns_; ++c)
                if (part.least(r, c) != part.most(r, c) && (paired_[index(r)] || shares_.mates(r, c) > 0))
                    return {r, c, units(r, c), units(r, c)};
        return branch;
    }

    const Shares& shares_;
    ShareCells cells_;
    EvenShares even_;
    int rows_;
    int columns_;
    std::vector<char> paired_; ///< by row: leaves left over may break its pairs
    int singles_ = 0;          ///< single places on paired rows
    bool loose_ = false;       ///< there are rows where leaves left over break nothing
    std::vector<int> columnFixed_;
    std::vector<int> columnMates_;
    Cost perPair_ = 0;
    Cost oddBonus_ = 0;

    const std::vector<int>* placed_ = nullptr;
    ShareAnswer* best_ = nullptr;
    Budget* budget_ = nullptr;
    mutable Settled settled_;
    Cost open_ = noCost; ///< the least bound of what was not looked at
    std::vector<int> demand_;
    std::vector<int> supply_;
    std::vector<int> partDemand_;
    Transport<PartCells> flow_;
};

MatchedShares::MatchedShares(const Shares& shares, const Scale& scale, const Grid<int>* whim)
    : impl_(std::make_unique<Impl>(shares, scale, whim)) {}
MatchedShares::~MatchedShares() = default;

Cost MatchedShares::room(const Shares& shares) {
    Cost pairs = 2;
    for (int r = 0; r < shares.rows(); ++r)
        pairs += shares.shapes[index(r)].pairs + shares.free[index(r)];
    return 2 * pairs;
}
Cost MatchedShares::improve(const std::vector<int>& placed, ShareAnswer& best, Budget& budget) {
    return impl_->improve(placed, best, budget);
}
Cost MatchedShares::columnBound(int column, int placed) {
    return impl_->columnBound(column, placed);
}
Cost MatchedShares::costOf(const std::vector<int>& placed, const Grid<int>& units) {
    return impl_->costOf(placed, units);
}
int MatchedShares::unmatched(Cost cost) const {
    return static_cast<int>(cost / impl_->perPair());
}
Cost MatchedShares::shareCost(Cost cost) const {
    return cost % impl_->perPair() / 2;
}

} // namespace stemwright

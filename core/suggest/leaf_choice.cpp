#include "core/suggest/leaf_choice.h"

#include <algorithm>
#include <numeric>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

class LeafChoice {
public:
    LeafChoice(const PlacedRange& range, int total, ShareSolver& solver, Budget& budget, ShareAnswer& best)
        : range_(range),
          columns_(static_cast<int>(range.least.size())),
          solver_(solver),
          budget_(budget),
          best_(best),
          placed_(range.least) {
        left_ = total - std::accumulate(range.least.begin(), range.least.end(), 0);
        boundColumns();
        boundRests();
    }

    void run() {
        best_.bound = noCost;
        if (rests_.front()[index(left_)] < noCost)
            visit(0, left_, 0);
        best_.bound = std::min(best_.bound, best_.cost);
    }

private:
    struct Choice {
        Cost bound;
        int more;
    };

    void boundColumns() {
        bounds_.resize(index(columns_));
        for (int c = 0; c < columns_; ++c) {
            const int width = std::min(range_.most[index(c)] - range_.least[index(c)], left_);
            for (int more = 0; more <= width; ++more)
                bounds_[index(c)].push_back(solver_.columnBound(c, range_.least[index(c)] + more));
        }
    }

    /// rests_[c][l]: the least sum of bounds with which columns c and after take l leaves more than their
    /// least.
    void boundRests() {
        rests_.assign(index(columns_) + 1, std::vector<Cost>(index(left_) + 1, noCost));
        rests_.back()[0] = 0;
        for (int c = columns_ - 1; c >= 0; --c)
            for (int left = 0; left <= left_; ++left) {
                Cost least = noCost;
                const int most = std::min(left, static_cast<int>(bounds_[index(c)].size()) - 1);
                for (int more = 0; more <= most; ++more) {
                    const Cost rest = rests_[index(c) + 1][index(left - more)];
                    if (const Cost own = bounds_[index(c)][index(more)]; rest < noCost && own < noCost)
                        least = std::min(least, own + rest);
                }
                rests_[index(c)][index(left)] = least;
            }
    }

    void visit(int c, int left, Cost soFar) {
        if (c == columns_) {
            if (!budget_.step() && best_.cost < noCost) {
                best_.bound = std::min(best_.bound, soFar);
                return;
            }
            const Cost bound = solver_.improve(placed_, best_, budget_);
            best_.bound = std::min(best_.bound, std::max(bound, soFar));
            return;
        }
        std::vector<Choice> choices;
        const int most = std::min(left, static_cast<int>(bounds_[index(c)].size()) - 1);
        for (int more = 0; more <= most; ++more) {
            const Cost own = bounds_[index(c)][index(more)];
            const Cost rest = rests_[index(c) + 1][index(left - more)];
            if (own < noCost && rest < noCost && soFar + own + rest < best_.cost)
                choices.push_back({soFar + own + rest, more});
        }
        std::stable_sort(choices.begin(), choices.end(),
                         [](const Choice& a, const Choice& b) { return a.bound < b.bound; });
        for (const Choice& choice : choices) {
            if (choice.bound >= best_.cost)
                return;
            if (budget_.ended() && best_.cost < noCost) {
                best_.bound = std::min(best_.bound, choice.bound);
                return;
            }
            placed_[index(c)] = range_.least[index(c)] + choice.more;
            visit(c + 1, left - choice.more, soFar + bounds_[index(c)][index(choice.more)]);
        }
    }

    const PlacedRange& range_;
    int columns_;
    ShareSolver& solver_;
    Budget& budget_;
    ShareAnswer& best_;
    std::vector<int> placed_;
    int left_ = 0;
    std::vector<std::vector<Cost>> bounds_; ///< by column and leaves beyond the least
    std::vector<std::vector<Cost>> rests_;
};

} // namespace

void chooseLeaves(const PlacedRange& range, int total, ShareSolver& solver, Budget& budget, ShareAnswer& best) {
    if (range.open()) {
        LeafChoice(range, total, solver, budget, best).run();
        return;
    }
    budget.step();
    best.bound = std::min(solver.improve(range.least, best, budget), best.cost);
}

} // namespace stemwright

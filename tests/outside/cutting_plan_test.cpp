#include "core/figures/cutting_plan.h"

#include <glpk.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numeric>
#include <random>
#include <vector>

namespace stemwright {
namespace {

std::vector<CutPiece> piecesOf(const std::vector<std::pair<double, int>>& all) {
    std::vector<CutPiece> pieces;
    for (const auto& [length, count] : all)
        pieces.push_back({millimetres(length), count});
    return pieces;
}

// Paper rolls of 5600 mm in thirteen widths, from an encyclopaedia's article on the cutting stock problem:
// 73 rolls, published.
TEST(PublishedCutting, ThirteenWidthsFromRollsOf5600) {
    const auto pieces = piecesOf({{1380, 22},
                                  {1520, 25},
                                  {1560, 12},
                                  {1710, 14},
                                  {1820, 18},
                                  {1880, 18},
                                  {1930, 20},
                                  {2000, 10},
                                  {2050, 12},
                                  {2100, 14},
                                  {2140, 16},
                                  {2150, 18},
                                  {2200, 20}});
    const CuttingPlan plan = cuttingPlan(pieces, std::vector<Length>{millimetres(5600)});
    EXPECT_EQ(plan.barCount, 73);
    EXPECT_TRUE(plan.proved);
    // All widths together are 407 160; waste 0.401 % of what is bought (published).
    EXPECT_NEAR(inMillimetres(plan.waste), 73 * 5600 - 407160, 1e-6);
    EXPECT_NEAR(plan.waste / plan.bought, 0.00401, 5e-6);
}

// Chvátal, Linear Programming, chapter 13: data from several copies, the optimum 453 from memory and
// recomputed.
TEST(PublishedCutting, FourLengthsFromBarsOf100) {
    const auto pieces = piecesOf({{45, 97}, {36, 610}, {31, 395}, {14, 211}});
    const CuttingPlan plan = cuttingPlan(pieces, std::vector<Length>{millimetres(100)});
    EXPECT_EQ(plan.barCount, 453);
    EXPECT_TRUE(plan.proved);
}

struct DeleteProblem {
    void operator()(glp_prob* problem) const { glp_delete_prob(problem); }
};

/// The whole problem as a general solver sees it: a column for every way to cut every bar.
class BySolver {
public:
    BySolver(std::vector<int> lengths, std::vector<int> demand, std::vector<int> bars)
        : lengths_(std::move(lengths)),
          demand_(std::move(demand)),
          bars_(std::move(bars)),
          now_(lengths_.size(), 0) {
        for (std::size_t bar = 0; bar < bars_.size(); ++bar)
            list(bar, 0, bars_[bar]);
    }

    int fewestBars() const { return solve(std::vector<double>(ways_.size(), 1), 0); }
    int leastBought(int bars) const {
        std::vector<double> costs;
        for (const Way& way : ways_)
            costs.push_back(bars_[way.bar]);
        return solve(costs, bars);
    }

private:
    struct Way {
        std::size_t bar;
        std::vector<int> counts;
    };

    void list(std::size_t bar, std::size_t at, int room) {
        if (at == lengths_.size()) {
            if (std::accumulate(now_.begin(), now_.end(), 0) > 0)
                ways_.push_back({bar, now_});
            return;
        }
        for (int count = 0; count <= demand_[at] && count * lengths_[at] <= room; ++count) {
            now_[at] = count;
            list(bar, at + 1, room - count * lengths_[at]);
        }
        now_[at] = 0;
    }

    int solve(const std::vector<double>& costs, int bars) const {
        const std::unique_ptr<glp_prob, DeleteProblem> problem(glp_create_prob());
        const auto rows = static_cast<int>(lengths_.size());
        glp_set_obj_dir(problem.get(), GLP_MIN);
        glp_add_rows(problem.get(), rows + 1);
        for (int i = 0; i < rows; ++i)
            glp_set_row_bnds(problem.get(), i + 1, GLP_LO, demand_[static_cast<std::size_t>(i)], 0);
        glp_set_row_bnds(problem.get(), rows + 1, bars > 0 ? GLP_FX : GLP_FR, bars, bars);
        glp_add_cols(problem.get(), static_cast<int>(ways_.size()));
        for (std::size_t c = 0; c < ways_.size(); ++c) {
            const int column = static_cast<int>(c) + 1;
            std::vector<int> index{0};
            std::vector<double> value{0};
            for (int i = 0; i < rows; ++i)
                if (ways_[c].counts[static_cast<std::size_t>(i)] > 0) {
                    index.push_back(i + 1);
                    value.push_back(ways_[c].counts[static_cast<std::size_t>(i)]);
                }
            index.push_back(rows + 1);
            value.push_back(1);
            glp_set_col_kind(problem.get(), column, GLP_IV);
            glp_set_col_bnds(problem.get(), column, GLP_LO, 0, 0);
            glp_set_obj_coef(problem.get(), column, costs[c]);
            glp_set_mat_col(problem.get(), column, static_cast<int>(index.size()) - 1, index.data(),
                            value.data());
        }
        glp_iocp settings;
        glp_init_iocp(&settings);
        settings.msg_lev = GLP_MSG_OFF;
        settings.presolve = GLP_ON;
        EXPECT_EQ(glp_intopt(problem.get(), &settings), 0);
        EXPECT_EQ(glp_mip_status(problem.get()), GLP_OPT);
        return static_cast<int>(std::lround(glp_mip_obj_val(problem.get())));
    }

    std::vector<int> lengths_, demand_, bars_;
    std::vector<int> now_;
    std::vector<Way> ways_;
};

// GLPK on 500 random problems, a third each from bars of one, two and three lengths: equal in every one.
TEST(CuttingOracle, AgreesWithAnIntegerProgramSolver) {
    std::mt19937 random(20);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<std::uint32_t>(n)); };
    for (int round = 0; round < 500; ++round) {
        std::vector<int> lengths;
        while (static_cast<int>(lengths.size()) < 1 + below(5))
            if (const int length = 16 + below(60);
                std::find(lengths.begin(), lengths.end(), length) == lengths.end())
                lengths.push_back(length);
        std::vector<int> demand;
        std::vector<CutPiece> pieces;
        for (const int length : lengths) {
            demand.push_back(1 + below(7));
            pieces.push_back({millimetres(length), demand.back()});
        }
        std::vector<int> bars{100};
        if (round % 3 > 0)
            bars.push_back(60 + below(35));
        if (round % 3 > 1)
            bars.push_back(110 + below(20));
        std::vector<Length> onSale;
        for (const int bar : bars)
            onSale.push_back(millimetres(bar));
        const CuttingPlan plan = cuttingPlan(pieces, onSale);
        const BySolver solver(lengths, demand, bars);
        const int fewest = solver.fewestBars();
        ASSERT_EQ(plan.barCount, fewest) << "round " << round;
        ASSERT_NEAR(inMillimetres(plan.bought), solver.leastBought(fewest), 1e-6) << "round " << round;
        ASSERT_TRUE(plan.proved) << "round " << round;
    }
}

/// The longest piece that still fits, bar after bar: what a hand at the bench does.
int barsByGreed(std::vector<int> lengths, std::vector<int> demand, int bar) {
    int bars = 0;
    for (bool any = true; any;) {
        any = false;
        int room = bar;
        for (std::size_t i = 0; i < lengths.size(); ++i) // longest first
            while (demand[i] > 0 && lengths[i] <= room) {
                room -= lengths[i];
                --demand[i];
                any = true;
            }
        bars += any;
    }
    return bars;
}

TEST(CuttingOracle, GreedIsWorseThanWhatTheSolverAndWeFind) {
    const std::vector<int> lengths{46, 35, 18}, demand{5, 5, 5};
    const std::vector<CutPiece> pieces = piecesOf({{46, 5}, {35, 5}, {18, 5}});
    const int exact = cuttingPlan(pieces, std::vector<Length>{millimetres(100)}).barCount;
    EXPECT_EQ(exact, BySolver(lengths, demand, {100}).fewestBars());
    EXPECT_EQ(exact, 5);
    EXPECT_GT(barsByGreed(lengths, demand, 100), exact);
}

} // namespace
} // namespace stemwright

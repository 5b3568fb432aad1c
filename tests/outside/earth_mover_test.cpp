#include "core/figures/earth_mover.h"

#include <glpk.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <numeric>
#include <random>
#include <vector>

namespace stemwright {
namespace {

struct DeleteProblem {
    void operator()(glp_prob* problem) const { glp_delete_prob(problem); }
};

/// The definition of Rubner, Tomasi & Guibas 2000 as a linear program: rows at most the supplies, columns at
/// most the demands, the flow the smaller of the totals, cost divided by flow.
double bySimplex(const std::vector<double>& supplies, const std::vector<double>& demands,
                 const std::vector<double>& costs) {
    const std::unique_ptr<glp_prob, DeleteProblem> problem(glp_create_prob());
    const auto m = static_cast<int>(supplies.size());
    const auto n = static_cast<int>(demands.size());
    const double flow = std::min(std::accumulate(supplies.begin(), supplies.end(), 0.0),
                                 std::accumulate(demands.begin(), demands.end(), 0.0));
    glp_set_obj_dir(problem.get(), GLP_MIN);
    glp_add_rows(problem.get(), m + n + 1);
    glp_add_cols(problem.get(), m * n);
    for (int i = 0; i < m; ++i)
        glp_set_row_bnds(problem.get(), i + 1, GLP_UP, 0, supplies[static_cast<std::size_t>(i)]);
    for (int j = 0; j < n; ++j)
        glp_set_row_bnds(problem.get(), m + j + 1, GLP_UP, 0, demands[static_cast<std::size_t>(j)]);
    glp_set_row_bnds(problem.get(), m + n + 1, GLP_FX, flow, flow);
    for (int i = 0; i < m; ++i) {
        for (int j = 0; j < n; ++j) {
            const int column = i * n + j + 1;
            const int rows[4] = {0, i + 1, m + j + 1, m + n + 1};
            const double ones[4] = {0, 1, 1, 1};
            glp_set_col_bnds(problem.get(), column, GLP_LO, 0, 0);
            glp_set_obj_coef(problem.get(), column, costs[static_cast<std::size_t>(column - 1)]);
            glp_set_mat_col(problem.get(), column, 3, rows, ones);
        }
    }
    glp_smcp settings;
    glp_init_smcp(&settings);
    settings.msg_lev = GLP_MSG_OFF;
    EXPECT_EQ(glp_simplex(problem.get(), &settings), 0);
    EXPECT_EQ(glp_get_status(problem.get()), GLP_OPT);
    return glp_get_obj_val(problem.get()) / flow;
}

// The published example of Rubner's program: colours in a cube, Euclidean distances. It prints 160.542770 in
// single precision; 160.542763 is the same sum in double precision (recomputed).
TEST(PublishedEarthMover, ExampleOfFourAndThreeColours) {
    using Point = std::array<double, 3>;
    const std::vector<Point> from = {{100, 40, 22}, {211, 20, 2}, {32, 190, 150}, {2, 100, 100}};
    const std::vector<Point> to = {{0, 0, 0}, {50, 100, 80}, {255, 255, 255}};
    std::vector<double> costs;
    for (const Point& p : from) {
        for (const Point& q : to)
            costs.push_back(std::hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]));
    }
    const std::optional<double> distance =
        earthMoversDistance(std::array{0.4, 0.3, 0.2, 0.1}, std::array{0.5, 0.3, 0.2}, costs);
    ASSERT_TRUE(distance);
    EXPECT_NEAR(*distance, 160.542763, 1e-6);
    EXPECT_NEAR(*distance, 160.542770, 1e-5);
}

TEST(Glpk, FindsTheSameDistanceForUnequalTotals) {
    std::mt19937 random(99);
    std::uniform_real_distribution<double> cost(0, 100);
    std::uniform_real_distribution<double> real(0, 10);
    std::uniform_int_distribution<int> whole(0, 4);
    EarthMover mover;
    for (int run = 0; run < 1000; ++run) {
        const auto m = std::uniform_int_distribution<std::size_t>(1, 12)(random);
        const auto n = std::uniform_int_distribution<std::size_t>(1, 12)(random);
        // Every other case has small whole masses and costs, which tie, and sides without mass in places.
        const bool ties = run % 2 == 0;
        std::vector<double> supplies(m), demands(n), costs(m * n);
        for (double& s : supplies)
            s = ties ? whole(random) : real(random);
        for (double& d : demands)
            d = ties ? whole(random) : real(random);
        supplies[0] += 1;
        demands[0] += 1;
        for (double& c : costs)
            c = ties ? whole(random) : cost(random);
        const std::optional<double> ours = mover.between(supplies, demands, costs);
        ASSERT_TRUE(ours);
        EXPECT_NEAR(*ours, bySimplex(supplies, demands, costs), 1e-7) << "run " << run;
    }
}

TEST(Glpk, FindsTheSameDistanceBetweenTwoWeightings) {
    std::mt19937 random(100);
    std::uniform_real_distribution<double> cost(0, 100);
    std::uniform_int_distribution<std::int64_t> beads(0, 3000);
    std::bernoulli_distribution absent(0.3);
    EarthMover mover;
    for (int run = 0; run < 1000; ++run) {
        const auto n = std::uniform_int_distribution<std::size_t>(1, run % 20 == 0 ? 40 : 14)(random);
        std::vector<std::int64_t> one(n), other(n);
        for (std::size_t i = 0; i < n; ++i) {
            one[i] = absent(random) ? 0 : beads(random);
            other[i] = absent(random) ? 0 : beads(random);
        }
        one[0] += 1;
        other[n - 1] += 1;
        // Free costs, far from a metric: detours are shorter more often than not.
        std::vector<double> costs(n * n);
        for (std::size_t i = 0; i < costs.size(); ++i)
            costs[i] = i % (n + 1) == 0 ? 0 : cost(random);
        const auto shares = [](const std::vector<std::int64_t>& weights) {
            const auto sum =
                static_cast<double>(std::accumulate(weights.begin(), weights.end(), std::int64_t{0}));
            std::vector<double> result;
            for (const std::int64_t w : weights)
                result.push_back(static_cast<double>(w) / sum);
            return result;
        };
        const std::optional<double> ours = mover.betweenWeightings(one, other, costs);
        ASSERT_TRUE(ours);
        EXPECT_NEAR(*ours, bySimplex(shares(one), shares(other), costs), 1e-6) << "run " << run;
    }
}

} // namespace
} // namespace stemwright

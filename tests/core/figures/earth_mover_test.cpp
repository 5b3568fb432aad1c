#include "core/figures/earth_mover.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <random>
#include <vector>

namespace stemwright {
namespace {

using Weights = std::vector<std::int64_t>;
using Costs = std::vector<double>;

/// Points on a line, a unit apart.
Costs line(std::size_t points) {
    Costs costs;
    for (std::size_t i = 0; i < points; ++i) {
        for (std::size_t j = 0; j < points; ++j)
            costs.push_back(std::abs(static_cast<double>(i) - static_cast<double>(j)));
    }
    return costs;
}

/// Every way of sending whole units, for totals that a test can afford.
double cheapestByTrying(Weights supply, Weights demand, const Costs& costs) {
    const auto from = std::find_if(supply.begin(), supply.end(), [](std::int64_t s) { return s > 0; });
    if (from == supply.end())
        return 0;
    --*from;
    const auto row = static_cast<std::size_t>(from - supply.begin());
    double best = std::numeric_limits<double>::infinity();
    for (std::size_t j = 0; j < demand.size(); ++j) {
        if (demand[j] == 0)
            continue;
        --demand[j];
        best = std::min(best, costs[row * demand.size() + j] + cheapestByTrying(supply, demand, costs));
        ++demand[j];
    }
    return best;
}

std::int64_t total(const Weights& weights) {
    return std::accumulate(weights.begin(), weights.end(), std::int64_t{0});
}

TEST(SamePoints, AreNothingApartInTheSameProportions) {
    EarthMover mover;
    EXPECT_EQ(mover.betweenWeightings(Weights{1, 2, 0}, Weights{50, 100, 0}, line(3)), 0.0);
}

TEST(SamePoints, WithoutMassOnASideHaveNoDistance) {
    EarthMover mover;
    EXPECT_EQ(mover.betweenWeightings(Weights{0, 0}, Weights{1, 1}, line(2)), std::nullopt);
    EXPECT_EQ(mover.betweenWeightings(Weights{1, 1}, Weights{0, 0}, line(2)), std::nullopt);
    EXPECT_EQ(mover.betweenWeightings(Weights{}, Weights{}, Costs{}), std::nullopt);
}

TEST(SamePoints, OnALineAreTheAreaBetweenTheirSums) {
    // On a line the distance is the sum of the differences of the running totals: textbook.
    EarthMover mover;
    std::mt19937 random(11);
    for (int run = 0; run < 500; ++run) {
        const auto points = std::uniform_int_distribution<std::size_t>(1, 40)(random);
        std::uniform_int_distribution<std::int64_t> weight(0, run % 2 == 0 ? 3 : 1'000'000);
        Weights one(points), other(points);
        for (std::size_t i = 0; i < points; ++i) {
            one[i] = weight(random);
            other[i] = weight(random);
        }
        one[0] += 1;
        other.back() += 1;
        double running = 0;
        double area = 0;
        for (std::size_t i = 0; i < points; ++i) {
            running += static_cast<double>(one[i]) / static_cast<double>(total(one)) -
                       static_cast<double>(other[i]) / static_cast<double>(total(other));
            area += std::abs(running);
        }
        const std::optional<double> distance = mover.betweenWeightings(one, other, line(points));
        ASSERT_TRUE(distance);
        EXPECT_NEAR(*distance, area, 1e-9);
        const std::optional<double> back = mover.betweenWeightings(other, one, line(points));
        EXPECT_NEAR(*distance, *back, 1e-12);
    }
}

TEST(SamePoints, MoveTheCommonMassOnWhereADetourIsShorter) {
    // From 0 to 2 is 10, but by way of 1 it is 2 + 2: what both sides have at 1 goes on to 2 and is replaced.
    // Cancelling it first would give 10 / 2.
    const Costs costs = {0, 2, 10, 2, 0, 2, 10, 2, 0};
    EarthMover mover;
    EXPECT_EQ(mover.betweenWeightings(Weights{1, 1, 0}, Weights{0, 1, 1}, costs), 2.0);
    // Twice as much is to be moved as lies at 1: one half takes the detour, the other the straight way.
    EXPECT_EQ(mover.betweenWeightings(Weights{2, 1, 0}, Weights{0, 1, 2}, costs), 14.0 / 3);
}

TEST(SamePoints, ApartFromOneAnotherWhollyMoveAll) {
    EarthMover mover;
    EXPECT_EQ(mover.betweenWeightings(Weights{7, 0, 0}, Weights{0, 0, 3}, line(3)), 2.0);
}

TEST(SamePoints, MayHaveADiagonalThatCosts) {
    // No start is free here, and the cheapest way swaps the two.
    EarthMover mover;
    EXPECT_EQ(mover.betweenWeightings(Weights{1, 1}, Weights{1, 1}, Costs{5, 1, 1, 5}), 1.0);
}

TEST(SamePoints, StayExactForHugeWeights) {
    // The least common multiple of these totals is beyond 64 bits, so that the masses are doubles.
    EarthMover mover;
    const std::int64_t huge = std::numeric_limits<std::int64_t>::max() / 4;
    const std::optional<double> distance =
        mover.betweenWeightings(Weights{huge, huge - 1}, Weights{huge - 2, huge}, line(2));
    ASSERT_TRUE(distance);
    EXPECT_NEAR(*distance, 0, 1e-15);
    EXPECT_EQ(mover.betweenWeightings(Weights{huge, 0}, Weights{0, huge - 1}, line(2)), 1.0);
}

TEST(SamePoints, AreTheCheapestOfAllWaysWhereCostsAreNoMetric) {
    EarthMover mover;
    std::mt19937 random(5);
    std::uniform_int_distribution<int> cost(1, 30);
    std::uniform_int_distribution<std::int64_t> weight(0, 2);
    int compared = 0;
    for (int run = 0; run < 3000; ++run) {
        const auto points = std::uniform_int_distribution<std::size_t>(2, 5)(random);
        Costs costs(points * points);
        for (std::size_t i = 0; i < costs.size(); ++i)
            costs[i] = i % (points + 1) == 0 ? 0 : cost(random);
        Weights one(points), other(points);
        for (std::size_t i = 0; i < points; ++i) {
            one[i] = weight(random);
            other[i] = weight(random);
        }
        if (total(one) != total(other) || total(one) == 0 || total(one) > 6)
            continue;
        ++compared;
        const double best = cheapestByTrying(one, other, costs);
        EXPECT_NEAR(*mover.betweenWeightings(one, other, costs), best / static_cast<double>(total(one)), 1e-12);
    }
    EXPECT_GT(compared, 300);
}

TEST(GeneralForm, MovesTheSmallerSideWhole) {
    // One unit from 0; demands of 1 at distance 3 and at distance 2: the nearer is served.
    EXPECT_EQ(earthMoversDistance(std::array{1.0}, std::array{1.0, 1.0}, std::array{3.0, 2.0}), 2.0);
    // The other way round, of two supplies the nearer is taken.
    EXPECT_EQ(earthMoversDistance(std::array{1.0, 1.0}, std::array{1.0}, std::array{3.0, 2.0}), 2.0);
    EXPECT_EQ(earthMoversDistance(std::array{1.0, 0.5}, std::array{1.5}, std::array{3.0, 6.0}), 4.0);
}

TEST(GeneralForm, WithoutMassOnASideHasNoDistance) {
    EXPECT_EQ(earthMoversDistance(std::array{0.0}, std::array{1.0}, std::array{1.0}), std::nullopt);
    EXPECT_EQ(earthMoversDistance({}, std::array{1.0}, {}), std::nullopt);
    EXPECT_EQ(earthMoversDistance({}, {}, {}), std::nullopt);
}

TEST(GeneralForm, AgreesWithTheSamePointsForm) {
    EarthMover mover;
    std::mt19937 random(13);
    std::uniform_real_distribution<double> cost(0, 100);
    std::uniform_int_distribution<std::int64_t> weight(0, 500);
    for (int run = 0; run < 500; ++run) {
        const auto points = std::uniform_int_distribution<std::size_t>(1, 20)(random);
        Costs costs(points * points);
        for (std::size_t i = 0; i < costs.size(); ++i)
            costs[i] = i % (points + 1) == 0 ? 0 : cost(random);
        Weights one(points), other(points);
        for (std::size_t i = 0; i < points; ++i) {
            one[i] = weight(random);
            other[i] = weight(random);
        }
        one[0] += 1;
        other[0] += 1;
        std::vector<double> supplies, demands;
        for (std::size_t i = 0; i < points; ++i) {
            supplies.push_back(static_cast<double>(one[i]) / static_cast<double>(total(one)));
            demands.push_back(static_cast<double>(other[i]) / static_cast<double>(total(other)));
        }
        const double general = *mover.between(supplies, demands, costs);
        EXPECT_NEAR(*mover.betweenWeightings(one, other, costs), general, 1e-9);
    }
}

TEST(EarthMover, GivesTheSameAfterOtherQuestions) {
    EarthMover used;
    (void)used.betweenWeightings(Weights{5, 4, 3, 2, 1}, Weights{1, 2, 3, 4, 5}, line(5));
    (void)used.between(std::array{1.0, 2.0}, std::array{2.0}, std::array{1.0, 7.0});
    const Weights one = {3, 0, 1};
    const Weights other = {0, 2, 2};
    EXPECT_EQ(used.betweenWeightings(one, other, line(3)), EarthMover().betweenWeightings(one, other, line(3)));
    EarthMover moved = std::move(used);
    EXPECT_EQ(moved.betweenWeightings(one, other, line(3)), 1.0);
}

} // namespace
} // namespace stemwright

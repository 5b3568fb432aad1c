#include "core/suggest/pot_placing.h"

#include "core/document/examples.h"
#include "core/figures/figures.h"
#include "core/figures/pot_shape.h"
#include "core/suggest/least_assignment.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace stemwright {
namespace {

/// The least cost of any arrangement of the stems over the computed places, by looking at all of them.
double leastByEnumeration(const Plan& plan, ViewedFrom viewedFrom) {
    const auto places = evenPlaces(static_cast<int>(plan.stems.size()), placingRadius(plan));
    std::vector<std::size_t> placeOf(places.size());
    std::iota(placeOf.begin(), placeOf.end(), std::size_t{0});
    double least = 1e300;
    do {
        std::vector<PlaceMm> at;
        for (const std::size_t p : placeOf)
            at.push_back(places[p]);
        least = std::min(least, placingCost(plan, at, viewedFrom));
    } while (std::next_permutation(placeOf.begin(), placeOf.end()));
    return least;
}

TEST(LeastAssignment, AgreesWithTryingAll) {
    std::mt19937 random(3);
    for (int n = 1; n <= 6; ++n) {
        Grid<double> costs(n, n);
        for (int r = 0; r < n; ++r)
            for (int c = 0; c < n; ++c)
                costs(r, c) = static_cast<double>(random() % 1000) / 10;
        std::vector<int> columns(static_cast<std::size_t>(n));
        std::iota(columns.begin(), columns.end(), 0);
        double least = 1e300;
        do {
            double sum = 0;
            for (int r = 0; r < n; ++r)
                sum += costs(r, columns[static_cast<std::size_t>(r)]);
            least = std::min(least, sum);
        } while (std::next_permutation(columns.begin(), columns.end()));
        EXPECT_NEAR(leastAssignment(costs), least, 1e-9);
    }
    EXPECT_EQ(leastAssignment(Grid<double>(0, 0)), 0);
}

TEST(PlaceInPot, AgreesWithTryingAllUpToSeven) {
    for (int stems = 1; stems <= 7; ++stems)
        for (const ViewedFrom viewedFrom : {ViewedFrom::allRound, ViewedFrom::front}) {
            const Plan plan = test::randomBoard(static_cast<std::uint32_t>(40 + stems), stems, 8, 5);
            PlacingOptions options;
            options.viewedFrom = viewedFrom;
            const Suggestion found = placeInPot(plan, options);
            EXPECT_TRUE(found.proved) << stems;
            EXPECT_NEAR(found.after, leastByEnumeration(plan, viewedFrom), 1e-9) << stems;
            EXPECT_EQ(found.bound, found.after);
            EXPECT_LE(found.after, found.before + 1e-9);
        }
}

TEST(PlaceInPot, WhatItSaysIsWhatThePlanThenHas) {
    const Plan plan = test::randomBoard(9, 9, 10, 4);
    const Suggestion found = placeInPot(plan);
    const Plan after = taken(plan, found);
    EXPECT_FALSE(firstProblem(after));
    // Standings are kept to tenths of a millimetre, so ranks of a ring may part by a hair.
    EXPECT_NEAR(placingCost(after, standings(after), ViewedFrom::allRound), found.after, 0.1);
    EXPECT_TRUE(found.proved);
    for (const Stem& stem : after.stems)
        EXPECT_TRUE(stem.standing);
    EXPECT_TRUE(placeInPot(after).edits.edits.size() <= plan.stems.size());
}

TEST(PlaceInPot, TallStemsStandInTheMiddleOrAtTheBack) {
    Plan plan = test::randomBoard(2, 7, 8, 3);
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        plan.stems[i].tail = millimetres(20 + 15 * static_cast<double>(i));
    const Plan round = taken(plan, placeInPot(plan));
    const PlaceMm tallest = standings(round).back();
    EXPECT_NEAR(std::hypot(tallest.x, tallest.y), 0, 0.1);
    PlacingOptions options;
    options.viewedFrom = ViewedFrom::front;
    const auto front = standings(taken(plan, placeInPot(plan, options)));
    EXPECT_GT(front.back().y, 10);
    EXPECT_LT(front.front().y, -10);
}

TEST(PlaceInPot, TheSameSeedGivesTheSame) {
    const Plan plan = test::randomBoard(4, 14, 8, 4);
    PlacingOptions options;
    options.seed = 5;
    EXPECT_EQ(placeInPot(plan, options).edits.edits, placeInPot(plan, options).edits.edits);
}

TEST(PlaceInPot, BeyondNineItSaysHowFarTheBoundIs) {
    const Plan plan = example("hedge");
    const Suggestion found = placeInPot(plan);
    EXPECT_LE(found.bound, found.after);
    EXPECT_GT(found.bound, 0);
    EXPECT_LE(found.after, found.before);
    EXPECT_EQ(found.proved, found.bound == found.after);
}

TEST(PlaceInPot, NeverOffersWhatIsWorseThanHerOwnPlaces) {
    // Far apart on a line there are few neighbours: no order on the even places is as good.
    Plan plan = test::randomBoard(8, 6, 8, 4);
    std::vector<std::size_t> order(plan.stems.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const Figures all = figures(plan);
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return all.stems[a].height > all.stems[b].height; });
    for (std::size_t k = 0; k < order.size(); ++k)
        plan.stems[order[k]].standing =
            Standing{millimetres(std::pow(1.6, static_cast<double>(k)) - 1), millimetres(0), ""};
    const Suggestion found = placeInPot(plan);
    EXPECT_LE(found.after, found.before);
    EXPECT_LE(found.bound, found.after);
    EXPECT_EQ(found.after == found.before, found.edits.edits.empty());
}

TEST(PlaceInPot, FitsTheOpening) {
    for (const PotOpening opening : {PotOpening::oval, PotOpening::rectangular}) {
        Plan plan = test::randomBoard(7, 7, 8, 4);
        plan.pot.opening = opening;
        plan.pot.topDiameter = millimetres(160);
        plan.pot.topBreadth = millimetres(60);
        const Plan after = taken(plan, placeInPot(plan));
        for (const PlaceMm& p : standings(after))
            EXPECT_LT(beyondClay(after.pot, p.x, p.y), -1);
        EXPECT_GT(nearestApart(standings(after)), 20);
    }
}

TEST(PlaceInPot, LeavesLockedStemsWhereTheyStand) {
    Plan plan = test::randomBoard(6, 6, 8, 4);
    plan.stems[2].locked = true;
    plan.stems[2].standing = Standing{millimetres(11), millimetres(-13), ""};
    const Suggestion found = placeInPot(plan);
    const Plan after = taken(plan, found);
    EXPECT_EQ(after.stems[2].standing, plan.stems[2].standing);
    EXPECT_GT(nearestApart(standings(after)), 5);
    EXPECT_TRUE(found.proved);
}

TEST(PlaceInPot, StopsWhenTold) {
    const Plan plan = test::largeBoard(60, 8);
    std::stop_source source;
    source.request_stop();
    PlacingOptions options;
    options.search.stop = source.get_token();
    const Suggestion found = placeInPot(plan, options);
    EXPECT_TRUE(found.stopped);
    EXPECT_FALSE(found.proved);
    EXPECT_FALSE(firstProblem(taken(plan, found)));
}

TEST(PlaceInPot, NothingToPlace) {
    Plan plan = test::smallBoard();
    plan.stems.clear();
    EXPECT_TRUE(placeInPot(plan).edits.edits.empty());
}

} // namespace
} // namespace stemwright

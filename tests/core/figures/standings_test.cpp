#include "core/figures/standings.h"

#include "core/figures/pot_shape.h"

#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stemwright {
namespace {

TEST(EvenPlaces, FewStandInARing) {
    EXPECT_TRUE(evenPlaces(0, 30).empty());
    ASSERT_EQ(evenPlaces(1, 30).size(), 1u);
    EXPECT_EQ(evenPlaces(1, 30)[0], (PlaceMm{0, 0}));
    for (const int count : {2, 3, 4, 5}) {
        const auto places = evenPlaces(count, 30);
        ASSERT_EQ(places.size(), static_cast<std::size_t>(count));
        for (const PlaceMm& p : places)
            EXPECT_NEAR(std::hypot(p.x, p.y), 30, 1e-9);
        EXPECT_NEAR(nearestApart(places), 60 * std::sin(3.14159265358979323846 / count), 1e-6);
    }
    EXPECT_NEAR(evenPlaces(3, 30)[0].y, -30, 1e-9) << "the first at the front";
}

TEST(EvenPlaces, SevenHaveOneInTheMiddle) {
    const auto places = evenPlaces(7, 30);
    ASSERT_EQ(places.size(), 7u);
    EXPECT_EQ(places[0], (PlaceMm{0, 0}));
    EXPECT_NEAR(nearestApart(places), 30, 1e-6);
}

TEST(EvenPlaces, AnyCountIsThereInsideAndApart) {
    for (int count = 1; count <= 120; ++count) {
        const auto places = evenPlaces(count, 50);
        ASSERT_EQ(places.size(), static_cast<std::size_t>(count));
        for (const PlaceMm& p : places)
            EXPECT_LE(std::hypot(p.x, p.y), 50 + 1e-9);
        // No packing of so many in this circle could be more than √(4 / (count × density)) of it apart; rings
        // reach two thirds of that.
        if (count > 1) {
            EXPECT_GT(nearestApart(places), 0.5 * 50 * std::sqrt(3.6 / count)) << count;
        }
    }
}

TEST(EvenPlaces, NoRoomAtAllIsNoTrap) {
    EXPECT_EQ(evenPlaces(5, 0).size(), 5u);
}

TEST(Standings, KeepWhatIsThereAndFillTheRest) {
    Plan plan = test::smallBoard();
    plan.stems[1].standing = Standing{millimetres(-10), millimetres(4), ""};
    const auto all = standings(plan);
    ASSERT_EQ(all.size(), 3u);
    EXPECT_EQ(all[1], (PlaceMm{-10, 4}));
    EXPECT_GT(nearestApart(all), 15) << "the others keep away from it";
    EXPECT_FALSE(plan.stems[0].standing) << "nothing is stored";
    plan.stems.clear();
    EXPECT_TRUE(standings(plan).empty());
}

TEST(PlacesInPot, SpreadEvenlyOverOvalsAndRectangles) {
    Plan plan = test::smallBoard();
    while (plan.stems.size() < 12) {
        plan.stems.push_back(plan.stems.front());
        plan.stems.back().id = freeStemId(plan);
    }
    plan.pot.topDiameter = millimetres(200);
    plan.pot.topBreadth = millimetres(60);
    for (const PotOpening opening : {PotOpening::oval, PotOpening::rectangular}) {
        plan.pot.opening = opening;
        const auto places = placesInPot(plan);
        ASSERT_EQ(places.size(), 12u);
        EXPECT_EQ(places, placesInPot(plan)) << "the same each time";
        // Twelve on a square grid over this clay would be √(area / 12) apart.
        EXPECT_GT(nearestApart(places), 0.7 * std::sqrt(openingArea(plan.pot) * M_PI * 1e4 * 0.74 / 12));
        double x = 0, y = 0;
        for (const PlaceMm& p : places) {
            EXPECT_LT(beyondClay(plan.pot, p.x, p.y), -2);
            x += p.x / 12;
            y += p.y / 12;
        }
        EXPECT_NEAR(x, 0, 6) << "about the middle";
        EXPECT_NEAR(y, 0, 4);
    }
    plan.pot.topBreadth = millimetres(1);
    EXPECT_EQ(placesInPot(plan).size(), 12u) << "no room at all";
}

} // namespace
} // namespace stemwright

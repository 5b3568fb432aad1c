#include "core/figures/standings.h"

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

} // namespace
} // namespace stemwright

#include "core/figures/view.h"

#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

void expectNear(const SeenPoint& a, const SeenPoint& b) {
    EXPECT_NEAR(a.x, b.x, 1e-9);
    EXPECT_NEAR(a.y, b.y, 1e-9);
    EXPECT_NEAR(a.near, b.near, 1e-9);
}

TEST(View, LevelShowsWidthAndHeight) {
    const View view;
    expectNear(view.point({3, 4, 5}), {3, -5, -4});
}

TEST(View, FromAboveShowsTheGroundPlan) {
    const View view(degrees(0), degrees(90));
    expectNear(view.point({3, 4, 5}), {3, -4, 5});
}

TEST(View, TiltOfThirty) {
    // sin 30 = 1/2, cos 30 = √3/2.
    const double c = std::sqrt(3) / 2;
    const View view(degrees(0), degrees(30));
    expectNear(view.point({1, 2, 4}), {1, -(4 * c + 2 * 0.5), 4 * 0.5 - 2 * c});
}

TEST(View, QuarterTurnBringsTheLeftToTheFront) {
    const View view(degrees(90));
    expectNear(view.point({-1, 0, 0}), {0, 0, 1});
    expectNear(view.point({0, -1, 0}), {1, 0, 0});
    EXPECT_EQ(View(degrees(-90)).turn(), degrees(270));
    EXPECT_EQ(View(degrees(0), degrees(120)).tilt(), degrees(90));
}

TEST(View, TellsThePlaceThatIsSeen) {
    const View view(degrees(37), degrees(25));
    const Point3 p{12, -7, 3};
    const SeenPoint seen = view.point(p);
    const Point3 back = view.onLevel(seen.x, seen.y, 3);
    EXPECT_NEAR(back.x, p.x, 1e-9);
    EXPECT_NEAR(back.y, p.y, 1e-9);
}

TEST(View, QuarterTurnOfADecussateStemExchangesItsPairs) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].standing = Standing{};
    const PlantBody plant = plantBody(plan);
    const View level, quarter(degrees(90));
    const auto width = [&](std::size_t first, const View& view) {
        const LeafBody &a = plant.leaves[first], &b = plant.leaves[first + 1];
        return std::abs(view.point(a.at3(0, -a.length)).x - view.point(b.at3(0, -b.length)).x);
    };
    // Tier 1 is seen spread and tier 2 end on; after the turn the other way about.
    EXPECT_GT(width(0, level), 20);
    EXPECT_LT(width(2, level), 1e-9);
    EXPECT_LT(width(0, quarter), 1e-9);
    EXPECT_GT(width(2, quarter), 20);
    // The leaf that pointed left is nearer to the eye than the one that pointed right.
    EXPECT_GT(quarter.direction(plant.leaves[0].along).z, quarter.direction(plant.leaves[1].along).z);
}

} // namespace
} // namespace stemwright

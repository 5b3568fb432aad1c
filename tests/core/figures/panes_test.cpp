#include "core/figures/panes.h"

#include "core/document/examples.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace stemwright {
namespace {

/// A rectangle whose nearness is `left` at its left side and `right` at its right.
Pane slab(std::size_t tag, double x, double y, double width, double height, double left, double right) {
    return {{{x, y, left}, {x + width, y, right}, {x + width, y + height, right}, {x, y + height, left}},
            tag,
            false};
}

/// Whatever is painted later lies nearer, everywhere that two panes share.
void expectRight(const std::vector<Pane>& order) {
    for (std::size_t i = 0; i < order.size(); ++i)
        for (std::size_t j = i + 1; j < order.size(); ++j) {
            const auto shared = sharedPart(order[i], order[j]);
            const PanePlane first = planeOf(order[i]), second = planeOf(order[j]);
            for (const SeenPoint& p : shared)
                EXPECT_LE(first.at(p.x, p.y), second.at(p.x, p.y) + 5e-3)
                    << order[i].tag << " under " << order[j].tag;
        }
}

double areaOf(const std::vector<Pane>& panes, std::size_t tag) {
    double sum = 0;
    for (const Pane& pane : panes)
        if (pane.tag == tag)
            sum += seenArea(pane.corners);
    return sum;
}

TEST(Panes, SharedPartOfTwoSquares) {
    const auto shared = sharedPart(slab(0, 0, 0, 4, 4, 0, 0), slab(1, 3, 1, 4, 4, 1, 1));
    EXPECT_NEAR(seenArea(shared), 3, 1e-12);
    EXPECT_TRUE(sharedPart(slab(0, 0, 0, 4, 4, 0, 0), slab(1, 4, 0, 4, 4, 1, 1)).empty()) << "they only touch";
    // The clip's corners may go round either way.
    Pane other = slab(1, 3, 1, 4, 4, 1, 1);
    std::reverse(other.corners.begin(), other.corners.end());
    EXPECT_NEAR(seenArea(sharedPart(slab(0, 0, 0, 4, 4, 0, 0), other)), 3, 1e-12);
}

TEST(Panes, PlaneOfASlope) {
    const PanePlane plane = planeOf(slab(0, 2, 5, 10, 3, 1, 6));
    EXPECT_NEAR(plane.at(2, 5), 1, 1e-12);
    EXPECT_NEAR(plane.at(12, 8), 6, 1e-12);
    EXPECT_NEAR(plane.alongX, 0.5, 1e-12);
    // Edge-on there is no plane over the picture: its mean.
    const Pane edge{{{0, 0, 0}, {0, 4, 0}, {0, 4, 6}, {0, 0, 6}}, 0, false};
    EXPECT_NEAR(planeOf(edge).at(0, 2), 3, 1e-12);
}

TEST(Panes, NearerComesLater) {
    const auto order =
        backToFront({slab(0, 0, 0, 9, 9, 5, 5), slab(1, 1, 1, 9, 9, 1, 1), slab(2, 2, 2, 9, 9, 3, 3)});
    ASSERT_EQ(order.size(), 3u);
    EXPECT_EQ(order[0].tag, 1u);
    EXPECT_EQ(order[1].tag, 2u);
    EXPECT_EQ(order[2].tag, 0u);
}

TEST(Panes, MeanNearnessAloneWouldBeWrong) {
    // A long slope lies behind a small pane where they meet, though its middle is nearer.
    const auto order = backToFront({slab(0, 0, 0, 100, 10, 0, 50), slab(1, 2, 2, 4, 4, 6, 6)});
    ASSERT_EQ(order.size(), 2u);
    EXPECT_EQ(order[0].tag, 0u);
    std::vector<Pane> quick = {slab(0, 0, 0, 100, 10, 0, 50), slab(1, 2, 2, 4, 4, 6, 6)};
    sortByMean(quick);
    EXPECT_EQ(quick[0].tag, 1u) << "which is why the quick order is for motion only";
}

TEST(Panes, ThoseThatCutThroughEachOtherAreDivided) {
    // They cross in the middle: 0 rises to the right, 1 to the left.
    const auto order = backToFront({slab(0, 0, 0, 10, 10, -5, 5), slab(1, 0, 0, 10, 10, 5, -5)});
    EXPECT_EQ(order.size(), 3u);
    expectRight(order);
    EXPECT_NEAR(areaOf(order, 0), 100, 1e-9) << "nothing is lost";
    EXPECT_NEAR(areaOf(order, 1), 100, 1e-9);
    for (const Pane& pane : order)
        EXPECT_EQ(pane.divided, areaOf({pane}, pane.tag) < 99);
}

TEST(Panes, ARingIsOpened) {
    // Three bars, each over the next at one end and under the last at its other: no order without a cut. Around
    // a triangle, each sinks from its start to its end.
    std::vector<Pane> bars;
    const double corner[3][2] = {{0, 0}, {30, 0}, {15, 26}};
    for (std::size_t i = 0; i < 3; ++i) {
        const double *a = corner[i], *b = corner[(i + 1) % 3];
        const double dx = b[0] - a[0], dy = b[1] - a[1], long_ = std::hypot(dx, dy);
        const double ux = dx / long_, uy = dy / long_, nx = -uy * 2, ny = ux * 2;
        const double fromX = a[0] - ux * 5, fromY = a[1] - uy * 5, toX = b[0] + ux * 5, toY = b[1] + uy * 5;
        bars.push_back({{{fromX + nx, fromY + ny, 4},
                         {toX + nx, toY + ny, -4},
                         {toX - nx, toY - ny, -4},
                         {fromX - nx, fromY - ny, 4}},
                        i,
                        false});
    }
    std::vector<double> before;
    for (std::size_t i = 0; i < 3; ++i)
        before.push_back(seenArea(bars[i].corners));
    const auto order = backToFront(bars);
    EXPECT_GE(order.size(), 4u);
    expectRight(order);
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_NEAR(areaOf(order, i), before[i], 1e-6);
}

TEST(Panes, OnePlaneKeepsTheOrderGiven) {
    const auto order = backToFront({slab(7, 0, 0, 5, 5, 2, 2), slab(3, 1, 1, 5, 5, 2, 2)});
    ASSERT_EQ(order.size(), 2u);
    EXPECT_EQ(order[0].tag, 7u);
}

TEST(Panes, AnyHeapOfPanesComesOutRight) {
    std::mt19937 random(11);
    const auto in = [&](double from, double to) {
        return from + (to - from) * static_cast<double>(random() % 10000) / 10000;
    };
    for (int round = 0; round < 20; ++round) {
        std::vector<Pane> panes;
        for (std::size_t i = 0; i < 24; ++i) {
            const double x = in(0, 60), y = in(0, 60), width = in(4, 30), height = in(4, 30);
            const double near = in(-10, 10), sx = in(-0.8, 0.8), sy = in(-0.8, 0.8);
            Pane pane{{}, i, false};
            for (const auto& [px, py] :
                 {std::pair{x, y}, {x + width, y + 2}, {x + width, y + height}, {x, y + height}})
                pane.corners.push_back({px, py, near + sx * (px - x) + sy * (py - y)});
            panes.push_back(std::move(pane));
        }
        std::vector<double> before;
        for (const Pane& pane : panes)
            before.push_back(seenArea(pane.corners));
        const auto order = backToFront(panes);
        expectRight(order);
        for (std::size_t i = 0; i < before.size(); ++i)
            EXPECT_NEAR(areaOf(order, i), before[i], 0.02);
    }
}

TEST(Panes, ExamplesComeOutRightFromAllSides) {
    const PlantBody plant = plantBody(example("succulent"));
    for (const double turn : {0.0, 33.0, 90.0, 211.0})
        for (const double tilt : {0.0, 25.0, 80.0})
            expectRight(backToFront(panesOf(plant, View(degrees(turn), degrees(tilt)))));
}

} // namespace
} // namespace stemwright

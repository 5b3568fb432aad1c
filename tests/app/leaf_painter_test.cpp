#include "app/leaf_painter.h"

#include "core/figures/leaf_make.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

namespace stemwright {
namespace {

LeafLook look(int length = 18, int beads = 60) {
    LeafLook out;
    out.length = length;
    out.width = 10;
    out.beads = beads;
    out.bands = {{QColor(122, 68, 98), 1}, {QColor(203, 214, 204), 1}};
    return out;
}

int inked(const QImage& image, const QRect& where) {
    int count = 0;
    for (int y = where.top(); y <= where.bottom(); ++y)
        for (int x = where.left(); x <= where.right(); ++x)
            count += image.pixel(x, y) != qRgb(255, 255, 255);
    return count;
}

QImage white() {
    QImage image(200, 200, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    return image;
}

TEST(LeafPainter, LooksAsThePlanSays) {
    const Plan plan = test::smallBoard();
    const LeafLook two = lookOf(plan, {KindId{2}, MixId{2}});
    EXPECT_EQ(two.length, 22);
    EXPECT_EQ(two.beads, 90);
    ASSERT_EQ(two.bands.size(), 2u);
    EXPECT_EQ(two.bands[0].colour, QColor(122, 68, 98));
    EXPECT_TRUE(lookOf(plan, {KindId{1}, MixId{}}).bands.empty());
}

TEST(LeafPainter, PointsWhereItIsTold) {
    for (const LeafDetail detail : {LeafDetail::beads, LeafDetail::rows, LeafDetail::outline}) {
        QImage image = white();
        QPainter painter(&image);
        paintLeaf(painter, look(), {100, 100}, 90, 4, detail);
        painter.end();
        EXPECT_GT(inked(image, QRect(100, 75, 80, 50)), 60);
        EXPECT_EQ(inked(image, QRect(0, 0, 95, 200)), 0) << "left of its base";
        EXPECT_EQ(inked(image, QRect(0, 0, 200, 75)), 0) << "above its breadth";
    }
}

TEST(LeafPainter, OuterColourIsAtTheEdge) {
    QImage image = white();
    QPainter painter(&image);
    LeafSprites sprites;
    sprites.draw(painter, look(), {100, 190}, 0, 10);
    painter.end();
    const QColor edge = image.pixelColor(51 + 11, 100), middle = image.pixelColor(100, 100);
    EXPECT_LT(edge.lightness(), 130);
    EXPECT_GT(middle.lightness(), 150);
}

TEST(LeafSprites, PaintsEachLookOnce) {
    QImage image = white();
    QPainter painter(&image);
    LeafSprites sprites;
    for (int i = 0; i < 50; ++i)
        sprites.draw(painter, look(), {100.0 + i, 100}, i % 2 ? 90 : -270, 2);
    EXPECT_EQ(sprites.size(), 1u);
    sprites.draw(painter, look(), {100, 100}, 45, 2);
    sprites.draw(painter, look(), {100, 100}, 45, 3);
    sprites.draw(painter, look(22), {100, 100}, 45, 3);
    EXPECT_EQ(sprites.size(), 4u);
    sprites.clear();
    EXPECT_EQ(sprites.size(), 0u);
    EXPECT_EQ(sprites.bytes(), 0u);
}

TEST(LeafSprites, LieOnTheSamePlaceAsThePaintedLeaf) {
    for (const int degrees : {0, 60, 135, 250}) {
        QImage one = white(), other = white();
        QPainter painter(&one);
        paintLeaf(painter, look(), {100, 100}, degrees, 4);
        painter.end();
        painter.begin(&other);
        LeafSprites sprites;
        sprites.draw(painter, look(), {100, 100}, degrees, 4);
        painter.end();
        double off = 0;
        int inOne = 0;
        for (int y = 0; y < 200; ++y)
            for (int x = 0; x < 200; ++x) {
                inOne += one.pixel(x, y) != qRgb(255, 255, 255);
                off += std::abs(qGray(one.pixel(x, y)) - qGray(other.pixel(x, y)));
            }
        EXPECT_LT(off / inOne, 14) << degrees;
    }
}

TEST(LeafSprites, StaysWithinItsBytes) {
    QImage image(600, 600, QImage::Format_ARGB32_Premultiplied);
    QPainter painter(&image);
    LeafSprites sprites;
    for (int i = 0; i < 300; ++i)
        sprites.draw(painter, look(50, 100), {300, 580}, i, 8);
    EXPECT_LE(sprites.bytes(), LeafSprites::mostBytes);
    EXPECT_GT(sprites.size(), 10u);
    sprites.draw(painter, look(5000), {300, 580}, 0, 40);
    EXPECT_LE(sprites.bytes(), LeafSprites::mostBytes);
}

TEST(LeafPainter, ASpriteCutsNoBeadOfASmallLoop) {
    for (const int beads : {3, 4, 5, 6, 8, 12, 20}) {
        const MadeLeaf made = madeLeaf({.making = Making::loops, .beads = beads, .rows = 1}, LeafEnd::round,
                                       LeafEnd::round, beadSizes().front());
        LeafLook small = look(1, beads);
        small.length = inMillimetres(made.length);
        small.width = inMillimetres(made.width);
        small.loops = true;
        small.rows = made.rows;
        const double scale = 100 / std::max(small.length, small.width);
        const auto drawn = [&](bool sprite) {
            QImage image(400, 400, QImage::Format_ARGB32_Premultiplied);
            image.fill(Qt::white);
            QPainter painter(&image);
            LeafSprites sprites;
            sprite ? sprites.draw(painter, small, {200, 200}, 0, scale)
                   : paintLeaf(painter, small, {200, 200}, 0, scale, LeafDetail::beads);
            painter.end();
            return inked(image, image.rect());
        };
        const int whole = drawn(false);
        EXPECT_NEAR(drawn(true), whole, 0.03 * whole) << beads;
    }
}

} // namespace
} // namespace stemwright

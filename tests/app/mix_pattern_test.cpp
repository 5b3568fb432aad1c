#include "app/mix_pattern.h"

#include "app/sheet_painter.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"

#include <QFile>
#include <QImage>
#include <QPainter>
#include <QPen>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <set>

namespace stemwright {
namespace {

QImage painted(int pattern, const QPolygonF& outline) {
    QImage picture(200, 200, QImage::Format_Grayscale8);
    picture.fill(Qt::white);
    QPainter painter(&picture);
    paintPattern(painter, outline, pattern, 10, QPen(Qt::black, 1.3));
    return picture;
}

const QPolygonF& leaf() {
    static const QPolygonF outline({QPointF(100, 10), QPointF(160, 60), QPointF(170, 120), QPointF(100, 190),
                                    QPointF(30, 120), QPointF(40, 60)});
    return outline;
}

TEST(MixPattern, TheFirstSixteenAreUnlike) {
    std::vector<QImage> all;
    for (int pattern = 0; pattern < 16; ++pattern)
        all.push_back(painted(pattern, leaf()));
    for (std::size_t a = 0; a < all.size(); ++a)
        for (std::size_t b = a + 1; b < all.size(); ++b) {
            int differ = 0;
            for (int y = 0; y < 200; ++y)
                for (int x = 0; x < 200; ++x)
                    differ += std::abs(qGray(all[a].pixel(x, y)) - qGray(all[b].pixel(x, y))) > 100;
            EXPECT_GT(differ, 300) << a << " and " << b;
        }
}

TEST(MixPattern, NothingStandsOutsideTheLeaf) {
    for (int pattern = 0; pattern < 40; ++pattern) {
        const QImage picture = painted(pattern, leaf());
        for (int y = 0; y < 200; ++y)
            for (int x = 0; x < 200; ++x) {
                if (qGray(picture.pixel(x, y)) > 200)
                    continue;
                bool near = false;
                for (const QPointF by :
                     {QPointF(), QPointF(3, 0), QPointF(-3, 0), QPointF(0, 3), QPointF(0, -3)})
                    near |= leaf().containsPoint(QPointF(x, y) + by, Qt::OddEvenFill);
                ASSERT_TRUE(near) << pattern << " at " << x << ", " << y;
            }
    }
}

TEST(MixPattern, IsTheMixsPlaceInThePlan) {
    const Plan plan = test::smallBoard();
    for (std::size_t i = 0; i < plan.mixes.size(); ++i)
        EXPECT_EQ(patternOf(plan, plan.mixes[i].id), static_cast<int>(i));
    EXPECT_EQ(patternOf(plan, MixId{99}), -1);
    EXPECT_EQ(patternOf(plan, MixId{}), -1);
}

TEST(MixPattern, GreySheetsTellMixesOfOneLightnessApart) {
    // Three mixes of one colour: without patterns their pictures on grey paper would be the same.
    Plan plan = test::smallBoard();
    for (Colour& colour : plan.colours)
        colour.srgb = {120, 120, 120};
    SheetOptions options;
    options.grey = true;
    options.only = {SheetPage::mats};
    const std::vector<Page> pages = pagesOf(plan, figures(plan), options);
    ASSERT_FALSE(pages.empty());
    Page bare = pages.front();
    std::vector<LeafMark> leaves;
    for (const Mark& mark : bare.marks)
        if (const auto* found = std::get_if<LeafMark>(&mark); found && found->leaf.mix)
            leaves.push_back(*found);
    std::set<unsigned> seen;
    std::vector<QImage> pictures;
    for (LeafMark mark : leaves) {
        if (!seen.insert(mark.leaf.mix.value).second)
            continue;
        mark.base = {30, 40};
        mark.degrees = 0;
        bare.marks = {mark};
        pictures.push_back(pagePicture(bare, plan, 8, true));
    }
    ASSERT_EQ(pictures.size(), 3u);
    EXPECT_NE(pictures[0], pictures[1]);
    EXPECT_NE(pictures[1], pictures[2]);
    EXPECT_NE(pictures[0], pictures[2]);
    for (const QImage& picture : pictures)
        for (int y = 0; y < picture.height(); y += 3)
            for (int x = 0; x < picture.width(); x += 3) {
                const QRgb pixel = picture.pixel(x, y);
                ASSERT_LE(std::abs(qRed(pixel) - qBlue(pixel)), 1);
            }
}

} // namespace
} // namespace stemwright

#include "app/pot/depth_raster.h"
#include "app/pot/plant_painter.h"
#include "app/pot/plant_render.h"
#include "app/pot/pot_commands.h"

#include "core/document/examples.h"
#include "core/figures/sight.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include <cmath>

namespace stemwright {
namespace {

Plan oneStem() {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].standing = Standing{};
    return plan;
}

PlantPicture pictureOf(const PlantScene& scene, QSize size, const View& view, PlantDetail detail) {
    PlantPicture out;
    out.view = view;
    out.size = size;
    out.framing = framed(scene, view.tilt(), size);
    out.detail = detail;
    return out;
}

int covered(const QImage& image) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            count += qAlpha(image.pixel(x, y)) > 127;
    return count;
}

/// How far two pictures are apart: the mean over the pixels that either covers, of 255.
double apart(const QImage& a, const QImage& b) {
    double sum = 0;
    int count = 0;
    for (int y = 0; y < a.height(); ++y)
        for (int x = 0; x < a.width(); ++x) {
            const QRgb p = a.pixel(x, y), q = b.pixel(x, y);
            if (qAlpha(p) < 128 && qAlpha(q) < 128)
                continue;
            ++count;
            sum += (std::abs(qRed(p) - qRed(q)) + std::abs(qGreen(p) - qGreen(q)) +
                    std::abs(qBlue(p) - qBlue(q))) /
                   3.0;
        }
    return count ? sum / count : 0;
}

/// The part of the pixels covered by either picture that plainly differ.
double differing(const QImage& a, const QImage& b) {
    int plainly = 0, count = 0;
    for (int y = 0; y < a.height(); ++y)
        for (int x = 0; x < a.width(); ++x) {
            const QRgb p = a.pixel(x, y), q = b.pixel(x, y);
            if (qAlpha(p) < 128 && qAlpha(q) < 128)
                continue;
            ++count;
            plainly += std::max({std::abs(qRed(p) - qRed(q)), std::abs(qGreen(p) - qGreen(q)),
                                 std::abs(qBlue(p) - qBlue(q))}) > 24;
        }
    return count ? static_cast<double>(plainly) / count : 0;
}
/// So many may: another compiler's last bits move the edges of beads.
constexpr double tolerated = 0.004;

TEST(DepthRaster, ABeadIsAnEllipseOfItsSize) {
    Solids solids;
    BeadSolid bead;
    bead.middle = {50, 40, 0};
    bead.axes[0] = {20, 0, 0};
    bead.axes[1] = {0, 10, 0};
    bead.axes[2] = {0, 0, 15};
    bead.tint = {0.5F, 0.2F, 0.2F};
    bead.bound();
    solids.beads.push_back(bead);
    QImage image(100, 80, QImage::Format_ARGB32_Premultiplied);
    fillRows(image, 0, 80, 2, solids);
    EXPECT_NEAR(covered(image), M_PI * 10 * 5, 8) << "its axes are samples, of which two a pixel each way";
    QImage fine(100, 80, QImage::Format_ARGB32_Premultiplied);
    fillRows(fine, 0, 80, 1, solids);
    EXPECT_NEAR(covered(fine), M_PI * 20 * 10, 12);
    EXPECT_GT(qAlpha(fine.pixel(50, 40)), 250);
    EXPECT_EQ(qAlpha(fine.pixel(50, 55)), 0);
}

TEST(DepthRaster, TheNearerBeadIsSeenWhateverTheOrder) {
    BeadSolid far, near;
    for (BeadSolid* bead : {&far, &near}) {
        bead->axes[0] = {10, 0, 0};
        bead->axes[1] = {0, 10, 0};
        bead->axes[2] = {0, 0, 10};
        bead->gloss = 0;
    }
    far.middle = {20, 20, 0};
    far.tint = {1, 0, 0};
    near.middle = {26, 20, 8};
    near.tint = {0, 0, 1};
    far.bound();
    near.bound();
    for (const bool nearFirst : {true, false}) {
        Solids solids;
        solids.beads = nearFirst ? std::vector{near, far} : std::vector{far, near};
        QImage image(50, 40, QImage::Format_ARGB32_Premultiplied);
        fillRows(image, 0, 40, 1, solids);
        EXPECT_GT(qBlue(image.pixel(26, 20)), qRed(image.pixel(26, 20)));
        EXPECT_GT(qRed(image.pixel(12, 20)), qBlue(image.pixel(12, 20)));
    }
}

TEST(DepthRaster, RowsFilledApartAreThePictureFilledAtOnce) {
    const PlantScene scene(example("succulent"));
    PlantPicture picture = pictureOf(scene, {200, 160}, View(degrees(30), degrees(20)), PlantDetail::full);
    const QImage once = renderPlant(scene, picture);
    ASSERT_FALSE(once.isNull());
    EXPECT_EQ(once, renderPlant(scene, picture)) << "the same each time, by however many threads";
}

TEST(PlantRender, EverythingIsInThePictureFromAllSides) {
    for (const ExampleInfo& info : examples()) {
        const PlantScene scene(example(info.key));
        for (const double turn : {0.0, 77.0, 200.0})
            for (const double tilt : {0.0, 20.0, 60.0, 90.0}) {
                const QImage image =
                    renderPlant(scene, pictureOf(scene, {240, 200}, View(degrees(turn), degrees(tilt)),
                                                 PlantDetail::moving));
                EXPECT_GT(covered(image), 2400) << info.key << turn << tilt;
                for (int x = 0; x < image.width(); ++x)
                    EXPECT_TRUE(qAlpha(image.pixel(x, 0)) == 0 &&
                                qAlpha(image.pixel(x, image.height() - 1)) == 0)
                        << info.key << turn << " " << tilt << " touches the edge";
            }
    }
}

TEST(PlantRender, MotionLooksLikeRest) {
    const PlantScene scene(example("spray"));
    const View view(degrees(25), degrees(15));
    const QImage full = renderPlant(scene, pictureOf(scene, {480, 400}, view, PlantDetail::full));
    const QImage moving = renderPlant(scene, pictureOf(scene, {480, 400}, view, PlantDetail::moving));
    EXPECT_NEAR(covered(full), covered(moving), 0.06 * covered(full));
    EXPECT_LT(apart(full, moving), 30);
}

/// What `stemwright picture --turn 20 --size 240x240` writes of an example, and what is kept of it in
/// tests/data.
QImage pictureNow(const Plan& plan) {
    return QImage::fromData(
               plantPng(PlantScene(plan), View(degrees(20), degrees(18)), {240, 240}, Ground::light))
        .convertToFormat(QImage::Format_ARGB32_Premultiplied);
}
QImage keptPicture(const char* name) {
    return QImage(QStringLiteral(STEMWRIGHT_SOURCE_DIR "/tests/data/pictures/%1.png").arg(QLatin1String(name)))
        .convertToFormat(QImage::Format_ARGB32_Premultiplied);
}

TEST(PlantRender, PicturesAreThoseThatWereKept) {
    for (const char* name : {"succulent", "herb"}) {
        const QImage kept = keptPicture(name);
        ASSERT_FALSE(kept.isNull()) << name;
        Plan plan = example(name);
        EXPECT_LE(differing(kept, pictureNow(plan)), tolerated) << name;
        // The tolerance lets no wrong plane pass, not even on one stem, and no wrong colour.
        Plan turned = plan;
        for (Tier& tier : turned.stems[0].tiers)
            tier.turn = degrees(std::fmod(inDegrees(tier.turn) + 45, 360));
        EXPECT_GT(differing(kept, pictureNow(turned)), 2 * tolerated) << name;
        Plan recoloured = plan;
        std::swap(recoloured.colours[0].srgb, recoloured.colours[1].srgb);
        EXPECT_GT(differing(kept, pictureNow(recoloured)), 2 * tolerated) << name;
    }
}

TEST(PlantRender, AWrongPlaneOrColourShows) {
    const Plan plan = oneStem();
    const View view(degrees(20), degrees(20));
    const auto render = [&](const Plan& of) {
        const PlantScene scene(of);
        PlantPicture picture = pictureOf(PlantScene(plan), {300, 300}, view, PlantDetail::full);
        return renderPlant(scene, picture);
    };
    const QImage kept = render(plan);
    EXPECT_EQ(differing(kept, render(plan)), 0);
    Plan turned = plan;
    turned.stems[0].tiers[1].turn = degrees(45);
    EXPECT_GT(differing(kept, render(turned)), 2 * tolerated);
    Plan recoloured = plan;
    std::swap(recoloured.colours[0].srgb, recoloured.colours[1].srgb);
    EXPECT_GT(differing(kept, render(recoloured)), 2 * tolerated);
}

TEST(PlantRender, AQuarterTurnShowsTheOtherPairsSpread) {
    // One tier side to side: from the front it is broad, from the side narrow.
    Plan plan = oneStem();
    plan.stems[0].tiers.resize(1);
    plan.pot.topDiameter = millimetres(3);
    plan.pot.depth = millimetres(1);
    const PlantScene scene(plan);
    const auto width = [&](double turn) {
        PlantPicture picture = pictureOf(scene, {300, 300}, View(degrees(turn)), PlantDetail::full);
        const QImage image = renderPlant(scene, picture);
        int left = 300, right = 0;
        for (int y = 0; y < 300; ++y)
            for (int x = 0; x < 300; ++x)
                if (qAlpha(image.pixel(x, y)) > 127)
                    left = std::min(left, x), right = std::max(right, x);
        return right - left;
    };
    EXPECT_GT(width(0), 2 * width(90));
}

TEST(PlantRender, SightAgreesWithCountingPixels) {
    // Flat leaves of one colour each without light: what core counts, counted again in a picture.
    Plan plan = example("succulent");
    for (std::size_t m = 0; m < plan.mixes.size(); ++m)
        plan.mixes[m].colours = {{plan.colours[m % plan.colours.size()].id, 1, ""}};
    const View view(degrees(15), degrees(35));
    const PlantScene scene(plan);
    Solids solids;
    const double scale = 6;
    std::vector<QImage> textures;
    const auto mark = [](std::size_t c) { return qRgb(static_cast<int>(40 + 40 * c), 0, 0); };
    for (const PlantScene::Look& look : scene.looks) {
        QImage texture(120, 160, QImage::Format_ARGB32_Premultiplied);
        texture.fill(Qt::transparent);
        std::size_t colour = 0;
        for (std::size_t c = 0; c < plan.colours.size(); ++c)
            if (QColor(plan.colours[c].srgb.red, plan.colours[c].srgb.green, plan.colours[c].srgb.blue) ==
                look.look.bands[0].colour)
                colour = c;
        QPainter painter(&texture);
        QPainterPath outline = leafOutline(look.look, 1);
        painter.translate(60, 160);
        painter.scale(120 / look.look.width, 160 / look.look.length);
        painter.fillPath(outline, QColor(mark(colour)));
        textures.push_back(texture);
    }
    const auto place = [&](const Point3& p) {
        const SeenPoint s = view.point(p);
        return Vec3f{static_cast<float>(s.x * scale + 600), static_cast<float>(s.y * scale + 600),
                     static_cast<float>(s.near * scale)};
    };
    const auto arrow = [&](const Point3& v) {
        const Point3 s = view.direction(v);
        return Vec3f{static_cast<float>(s.x * scale), static_cast<float>(s.y * scale),
                     static_cast<float>(s.z * scale)};
    };
    for (std::size_t i = 0; i < scene.body.leaves.size(); ++i) {
        const LeafBody& leaf = scene.body.leaves[i];
        solids.leaves.push_back({place(leaf.base), arrow(leaf.right * leaf.width),
                                 arrow(leaf.along * leaf.length), &textures[scene.lookOf[i]], 1});
    }
    QImage image(1200, 1200, QImage::Format_ARGB32_Premultiplied);
    fillRows(image, 0, 1200, 1, solids);
    std::vector<double> counted(plan.colours.size(), 0);
    double all = 0;
    for (int y = 0; y < 1200; ++y)
        for (int x = 0; x < 1200; ++x)
            for (std::size_t c = 0; c < counted.size(); ++c)
                if (image.pixel(x, y) == mark(c))
                    ++counted[c], ++all;
    ASSERT_GT(all, 10'000);
    const Sight sight = sightOf(plan, scene.body, view, 0.15);
    for (std::size_t c = 0; c < counted.size(); ++c)
        EXPECT_NEAR(sight.shares[c], counted[c] / all, 0.02) << plan.colours[c].name;
}

TEST(PlantRender, StopsWhenTold) {
    const PlantScene scene(example("spray"));
    PlantPicture picture = pictureOf(scene, {400, 400}, View(), PlantDetail::full);
    std::stop_source stop;
    stop.request_stop();
    picture.stop = stop.get_token();
    EXPECT_TRUE(renderPlant(scene, picture).isNull());
}

TEST(PlantRender, OddPlansGivePictures) {
    Plan plan = test::smallBoard();
    plan.stems.clear();
    const auto render = [](const Plan& of) {
        const PlantScene scene(of);
        return renderPlant(scene,
                           pictureOf(scene, {160, 120}, View(degrees(10), degrees(20)), PlantDetail::full));
    };
    EXPECT_GT(covered(render(plan)), 500) << "the pot alone";
    plan = test::smallBoard();
    plan.kinds[0].length = millimetres(1000);
    EXPECT_GT(covered(render(plan)), 100) << "a leaf a metre long";
    plan = test::smallBoard();
    plan.pot.topDiameter = millimetres(1);
    plan.pot.bottomDiameter = millimetres(1);
    EXPECT_GT(covered(render(plan)), 500) << "a pot smaller than its stakes";
    for (const PotShape shape : {PotShape::bowl, PotShape::cylinder, PotShape::frustum}) {
        plan.pot = Pot{};
        plan.pot.shape = shape;
        EXPECT_GT(covered(render(plan)), 500);
    }
}

TEST(PlantRender, AClickFindsTheLeafThatIsSeen) {
    const Plan plan = oneStem();
    const PlantScene scene(plan);
    const View view(degrees(0), degrees(30));
    const Framing framing = framed(scene, view.tilt(), {400, 400});
    for (std::size_t i = 0; i < scene.body.leaves.size(); ++i) {
        const LeafBody& leaf = scene.body.leaves[i];
        if (leaf.at.tier != 0)
            continue;
        const auto found =
            leafAt(scene, view, framing, framing.onPicture(view.point(leaf.at3(0, -leaf.length * 0.7))));
        ASSERT_TRUE(found);
        EXPECT_EQ(*found, i);
    }
    EXPECT_FALSE(leafAt(scene, view, framing, {2, 2}));
}

TEST(PlantPainter, PaintsTheSamePlantAsTheRenderer) {
    const PlantScene scene(example("fern"));
    const View view(degrees(10), degrees(18));
    const PlantPicture picture = pictureOf(scene, {400, 400}, view, PlantDetail::full);
    const QImage rendered = renderPlant(scene, picture);
    QImage painted(400, 400, QImage::Format_ARGB32_Premultiplied);
    painted.fill(Qt::transparent);
    QPainter painter(&painted);
    paintPlant(painter, scene, view, picture.framing);
    painter.end();
    EXPECT_NEAR(covered(painted), covered(rendered), 0.12 * covered(rendered));
    EXPECT_LT(apart(painted, rendered), 60);
}

TEST(PlantPictures, AreAPngAndAnSvg) {
    const PlantScene scene(oneStem());
    const QByteArray png = plantPng(scene, View(degrees(0), degrees(20)), {120, 90}, Ground::dark);
    const QImage image = QImage::fromData(png);
    EXPECT_EQ(image.size(), QSize(120, 90));
    EXPECT_LT(qGray(image.pixel(1, 1)), 90);
    const QByteArray svg = plantSvg(scene, View(degrees(0), degrees(20)), {120, 90}, Ground::light);
    EXPECT_TRUE(svg.contains("<svg"));
    EXPECT_TRUE(svg.contains("viewBox=\"0 0 120 90\""));
}

} // namespace
} // namespace stemwright

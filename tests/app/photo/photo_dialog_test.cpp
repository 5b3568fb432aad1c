#include "app/photo/photo_dialog.h"

#include "app/ask.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QComboBox>
#include <QGuiApplication>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QTemporaryDir>
#include <QtTest>

namespace stemwright {
namespace {

using test::smallBoard;

TEST(PhotoSample, AveragesInLightNotInNumbers) {
    // Black and white in turns: half the light is 188 of 255, half the numbers would be 128 (IEC 61966-2-1).
    QImage image(200, 200, QImage::Format_RGB32);
    for (int y = 0; y < 200; ++y)
        for (int x = 0; x < 200; ++x)
            image.setPixel(x, y, (x + y) % 2 == 0 ? qRgb(0, 0, 0) : qRgb(255, 255, 255));
    const auto grey = discColour(image, {100, 100}, 101);
    ASSERT_TRUE(grey);
    EXPECT_NEAR(grey->red, 188, 1);
    EXPECT_EQ(grey->red, grey->green);
    EXPECT_EQ(grey->red, grey->blue);
}

TEST(PhotoSample, ADiscIsRoundAndEndsAtTheEdge) {
    QImage image(21, 21, QImage::Format_RGB32);
    image.fill(Qt::red);
    // The corners of a square round the disc are another colour, and so is all beyond it.
    for (int y = 0; y < 21; ++y)
        for (int x = 0; x < 21; ++x)
            if (std::hypot(x - 10, y - 10) > 4.5)
                image.setPixel(x, y, qRgb(0, 0, 255));
    EXPECT_EQ(discColour(image, {10, 10}, 9), (Srgb{255, 0, 0}));
    EXPECT_NE(discColour(image, {10, 10}, 15), (Srgb{255, 0, 0}));
    EXPECT_EQ(discColour(image, {0, 0}, 3), (Srgb{0, 0, 255}));
    EXPECT_EQ(discColour(image, {10, 10}, 1), (Srgb{255, 0, 0}));
    EXPECT_FALSE(discColour(image, {-50, -50}, 9));
    EXPECT_FALSE(discColour(QImage(), {0, 0}, 9));
}

TEST(PhotoSample, WhatIsSeenThroughCountsNothing) {
    QImage image(9, 9, QImage::Format_ARGB32);
    image.fill(qRgba(255, 255, 255, 0));
    EXPECT_FALSE(discColour(image, {4, 4}, 5));
    image.setPixel(4, 4, qRgba(10, 120, 60, 255));
    EXPECT_EQ(discColour(image, {4, 4}, 5), (Srgb{10, 120, 60}));
}

TEST(PhotoSample, LargeImagesAreShrunkAndBadOnesGetASentence) {
    QTemporaryDir folder;
    const QString large = folder.filePath(QStringLiteral("large.png"));
    QImage image(4000, 500, QImage::Format_RGB32);
    image.fill(QColor(12, 34, 56));
    ASSERT_TRUE(image.save(large));
    const Photo read = readPhoto(large);
    EXPECT_EQ(read.image.size(), QSize(3000, 375));
    EXPECT_EQ(discColour(read.image, {1500, 180}, 9), (Srgb{12, 34, 56}));

    const QString text = folder.filePath(QStringLiteral("letter.jpg"));
    QFile letter(text);
    ASSERT_TRUE(letter.open(QIODevice::WriteOnly));
    letter.write("Dear maker");
    letter.close();
    EXPECT_EQ(
        readPhoto(text).why,
        QStringLiteral("“letter.jpg” is no picture of a form that is known here; save it as PNG or JPEG."));
    const QString cut = folder.filePath(QStringLiteral("cut.png"));
    QFile whole(large);
    ASSERT_TRUE(whole.open(QIODevice::ReadOnly));
    QFile half(cut);
    ASSERT_TRUE(half.open(QIODevice::WriteOnly));
    half.write(whole.readAll().left(60));
    half.close();
    EXPECT_TRUE(readPhoto(cut).image.isNull());
    EXPECT_FALSE(readPhoto(cut).why.isEmpty());
    EXPECT_FALSE(readPhoto(folder.filePath(QStringLiteral("none.png"))).why.isEmpty());
    EXPECT_FALSE(readPhoto(folder.path()).why.isEmpty());
}

class PhotoDialogTest : public testing::Test {
protected:
    void SetUp() override {
        // Left half sea, right half plum, with one bright speck in it.
        picture = QImage(60, 40, QImage::Format_RGB32);
        picture.fill(QColor(106, 154, 134));
        for (int y = 0; y < 40; ++y)
            for (int x = 30; x < 60; ++x)
                picture.setPixel(x, y, qRgb(122, 68, 98));
        path = folder.filePath(QStringLiteral("beads.png"));
        ASSERT_TRUE(picture.save(path));
        dialog.emplace(plan, ColourId{});
        dialog->show();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&*dialog));
    }
    void TearDown() override { ask::setStand(std::nullopt); }

    template <class Widget> Widget* child(const char* name) {
        auto* widget = dialog->findChild<Widget*>(QLatin1String(name));
        EXPECT_TRUE(widget) << name;
        return widget;
    }
    PhotoView* view() { return child<PhotoView>("photoView"); }
    void open() {
        ask::setStand(ask::Stand{{}, {}, [this] { return path; }});
        QTest::mouseClick(child<QPushButton>("photoOpen"), Qt::LeftButton);
        ASSERT_TRUE(QTest::qWaitFor([this] { return !view()->image().isNull(); }));
    }
    void ok() { QTest::mouseClick(child<QPushButton>("photoDialogOk"), Qt::LeftButton); }

    QTemporaryDir folder;
    QImage picture;
    QString path;
    Plan plan = smallBoard();
    std::optional<PhotoDialog> dialog;
};

TEST_F(PhotoDialogTest, AClickTakesAColourAndItBecomesOneEdit) {
    open();
    QTest::mouseClick(view(), Qt::LeftButton, {}, view()->seenAt({10, 20}).toPoint());
    QTest::mouseClick(view(), Qt::LeftButton, {}, view()->seenAt({50, 20}).toPoint());
    EXPECT_EQ(child<QListWidget>("photoTaken")->count(), 2);
    ok();
    ASSERT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
    const auto edit = dialog->edit();
    ASSERT_TRUE(edit);
    const Plan before = plan;
    auto undo = apply(plan, *edit);
    ASSERT_TRUE(undo);
    ASSERT_EQ(plan.colours.size(), before.colours.size() + 2);
    EXPECT_EQ(plan.colours[before.colours.size()].srgb, (Srgb{106, 154, 134}));
    EXPECT_EQ(plan.colours.back().srgb, (Srgb{122, 68, 98}));
    EXPECT_FALSE(firstProblem(plan));
    ASSERT_TRUE(apply(plan, undo.value()));
    EXPECT_EQ(plan, before);
}

TEST_F(PhotoDialogTest, ArrowKeysGoByAPixelAndEnterTakes) {
    open();
    EXPECT_TRUE(view()->hasFocus()) << "the hand is where the work is";
    ASSERT_EQ(view()->point(), QPoint(30, 20));
    QTest::keyClick(view(), Qt::Key_Left);
    EXPECT_EQ(view()->point(), QPoint(29, 20));
    QTest::keyClick(view(), Qt::Key_Left, Qt::ShiftModifier);
    QTest::keyClick(view(), Qt::Key_Down);
    EXPECT_EQ(view()->point(), QPoint(19, 21));
    QTest::keyClick(view(), Qt::Key_PageUp);
    EXPECT_EQ(child<QSpinBox>("photoAcross")->value(), 11);
    QTest::keyClick(view(), Qt::Key_PageDown);
    QTest::keyClick(view(), Qt::Key_PageDown);
    EXPECT_EQ(view()->across(), 7);
    QTest::keyClick(view(), Qt::Key_Return);
    EXPECT_TRUE(dialog->isVisible()) << "Enter takes the colour, it does not close";
    ASSERT_EQ(child<QListWidget>("photoTaken")->count(), 1);
    // It is named by keys.
    auto* taken = child<QListWidget>("photoTaken");
    taken->setFocus();
    QTest::keyClick(taken, Qt::Key_F2);
    auto* editor = taken->findChild<QLineEdit*>();
    ASSERT_TRUE(editor);
    QTest::keyClick(editor, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(editor, QStringLiteral("Sea glass"));
    QTest::keyClick(editor, Qt::Key_Return);
    ok();
    Plan after = plan;
    ASSERT_TRUE(apply(after, *dialog->edit()));
    EXPECT_EQ(after.colours.back().name, "Sea glass");
    for (int i = 0; i < 100; ++i)
        QTest::keyClick(view(), Qt::Key_Left);
    EXPECT_EQ(view()->point().x(), 0) << "the point stays on the image";
}

TEST_F(PhotoDialogTest, ChangesTheChosenColour) {
    dialog.emplace(plan, plan.colours[1].id);
    dialog->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&*dialog));
    open();
    QTest::mouseClick(view(), Qt::LeftButton, {}, view()->seenAt({50, 5}).toPoint());
    QTest::mouseClick(view(), Qt::LeftButton, {}, view()->seenAt({5, 5}).toPoint());
    EXPECT_EQ(child<QListWidget>("photoTaken")->count(), 1) << "the last one counts";
    ok();
    Plan after = plan;
    ASSERT_TRUE(dialog->edit());
    ASSERT_TRUE(apply(after, *dialog->edit()));
    EXPECT_EQ(after.colours.size(), plan.colours.size());
    EXPECT_EQ(after.colours[1].srgb, (Srgb{106, 154, 134}));
    EXPECT_EQ(after.colours[1].name, plan.colours[1].name);
}

TEST_F(PhotoDialogTest, ABadFileIsSaidAndNothingIsLost) {
    ok();
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_TRUE(dialog->notice().startsWith(QStringLiteral("Take a colour first")));
    open();
    path = folder.filePath(QStringLiteral("gone.jpg"));
    QTest::mouseClick(child<QPushButton>("photoOpen"), Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor([this] { return dialog->notice().contains(QStringLiteral("gone.jpg")); }));
    EXPECT_EQ(view()->image().size(), picture.size()) << "what was open stays open";
}

TEST_F(PhotoDialogTest, AnImageMayBePasted) {
    QGuiApplication::clipboard()->setText(QStringLiteral("no picture"));
    view()->setFocus();
    QTest::keyClick(view(), Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(dialog->notice(), QStringLiteral("There is no picture to paste."));
    QGuiApplication::clipboard()->setImage(picture);
    QTest::keyClick(view(), Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(view()->image().size(), picture.size());
}

TEST_F(PhotoDialogTest, GoingNearerKeepsThePixelUnderTheHand) {
    open();
    const QPoint pixel(28, 19);
    const QPointF at = view()->seenAt(pixel);
    QWheelEvent wheel(at, view()->mapToGlobal(at), {}, {0, 240}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(view(), &wheel);
    EXPECT_NEAR(view()->seenAt(pixel).x(), at.x(), 2) << "to a pixel of the screen";
    EXPECT_NEAR(view()->seenAt(pixel).y(), at.y(), 2) << "to a pixel of the screen";
    EXPECT_GT(view()->seenAt({29, 19}).x() - view()->seenAt(pixel).x(), 8);
}

} // namespace
} // namespace stemwright

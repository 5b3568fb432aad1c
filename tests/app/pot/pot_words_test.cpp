// What the place Pot says, where it says it, and when it is gone.
#include "app/main_window.h"
#include "app/pot/from_above.h"
#include "app/pot/plant_view.h"
#include "app/session.h"
#include "core/document/examples.h"

#include <QAction>
#include <QLabel>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

class PotWordsTest : public ::testing::Test {
protected:
    PotWordsTest() : window(example("spray")) {
        window.resize(1280, 800);
        window.show();
        window.showPlaceNamed(QStringLiteral("pot"));
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&window));
        above = window.findChild<FromAbove*>();
        hint = window.findChild<QLabel*>(QStringLiteral("potHint"));
    }
    QPoint at(std::size_t stem) const { return above->onWidget(above->places()[stem]).toPoint(); }
    QRect inWindow(const QWidget* widget) const {
        return QRect(widget->mapTo(&window, QPoint(0, 0)), widget->size());
    }
    QLabel* status() const { return window.findChild<QLabel*>(QStringLiteral("hint")); }

    MainWindow window;
    FromAbove* above = nullptr;
    QLabel* hint = nullptr;
};

TEST_F(PotWordsTest, WhatIsSaidOfAHeldStemHidesNoStem) {
    EXPECT_FALSE(hint->isVisible());
    const QPoint from = at(6), to = from - QPoint(0, 40);
    QTest::mousePress(above, Qt::LeftButton, {}, from);
    QTest::mouseMove(above, from - QPoint(0, 20));
    QTest::mouseMove(above, to);
    ASSERT_TRUE(hint->isVisible());
    EXPECT_EQ(hint->text(), above->hint().join(QLatin1Char('\n')));
    EXPECT_GE(hint->width(), hint->sizeHint().width());
    EXPECT_FALSE(inWindow(hint).intersects(inWindow(above)));
    EXPECT_TRUE(inWindow(window.findChild<PlantView*>()).contains(inWindow(hint)));
    QTest::mouseRelease(above, Qt::LeftButton, {}, to);
    EXPECT_FALSE(hint->isVisible());
    // By keys as well, and Esc takes it away.
    above->setFocus();
    QTest::keyClick(above, Qt::Key_Space);
    EXPECT_TRUE(hint->isVisible());
    QTest::keyClick(above, Qt::Key_Escape);
    EXPECT_FALSE(hint->isVisible());
}

TEST_F(PotWordsTest, TheBestOrderAndLeavesThatMeetAreBothTrue) {
    // Taken once, the places are as good as can be; leaves of nine stems meet there all the same.
    QTest::mouseClick(window.findChild<QPushButton*>(QStringLiteral("placeStems")), Qt::LeftButton);
    const auto answered = [&] {
        return QTest::qWaitFor(
            [&] {
                return window.session().offer() ||
                       status()->toolTip().contains(QStringLiteral("on even places"));
            },
            20'000);
    };
    ASSERT_TRUE(answered());
    if (window.session().offer()) {
        window.session().takeOffer();
        window.findChild<QAction*>(QStringLiteral("placeInPot"))->trigger();
        ASSERT_TRUE(answered());
    }
    const QString said = status()->toolTip();
    EXPECT_TRUE(said.contains(QStringLiteral("no other order on even places is better"))) << said.toStdString();
    EXPECT_TRUE(said.endsWith(QStringLiteral("leaves that meet need more room."))) << said.toStdString();
    EXPECT_EQ(status()->text(), said) << "there is room for all of it";
    EXPECT_TRUE(status()->isVisible());
    // In another place it means nothing.
    window.showPlaceNamed(QStringLiteral("leaves"));
    EXPECT_TRUE(status()->text().isEmpty()) << status()->text().toStdString();
    EXPECT_TRUE(window.findChild<QLabel*>(QStringLiteral("heights"))->isVisible());
}

TEST_F(PotWordsTest, AStemIsLeanedByKeysOrItIsSaidWhichOneIsMissing) {
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    auto* view = window.findChild<PlantView*>();
    view->setFocus();
    const int turn = view->turn();
    QTest::keyClick(view, Qt::Key_Right, Qt::ControlModifier);
    EXPECT_TRUE(status()->toolTip().startsWith(QStringLiteral("Choose a stem")))
        << status()->toolTip().toStdString();
    EXPECT_EQ(view->turn(), turn);
    above->choose(StemId{2});
    QTest::keyClick(view, Qt::Key_Right, Qt::ControlModifier);
    const Stem* stem = find(window.session().plan(), StemId{2});
    ASSERT_TRUE(stem->pose);
    EXPECT_GT(inDegrees(stem->pose->lean), 0);
}

} // namespace
} // namespace stemwright

#include "tests/app/bind/bind_fixture.h"

#include <QCheckBox>
#include <QPushButton>

namespace stemwright {
namespace {

// What is around the step: the whole screen and out of it, keys of the boxes, cautions, small windows.

class BindWindowTest : public BindPlaceTest {
protected:
    BindWindowTest() {
        QApplication::setActiveWindow(&window);
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
        place->setFocus();
    }
    /// A button that is pressed by its key goes down for a moment first.
    template <class Happens> static bool soon(Happens happens) { return QTest::qWaitFor(happens, 2000); }
    QPushButton* whole() { return child<QPushButton>("bindWholeScreen"); }
};

TEST_F(BindWindowTest, TheWholeScreenIsEnteredAndLeftByTheButtonAndByEscape) {
    ASSERT_FALSE(window.isFullScreen());
    const QString name = whole()->text();
    QTest::mouseClick(whole(), Qt::LeftButton);
    EXPECT_TRUE(window.isFullScreen());
    EXPECT_TRUE(whole()->isChecked());
    EXPECT_NE(whole()->text(), name) << "the button says what it does now";
    key(Qt::Key_Escape);
    EXPECT_FALSE(window.isFullScreen());
    EXPECT_FALSE(whole()->isChecked());
    EXPECT_EQ(whole()->text(), name);
    QTest::mouseClick(whole(), Qt::LeftButton);
    QTest::mouseClick(whole(), Qt::LeftButton);
    EXPECT_FALSE(window.isFullScreen());
    QTest::keyClick(&window, Qt::Key_W, Qt::AltModifier);
    EXPECT_TRUE(soon([&] { return window.isFullScreen(); }));
    // A step on is still a step on.
    key(Qt::Key_Space);
    EXPECT_EQ(stem(0).bench.steps, 1);
    // What puts the window back puts the button back.
    window.showNormal();
    EXPECT_FALSE(whole()->isChecked());
}

TEST_F(BindWindowTest, AnotherPlaceIsNotShownOnTheWholeScreen) {
    QTest::mouseClick(whole(), Qt::LeftButton);
    ASSERT_TRUE(window.isFullScreen());
    QTest::keyClick(&window, Qt::Key_2, Qt::ControlModifier);
    EXPECT_TRUE(soon([&] { return !window.isFullScreen(); }));
    EXPECT_FALSE(place->isVisible());
}

TEST_F(BindWindowTest, TheBoxesHaveKeysOfTheirOwn) {
    auto* held = child<QCheckBox>("bindAsHeld");
    auto* timed = child<QCheckBox>("bindTimed");
    QTest::keyClick(&window, Qt::Key_L, Qt::AltModifier);
    EXPECT_TRUE(soon([&] { return held->isChecked(); }));
    QTest::keyClick(&window, Qt::Key_I, Qt::AltModifier);
    EXPECT_TRUE(soon([&] { return timed->isChecked(); }));
    place->setFocus();
    // No menu takes them first.
    for (QAction* menu : window.menuBar()->actions())
        for (const QAbstractButton* button : std::initializer_list<QAbstractButton*>{held, timed, whole()})
            EXPECT_NE(QKeySequence::mnemonic(menu->text()), QKeySequence::mnemonic(button->text()))
                << button->text().toStdString();
}

TEST_F(BindWindowTest, WarnsOfCutWireWhereWireIsCutAndNotOfFloss) {
    Plan plan = session().plan();
    Wrap floss;
    floss.with = WrapWith::floss;
    Wrap wire;
    wire.with = WrapWith::wire;
    plan.binding.wraps = {wire, floss};
    session().open(plan, file);
    QStringList warned;
    for (int i = 0; i < 20 && !said("bindTitle").endsWith(QStringLiteral("is bound")); ++i) {
        if (!said("bindCaution").isEmpty())
            warned << said("bindTitle");
        key(Qt::Key_Space);
    }
    EXPECT_EQ(warned, QStringList({QStringLiteral("Cut to length"), QStringLiteral("Finish off")}));
}

TEST_F(BindWindowTest, AllOfItIsReadAtArmsLength) {
    for (int i = 0; i < 8; ++i)
        key(Qt::Key_Space);
    ASSERT_EQ(said("bindTitle"), QStringLiteral("Stem 1 is bound"));
    const double running = QApplication::font().pointSizeF();
    for (const QLabel* label : place->findChildren<QLabel*>()) {
        const bool read = label->isVisible() && !label->text().isEmpty();
        EXPECT_TRUE(!read || label->font().pointSizeF() > 1.1 * running) << label->text().toStdString();
    }
}

} // namespace
} // namespace stemwright

#include "tests/app/bind/bind_fixture.h"

#include "app/wording.h"
#include "core/document/bench.h"

#include <QCheckBox>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>

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
    // Only the work is seen; the keys of what is not are the window's still.
    EXPECT_FALSE(window.menuBar()->isVisible());
    EXPECT_FALSE(child<QWidget>("topBar")->isVisible());
    EXPECT_FALSE(child<QWidget>("statusLine")->isVisible());
    // A step on is still a step on, and can be undone.
    key(Qt::Key_Space);
    EXPECT_EQ(stem(0).bench.steps, 1);
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(stem(0).bench.steps, 0);
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
    EXPECT_TRUE(window.menuBar()->isVisible());
    EXPECT_TRUE(child<QWidget>("topBar")->isVisible());
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

TEST_F(BindWindowTest, ATierWithoutLeavesStopsHerAndIsNeverBound) {
    Plan plan = session().plan();
    for (const std::size_t empty : {0u, 2u})
        for (Slot& slot : plan.stems[0].tiers[empty].slots)
            slot.leaf.mix = {};
    session().open(plan, file);
    EXPECT_TRUE(said("bindCaution").contains(QStringLiteral("Tier 1 has no leaf yet")));
    EXPECT_TRUE(said("bindCaution").contains(QStringLiteral("Tier 3 has no leaf yet")));
    key(Qt::Key_Space);
    key(Qt::Key_Space);
    ASSERT_EQ(said("bindTitle"), QStringLiteral("Tier 1: side to side"));
    EXPECT_TRUE(said("bindCaution").contains(QStringLiteral("nothing to bind here")));
    EXPECT_TRUE(said("bindWrap").isEmpty()) << said("bindWrap").toStdString();
    EXPECT_FALSE(child<QPushButton>("bindDone")->isEnabled());
    key(Qt::Key_Space);
    key(Qt::Key_PageDown);
    EXPECT_EQ(boundTiers(), 0u);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Tier 1: side to side"));
    // Once it has its leaves she goes on.
    ASSERT_TRUE(session().make(FillSlot{{StemId{1}, 0, 0}, {KindId{1}, MixId{1}}}));
    key(Qt::Key_Space);
    EXPECT_EQ(boundTiers(), 1u);
    key(Qt::Key_Backspace);
    EXPECT_EQ(boundTiers(), 0u);
}

TEST_F(BindWindowTest, AStemThatIsMeasuredSaysWhatItTookAndNothingElse) {
    for (int i = 0; i < 8; ++i)
        key(Qt::Key_Space);
    const Length planned = session().figures().stems[0].wraps[0].used;
    auto* field = child<QLineEdit>("measured0");
    field->setFocus();
    QTest::keyClicks(field, QString::number(1.2 * inMillimetres(planned), 'f', 1));
    auto* side = child<QScrollArea>("bindSide");
    const auto* take = child<QPushButton>("takeMeasure");
    EXPECT_TRUE(
        side->viewport()->rect().contains(QRect(take->mapTo(side->viewport(), QPoint(0, 0)), take->size())))
        << "what is to be pressed is seen without scrolling";
    QTest::keyClick(field, Qt::Key_Return);
    ASSERT_TRUE(soon([&] { return session().plan().binding.wraps[0].overlapMeasured; }));
    const QString took = cutText(tookOf(stem(0), 0), session().plan().units);
    EXPECT_TRUE(said("bindUsed").endsWith(QStringLiteral("really used %1").arg(took)))
        << said("bindUsed").toStdString();
    EXPECT_FALSE(child<QWidget>("bindUsedBar")->isVisible());
    for (const QLabel* label : place->findChildren<QLabel*>())
        EXPECT_FALSE(label->isVisible() && label->text().contains(QStringLiteral(" cut")) &&
                     !label->text().startsWith(QStringLiteral("How much")) &&
                     !label->text().contains(QStringLiteral("Stem 2: cut")))
            << label->text().toStdString();
    // Nor does the step that is past.
    for (int i = 0; i < 8; ++i)
        key(Qt::Key_Backspace);
    ASSERT_EQ(said("bindTitle"), QStringLiteral("Cut to length"));
    EXPECT_TRUE(said("bindDoing").contains(QStringLiteral("really used %1").arg(took)))
        << said("bindDoing").toStdString();
}

TEST_F(BindWindowTest, EscapeInAFieldGivesTheKeysBackToThePlace) {
    for (int i = 0; i < 8; ++i)
        key(Qt::Key_Space);
    auto* field = child<QLineEdit>("measured0");
    field->setFocus();
    QTest::keyClicks(field, QStringLiteral("1 "));
    QTest::keyClick(field, Qt::Key_Escape);
    EXPECT_TRUE(place->hasFocus());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    EXPECT_EQ(place->stem(), StemId{2});
}

TEST_F(BindWindowTest, WithoutStemsThereIsASentenceAndNothingToPress) {
    session().open(Plan{}, {});
    EXPECT_EQ(said("bindTitle"), QStringLiteral("No stems yet"));
    EXPECT_TRUE(said("bindDoing").contains(QStringLiteral("Ctrl+N")));
    for (const char* name : {"bindDone", "bindBack", "bindStems", "bindAsHeld", "bindTimed", "bindProgress"})
        EXPECT_FALSE(child<QWidget>(name)->isVisible()) << name;
    session().open(wrapped(), {});
    for (const char* name : {"bindDone", "bindBack", "bindStems", "bindAsHeld", "bindTimed", "bindProgress"})
        EXPECT_TRUE(child<QWidget>(name)->isVisible()) << name;
}

TEST_F(BindWindowTest, WhoClosesTheWholeScreenBeginsAgainWithAWindow) {
    QTest::mouseClick(whole(), Qt::LeftButton);
    ASSERT_TRUE(window.isFullScreen());
    EXPECT_TRUE(window.close());
    MainWindow again(wrapped());
    again.restoreWhereItWas();
    again.show();
    EXPECT_FALSE(again.isFullScreen());
    EXPECT_TRUE(again.menuBar()->isVisible());
}

} // namespace
} // namespace stemwright

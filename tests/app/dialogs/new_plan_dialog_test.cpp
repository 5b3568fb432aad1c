#include "app/dialogs/new_plan_dialog.h"

#include "core/plan/plan.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QtTest>

namespace stemwright {
namespace {

class NewPlanDialogTest : public testing::Test {
protected:
    void SetUp() override {
        dialog.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&dialog));
        dialog.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
    }
    QWidget* focused() { return QApplication::focusWidget(); }
    /// Goes on with Tab until the field has the focus, as a person without a mouse does.
    void tabTo(const char* name) {
        for (int i = 0; i < 80; ++i) {
            if (focused() && focused()->objectName() == QLatin1String(name))
                return;
            QTest::keyClick(focused(), Qt::Key_Tab);
        }
        FAIL() << name << " is not reached by Tab";
    }
    template <class Widget> Widget* child(const char* name) {
        auto* widget = dialog.findChild<Widget*>(QLatin1String(name));
        EXPECT_TRUE(widget) << name;
        return widget;
    }

    NewPlanDialog dialog{Units{}};
};

TEST_F(NewPlanDialogTest, BeginsAPlanByKeysOnly) {
    ASSERT_EQ(focused()->objectName(), QStringLiteral("newTitle"));
    QTest::keyClicks(focused(), QStringLiteral("Windowsill herb"));
    tabTo("newStems");
    QTest::keyClick(focused(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(focused(), QStringLiteral("5"));
    tabTo("newTiers");
    QTest::keyClick(focused(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(focused(), QStringLiteral("6"));
    tabTo("newKind2");
    QTest::keyClick(focused(), Qt::Key_Down);
    tabTo("palette1");
    QTest::keyClick(focused(), Qt::Key_Space);
    tabTo("newToMake");
    QTest::keyClick(focused(), Qt::Key_Right);
    QTest::keyClick(focused(), Qt::Key_Return);
    ASSERT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();

    const Plan plan = dialog.plan();
    EXPECT_FALSE(firstProblem(plan));
    EXPECT_EQ(plan.about.title, "Windowsill herb");
    EXPECT_EQ(plan.stems.size(), 5u);
    EXPECT_EQ(plan.kinds.size(), 3u);
    EXPECT_EQ(plan.colours.size(), 5u);
    EXPECT_EQ(plan.colours.back().name, "Rose");
    EXPECT_EQ(plan.mixes.size(), 9u);
    int empty = 0, made = 0, toMake = 0;
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            empty += static_cast<int>(tier.slots.size());
    for (const Kind& kind : plan.kinds)
        for (const StockLine& line : kind.stock) {
            made += line.made;
            toMake += line.toMake;
        }
    EXPECT_EQ(made, empty) << "as many as the stems need";
    EXPECT_EQ(toMake, 0) << "the arrow in the choice chose 'made already'";
}

TEST_F(NewPlanDialogTest, EnterAloneIsEnough) {
    QTest::keyClick(focused(), Qt::Key_Return);
    ASSERT_EQ(dialog.result(), QDialog::Accepted);
    EXPECT_FALSE(firstProblem(dialog.plan()));
    EXPECT_GE(dialog.plan().mixes.size(), 3u);
}

TEST_F(NewPlanDialogTest, EscBeginsNothing) {
    QTest::keyClick(focused(), Qt::Key_Escape);
    EXPECT_EQ(dialog.result(), QDialog::Rejected);
    EXPECT_FALSE(dialog.isVisible());
}

TEST_F(NewPlanDialogTest, AbsurdNumbersCannotBeEntered) {
    auto* stems = child<QSpinBox>("newStems");
    stems->setFocus();
    stems->selectAll();
    QTest::keyClicks(stems, QStringLiteral("1000000000"));
    EXPECT_LE(stems->value(), new_plan_limits::stems);
    QTest::keyClick(stems, Qt::Key_Return);
    EXPECT_LE(dialog.plan().stems.size(), static_cast<std::size_t>(new_plan_limits::stems));
}

TEST_F(NewPlanDialogTest, TooFewColoursAreRefusedWithASentence) {
    auto* chosen = child<QListWidget>("chosenColours");
    while (chosen->count() > 1)
        QTest::mouseClick(child<QPushButton>("chosenRemove"), Qt::LeftButton);
    QTest::mouseClick(child<QPushButton>("newPlanDialogOk"), Qt::LeftButton);
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_TRUE(dialog.notice().startsWith(QStringLiteral("Colours: choose two at least")))
        << dialog.notice().toStdString();
    QTest::mouseClick(child<QPushButton>("palette4"), Qt::LeftButton);
    QTest::mouseClick(child<QPushButton>("newPlanDialogOk"), Qt::LeftButton);
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
}

TEST_F(NewPlanDialogTest, EightColoursAreTheMost) {
    for (int i = 0; i < 16; ++i) {
        auto* button = dialog.findChild<QPushButton*>(QStringLiteral("palette%1").arg(i));
        if (!button->isChecked())
            QTest::mouseClick(button, Qt::LeftButton);
    }
    EXPECT_EQ(child<QListWidget>("chosenColours")->count(), 8);
    EXPECT_FALSE(child<QPushButton>("palette15")->isEnabled());
}

TEST_F(NewPlanDialogTest, ColoursStandInTheOrderThatWasChosen) {
    auto* chosen = child<QListWidget>("chosenColours");
    chosen->setCurrentRow(0);
    QTest::mouseClick(child<QPushButton>("chosenDown"), Qt::LeftButton);
    EXPECT_EQ(chosen->item(1)->text(), QStringLiteral("Plum"));
    EXPECT_EQ(chosen->currentRow(), 1);
    QTest::mouseClick(child<QPushButton>("newPlanDialogOk"), Qt::LeftButton);
    EXPECT_EQ(dialog.plan().colours[1].name, "Plum");
    EXPECT_EQ(dialog.plan().mixes[1].name, "Frost on Plum");
}

TEST_F(NewPlanDialogTest, LeavesCanBeCounted) {
    auto* leaves = child<QSpinBox>("newKindLeaves0");
    EXPECT_EQ(leaves->text(), QStringLiteral("as many as the stems need"));
    leaves->setFocus();
    leaves->selectAll();
    QTest::keyClicks(leaves, QStringLiteral("33"));
    QTest::keyClick(leaves, Qt::Key_Return);
    ASSERT_EQ(dialog.result(), QDialog::Accepted);
    int all = 0;
    for (const StockLine& line : dialog.plan().kinds[0].stock)
        all += line.total();
    EXPECT_EQ(all, 33);
}

} // namespace
} // namespace stemwright

#include "app/dialogs/calibrate_dialog.h"

#include "app/wording.h"
#include "core/figures/figures.h"
#include "tests/app/dialogs/dialog_test.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QtTest>

namespace stemwright {
namespace {

using test::smallBoard;

class CalibrateDialogTest : public test::DialogTest<CalibrateDialog> {
protected:
    CalibrateDialogTest() {
        if (plan.binding.wraps.empty())
            plan.binding.wraps.push_back(Wrap{});
    }
    void open() { openWith(plan); }
    QTableWidget* table() { return dialog->findChild<QTableWidget*>(QStringLiteral("calibrateTable")); }
    QString outcome() { return dialog->findChild<QLabel*>(QStringLiteral("calibrateOutcome"))->text(); }
    void type(int row, const QString& words) {
        const QRect at = table()->visualItemRect(table()->item(row, 2));
        QTest::mouseClick(table()->viewport(), Qt::LeftButton, {}, at.center());
        QTest::keyClick(table(), Qt::Key_F2);
        // A closed editor lives on, hidden, until the next turn of the event loop.
        QLineEdit* editor = nullptr;
        for (QLineEdit* each : table()->viewport()->findChildren<QLineEdit*>())
            if (each->isVisible())
                editor = each;
        ASSERT_TRUE(editor);
        QTest::keyClick(editor, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(editor, words);
        QTest::keyClick(editor, Qt::Key_Return);
        QCoreApplication::processEvents(); // a table takes what was typed in the next turn of the event loop
    }
    void ok() {
        QTest::mouseClick(dialog->findChild<QPushButton*>(QStringLiteral("calibrateDialogOk")), Qt::LeftButton);
    }
    static Plan with(Plan plan, double overlap) {
        plan.binding.wraps[0].overlap = overlap;
        return plan;
    }
    QString millimetresOf(Length length) { return QString::number(inMillimetres(length), 'f', 3); }

    Plan plan = smallBoard();
};

TEST_F(CalibrateDialogTest, FindsTheOverlapThatAStemWasBoundWith) {
    const Length took = figures(with(plan, 0.45)).stems[0].wraps[0].used;
    open();
    type(0, millimetresOf(took));
    EXPECT_TRUE(outcome().contains(QStringLiteral("45.0 %"))) << outcome().toStdString();
    // Every other stem's length follows, and is shown before it is taken.
    const auto then = figures(with(plan, 0.45));
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        EXPECT_EQ(table()->item(static_cast<int>(i), 3)->text(),
                  cutText(then.stems[i].wraps[0].used, plan.units));
    ok();
    ASSERT_EQ(dialog->result(), QDialog::Accepted);
    const auto edit = dialog->edit();
    ASSERT_TRUE(edit);
    const Plan before = plan;
    auto undo = apply(plan, *edit);
    ASSERT_TRUE(undo);
    EXPECT_NEAR(plan.binding.wraps[0].overlap, 0.45, 1e-4);
    EXPECT_TRUE(plan.binding.wraps[0].overlapMeasured) << "the sheets say so";
    ASSERT_EQ(plan.stems[0].took.size(), 1u) << "and what it rests on is kept";
    EXPECT_NEAR(inMillimetres(plan.stems[0].took[0].used), inMillimetres(took), 0.001);
    EXPECT_FALSE(firstProblem(plan));
    open();
    EXPECT_EQ(table()->item(0, 2)->text(), entryText(plan.stems[0].took[0].used, LengthUnit::millimetre));
    ASSERT_TRUE(apply(plan, undo.value()));
    EXPECT_EQ(plan, before);
}

TEST_F(CalibrateDialogTest, SeveralStemsAreFittedTogetherAndAnOddOneIsNamed) {
    const auto truth = figures(with(plan, 0.4));
    ASSERT_GE(plan.stems.size(), 2u);
    open();
    type(0, millimetresOf(truth.stems[0].wraps[0].used));
    type(1, millimetresOf(truth.stems[1].wraps[0].used));
    EXPECT_TRUE(outcome().contains(QStringLiteral("40.0 %"))) << outcome().toStdString();
    EXPECT_FALSE(outcome().contains(QStringLiteral("look at its measure"))) << outcome().toStdString();
    type(1, millimetresOf(1.4 * truth.stems[1].wraps[0].used));
    EXPECT_TRUE(outcome().contains(QStringLiteral("look at its measure again"))) << outcome().toStdString();
    EXPECT_TRUE(outcome().contains(nameText(plan, plan.stems[1].id))) << outcome().toStdString();
}

TEST_F(CalibrateDialogTest, WhatCannotBeIsSaidAndNotTaken) {
    open();
    ok();
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(dialog->notice(), QStringLiteral("Write down what one stem really took first."));
    type(0, QStringLiteral("5"));
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("edge to edge"))) << dialog->notice().toStdString();
    ok();
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_FALSE(dialog->edit());
    type(0, QStringLiteral("900 m"));
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("is more than"))) << dialog->notice().toStdString();
    type(0, QStringLiteral("long"));
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("no length"))) << dialog->notice().toStdString();
    EXPECT_TRUE(dialog->notice().startsWith(nameText(plan, plan.stems[0].id)));
    QTest::mouseClick(dialog->findChild<QPushButton*>(QStringLiteral("calibrateDialogCancel")), Qt::LeftButton);
    EXPECT_EQ(dialog->result(), QDialog::Rejected);
}

TEST_F(CalibrateDialogTest, AMeasureMayBePutInFromTheBench) {
    const Length took = figures(with(plan, 0.5)).stems[1].wraps[0].used;
    open();
    dialog->setMeasured(0, plan.stems[1].id, took);
    ASSERT_TRUE(dialog->edit());
    EXPECT_TRUE(outcome().contains(QStringLiteral("50.0 %"))) << outcome().toStdString();
}

TEST_F(CalibrateDialogTest, APlanWithoutABindingSaysSo) {
    plan.binding.wraps.clear();
    open();
    EXPECT_TRUE(outcome().contains(QStringLiteral("no binding"))) << outcome().toStdString();
    ok();
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_FALSE(dialog->edit());
}

} // namespace
} // namespace stemwright

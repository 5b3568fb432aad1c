#include "app/materials/materials_dialog.h"

#include "app/materials/handbook.h"
#include "core/figures/figures.h"
#include "core/figures/leaf_mass.h"
#include "core/plan/lookup.h"
#include "tests/app/dialogs/dialog_test.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QPushButton>
#include <QTabWidget>
#include <QTableWidget>
#include <QtTest>

namespace stemwright {
namespace {

using test::smallBoard;

class MaterialsDialogTest : public test::DialogTest<MaterialsDialog> {
protected:
    void open() { openWith(plan); }
    void tab(int at) {
        auto* bar = child<QTabWidget>("materialsTabs")->tabBar();
        bar->setFocus();
        while (bar->currentIndex() < at)
            QTest::keyClick(bar, Qt::Key_Right);
        while (bar->currentIndex() > at)
            QTest::keyClick(bar, Qt::Key_Left);
    }
    void type(const char* name, int row, int column, const QString& words) {
        auto* table = child<QTableWidget>(name);
        table->setCurrentCell(row, column);
        table->setFocus();
        QTest::keyClick(table, Qt::Key_F2);
        QLineEdit* editor = nullptr;
        for (QLineEdit* each : table->viewport()->findChildren<QLineEdit*>())
            if (each->isVisible())
                editor = each;
        ASSERT_TRUE(editor) << name << " " << row << " " << column;
        QTest::keyClick(editor, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(editor, words);
        QTest::keyClick(editor, Qt::Key_Return);
        QCoreApplication::processEvents(); // a table takes what was typed in the next turn of the event loop
    }
    int rows(const char* name) { return child<QTableWidget>(name)->rowCount(); }

    Plan plan = smallBoard();
};

TEST_F(MaterialsDialogTest, TheHandbookIsShownWithItsSourcesAndCannotBeChanged) {
    open();
    auto* metals = child<QTableWidget>("metalsTable");
    ASSERT_EQ(metals->rowCount(), 7);
    EXPECT_EQ(metals->item(0, 1)->text(), QStringLiteral("8940"));
    for (const auto& lines : {handbook::metals(), handbook::beads(), handbook::flosses(), handbook::tapes(),
                              handbook::clays(), handbook::covers()})
        for (const HandbookLine& line : lines)
            EXPECT_FALSE(line.source.isEmpty()) << line.name.toStdString();
    metals->setCurrentCell(0, 1);
    metals->setFocus();
    QTest::keyClick(metals, Qt::Key_F2);
    EXPECT_TRUE(metals->viewport()->findChildren<QLineEdit*>().isEmpty());
    EXPECT_FALSE(child<QPushButton>("metalsRemove")->isEnabled());
    press("materialsDialogOk");
    EXPECT_EQ(dialog->result(), QDialog::Accepted);
    EXPECT_FALSE(dialog->edit());
}

TEST_F(MaterialsDialogTest, HerOwnBeadsStandInPlaceOfTheHandbooksAndTheFiguresFollow) {
    open();
    tab(1);
    const int mine = rows("beadsTable");
    press("beadsAdd");
    ASSERT_EQ(rows("beadsTable"), mine + 1);
    type("beadsTable", mine, 0, QStringLiteral("11/0"));
    type("beadsTable", mine, 2, QStringLiteral("1.55"));
    type("beadsTable", mine, 3, QStringLiteral("2"));
    EXPECT_EQ(child<QTableWidget>("beadsTable")->item(mine, 4)->text(), QStringLiteral("✎ yours"));
    press("materialsDialogOk");
    ASSERT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
    const auto edit = dialog->edit();
    ASSERT_TRUE(edit);
    const Plan before = plan;
    auto undo = apply(plan, *edit);
    ASSERT_TRUE(undo);
    EXPECT_FALSE(firstProblem(plan));
    EXPECT_EQ(inMillimetres(beadSizeNamed(plan, "11/0")->pitch), 1.55);
    EXPECT_GT(leafMass(plan, plan.kinds[0]), leafMass(before, before.kinds[0]));
    ASSERT_TRUE(apply(plan, undo.value()));
    EXPECT_EQ(plan, before);
}

TEST_F(MaterialsDialogTest, EverySortIsKeptToTheLastBit) {
    plan.own.metals = {{"brass rod", 8400, 101'000, 200.25, "{\"a\":1}"}};
    plan.own.beads = {{"seed", millimetres(2.1), millimetres(1.0 / 3), grams(0.0123456789), "{\"b\":1}"}};
    plan.own.flosses = {{"silk", 8, millimetres(0.17), millimetres(7000.0 / 3), 0.0212345678, ""}};
    plan.own.tapes = {{"paper", millimetres(11), millimetres(0.11), 1.7, std::nullopt, 0, ""}};
    plan.own.clays = {{"lime", 1501.5, ""}};
    plan.own.covers = {{"moss", 90, ""}};
    ASSERT_FALSE(firstProblem(plan));
    for (const LengthUnit unit : {LengthUnit::millimetre, LengthUnit::inch}) {
        plan.units.length = unit;
        open();
        press("materialsDialogOk");
        EXPECT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
        EXPECT_FALSE(dialog->edit());
    }
    open();
    tab(2);
    type("flossesTable", 1, 1, QStringLiteral("12"));
    press("materialsDialogOk");
    Plan after = plan;
    ASSERT_TRUE(dialog->edit());
    ASSERT_TRUE(apply(after, *dialog->edit()));
    Plan expected = plan;
    expected.own.flosses[0].strands = 12;
    EXPECT_EQ(after, expected) << "one value, and nothing else";
}

TEST_F(MaterialsDialogTest, BadValuesAreNamedWithTheirPlace) {
    open();
    press("metalsAdd");
    type("metalsTable", 7, 1, QStringLiteral("0"));
    tab(3);
    press("materialsDialogOk");
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_TRUE(dialog->notice().startsWith(QStringLiteral("my wire, Density, kg/m³: 0 is too small")))
        << dialog->notice().toStdString();
    EXPECT_EQ(child<QTabWidget>("materialsTabs")->currentIndex(), 0) << "and the place is shown";
    type("metalsTable", 7, 1, QStringLiteral("8000"));
    press("metalsAdd");
    EXPECT_EQ(child<QTableWidget>("metalsTable")->item(8, 0)->text(), QStringLiteral("my wire 2"));
    type("metalsTable", 8, 0, QStringLiteral("my wire"));
    press("materialsDialogOk");
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("has this name"))) << dialog->notice().toStdString();
    press("metalsRemove");
    EXPECT_EQ(rows("metalsTable"), 8);
    press("materialsDialogOk");
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(MaterialsDialogTest, WhatIsInUseStays) {
    plan.own.metals = {{"old brooch", 8400, 101'000, 200, ""}};
    plan.kinds[0].ownMetal = "old brooch";
    open();
    child<QTableWidget>("metalsTable")->setCurrentCell(7, 0);
    press("metalsRemove");
    press("materialsDialogOk");
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("old brooch cannot go while Small uses it")))
        << dialog->notice().toStdString();
}

} // namespace
} // namespace stemwright

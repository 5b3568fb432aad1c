#include "app/leaves/pattern_dialog.h"

#include "app/leaves/leaf_drawing.h"
#include "app/leaves/row_lines.h"
#include "app/messages.h"
#include "core/figures/leaf_mass.h"
#include "tests/app/dialogs/dialog_test.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QPushButton>
#include <QTableWidget>
#include <QtTest>

namespace stemwright {
namespace {

using test::smallBoard;

class PatternDialogTest : public test::DialogTest<PatternDialog> {
protected:
    PatternDialogTest() { plan.kinds[0].make.reset(); }

    void open() { openWith(plan, plan.kinds[0].id, plan.mixes[0].id); }
    /// Goes down a choice by keys until the words are there.
    void choose(const char* name, const QString& words) {
        auto* box = child<QComboBox>(name);
        box->setFocus();
        for (int i = 0; i < box->count() && box->currentText() != words; ++i)
            QTest::keyClick(box, Qt::Key_Up);
        for (int i = 0; i < box->count() && box->currentText() != words; ++i)
            QTest::keyClick(box, Qt::Key_Down);
        EXPECT_EQ(box->currentText(), words);
    }
    void type(const char* name, const QString& words) {
        auto* field = child<QLineEdit>(name);
        field->setFocus();
        QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(field, words);
    }
    QString cell(const char* table, int row, int column) {
        return child<QTableWidget>(table)->item(row, column)->text();
    }
    void ok() { QTest::mouseClick(child<QPushButton>("patternDialogOk"), Qt::LeftButton); }

    Plan plan = smallBoard();
};

TEST_F(PatternDialogTest, AMeasuredKindStaysAsItIs) {
    open();
    EXPECT_EQ(child<QComboBox>("patternOrigin")->currentText(), QStringLiteral("measured by you"));
    EXPECT_FALSE(child<QLineEdit>("patternBeads")->isVisible());
    ok();
    EXPECT_EQ(dialog->result(), QDialog::Accepted);
    EXPECT_FALSE(dialog->edit());
}

TEST_F(PatternDialogTest, MakesRowsAroundABasicByKeysAlone) {
    open();
    choose("patternOrigin", QStringLiteral("made: rows around a basic"));
    type("patternBeads", QStringLiteral("6"));
    type("patternRows", QStringLiteral("7"));
    // By hand, in beads: round ends gain 1.6 π a pair of rows; 6, then 11, 16 and 21 twice each.
    const int expected[] = {21, 21, 16, 16, 11, 11, 6};
    for (int row = 0; row < 7; ++row)
        EXPECT_EQ(cell("patternCounts", row, 0), QString::number(expected[row]));
    EXPECT_EQ(cell("patternCounts", 7, 0), QStringLiteral("102"));
    // The colours of every row add up to the row.
    auto* counts = child<QTableWidget>("patternCounts");
    for (int row = 0; row < counts->rowCount(); ++row) {
        int sum = 0;
        for (int column = 1; column < counts->columnCount(); ++column)
            sum += counts->item(row, column)->text().toInt();
        EXPECT_EQ(sum, counts->item(row, 0)->text().toInt()) << row;
    }
    EXPECT_EQ(cell("patternFigures", 0, 0), QString::number(plan.kinds[0].beads));
    EXPECT_EQ(cell("patternFigures", 0, 1), QStringLiteral("102"));
    QTest::keyClick(child<QLineEdit>("patternRows"), Qt::Key_Return);
    ASSERT_EQ(dialog->result(), QDialog::Accepted);
    const auto edit = dialog->edit();
    ASSERT_TRUE(edit);
    const Plan before = plan;
    auto undo = apply(plan, *edit);
    ASSERT_TRUE(undo);
    const KindForm& form = plan.kinds[0];
    EXPECT_EQ(form.beads, 102);
    EXPECT_EQ(form.wiresAtBase, 3);
    ASSERT_TRUE(form.make);
    EXPECT_EQ(form.make->beads, 6);
    EXPECT_EQ(form.make->rows, 7);
    const MadeLeaf leaf = madeLeaf(*form.make, form.tipEnd, form.baseEnd, *beadSizeNamed(form.beadSize));
    EXPECT_NEAR(inMillimetres(form.length), inMillimetres(leaf.length), 0.05);
    EXPECT_FALSE(firstProblem(plan));
    ASSERT_TRUE(apply(plan, undo.value()));
    EXPECT_EQ(plan, before);
}

TEST_F(PatternDialogTest, EvenRowsAreRefusedWithWhatWouldDo) {
    open();
    choose("patternOrigin", QStringLiteral("made: rows around a basic"));
    type("patternRows", QStringLiteral("4"));
    const QString sentence =
        QStringLiteral("Rows, the basic among them: %1").arg(faultText(MakeFault::evenRows, 4));
    EXPECT_EQ(dialog->notice(), sentence) << "said while it is typed";
    EXPECT_EQ(cell("patternFigures", 0, 1), QStringLiteral("–"));
    ok();
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(dialog->notice(), sentence);
    EXPECT_FALSE(dialog->edit());
    type("patternRows", QStringLiteral("5"));
    EXPECT_TRUE(dialog->notice().isEmpty());
    type("patternBeads", QStringLiteral("0"));
    EXPECT_TRUE(dialog->notice().startsWith(QStringLiteral("Beads on the basic: 0 is too small")))
        << dialog->notice().toStdString();
    type("patternBeads", QStringLiteral("90000"));
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("are the most"))) << dialog->notice().toStdString();
}

TEST_F(PatternDialogTest, LoopsRoundALoopAndOneLoop) {
    open();
    choose("patternOrigin", QStringLiteral("made: loops round a loop"));
    type("patternBeads", QStringLiteral("10"));
    type("patternRows", QStringLiteral("3"));
    // A loop gains 10 beads, as its pitch was fitted to.
    EXPECT_EQ(cell("patternCounts", 0, 0), QStringLiteral("30"));
    EXPECT_EQ(cell("patternCounts", 2, 0), QStringLiteral("10"));
    EXPECT_TRUE(child<LeafDrawing>("leafDrawing")->look().loops);
    EXPECT_FALSE(child<QComboBox>("patternTip")->isVisible());
    choose("patternOrigin", QStringLiteral("made: one loop of beads"));
    EXPECT_FALSE(child<QLineEdit>("patternRows")->isVisible());
    type("patternBeads", QStringLiteral("16"));
    EXPECT_EQ(cell("patternFigures", 0, 1), QStringLiteral("16"));
    ok();
    ASSERT_EQ(dialog->result(), QDialog::Accepted);
    EXPECT_EQ(dialog->form().make->rows, 1);
    EXPECT_EQ(dialog->form().wiresAtBase, 2);
}

TEST_F(PatternDialogTest, ThePointsAngleIsAskedForWhereThereIsAPoint) {
    open();
    choose("patternOrigin", QStringLiteral("made: rows around a basic"));
    EXPECT_FALSE(child<QLineEdit>("patternPoint")->isVisible());
    choose("patternTip", QStringLiteral("pointed"));
    EXPECT_TRUE(child<QLineEdit>("patternPoint")->isVisible());
    type("patternPoint", QStringLiteral("40"));
    const QString narrow = cell("patternFigures", 1, 1);
    EXPECT_NEAR(inDegrees(dialog->form().make->point), 20, 1e-9);
    type("patternPoint", QStringLiteral("100"));
    EXPECT_NE(cell("patternFigures", 1, 1), narrow);
    type("patternPoint", QStringLiteral("2"));
    EXPECT_FALSE(dialog->notice().isEmpty());
}

TEST_F(PatternDialogTest, WhatIsHersStaysWhereThePatternChanges) {
    plan.kinds[0].make = LeafMake{Making::rows, 5, 5, degrees(30), ""};
    plan.kinds[0].make->counted = {{0, 6, ""}, {2, 12, ""}, {4, 17, ""}};
    plan.kinds[0].beadSize = "11/0";
    plan.kinds[0].wire = millimetres(333);
    plan.kinds[0].own.wire = true;
    static_cast<KindForm&>(plan.kinds[0]) = followPattern(plan, plan.kinds[0]);
    open();
    EXPECT_EQ(cell("patternCounts", 0, 0), QStringLiteral("17 ✎ yours"));
    ok();
    EXPECT_FALSE(dialog->edit()) << "a look at the pattern changes nothing";
    open();
    type("patternRows", QStringLiteral("3"));
    EXPECT_EQ(cell("patternFigures", 3, 1), QStringLiteral("33 cm ✎ yours"));
    ok();
    ASSERT_TRUE(dialog->edit());
    EXPECT_EQ(dialog->form().wire, millimetres(333));
    const std::vector<CountedRow> kept{{0, 6, ""}, {2, 12, ""}};
    EXPECT_EQ(dialog->form().make->counted, kept) << "the rows that are still there";
    Plan after = plan;
    ASSERT_TRUE(apply(after, *dialog->edit()));
    EXPECT_FALSE(firstProblem(after));
}

TEST_F(PatternDialogTest, WiresThatSheCutsAwayAreHers) {
    open();
    choose("patternOrigin", QStringLiteral("made: rows around a basic"));
    EXPECT_FALSE(dialog->form().own.wiresAtBase);
    type("patternWires", QStringLiteral("2"));
    EXPECT_EQ(dialog->form().wiresAtBase, 2);
    EXPECT_TRUE(dialog->form().own.wiresAtBase);
}

TEST_F(PatternDialogTest, HerOwnBeadsCanBeMadeOf) {
    plan.own.beads = {{"grandmother's", millimetres(2), millimetres(1.2), grams(0.01), ""},
                      {"bugle", millimetres(2), millimetres(6), grams(0.05), ""}};
    plan.kinds[0].beadSize = "grandmother's";
    open();
    choose("patternOrigin", QStringLiteral("made: rows around a basic"));
    EXPECT_TRUE(dialog->notice().isEmpty()) << dialog->notice().toStdString();
    choose("patternSize", QStringLiteral("bugle, 6 mm along the wire"));
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("does not apply"))) << dialog->notice().toStdString();
}

TEST_F(PatternDialogTest, ABeadSizeThatNobodyKnowsIsSaid) {
    plan.kinds[0].beadSize = "grandmother's";
    open();
    choose("patternOrigin", QStringLiteral("made: rows around a basic"));
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("grandmother's"))) << dialog->notice().toStdString();
    ok();
    EXPECT_TRUE(dialog->isVisible());
    choose("patternOrigin", QStringLiteral("measured by you"));
    ok();
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(PatternDialogTest, ARowThatIsChosenIsMarkedInTheDrawing) {
    open();
    auto* drawing = child<LeafDrawing>("leafDrawing");
    const QImage before = drawing->grab().toImage();
    auto* counts = child<QTableWidget>("patternCounts");
    const QRect at = counts->visualItemRect(counts->item(0, 0));
    QTest::mouseClick(counts->viewport(), Qt::LeftButton, {}, at.center());
    EXPECT_NE(drawing->grab().toImage(), before);
}

TEST(RowLines, LieInTheDrawingWhereTheyAre) {
    KindForm form;
    form.make = LeafMake{Making::rows, 5, 5, degrees(30), ""};
    std::vector<RowLine> lines = rowLines(form, nullptr);
    ASSERT_EQ(lines.size(), 5u);
    EXPECT_EQ(lines[0].name, QStringLiteral("row 5"));
    EXPECT_EQ(lines[0].ring, 0);
    EXPECT_EQ(lines[1].ring, 0);
    EXPECT_NE(lines[0].side, lines[1].side);
    EXPECT_EQ(lines[4].name, QStringLiteral("basic"));
    EXPECT_EQ(lines[4].ring, 2);
    form.make->making = Making::loops;
    lines = rowLines(form, nullptr);
    EXPECT_EQ(lines[0].name, QStringLiteral("loop 5"));
    EXPECT_EQ(lines[4].ring, 4);
    form.make.reset();
    form.beads = 4000; // more than are drawn
    int sum = 0;
    for (const RowLine& line : rowLines(form, nullptr))
        sum += line.beads;
    EXPECT_EQ(sum, 4000);
}

TEST_F(PatternDialogTest, ALeafOfFewBeadsIsDrawnWhole) {
    open();
    choose("patternOrigin", QStringLiteral("made: one loop of beads"));
    auto* drawing = child<LeafDrawing>("leafDrawing");
    ASSERT_TRUE(drawing);
    for (const char* beads : {"3", "4", "5", "7", "12", "40"}) {
        type("patternBeads", QLatin1String(beads));
        const QImage picture = drawing->grab().toImage();
        const QRgb ground = picture.pixel(0, 0);
        for (int x = 0; x < picture.width(); ++x)
            ASSERT_EQ(picture.pixel(x, 1), ground) << beads << " beads, at " << x;
        for (int y = 0; y < picture.height(); ++y) {
            ASSERT_EQ(picture.pixel(1, y), ground) << beads << " beads, at " << y;
            ASSERT_EQ(picture.pixel(picture.width() - 2, y), ground) << beads << " beads, at " << y;
        }
    }
}

} // namespace
} // namespace stemwright

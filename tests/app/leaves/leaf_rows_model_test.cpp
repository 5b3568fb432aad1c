#include "app/leaves/kinds_model.h"
#include "app/leaves/leaf_preview.h"
#include "core/figures/leaf_make.h"
#include "tests/app/leaves/leaves_fixture.h"

#include <QPushButton>

namespace stemwright {
namespace {

using test::LeavesPlaceTest;
using test::smallBoard;

/// The same place with a kind that is made: rows 5, 10, 10, 15, 15, as round ends give them.
class LeafRowsTest : public LeavesPlaceTest {
protected:
    LeafRowsTest() {
        KindForm form = plan().kinds[0];
        form.make = LeafMake{Making::rows, 5, 5, degrees(30), ""};
        form = followPattern(plan(), form);
        EXPECT_TRUE(session.make(ReformKind{plan().kinds[0].id, form}));
        EXPECT_EQ(plan().kinds[0].beads, 55);
    }
    QString cell(int row, int column) {
        return table("leafRowsTable")->model()->index(row, column).data().toString();
    }
};

TEST_F(LeafRowsTest, ShowsEveryRowAndItsColoursAddingUp) {
    const QAbstractItemModel* rows = table("leafRowsTable")->model();
    ASSERT_EQ(rows->rowCount(), 6);
    const char* names[] = {"row 5", "row 4", "row 3", "row 2", "basic", "all"};
    const int beads[] = {15, 15, 10, 10, 5, 55};
    for (int row = 0; row < 6; ++row) {
        EXPECT_EQ(rows->headerData(row, Qt::Vertical, Qt::DisplayRole).toString(), QLatin1String(names[row]));
        EXPECT_EQ(cell(row, 0), QString::number(beads[row]));
    }
    // In a mix of two colours, half and half: 28 and 27, from the outside inward.
    at("mixesTable", 1, 0);
    ASSERT_EQ(rows->columnCount(), 4);
    EXPECT_EQ(cell(0, 2), QStringLiteral("15"));
    EXPECT_EQ(cell(1, 2), QStringLiteral("13"));
    EXPECT_EQ(cell(1, 3), QStringLiteral("2"));
    EXPECT_EQ(cell(5, 2), QStringLiteral("28"));
    EXPECT_EQ(cell(5, 3), QStringLiteral("27"));
}

TEST_F(LeafRowsTest, WhatSheCountedIsMarkedAsHersAndCanBeGivenBack) {
    const Plan before = plan();
    const int stepsBefore = steps();
    QTableView* rows = at("leafRowsTable", 1, 0);
    type(rows, QStringLiteral("17"));
    ASSERT_EQ(plan().kinds[0].make->counted.size(), 1u);
    EXPECT_EQ(plan().kinds[0].make->counted[0].row, 3);
    EXPECT_EQ(plan().kinds[0].beads, 57) << "the leaf follows its rows";
    EXPECT_EQ(cell(1, 1), QStringLiteral("✎ yours"));
    EXPECT_EQ(cell(0, 1), QStringLiteral("reckoned"));
    EXPECT_EQ(steps(), stepsBefore + 1);
    at("leafRowsTable", 1, 0);
    QTest::keyClick(rows, Qt::Key_Delete);
    EXPECT_EQ(plan(), before) << "given back to the pattern";
    type(at("leafRowsTable", 1, 0), QStringLiteral("0"));
    EXPECT_TRUE(notice().startsWith(QStringLiteral("row 4, Beads: 0 is too small"))) << notice().toStdString();
    QTest::keyClick(editorOf(rows), Qt::Key_Escape);
    EXPECT_EQ(plan(), before);
}

TEST_F(LeafRowsTest, TheSumMayBeHersAndTheRowsFollow) {
    type(at("leafRowsTable", 5, 0), QStringLiteral("60"));
    EXPECT_EQ(plan().kinds[0].beads, 60);
    EXPECT_TRUE(plan().kinds[0].own.beads);
    EXPECT_EQ(cell(5, 1), QStringLiteral("✎ yours"));
    int sum = 0;
    for (int row = 0; row < 5; ++row)
        sum += cell(row, 0).toInt();
    EXPECT_EQ(sum, 60);
    // The sheet of kinds says the same.
    EXPECT_EQ(table("kindsTable")->model()->index(KindsModel::Field::beads, 0).data().toString(),
              QStringLiteral("60 ✎ yours"));
    auto* giveBack = place.findChild<QPushButton*>(QStringLiteral("leafGiveBack"));
    ASSERT_TRUE(giveBack->isEnabled());
    QTest::mouseClick(giveBack, Qt::LeftButton);
    EXPECT_EQ(plan().kinds[0].beads, 55);
    EXPECT_FALSE(giveBack->isEnabled());
}

TEST_F(LeafRowsTest, AMeasureOfAMadeKindIsHersUntilItIsEmptied) {
    const Plan before = plan();
    QTableView* kinds = at("kindsTable", KindsModel::Field::wire, 0);
    type(kinds, QStringLiteral("41 cm"));
    EXPECT_TRUE(plan().kinds[0].own.wire);
    EXPECT_EQ(inMillimetres(plan().kinds[0].wire), 410);
    EXPECT_EQ(kinds->model()->index(KindsModel::Field::wire, 0).data().toString(),
              QStringLiteral("410 mm ✎ yours"));
    // A change of the pattern's beads leaves it alone.
    type(at("leafRowsTable", 4, 0), QStringLiteral("6"));
    EXPECT_EQ(inMillimetres(plan().kinds[0].wire), 410);
    session.undo();
    at("kindsTable", KindsModel::Field::wire, 0);
    QTest::keyClick(kinds, Qt::Key_Delete);
    EXPECT_EQ(plan(), before);
}

TEST_F(LeafRowsTest, ARowThatIsChosenIsMarkedInThePicture) {
    auto* preview = place.findChild<LeafPreview*>();
    const QImage before = preview->grab().toImage();
    at("leafRowsTable", 0, 0);
    EXPECT_NE(preview->grab().toImage(), before);
    at("coloursTable", 0, 0);
    EXPECT_EQ(preview->grab().toImage(), before) << "and no longer when the hand is elsewhere";
}

TEST_F(LeavesPlaceTest, AMeasuredKindSaysWhyItsRowsCannotBeCounted) {
    QTableView* rows = at("leafRowsTable", 0, 0);
    type(rows, QStringLiteral("9"));
    EXPECT_TRUE(notice().contains(QStringLiteral("give it a pattern first"))) << notice().toStdString();
    QTest::keyClick(editorOf(rows), Qt::Key_Escape);
    EXPECT_EQ(plan(), smallBoard());
    int sum = 0;
    const int last = rows->model()->rowCount() - 1;
    for (int row = 0; row < last; ++row)
        sum += rows->model()->index(row, 0).data().toInt();
    EXPECT_EQ(sum, plan().kinds[0].beads);
    type(at("leafRowsTable", last, 0), QStringLiteral("44"));
    EXPECT_EQ(plan().kinds[0].beads, 44) << "the sum is the maker's own measure";
}

} // namespace
} // namespace stemwright

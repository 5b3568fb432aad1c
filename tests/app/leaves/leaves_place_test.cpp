#include "app/leaves/kinds_model.h"
#include "app/leaves/mix_text.h"
#include "tests/app/leaves/leaves_fixture.h"

#include <gtest/gtest.h>

#include <QPushButton>

namespace stemwright {
namespace {

using test::LeavesPlaceTest;
using test::smallBoard;

TEST_F(LeavesPlaceTest, EditsACellByKeysAsOneStep) {
    QTableView* colours = at("coloursTable", 0, 0);
    type(colours, QStringLiteral("Damson"));
    EXPECT_EQ(plan().colours[0].name, "Damson");
    EXPECT_EQ(steps(), 1);
    EXPECT_EQ(colours->currentIndex().row(), 1) << "Enter goes on to the next line";
    session.undo();
    EXPECT_EQ(plan(), smallBoard());
    EXPECT_EQ(colours->model()->index(0, 0).data().toString(), QStringLiteral("Plum"));
}

TEST_F(LeavesPlaceTest, TypingAloneBeginsAnEdit) {
    QTableView* stock = at("stockTable", 1, 1);
    QTest::keyClick(stock, Qt::Key_7);
    ASSERT_TRUE(editorOf(stock));
    QTest::keyClick(editorOf(stock), Qt::Key_Tab);
    EXPECT_EQ(plan().kinds[0].stock[1].made, 7);
    EXPECT_EQ(stock->currentIndex(), stock->model()->index(1, 2)) << "Tab goes on to the next cell";
}

TEST_F(LeavesPlaceTest, EscGivesAnEditUp) {
    QTableView* stock = at("stockTable", 0, 1);
    type(stock, QStringLiteral("99"), Qt::Key_Escape);
    EXPECT_EQ(plan(), smallBoard());
    EXPECT_FALSE(session.canUndo());
}

TEST_F(LeavesPlaceTest, RefusesABadValueWithItsCellAndKeepsTheEditorOpen) {
    QTableView* kinds = at("kindsTable", KindsModel::Field::length, 0);
    type(kinds, QStringLiteral("0"));
    EXPECT_EQ(plan(), smallBoard());
    EXPECT_EQ(notice(), QStringLiteral("Small, Length: 0 is too small: from 0.1 mm to 10000 mm is possible."));
    ASSERT_TRUE(editorOf(kinds)) << "what was typed is not lost";
    QTest::keyClick(editorOf(kinds), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(editorOf(kinds), QStringLiteral("16,5 mm"));
    QTest::keyClick(editorOf(kinds), Qt::Key_Return);
    EXPECT_EQ(inMillimetres(plan().kinds[0].length), 16.5);
    EXPECT_TRUE(notice().isEmpty());
}

TEST_F(LeavesPlaceTest, EveryColumnOfTheKindsRefusesNonsense) {
    const QStringList nonsense{QString(), QString(), "none",   QString(), "x",  "-4",  "square", "-",
                               "1e9",     "0",       "AWG 99", "gold",    "25", "200", "-1",     QString()};
    QTableView* kinds = table("kindsTable");
    ASSERT_EQ(kinds->model()->rowCount(), nonsense.size());
    for (int row = 0; row < nonsense.size(); ++row)
        if (!nonsense[row].isEmpty()) {
            EXPECT_FALSE(kinds->model()->setData(kinds->model()->index(row, 1), nonsense[row]))
                << row << " " << nonsense[row].toStdString();
            EXPECT_TRUE(notice().startsWith(QStringLiteral("Broad, "))) << notice().toStdString();
        }
    EXPECT_EQ(plan(), smallBoard());
}

TEST_F(LeavesPlaceTest, AWireNumberSetsTheDiameterAndAnotherDiameterDropsIt) {
    QTableView* kinds = at("kindsTable", KindsModel::Field::gauge, 0);
    type(kinds, QStringLiteral("SWG 30"));
    ASSERT_TRUE(plan().kinds[0].gauge);
    EXPECT_EQ(plan().kinds[0].gauge->system, GaugeSystem::swg);
    // BS 3737:1964: 0.0124 in.
    EXPECT_NEAR(inMillimetres(plan().kinds[0].wireDiameter), 0.315, 0.0005);
    at("kindsTable", KindsModel::Field::wireDiameter, 0);
    type(kinds, QStringLiteral("0.4"));
    EXPECT_FALSE(plan().kinds[0].gauge);
    EXPECT_EQ(steps(), 2);
}

TEST_F(LeavesPlaceTest, PastesABlockOverTheStockAsOneStep) {
    QTableView* stock = at("stockTable", 0, 1);
    paste(stock, QStringLiteral("10\t1\r\n20\t\r\n30\t3\r\n"));
    EXPECT_EQ(plan().kinds[0].stock[0].made, 10);
    EXPECT_EQ(plan().kinds[0].stock[0].toMake, 1);
    EXPECT_EQ(plan().kinds[0].stock[1].made, 20);
    EXPECT_EQ(plan().kinds[0].stock[1].toMake, 0) << "a blank is none";
    EXPECT_EQ(plan().kinds[0].stock[2].made, 30);
    EXPECT_EQ(steps(), 1);
    session.undo();
    EXPECT_EQ(plan(), smallBoard());
}

TEST_F(LeavesPlaceTest, PastesMixesWithTheirCountsInAnyOrder) {
    QTableView* stock = at("stockTable", 0, 0);
    paste(stock, QStringLiteral("Sea\t9\t8\nP\t7\t6\n"));
    EXPECT_EQ(plan().kinds[0].stock[2].made, 9);
    EXPECT_EQ(plan().kinds[0].stock[2].toMake, 8);
    EXPECT_EQ(plan().kinds[0].stock[0].made, 7);
    EXPECT_EQ(plan().kinds[0].stock[0].mix, MixId{1}) << "the order from tip to base stays";
    paste(stock, QStringLiteral("Sea\t1\t1\nGold\t7\t6\n"));
    EXPECT_EQ(notice(), QStringLiteral("Row 2 of what was pasted: there is no mix “Gold” in this plan."));
    EXPECT_EQ(plan().kinds[0].stock[2].made, 9);
}

TEST_F(LeavesPlaceTest, ABadCellInAPasteChangesNothingAndIsNamed) {
    QTableView* stock = at("stockTable", 0, 1);
    paste(stock, QStringLiteral("10\t1\nmany\t2\n30\t3\n"));
    EXPECT_EQ(plan(), smallBoard());
    EXPECT_EQ(notice(), QStringLiteral("Plum on sea, Made: “many” is no number."));
    paste(stock, QStringLiteral("1\t2\t3\t4\t5\n"));
    EXPECT_EQ(plan(), smallBoard());
    EXPECT_FALSE(notice().isEmpty());
    // Two of Plum are on stems of this board.
    paste(stock, QStringLiteral("0\t0\n"));
    EXPECT_EQ(plan(), smallBoard());
    EXPECT_TRUE(notice().contains(QStringLiteral("Plum"))) << notice().toStdString();
    EXPECT_FALSE(session.canUndo());
}

TEST_F(LeavesPlaceTest, PastesRowsUnderTheColours) {
    QTableView* colours = at("coloursTable", 1, 0);
    paste(colours, QStringLiteral("Rose\t#c06a78\nHoney\tD9A441\n"));
    ASSERT_EQ(plan().colours.size(), 4u);
    EXPECT_EQ(plan().colours[2].name, "Rose");
    EXPECT_EQ(plan().colours[3].srgb, (Srgb{0xd9, 0xa4, 0x41}));
    EXPECT_EQ(steps(), 1);
    session.undo();
    EXPECT_EQ(plan(), smallBoard());
    paste(colours, QStringLiteral("Rose\t#c06a78\nHoney\tyellow\n"));
    EXPECT_EQ(plan(), smallBoard());
    EXPECT_TRUE(notice().contains(QStringLiteral("“yellow” is no colour"))) << notice().toStdString();
}

TEST_F(LeavesPlaceTest, CopiesWhatItCanPaste) {
    QTableView* stock = at("stockTable", 0, 1);
    stock->selectionModel()->select(QItemSelection(stock->model()->index(0, 1), stock->model()->index(2, 2)),
                                    QItemSelectionModel::ClearAndSelect);
    QTest::keyClick(stock, Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QGuiApplication::clipboard()->text(), QStringLiteral("2\t2\n2\t2\n2\t2\n"));
    paste(stock, QGuiApplication::clipboard()->text());
    EXPECT_FALSE(session.canUndo()) << "nothing differs, so nothing is to be undone";
}

TEST_F(LeavesPlaceTest, AddsAMixAndGivesItColours) {
    QTableView* mixes = at("mixesTable", 2, 1);
    QTest::keyClick(mixes, Qt::Key_Insert);
    ASSERT_EQ(plan().mixes.size(), 4u);
    EXPECT_EQ(mixes->currentIndex().row(), 3);
    at("mixesTable", 3, 2);
    type(mixes, QStringLiteral("sea 2 + Plum 1,5"));
    ASSERT_EQ(plan().mixes[3].colours.size(), 2u);
    EXPECT_EQ(plan().mixes[3].colours[0].colour, ColourId{2});
    EXPECT_EQ(plan().mixes[3].colours[1].share, 1.5);
    EXPECT_EQ(mixes->model()->index(3, 2).data().toString(), QStringLiteral("Sea 2 + Plum 1.5"));
    at("mixesTable", 3, 0);
    type(mixes, QStringLiteral("P"));
    EXPECT_TRUE(notice().contains(QStringLiteral("the code P belongs to Plum already")))
        << notice().toStdString();
    EXPECT_NE(plan().mixes[3].code, "P");
    QTest::keyClick(editorOf(mixes), Qt::Key_Escape);
}

TEST_F(LeavesPlaceTest, MixesMayExchangeTheirCodes) {
    QTableView* mixes = at("mixesTable", 0, 0);
    paste(mixes, QStringLiteral("S\nO\nP\n"));
    EXPECT_EQ(plan().mixes[0].code, "S");
    EXPECT_EQ(plan().mixes[2].code, "P");
    EXPECT_EQ(steps(), 1);
    session.undo();
    EXPECT_EQ(plan(), smallBoard());
}

TEST_F(LeavesPlaceTest, SaysWhyAPartCannotGo) {
    QTableView* colours = at("coloursTable", 0, 0);
    QTest::keyClick(colours, Qt::Key_Delete);
    EXPECT_EQ(notice(), QStringLiteral("Plum cannot go while Plum uses it."));
    QTableView* mixes = at("mixesTable", 0, 0);
    QTest::keyClick(mixes, Qt::Key_Delete);
    EXPECT_TRUE(notice().contains(QStringLiteral("stock of Small"))) << notice().toStdString();
    QTableView* stock = at("stockTable", 0, 0);
    QTest::keyClick(stock, Qt::Key_Delete, Qt::ControlModifier);
    EXPECT_TRUE(notice().contains(QStringLiteral("on stems"))) << notice().toStdString();
    at("kindsTable", KindsModel::Field::name, 0);
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("kindsRemove")), Qt::LeftButton);
    EXPECT_EQ(notice(), QStringLiteral("Small cannot go while Stem 1 uses it."));
    EXPECT_EQ(plan(), smallBoard());
}

TEST_F(LeavesPlaceTest, RemovesWhatNothingUses) {
    QTableView* kinds = at("kindsTable", KindsModel::Field::name, 1);
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("kindsRemove")), Qt::LeftButton);
    EXPECT_EQ(plan().kinds.size(), 1u);
    EXPECT_EQ(kinds->model()->columnCount(), 1);
    session.undo();
    EXPECT_EQ(plan(), smallBoard());
}

TEST_F(LeavesPlaceTest, AltArrowsMoveLines) {
    QTableView* stock = at("stockTable", 0, 1);
    QTest::keyClick(stock, Qt::Key_Down, Qt::AltModifier);
    EXPECT_EQ(plan().kinds[0].stock[1].mix, MixId{1});
    EXPECT_EQ(stock->currentIndex(), stock->model()->index(1, 1)) << "the line takes the focus along";
    QTest::keyClick(stock, Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(plan(), smallBoard());
    QTableView* mixes = at("mixesTable", 2, 0);
    QTest::keyClick(mixes, Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(plan().mixes[1].id, MixId{3});
    QTableView* kinds = at("kindsTable", KindsModel::Field::name, 0);
    QTest::keyClick(kinds, Qt::Key_Right, Qt::AltModifier);
    EXPECT_EQ(plan().kinds[1].id, KindId{1});
}

TEST_F(LeavesPlaceTest, DeleteEmptiesCounts) {
    QTableView* stock = at("stockTable", 0, 1);
    // All four of Plum of the kind Broad are in the tray.
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("kindTab1")), Qt::LeftButton);
    stock->selectionModel()->select(QItemSelection(stock->model()->index(0, 1), stock->model()->index(2, 2)),
                                    QItemSelectionModel::ClearAndSelect);
    QTest::keyClick(stock, Qt::Key_Delete);
    for (const StockLine& line : plan().kinds[1].stock)
        EXPECT_EQ(line.total(), 0);
    EXPECT_EQ(steps(), 1);
}

TEST_F(LeavesPlaceTest, TabLeavesATableAndCtrlTabGoesToTheNext) {
    QTableView* colours = at("coloursTable", 0, 0);
    ASSERT_TRUE(colours->hasFocus());
    QTest::keyClick(colours, Qt::Key_Tab);
    EXPECT_FALSE(colours->hasFocus()) << "nobody is caught in a table";
    colours->setFocus();
    const char* tables[] = {"mixesTable", "mixColoursTable", "kindsTable",
                            "stockTable", "leafRowsTable",   "coloursTable"};
    for (const char* next : tables) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab, Qt::ControlModifier);
        EXPECT_EQ(QApplication::focusWidget(), table(next)) << next;
    }
    QTest::keyClick(colours, Qt::Key_Backtab, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(table("leafRowsTable")->hasFocus());
    // By Tab alone every control of the place is reached, once.
    colours->setFocus();
    int steps = 0;
    do
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    while (!colours->hasFocus() && ++steps < 60);
    EXPECT_LT(steps, 40);
}

TEST_F(LeavesPlaceTest, FollowsEditsFromElsewhere) {
    QTableView* stock = at("stockTable", 0, 1);
    EXPECT_EQ(stock->model()->index(0, 3).data().toString(), QStringLiteral("3"));
    ASSERT_TRUE(session.make(FillSlot{{StemId{1}, 0, 0}, {KindId{1}, MixId{}}}));
    EXPECT_EQ(stock->model()->index(0, 3).data().toString(), QStringLiteral("2"));
    EXPECT_EQ(stock->model()->index(0, 4).data().toString(), QStringLiteral("2"));
    session.open(Plan{}, QString());
    EXPECT_EQ(stock->model()->rowCount(), 0) << "an empty plan is shown as one";
    EXPECT_EQ(table("kindsTable")->model()->columnCount(), 0);
}

TEST_F(LeavesPlaceTest, BuildsAPlanFromNothing) {
    session.open(Plan{}, QString());
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("mixesAdd")), Qt::LeftButton);
    EXPECT_TRUE(notice().contains(QStringLiteral("add a colour first")));
    for (const char* name : {"coloursAdd", "mixesAdd", "kindsAdd"})
        QTest::mouseClick(place.findChild<QPushButton*>(QLatin1String(name)), Qt::LeftButton);
    ASSERT_EQ(plan().kinds.size(), 1u);
    QTableView* stock = at("stockTable", 0, 1);
    type(stock, QStringLiteral("12"));
    EXPECT_EQ(plan().kinds[0].stock[0].made, 12);
}

TEST_F(LeavesPlaceTest, InchesAndCommasAreUnderstood) {
    Units inches;
    inches.length = LengthUnit::inch;
    ASSERT_TRUE(session.make(Set<Units>{inches}));
    QTableView* kinds = at("kindsTable", KindsModel::Field::length, 0);
    type(kinds, QStringLiteral("5/8"));
    EXPECT_NEAR(inMillimetres(plan().kinds[0].length), 15.875, 1e-9);
    EXPECT_EQ(kinds->model()->index(KindsModel::Field::length, 0).data().toString(), QStringLiteral("5/8 in"));
    EXPECT_EQ(kinds->model()->index(KindsModel::Field::wireDiameter, 0).data().toString(),
              QStringLiteral("0.32 mm"))
        << "wire stays in mm";
    type(at("kindsTable", KindsModel::Field::width, 0), QStringLiteral("9,5 mm"));
    EXPECT_NEAR(inMillimetres(plan().kinds[0].width), 9.5, 1e-9);
}

TEST_F(LeavesPlaceTest, AMassWithoutTheBeadsSaysSo) {
    QTableView* kinds = at("kindsTable", KindsModel::Field::beadSize, 0);
    const auto mass = [&] { return kinds->model()->index(KindsModel::Field::mass, 0).data().toString(); };
    EXPECT_FALSE(mass().contains(QStringLiteral("without"))) << mass().toStdString();
    Plan odd = plan();
    odd.kinds[0].beadSize = "99/0";
    session.open(odd, {});
    EXPECT_TRUE(mass().endsWith(QStringLiteral("without its beads"))) << mass().toStdString();
}

TEST_F(LeavesPlaceTest, PicksAColour) {
    place.pickColour = [](const QColor& now, QWidget*) {
        EXPECT_EQ(now, QColor(122, 68, 98));
        return std::optional(QColor(1, 2, 3));
    };
    at("coloursTable", 0, 1);
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("coloursPick")), Qt::LeftButton);
    EXPECT_EQ(plan().colours[0].srgb, (Srgb{1, 2, 3}));
    place.pickColour = [](const QColor&, QWidget*) { return std::optional<QColor>(); };
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("coloursPick")), Qt::LeftButton);
    EXPECT_EQ(steps(), 1);
}

TEST_F(LeavesPlaceTest, EverythingHasANameAndIsLargeEnoughToHit) {
    for (const QWidget* widget : place.findChildren<QWidget*>()) {
        const bool button = qobject_cast<const QPushButton*>(widget);
        const bool view = qobject_cast<const QTableView*>(widget);
        if (!(button || view) || !widget->isVisible())
            continue;
        EXPECT_FALSE(widget->objectName().isEmpty());
        EXPECT_FALSE(widget->accessibleName().isEmpty()) << widget->objectName().toStdString();
        EXPECT_GE(widget->width(), 24) << widget->objectName().toStdString();
        EXPECT_GE(widget->height(), 24) << widget->objectName().toStdString();
    }
    EXPECT_EQ(table("stockTable")->model()->index(0, 1).data(Qt::AccessibleTextRole).toString(),
              QStringLiteral("Plum, Made: 2"));
}

TEST_F(LeavesPlaceTest, ARowOfNamesAboveWhatIsPastedSaysWhatStandsWhere) {
    QTableView* stock = at("stockTable", 0, 0);
    paste(stock, QStringLiteral("Mix\tMade\tTo make\nSea\t9\t8\nPlum\t7\t6\n"));
    EXPECT_EQ(plan().kinds[0].stock[2].made, 9) << notice().toStdString();
    EXPECT_EQ(plan().kinds[0].stock[0].toMake, 6);
    // In another order, and from another cell.
    at("stockTable", 1, 1);
    paste(stock, QStringLiteral("to make\tmix\tmade\n1\tSea\t20\n"));
    EXPECT_EQ(plan().kinds[0].stock[2].made, 20) << notice().toStdString();
    EXPECT_EQ(plan().kinds[0].stock[2].toMake, 1);
    EXPECT_EQ(plan().kinds[0].stock[1].made, 2) << "only the mix that was named";
    paste(stock, QStringLiteral("Made\tTo make\n5\t6\n"));
    EXPECT_EQ(plan().kinds[0].stock[1].made, 5) << notice().toStdString();
    // Names alone are nothing to paste.
    const Plan before = plan();
    paste(stock, QStringLiteral("Made\tTo make\n"));
    EXPECT_EQ(plan(), before);
    EXPECT_FALSE(notice().isEmpty());
}

TEST_F(LeavesPlaceTest, ColoursMixesAndKindsTakeNamesToo) {
    QTableView* colours = at("coloursTable", 0, 0);
    paste(colours, QStringLiteral("Colour\tName\n#112233\tInk\n445566\tSlate\n"));
    ASSERT_EQ(plan().colours.size(), 4u) << notice().toStdString();
    EXPECT_EQ(plan().colours[2].name, "Ink");
    EXPECT_EQ(plan().colours[3].srgb, (Srgb{0x44, 0x55, 0x66}));
    paste(colours, QStringLiteral("Name\tShop\nRed\tCorner\n"));
    EXPECT_EQ(plan().colours.size(), 4u);
    EXPECT_EQ(notice(), QStringLiteral("“Shop” above what was pasted is none of the fields here."));
    QTableView* mixes = at("mixesTable", 0, 0);
    paste(mixes, QStringLiteral("Code\tName\tColours\nIS\tInk on slate\tInk + Slate\n"));
    ASSERT_EQ(plan().mixes.size(), 4u) << notice().toStdString();
    EXPECT_EQ(plan().mixes[3].code, "IS");
    // Kinds stand in columns: there the names stand before.
    QTableView* kinds = at("kindsTable", KindsModel::Field::name, 0);
    paste(kinds, QStringLiteral("Width\t8 mm\nLength\t15 mm\n"));
    EXPECT_EQ(inMillimetres(plan().kinds[0].width), 8) << notice().toStdString();
    EXPECT_EQ(inMillimetres(plan().kinds[0].length), 15);
}

TEST_F(LeavesPlaceTest, MixesGoByTheNewNameOfTheirColour) {
    QTableView* colours = at("coloursTable", 1, 0);
    type(colours, QStringLiteral("Ocean"));
    EXPECT_EQ(plan().mixes[2].name, "Ocean");
    EXPECT_EQ(plan().mixes[1].name, "Plum on ocean");
    EXPECT_EQ(plan().mixes[0].name, "Plum");
    EXPECT_TRUE(notice().contains(QStringLiteral("Plum on sea is now Plum on ocean")))
        << notice().toStdString();
    EXPECT_EQ(steps(), 1);
    session.undo();
    EXPECT_EQ(plan(), smallBoard());
}

TEST_F(LeavesPlaceTest, AGaugeNumberForMillimetresIsUnderstoodAndSaid) {
    QTableView* kinds = at("kindsTable", KindsModel::Field::wireDiameter, 0);
    type(kinds, QStringLiteral("28"));
    EXPECT_EQ(notice(),
              QStringLiteral("Small, Wire diameter: A wire 28 mm thick would be a rod; was the wire "
                             "number 28 meant? AWG 28 is 0.32 mm, SWG 28 is 0.38 mm, steel gauge 28 is "
                             "0.41 mm."));
    EXPECT_EQ(plan(), smallBoard());
}

TEST(MixNames, OnlyWholeWordsOfTheColourItselfAreRenamed) {
    Plan plan = smallBoard();
    plan.colours[0].name = "Deep sea";
    Mix mix = plan.mixes[1];
    mix.name = "Deep sea on sea, seaside";
    EXPECT_EQ(renamedMix(plan, mix, plan.colours[1], QStringLiteral("Ocean")),
              QStringLiteral("Deep sea on ocean, seaside"));
    EXPECT_EQ(renamedMix(plan, mix, plan.colours[0], QStringLiteral("Abyss")),
              QStringLiteral("Abyss on sea, seaside"));
    mix.name = "My favourite";
    EXPECT_EQ(renamedMix(plan, mix, plan.colours[1], QStringLiteral("Ocean")), QStringLiteral("My favourite"));
    plan.colours[1].name = "Sea (old)";
    mix.name = "Plum on sea (old)";
    EXPECT_EQ(renamedMix(plan, mix, plan.colours[1], QStringLiteral("New")), QStringLiteral("Plum on new"));
}

} // namespace
} // namespace stemwright

#include "app/dialogs/buying_dialog.h"

#include "tests/app/dialogs/dialog_test.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QPushButton>
#include <QtTest>

namespace stemwright {
namespace {

using test::smallBoard;

class BuyingDialogTest : public test::DialogTest<BuyingDialog> {
protected:
    BuyingDialogTest() {
        plan.binding.wraps = {Wrap{}};
        plan.buying = {};
    }
    void open() { openWith(plan); }
    void type(const char* name, const QString& words) {
        auto* field = child<QLineEdit>(name);
        field->setFocus();
        QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClick(field, Qt::Key_Delete);
        QTest::keyClicks(field, words);
    }
    Plan after() {
        Plan changed = plan;
        const auto edit = dialog->edit();
        EXPECT_TRUE(edit);
        if (edit) {
            EXPECT_TRUE(apply(changed, *edit));
        }
        EXPECT_FALSE(firstProblem(changed));
        return changed;
    }

    Plan plan = smallBoard();
};

TEST_F(BuyingDialogTest, UntouchedItChangesNothingInEitherUnit) {
    plan.buying.spare = 1.0 / 3;
    plan.buying.beads = {10.123456789, 2.5, "{\"a\":1}"};
    plan.buying.leafWire = {12345.678, 4, ""};
    plan.buying.bars = {{millimetres(304.8)},
                        {millimetres(1000.0 / 3), 1.25, millimetres(2.0 / 3), "{\"b\":2}"}};
    plan.buying.leafWires = {{millimetres(0.3), {1000.0 / 3, 2, ""}, "{\"c\":3}"}, {millimetres(0.5), {}, ""}};
    plan.buying.wraps = {{0, 3, ""}};
    plan.binding.wraps[0].sold = millimetres(8000.0 / 7);
    for (const bool imperial : {false, true}) {
        plan.units.length = imperial ? LengthUnit::inch : LengthUnit::millimetre;
        plan.units.mass = imperial ? MassUnit::ounce : MassUnit::gram;
        open();
        press("buyingDialogOk");
        EXPECT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
        EXPECT_FALSE(dialog->edit()) << imperial;
    }
}

TEST_F(BuyingDialogTest, TakesWhatIsTypedAsOneEdit) {
    open();
    type("buyingSpare", QStringLiteral("15"));
    type("buyingBeadsAmount", QStringLiteral("10"));
    type("buyingBeadsPrice", QStringLiteral("2,40"));
    type("buyingLeafWireAmount", QStringLiteral("24 m"));
    type("buyingLeafWirePrice", QStringLiteral("5"));
    type("buyingWrap0Amount", QStringLiteral("8 m"));
    type("buyingWrap0Price", QStringLiteral("1.1"));
    type("buyingClayAmount", QStringLiteral("500"));
    press("buyingAddBar");
    type("buyingBar0Length", QStringLiteral("45 cm"));
    press("buyingAddBar");
    type("buyingBar1Length", QStringLiteral("1 m"));
    type("buyingBar1Price", QStringLiteral("0.8"));
    press("buyingDialogOk");
    ASSERT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
    const Plan now = after();
    EXPECT_NEAR(now.buying.spare, 0.15, 1e-12);
    EXPECT_EQ(now.buying.beads.amount, 10);
    EXPECT_EQ(now.buying.beads.price, 2.4);
    EXPECT_EQ(now.buying.leafWire.amount, 24'000);
    EXPECT_EQ(now.buying.leafWire.price, 5);
    ASSERT_TRUE(now.binding.wraps[0].sold);
    EXPECT_EQ(inMillimetres(*now.binding.wraps[0].sold), 8000);
    ASSERT_EQ(now.buying.wraps.size(), 1u);
    EXPECT_EQ(now.buying.wraps[0].price, 1.1);
    EXPECT_EQ(now.buying.clay.amount, 500);
    ASSERT_EQ(now.buying.bars.size(), 2u);
    EXPECT_EQ(inMillimetres(now.buying.bars[0].length), 450);
    EXPECT_EQ(now.buying.bars[1].price, 0.8);
    Plan undone = plan;
    auto undo = apply(undone, *dialog->edit());
    ASSERT_TRUE(undo);
    ASSERT_TRUE(apply(undone, undo.value()));
    EXPECT_EQ(undone, plan);
}

TEST_F(BuyingDialogTest, WiresOfSeveralDiametersAreSoldEachInItsWay) {
    plan.kinds[1].wireDiameter = plan.kinds[0].wireDiameter + millimetres(0.1);
    plan.buying.bars = {{millimetres(500), 1}};
    open();
    type("buyingLeafWire1Amount", QStringLiteral("12 m"));
    type("buyingLeafWire1Price", QStringLiteral("6"));
    press("buyingAddBar");
    type("buyingBar1Length", QStringLiteral("500"));
    press("buyingDialogOk");
    EXPECT_TRUE(dialog->isVisible()) << "the same length twice";
    auto* wire = child<QComboBox>("buyingBar1Wire");
    wire->setFocus();
    QTest::keyClick(wire, Qt::Key_Down);
    press("buyingDialogOk");
    EXPECT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
    const Plan now = after();
    ASSERT_EQ(now.buying.leafWires.size(), 1u) << "the other is sold as all leaf wire";
    EXPECT_EQ(now.buying.leafWires[0].wire, plan.kinds[1].wireDiameter);
    EXPECT_EQ(now.buying.leafWires[0].sold.amount, 12'000);
    EXPECT_EQ(now.buying.leafWires[0].sold.price, 6);
    ASSERT_EQ(now.buying.bars.size(), 2u);
    EXPECT_EQ(now.buying.bars[0].wire, Length{});
    EXPECT_EQ(now.buying.bars[1].wire, plan.pot.stake.diameter);
}

TEST_F(BuyingDialogTest, RemovesALengthAndEmptiesAPack) {
    plan.buying.beads = {10, 2, ""};
    plan.buying.bars = {{millimetres(300), 1}, {millimetres(500), 2}, {millimetres(700), 3}};
    open();
    press("buyingBar1Remove");
    EXPECT_EQ(child<QLineEdit>("buyingBar1Length")->text(), QStringLiteral("700 mm"));
    type("buyingBeadsAmount", QString());
    type("buyingBeadsPrice", QString());
    press("buyingDialogOk");
    ASSERT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
    const Plan now = after();
    ASSERT_EQ(now.buying.bars.size(), 2u);
    EXPECT_EQ(now.buying.bars[1], plan.buying.bars[2]);
    EXPECT_EQ(now.buying.beads.amount, 0);
    EXPECT_EQ(now.buying.beads.price, 0);
}

TEST_F(BuyingDialogTest, ImpossibleThingsAreSaidWithTheirPlace) {
    open();
    type("buyingSpare", QStringLiteral("900"));
    press("buyingDialogOk");
    EXPECT_TRUE(
        dialog->notice().startsWith(QStringLiteral("Spare of beads and leaf wire, %: 900 is too large")))
        << dialog->notice().toStdString();
    type("buyingSpare", QStringLiteral("10"));
    type("buyingBeadsPrice", QStringLiteral("3"));
    press("buyingDialogOk");
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("not for how much")))
        << dialog->notice().toStdString();
    EXPECT_TRUE(child<QLineEdit>("buyingBeadsAmount")->hasFocus());
    type("buyingBeadsAmount", QStringLiteral("12"));
    press("buyingAddBar");
    type("buyingBar0Length", QStringLiteral("0"));
    press("buyingDialogOk");
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("too small"))) << dialog->notice().toStdString();
    type("buyingBar0Length", QStringLiteral("30 cm"));
    press("buyingAddBar");
    type("buyingBar1Length", QStringLiteral("300 mm"));
    press("buyingDialogOk");
    EXPECT_TRUE(dialog->notice().contains(QStringLiteral("twice"))) << dialog->notice().toStdString();
    EXPECT_TRUE(dialog->isVisible());
    type("buyingBar1Length", QStringLiteral("40 cm"));
    press("buyingDialogOk");
    EXPECT_FALSE(dialog->isVisible());
}

TEST_F(BuyingDialogTest, AColourMayBeSoldInAnotherWay) {
    open();
    type("buyingColour1Amount", QStringLiteral("25"));
    type("buyingColour1Price", QStringLiteral("7.5"));
    press("buyingDialogOk");
    ASSERT_EQ(dialog->result(), QDialog::Accepted) << dialog->notice().toStdString();
    const Plan now = after();
    EXPECT_EQ(now.colours[1].sold.amount, 25);
    EXPECT_EQ(now.colours[1].sold.price, 7.5);
    EXPECT_EQ(now.colours[0], plan.colours[0]);
    EXPECT_EQ(now.buying, plan.buying);
}

TEST_F(BuyingDialogTest, TabGoesThroughItAsTheEyeDoes) {
    plan.buying.bars = {{millimetres(300), 0}};
    open();
    EXPECT_TRUE(child<QWidget>("buyingSpare")->hasFocus()) << "the hand begins at the first field";
    press("buyingAddBar");
    EXPECT_TRUE(child<QWidget>("buyingBar1Length")->hasFocus()) << "the new length waits to be typed";
    child<QWidget>("buyingSpare")->setFocus();
    QStringList visited;
    for (int i = 0; i < 40 && dialog->focusWidget()->objectName() != QLatin1String("buyingDialogCancel"); ++i) {
        QTest::keyClick(dialog->focusWidget(), Qt::Key_Tab);
        visited += dialog->focusWidget()->objectName();
    }
    const QStringList order{"buyingBeadsAmount",  "buyingCoverPrice", "buyingBar0Length",
                            "buyingBar1Length",   "buyingBar1Remove", "buyingAddBar",
                            "buyingColour0Price", "buyingDialogOk",   "buyingDialogCancel"};
    qsizetype before = -1;
    for (const QString& name : order) {
        EXPECT_GT(visited.indexOf(name), before)
            << name.toStdString() << " in " << visited.join(QLatin1Char(' ')).toStdString();
        before = visited.indexOf(name);
    }
}

TEST_F(BuyingDialogTest, OuncesAreUnderstood) {
    plan.units.mass = MassUnit::ounce;
    open();
    type("buyingBeadsAmount", QStringLiteral("2"));
    press("buyingDialogOk");
    // One avoirdupois ounce is 28.349523125 g.
    EXPECT_NEAR(after().buying.beads.amount, 56.69904625, 1e-9);
}

} // namespace
} // namespace stemwright

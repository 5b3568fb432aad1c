#include "app/dialogs/binding_dialog.h"
#include "app/dialogs/pot_dialog.h"
#include "app/dialogs/stem_dialog.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QtTest>

namespace stemwright {
namespace {

template <class Widget> Widget* child(const QWidget& in, const char* name) {
    auto* widget = in.findChild<Widget*>(QLatin1String(name));
    EXPECT_TRUE(widget) << name;
    return widget;
}

void show(QWidget& dialog) {
    dialog.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&dialog));
}

void type(QWidget* field, const QString& text) {
    field->setFocus();
    QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(field, text);
}

void press(QWidget& dialog, const char* button) {
    QTest::mouseClick(child<QPushButton>(dialog, button), Qt::LeftButton);
}

Units inInches() {
    Units units;
    units.length = LengthUnit::inch;
    return units;
}

TEST(StemDialogTest, UntouchedItGivesTheFormBackToTheLastBit) {
    StemForm form;
    form.name = "Tall one";
    form.spacing = millimetres(1.0 / 3);
    form.tail = millimetres(31.23456789);
    form.whorl = 5;
    form.core =
        CoreWire{millimetres(1.0236789), GaugeNumber{GaugeSystem::awg, 18}, Metal::hardBrass, "{\"a\":1}"};
    form.standing = Standing{millimetres(3), millimetres(-4), ""};
    form.extra = "{\"b\":2}";
    for (const Units& units : {Units{}, inInches()}) {
        StemDialog dialog(form, units);
        show(dialog);
        press(dialog, "stemDialogOk");
        EXPECT_EQ(dialog.result(), QDialog::Accepted);
        EXPECT_EQ(dialog.form(), form);
    }
}

TEST(StemDialogTest, ChangesWhatIsTyped) {
    StemDialog dialog(StemForm{}, inInches());
    show(dialog);
    type(child<QLineEdit>(dialog, "stemName"), QStringLiteral("Short one"));
    type(child<QLineEdit>(dialog, "stemSpacing"), QStringLiteral("3/8"));
    type(child<QLineEdit>(dialog, "stemTail"), QStringLiteral("6 1/4 in"));
    EXPECT_FALSE(child<QSpinBox>(dialog, "stemWhorl")->isEnabled());
    auto* arrangement = child<QComboBox>(dialog, "stemArrangement");
    arrangement->setFocus();
    while (arrangement->currentData().toInt() != static_cast<int>(Arrangement::whorled))
        QTest::keyClick(arrangement, Qt::Key_Down);
    EXPECT_TRUE(child<QSpinBox>(dialog, "stemWhorl")->isEnabled());
    QTest::keyClick(child<QCheckBox>(dialog, "stemHasCore"), Qt::Key_Space);
    auto* number = child<QComboBox>(dialog, "stemCoreNumber");
    number->setFocus();
    QTest::keyClicks(number, QStringLiteral("20"));
    press(dialog, "stemDialogOk");
    ASSERT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();
    const StemForm form = dialog.form();
    EXPECT_EQ(form.name, "Short one");
    EXPECT_NEAR(inMillimetres(form.spacing), 9.525, 1e-9);
    EXPECT_NEAR(inMillimetres(form.tail), 158.75, 1e-9);
    EXPECT_EQ(form.arrangement, Arrangement::whorled);
    ASSERT_TRUE(form.core);
    EXPECT_EQ(form.core->gauge, (GaugeNumber{GaugeSystem::awg, 20}));
    // AWG 20 by its formula: 0.8118 mm.
    EXPECT_NEAR(inMillimetres(form.core->diameter), 0.812, 0.0005);
}

TEST(StemDialogTest, RefusesWithASentenceAndGoesToTheField) {
    StemDialog dialog(StemForm{}, Units{});
    show(dialog);
    dialog.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&dialog));
    type(child<QLineEdit>(dialog, "stemTail"), QStringLiteral("-3"));
    press(dialog, "stemDialogOk");
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_EQ(dialog.notice(),
              QStringLiteral("Tail below the last tier: -3 is too small: from 0 mm to 10000 mm is possible."));
    EXPECT_TRUE(child<QLineEdit>(dialog, "stemTail")->hasFocus());
    type(child<QLineEdit>(dialog, "stemTail"), QStringLiteral("1e308"));
    press(dialog, "stemDialogOk");
    EXPECT_TRUE(dialog.isVisible());
    type(child<QLineEdit>(dialog, "stemTail"), QStringLiteral("3,5 cm"));
    press(dialog, "stemDialogOk");
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    EXPECT_NEAR(inMillimetres(dialog.form().tail), 35, 1e-9);
}

TEST(StemDialogTest, AGaugeNumberForMillimetresIsUnderstood) {
    StemForm form;
    form.core = CoreWire{millimetres(1), std::nullopt, Metal::mildSteel, ""};
    StemDialog dialog(form, Units{});
    show(dialog);
    type(child<QLineEdit>(dialog, "stemCoreDiameter"), QStringLiteral("18"));
    press(dialog, "stemDialogOk");
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_TRUE(dialog.notice().contains(QStringLiteral("was the wire number 18 meant? AWG 18 is 1.02 mm")))
        << dialog.notice().toStdString();
    // With its system it says it all.
    type(child<QLineEdit>(dialog, "stemCoreDiameter"), QStringLiteral("swg 18"));
    QTest::keyClick(child<QLineEdit>(dialog, "stemCoreDiameter"), Qt::Key_Return);
    press(dialog, "stemDialogOk");
    EXPECT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();
    EXPECT_EQ(dialog.form().core->gauge, (GaugeNumber{GaugeSystem::swg, 18}));
    // BS 3737:1964: 0.048 in.
    EXPECT_NEAR(inMillimetres(dialog.form().core->diameter), 1.219, 0.0005);
}

TEST(StemDialogTest, TheCoreMayBeOfHerOwnMetal) {
    OwnTables own;
    own.metals = {{"old brooch", 8400, 101'000, 200, ""}};
    StemForm form;
    form.core = CoreWire{millimetres(1), std::nullopt, Metal::mildSteel, ""};
    StemDialog dialog(form, Units{}, nullptr, own);
    show(dialog);
    auto* metal = child<QComboBox>(dialog, "stemMetal");
    EXPECT_EQ(metal->currentText(), QStringLiteral("mild steel"));
    metal->setFocus();
    while (metal->currentIndex() > 0)
        QTest::keyClick(metal, Qt::Key_Up);
    EXPECT_EQ(metal->currentText(), QStringLiteral("old brooch"));
    press(dialog, "stemDialogOk");
    EXPECT_EQ(dialog.form().core->ownMetal, "old brooch");
    StemDialog again(dialog.form(), Units{}, nullptr, own);
    show(again);
    EXPECT_EQ(child<QComboBox>(again, "stemMetal")->currentText(), QStringLiteral("old brooch"));
    press(again, "stemDialogOk");
    EXPECT_EQ(again.form(), dialog.form());
}

TEST(BindingDialogTest, HerOwnFlossGivesItsStrandsWidthAndSkein) {
    OwnTables own;
    own.flosses = {{"silk", 8, millimetres(0.17), millimetres(5000), 0.02, ""}};
    Binding binding;
    binding.wraps = {Wrap{}};
    binding.wraps[0].overlapMeasured = true;
    BindingDialog dialog(binding, Units{}, nullptr, own);
    show(dialog);
    auto* which = child<QComboBox>(dialog, "wrapWhich");
    which->setFocus();
    QTest::keyClick(which, Qt::Key_Down);
    press(dialog, "bindingDialogOk");
    ASSERT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();
    const Wrap wrap = dialog.binding().wraps[0];
    EXPECT_EQ(wrap.own, "silk");
    EXPECT_EQ(wrap.strands, 8);
    EXPECT_EQ(inMillimetres(wrap.width), 0.17);
    EXPECT_EQ(inMillimetres(*wrap.sold), 5000);
    EXPECT_FALSE(wrap.overlapMeasured) << "it was measured of another floss";
    BindingDialog byHand(binding, Units{});
    show(byHand);
    type(child<QLineEdit>(byHand, "wrapOverlap"), QStringLiteral("42"));
    press(byHand, "bindingDialogOk");
    EXPECT_FALSE(byHand.binding().wraps[0].overlapMeasured) << "an overlap set by hand was not measured";
}

TEST(StemDialogTest, ACoreThatIsNotWantedIsNotInTheWay) {
    StemForm form;
    form.core = CoreWire{millimetres(1), std::nullopt, Metal::mildSteel, ""};
    StemDialog dialog(form, Units{});
    show(dialog);
    type(child<QLineEdit>(dialog, "stemCoreDiameter"), QStringLiteral("thick"));
    press(dialog, "stemDialogOk");
    EXPECT_TRUE(dialog.isVisible());
    QTest::keyClick(child<QCheckBox>(dialog, "stemHasCore"), Qt::Key_Space);
    press(dialog, "stemDialogOk");
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    EXPECT_FALSE(dialog.form().core);
}

TEST(WireFieldTest, AnotherDiameterDropsTheNumber) {
    WireField field;
    field.setObjectNames(QStringLiteral("wire"), QStringLiteral("Wire"));
    show(field);
    field.setValue(millimetres(0.321), GaugeNumber{GaugeSystem::awg, 28});
    EXPECT_EQ(field.gauge(), (GaugeNumber{GaugeSystem::awg, 28}));
    type(field.field(), QStringLiteral("0,5"));
    QTest::keyClick(field.field(), Qt::Key_Return);
    EXPECT_FALSE(field.gauge());
    EXPECT_EQ(inMillimetres(*field.diameter()), 0.5);
    auto* system = child<QComboBox>(field, "wireSystem");
    system->setFocus();
    QTest::keyClick(system, Qt::Key_Down);
    EXPECT_EQ(field.gauge(), (GaugeNumber{GaugeSystem::awg, 24})) << "the nearest number, 0.511 mm";
    EXPECT_NEAR(inMillimetres(*field.diameter()), 0.511, 0.0005);
}

TEST(PotDialogTest, UntouchedItGivesThePotBackToTheLastBit) {
    Pot pot;
    pot.name = "Footed bowl";
    pot.shape = PotShape::bowl;
    pot.topDiameter = millimetres(123.456789);
    pot.clay.density = 1234.56789;
    pot.stake.gauge = GaugeNumber{GaugeSystem::swg, 44}; // beyond the tables, and still the maker's note
    pot.extra = "{\"k\":[1]}";
    pot.clay.extra = "{\"k\":2}";
    pot.stake.extra = "{\"k\":3}";
    pot.cover = Cover{millimetres(7.654321), 1543.21, "{\"k\":4}"};
    pot.mass = grams(412.34567);
    pot.footDiameter = millimetres(80.1234);
    pot.feet = 12;
    for (const Units& units : {Units{}, inInches()}) {
        PotDialog dialog(pot, units);
        show(dialog);
        press(dialog, "potDialogOk");
        EXPECT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();
        EXPECT_EQ(dialog.pot(), pot);
    }
}

TEST(PotDialogTest, ChangesAndRefuses) {
    PotDialog dialog(Pot{}, Units{});
    show(dialog);
    EXPECT_FALSE(child<QLineEdit>(dialog, "potBottom")->isEnabled()) << "a cylinder has one diameter";
    type(child<QLineEdit>(dialog, "potTop"), QStringLiteral("15 cm"));
    type(child<QLineEdit>(dialog, "potDensity"), QStringLiteral("0"));
    press(dialog, "potDialogOk");
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_TRUE(dialog.notice().startsWith(QStringLiteral("Density of the clay")))
        << dialog.notice().toStdString();
    type(child<QLineEdit>(dialog, "potDensity"), QStringLiteral("1400"));
    auto* shape = child<QComboBox>(dialog, "potShape");
    shape->setFocus();
    QTest::keyClick(shape, Qt::Key_Down);
    EXPECT_TRUE(child<QLineEdit>(dialog, "potBottom")->isEnabled());
    press(dialog, "potDialogOk");
    ASSERT_EQ(dialog.result(), QDialog::Accepted);
    EXPECT_EQ(dialog.pot().shape, PotShape::frustum);
    EXPECT_NEAR(inMillimetres(dialog.pot().topDiameter), 150, 1e-9);
    EXPECT_EQ(dialog.pot().clay.density, 1400);
}

TEST(PotDialogTest, ClayDeeperThanThePotIsAskedAbout) {
    PotDialog dialog(Pot{}, Units{});
    show(dialog);
    EXPECT_FALSE(child<QComboBox>(dialog, "potStakeNumber")->isVisible()) << "there is no number to choose";
    type(child<QLineEdit>(dialog, "potDepth"), QStringLiteral("60 mm"));
    type(child<QLineEdit>(dialog, "potClay"), QStringLiteral("80 mm"));
    press(dialog, "potDialogOk");
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_EQ(dialog.notice(),
              QStringLiteral("Depth of the clay: 80 mm is more than the pot is deep inside, 60 mm."));
    type(child<QLineEdit>(dialog, "potClay"), QStringLiteral("50 mm"));
    auto* system = child<QComboBox>(dialog, "potStakeSystem");
    system->setFocus();
    QTest::keyClick(system, Qt::Key_Down);
    EXPECT_TRUE(child<QComboBox>(dialog, "potStakeNumber")->isVisible());
    press(dialog, "potDialogOk");
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
}

TEST(PotDialogTest, FeetAreCountedAndNeverOneOrTwo) {
    PotDialog dialog(Pot{}, Units{});
    show(dialog);
    auto* feet = child<QComboBox>(dialog, "potFeet");
    EXPECT_EQ(feet->currentText(), QStringLiteral("0"));
    type(child<QLineEdit>(dialog, "potFoot"), QStringLiteral("7 cm"));
    feet->setFocus();
    QTest::keyClick(feet, Qt::Key_Down);
    EXPECT_EQ(feet->currentText(), QStringLiteral("3"));
    press(dialog, "potDialogOk");
    ASSERT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();
    EXPECT_EQ(dialog.pot().feet, 3);
    EXPECT_NEAR(inMillimetres(dialog.pot().footDiameter), 70, 1e-9);
    // Every count that can be chosen is one that a plan may hold.
    Plan plan;
    for (int i = 0; i < feet->count(); ++i) {
        plan.pot.feet = feet->itemData(i).toInt();
        EXPECT_FALSE(firstProblem(plan)) << plan.pot.feet;
    }
}

TEST(PotDialogTest, HerOwnClayAndMetalCanBeChosenAndSayTheirDensity) {
    OwnTables own;
    own.metals = {{"old umbrella", 7800, 200'000, 400, ""}};
    own.clays = {{"grey mud", 1750, ""}};
    Pot pot;
    PotDialog dialog(pot, Units{}, nullptr, own);
    show(dialog);
    EXPECT_EQ(dialog.findChild<QComboBox*>(QStringLiteral("potCoverOwn")), nullptr) << "she has no covers";
    auto* clay = child<QComboBox>(dialog, "potClayOwn");
    clay->setFocus();
    QTest::keyClick(clay, Qt::Key_Down);
    EXPECT_FALSE(child<QLineEdit>(dialog, "potDensity")->isEnabled());
    auto* metal = child<QComboBox>(dialog, "potMetal");
    metal->setFocus();
    QTest::keyClick(metal, Qt::Key_Home); // hers come first
    press(dialog, "potDialogOk");
    ASSERT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();
    EXPECT_EQ(dialog.pot().clay.own, "grey mud");
    EXPECT_EQ(dialog.pot().stake.ownMetal, "old umbrella");
    PotDialog again(dialog.pot(), Units{}, nullptr, own);
    show(again);
    press(again, "potDialogOk");
    EXPECT_EQ(again.pot(), dialog.pot());
    clay = child<QComboBox>(again, "potClayOwn");
    clay->setCurrentIndex(0);
    EXPECT_TRUE(child<QLineEdit>(again, "potDensity")->isEnabled());
    EXPECT_EQ(again.pot().clay.own, "");
}

TEST(BindingDialogTest, UntouchedItGivesTheBindingBackToTheLastBit) {
    Binding binding;
    Wrap wire;
    wire.with = WrapWith::wire;
    wire.strands = 1;
    wire.width = millimetres(0.3211);
    wire.thickness = millimetres(0.3);
    wire.gauge = GaugeNumber{GaugeSystem::awg, 28};
    wire.overlap = 0;
    wire.extra = "{\"w\":1}";
    Wrap floss;
    floss.overlap = 1.0 / 3;
    floss.sold = millimetres(8000);
    Wrap tape;
    tape.with = WrapWith::tape;
    tape.strands = 1;
    tape.width = millimetres(12.7);
    tape.stretch = 1.3333333;
    binding.wraps = {wire, floss, tape};
    binding.extra = "{\"x\":1}";
    for (const Units& units : {Units{}, inInches()}) {
        BindingDialog dialog(binding, units);
        show(dialog);
        press(dialog, "bindingDialogOk");
        EXPECT_EQ(dialog.result(), QDialog::Accepted) << dialog.notice().toStdString();
        EXPECT_EQ(dialog.binding(), binding);
    }
}

TEST(BindingDialogTest, AddsMovesAndRemovesLayers) {
    Binding binding;
    binding.wraps = {Wrap{}};
    BindingDialog dialog(binding, Units{});
    show(dialog);
    press(dialog, "wrapAdd");
    auto* list = child<QListWidget>(dialog, "wrapList");
    ASSERT_EQ(list->count(), 2);
    // The field of the page that is shown, not of the one below it.
    QComboBox* with = nullptr;
    for (QComboBox* each : dialog.findChildren<QComboBox*>(QStringLiteral("wrapWith")))
        if (each->isVisible())
            with = each;
    ASSERT_TRUE(with);
    with->setFocus();
    QTest::keyClick(with, Qt::Key_Up);
    EXPECT_EQ(list->item(1)->text(), QStringLiteral("2. wire"));
    press(dialog, "wrapUp");
    EXPECT_EQ(list->item(0)->text(), QStringLiteral("1. wire"));
    ASSERT_EQ(dialog.binding().wraps.size(), 2u);
    EXPECT_EQ(dialog.binding().wraps[0].with, WrapWith::wire);
    EXPECT_EQ(dialog.binding().wraps[0].strands, 1);
    EXPECT_EQ(dialog.binding().wraps[0].width, dialog.binding().wraps[0].thickness);
    EXPECT_EQ(dialog.binding().wraps[1], Wrap{});
    EXPECT_EQ(dialog.origins(), (std::vector<int>{-1, 0})) << "what goes with a layer goes where it goes";
    for (int i = 0; i < 5; ++i)
        press(dialog, "wrapAdd");
    EXPECT_EQ(list->count(), 4) << "four layers are the most";
    for (int i = 0; i < 5; ++i)
        press(dialog, "wrapRemove");
    press(dialog, "bindingDialogOk");
    EXPECT_EQ(dialog.result(), QDialog::Accepted);
    EXPECT_TRUE(dialog.binding().wraps.empty());
}

TEST(BindingDialogTest, RefusesALayerThatIsNotShown) {
    Binding binding;
    binding.wraps = {Wrap{}, Wrap{}};
    BindingDialog dialog(binding, Units{});
    show(dialog);
    for (QLineEdit* each : dialog.findChildren<QLineEdit*>(QStringLiteral("wrapOverlap")))
        if (each->isVisible())
            type(each, QStringLiteral("120"));
    child<QListWidget>(dialog, "wrapList")->setCurrentRow(1);
    press(dialog, "bindingDialogOk");
    EXPECT_TRUE(dialog.isVisible());
    EXPECT_EQ(dialog.notice(),
              QStringLiteral("Layer 1, Overlap of the turns, %: 120 is too large: from 0 to 95 is possible."));
    EXPECT_EQ(child<QListWidget>(dialog, "wrapList")->currentRow(), 0) << "its layer is brought into sight";
}

} // namespace
} // namespace stemwright

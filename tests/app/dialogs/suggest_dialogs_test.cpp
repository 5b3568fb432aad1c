#include "app/dialogs/heights_dialog.h"
#include "app/dialogs/start_dialog.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QLabel>
#include <QPushButton>
#include <QSpinBox>
#include <QtTest>

namespace stemwright {
namespace {

/// Four alike stems without tiers, 40 small leaves and 24 broad ones.
Plan bare() {
    Plan plan = test::smallBoard();
    Stem stem = plan.stems[2];
    plan.stems.clear();
    for (std::uint32_t i = 1; i <= 4; ++i) {
        stem.id = StemId{i};
        plan.stems.push_back(stem);
    }
    const int stock[] = {16, 12, 12};
    for (std::size_t m = 0; m < 3; ++m) {
        plan.kinds[0].stock[m] = {plan.kinds[0].stock[m].mix, stock[m], 0, ""};
        plan.kinds[1].stock[m] = {plan.kinds[1].stock[m].mix, 8, 0, ""};
    }
    return plan;
}

template <class Dialog> class Shown {
public:
    explicit Shown(const Plan& plan) : dialog(plan) {
        dialog.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&dialog));
        dialog.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&dialog));
    }
    Dialog dialog;

    QWidget* focused() { return QApplication::focusWidget(); }
    void tabTo(const char* name) {
        for (int i = 0; i < 60; ++i) {
            if (focused() && focused()->objectName() == QLatin1String(name))
                return;
            QTest::keyClick(focused(), Qt::Key_Tab);
        }
        FAIL() << name << " is not reached by Tab";
    }
    /// Types a number in place of the one that stands in the field.
    void type(const char* name, const char* number) {
        tabTo(name);
        QTest::keyClick(focused(), Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(focused(), QLatin1String(number));
    }
    QString label(const char* name) {
        auto* found = dialog.template findChild<QLabel*>(QLatin1String(name));
        EXPECT_TRUE(found) << name;
        return found ? found->text() : QString();
    }
};

TEST(HeightsDialog, BeginsWithRangesThatCanBeMet) {
    Shown<HeightsDialog> shown(bare());
    EXPECT_EQ(shown.dialog.options().ranges.size(), 2u);
    EXPECT_TRUE(heights(bare(), shown.dialog.options()));
    EXPECT_EQ(shown.label("heightsState"), QStringLiteral("These ranges can be met."));
    EXPECT_EQ(shown.label("heightsOutlook1"), QStringLiteral("all 40 find a place"));
    EXPECT_TRUE(shown.dialog.fills());
}

TEST(HeightsDialog, SaysWhileItIsTypedWhatCannotBeMet) {
    Shown<HeightsDialog> shown(bare());
    shown.type("heightsLeast1", "14");
    EXPECT_TRUE(shown.label("heightsState").contains(QStringLiteral("56")))
        << shown.label("heightsState").toStdString();
    EXPECT_TRUE(shown.label("heightsState").contains(QStringLiteral("16 too few")));
    EXPECT_TRUE(shown.label("heightsOutlook1").isEmpty());
    // It does not close, and says why once more where the eye is.
    QTest::keyClick(shown.focused(), Qt::Key_Return);
    EXPECT_TRUE(shown.dialog.isVisible());
    EXPECT_FALSE(shown.dialog.notice().isEmpty());
    shown.type("heightsLeast1", "6");
    EXPECT_EQ(shown.label("heightsState"), QStringLiteral("These ranges can be met."));
    EXPECT_TRUE(shown.dialog.notice().isEmpty());
}

TEST(HeightsDialog, IsFilledInByKeysOnly) {
    Shown<HeightsDialog> shown(bare());
    shown.type("heightsLeast1", "6");
    shown.type("heightsMost1", "14");
    shown.type("heightsRest1", "4");
    EXPECT_EQ(shown.label("heightsOutlook1"), QStringLiteral("36 of 40 find a place"));
    shown.tabTo("heightsVaries2");
    QTest::keyClick(shown.focused(), Qt::Key_Space);
    shown.type("heightsDifference", "5 mm");
    shown.tabTo("heightsFill");
    QTest::keyClick(shown.focused(), Qt::Key_Space);
    QTest::keyClick(shown.focused(), Qt::Key_Return);
    ASSERT_EQ(shown.dialog.result(), QDialog::Accepted) << shown.dialog.notice().toStdString();
    const HeightsOptions options = shown.dialog.options();
    ASSERT_EQ(options.ranges.size(), 1u);
    EXPECT_EQ(options.ranges[0].least, 6);
    EXPECT_EQ(options.ranges[0].most, 14);
    EXPECT_EQ(options.ranges[0].rest, 4);
    EXPECT_EQ(options.difference, millimetres(5));
    EXPECT_FALSE(shown.dialog.fills());
}

TEST(StartDialog, FollowsTheNumberOfStemsUntilSheSetsHerOwnRanges) {
    Plan plan = bare();
    plan.stems.clear();
    Shown<StartDialog> shown(plan);
    shown.type("startStems", "5");
    const StartOptions five = shown.dialog.options();
    EXPECT_EQ(five.stems, 5);
    EXPECT_TRUE(startMeOff(plan, five));
    shown.type("startStems", "10");
    EXPECT_LT(shown.dialog.options().heights.ranges[0].most, five.heights.ranges[0].most);
    EXPECT_EQ(shown.label("startState"), QStringLiteral("These ranges can be met."));
    shown.type("startMost1", "20");
    shown.type("startLeast1", "8");
    EXPECT_TRUE(shown.label("startState").contains(QStringLiteral("80")))
        << shown.label("startState").toStdString();
    shown.type("startStems", "4");
    EXPECT_EQ(shown.dialog.options().heights.ranges[0].least, 8) << "her own range stays";
    EXPECT_TRUE(shown.label("startState").contains(QStringLiteral("met")) ||
                shown.label("startState").contains(QStringLiteral("do")));
}

TEST(StartDialog, MakesABoardByKeysOnly) {
    Plan plan = bare();
    plan.stems.clear();
    Shown<StartDialog> shown(plan);
    shown.type("startStems", "4");
    shown.tabTo("startPairs");
    QTest::keyClick(shown.focused(), Qt::Key_Return);
    ASSERT_EQ(shown.dialog.result(), QDialog::Accepted) << shown.dialog.notice().toStdString();
    const auto found = startMeOff(plan, shown.dialog.options());
    ASSERT_TRUE(found);
    const Plan after = taken(plan, found.value());
    EXPECT_EQ(after.stems.size(), 4u);
    EXPECT_EQ(figures(after).pot.leaves, 64);
}

TEST(StartDialog, NeverHasFewerStemsThanThePlan) {
    Shown<StartDialog> shown(bare());
    shown.type("startStems", "2");
    EXPECT_GE(shown.dialog.options().stems, 4);
}

} // namespace
} // namespace stemwright

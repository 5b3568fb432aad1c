#include "app/explanations.h"

#include "app/board/card_tips.h"
#include "app/explanation_dialog.h"
#include "app/main_window.h"
#include "app/messages.h"
#include "app/session.h"
#include "core/quantity/gauge.h"
#include "tests/support/boards.h"

#include <QAction>
#include <QTest>
#include <QTextBrowser>
#include <QTimer>
#include <QTreeWidget>

#include <gtest/gtest.h>

#include <set>

namespace stemwright {
namespace {

struct Explained {
    Plan plan = test::smallBoard();
    Figures all = figures(plan);
    Supplies needs = supplies(plan, all);
};

TEST(Explanations, EveryFigureHasANameAFormulaAndItsSourcesInWords) {
    const Explained of;
    std::set<QString> names;
    for (const FigureName figure : allFigures()) {
        EXPECT_FALSE(figureName(figure).isEmpty());
        EXPECT_TRUE(names.insert(figureName(figure)).second) << figureName(figure).toStdString();
        EXPECT_GE(formulaText(figure).size(), 20) << figureName(figure).toStdString();
        for (const SourceName source : explain(of.plan, of.all, of.needs, {figure, 0, 0}).sources)
            EXPECT_FALSE(sourceText(source).isEmpty());
    }
    for (int term = 0; term <= static_cast<int>(Term::beadsUnweighed); ++term)
        EXPECT_FALSE(termText(static_cast<Term>(term)).isEmpty()) << term;
}

TEST(Explanations, EveryShownFigureHasAValueAndSaysFormulaNumbersAndSource) {
    const Explained of;
    std::vector<FigureRef> refs = figuresOfStem(of.all, 0);
    for (const FigureRef ref : figuresOfPot(of.plan, of.all))
        refs.push_back(ref);
    for (const FigureRef ref : figuresOfSupplies(of.needs))
        refs.push_back(ref);
    ASSERT_GT(refs.size(), 45u);
    for (const FigureRef ref : refs) {
        EXPECT_FALSE(figureValue(of.plan, of.all, of.needs, ref).isEmpty())
            << figureName(ref.figure).toStdString();
        const QString said = explanationText(explain(of.plan, of.all, of.needs, ref), of.plan.units);
        EXPECT_TRUE(said.startsWith(formulaText(ref.figure)));
        EXPECT_TRUE(said.contains(QStringLiteral("Source: ")));
        EXPECT_GE(said.count(QLatin1Char('\n')), 2) << said.toStdString();
    }
}

TEST(Explanations, FollowTheUnitChosen) {
    Explained of;
    const Explanation height = explain(of.plan, of.all, of.needs, {FigureName::height, 0, 0});
    EXPECT_TRUE(explanationText(height, of.plan.units).contains(QStringLiteral("tail: 30 mm")));
    of.plan.units = {LengthUnit::inch, MassUnit::ounce, ""};
    EXPECT_TRUE(explanationText(height, of.plan.units).contains(QStringLiteral("tail: 1 3/16 in")));
}

TEST(Explanations, HoldIsAPlainSentenceThatItIsAnEstimate) {
    HoldFigures hold;
    hold.moment = 10;
    std::set<QString> said;
    for (const double ratio : {2.5, 1.5, 0.8, 0.3}) {
        hold.hold = ratio;
        said.insert(holdText(hold));
        EXPECT_TRUE(holdText(hold).contains(QStringLiteral("estimate"), Qt::CaseInsensitive));
    }
    EXPECT_EQ(said.size(), 4u);
}

TEST(Explanations, ACardsLinesAreItsFiguresFromTheTopDown) {
    const QRectF card(100, 500, 120, 112);
    const auto at = [&](double part, std::size_t wraps) {
        return cardFigureAt(card, {150, 500 + 112 * part}, 3, wraps).figure;
    };
    EXPECT_EQ(at(0.1, 1), FigureName::height);
    EXPECT_EQ(at(0.35, 1), FigureName::unevenness);
    EXPECT_EQ(at(0.55, 1), FigureName::drift);
    EXPECT_EQ(at(0.75, 1), FigureName::wrapToCut);
    EXPECT_EQ(at(0.75, 0), FigureName::leafWire);
    EXPECT_EQ(cardFigureAt(card, {150, 605}, 3, 2), (FigureRef{FigureName::wrapToCut, 3, 1}));
}

TEST(Explanations, TheKeyOpensEveryFigureAndTheArrowsWalkThem) {
    MainWindow window(test::smallBoard());
    window.show();
    int seen = 0;
    QString first, second;
    QTimer::singleShot(0, [&] {
        auto* dialog = window.findChild<ExplanationDialog*>();
        ASSERT_TRUE(dialog);
        auto* tree = dialog->findChild<QTreeWidget*>(QStringLiteral("explainedFigures"));
        auto* text = dialog->findChild<QTextBrowser*>(QStringLiteral("explanation"));
        seen = tree->topLevelItemCount();
        first = text->toPlainText();
        QTest::keyClick(tree, Qt::Key_Down);
        second = text->toPlainText();
        QTest::keyClick(dialog, Qt::Key_Escape);
    });
    window.findChild<QAction*>(QStringLiteral("explain"))->trigger();
    EXPECT_EQ(seen, 3 + 2) << "three stems, the pot and the supplies";
    EXPECT_TRUE(first.startsWith(QStringLiteral("Height: "))) << first.toStdString();
    EXPECT_TRUE(second.startsWith(QStringLiteral("Tiers: "))) << second.toStdString();
}

TEST(Sayings, AGaugeForMillimetresSaysWhatWasProbablyMeant) {
    const QString said = sentence({ProblemCode::gaugeForMillimetres, "kinds[0].wire_diameter_mm", {"28"}});
    for (const char* word : {"gauge 28 was probably meant", "0.32 mm in AWG", "0.38 mm in SWG", "0.41 mm"})
        EXPECT_TRUE(said.contains(QString::fromLatin1(word))) << said.toStdString();
}

TEST(Sayings, EveryFaultOfAPatternHasItsSentence) {
    EXPECT_TRUE(faultText(MakeFault::none, 5).isEmpty());
    EXPECT_FALSE(faultText(MakeFault::noBeads, 0).isEmpty());
    EXPECT_TRUE(faultText(MakeFault::evenRows, 6).contains(QStringLiteral("5 or 7 was probably meant")));
    EXPECT_FALSE(faultText(MakeFault::longBead, 5).isEmpty());
}

TEST(Sayings, FindingsFollowTheUnitChosen) {
    Plan plan = test::smallBoard();
    const Finding twins{FindingCode::nearTwins, StemId{1}, -1, -1, {"Stem 2", "2.0"}};
    EXPECT_TRUE(words(plan, twins).detail.contains(QStringLiteral("2 mm")));
    plan.units.length = LengthUnit::inch;
    EXPECT_TRUE(words(plan, twins).detail.contains(QStringLiteral("1/16 in")));
}

TEST(Sayings, AThreadThatRunsOutSaysWhereAndHowMany) {
    const Plan plan = test::smallBoard();
    const FindingWords said =
        words(plan, {FindingCode::threadRunsOut, StemId{1}, 1, -1, {"1", "900.0", "600.0", "2"}});
    EXPECT_TRUE(said.title.contains(QStringLiteral("floss"))) << said.title.toStdString();
    for (const char* word : {"tier 2", "900 mm", "600 mm", "2 are needed"})
        EXPECT_TRUE(said.detail.contains(QString::fromLatin1(word))) << said.detail.toStdString();
}

TEST(Sayings, BeadsThatNobodyWeighedAreSaidWithTheirKindAndSize) {
    const Plan plan = test::smallBoard();
    for (const char* own : {"", "own"}) {
        const FindingWords said =
            words(plan, {FindingCode::beadsUnweighed, StemId{1}, 0, 0, {"Small", "99/0", own}});
        EXPECT_TRUE(said.title.contains(QStringLiteral("Small")));
        EXPECT_TRUE(said.detail.contains(QStringLiteral("“99/0”"))) << said.detail.toStdString();
        EXPECT_TRUE(said.detail.contains(QStringLiteral("safer than they are")));
        EXPECT_EQ(said.detail.contains(QStringLiteral("No table")), *own == '\0');
    }
}

TEST(Explanations, WhatLeavesBeadsOutSaysWhich) {
    Explained of;
    of.plan.kinds[0].beadSize = "99/0";
    of.all = figures(of.plan);
    const QString said =
        explanationText(explain(of.plan, of.all, of.needs, {FigureName::hold, 0, 0}), of.plan.units);
    EXPECT_TRUE(said.contains(QStringLiteral("nobody knows their weight"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("Small, 99/0"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("240")));
}

TEST(Sayings, APlantThatTipsSaysWhatMendsIt) {
    const Plan plan = test::smallBoard();
    EXPECT_TRUE(words(plan, {FindingCode::plantTips, {}, -1, -1, {"6.0", "120"}})
                    .detail.contains(QStringLiteral("120 g")));
    EXPECT_TRUE(words(plan, {FindingCode::plantTips, {}, -1, -1, {"0.0", "300"}})
                    .title.contains(QStringLiteral("falls by itself")));
}

} // namespace
} // namespace stemwright

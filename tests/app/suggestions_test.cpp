#include "app/suggestions.h"

#include "app/panels/offer_panel.h"
#include "app/session.h"
#include "app/wording.h"
#include "core/figures/standings.h"
#include "tests/support/boards.h"

#include <QHeaderView>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>
#include <QTest>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <thread>

namespace stemwright {
namespace {

class SuggestionsTest : public ::testing::Test {
protected:
    SuggestionsTest()
        : session(test::randomBoard(11, 6, 8, 4)), suggestions(session), panel(session, suggestions) {
        panel.show();
    }
    bool waitForOffer() {
        return QTest::qWaitFor([this] { return session.offer().has_value(); }, 10'000);
    }
    template <class Widget> Widget* child(const char* name) {
        return panel.findChild<Widget*>(QLatin1String(name));
    }

    /// A search that goes on until it is stopped, and then says that one swap is the best so far.
    static Suggestions::Search endless() {
        return [](const Plan&, const Search& search) -> Result<Suggestion> {
            while (!search.stop.stop_requested()) {
                search.progress({12, 3, 1});
                std::this_thread::sleep_for(std::chrono::milliseconds(5));
            }
            Suggestion found;
            found.edits.edits = {SwapSlots{{StemId{1}, 0, 0}, {StemId{2}, 1, 0}}};
            found.proved = false;
            found.stopped = true;
            return found;
        };
    }

    Session session;
    Suggestions suggestions;
    OfferPanel panel;
};

TEST_F(SuggestionsTest, SpreadingIsOfferedAndTakenAsOneUndo) {
    const Plan before = session.plan();
    const double uneven = session.figures().pot.unevenness;
    suggestions.spreadColours(false);
    ASSERT_TRUE(waitForOffer());
    EXPECT_EQ(session.plan(), before) << "nothing changes before it is taken";
    EXPECT_TRUE(child<QLabel>("offerFigures")->text().contains(QStringLiteral("Proved")));
    const double promised = session.offer()->suggestion->after;
    QTest::mouseClick(child<QPushButton>("takeOffer"), Qt::LeftButton);
    EXPECT_NEAR(session.figures().pot.unevenness, promised, 1e-9);
    EXPECT_LE(promised, uneven + 1e-9);
    session.undo();
    EXPECT_EQ(session.plan(), before);
}

TEST_F(SuggestionsTest, ASecondSpreadSaysThatNothingIsBetter) {
    suggestions.spreadColours(false);
    ASSERT_TRUE(waitForOffer());
    session.takeOffer();
    QSignalSpy said(&suggestions, &Suggestions::said);
    suggestions.spreadColours(false);
    ASSERT_TRUE(said.wait(10'000));
    EXPECT_FALSE(session.offer());
}

TEST_F(SuggestionsTest, DroppingChangesNothing) {
    const Plan before = session.plan();
    suggestions.shuffle();
    ASSERT_TRUE(waitForOffer());
    QTest::mouseClick(child<QPushButton>("dropOffer"), Qt::LeftButton);
    EXPECT_FALSE(session.offer());
    EXPECT_EQ(session.plan(), before);
    EXPECT_FALSE(child<QPushButton>("takeOffer")->isVisible());
}

TEST_F(SuggestionsTest, AStopKeepsTheBestSoFar) {
    suggestions.look(QStringLiteral("Search"), endless());
    auto* stop = child<QPushButton>("stopLooking");
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return child<QLabel>("offerTitle")->text().contains(QStringLiteral("12")); }, 5000));
    ASSERT_TRUE(stop->isVisible());
    QTest::mouseClick(stop, Qt::LeftButton);
    ASSERT_TRUE(waitForOffer());
    EXPECT_TRUE(session.offer()->figures.contains(QStringLiteral("Not proved")));
}

TEST_F(SuggestionsTest, AnEditMeanwhileEndsTheSearch) {
    suggestions.look(QStringLiteral("Search"), endless());
    ASSERT_TRUE(session.make(CloseTier{StemId{1}, 0}));
    EXPECT_FALSE(suggestions.looking());
    QTest::qWait(50);
    EXPECT_FALSE(session.offer()) << "an answer to another plan is no answer";
    EXPECT_FALSE(child<QPushButton>("takeOffer")->isVisible());
}

TEST_F(SuggestionsTest, ItCanBeTakenForOneStem) {
    const Plan before = session.plan();
    suggestions.spreadColours(false);
    ASSERT_TRUE(waitForOffer());
    const Plan whole = taken(before, *session.offer()->suggestion);
    auto* button = child<QPushButton>("takeForStem");
    ASSERT_TRUE(button->isVisible());
    Q_EMIT button->menu()->aboutToShow();
    ASSERT_FALSE(button->menu()->actions().isEmpty());
    QAction* first = button->menu()->actions().front();
    const auto stem = std::find_if(before.stems.begin(), before.stems.end(), [&](const Stem& each) {
        return QString::fromStdString(each.name) == first->text();
    });
    ASSERT_NE(stem, before.stems.end());
    // The menu is gone through by keys.
    button->menu()->popup(QPoint(0, 0));
    QTest::keyClick(button->menu(), Qt::Key_Down);
    QTest::keyClick(button->menu(), Qt::Key_Return);
    EXPECT_EQ(find(session.plan(), stem->id)->tiers, find(whole, stem->id)->tiers);
    EXPECT_FALSE(session.offer());
    session.undo();
    EXPECT_EQ(session.plan(), before);
}

TEST_F(SuggestionsTest, ItsFiguresAreSaidByStem) {
    suggestions.spreadColours(false);
    ASSERT_TRUE(waitForOffer());
    const Plan after = taken(session.plan(), *session.offer()->suggestion);
    const Figures then = figures(after);
    auto* table = child<QTableWidget>("offerStems");
    ASSERT_TRUE(table->isVisible());
    int changed = 0;
    for (const Stem& stem : session.plan().stems)
        changed += !(stem == *find(after, stem.id));
    ASSERT_EQ(table->rowCount(), changed);
    for (int row = 0; row < table->rowCount(); ++row) {
        const StemId id{table->item(row, 0)->data(Qt::UserRole).toUInt()};
        const auto at = std::find_if(then.stems.begin(), then.stems.end(),
                                     [&](const StemFigures& stem) { return stem.stem == id; });
        EXPECT_TRUE(table->item(row, 1)->text().endsWith(driftText(at->drift)));
        EXPECT_TRUE(table->item(row, 2)->text().endsWith(shareText(at->unevenness)));
    }
    QSignalSpy chosen(&panel, &OfferPanel::stemChosen);
    QTest::keyClick(table, Qt::Key_Down);
    EXPECT_GE(chosen.size(), 1);
}

TEST_F(SuggestionsTest, HeightsAndAStartAreOfferedLikeTheOthers) {
    HeightsOptions options;
    options.ranges = usualRanges(session.plan(), static_cast<int>(session.plan().stems.size()));
    for (KindRange& range : options.ranges)
        range.most += 20;
    suggestions.varyHeights(options, true, true);
    ASSERT_TRUE(waitForOffer());
    EXPECT_TRUE(child<QWidget>("offerPicture")->isVisible())
        << "tiers come and go, so the whole board is shown";
    const Plan before = session.plan();
    session.takeOffer();
    EXPECT_FALSE(firstProblem(session.plan()));
    session.undo();
    EXPECT_EQ(session.plan(), before);
    StartOptions start;
    start.stems = 8;
    start.form = startForm(before, "Stem");
    start.heights.ranges = usualRanges(before, 8);
    for (KindRange& range : start.heights.ranges)
        range.least = 0, range.most += 20;
    suggestions.startMeOff(start);
    ASSERT_TRUE(waitForOffer());
    QTest::mouseClick(child<QPushButton>("takeOffer"), Qt::LeftButton);
    EXPECT_EQ(session.plan().stems.size(), 8u);
}

TEST_F(SuggestionsTest, AnEmptyBoardIsShownItsNextStep) {
    Plan plan = session.plan();
    for (Stem& stem : plan.stems)
        for (Tier& tier : stem.tiers)
            for (Slot& slot : tier.slots)
                slot.leaf.mix = {}, slot.pinned = false;
    session.open(plan, {});
    auto* step = child<QPushButton>("firstStep");
    ASSERT_TRUE(step->isVisible());
    EXPECT_TRUE(step->text().contains(QStringLiteral("over the stems")));
    QTest::mouseClick(step, Qt::LeftButton);
    ASSERT_TRUE(waitForOffer());
    EXPECT_FALSE(step->isVisible());
    session.takeOffer();
    EXPECT_FALSE(step->isVisible());
    EXPECT_GT(session.figures().pot.leaves, 20);
    plan.stems.clear();
    session.open(plan, {});
    ASSERT_TRUE(step->isVisible());
    QSignalSpy start(&panel, &OfferPanel::startWanted);
    QTest::mouseClick(step, Qt::LeftButton);
    EXPECT_EQ(start.size(), 1);
}

TEST_F(SuggestionsTest, AFreshBoardIsFilledInMatchedPairs) {
    Plan plan = session.plan();
    for (Stem& stem : plan.stems)
        for (Tier& tier : stem.tiers)
            for (Slot& slot : tier.slots)
                slot.leaf.mix = {}, slot.pinned = false;
    for (Kind& kind : plan.kinds)
        for (StockLine& line : kind.stock)
            line.made = 40, line.toMake = 0;
    session.open(plan, {});
    suggestions.spreadColours(false);
    ASSERT_TRUE(waitForOffer());
    EXPECT_EQ(session.offer()->suggestion->unmatchedAfter, 0);
}

TEST_F(SuggestionsTest, AProblemIsSaid) {
    QSignalSpy said(&suggestions, &Suggestions::said);
    suggestions.look(QStringLiteral("Search"), [](const Plan&, const Search&) -> Result<Suggestion> {
        return Problem{ProblemCode::tooMany, "", {"9", "8"}};
    });
    ASSERT_TRUE(said.wait(5000));
    EXPECT_TRUE(said[0][0].toString().contains(QStringLiteral("too many")));
}

TEST_F(SuggestionsTest, PlacesInThePotSayWhereFromAndWhereTo) {
    const std::vector<PlaceMm> before = standings(session.plan());
    suggestions.placeInPot();
    ASSERT_TRUE(waitForOffer());
    auto* table = child<QTableWidget>("offerStems");
    ASSERT_EQ(table->columnCount(), 3);
    EXPECT_EQ(table->horizontalHeaderItem(1)->text(), QStringLiteral("From, mm"));
    Plan after = session.plan();
    ASSERT_TRUE(apply(after, session.offer()->edit));
    const std::vector<PlaceMm> to = standings(after);
    int moved = 0;
    for (std::size_t i = 0; i < before.size(); ++i)
        moved += std::hypot(before[i].x - to[i].x, before[i].y - to[i].y) > 0.05;
    EXPECT_GT(moved, 0);
    EXPECT_EQ(table->rowCount(), moved);
    for (int row = 0; row < table->rowCount(); ++row) {
        const StemId stem{table->item(row, 0)->data(Qt::UserRole).toUInt()};
        const auto at = static_cast<std::size_t>(find(after, stem) - after.stems.data());
        const QString across = QStringLiteral("%1 %2")
                                   .arg(to[at].x < 0 ? QStringLiteral("left") : QStringLiteral("right"))
                                   .arg(std::lround(std::abs(to[at].x)));
        EXPECT_TRUE(table->item(row, 2)->text().startsWith(across))
            << table->item(row, 2)->text().toStdString();
        EXPECT_NE(table->item(row, 1)->text(), table->item(row, 2)->text());
    }
    EXPECT_FALSE(child<QPushButton>("takeForStem")->isVisible()) << "one alone would stand on another";
    EXPECT_FALSE(child<QPushButton>("compareOffer")->isVisible()) << "the boards are alike";
    EXPECT_TRUE(child<QPushButton>("takeOffer")->isVisible());
}

} // namespace
} // namespace stemwright

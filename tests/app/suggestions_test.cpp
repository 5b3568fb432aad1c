#include "app/suggestions.h"

#include "app/panels/offer_panel.h"
#include "app/session.h"
#include "tests/support/boards.h"

#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

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
    EXPECT_FALSE(panel.isVisible());
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
    EXPECT_FALSE(panel.isVisible());
}

TEST_F(SuggestionsTest, AProblemIsSaid) {
    QSignalSpy said(&suggestions, &Suggestions::said);
    suggestions.look(QStringLiteral("Search"), [](const Plan&, const Search&) -> Result<Suggestion> {
        return Problem{ProblemCode::tooMany, "", {"9", "8"}};
    });
    ASSERT_TRUE(said.wait(5000));
    EXPECT_TRUE(said[0][0].toString().contains(QStringLiteral("too many")));
}

} // namespace
} // namespace stemwright

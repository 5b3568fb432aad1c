#include "app/status_line.h"

#include "app/best_standing.h"
#include "app/session.h"
#include "app/wording.h"
#include "core/suggest/spread.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QToolButton>
#include <QtTest>

namespace stemwright {
namespace {

Best exact(const Plan& plan) {
    SpreadOptions options;
    options.trayUse = TrayUse::keep;
    const Suggestion found = spread(plan, options).value();
    return {found.after, found.bound, found.proved, figures(taken(plan, found)).pot.drift};
}

TEST(StatusLine, SaysDriftAndUnevennessNowAndTheLeastAfterEveryEdit) {
    // The tray stays out of it, so that the few steps are enough to prove the least.
    Plan plan = test::largeBoard(12, 24);
    Session session(plan);
    StatusLine line(session);
    auto* label = line.findChild<QLabel*>(QStringLiteral("potDrift"));
    ASSERT_TRUE(label);
    const auto expectSaid = [&] {
        const Best best = exact(session.plan());
        const PotFigures& pot = session.figures().pot;
        for (const QString& figure : {driftText(pot.drift), shareText(pot.unevenness), driftText(best.drift),
                                      shareText(best.unevenness)})
            EXPECT_TRUE(label->text().contains(figure))
                << figure.toStdString() << " in " << label->text().toStdString();
        EXPECT_TRUE(best.proved);
    };
    expectSaid();
    ASSERT_TRUE(
        session.make(SwapSlots{{session.plan().stems[0].id, 0, 0}, {session.plan().stems[5].id, 3, 0}}));
    expectSaid();
    const Best best = exact(session.plan());
    SpreadOptions options;
    options.trayUse = TrayUse::keep;
    ASSERT_TRUE(session.make(spread(session.plan(), options).value().edits));
    EXPECT_TRUE(label->text().contains(QStringLiteral("the least unevenness these leaves allow")))
        << label->text().toStdString();
    EXPECT_NEAR(session.figures().pot.unevenness, best.unevenness, 1e-9);
}

TEST(StatusLine, WorksOutALargeBoardBesideTheWindow) {
    Session session(test::largeBoard(60, 20));
    BestStanding standing(session);
    ASSERT_GT(session.figures().pot.slots, BestStanding::atOnce);
    EXPECT_FALSE(standing.best());
    // Edits that come meanwhile are answered for the plan as it is in the end.
    for (int i = 0; i < 5; ++i)
        ASSERT_TRUE(session.make(CloseTier{session.plan().stems[static_cast<std::size_t>(i)].id, 0}));
    EXPECT_FALSE(standing.best());
    ASSERT_TRUE(QTest::qWaitFor([&] { return standing.best().has_value(); }, 30'000));
    EXPECT_NEAR(standing.best()->unevenness, bestOf(session.plan()).unevenness, 1e-9);
}

TEST(StatusLine, GivesUpHeightsAndCountsBeforeItCutsTheStanding) {
    Session session(test::largeBoard(12, 24));
    StatusLine line(session);
    const auto label = [&](const char* name) { return line.findChild<QLabel*>(QLatin1String(name)); };
    const auto whole = [](const QLabel* said) { return said->width() >= said->sizeHint().width(); };
    line.show();
    for (const int width : {1900, 1280, 1000, 800, 640}) {
        line.resize(width, line.sizeHint().height());
        QTest::qWait(1);
        for (const char* name : {"potDrift", "placed", "heights"})
            EXPECT_TRUE(!label(name)->isVisible() || whole(label(name))) << name << " at " << width;
        EXPECT_TRUE(label("potDrift")->isVisible());
        EXPECT_LE(label("heights")->isVisible(), label("placed")->isVisible());
    }
    // A sentence that there is no room for ends in dots, and the units keep theirs.
    line.resize(1000, line.height());
    line.hint(QStringLiteral("wind ").repeated(60));
    QTest::qWait(1);
    EXPECT_TRUE(label("hint")->text().endsWith(QChar(0x2026)));
    EXPECT_TRUE(whole(label("hint")));
    const auto* units = line.findChild<QToolButton*>(QStringLiteral("units"));
    EXPECT_GE(units->width(), units->sizeHint().width());
    line.hint({});
    EXPECT_FALSE(label("heights")->isVisible());
    line.resize(1900, line.height());
    EXPECT_TRUE(label("heights")->isVisible());
}

} // namespace
} // namespace stemwright

// A real process that binds through the window and is killed in the middle, without a chance to say goodbye.
#include "app/bind/bind_place.h"
#include "app/file_store.h"
#include "app/main_window.h"
#include "app/recovery.h"
#include "app/session.h"
#include "app/settings.h"
#include "core/figures/binding_steps.h"
#include "tests/support/boards.h"

#include <QDir>
#include <QProcess>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <cstdio>

namespace stemwright {
namespace {

constexpr char planKey[] = "STEMWRIGHT_TEST_PLAN"; ///< where the child finds its plan; empty for none

Plan longStem() {
    Plan plan = test::smallBoard();
    plan.binding.wraps = {Wrap{}};
    Tier tier;
    tier.slots.resize(2);
    for (Slot& slot : tier.slots)
        slot.leaf = {plan.kinds[0].id, plan.kinds[0].stock[0].mix};
    plan.stems[0].tiers.assign(600, tier);
    plan.stems.resize(1);
    plan.kinds[0].stock[0].made = 1200;
    return plan;
}

std::size_t stepsDone(const Plan& plan) {
    return stepNow(plan.stems[0], bindingSteps(plan, plan.stems[0]));
}

/// What the child process does until it is killed: a press of the space bar, and a line for it.
TEST(BindKillChild, DISABLED_Child) {
    const QString path = qEnvironmentVariable(planKey);
    FileMark mark;
    std::optional<Plan> plan = path.isEmpty() ? longStem() : readPlan(path, nullptr, &mark);
    ASSERT_TRUE(plan);
    MainWindow window(*plan);
    if (!path.isEmpty())
        window.adoptFile(path, mark);
    window.show();
    window.showPlaceNamed(QStringLiteral("bind"));
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    auto* place = window.findChild<BindPlace*>();
    ASSERT_TRUE(place);
    for (int i = 1; i < 600; ++i) {
        QTest::keyClick(place, Qt::Key_Space);
        std::printf("step %d\n", i);
        std::fflush(stdout);
    }
}

class BindKill : public ::testing::Test {
protected:
    /// Runs the child until it has said so many steps, kills it, and gives the steps that it said.
    std::size_t killAfter(std::size_t steps, const QString& path) {
        QProcess child;
        QProcessEnvironment around = QProcessEnvironment::systemEnvironment();
        around.insert(QLatin1String(planKey), path);
        around.insert(QStringLiteral("HOME"), folder.path());
        child.setProcessEnvironment(around);
        child.start(QCoreApplication::applicationFilePath(),
                    {QStringLiteral("--gtest_also_run_disabled_tests"),
                     QStringLiteral("--gtest_filter=BindKillChild.DISABLED_Child")});
        QByteArray said;
        while (static_cast<std::size_t>(said.count("step ")) < steps && child.waitForReadyRead(60'000))
            said += child.readAllStandardOutput();
        child.kill();
        EXPECT_TRUE(child.waitForFinished(30'000));
        said += child.readAllStandardOutput();
        return static_cast<std::size_t>(said.count("step "));
    }

    /// Where the child keeps its journals: as app/settings.h says, in its own home.
    QString journals() const {
        const QString own = settings::recoveryFolder();
        return folder.path() + own.mid(QDir::homePath().size());
    }

    QTemporaryDir folder;
};

TEST_F(BindKill, NothingThatWasMarkedIsLost) {
    const QString path = folder.filePath(QStringLiteral("plan.stemplan"));
    Plan plan = longStem();
    ASSERT_TRUE(writePlan(plan, path, nullptr));
    std::size_t before = 0;
    for (const std::size_t steps : {1u, 7u, 4u, 13u}) {
        const std::size_t said = killAfter(steps, path);
        EXPECT_GE(said, steps);
        QString why;
        const std::optional<Plan> after = readPlan(path, &why);
        ASSERT_TRUE(after) << why.toStdString();
        const std::size_t done = stepsDone(*after);
        EXPECT_GE(done, before + said) << "a step that was on the screen is not in the file";
        EXPECT_LE(done, before + said + 1);
        before = done;
        // Nothing but progress has changed.
        Plan bare = *after;
        bare.stems[0].bench = {};
        for (Tier& tier : bare.stems[0].tiers)
            tier.progress = {};
        EXPECT_EQ(bare, plan);
    }
}

TEST_F(BindKill, APlanWithoutAFileComesBackFromItsJournal) {
    const std::size_t said = killAfter(9, {});
    ASSERT_GE(said, 9u);
    const std::vector<LeftBehind> left = Recovery::found(journals());
    ASSERT_EQ(left.size(), 1u);
    EXPECT_TRUE(left[0].path.isEmpty());
    EXPECT_GE(stepsDone(left[0].plan), said);
    EXPECT_LE(stepsDone(left[0].plan), said + 1);
}

} // namespace
} // namespace stemwright

#include "app/recovery.h"

#include "app/ask.h"
#include "app/file_store.h"
#include "app/main_window.h"
#include "app/session.h"
#include "app/settings.h"
#include "tests/support/boards.h"

#include <QCoreApplication>
#include <QDir>
#include <QProcess>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <iostream>

namespace stemwright {
namespace {

constexpr const char* childFolder = "STEMWRIGHT_TEST_RECOVERY";

class RecoveryTest : public ::testing::Test {
protected:
    QString inside() const { return folder.filePath(QStringLiteral("recovery")); }
    QStringList journals() const {
        return QDir(inside()).entryList({QStringLiteral("*.journal")}, QDir::Files);
    }
    static QByteArray digest() { return QByteArray::fromHex("c0ffee"); }

    QTemporaryDir folder;
    Session session{test::smallBoard()};
};

/// Not a test of its own: what RecoveryTest.AKillLosesNothing starts, and kills.
TEST(RecoveryChild, DISABLED_EditsAndWaits) {
    Session session(test::smallBoard());
    Recovery recovery(session, qEnvironmentVariable(childFolder), [] { return QByteArray(); });
    ASSERT_TRUE(session.make(TurnTier{StemId{1}, 0, degrees(45)}));
    ASSERT_TRUE(session.make(CloseTier{StemId{1}, 1}));
    session.undo();
    ASSERT_TRUE(session.make(CloseTier{StemId{1}, 0}));
    std::cout << "edited" << std::endl;
    QTest::qWait(60000);
}

TEST_F(RecoveryTest, AKillLosesNothing) {
    QProcess child;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QLatin1String(childFolder), inside());
    child.setProcessEnvironment(environment);
    child.start(QCoreApplication::applicationFilePath(), {QStringLiteral("--gtest_filter=RecoveryChild.*"),
                                                          QStringLiteral("--gtest_also_run_disabled_tests")});
    QByteArray said;
    while (!said.contains("edited") && child.waitForReadyRead(60000))
        said += child.readAllStandardOutput();
    ASSERT_TRUE(said.contains("edited")) << said.toStdString();
    EXPECT_TRUE(Recovery::found(inside()).empty()) << "a living window keeps its work";
    child.kill();
    ASSERT_TRUE(child.waitForFinished(60000));

    ASSERT_TRUE(session.make(TurnTier{StemId{1}, 0, degrees(45)}));
    ASSERT_TRUE(session.make(CloseTier{StemId{1}, 0}));
    const std::vector<LeftBehind> found = Recovery::found(inside());
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].plan, session.plan());
}

TEST_F(RecoveryTest, ThereIsAJournalOnlyWhileThereIsUnsavedWork) {
    Recovery recovery(session, inside(), &digest);
    EXPECT_TRUE(journals().isEmpty());
    session.make(TurnTier{StemId{1}, 0, degrees(45)});
    EXPECT_EQ(journals().size(), 1);
    session.undo();
    EXPECT_TRUE(journals().isEmpty()) << "back to what was saved";
    session.redo();
    EXPECT_EQ(journals().size(), 1);
    session.markSaved(folder.filePath(QStringLiteral("a.stemplan")));
    EXPECT_TRUE(journals().isEmpty());
    session.make(CloseTier{StemId{1}, 0});
    EXPECT_EQ(journals().size(), 1);
    session.open(test::smallBoard(), {});
    EXPECT_TRUE(journals().isEmpty()) << "the other plan was given up";
}

TEST_F(RecoveryTest, WorkThatTheFileHasTooIsNoWorkLeftBehind) {
    const QString file = folder.filePath(QStringLiteral("a.stemplan"));
    session.markSaved(file);
    // Killed after the file was written and before the journal went: the journal is written again by hand.
    QString kept;
    QByteArray bytes;
    {
        Recovery recovery(session, inside(), &digest);
        session.make(CloseTier{StemId{1}, 0});
        kept = QDir(inside()).filePath(journals().value(0));
        QFile read(kept);
        ASSERT_TRUE(read.open(QIODevice::ReadOnly));
        bytes = read.readAll();
    }
    ASSERT_TRUE(writeBytes(bytes, kept, nullptr));
    EXPECT_EQ(Recovery::found(inside()).size(), 1U);
    EXPECT_EQ(Recovery::found(inside()).at(0).path, file);
    EXPECT_EQ(Recovery::found(inside()).at(0).digest, digest());
    ASSERT_TRUE(writePlan(session.plan(), file, nullptr));
    EXPECT_TRUE(Recovery::found(inside()).empty());
    EXPECT_TRUE(journals().isEmpty());
}

TEST_F(RecoveryTest, WhatCannotBeReadStaysWhereItIs) {
    ASSERT_TRUE(QDir().mkpath(inside()));
    const QString odd = QDir(inside()).filePath(QStringLiteral("odd.journal"));
    ASSERT_TRUE(writeBytes("no journal at all", odd, nullptr));
    EXPECT_TRUE(Recovery::found(inside()).empty());
    EXPECT_TRUE(QFile::exists(odd));
}

TEST_F(RecoveryTest, SaysOnceWhereNothingCanBeKept) {
    // A file stands where the folder should be.
    ASSERT_TRUE(writeBytes("x", inside(), nullptr));
    Recovery recovery(session, inside(), &digest);
    QSignalSpy said(&recovery, &Recovery::failed);
    session.make(TurnTier{StemId{1}, 0, degrees(45)});
    session.make(TurnTier{StemId{1}, 0, degrees(90)});
    EXPECT_EQ(said.count(), 1);
    EXPECT_EQ(session.plan().stems[0].tiers[0].turn, degrees(90));
}

TEST_F(RecoveryTest, TheWindowOffersItAndOpensItUnsaved) {
    const QString recovered = settings::recoveryFolder();
    QDir(recovered).removeRecursively();
    Plan expected;
    {
        Recovery recovery(session, recovered, &digest);
        session.make(CloseTier{StemId{1}, 0});
        expected = session.plan();
        const QString kept =
            QDir(recovered).filePath(QDir(recovered).entryList({QStringLiteral("*.journal")})[0]);
        ASSERT_TRUE(QFile::copy(kept, kept + QStringLiteral(".journal")));
    }
    QStringList asked;
    ask::Answer answer = ask::Answer::cancel;
    ask::Stand stand;
    stand.answer = [&](const QString& question) {
        asked << question;
        return answer;
    };
    ask::setStand(stand);
    MainWindow window(test::smallBoard());
    window.offerWorkLeftBehind();
    EXPECT_EQ(asked.size(), 1);
    EXPECT_FALSE(window.session().unsaved()) << "later is not now";
    answer = ask::Answer::open;
    window.offerWorkLeftBehind();
    EXPECT_EQ(window.session().plan(), expected);
    EXPECT_TRUE(window.session().unsaved());
    asked.clear();
    window.offerWorkLeftBehind();
    EXPECT_TRUE(asked.isEmpty()) << "its journal is this window's own now";
    ask::setStand(std::nullopt);
}

} // namespace
} // namespace stemwright

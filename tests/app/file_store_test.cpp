#include "app/file_store.h"

#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <csignal>
#include <sys/resource.h>
#include <sys/stat.h>

namespace stemwright {
namespace {

class FileStoreTest : public ::testing::Test {
protected:
    QString path(const char* name = "plan.stemplan") const { return folder.filePath(QLatin1String(name)); }
    static QByteArray read(const QString& at) {
        QFile file(at);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }
    QStringList files() const { return QDir(folder.path()).entryList(QDir::Files | QDir::Hidden); }

    QTemporaryDir folder;
    QString why;
};

/// No file of this process may grow past so many bytes while this lives: what a full disk does to a writer.
class FullDisk {
public:
    explicit FullDisk(rlim_t bytes) {
        getrlimit(RLIMIT_FSIZE, &before_);
        handler_ = std::signal(SIGXFSZ, SIG_IGN);
        const rlimit small{bytes, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &small);
    }
    ~FullDisk() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

private:
    rlimit before_{};
    void (*handler_)(int) = nullptr;
};

TEST_F(FileStoreTest, WhatIsWrittenReadsBack) {
    const Plan plan = test::randomBoard(3, 6, 8, 4);
    FileMark written, seen;
    ASSERT_TRUE(writePlan(plan, path(), &why, &written)) << why.toStdString();
    const auto again = readPlan(path(), &why, &seen);
    ASSERT_TRUE(again) << why.toStdString();
    EXPECT_EQ(*again, plan);
    EXPECT_EQ(written.digest, seen.digest);
    EXPECT_FALSE(changedOnDisk(path(), written));
    EXPECT_EQ(files().size(), 1) << "nothing else is left beside it";
}

TEST_F(FileStoreTest, AFullDiskLeavesTheOldFileWhole) {
    ASSERT_TRUE(writePlan(test::smallBoard(), path(), &why));
    const QByteArray before = read(path());
    {
        FullDisk full(4096);
        EXPECT_FALSE(writePlan(test::largeBoard(20, 20), path(), &why));
    }
    EXPECT_TRUE(why.contains(QStringLiteral("plan.stemplan"))) << why.toStdString();
    EXPECT_EQ(read(path()), before);
    EXPECT_EQ(files().size(), 1) << "no half-written file is left: "
                                 << files().join(QLatin1Char(' ')).toStdString();
}

TEST_F(FileStoreTest, AFolderThatCannotBeWrittenSaysSo) {
    // Not even root creates a file there.
    EXPECT_FALSE(writePlan(test::smallBoard(), QStringLiteral("/proc/plan.stemplan"), &why));
    EXPECT_TRUE(why.contains(QStringLiteral("/proc/plan.stemplan"))) << why.toStdString();
    EXPECT_FALSE(writePlan(test::smallBoard(), folder.path(), &why));
    EXPECT_TRUE(why.contains(QStringLiteral("folder"))) << why.toStdString();
}

TEST_F(FileStoreTest, ALinkStaysALink) {
    ASSERT_TRUE(writePlan(test::smallBoard(), path("real.stemplan"), &why));
    ASSERT_TRUE(QFile::link(path("real.stemplan"), path("link.stemplan")));
    ASSERT_TRUE(writePlan(test::randomBoard(1, 2, 2, 2), path("link.stemplan"), &why)) << why.toStdString();
    EXPECT_TRUE(QFileInfo(path("link.stemplan")).isSymLink());
    EXPECT_EQ(read(path("real.stemplan")), read(path("link.stemplan")));
}

TEST_F(FileStoreTest, ThingsThatAreNoPlansAreNamed) {
    EXPECT_FALSE(readPlan(path("none.stemplan"), &why));
    EXPECT_TRUE(why.contains(QStringLiteral("none.stemplan")));
    EXPECT_FALSE(readPlan(folder.path(), &why));
    EXPECT_TRUE(why.contains(QStringLiteral("folder"))) << why.toStdString();
    // A pipe would keep a reader waiting for ever.
    ASSERT_EQ(mkfifo(path("pipe.stemplan").toUtf8().constData(), 0600), 0);
    EXPECT_FALSE(readPlan(path("pipe.stemplan"), &why));
    EXPECT_TRUE(why.contains(QStringLiteral("no plain file"))) << why.toStdString();
}

TEST_F(FileStoreTest, AChangeByAnotherProgramIsSeen) {
    FileMark mark;
    ASSERT_TRUE(writePlan(test::smallBoard(), path(), &why, &mark));
    QFile file(path());
    ASSERT_TRUE(file.open(QIODevice::Append));
    file.write(" ");
    file.close();
    EXPECT_TRUE(changedOnDisk(path(), mark));
    ASSERT_TRUE(QFile::remove(path()));
    EXPECT_FALSE(changedOnDisk(path(), mark)) << "a file that has gone is no conflict";
}

} // namespace
} // namespace stemwright

// What main() does before and after a command, asked of the program itself.
#include "app/command_line.h"
#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

struct Ran {
    int code = -1;
    QByteArray out, err;
};

class Program : public ::testing::Test {
protected:
    Program() { around.remove(QStringLiteral("LANGUAGE")); }

    Ran run(const QStringList& arguments, const QString& outTo = {}) const {
        QProcess process;
        process.setProcessEnvironment(around);
        process.setWorkingDirectory(folder.path());
        if (!outTo.isEmpty())
            process.setStandardOutputFile(outTo);
        process.start(QStringLiteral(STEMWRIGHT_PROGRAM), arguments);
        EXPECT_TRUE(process.waitForFinished(120'000));
        EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
        return {process.exitCode(), process.readAllStandardOutput(), process.readAllStandardError()};
    }

    QString write(const char* name, const std::string& text) const {
        QFile file(folder.filePath(QLatin1String(name)));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text.data(), static_cast<qint64>(text.size()));
        return QLatin1String(name);
    }

    QByteArray contents(const char* name) const {
        QFile file(folder.filePath(QLatin1String(name)));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }

    static int lines(const QByteArray& text) { return static_cast<int>(text.count('\n')); }

    QTemporaryDir folder;
    QProcessEnvironment around = QProcessEnvironment::systemEnvironment();
};

// The words are English, so the figures are too, and the same plan gives the same bytes.
TEST_F(Program, SaysTheSameInEveryLocale) {
    Plan plan = test::smallBoard();
    plan.kinds[0].stock[0].toMake = 12'345;
    plan.kinds[0].minutes = 7;
    plan.buying.leafWire = {10'000, 2.5, ""};
    for (Stem& stem : plan.stems)
        for (Tier& tier : stem.tiers)
            tier.turn = degrees(0); // findings with figures in them
    plan.stems[1].tail = millimetres(1234.5);
    const QString file = write("a.stemplan", planText(plan));
    const std::vector<QStringList> commands{{QStringLiteral("figures"), file},
                                            {QStringLiteral("figures"), file, QStringLiteral("--json")},
                                            {QStringLiteral("check"), file},
                                            {QStringLiteral("supplies"), file},
                                            {QStringLiteral("supplies"), file, QStringLiteral("--csv")},
                                            {QStringLiteral("steps"), file},
                                            {QStringLiteral("start"), QStringLiteral("--help")},
                                            {QStringLiteral("sheets"), file, QStringLiteral("-o"),
                                             QStringLiteral("a.pdf"), QStringLiteral("--only"),
                                             QStringLiteral("glance,supplies")}};
    std::vector<Ran> first;
    QByteArray paper;
    for (const char* locale : {"C", "de_DE.UTF-8", "fr_FR.UTF-8", "ar_EG.UTF-8"}) {
        around.insert(QStringLiteral("LC_ALL"), QLatin1String(locale));
        for (std::size_t i = 0; i < commands.size(); ++i) {
            const Ran ran = run(commands[i]);
            EXPECT_LE(ran.code, exitFindings) << ran.err.toStdString();
            if (first.size() == i) {
                first.push_back(ran);
                continue;
            }
            EXPECT_EQ(ran.out, first[i].out)
                << locale << ": " << commands[i].join(QLatin1Char(' ')).toStdString();
            EXPECT_EQ(ran.err, first[i].err) << locale;
        }
        const QByteArray now = contents("a.pdf");
        if (paper.isEmpty())
            paper = now;
        EXPECT_TRUE(now == paper) << "the sheets differ under " << locale;
    }
    EXPECT_GT(paper.size(), 1000);
    EXPECT_TRUE(first[0].out.contains("12,3")) << "grouped as in English";
}

TEST_F(Program, WhatCannotBeWrittenIsNoSuccess) {
    if (!QFile::exists(QStringLiteral("/dev/full")))
        GTEST_SKIP() << "this system has no device that is always full";
    const QString file = write("a.stemplan", planText(test::smallBoard()));
    for (const QStringList& command :
         {QStringList{QStringLiteral("figures"), file}, QStringList{QStringLiteral("check"), file},
          QStringList{QStringLiteral("supplies"), file, QStringLiteral("--csv")},
          QStringList{QStringLiteral("example"), QStringLiteral("fern")},
          QStringList{QStringLiteral("--help")}}) {
        const Ran ran = run(command, QStringLiteral("/dev/full"));
        EXPECT_EQ(ran.code, exitUnusable) << command.front().toStdString();
        EXPECT_EQ(lines(ran.err), 1) << ran.err.toStdString();
        EXPECT_TRUE(ran.err.startsWith("Standard output cannot be written")) << ran.err.toStdString();
    }
}

TEST_F(Program, WithoutADisplaySaysFirstWhatElseIsWrong) {
    for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
        around.remove(QLatin1String(name));
    const QString file = write("a.stemplan", planText(test::smallBoard()));
    const std::vector<std::pair<QStringList, const char*>> cases{
        {{QStringLiteral("frobnicate"), file}, "“frobnicate” is no command"},
        {{QStringLiteral("--frobnicate"), file}, "frobnicate"},
        {{QStringLiteral("none.stemplan")}, "none.stemplan: there is no such file"},
        {{write("bad.stemplan", "{")}, "bad.stemplan: line 1"},
        {{QString()}, "name of the plan's file is empty"},
        {{file}, "There is no display"},
        {{}, "There is no display"}};
    for (const auto& [arguments, said] : cases) {
        const Ran ran = run(arguments);
        EXPECT_EQ(ran.code, exitUnusable);
        EXPECT_TRUE(ran.out.isEmpty());
        EXPECT_EQ(lines(ran.err), 1) << ran.err.toStdString();
        EXPECT_TRUE(ran.err.contains(said)) << ran.err.toStdString();
    }
}

} // namespace
} // namespace stemwright

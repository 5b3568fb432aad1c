#include "app/command_line.h"

#include "core/document/examples.h"
#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>

namespace stemwright {
namespace {

struct Outcome {
    std::optional<int> code;
    std::string out;
    std::string err;
    WindowRequest window;
};

Outcome run(QStringList arguments) {
    std::ostringstream out, err;
    Outcome outcome;
    arguments.prepend(QStringLiteral("stemwright"));
    outcome.code = runCommand(arguments, out, err, &outcome.window);
    outcome.out = out.str();
    outcome.err = err.str();
    return outcome;
}

class CommandLineTest : public ::testing::Test {
protected:
    QString write(const char* name, const std::string& text) {
        const QString path = folder.filePath(QLatin1String(name));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text.data(), static_cast<qint64>(text.size()));
        return path;
    }
    /// One sentence on standard error, nothing on standard output.
    static void expectUnusable(const Outcome& outcome) {
        EXPECT_EQ(outcome.code, exitUnusable);
        EXPECT_TRUE(outcome.out.empty()) << outcome.out;
        EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
        EXPECT_GT(outcome.err.size(), 10u);
    }

    QTemporaryDir folder;
};

TEST_F(CommandLineTest, EveryExampleIsListedAndWritten) {
    const Outcome list = run({QStringLiteral("example")});
    EXPECT_EQ(list.code, exitFine);
    ASSERT_GE(examples().size(), 4u);
    for (const ExampleInfo& info : examples()) {
        EXPECT_NE(list.out.find(info.key), std::string::npos);
        const QString key = QString::fromStdString(std::string(info.key));
        const QString path = folder.filePath(key + QStringLiteral(".stemplan"));
        EXPECT_EQ(run({QStringLiteral("example"), key, QStringLiteral("-o"), path}).code, exitFine);
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        const QByteArray bytes = file.readAll();
        const auto plan = planFromText({bytes.constData(), static_cast<std::size_t>(bytes.size())});
        ASSERT_TRUE(plan);
        EXPECT_EQ(plan.value(), example(info.key));
        // What is there may hold work by now.
        expectUnusable(run({QStringLiteral("example"), key, QStringLiteral("-o"), path}));
    }
}

TEST_F(CommandLineTest, FiguresAsJsonCarryTheirUnits) {
    const Plan plan = test::smallBoard();
    const Outcome outcome =
        run({QStringLiteral("figures"), write("a.stemplan", planText(plan)), QStringLiteral("--json")});
    ASSERT_EQ(outcome.code, exitFine) << outcome.err;
    const auto json = nlohmann::json::parse(outcome.out);
    ASSERT_EQ(json["stems"].size(), 3u);
    // Three tiers 8 mm apart on a tail of 30 mm, and 14 mm leaves at 60 degrees above the tip's node.
    EXPECT_NEAR(json["stems"][0]["height_mm"].get<double>(), 30 + 2 * 8 + 14 * 0.5, 1e-3);
    EXPECT_EQ(json["stems"][0]["leaves"], 6);
    EXPECT_EQ(json["pot"]["leaves"], 10);
    EXPECT_EQ(json["pot"]["leaves_in_tray"], 14);
    EXPECT_EQ(json["stems"][2]["leaves"], 0);
}

TEST_F(CommandLineTest, FiguresForReadingNameEveryStem) {
    const Outcome outcome = run({QStringLiteral("figures"), write("a.stemplan", planText(test::smallBoard()))});
    ASSERT_EQ(outcome.code, exitFine);
    for (const char* name : {"Stem 1", "Stem 2", "Stem 3", "Plum", "Sea"})
        EXPECT_NE(outcome.out.find(name), std::string::npos) << name;
}

TEST_F(CommandLineTest, FiguresNameTheBeadsThatAreInNoMass) {
    Plan plan = test::smallBoard();
    EXPECT_EQ(run({QStringLiteral("figures"), write("a.stemplan", planText(plan))}).out.find("Not in mass"),
              std::string::npos);
    plan.kinds[1].beadSize = "99/0";
    const QString odd = write("odd.stemplan", planText(plan));
    EXPECT_NE(run({QStringLiteral("figures"), odd}).out.find("the beads of Broad leaves, 99/0"),
              std::string::npos);
    const Outcome outcome = run({QStringLiteral("figures"), odd, QStringLiteral("--json")});
    EXPECT_EQ(nlohmann::json::parse(outcome.out)["pot"]["kinds_of_unweighed_beads"],
              nlohmann::json::array({2}));
}

TEST_F(CommandLineTest, CheckTellsByItsExitWhetherThereIsAnything) {
    // The small board has an unmatched pair on Stem 2 and a stem without leaves.
    const Outcome found = run({QStringLiteral("check"), write("a.stemplan", planText(test::smallBoard()))});
    EXPECT_EQ(found.code, exitFindings);
    EXPECT_NE(found.out.find("Stem 3 has no leaves"), std::string::npos) << found.out;
    Plan calm = test::smallBoard();
    calm.stems.clear();
    EXPECT_EQ(run({QStringLiteral("check"), write("b.stemplan", planText(calm))}).code, exitFine);
    calm.kinds[0].beadSize = "99/0";
    const Outcome unweighed = run({QStringLiteral("check"), write("c.stemplan", planText(calm))});
    EXPECT_EQ(unweighed.code, exitFindings);
    EXPECT_NE(unweighed.out.find("99/0"), std::string::npos) << unweighed.out;
}

TEST_F(CommandLineTest, WhatCannotBeUsedGivesOneSentence) {
    const QString good = write("good.stemplan", planText(test::smallBoard()));
    const QString broken =
        write("broken.stemplan", "{\n  \"format\": \"stemplan\",\n  \"version\": 1,\n  oops\n}");
    const Outcome syntax = run({QStringLiteral("figures"), broken});
    expectUnusable(syntax);
    EXPECT_NE(syntax.err.find("broken.stemplan"), std::string::npos);
    EXPECT_NE(syntax.err.find("line 4"), std::string::npos) << syntax.err;
    expectUnusable(run({QStringLiteral("figures"), folder.path()}));
    expectUnusable(run({QStringLiteral("figures"), folder.filePath(QStringLiteral("none.stemplan"))}));
    expectUnusable(run({QStringLiteral("figures"), write("empty.stemplan", "")}));
    expectUnusable(run({QStringLiteral("figures")}));
    expectUnusable(run({QStringLiteral("figures"), good, good}));
    expectUnusable(run({QStringLiteral("figures"), good, QStringLiteral("--yaml")}));
    expectUnusable(run({QStringLiteral("example"), QStringLiteral("no-such-plant")}));
    expectUnusable(run({QStringLiteral("grow"), good}));
    expectUnusable(run({QStringLiteral("--size"), QStringLiteral("12x"), good}));
    expectUnusable(run({QStringLiteral("example"), QString::fromStdString(std::string(examples().front().key)),
                        QStringLiteral("-o"), folder.path()}));
    expectUnusable(run({QStringLiteral("figures"), write("deep.stemplan", std::string(100'000, '['))}));
    if (QFile::exists(QStringLiteral("/dev/zero")))
        expectUnusable(run({QStringLiteral("figures"), QStringLiteral("/dev/zero")}));
}

TEST_F(CommandLineTest, AnEmptyNameIsSaidToBeEmpty) {
    const QString good = write("good.stemplan", planText(test::smallBoard()));
    const std::vector<QStringList> cases{
        {QStringLiteral("sheets"), good, QStringLiteral("-o"), QString()},
        {QStringLiteral("spread"), good, QStringLiteral("-o"), QString()},
        {QStringLiteral("picture"), good, QStringLiteral("--output"), QString()},
        {QStringLiteral("example"), QString::fromStdString(std::string(examples().front().key)),
         QStringLiteral("--output=")},
        {QStringLiteral("figures"), QString()},
        {QString()},
        {good, QStringLiteral("--screenshot"), QString()}};
    for (const QStringList& arguments : cases) {
        const Outcome outcome = run(arguments);
        expectUnusable(outcome);
        EXPECT_NE(outcome.err.find("empty"), std::string::npos) << outcome.err;
    }
}

// A file may hold any text as a name; a line stays a line, and a terminal's cursor where it was.
TEST_F(CommandLineTest, NamesDoNotBreakLines) {
    Plan plan = test::smallBoard();
    plan.about.title = "Hedge\nof two";
    plan.stems[2].name = "Stem\r\n3\t\x1b[2J\u2028x";
    plan.kinds[0].name = "Small\nround";
    plan.mixes[1].name = "Plum\non sea";
    plan.colours[0].name = "Plum\x07";
    plan.binding.wraps[0].name = "floss\ntwo";
    plan.stems[0].tiers[0].slots[0].leaf.mix = MixId{3}; // no matched pair any more
    const QString file = write("a.stemplan", planText(plan));
    for (const char* command : {"check", "figures", "supplies", "steps"}) {
        const Outcome outcome = run({QLatin1String(command), file});
        for (const char bad : {'\r', '\t', '\x1b', '\x07'})
            EXPECT_EQ(outcome.out.find(bad), std::string::npos) << command;
        for (const char* broken : {"\nof two", "m\n3", "\nround", "\non sea", "\ntwo", "\u2028"})
            EXPECT_EQ(outcome.out.find(broken), std::string::npos) << command << ": " << outcome.out;
    }
    EXPECT_NE(run({QStringLiteral("check"), file}).out.find("Stem 3 [2J x has no leaves"), std::string::npos);
    const Outcome refused =
        run({QStringLiteral("start"), file, QStringLiteral("-o"), folder.filePath(QStringLiteral("b.stemplan")),
             QStringLiteral("--range"), QStringLiteral("none=1-2")});
    expectUnusable(refused);
}

TEST_F(CommandLineTest, WhatTheStreamDoesNotTakeIsNoSuccess) {
    std::ostringstream err;
    std::ostream full(nullptr);
    WindowRequest window;
    const QString file = write("a.stemplan", planText(test::smallBoard()));
    EXPECT_EQ(runCommand({QStringLiteral("stemwright"), QStringLiteral("figures"), file}, full, err, &window),
              exitUnusable);
    EXPECT_NE(err.str().find("cannot be written"), std::string::npos);
}

TEST_F(CommandLineTest, StraightWireSaysWhatToBuyAsAllElse) {
    Plan plan = test::smallBoard();
    plan.buying.bars = {{millimetres(300), 0.5}};
    const Outcome outcome =
        run({QStringLiteral("figures"), write("a.stemplan", planText(plan)), QStringLiteral("--json")});
    const auto supplies = nlohmann::json::parse(outcome.out)["supplies"];
    ASSERT_EQ(supplies["straight_wire"].size(), 1u);
    EXPECT_EQ(supplies["straight_wire"][0]["buy"], (nlohmann::json{{"packs", 1}, {"cost", 0.5}}));
}

TEST_F(CommandLineTest, WithoutACommandTheWindowIsWanted) {
    const Outcome outcome = run({QStringLiteral("my.stemplan")});
    EXPECT_FALSE(outcome.code);
    EXPECT_EQ(outcome.window.plan, QStringLiteral("my.stemplan"));
    EXPECT_FALSE(isCommand({QStringLiteral("stemwright"), QStringLiteral("my.stemplan")}));
    EXPECT_TRUE(isCommand({QStringLiteral("stemwright"), QStringLiteral("figures")}));
}

TEST_F(CommandLineTest, HelpNamesEveryCommand) {
    const Outcome outcome = run({QStringLiteral("--help")});
    EXPECT_EQ(outcome.code, exitFine);
    for (const char* command : {"example", "figures", "sheets", "check", "spread"})
        EXPECT_NE(outcome.out.find(command), std::string::npos) << command;
}

TEST_F(CommandLineTest, SheetsSayWhatNoFontHasAndAreWrittenAllTheSame) {
    Plan plan = test::smallBoard();
    const QString to = folder.filePath(QStringLiteral("out.pdf"));
    const auto sheets = [&] {
        return run(
            {QStringLiteral("sheets"), write("plan.stemplan", planText(plan)), QStringLiteral("-o"), to});
    };
    EXPECT_EQ(sheets().err, "");
    plan.about.title = "Moss \xf4\x8f\xbf\xbd"; // for private use: no font has it
    QFile::remove(to);
    const Outcome outcome = sheets();
    EXPECT_EQ(outcome.code, exitFine);
    EXPECT_TRUE(QFile::exists(to));
    EXPECT_NE(outcome.err.find("U+10FFFD"), std::string::npos) << outcome.err;
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
}

} // namespace
} // namespace stemwright

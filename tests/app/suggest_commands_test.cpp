#include "app/command_line.h"

#include "core/document/examples.h"
#include "core/document/plan_file.h"
#include "core/figures/figures.h"
#include "core/suggest/plan_counts.h"
#include "tests/support/boards.h"

#include <QFile>
#include <QTemporaryDir>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <sstream>

namespace stemwright {
namespace {

struct Outcome {
    std::optional<int> code;
    std::string out;
    std::string err;
};

class SuggestCommandsTest : public ::testing::Test {
protected:
    /// "spread --seed 3": the plan and where it goes are put in.
    Outcome run(const QString& words, const Plan& plan, const char* to = "out.stemplan") {
        write("in.stemplan", planText(plan));
        QStringList arguments = words.split(QLatin1Char(' '));
        arguments.insert(1, path("in.stemplan"));
        arguments << QStringLiteral("-o") << path(to);
        arguments.prepend(QStringLiteral("stemwright"));
        std::ostringstream out, err;
        WindowRequest window;
        Outcome outcome;
        outcome.code = runCommand(arguments, out, err, &window);
        outcome.out = out.str();
        outcome.err = err.str();
        return outcome;
    }
    QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }
    void write(const char* name, const std::string& text) {
        QFile file(path(name));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text.data(), static_cast<qint64>(text.size()));
    }
    std::string bytes(const char* name) const {
        QFile file(path(name));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name;
        const QByteArray all = file.readAll();
        return {all.constData(), static_cast<std::size_t>(all.size())};
    }
    Plan written(const char* name = "out.stemplan") const { return planFromText(bytes(name)).value(); }
    /// One sentence, exit 2, and nothing is there that was not there before.
    void expectUnusable(const Outcome& outcome, std::initializer_list<const char*> says) {
        EXPECT_EQ(outcome.code, exitUnusable);
        EXPECT_TRUE(outcome.out.empty()) << outcome.out;
        EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
        for (const char* word : says)
            EXPECT_NE(outcome.err.find(word), std::string::npos) << word << " in " << outcome.err;
        EXPECT_FALSE(QFile::exists(path("out.stemplan")));
    }
    /// Four bare stems and 40 leaves of "Small", 24 of "Broad".
    static Plan bare() {
        Plan plan = test::smallBoard();
        Stem stem = plan.stems[2];
        plan.stems.clear();
        for (std::uint32_t i = 1; i <= 4; ++i) {
            stem.id = StemId{i};
            stem.name = "Stem " + std::to_string(i);
            plan.stems.push_back(stem);
        }
        for (StockLine& line : plan.kinds[0].stock)
            line.made = 12, line.toMake = 0;
        plan.kinds[0].stock[0].made = 16;
        for (StockLine& line : plan.kinds[1].stock)
            line.made = 8, line.toMake = 0;
        return plan;
    }

    QTemporaryDir folder;
};

TEST_F(SuggestCommandsTest, SpreadWritesTheLeastUnevennessAndSaysSo) {
    const Plan plan = test::randomBoard(5, 6, 8, 4);
    const Outcome outcome = run(QStringLiteral("spread --json"), plan);
    ASSERT_EQ(outcome.code, exitFine) << outcome.err;
    const auto json = nlohmann::json::parse(outcome.out);
    EXPECT_TRUE(json["proved"]);
    EXPECT_NEAR(json["unevenness_before"].get<double>(), unevennessOf(plan), 1e-9);
    EXPECT_NEAR(json["unevenness_after"].get<double>(), unevennessOf(written()), 1e-9);
    EXPECT_LE(json["unevenness_bound"].get<double>(), json["unevenness_after"].get<double>() + 1e-9);
    ASSERT_EQ(json["stems"].size(), plan.stems.size());
    EXPECT_NEAR(json["stems"][0]["drift_after"].get<double>(), figures(written()).stems[0].drift, 1e-3);
    const Outcome said = run(QStringLiteral("spread --matched-pairs"), plan);
    for (const char* word : {"Unevenness", "Unmatched pairs", "Pot drift", "Proved", "ms", "Stem 6"})
        EXPECT_NE(said.out.find(word), std::string::npos) << word << " in " << said.out;
}

TEST_F(SuggestCommandsTest, SpreadCountsTheOrderAndOnlyWhatWasAskedFor) {
    const Plan plan = test::smallBoard();
    const auto said = nlohmann::json::parse(run(QStringLiteral("spread --json"), plan).out);
    EXPECT_EQ(said["inversions_before"], inversionsOf(plan));
    EXPECT_GT(said["inversions_before"], 0);
    EXPECT_EQ(said["inversions_after"], inversionsOf(written()));
    EXPECT_FALSE(said.contains("close_in_height_before")) << "no difference was asked for";
    EXPECT_NE(run(QStringLiteral("spread"), plan).out.find("against the colour order 2"), std::string::npos);
}

// The sentence names the leaves and a number that is one: no limit of the program's is meant.
TEST_F(SuggestCommandsTest, MoreLeavesThanCanBeCountedAreSaid) {
    Plan plan = bare();
    for (StockLine& line : plan.kinds[0].stock)
        line.made = 10'000;
    plan.kinds.resize(1, plan.kinds[0]);
    for (Stem& stem : plan.stems)
        for (int i = 0; i < 600; ++i)
            stem.tiers.push_back(newTier(stem, nullptr, KindId{1}));
    expectUnusable(run(QStringLiteral("spread --matched-pairs"), plan),
                   {"4800 leaves of Small", "about 3", "without matched pairs"});
    expectUnusable(run(QStringLiteral("heights --range Small=1200-1200 --fill --matched-pairs"), plan),
                   {"leaves of Small"});
}

TEST_F(SuggestCommandsTest, TheSameInputAndSeedGiveTheSameBytes) {
    const Plan plan = test::randomBoard(8, 6, 8, 4);
    for (const char* words :
         {"spread --seed 7", "spread --matched-pairs --seed 7", "spread", "order", "order --colours-first",
          "heights --range Kind=4-12 --fill --seed 2", "start --stems 8 --seed 3"}) {
        // Both kinds begin with "Kind"; the whole name of one is meant.
        const QString line =
            QString::fromLatin1(words).replace(QStringLiteral("Kind="), QStringLiteral("Kind_="));
        Plan named = plan;
        named.kinds[0].name = "Kind_";
        const Outcome once = run(line, named);
        ASSERT_EQ(once.code, exitFine) << words << ": " << once.err;
        const std::string first = bytes("out.stemplan");
        ASSERT_EQ(run(line, named, "again.stemplan").code, exitFine);
        EXPECT_EQ(bytes("again.stemplan"), first) << words;
    }
    // And another seed may give another board of the same figures.
    int unlike = 0;
    for (int seed = 0; seed < 5; ++seed) {
        ASSERT_EQ(run(QStringLiteral("spread --seed %1").arg(seed), plan).code, exitFine);
        const Plan one = written();
        ASSERT_EQ(run(QStringLiteral("spread --seed %1").arg(seed + 100), plan).code, exitFine);
        unlike += !(one == written());
        EXPECT_NEAR(unevennessOf(one), unevennessOf(written()), 1e-9);
    }
    EXPECT_GT(unlike, 0);
}

TEST_F(SuggestCommandsTest, OrderLessensInversionsAndMovesNothingBetweenStems) {
    const Plan plan = test::randomBoard(3, 5, 12, 5);
    const Outcome outcome = run(QStringLiteral("order --colours-first --json"), plan);
    ASSERT_EQ(outcome.code, exitFine) << outcome.err;
    const auto json = nlohmann::json::parse(outcome.out);
    EXPECT_LT(json["inversions_after"].get<int>(), json["inversions_before"].get<int>());
    EXPECT_EQ(json["inversions_after"].get<int>(), inversionsOf(written()));
    EXPECT_TRUE(json["proved"]);
    EXPECT_NEAR(unevennessOf(written()), unevennessOf(plan), 1e-9);
}

TEST_F(SuggestCommandsTest, HeightsStayWithinTheirRangesAndFillWhenAsked) {
    const Outcome outcome =
        run(QStringLiteral("heights --range small=6-14 --range broad=4-8 --rest broad=4 --difference 3 --json"),
            bare());
    ASSERT_EQ(outcome.code, exitFine) << outcome.err;
    const Plan after = written();
    int small = 0, broad = 0;
    for (const Stem& stem : after.stems) {
        int own[] = {0, 0};
        for (const Tier& tier : stem.tiers) {
            EXPECT_EQ(tier.slots.size(), 2u);
            for (const Slot& slot : tier.slots) {
                EXPECT_FALSE(slot.filled());
                ++own[slot.leaf.kind == after.kinds[1].id];
            }
        }
        EXPECT_GE(own[0], 6);
        EXPECT_LE(own[0], 14);
        EXPECT_GE(own[1], 4);
        EXPECT_LE(own[1], 8);
        small += own[0];
        broad += own[1];
    }
    EXPECT_EQ(small, 40);
    EXPECT_EQ(broad, 20);
    EXPECT_EQ(nlohmann::json::parse(outcome.out)["close_in_height_after"], 0) << outcome.out;
    ASSERT_EQ(run(QStringLiteral("heights --range small=6-14 --range broad=4-8 --fill"), bare()).code,
              exitFine);
    EXPECT_EQ(figures(written()).pot.leaves, 64);
}

TEST_F(SuggestCommandsTest, StartMakesACompleteBoardFromNothing) {
    Plan plan = bare();
    plan.stems.clear();
    ASSERT_EQ(run(QStringLiteral("start --stems 5"), plan).code, exitFine);
    const Plan after = written();
    ASSERT_EQ(after.stems.size(), 5u);
    const PotFigures pot = figures(after).pot;
    EXPECT_EQ(pot.leaves, 64);
    EXPECT_EQ(pot.slots, 64);
    EXPECT_EQ(after.stems[4].name, "Stem 5");
    EXPECT_GT(pot.heightVariation, 0.1);
}

TEST_F(SuggestCommandsTest, WhatCannotBeMetIsSaidWithTheNearestThatCan) {
    expectUnusable(run(QStringLiteral("heights --range small=14-16"), bare()),
                   {"Small", "56", "40", "16", "10"});
    expectUnusable(run(QStringLiteral("heights --range small=2-8 --rest small=0"), bare()),
                   {"Small", "40", "32", "8", "10"});
    expectUnusable(run(QStringLiteral("heights --range small=7-7"), bare()), {"Small", "7", "6", "8"});
    expectUnusable(run(QStringLiteral("heights --range small=12-8"), bare()), {"12", "8", "contradict"});
    expectUnusable(run(QStringLiteral("start --stems 9 --range small=8-14"), bare()),
                   {"Small", "72", "40", "32"});
    Plan pinned = test::smallBoard();
    for (Tier& tier : pinned.stems[0].tiers)
        tier.slots[0].pinned = true;
    expectUnusable(run(QStringLiteral("heights --range small=0-4"), pinned), {"Stem 1", "6", "Small", "4"});
}

TEST_F(SuggestCommandsTest, BadArgumentsGiveOneSentenceAndWriteNothing) {
    const Plan plan = bare();
    expectUnusable(run(QStringLiteral("heights"), plan), {"--range"});
    expectUnusable(run(QStringLiteral("heights --range huge=2-4"), plan), {"huge", "Small", "Broad"});
    expectUnusable(run(QStringLiteral("heights --range small=two-4"), plan), {"small=two-4"});
    expectUnusable(run(QStringLiteral("heights --range small"), plan), {"--range"});
    expectUnusable(run(QStringLiteral("heights --range small=2-4-6"), plan), {"2-4-6"});
    expectUnusable(run(QStringLiteral("heights --range small=2-4 --range small=4-6"), plan), {"Small", "two"});
    expectUnusable(run(QStringLiteral("heights --range small=8-12 --rest broad=2"), plan),
                   {"Broad", "--range"});
    expectUnusable(run(QStringLiteral("heights --range small=8-12 --rest small=some"), plan), {"some"});
    expectUnusable(run(QStringLiteral("heights --range small=8-12 --difference far"), plan), {"far"});
    expectUnusable(run(QStringLiteral("heights --range small=8-12 --difference -1"), plan), {"-1"});
    expectUnusable(run(QStringLiteral("start --stems none"), plan), {"none"});
    expectUnusable(run(QStringLiteral("start --stems 2"), plan), {"4"});
    expectUnusable(run(QStringLiteral("start --stems 999999"), plan), {"999999"});
    expectUnusable(run(QStringLiteral("start --stems 4 --seed -3"), plan), {"-3"});
    expectUnusable(run(QStringLiteral("spread --seed x"), plan), {"x"});
    expectUnusable(run(QStringLiteral("order --sideways"), plan), {"sideways"});
    Plan none = plan;
    none.stems.clear();
    expectUnusable(run(QStringLiteral("start"), none), {"--stems"});
    expectUnusable(run(QStringLiteral("heights --range small=2-4"), none), {"no stem"});
    // Without a place to write there is nothing to do.
    std::ostringstream out, err;
    WindowRequest window;
    write("in.stemplan", planText(plan));
    for (const char* command : {"spread", "order", "heights", "start"})
        EXPECT_EQ(runCommand({QStringLiteral("stemwright"), QLatin1String(command), path("in.stemplan")}, out,
                             err, &window),
                  exitUnusable);
    EXPECT_TRUE(out.str().empty());
}

TEST_F(SuggestCommandsTest, TooFewLeavesAreSaid) {
    Plan plan = test::smallBoard();
    for (int i = 0; i < 10; ++i)
        plan.stems[2].tiers.push_back(newTier(plan.stems[2], nullptr, plan.kinds[0].id));
    const Outcome outcome = run(QStringLiteral("spread"), plan);
    ASSERT_EQ(outcome.code, exitFine) << outcome.err;
    // 12 small leaves for the 10 places that have one and 20 more.
    EXPECT_NE(outcome.out.find("18 places stay empty for want of Small leaves"), std::string::npos)
        << outcome.out;
}

} // namespace
} // namespace stemwright

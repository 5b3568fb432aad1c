#include "app/command_line.h"

#include "core/document/bench.h"
#include "core/document/examples.h"
#include "core/document/plan_file.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <QFile>
#include <QTemporaryDir>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>

namespace stemwright {
namespace {

class StepsCommandTest : public ::testing::Test {
protected:
    QString write(const Plan& plan) {
        const QString path = folder.filePath(QStringLiteral("plan.stemplan"));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        const std::string text = planText(plan);
        file.write(text.data(), static_cast<qint64>(text.size()));
        return path;
    }
    int run(QStringList arguments) {
        out.str({});
        err.str({});
        WindowRequest window;
        return runCommand(QStringList{QStringLiteral("stemwright"), QStringLiteral("steps")} + arguments, out,
                          err, &window)
            .value_or(-1);
    }

    QTemporaryDir folder;
    std::ostringstream out, err;
};

TEST_F(StepsCommandTest, TellsTheOrderOfWorkAndHowFarItIs) {
    Plan plan = test::smallBoard();
    plan.binding.wraps = {Wrap{}};
    for (int i = 0; i < 3; ++i)
        ASSERT_TRUE(apply(plan, *stepDone(plan, StemId{1})));
    ASSERT_EQ(run({write(plan)}), exitFine);
    const std::string said = out.str();
    EXPECT_NE(said.find("1. Stem 1: 3 of 8 steps done"), std::string::npos) << said;
    EXPECT_NE(said.find("[x]  3. Tier 1, side to side"), std::string::npos) << said;
    EXPECT_NE(said.find("[ ]  4. Turn the stem a quarter. Tier 2, front to back"), std::string::npos) << said;
    EXPECT_NE(said.find("3. Stem 3"), std::string::npos);
    ASSERT_EQ(run({write(plan), QStringLiteral("--stem"), QStringLiteral("2")}), exitFine);
    EXPECT_EQ(out.str().find("Stem 1"), std::string::npos);
    EXPECT_NE(out.str().find("Stem 2"), std::string::npos);
}

TEST_F(StepsCommandTest, JsonHasEveryLeafOnceAndEndsAtTheFigures) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        const Figures all = figures(plan);
        ASSERT_EQ(run({write(plan), QStringLiteral("--json")}), exitFine);
        const nlohmann::json json = nlohmann::json::parse(out.str());
        ASSERT_EQ(json["stems"].size(), plan.stems.size());
        for (std::size_t i = 0; i < plan.stems.size(); ++i) {
            const nlohmann::json& stem = json["stems"][i];
            int leaves = 0;
            for (const nlohmann::json& step : stem["steps"])
                if (step.contains("leaves"))
                    for (const nlohmann::json& leaf : step["leaves"])
                        leaves += !leaf["mix"].is_null();
            EXPECT_EQ(leaves, all.stems[i].leaves) << info.key << ", stem " << i + 1;
            for (std::size_t w = 0; w < plan.binding.wraps.size(); ++w) {
                EXPECT_NEAR(stem["steps"].back()["used_mm"][w].get<double>(),
                            inMillimetres(all.stems[i].wraps[w].used), 0.001);
                EXPECT_NEAR(stem["layers"][w]["to_cut_mm"].get<double>(),
                            inMillimetres(all.stems[i].wraps[w].toCut), 0.001);
            }
        }
    }
}

TEST_F(StepsCommandTest, AStemThatIsMeasuredSaysWhatItReallyTook) {
    Plan plan = test::smallBoard();
    plan.binding.wraps = {Wrap{}};
    while (const auto step = stepDone(plan, StemId{1}))
        ASSERT_TRUE(apply(plan, *step));
    const Length used = figures(plan).stems[0].wraps[0].used * 1.1;
    ASSERT_TRUE(apply(plan, calibrated(plan, StemId{1}, {used}).edit));
    ASSERT_EQ(run({write(plan), QStringLiteral("--stem"), QStringLiteral("1")}), exitFine);
    EXPECT_NE(out.str().find("really used"), std::string::npos) << out.str();
    EXPECT_EQ(out.str().find(" left)"), std::string::npos) << "nothing is left of what was cut then\n"
                                                           << out.str();
    ASSERT_EQ(run({write(plan), QStringLiteral("--stem"), QStringLiteral("2")}), exitFine);
    EXPECT_NE(out.str().find(" left)"), std::string::npos) << out.str();
    ASSERT_EQ(run({write(plan), QStringLiteral("--json")}), exitFine);
    const nlohmann::json json = nlohmann::json::parse(out.str());
    EXPECT_NEAR(json["stems"][0]["layers"][0]["really_used_mm"].get<double>(), inMillimetres(used), 0.001);
    EXPECT_FALSE(json["stems"][1]["layers"][0].contains("really_used_mm"));
}

TEST_F(StepsCommandTest, WhatCannotBeUsedIsOneSentence) {
    const QString plan = write(test::smallBoard());
    const auto refused = [&](const QStringList& arguments, const char* part) {
        EXPECT_EQ(run(arguments), exitUnusable);
        EXPECT_TRUE(out.str().empty());
        const std::string said = err.str();
        EXPECT_EQ(std::count(said.begin(), said.end(), '\n'), 1) << said;
        EXPECT_NE(said.find(part), std::string::npos) << said;
    };
    for (const char* number : {"0", "4", "-1", "two", ""})
        refused({plan, QStringLiteral("--stem"), QLatin1String(number)}, "from 1 to 3");
    refused({folder.filePath(QStringLiteral("none.stemplan"))}, "no such file");
    refused({}, "needs a plan");
    refused({write(Plan{}), QStringLiteral("--stem"), QStringLiteral("1")}, "no stems");
    EXPECT_EQ(run({write(Plan{})}), exitFine);
    EXPECT_FALSE(out.str().empty());
}

TEST_F(StepsCommandTest, HardPlansAreBorne) {
    ASSERT_EQ(run({write(test::awkwardBoard())}), exitFine);
    EXPECT_NE(out.str().find("There is nothing to bind on this stem."), std::string::npos);
    EXPECT_NE(out.str().find("Tier 400"), std::string::npos);
    EXPECT_EQ(run({write(test::awkwardBoard()), QStringLiteral("--json")}), exitFine);
    EXPECT_TRUE(nlohmann::json::accept(out.str()));
}

} // namespace
} // namespace stemwright

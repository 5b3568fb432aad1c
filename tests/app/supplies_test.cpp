#include "app/supply_lines.h"

#include "app/ask.h"
#include "app/command_line.h"
#include "app/figures_text.h"
#include "app/file_store.h"
#include "app/panels/supplies_panel.h"
#include "app/session.h"
#include "app/sheet_words.h"
#include "app/supplies_csv.h"
#include "app/wording.h"
#include "core/document/examples.h"
#include "tests/support/boards.h"

#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <sstream>

namespace stemwright {
namespace {

/// A reader of RFC 4180 of our own, so that the writer is not asked about itself.
std::vector<QStringList> rowsOf(const std::string& csv) {
    std::vector<QStringList> rows;
    QStringList row;
    QString field;
    bool quoted = false;
    const QString all = QString::fromStdString(csv);
    for (qsizetype i = 0; i < all.size(); ++i) {
        const QChar c = all[i];
        if (quoted) {
            if (c != QLatin1Char('"'))
                field += c;
            else if (i + 1 < all.size() && all[i + 1] == QLatin1Char('"'))
                field += all[++i];
            else
                quoted = false;
        } else if (c == QLatin1Char('"')) {
            EXPECT_TRUE(field.isEmpty()) << "a quote within a bare field";
            quoted = true;
        } else if (c == QLatin1Char(',')) {
            row << field;
            field.clear();
        } else if (c == QLatin1Char('\r')) {
            EXPECT_TRUE(i + 1 < all.size() && all[i + 1] == QLatin1Char('\n'));
            ++i;
            row << field;
            field.clear();
            rows.push_back(row);
            row.clear();
        } else {
            EXPECT_NE(c, QLatin1Char('\n')) << "a bare line feed";
            field += c;
        }
    }
    EXPECT_TRUE(row.isEmpty() && field.isEmpty() && !quoted) << "the last row ends with CRLF";
    return rows;
}

Plan shopping() {
    Plan plan = test::smallBoard();
    plan.colours[0].name = "Plum, \"dark\"\nor so";
    plan.colours[0].sold = {2, 1.25, ""};
    plan.buying.beads = {5, 2, ""};
    plan.buying.leafWire = {5'000, 3, ""};
    plan.buying.bars = {{millimetres(300), 0.5}};
    plan.buying.clay = {500, 4, ""};
    plan.binding.wraps[0].sold = millimetres(8'000);
    plan.buying.wraps = {{0, 1.1, ""}};
    plan.kinds[0].minutes = 20;
    return plan;
}

Supplies needsOf(const Plan& plan) {
    return supplies(plan, figures(plan));
}

const QStringList* rowOf(const std::vector<QStringList>& rows, const char* what, const char* which = "") {
    for (const QStringList& row : rows)
        if (row[0] == QLatin1String(what) && row[1].contains(QLatin1String(which)))
            return &row;
    return nullptr;
}

TEST(SuppliesCsv, IsAWholeTableByRfc4180) {
    const Plan plan = shopping();
    const Supplies needs = needsOf(plan);
    const auto rows = rowsOf(suppliesCsv(plan, needs));
    ASSERT_GT(rows.size(), 10u);
    for (const QStringList& row : rows)
        EXPECT_EQ(row.size(), rows[0].size());
    EXPECT_EQ(rows[0][3], QStringLiteral("length mm"));
    const QStringList* plum = rowOf(rows, "beads", "Plum");
    ASSERT_TRUE(plum);
    EXPECT_EQ((*plum)[1], QStringLiteral("Plum, \"dark\"\nor so 11/0"));
    EXPECT_EQ((*plum)[2], QString::number(needs.beads[0].withSpare));
    EXPECT_EQ((*plum)[5], QStringLiteral("3")) << "429 beads, 4.1 g, in packets of 2 g";
    EXPECT_EQ((*plum)[8], QStringLiteral("3.75"));
    const QStringList* floss = rowOf(rows, "binding");
    ASSERT_TRUE(floss);
    EXPECT_EQ((*floss)[5], QStringLiteral("1"));
    EXPECT_EQ((*floss)[6], QStringLiteral("8000"));
    EXPECT_TRUE(rowOf(rows, "cut of the binding", "Stem 1"));
    const QStringList* cut = rowOf(rows, "cut of the straight wire", "stake of 60 mm");
    ASSERT_TRUE(cut);
    EXPECT_TRUE(rowOf(rows, "leaf to make", "Small, Plum"));
    EXPECT_TRUE(rowOf(rows, "clay"));
    EXPECT_TRUE(rowOf(rows, "hours left"));
    const QStringList* cost = rowOf(rows, "cost");
    ASSERT_TRUE(cost);
    double sum = 0;
    for (std::size_t i = 1; i < rows.size(); ++i)
        if (rows[i][0] != QLatin1String("cost"))
            sum += rows[i][8].toDouble();
    EXPECT_NEAR((*cost)[8].toDouble(), sum, 1e-9) << "the column adds up";
}

TEST(SuppliesCsv, NumbersAreSensibleAndInTheUnitChosen) {
    Plan plan = shopping();
    for (const bool inches : {false, true}) {
        if (inches)
            plan.units = {LengthUnit::inch, MassUnit::ounce, ""};
        const auto rows = rowsOf(suppliesCsv(plan, needsOf(plan)));
        for (std::size_t i = 1; i < rows.size(); ++i)
            for (const int column : {2, 3, 4, 5, 6, 7, 8}) {
                const QString& cell = rows[i][column];
                if (cell.isEmpty())
                    continue;
                EXPECT_TRUE(QRegularExpression(QStringLiteral("^\\d+(\\.\\d{1,4})?$")).match(cell).hasMatch())
                    << cell.toStdString();
                if (inches && column == 3) {
                    EXPECT_EQ(cell.toDouble() * 16, std::round(cell.toDouble() * 16)) << cell.toStdString();
                }
                if (!inches && column == 3) {
                    EXPECT_FALSE(cell.contains(QLatin1Char('.'))) << cell.toStdString();
                }
            }
        EXPECT_EQ(rows[0][4], inches ? QStringLiteral("mass oz") : QStringLiteral("mass g"));
    }
}

TEST(SupplyLines, ListEachCutAndWhetherThePlanIsProved) {
    const Plan plan = shopping();
    const Supplies needs = needsOf(plan);
    bool cut = false, proved = false, explained = true;
    for (const SupplyLine& line : supplyLines(plan, needs)) {
        cut = cut || (line.part && line.what.contains(QStringLiteral("stake of 60 mm for Stem 1, Stem 2")));
        proved = proved || line.what.startsWith(QStringLiteral("Proved"));
        explained = explained && !line.explanation.isEmpty();
    }
    EXPECT_TRUE(cut);
    EXPECT_TRUE(proved);
    EXPECT_TRUE(explained);
}

TEST(SupplyLines, KeepWithinATerminalAndNamesWhole) {
    int listed = 0;
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        const QString said = suppliesText(plan, supplies(plan, figures(plan)));
        for (const QString& line : said.split(QLatin1Char('\n')))
            EXPECT_LE(line.size(), 80) << info.key << ": " << line.toStdString();
        for (const SupplyLine& line : supplyLines(plan, supplies(plan, figures(plan)))) {
            if (!line.part || line.what.size() < 80 || line.amount.isEmpty())
                continue;
            ++listed;
            // Folded, every stem is there on one line.
            for (const QString& name : line.what.section(QLatin1String(": "), 1).split(QLatin1String(", ")))
                EXPECT_TRUE(said.contains(name)) << info.key << ": " << name.toStdString();
        }
    }
    EXPECT_GT(listed, 0) << "a list that is longer than a line";
}

TEST(SupplyLines, TimeThatIsNotKnownIsSaidInTheSameWordsOnPaperAndInTheTable) {
    const Plan plan = example("hedge");
    const Supplies needs = supplies(plan, figures(plan));
    ASSERT_TRUE(needs.minutesPartly);
    EXPECT_NE(suppliesCsv(plan, needs).find(partlyKnownTimeText().toStdString()), std::string::npos);
    EXPECT_EQ(TranslatedWords(plan.units).word(SheetWord::hoursPartly, {}),
              partlyKnownTimeText().toStdString());
}

TEST(SupplyLines, SayHowFarFromProvedAPlanIs) {
    CuttingPlan cutting;
    cutting.barCount = 5;
    cutting.fewestBars = 4;
    EXPECT_TRUE(proofText(cutting, {}).contains(QStringLiteral("fewer than 4")));
    cutting.fewestBars = 5;
    cutting.bought = millimetres(1'000);
    cutting.leastBought = millimetres(940);
    EXPECT_TRUE(proofText(cutting, {}).contains(QStringLiteral("60 mm")));
    cutting.proved = true;
    EXPECT_TRUE(proofText(cutting, {}).startsWith(QStringLiteral("Proved")));
}

class SuppliesCommandTest : public testing::Test {
protected:
    int run(const QString& line) {
        out.str({});
        err.str({});
        return *runCommand(QStringLiteral("stemwright %1").arg(line).split(QLatin1Char(' ')), out, err,
                           nullptr);
    }
    QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }
    void SetUp() override {
        QString why;
        ASSERT_TRUE(writePlan(shopping(), path("a.stemplan"), &why)) << why.toStdString();
    }
    QTemporaryDir folder;
    std::ostringstream out, err;
};

TEST_F(SuppliesCommandTest, PrintsTextOrCsvOrWritesAFile) {
    EXPECT_EQ(run(QStringLiteral("supplies %1").arg(path("a.stemplan"))), exitFine) << err.str();
    EXPECT_NE(out.str().find("Seed beads"), std::string::npos);
    EXPECT_EQ(run(QStringLiteral("supplies %1 --csv").arg(path("a.stemplan"))), exitFine);
    EXPECT_EQ(out.str(), suppliesCsv(shopping(), needsOf(shopping())));
    EXPECT_EQ(run(QStringLiteral("supplies %1 --csv -o %2").arg(path("a.stemplan"), path("a.csv"))), exitFine);
    EXPECT_TRUE(out.str().empty());
    QFile file(path("a.csv"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll().toStdString(), suppliesCsv(shopping(), needsOf(shopping())));
}

TEST_F(SuppliesCommandTest, WhatCannotBeUsedIsOneSentence) {
    for (const QString& line :
         {QStringLiteral("supplies"), QStringLiteral("supplies %1").arg(path("none")),
          QStringLiteral("supplies %1 --csw").arg(path("a.stemplan")),
          QStringLiteral("supplies %1 -o %2").arg(path("a.stemplan"), path("no/such.csv"))}) {
        EXPECT_EQ(run(line), exitUnusable) << line.toStdString();
        const std::string said = err.str();
        EXPECT_EQ(std::count(said.begin(), said.end(), '\n'), 1) << said;
    }
}

TEST(SuppliesPanel, SavesWhatItShows) {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("list.csv"));
    ask::Stand stand;
    stand.file = [&] { return file; };
    stand.told = [](const QString& sentence) { ADD_FAILURE() << sentence.toStdString(); };
    ask::setStand(stand);
    {
        Session session(shopping());
        SuppliesPanel panel(session);
        panel.show();
        QTest::mouseClick(panel.findChild<QPushButton*>(QStringLiteral("saveSupplies")), Qt::LeftButton);
        QFile written(file);
        ASSERT_TRUE(written.open(QIODevice::ReadOnly));
        EXPECT_EQ(written.readAll().toStdString(), suppliesCsv(session.plan(), needsOf(session.plan())));
        const auto shows = [&](const char* words) {
            for (const QLabel* label : panel.findChildren<QLabel*>())
                if (label->text().contains(QLatin1String(words)))
                    return true;
            return false;
        };
        EXPECT_TRUE(QTest::qWaitFor([&] { return shows("Proved"); }));
        EXPECT_TRUE(shows("stake of 60 mm"));
    }
    ask::setStand(std::nullopt);
}

} // namespace
} // namespace stemwright

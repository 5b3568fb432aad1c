#include "app/fields/entry.h"
#include "app/leaves/grid_view.h"
#include "app/leaves/mix_text.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QLocale>

namespace stemwright {
namespace {

TEST(EntryTest, FollowsTheMakersLanguage) {
    const auto read = [](const QString& text) {
        return readLength(text, LengthUnit::millimetre, millimetres(0), millimetres(10'000));
    };
    EXPECT_EQ(read(QStringLiteral("1,250")).value, millimetres(1250));
    QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
    EXPECT_EQ(entryText(millimetres(6.5), LengthUnit::millimetre), QStringLiteral("6,5 mm"));
    EXPECT_EQ(read(QStringLiteral("1,250")).value, millimetres(1.25));
    EXPECT_EQ(read(QStringLiteral("1.5")).value, millimetres(1.5)) << "the other mark is understood too";
    QLocale::setDefault(QLocale::c());
}

TEST(EntryTest, SaysWhyNot) {
    EXPECT_EQ(readCount(QStringLiteral("2.5"), 0, 10).refusal, QStringLiteral("“2.5” is no whole number."));
    EXPECT_EQ(readCount(QStringLiteral("11"), 0, 10).refusal,
              QStringLiteral("11 is too large: from 0 to 10 is possible."));
    EXPECT_EQ(readNumber(QString(), 0, 10, 1).refusal, QStringLiteral("A number is missing here."));
    EXPECT_FALSE(readCount(QStringLiteral("99999999999999999999"), 0, 10).value);
    EXPECT_FALSE(readNumber(QStringLiteral("nan"), 0, 10, 1).value);
    EXPECT_LT(readCount(QString(5'000, QLatin1Char('9')), 0, 10).refusal.size(), 120) << "a sentence, no page";
}

TEST(EntryTest, GaugesNeedTheirSystemOnce) {
    const auto read = [](const char* text, GaugeSystem usual) {
        return readGauge(QLatin1String(text), usual).value.value_or(GaugeNumber{GaugeSystem::awg, -1});
    };
    EXPECT_EQ(read("28", GaugeSystem::swg), (GaugeNumber{GaugeSystem::swg, 28}));
    EXPECT_EQ(read("awg28", GaugeSystem::swg), (GaugeNumber{GaugeSystem::awg, 28}));
    EXPECT_EQ(read("steel gauge 18", GaugeSystem::awg), (GaugeNumber{GaugeSystem::steel, 18}));
    EXPECT_EQ(read("", GaugeSystem::awg), std::nullopt) << "no number fits";
    EXPECT_FALSE(readGauge(QStringLiteral("AWG"), GaugeSystem::awg).value);
    EXPECT_FALSE(readGauge(QStringLiteral("AWG 99"), GaugeSystem::awg).value);
}

TEST(ClipboardCells, ReadsWhatSpreadsheetsPut) {
    EXPECT_EQ(cellsOf(QStringLiteral("a\tb\r\nc\td\r\n")), (QList<QStringList>{{"a", "b"}, {"c", "d"}}));
    EXPECT_EQ(cellsOf(QStringLiteral("a\rb")), (QList<QStringList>{{"a"}, {"b"}}));
    EXPECT_EQ(cellsOf(QStringLiteral("\"two\nlines\"\t\"a \"\"word\"\"\"\n")),
              (QList<QStringList>{{"two\nlines", "a \"word\""}}));
    EXPECT_EQ(cellsOf(QStringLiteral("a\t\n\tb\n")), (QList<QStringList>{{"a", ""}, {"", "b"}}));
    EXPECT_EQ(cellsOf(QStringLiteral("6 1/4\"\t3\"\n")), (QList<QStringList>{{"6 1/4\"", "3\""}}))
        << "inch marks";
    EXPECT_TRUE(cellsOf(QString()).isEmpty());
    const QList<QStringList> odd{{"a\tb", "c\nd"}, {"\"q\"", ""}};
    EXPECT_EQ(cellsOf(textOf(odd)), odd);
}

TEST(MixText, IsReadAsItIsWritten) {
    Plan plan = test::smallBoard();
    plan.colours.push_back({ColourId{3}, "Sea 2", {1, 2, 3}, ""});
    std::vector<BeadShare> read;
    for (const std::vector<BeadShare>& shares :
         {std::vector<BeadShare>{{ColourId{1}, 1, ""}},
          {{ColourId{1}, 1, ""}, {ColourId{2}, 1, ""}},
          {{ColourId{2}, 2.5, ""}, {ColourId{1}, 1, ""}, {ColourId{2}, 1, ""}},
          {{ColourId{3}, 1, ""}},
          {{ColourId{3}, 4, ""}, {ColourId{2}, 2, ""}}}) {
        EXPECT_EQ(readMix(plan, mixText(plan, shares), read), QString());
        EXPECT_EQ(read, shares) << mixText(plan, shares).toStdString();
    }
    EXPECT_EQ(readMix(plan, QStringLiteral("plum 60 % / SEA 40%"), read), QString());
    EXPECT_EQ(read[0].share, 60);
    for (const char* bad : {"", "+", "Plum +", "Gold", "Plum 0", "Plum -1", "Plum 1e9"})
        EXPECT_FALSE(readMix(plan, QLatin1String(bad), read).isEmpty()) << bad;
}

} // namespace
} // namespace stemwright

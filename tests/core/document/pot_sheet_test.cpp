#include "core/document/sheet.h"

#include "core/document/examples.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

namespace stemwright {
namespace {

using test::marksOf;

std::vector<Page> pagesOf(const Plan& plan, const SheetOptions& options) {
    return sheetPages(plan, figures(plan), options, test::PlainMeasure(), test::PlainWords());
}

TEST(PotSheet, ThePotShowsStemsWhereTheyStandTrueSize) {
    Plan plan = test::randomBoard(1, 4, 10, 4);
    plan.stems[0].standing = Standing{millimetres(0), millimetres(0), ""};
    plan.stems[1].standing = Standing{millimetres(30), millimetres(0), ""};
    plan.stems[2].standing = Standing{millimetres(0), millimetres(20), ""};
    SheetOptions options;
    options.only = {SheetPage::pot};
    const std::vector<Page> pages = pagesOf(plan, options);
    ASSERT_EQ(pages.size(), 1u);
    const auto spots = marksOf<CircleMark>(pages[0]);
    ASSERT_EQ(spots.size(), 3u);
    EXPECT_NEAR(spots[1].middle.x - spots[0].middle.x, 30, 1e-9);
    EXPECT_NEAR(spots[1].middle.y, spots[0].middle.y, 1e-9);
    EXPECT_NEAR(spots[0].middle.y - spots[2].middle.y, 20, 1e-9) << "the back is up";
    // The opening's edge is its radius away all round.
    int edge = 0;
    for (const LineMark& line : marksOf<LineMark>(pages[0]))
        if (line.width == 0.35) {
            EXPECT_NEAR(std::hypot(line.from.x - spots[0].middle.x, line.from.y - spots[0].middle.y), 60, 1e-6);
            ++edge;
        }
    EXPECT_GT(edge, 100);
}

TEST(PotSheet, APotLargerThanThePaperIsInParts) {
    Plan plan = test::randomBoard(1, 4, 10, 4);
    plan.pot.topDiameter = millimetres(420);
    for (std::size_t i = 0; i < 4; ++i)
        plan.stems[i].standing =
            Standing{millimetres(-190 + 120.0 * static_cast<double>(i)), millimetres(10), ""};
    SheetOptions options;
    options.only = {SheetPage::pot};
    const std::vector<Page> pages = pagesOf(plan, options);
    EXPECT_EQ(pages.size(), 6u);
    std::set<StemId> seen;
    for (const Page& page : pages)
        seen.insert(page.stems.begin(), page.stems.end());
    EXPECT_EQ(seen.size(), 4u);
    // Both sides of each cut say the same letter: three cuts to the left and right, four between above and
    // below.
    std::map<std::string, int> joins;
    for (const Page& page : pages)
        for (const TextMark& text : marksOf<TextMark>(page))
            for (char letter = 'A'; letter <= 'Z'; ++letter)
                if (const std::string join = test::PlainWords().word(SheetWord::join, {std::string(1, letter)});
                    text.text.starts_with(join + " "))
                    ++joins[join];
    EXPECT_EQ(joins.size(), 7u);
    for (const auto& [join, count] : joins)
        EXPECT_EQ(count, 2) << join;
}

TEST(PotSheet, AWideTroughLiesOnPaperHeldAcross) {
    Plan plan = test::smallBoard();
    plan.pot.opening = PotOpening::rectangular;
    plan.pot.topDiameter = millimetres(250);
    plan.pot.topBreadth = millimetres(90);
    SheetOptions options;
    options.only = {SheetPage::pot};
    const std::vector<Page> pages = pagesOf(plan, options);
    ASSERT_EQ(pages.size(), 1u);
    EXPECT_TRUE(pages[0].landscape);
}

TEST(PotSheet, NoLineRunsThroughANameWhereThereIsRoom) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter}) {
            SheetOptions options;
            options.only = {SheetPage::pot};
            options.paper = paper;
            for (const Page& page : pagesOf(plan, options)) {
                // By their widths: the rim, and the mark of the middle.
                std::set<std::string> names;
                for (const Stem& stem : plan.stems)
                    names.insert(stem.name);
                int seen = 0;
                for (const TextMark& text : marksOf<TextMark>(page)) {
                    if (!names.contains(text.text))
                        continue;
                    ++seen;
                    for (const LineMark& line : marksOf<LineMark>(page))
                        EXPECT_FALSE((line.width == 0.35 || line.width == 0.15) &&
                                     boxOf(line, plan).overlaps(boxOf(text, plan)))
                            << info.key << ": " << text.text;
                }
                EXPECT_GT(seen, 0) << info.key;
            }
        }
    }
}

TEST(PotSheet, ThePotsOutlineIsThatOfItsOpening) {
    Plan plan = test::smallBoard();
    plan.pot.opening = PotOpening::rectangular;
    plan.pot.topDiameter = millimetres(120);
    plan.pot.topBreadth = millimetres(50);
    SheetOptions options;
    options.only = {SheetPage::pot};
    double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
    for (const LineMark& line : marksOf<LineMark>(pagesOf(plan, options).front()))
        if (line.width == 0.35) {
            left = std::min({left, line.from.x, line.to.x});
            right = std::max({right, line.from.x, line.to.x});
            top = std::min({top, line.from.y, line.to.y});
            bottom = std::max({bottom, line.from.y, line.to.y});
        }
    EXPECT_NEAR(right - left, 120, 1e-6) << "true size";
    EXPECT_NEAR(bottom - top, 50, 1e-6);
}

} // namespace
} // namespace stemwright

#include "core/document/sheet_canvas.h"

#include "core/figures/figures.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

class SheetTableTest : public ::testing::Test {
protected:
    double lines(const Table& table, const std::vector<std::string>& cells) const {
        return (table.rowHeight(context, cells) - table.rowHeight(context, {"x"})) / lineHeight(type::text) + 1;
    }

    const Plan plan = test::smallBoard();
    const Figures reckoned = figures(plan);
    const SheetOptions options{};
    const test::PlainMeasure measure{};
    const test::PlainWords words{};
    const SheetContext context{plan, reckoned, options, measure, words};
};

TEST_F(SheetTableTest, TextRunsOnOverEmptyCellsAndStopsAtFullOnes) {
    const Table table({{20, Align::left}, {20, Align::right}, {20, Align::right}}, type::text);
    const std::string broad = "words for two columns"; // some 33 mm
    EXPECT_NEAR(lines(table, {broad, "", "9 mm"}), 1, 1e-9);
    EXPECT_NEAR(lines(table, {broad, "", ""}), 1, 1e-9);
    EXPECT_NEAR(lines(table, {broad, "9 mm", ""}), 2, 1e-9);
    EXPECT_NEAR(lines(table, {"", broad, ""}), 2, 1e-9) << "figures stay in their column";
}

TEST_F(SheetTableTest, LongHeadingsBreakWhereTheyWouldCrowdTheFigures) {
    const std::vector<std::string> head{"Stem", "A heading of very many words", "Another of very many words"};
    const std::vector<std::vector<std::string>> rows{head, {"1", "2.47 m", "1.40 m"}};
    const std::vector<Align> aligns{Align::left, Align::right, Align::right};
    const auto headLines = [&](double width) {
        const Table table = Table::fitted(context, rows, aligns, type::text, type::smallStrong, width);
        EXPECT_NEAR(table.width(), width, 1e-6);
        EXPECT_NEAR(lines(table, rows[1]), 1, 1e-9);
        return table.height(context, head, type::smallStrong) / lineHeight(type::smallStrong);
    };
    EXPECT_LT(headLines(130), 2);
    EXPECT_GT(headLines(75), 2);
}

} // namespace
} // namespace stemwright

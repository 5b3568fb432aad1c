#include "core/document/sheet.h"

#include "core/document/examples.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace stemwright {
namespace {

using test::marksOf;

std::vector<Page> matsOf(const Plan& plan) {
    SheetOptions options;
    options.only = {SheetPage::mats};
    return sheetPages(plan, figures(plan), options, test::PlainMeasure(), test::PlainWords());
}

bool within(const LeafMark& mark, const Plan& plan, PointMm at) {
    const Kind& kind = *find(plan, mark.leaf.kind);
    const double turn = mark.degrees * std::numbers::pi / 180;
    const double dx = at.x - mark.base.x, dy = at.y - mark.base.y;
    const PointMm own{dx * std::cos(turn) + dy * std::sin(turn), -dx * std::sin(turn) + dy * std::cos(turn)};
    // Even-odd rule along its outline.
    bool inside = false;
    const std::vector<PointMm> outline = leafOutline(shapeOf(kind));
    for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++)
        if ((outline[i].y > own.y) != (outline[j].y > own.y) &&
            own.x < (outline[j].x - outline[i].x) * (own.y - outline[i].y) / (outline[j].y - outline[i].y) +
                        outline[i].x)
            inside = !inside;
    return inside;
}

TEST(MatDrawing, ACodeStandsWhereItsOwnLeafIsSeen) {
    int codes = 0, hidden = 0;
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        for (const Page& page : matsOf(plan)) {
            const std::vector<LeafMark> leaves = marksOf<LeafMark>(page);
            for (const TextMark& text : marksOf<TextMark>(page)) {
                if (text.style != TextStyle{7.5, true})
                    continue;
                const PointMm middle{text.at.x, text.at.y - 0.38 * 7.5 * millimetresPerPoint};
                const LeafMark* top = nullptr;
                for (const LeafMark& leaf : leaves)
                    if (leaf.style == LeafStyle::tinted && find(plan, leaf.leaf.kind) &&
                        within(leaf, plan, middle))
                        top = &leaf;
                ASSERT_TRUE(top) << info.key << ": " << text.text;
                const Mix* mix = find(plan, top->leaf.mix);
                ++codes;
                hidden += !mix || mix->code != text.text;
            }
        }
    }
    EXPECT_GT(codes, 800);
    EXPECT_EQ(hidden, 0);
}

TEST(MatDrawing, AStemWithoutLeavesAsksForNothingToBeCut) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].tiers.clear();
    const test::PlainWords words;
    int cuts = 0, none = 0;
    for (const Page& page : matsOf(plan))
        for (const TextMark& text : marksOf<TextMark>(page)) {
            cuts += text.text.starts_with(words.word(SheetWord::cutWrap, {}) + " ");
            none += text.text == words.word(SheetWord::noLeaves, {});
        }
    EXPECT_EQ(cuts, 0);
    EXPECT_EQ(none, 1);
}

} // namespace
} // namespace stemwright

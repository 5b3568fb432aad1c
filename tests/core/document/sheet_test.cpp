#include "core/document/sheet.h"

#include "core/document/bench.h"
#include "core/document/sheet_frame.h"
#include "core/figures/binding_steps.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

namespace stemwright {
namespace {

using test::marksOf;

std::vector<Page> pagesOf(const Plan& plan, SheetOptions options = {}) {
    return sheetPages(plan, figures(plan), options, test::PlainMeasure(), test::PlainWords());
}

std::vector<Plan> boards() {
    std::vector<Plan> out{test::smallBoard(), test::randomBoard(1, 9, 24, 8),
                          test::randomBoard(2, 30, 20, 12, 3), test::awkwardBoard(), Plan{}};
    Plan inch = test::randomBoard(3, 4, 30, 5);
    inch.units.length = LengthUnit::inch;
    inch.pot.plantingDepth = millimetres(12);
    out.push_back(inch);
    return out;
}

constexpr Paper papers[] = {Paper::a4, Paper::a3, Paper::letter};

TEST(Sheet, TheTestBoardsAreValid) {
    for (const Plan& plan : boards())
        EXPECT_FALSE(firstProblem(plan)) << firstProblem(plan)->place;
}

TEST(Sheet, NothingIsOutsideTheMargins) {
    for (const Plan& plan : boards())
        for (const Paper paper : papers) {
            SheetOptions options;
            options.paper = paper;
            for (const Page& page : pagesOf(plan, options)) {
                const BoxMm inside{pageMargin - 0.2, pageMargin - 0.2, page.width - 2 * pageMargin + 0.4,
                                   page.height - 2 * pageMargin + 0.4};
                for (const Mark& mark : page.marks) {
                    const BoxMm box = boxOf(mark, plan);
                    const auto* text = std::get_if<TextMark>(&mark);
                    ASSERT_TRUE(inside.contains(box))
                        << page.title << ": " << box.x << ", " << box.y << " to " << box.right() << ", "
                        << box.bottom() << " on " << page.width << " x " << page.height << ", kind "
                        << mark.index() << (text ? ": " + text->text : "");
                }
            }
        }
}

TEST(Sheet, NoTextLiesOnAnother) {
    for (const Plan& plan : boards())
        for (const Paper paper : papers) {
            SheetOptions options;
            options.paper = paper;
            for (const Page& page : pagesOf(plan, options)) {
                const auto texts = marksOf<TextMark>(page);
                std::vector<BoxMm> boxes;
                for (const TextMark& text : texts)
                    boxes.push_back(boxOf(text, plan));
                for (std::size_t i = 0; i < boxes.size(); ++i)
                    for (std::size_t j = i + 1; j < boxes.size(); ++j)
                        ASSERT_FALSE(boxes[i].overlaps(boxes[j]))
                            << page.title << ": '" << texts[i].text << "' and '" << texts[j].text << "'";
            }
        }
}

TEST(Sheet, EveryPageHasItsRulesTitleAndNumber) {
    Plan plan = test::randomBoard(1, 9, 24, 8);
    plan.about.date = "2026-03-02";
    const std::vector<Page> pages = pagesOf(plan);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        bool mm = false, inch = false, number = false, title = false, date = false;
        for (const LineMark& line : marksOf<LineMark>(pages[i]))
            if (line.from.y == line.to.y) {
                mm |= std::abs(line.to.x - line.from.x - 100) < 1e-9;
                inch |= std::abs(line.to.x - line.from.x - 101.6) < 1e-9;
            }
        const std::string wanted =
            test::PlainWords().word(SheetWord::pageOf, {std::to_string(i + 1), std::to_string(pages.size())});
        for (const TextMark& text : marksOf<TextMark>(pages[i])) {
            number |= text.text == wanted;
            title |= text.text == plan.about.title;
            date |= text.text == plan.about.date;
        }
        EXPECT_TRUE(mm && inch && number && title && date) << i;
    }
}

TEST(Sheet, EveryLeafIsOnExactlyOneMatAtItsSizeAndAngle) {
    for (const Plan& plan : boards())
        for (const Paper paper : papers) {
            SheetOptions options;
            options.paper = paper;
            options.only = {SheetPage::mats};
            std::map<SlotRef, int> seen;
            const std::string steeper = test::PlainWords().word(SheetWord::drawnSteeper, {});
            for (const Page& page : pagesOf(plan, options)) {
                bool remarked = false;
                for (const TextMark& text : marksOf<TextMark>(page))
                    remarked |= text.text == steeper;
                for (const LeafMark& leaf : marksOf<LeafMark>(page)) {
                    if (leaf.style == LeafStyle::ghost)
                        continue;
                    const Slot* slot = find(plan, leaf.slot);
                    ASSERT_TRUE(slot);
                    EXPECT_EQ(slot->leaf, leaf.leaf);
                    EXPECT_EQ(leaf.scale, 1);
                    EXPECT_EQ(leaf.shorten, 1);
                    const Kind* kind = find(plan, leaf.leaf.kind);
                    EXPECT_TRUE(remarked ||
                                std::abs(leaf.degrees) == inDegrees(kind ? kind->angle : degrees(60)))
                        << "drawn at another angle without a word";
                    ++seen[leaf.slot];
                }
            }
            for (const Stem& stem : plan.stems)
                for (std::size_t t = 0; t < stem.tiers.size(); ++t)
                    for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s)
                        EXPECT_EQ((seen[{stem.id, static_cast<int>(t), static_cast<int>(s)}]), 1)
                            << stem.name << " tier " << t + 1 << " slot " << s + 1;
        }
}

TEST(Sheet, TiersStandAtTheirSpacings) {
    Plan plan = test::randomBoard(1, 6, 24, 8);
    plan.stems[2].tiers[3].spacing = millimetres(13.5);
    SheetOptions options;
    options.only = {SheetPage::mats};
    int compared = 0;
    for (const Page& page : pagesOf(plan, options)) {
        std::map<std::pair<std::uint32_t, int>, double> joints;
        for (const LeafMark& leaf : marksOf<LeafMark>(page))
            if (leaf.style != LeafStyle::ghost)
                joints[{leaf.slot.stem.value, leaf.slot.tier}] = leaf.base.y;
        for (const auto& [key, y] : joints) {
            const auto next = joints.find({key.first, key.second + 1});
            if (next == joints.end())
                continue;
            const Stem& stem = *find(plan, StemId{key.first});
            const Length spacing =
                stem.tiers[static_cast<std::size_t>(key.second)].spacing.value_or(stem.spacing);
            EXPECT_NEAR(next->second - y, inMillimetres(spacing), 1e-9);
            ++compared;
        }
    }
    EXPECT_GT(compared, 50);
}

TEST(Sheet, LongStemsAreCarriedOverWithJoiningMarks) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].tail = millimetres(600);
    SheetOptions options;
    options.only = {SheetPage::mats};
    const std::vector<Page> pages = pagesOf(plan, options);
    ASSERT_EQ(pages.size(), 4u);
    int joins = 0;
    const std::string join = test::PlainWords().word(SheetWord::join, {"A"});
    for (const Page& page : pages)
        for (const TextMark& text : marksOf<TextMark>(page))
            joins += text.text.starts_with(join);
    EXPECT_EQ(joins, 2) << "the first joint is marked on both of its sheets";
}

TEST(Sheet, ShortStemsShareAPage) {
    Plan plan = test::smallBoard();
    for (Stem& stem : plan.stems)
        stem.tail = millimetres(15);
    SheetOptions options;
    options.only = {SheetPage::mats};
    EXPECT_EQ(pagesOf(plan, options).size(), 1u);
}

TEST(Sheet, ChosenStemsAndPagesOnly) {
    const Plan plan = test::randomBoard(1, 9, 24, 8);
    SheetOptions options;
    options.only = {SheetPage::mats};
    options.stems = {1, 4};
    std::vector<StemId> stems;
    for (const Page& page : pagesOf(plan, options)) {
        EXPECT_EQ(page.what, SheetPage::mats);
        stems.insert(stems.end(), page.stems.begin(), page.stems.end());
    }
    EXPECT_EQ(stems, (std::vector<StemId>{StemId{2}, StemId{5}}));
}

TEST(Sheet, FiguresOfAllCardsStandBelowEachOther) {
    const Plan plan = test::randomBoard(2, 30, 20, 12, 3);
    SheetOptions options;
    options.only = {SheetPage::cards};
    std::set<double> heads;
    const std::string left = test::PlainWords().word(SheetWord::columnLeft, {}),
                      used = test::PlainWords().word(SheetWord::columnUsed, {});
    double before = 0;
    for (const Page& page : pagesOf(plan, options))
        for (const TextMark& text : marksOf<TextMark>(page))
            if (text.text == used)
                heads.insert(text.at.x);
            else if (text.text == left)
                before = text.at.x;
    EXPECT_EQ(heads.size(), 1u);
    // They take what their figures need, not more: the steps have the rest.
    EXPECT_LT(before - *heads.begin(), 25);
}

TEST(Sheet, CardsHaveABoxToTickForEachStep) {
    const Plan plan = test::smallBoard();
    SheetOptions options;
    options.only = {SheetPage::cards};
    const std::vector<Page> pages = pagesOf(plan, options);
    std::size_t boxes = 0, steps = 0;
    for (const Page& page : pages)
        for (const ShapeMark& shape : marksOf<ShapeMark>(page))
            boxes += shape.points.size() == 4 && shape.points[1].x - shape.points[0].x < 4;
    for (const Stem& stem : plan.stems)
        steps += bindingSteps(plan, stem).size();
    EXPECT_GT(steps, 10u);
    EXPECT_EQ(boxes, steps);
}

TEST(Sheet, WhatIsDoneIsTickedOnTheCards) {
    Plan plan = test::smallBoard();
    SheetOptions options;
    options.only = {SheetPage::cards};
    // Strokes of a tick are the only open shapes on a card.
    const auto ticks = [&] {
        std::size_t found = 0;
        for (const Page& page : pagesOf(plan, options))
            for (const ShapeMark& shape : marksOf<ShapeMark>(page))
                found += !shape.closed;
        return found;
    };
    EXPECT_EQ(ticks(), 0u);
    const StemId stem = plan.stems[0].id;
    const std::size_t steps = bindingSteps(plan, plan.stems[0]).size();
    std::size_t done = 0;
    while (const auto step = stepDone(plan, stem)) {
        ASSERT_TRUE(apply(plan, *step));
        EXPECT_EQ(ticks(), ++done);
    }
    EXPECT_EQ(done, steps);
    // A tier that is bound while the one above it is not has its tick, and nothing after it.
    Plan other = test::smallBoard();
    other.stems[0].tiers[1].progress.bound = true;
    std::swap(plan, other);
    std::size_t before = 0;
    for (const BindingStep& step : bindingSteps(plan, plan.stems[0])) {
        if (step.code == BindingStepCode::tier)
            break;
        ++before;
    }
    EXPECT_EQ(ticks(), before + 1);
}

TEST(Sheet, CardsStandBesideEachOtherOnLargePaper) {
    const Plan plan = test::randomBoard(2, 30, 20, 12, 3);
    SheetOptions options;
    options.paper = Paper::a3;
    options.only = {SheetPage::cards};
    std::vector<StemId> stems;
    std::size_t steps = 0, boxes = 0;
    std::set<double> lefts;
    for (const Page& page : pagesOf(plan, options)) {
        EXPECT_TRUE(page.landscape);
        stems.insert(stems.end(), page.stems.begin(), page.stems.end());
        for (const ShapeMark& shape : marksOf<ShapeMark>(page))
            if (shape.points.size() == 4 && shape.points[1].x - shape.points[0].x < 4) {
                ++boxes;
                lefts.insert(shape.points[0].x);
            }
    }
    for (const Stem& stem : plan.stems)
        steps += bindingSteps(plan, stem).size();
    EXPECT_EQ(boxes, steps);
    EXPECT_EQ(lefts.size(), 2u) << "two columns";
    ASSERT_EQ(stems.size(), plan.stems.size());
    for (std::size_t i = 0; i < stems.size(); ++i)
        EXPECT_EQ(stems[i], plan.stems[i].id) << "in the order of the stems";
}

TEST(Sheet, LeavesToMakeHaveABoxEach) {
    const Plan plan = test::smallBoard(); // 2 to make of 3 mixes of 2 kinds
    SheetOptions options;
    options.only = {SheetPage::leaves};
    const std::vector<Page> pages = pagesOf(plan, options);
    ASSERT_EQ(pages.size(), 1u);
    std::size_t boxes = 0;
    for (const ShapeMark& shape : marksOf<ShapeMark>(pages[0]))
        boxes += shape.points.size() == 4 && shape.points[1].x - shape.points[0].x < 4;
    EXPECT_EQ(boxes, 12u);
}

TEST(Sheet, ATallyCountsInFivesOnEveryLine) {
    Plan plan = test::smallBoard();
    plan.kinds.resize(1);
    plan.kinds[0].stock.resize(1);
    plan.kinds[0].stock[0].toMake = 58;
    plan.stems.clear();
    SheetOptions options;
    options.only = {SheetPage::leaves};
    for (const Paper paper : papers) {
        options.paper = paper;
        std::map<double, std::size_t> lines;
        for (const Page& page : pagesOf(plan, options))
            for (const ShapeMark& shape : marksOf<ShapeMark>(page))
                if (shape.points.size() == 4 && shape.points[1].x - shape.points[0].x < 4)
                    ++lines[shape.points[0].y];
        std::size_t boxes = 0;
        for (const auto& [y, count] : lines) {
            boxes += count;
            EXPECT_TRUE(count % 5 == 0 || boxes == 58) << count << " on a line that is not the last";
        }
        EXPECT_EQ(boxes, 58u);
    }
}

TEST(Sheet, ACuttingPlanSaysHowNearToTheBestItIs) {
    const Plan plan = test::smallBoard();
    const Figures reckoned = figures(plan);
    const SheetOptions options;
    const test::PlainMeasure measure;
    const test::PlainWords words;
    const SheetContext context{plan, reckoned, options, measure, words};
    Supplies supplies;
    supplies.bars.resize(1);
    CuttingPlan& cutting = supplies.bars[0].cutting;
    cutting.bars = {{millimetres(1000), {}, 5, millimetres(30)}};
    cutting.barCount = 5;
    cutting.bought = millimetres(5000);
    cutting.waste = millimetres(150);
    const auto says = [&](const std::string& line) {
        const std::vector<Page> pages = suppliesPages(context, supplies);
        for (const TextMark& text : marksOf<TextMark>(pages.at(0)))
            if (text.text == line)
                return true;
        return false;
    };
    cutting.fewestBars = 4;
    cutting.leastBought = millimetres(4000);
    EXPECT_TRUE(says(words.word(SheetWord::barUnproved, {"5", "150.0 mm", "4"})));
    cutting.fewestBars = 5;
    cutting.leastBought = millimetres(4940);
    EXPECT_TRUE(says(words.word(SheetWord::barUnprovedWaste, {"5", "150.0 mm", "60.0 mm"})));
    cutting.proved = true;
    EXPECT_TRUE(says(words.word(SheetWord::barProved, {"5", "150.0 mm"})));
}

TEST(Sheet, TheGlanceSaysOnWhichPageEachMatIs) {
    const Plan plan = test::randomBoard(2, 30, 20, 12, 3);
    const std::vector<Page> pages = pagesOf(plan);
    const std::string column = test::PlainWords().word(SheetWord::columnMat, {});
    int rows = 0;
    for (const Page& page : pages) {
        if (page.what != SheetPage::glance)
            continue;
        double right = 0;
        for (const TextMark& text : marksOf<TextMark>(page))
            if (text.text == column)
                right = text.at.x;
        std::map<double, std::string> numbers;
        for (const TextMark& text : marksOf<TextMark>(page))
            if (right > 0 && text.at.x == right && text.align == Align::right && text.text != column)
                numbers[text.at.y] = text.text;
        for (const TextMark& text : marksOf<TextMark>(page))
            for (std::size_t i = 0; i < plan.stems.size(); ++i)
                if (text.text == std::to_string(i + 1) + " " + plan.stems[i].name &&
                    numbers.contains(text.at.y)) {
                    const Page& mat = pages.at(static_cast<std::size_t>(std::stoi(numbers[text.at.y])) - 1);
                    EXPECT_EQ(mat.what, SheetPage::mats);
                    EXPECT_NE(std::find(mat.stems.begin(), mat.stems.end(), plan.stems[i].id), mat.stems.end());
                    ++rows;
                }
    }
    EXPECT_EQ(rows, 30);
}

TEST(Sheet, TheFirstPageShowsThePlantInItsPotWhereAllStemsAreAskedFor) {
    const Plan plan = test::smallBoard();
    SheetOptions options;
    const auto plants = [&] { return marksOf<PlantMark>(pagesOf(plan, options).front()); };
    ASSERT_EQ(plants().size(), 1u);
    const BoxMm box = plants().front().box;
    EXPECT_GT(box.width, 60);
    EXPECT_GT(box.height, 60);
    for (const LeafMark& leaf : marksOf<LeafMark>(pagesOf(plan, options).front()))
        EXPECT_FALSE(leaf.slot.stem.value != 0 && boxOf(leaf, plan).overlaps(box))
            << "the stems stand beside it";
    options.stems = {0};
    EXPECT_TRUE(plants().empty()) << "one stem is not the plant";
}

TEST(Sheet, NamesAreWholeOnThePage) {
    const Plan plan = test::awkwardBoard();
    std::string said;
    for (const TextMark& text : marksOf<TextMark>(pagesOf(plan).front()))
        said += text.text;
    const auto squeezed = [](std::string text) {
        std::erase(text, ' ');
        return text;
    };
    EXPECT_NE(squeezed(said).find(squeezed(plan.about.title)), std::string::npos);
    EXPECT_NE(squeezed(said).find(squeezed(plan.stems[2].name)), std::string::npos);
}

} // namespace
} // namespace stemwright

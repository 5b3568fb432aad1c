#include "core/document/step_text.h"

#include "core/document/bench.h"
#include "core/document/sheet.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace stemwright {
namespace {

Plan bound(WrapWith over) {
    Plan plan = test::smallBoard();
    Wrap wire, cover;
    wire.with = WrapWith::wire;
    cover.with = over;
    plan.binding.wraps = {wire, cover};
    while (const auto step = stepDone(plan, plan.stems[0].id))
        EXPECT_TRUE(apply(plan, *step));
    return plan;
}

TEST(StepText, WireIsCutWhereItIsCutAndNotWhereFlossOrTapeCovers) {
    for (const WrapWith over : {WrapWith::wire, WrapWith::floss, WrapWith::tape}) {
        const Plan plan = bound(over);
        for (const BindingStep& step : bindingSteps(plan, plan.stems[0]))
            EXPECT_EQ(cutsWire(plan, step),
                      step.code == BindingStepCode::cut || step.code == BindingStepCode::finish ||
                          (step.code == BindingStepCode::cover && over == WrapWith::wire));
    }
}

TEST(StepText, AMeasuredStemSaysWhatItTookAndNothingOfWhatIsLeft) {
    const test::PlainWords words;
    Plan plan = bound(WrapWith::floss);
    const auto cut = [&] {
        const Figures all = figures(plan);
        return stepText(plan, plan.stems[0], all.stems[0], bindingSteps(plan, plan.stems[0])[0], words);
    };
    // How often the card says how much is left, of the one stem.
    const auto figuresOnCard = [&] {
        SheetOptions options;
        options.only = {SheetPage::cards};
        options.stems = {0};
        std::size_t count = 0;
        const std::vector<BindingStep> steps = bindingSteps(plan, plan.stems[0]);
        const Figures all = figures(plan);
        for (const Page& page : sheetPages(plan, all, options, test::PlainMeasure(), words))
            for (const TextMark& text : test::marksOf<TextMark>(page))
                count += static_cast<std::size_t>(
                    std::count_if(steps.begin(), steps.end(), [&](const BindingStep& step) {
                        return text.text ==
                               words.cut(all.stems[0].wraps[step.wrap].toCut - step.used[step.wrap]);
                    }));
        return count;
    };
    const Length took = figures(plan).stems[0].wraps[0].used * 1.1;
    EXPECT_EQ(cut().find(words.cut(took)), std::string::npos);
    const std::size_t before = figuresOnCard();
    EXPECT_GT(before, 3u);
    ASSERT_TRUE(apply(plan, calibrated(plan, plan.stems[0].id, {took}).edit));
    const std::string measured =
        words.word(SheetWord::cardTook, {words.wrap(plan.binding.wraps[0]), words.cut(took)});
    EXPECT_NE(cut().find(measured), std::string::npos) << cut() << " lacks " << measured;
    EXPECT_LT(figuresOnCard(), before);
    // The layer that was not measured is as it was.
    EXPECT_NE(cut().find(words.cut(figures(plan).stems[0].wraps[1].toCut)), std::string::npos);
}

} // namespace
} // namespace stemwright

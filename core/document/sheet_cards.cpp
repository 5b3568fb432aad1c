#include "core/figures/binding_steps.h"

#include "core/document/sheet_flow.h"
#include "core/document/step_text.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double tick = 3.2;     ///< side of a box to tick
constexpr double leastRow = 5.4; ///< mm, so that the boxes keep apart

} // namespace

std::vector<Page> cardPages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::cards,
                           {SheetCaution::cutWire, SheetCaution::sharpEnds, SheetCaution::estimate});
    const SheetWords& words = context.words;
    const std::vector<std::string> head{words.word(SheetWord::columnDone), words.word(SheetWord::columnStep),
                                        words.word(SheetWord::columnDo),   words.word(SheetWord::columnWrap),
                                        words.word(SheetWord::columnUsed), words.word(SheetWord::columnLeft)};
    std::vector<Page> pages;
    if (context.stems().empty())
        return pages;
    SheetFlow flow(context, frame, words.word(SheetWord::cardsTitle));
    if (const std::string own = context.ownMeasure(); !own.empty())
        flow.paragraph(own, type::text);
    for (const std::size_t place : context.stems()) {
        const Stem& stem = context.plan.stems[place];
        const StemFigures& figures = context.figures.stems[place];
        const std::vector<BindingStep> steps = bindingSteps(context.plan, stem);
        std::vector<std::vector<std::string>> rows;
        for (const BindingStep& step : steps) {
            const bool winds = !figures.wraps.empty() && step.code != BindingStepCode::cut &&
                               step.code != BindingStepCode::stake && step.wrap < figures.wraps.size();
            rows.push_back({"", std::to_string(rows.size() + 1),
                            stepText(context.plan, stem, figures, step, words),
                            step.along > Length{} ? words.size(step.along) : "",
                            winds ? words.cut(step.used[step.wrap]) : "",
                            winds ? words.cut(figures.wraps[step.wrap].toCut - step.used[step.wrap]) : ""});
        }
        std::vector<Table::Column> columns{{8, Align::left},   {7, Align::right},  {0, Align::left},
                                           {16, Align::right}, {20, Align::right}, {18, Align::right}};
        double fixed = Table::gap * static_cast<double>(columns.size() - 1);
        for (const Table::Column& column : columns)
            fixed += column.width;
        columns[2].width = flow.room().width - fixed;
        const Table table(columns, type::text);
        // A card stays together where a page holds it.
        const double whole = flow.tableHeight(table, head, rows, leastRow);
        flow.heading(stem.name, whole < flow.room().height - 15 ? whole : 30);
        flow.page().stems.push_back(stem.id);
        if (rows.empty()) {
            flow.paragraph(words.word(SheetWord::cardNothing), type::text, Ink::quiet);
            continue;
        }
        flow.table(
            table, head, rows,
            [](Canvas& canvas, std::size_t, PointMm top, double height) {
                canvas.box({top.x + 0.5, top.y + (height - tick) / 2, tick, tick}, 0.25, Ink::black);
            },
            leastRow, words.word(SheetWord::continued, {stem.name}));
        flow.skip(3);
    }
    return flow.take();
}

} // namespace stemwright

#include "core/figures/binding_steps.h"

#include "core/document/bench.h"
#include "core/document/sheet_flow.h"
#include "core/document/step_text.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double tick = 3.2;     ///< side of a box to tick
constexpr double leastRow = 5.4; ///< mm, so that the boxes keep apart
constexpr double wideCard = 180; ///< mm, room for a card on which most steps take a line
constexpr std::size_t stepColumn = 2;
constexpr double figureAir = 2.5; ///< at the left of each column of figures, beyond the gap

struct Card {
    std::size_t place; ///< in plan.stems
    std::vector<std::vector<std::string>> rows;
    std::vector<bool> done; ///< by row
};

Card cardOf(const SheetContext& context, std::size_t place) {
    const SheetWords& words = context.words;
    const Stem& stem = context.plan.stems[place];
    const StemFigures& figures = context.figures.stems[place];
    Card card{place, {}, {}};
    const std::vector<BindingStep> steps = bindingSteps(context.plan, stem);
    const std::size_t now = stepNow(stem, steps);
    for (const BindingStep& step : steps) {
        // A stem that is measured has used what it used, and nothing of what the figures say of others.
        const bool winds = !figures.wraps.empty() && step.code != BindingStepCode::cut &&
                           step.code != BindingStepCode::stake && step.wrap < figures.wraps.size() &&
                           !(tookOf(stem, step.wrap) > Length{});
        // A tier may be bound before those above it; of all else what comes before the step that is next is
        // done.
        card.done.push_back(step.code == BindingStepCode::tier
                                ? stem.tiers[static_cast<std::size_t>(step.tier)].progress.bound
                                : card.done.size() < now);
        card.rows.push_back(
            {"", std::to_string(card.rows.size() + 1), stepText(context.plan, stem, figures, step, words),
             step.along > Length{} ? words.size(step.along) : "", winds ? words.cut(step.used[step.wrap]) : "",
             winds ? words.cut(figures.wraps[step.wrap].toCut - step.used[step.wrap]) : ""});
    }
    return card;
}

/// A box to tick, ticked where the step is done already.
void tickBox(Canvas& canvas, PointMm top, double height, bool done) {
    const BoxMm box{top.x + 0.5, top.y + (height - tick) / 2, tick, tick};
    canvas.box(box, 0.25, Ink::black);
    if (done)
        canvas.add(ShapeMark{
            {{box.x + 0.6, box.y + 1.7}, {box.x + 1.3, box.y + 2.5}, {box.right() - 0.5, box.y + 0.7}},
            false,
            false,
            Ink::wash,
            0.45,
            Ink::black,
            false});
}

/// The figures take what they need, and the steps all the rest.
Table tableOf(const SheetContext& context, const std::vector<std::string>& head, const std::vector<Card>& cards,
              double room) {
    std::vector<Table::Column> columns{{tick + 1, Align::left}, {0, Align::right}, {0, Align::left},
                                       {0, Align::right},       {0, Align::right}, {0, Align::right}};
    double rest = room - Table::gap * static_cast<double>(columns.size() - 1);
    for (std::size_t c = 0; c < columns.size(); ++c) {
        if (c == stepColumn)
            continue;
        double& width = columns[c].width;
        width = std::max(width, context.measure.width(head[c], type::smallStrong) + 0.2);
        for (const Card& card : cards)
            for (const std::vector<std::string>& row : card.rows)
                width = std::max(width, context.measure.width(row[c], type::text) + 0.2);
        if (c > stepColumn)
            width += figureAir;
        rest -= width;
    }
    columns[stepColumn].width = rest;
    return Table(std::move(columns), type::text);
}

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
    std::vector<Card> cards;
    for (const std::size_t place : context.stems())
        cards.push_back(cardOf(context, place));
    // Large paper lies, with two cards beside each other, rather than that a step is far from its figures.
    const bool beside = frame.room(true).width >= 2 * wideCard;
    SheetFlow flow(context, frame, words.word(SheetWord::cardsTitle),
                   beside ? SheetColumns{true, 2} : SheetColumns{});
    // The same on every card, so that figures stand below each other all down the page.
    const Table table = tableOf(context, head, cards, flow.room().width);
    if (const std::string own = context.ownMeasure(); !own.empty())
        flow.paragraph(own, type::text);
    for (const auto& [place, rows, done] : cards) {
        const Stem& stem = context.plan.stems[place];
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
            [&ticked = done](Canvas& canvas, std::size_t row, PointMm top, double height) {
                tickBox(canvas, top, height, ticked[row]);
            },
            leastRow, words.word(SheetWord::continued, {stem.name}));
        flow.skip(3);
    }
    return flow.take();
}

} // namespace stemwright

#include "core/figures/binding_steps.h"

#include "core/document/sheet_flow.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double tick = 3.2;     ///< side of a box to tick
constexpr double leastRow = 5.4; ///< mm, so that the boxes keep apart

std::string leavesOf(const SheetContext& context, const Tier& tier) {
    std::string out;
    KindId kind;
    bool oneKind = true;
    for (std::size_t i = 0; i < tier.slots.size(); ++i) {
        const Slot& slot = tier.slots[i];
        const Mix* mix = find(context.plan, slot.leaf.mix);
        if (!out.empty())
            out += ", ";
        const std::string side = context.words.side(sideOf(slotTurn(tier, i)));
        out += context.words.word(SheetWord::cardLeaf, {side, mix ? mix->code.empty() ? mix->name : mix->code
                                                                  : context.words.word(SheetWord::emptySlot)});
        if (mix) {
            oneKind = oneKind && (!kind || kind == slot.leaf.kind);
            kind = slot.leaf.kind;
        }
    }
    // The kind once, where all leaves are of it; the mat shows it otherwise.
    if (const Kind* found = oneKind ? find(context.plan, kind) : nullptr)
        out += " (" + found->name + ")";
    return out;
}

std::string facing(const SheetContext& context, const Tier& tier) {
    if (tier.slots.size() == 2)
        return context.words.plane(planeOf(tier));
    const std::string first = context.words.side(sideOf(slotTurn(tier, 0)));
    if (tier.slots.size() <= 1)
        return first;
    return context.words.word(SheetWord::around, {std::to_string(tier.slots.size()), first});
}

std::string turnText(const SheetContext& context, const Stem& stem, Angle turn) {
    // A pair looks the same after half a turn, so what counts is the shorter way to the same look.
    const double period = inDegrees(turnPeriod(stem));
    const double by =
        inDegrees(apart(turn, degrees(0), degrees(stem.arrangement == Arrangement::spiral ? 360 : period)));
    if (by < 1)
        return {};
    if (std::abs(by - 90) < 1)
        return context.words.word(SheetWord::cardTurn) + " ";
    if (std::abs(by - 180) < 1)
        return context.words.word(SheetWord::cardHalfTurn) + " ";
    return context.words.word(SheetWord::cardTurnBy, {std::to_string(std::lround(by))}) + " ";
}

std::string toCut(const SheetContext& context, const Stem& stem, const StemFigures& figures) {
    std::string out;
    const auto list = [&](const std::string& one) { out += (out.empty() ? "" : "; ") + one; };
    for (std::size_t i = 0; i < figures.wraps.size(); ++i)
        list(context.words.wrap(context.plan.binding.wraps[i]) + ": " +
             context.words.cut(figures.wraps[i].toCut));
    if (stem.core)
        list(context.words.word(SheetWord::coreLine,
                                {context.words.wire(stem.core->diameter, stem.core->gauge)}));
    if (!out.empty() && out.back() == '.')
        out.pop_back();
    return out;
}

std::string stepText(const SheetContext& context, const Stem& stem, const StemFigures& figures,
                     const BindingStep& step) {
    const SheetWords& words = context.words;
    const std::vector<Wrap>& wraps = context.plan.binding.wraps;
    switch (step.code) {
    case BindingStepCode::cut:
        return words.word(SheetWord::cardCut, {toCut(context, stem, figures)});
    case BindingStepCode::begin:
        return words.word(SheetWord::cardBegin, {words.cut(wraps[0].startTail), words.wrap(wraps[0])});
    case BindingStepCode::tier: {
        const Tier& tier = stem.tiers[static_cast<std::size_t>(step.tier)];
        return turnText(context, stem, step.turn) +
               words.word(SheetWord::cardTier,
                          {std::to_string(step.tier + 1), facing(context, tier), leavesOf(context, tier)});
    }
    case BindingStepCode::stake: {
        const Stake& stake = context.plan.pot.stake;
        return words.word(SheetWord::cardStake,
                          {words.wire(stake.diameter, stake.gauge), words.size(stake.overlap)});
    }
    case BindingStepCode::tail:
        return words.word(SheetWord::cardTail);
    case BindingStepCode::finish:
        return words.word(SheetWord::cardFinish, {words.cut(wraps[0].finish)});
    case BindingStepCode::cover:
        return words.word(SheetWord::cardCover, {words.wrap(wraps[step.wrap])});
    }
    return {};
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
    SheetFlow flow(context, frame, words.word(SheetWord::cardsTitle));
    for (const std::size_t place : context.stems()) {
        const Stem& stem = context.plan.stems[place];
        const StemFigures& figures = context.figures.stems[place];
        const std::vector<BindingStep> steps = bindingSteps(context.plan, stem);
        std::vector<std::vector<std::string>> rows;
        for (const BindingStep& step : steps) {
            const bool winds = !figures.wraps.empty() && step.code != BindingStepCode::cut &&
                               step.code != BindingStepCode::stake && step.wrap < figures.wraps.size();
            rows.push_back({"", std::to_string(rows.size() + 1), stepText(context, stem, figures, step),
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

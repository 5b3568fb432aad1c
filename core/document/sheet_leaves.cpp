#include "core/document/sheet_flow.h"
#include "core/figures/leaf_beads.h"
#include "core/figures/leaf_rows.h"
#include "core/plan/making.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double picture = 13; ///< room for the picture of a leaf
constexpr double tick = 3.2;   ///< side of a tally box
constexpr double tickGap = 1;
constexpr double fiveGap = 2.5; ///< after every fifth
constexpr int mostBoxes = 60;   ///< beyond that a box stands for ten leaves, or a hundred, …

struct Line {
    const Kind* kind;
    const Mix* mix;
    int toMake;
};

std::string rowsText(const SheetContext& context, const Kind& kind) {
    std::string out;
    for (const LeafRow& row : leafRows(shapeOf(kind)).rows)
        if (row.count > 0)
            out += (out.empty() ? "" : " · ") + std::to_string(row.count);
    return context.words.word(SheetWord::rowsLine, {out});
}

std::string coloursText(const SheetContext& context, const Kind& kind, const Mix& mix) {
    const std::vector<int> beads = leafBeads(kind.beads, mix);
    std::string out;
    for (std::size_t i = 0; i < beads.size(); ++i)
        if (const Colour* colour = find(context.plan, mix.colours[i].colour))
            out += (out.empty() ? "" : ", ") + std::to_string(beads[i]) + " " + colour->name;
    return context.words.word(SheetWord::beadsLine, {out});
}

/// The boxes of a tally: how many leaves one stands for, how many there are, and how many on a line, whole
/// fives.
struct Tally {
    int each = 1, boxes = 0, line = 5;

    Tally(double width, int leaves) {
        while (leaves / each > mostBoxes)
            each *= 10;
        boxes = (leaves + each - 1) / each;
        line = std::max(1, static_cast<int>((width + fiveGap) / (5 * tick + 4 * tickGap + fiveGap))) * 5;
    }
    double height() const { return ((boxes + line - 1) / line) * (tick + tickGap) + (each > 1 ? 4 : 0); }
};

void draw(Canvas& canvas, PointMm top, const Tally& tally) {
    double y = top.y;
    for (int i = 0; i < tally.boxes; ++i) {
        const int place = i % tally.line;
        if (i > 0 && place == 0)
            y += tick + tickGap;
        // A wider gap after every fifth, so that they count themselves.
        const double x = top.x + place * (tick + tickGap) + place / 5 * (fiveGap - tickGap);
        canvas.box({x, y, tick, tick}, 0.2, Ink::quiet);
    }
    if (tally.each > 1)
        canvas.text({top.x, y + tick + 3},
                    canvas.context().words.word(SheetWord::tallyTens, {std::to_string(tally.each)}),
                    type::small, Align::left, Ink::quiet);
}

} // namespace

std::vector<Page> leavesPages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::leaves,
                           {SheetCaution::cutWire, SheetCaution::oldGlass, SheetCaution::smallParts});
    const SheetWords& words = context.words;
    std::vector<Line> lines;
    const std::vector<int> toMake = stillToMake(context.plan);
    std::size_t at = 0;
    for (const Kind& kind : context.plan.kinds)
        for (const StockLine& stock : kind.stock) {
            const int count = toMake[at++];
            if (const Mix* mix = find(context.plan, stock.mix); mix && count > 0)
                lines.push_back({&kind, mix, count});
        }
    SheetFlow flow(context, frame, words.word(SheetWord::leavesTitle));
    if (lines.empty()) {
        flow.paragraph(words.word(SheetWord::nothingToMake), type::text);
        return flow.take();
    }
    // Picture | code and name | to make | wire | in all; rows, colours and tally below.
    const std::vector<std::string> head{"",
                                        words.word(SheetWord::columnCode),
                                        words.word(SheetWord::columnMix),
                                        words.word(SheetWord::columnToMake),
                                        words.word(SheetWord::columnBeads),
                                        words.word(SheetWord::columnWire),
                                        words.word(SheetWord::columnAllWire)};
    const double room = flow.room().width;
    const double mixWidth = room - picture - 12 - 18 - 16 - 20 - 22 - 6 * Table::gap;
    const Table table({{picture, Align::left},
                       {12, Align::left},
                       {mixWidth, Align::left},
                       {18, Align::right},
                       {16, Align::right},
                       {20, Align::right},
                       {22, Align::right}},
                      type::text);
    const double inner = picture + Table::gap;
    const Kind* last = nullptr;
    std::int64_t count = 0, beads = 0;
    Length wire;
    for (const Line& line : lines) {
        const std::vector<std::string> cells{"",
                                             line.mix->code,
                                             line.mix->name,
                                             words.count(line.toMake),
                                             words.count(line.kind->beads),
                                             words.cut(line.kind->wire),
                                             words.cut(line.kind->wire * line.toMake)};
        Canvas measure = flow.canvas();
        const std::string rows = rowsText(context, *line.kind);
        const std::string colours = coloursText(context, *line.kind, *line.mix);
        const double width = room - inner;
        const Tally tally(width, line.toMake);
        const double height =
            std::max(table.rowHeight(context, cells) + measure.paragraphHeight(width, rows, type::small) +
                         measure.paragraphHeight(width, colours, type::small) + 1 + tally.height() + 1.5,
                     picture * 0.8);
        const auto putHead = [&] {
            Canvas canvas = flow.canvas();
            flow.skip(table.row(canvas, {flow.room().x, flow.y()}, head, type::smallStrong, Ink::quiet));
            canvas.line({flow.room().x, flow.y()}, {flow.room().right(), flow.y()}, 0.2, Ink::quiet);
        };
        if (line.kind != last) {
            flow.heading(line.kind->name, height + 6);
            putHead();
            last = line.kind;
        } else if (flow.need(height)) {
            putHead();
        }
        Canvas canvas = flow.canvas();
        const PointMm top{flow.room().x, flow.y()};
        double y = top.y + table.row(canvas, top, cells);
        y += canvas.paragraph({top.x + inner, y}, width, rows, type::small, Align::left, Ink::quiet);
        y += canvas.paragraph({top.x + inner, y}, width, colours, type::small, Align::left, Ink::quiet);
        draw(canvas, {top.x + inner, y + 1}, tally);
        LeafMark mark;
        mark.leaf = {line.kind->id, line.mix->id};
        const double length = std::max(inMillimetres(line.kind->length), 0.1);
        const double across = std::max(inMillimetres(line.kind->width), 0.1);
        mark.scale = std::min({picture / length, (height - 2) / across, 1.0});
        mark.base = {top.x + (picture - length * mark.scale) / 2, top.y + 0.8 + across * mark.scale / 2};
        mark.degrees = 90;
        canvas.add(mark);
        flow.skip(height);
        canvas.line({top.x, flow.y()}, {flow.room().right(), flow.y()}, 0.1, Ink::hair);
        count += line.toMake;
        beads += std::int64_t{line.toMake} * line.kind->beads;
        wire += line.kind->wire * line.toMake;
    }
    const std::vector<std::string> sum{
        "", "", words.word(SheetWord::allToMake), words.count(count), words.count(beads), "", words.cut(wire)};
    flow.need(table.rowHeight(context, sum) + 2);
    Canvas canvas = flow.canvas();
    flow.skip(table.row(canvas, {flow.room().x, flow.y()}, sum, type::strong));
    return flow.take();
}

} // namespace stemwright

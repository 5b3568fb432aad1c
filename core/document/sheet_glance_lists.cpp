#include "core/document/sheet_glance_lists.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double sideGap = 8;   ///< between the two halves of the list of mixes
constexpr double swatch = 9;    ///< room for the picture of a mix
constexpr double keepWith = 20; ///< of a list with its heading
constexpr double noteGap = 1;

} // namespace

double SheetListing::height(SheetFlow& flow) const {
    Canvas canvas = flow.canvas();
    const double width = flow.room().width;
    return flow.headingHeight(heading) + flow.tableHeight(table, head, rows, leastHeight) +
           (note.empty() ? 0 : noteGap + canvas.paragraphHeight(width, note, type::small));
}

void SheetListing::put(SheetFlow& flow) const {
    flow.heading(heading, keepWith);
    flow.table(table, head, rows, before, leastHeight);
    if (note.empty())
        return;
    flow.skip(noteGap);
    flow.paragraph(note, type::small);
}

std::optional<SheetListing> mixesListing(const SheetContext& context, double width, std::size_t leastSides) {
    const SheetWords& words = context.words;
    const std::vector<std::string> head{"",
                                        words.word(SheetWord::columnCode),
                                        words.word(SheetWord::columnMix),
                                        words.word(SheetWord::columnKind),
                                        words.word(SheetWord::columnOnStems),
                                        words.word(SheetWord::columnInTray)};
    std::vector<std::vector<std::string>> rows;
    std::vector<Leaf> leaves;
    for (const TrayLine& line : context.figures.lines) {
        const Mix* mix = find(context.plan, line.leaf.mix);
        const Kind* kind = find(context.plan, line.leaf.kind);
        if (!mix || !kind || line.stock == 0)
            continue;
        rows.push_back(
            {"", mix->code, mix->name, kind->name, words.count(line.placed), words.count(line.left())});
        leaves.push_back(line.leaf);
    }
    if (rows.empty())
        return std::nullopt;
    // Two lines of stock beside each other where there are many: a page holds them better.
    const std::size_t sides = rows.size() > 8 ? 2 : leastSides;
    const std::size_t deep = (rows.size() + sides - 1) / sides;
    std::vector<std::vector<std::string>> all = rows;
    all.insert(all.begin(), head);
    const double room = (width - sideGap * static_cast<double>(sides - 1)) / static_cast<double>(sides);
    const Table fitted = Table::fitted(
        context, all, {Align::left, Align::left, Align::left, Align::left, Align::right, Align::right},
        type::text, type::smallStrong, std::min(room, 130.0) - swatch);
    std::vector<Table::Column> one = fitted.columns();
    // The pictures have their own room; what the table left over goes to the mixes' names.
    one[2].width += one[0].width;
    one[0].width = swatch;
    std::vector<Table::Column> columns = one;
    std::vector<std::string> heads = head;
    std::vector<std::vector<std::string>> lines(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(deep));
    if (sides == 2) {
        columns.push_back({sideGap - 2 * Table::gap, Align::left});
        heads.push_back("");
        columns.insert(columns.end(), one.begin(), one.end());
        heads.insert(heads.end(), head.begin(), head.end());
        for (std::size_t i = 0; i < deep; ++i) {
            lines[i].push_back("");
            if (deep + i < rows.size())
                lines[i].insert(lines[i].end(), rows[deep + i].begin(), rows[deep + i].end());
        }
    }
    const double step = fitted.width() + swatch + sideGap;
    const auto pictures = [&plan = context.plan, leaves, sides, deep, step](Canvas& canvas, std::size_t row,
                                                                            PointMm top, double height) {
        for (std::size_t side = 0; side < sides; ++side) {
            const std::size_t place = row + side * deep;
            if (place >= leaves.size())
                continue;
            const Kind* kind = find(plan, leaves[place].kind);
            LeafMark mark;
            mark.leaf = leaves[place];
            const double length = std::max(inMillimetres(kind->length), 0.1);
            const double across = std::max(inMillimetres(kind->width), 0.1);
            mark.scale = std::min((swatch - 0.5) / length, (height - 0.6) / across);
            mark.base = {top.x + static_cast<double>(side) * step + (swatch - length * mark.scale) / 2,
                         top.y + height / 2};
            mark.degrees = 90;
            canvas.add(std::move(mark));
        }
    };
    return SheetListing{words.word(SheetWord::mixesHeading),
                        Table(columns, type::text),
                        std::move(heads),
                        std::move(lines),
                        pictures,
                        5.4,
                        {}};
}

SheetListing stemsListing(const SheetContext& context, double width) {
    const SheetWords& words = context.words;
    std::vector<std::string> head{words.word(SheetWord::columnStem),    words.word(SheetWord::columnHeight),
                                  words.word(SheetWord::columnTiers),   words.word(SheetWord::columnLeaves),
                                  words.word(SheetWord::columnDrift),   words.word(SheetWord::columnThick),
                                  words.word(SheetWord::columnLeafWire)};
    for (const Wrap& wrap : context.plan.binding.wraps)
        head.push_back(words.atStart(words.wrap(wrap)));
    const std::vector<std::size_t> places = context.stems();
    const bool cores =
        std::any_of(places.begin(), places.end(), [&](std::size_t i) { return context.plan.stems[i].core; });
    if (cores)
        head.push_back(words.word(SheetWord::columnCore));
    const bool mats = !context.matPage.empty();
    if (mats)
        head.push_back(words.word(SheetWord::columnMat));
    const bool cards = !context.cardPage.empty();
    if (cards)
        head.push_back(words.word(SheetWord::columnCard));
    std::vector<std::vector<std::string>> rows;
    for (const std::size_t i : places) {
        const Stem& stem = context.plan.stems[i];
        const StemFigures& f = context.figures.stems[i];
        rows.push_back({std::to_string(i + 1) + "  " + stem.name, words.size(f.height), std::to_string(f.tiers),
                        words.count(f.leaves), words.drift(f.drift), words.size(f.bundle),
                        words.cut(f.leafWire)});
        for (const WrapFigures& wrap : f.wraps)
            rows.back().push_back(words.cut(wrap.toCut));
        if (cores)
            rows.back().push_back(stem.core ? words.wire(stem.core->diameter, stem.core->gauge) : "");
        if (mats)
            rows.back().push_back(context.matPage[i] > 0 ? std::to_string(context.matPage[i]) : "");
        if (cards)
            rows.back().push_back(context.cardPage[i] > 0 ? std::to_string(context.cardPage[i]) : "");
    }
    if (context.options.stems.empty()) {
        const PotFigures& pot = context.figures.pot;
        rows.push_back({words.word(SheetWord::allStems), "", "", words.count(pot.leaves),
                        words.drift(pot.drift), "", words.cut(pot.leafWire)});
        for (const WrapFigures& wrap : pot.wraps)
            rows.back().push_back(words.cut(wrap.toCut));
        rows.back().resize(head.size());
    }
    std::vector<std::vector<std::string>> all = rows;
    all.insert(all.begin(), head);
    std::vector<Align> aligns(head.size(), Align::right);
    aligns[0] = Align::left;
    Table table = Table::fitted(context, all, aligns, type::text, type::smallStrong, width);
    return {words.word(SheetWord::stemsHeading),
            std::move(table),
            std::move(head),
            std::move(rows),
            {},
            0,
            context.ownMeasure()};
}

} // namespace stemwright

#include "core/document/sheet_flow.h"
#include "core/document/stem_picture.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double columnGap = 3;      ///< mm between stems, before scaling
constexpr double nameRoom = 7;       ///< below a row of stems
constexpr double pictureTall = 96;   ///< the most that the picture takes of a small page …
constexpr double picturePart = 0.36; ///< … and of the height of a large one
constexpr double largest = 1.6;      ///< of the real size
constexpr double plantPart = 0.45;   ///< of the width, for the plant in its pot
constexpr double sideGap = 8;        ///< between the two halves of the list of mixes
constexpr double swatch = 9;         ///< room for the picture of a mix

/// Stems in their proportions, side by side with their feet on one line, in as many lines as make them largest.
void stemsBeside(SheetFlow& flow, const SheetContext& context, const BoxMm& room) {
    std::vector<StemPicture> stems;
    const std::vector<std::size_t> places = context.stems();
    for (const std::size_t place : places)
        stems.push_back(stemPicture(context, place));
    const double width = room.width, tall = room.height;
    const auto scaleFor = [&](std::size_t lines) {
        const std::size_t each = (stems.size() + lines - 1) / lines;
        double scale = largest, heights = 0;
        for (std::size_t from = 0; from < stems.size(); from += each) {
            double sum = 0, height = 1, feet = 0;
            for (std::size_t i = from; i < std::min(from + each, stems.size()); ++i) {
                sum += stems[i].left + stems[i].right + columnGap;
                height = std::max(height, stems[i].up);
                feet = std::max(feet, stems[i].down);
            }
            heights += height + feet;
            scale = std::min(scale, width / std::max(sum, 1.0));
        }
        return std::min(scale, std::max(tall - nameRoom * static_cast<double>(lines), 10.0) / heights);
    };
    std::size_t lines = 1;
    for (std::size_t next = 2; next <= std::min<std::size_t>(stems.size(), 8); ++next)
        if (scaleFor(next) > scaleFor(lines) * 1.02)
            lines = next;
    const double scale = scaleFor(lines);
    const std::size_t each = (stems.size() + lines - 1) / lines;
    // In the middle of their room where they do not fill it.
    double used = 0;
    for (std::size_t from = 0; from < stems.size(); from += each) {
        double up = 1, down = 0;
        for (std::size_t i = from; i < std::min(from + each, stems.size()); ++i) {
            up = std::max(up, stems[i].up * scale);
            down = std::max(down, stems[i].down * scale);
        }
        used += up + down + nameRoom;
    }
    double y = room.y + std::max(tall - used, 0.0) / 2;
    for (std::size_t from = 0; from < stems.size(); from += each) {
        const std::size_t to = std::min(from + each, stems.size());
        double sum = 0, up = 1, down = 0;
        for (std::size_t i = from; i < to; ++i) {
            sum += (stems[i].left + stems[i].right) * scale;
            up = std::max(up, stems[i].up * scale);
            down = std::max(down, stems[i].down * scale);
        }
        const double gap = (width - sum) / static_cast<double>(to - from);
        double x = room.x;
        const double foot = y + up;
        Canvas canvas = flow.canvas();
        canvas.line({room.x, foot}, {room.right(), foot}, 0.25, Ink::hair);
        for (std::size_t i = from; i < to; ++i) {
            const double own = (stems[i].left + stems[i].right) * scale + gap;
            const double axis = x + gap / 2 + stems[i].left * scale;
            for (Mark mark : stems[i].marks) {
                if (auto* leaf = std::get_if<LeafMark>(&mark)) {
                    leaf->base = {axis + leaf->base.x * scale, foot + leaf->base.y * scale};
                    leaf->scale *= scale;
                } else if (auto* shape = std::get_if<ShapeMark>(&mark)) {
                    for (PointMm& p : shape->points)
                        p = {axis + p.x * scale, foot + p.y * scale};
                }
                canvas.add(std::move(mark));
            }
            // The number in the list below where the name would run into its neighbour's.
            const std::string& name = context.plan.stems[places[i]].name;
            const std::string shown =
                canvas.width(name, type::small) <= own - 1 ? name : std::to_string(places[i] + 1);
            canvas.text({x + own / 2, foot + down + 3.6}, shown, type::small, Align::middle);
            x += own;
        }
        y += up + down + nameRoom;
    }
}

/// The plant in its pot, and beside it the stems one by one; the stems alone where not all are asked for.
void picture(SheetFlow& flow, const SheetContext& context) {
    const double tall = std::min(std::max(pictureTall, flow.room().height * picturePart), flow.left() * 0.5);
    flow.need(tall);
    BoxMm stems{flow.room().x, flow.y(), flow.room().width, tall};
    if (context.options.stems.empty()) {
        const double part = stems.width * plantPart;
        flow.canvas().add(PlantMark{{stems.x, stems.y, part, tall}, 0, 18});
        stems.x += part + sideGap;
        stems.width -= part + sideGap;
    }
    stemsBeside(flow, context, stems);
    flow.skip(tall + 2);
}

void mixes(SheetFlow& flow, const SheetContext& context) {
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
        return;
    // Two lines of stock beside each other where there are many: a page holds them better.
    const std::size_t sides = rows.size() > 8 ? 2 : 1;
    const std::size_t deep = (rows.size() + sides - 1) / sides;
    std::vector<std::vector<std::string>> all = rows;
    all.insert(all.begin(), head);
    const double room =
        (flow.room().width - sideGap * static_cast<double>(sides - 1)) / static_cast<double>(sides);
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
    flow.heading(words.word(SheetWord::mixesHeading), 20);
    flow.table(
        Table(columns, type::text), heads, lines,
        [&](Canvas& canvas, std::size_t row, PointMm top, double height) {
            for (std::size_t side = 0; side < sides; ++side) {
                const std::size_t place = row + side * deep;
                if (place >= leaves.size())
                    continue;
                const Kind* kind = find(context.plan, leaves[place].kind);
                LeafMark mark;
                mark.leaf = leaves[place];
                const double length = std::max(inMillimetres(kind->length), 0.1);
                const double width = std::max(inMillimetres(kind->width), 0.1);
                mark.scale = std::min((swatch - 0.5) / length, (height - 0.6) / width);
                mark.base = {top.x + static_cast<double>(side) * (fitted.width() + swatch + sideGap) +
                                 (swatch - length * mark.scale) / 2,
                             top.y + height / 2};
                mark.degrees = 90;
                canvas.add(std::move(mark));
            }
        },
        5.4);
}

void figures(SheetFlow& flow, const SheetContext& context) {
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
    flow.heading(words.word(SheetWord::stemsHeading), 20);
    flow.table(Table::fitted(context, all, aligns, type::text, type::smallStrong, flow.room().width), head,
               rows);
    if (const std::string own = context.ownMeasure(); !own.empty()) {
        flow.skip(1);
        flow.paragraph(own, type::small);
    }
}

} // namespace

std::vector<Page> glancePages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::glance,
                           {SheetCaution::smallParts, SheetCaution::tallPlant, SheetCaution::estimate});
    const SheetWords& words = context.words;
    const PotFigures& pot = context.figures.pot;
    SheetFlow flow(context, frame, words.word(SheetWord::glanceTitle));
    std::string summary = words.word(
        SheetWord::summary, {words.count(pot.stems), words.count(pot.leaves), words.count(pot.inTray)});
    if (pot.leaves > 0)
        summary += " " + words.word(SheetWord::heights, {words.size(pot.shortest), words.size(pot.tallest)});
    flow.paragraph(summary, type::text);
    flow.skip(2);
    if (context.stems().empty()) {
        flow.paragraph(words.word(SheetWord::noStems), type::text, Ink::quiet);
    } else {
        picture(flow, context);
        figures(flow, context);
    }
    mixes(flow, context);
    return flow.take();
}

} // namespace stemwright

#include "core/document/mat_block.h"

#include "core/document/mat_rows.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double scaleRoom = 9.5;  ///< the scale of height at the left
constexpr double axisGap = 1.2;    ///< between the scale and the first view
constexpr double leastHalf = 17;   ///< of a view, so that its heading has room
constexpr double viewEdge = 1;     ///< beside the widest leaf
constexpr double viewGap = 2;      ///< between the views
constexpr double listGap = 4;      ///< where the lines lead from the joints to their rows
constexpr double headGap = 1.5;    ///< below the headings
constexpr double blockFoot = 2.5;  ///< below the foot
constexpr double joinLine = 3.4;   ///< of the list, for "join …"
constexpr double leastWindow = 60; ///< mm of stem that a sheet shows at least; see tooTall

/// A part of a stem between two cuts.
struct Part {
    double from = 0, to = 0; ///< along: the cuts, or the stem's ends
    bool first = true, last = true;
    double top = 0, bottom = 0; ///< along: what the sheet shows, leaves and overlap included
    std::vector<MatRow> rows;

    double rowsHeight() const {
        double sum = 0;
        for (const MatRow& row : rows)
            sum += row.height;
        return sum + (first ? 0 : joinLine) + (last ? 0 : joinLine);
    }
};

struct Views {
    bool front = true;
    bool side = true;
};

class MatLayout {
public:
    MatLayout(const SheetContext& context, std::size_t place, const BoxMm& room, bool landscape)
        : context_(context),
          place_(place),
          stem_(context.plan.stems[place]),
          room_(room),
          landscape_(landscape) {
        // Headings first: they decide how tall a leaf may be. The list's width does not depend on the leaves.
        const MatStem plain = layFlat(context.plan, stem_, {1e9, 1e9});
        const MatRows list(context, stem_, plain);
        list_ = list.width();
        const double views = room.width - scaleRoom - listGap - list_;
        even_ = list.evenWrap();
        const double tall =
            room.height - headHeight(room.width, 2) - viewHead() - blockFoot - 2 * joinOverlap - 2;
        const double both = 2 * std::max(plain.halfFront + viewEdge, leastHalf) * plain.frontView +
                            2 * std::max(plain.halfSide + viewEdge, leastHalf) * plain.sideView + viewGap;
        if (both <= views || !plain.frontView || !plain.sideView) {
            parts_.push_back({{plain.frontView, plain.sideView}, {}});
        } else {
            parts_.push_back({{true, false}, {}});
            parts_.push_back({{false, true}, {}});
        }
        mat_ = layFlat(context.plan, stem_, {std::max(views / 2 - viewEdge, 5.0), tall});
        for (auto& [shown, parts] : parts_)
            parts = cut(shown);
    }

    std::size_t sheets() const {
        std::size_t count = 0;
        for (const auto& [shown, parts] : parts_)
            count += parts.size();
        return count;
    }
    /// The views share a sheet and no leaf had to give way.
    bool whole() const { return parts_.size() == 1 && !mat_.steeper && !mat_.tooLong; }

    std::vector<MatBlock> blocks() const {
        std::vector<MatBlock> out;
        for (const auto& [shown, parts] : parts_)
            for (const Part& part : parts)
                out.push_back(block(shown, part, static_cast<int>(out.size()) + 1));
        return out;
    }

private:
    double half(bool side) const {
        return std::max((side ? mat_.halfSide : mat_.halfFront) + viewEdge, leastHalf);
    }

    std::string says(SheetWord word, std::vector<std::string> values = {}) const {
        return context_.words.word(word, values);
    }

    std::vector<std::pair<std::string, TextStyle>> heading() const {
        const StemFigures& figures = context_.figures.stems[place_];
        std::vector<std::pair<std::string, TextStyle>> lines;
        lines.push_back({says(SheetWord::arrangementLine,
                              {context_.words.arrangement(stem_.arrangement), std::to_string(figures.tiers),
                               context_.words.count(figures.leaves), context_.words.size(figures.height)}),
                         type::small});
        std::string cuts;
        for (std::size_t i = 0; i < figures.wraps.size(); ++i)
            cuts += (cuts.empty() ? "" : "   ") +
                    says(SheetWord::cutWrap, {context_.words.wrap(context_.plan.binding.wraps[i]),
                                              context_.words.cut(figures.wraps[i].toCut)});
        if (stem_.core)
            cuts += (cuts.empty() ? "" : "   ") +
                    says(SheetWord::coreLine, {context_.words.wire(stem_.core->diameter, stem_.core->gauge)});
        if (!cuts.empty())
            lines.push_back({cuts, type::smallStrong});
        if (even_)
            lines.push_back({says(SheetWord::evenWrap, {context_.words.size(*even_)}), type::small});
        return lines;
    }

    double headHeight(double width, int remarks) const {
        std::vector<Mark> none;
        const Canvas canvas(context_, none);
        double height = canvas.paragraphHeight(width - 30, says(SheetWord::matOf, {stem_.name}), type::heading);
        for (const auto& [text, style] : heading())
            height += canvas.paragraphHeight(width, text, style);
        if (stem_.tiers.empty())
            height += canvas.paragraphHeight(width, says(SheetWord::noLeaves), type::small);
        // Room for the remarks on leaves that gave way.
        height += remarks * 2 * lineHeight(type::small);
        return height + headGap;
    }

    double viewHead() const { return 2 * lineHeight(type::small) + 1; }

    /// Whether a view that is shown has leaves of the tier; without any the tier belongs to the first one.
    bool shows(const Views& shown, const MatTier& tier) const {
        if (parts_.size() == 1)
            return true;
        if (tier.leaves.empty())
            return shown.front;
        return std::any_of(tier.leaves.begin(), tier.leaves.end(),
                           [&](const MatLeaf& leaf) { return leaf.sideView ? shown.side : shown.front; });
    }

    /// Cuts the stem where the paper ends, between tiers where it can.
    std::vector<Part> cut(const Views& shown) const {
        const MatRows list(context_, stem_, mat_);
        std::vector<MatRow> rows;
        for (const MatRow& row : list.rows())
            if (row.tier < 0 || shows(shown, mat_.tiers[static_cast<std::size_t>(row.tier)]))
                rows.push_back(row);
        const double window = std::max(room_.height - headHeight(room_.width, mat_.steeper + mat_.tooLong) -
                                           std::max(viewHead(), list.headHeight()) - blockFoot,
                                       leastWindow);
        std::vector<Part> parts;
        std::size_t next = 0;
        double from = 0;
        for (;;) {
            Part part;
            part.first = parts.empty();
            part.from = from;
            part.top = part.first ? -3 : from - joinOverlap;
            part.bottom = part.first ? 0 : from;
            double listed = part.first ? 0 : joinLine;
            for (; next < rows.size(); ++next) {
                const MatRow& row = rows[next];
                double up = 2, down = 2;
                if (row.tier >= 0) {
                    const MatTier& tier = mat_.tiers[static_cast<std::size_t>(row.tier)];
                    up = std::max(tier.up(), up);
                    down = std::max(tier.down(), down);
                }
                const double top = std::min(part.top, row.along - up);
                const bool isLast = next + 1 == rows.size();
                const double bottom =
                    std::max(part.bottom, row.along + (isLast ? down : std::max(down, joinOverlap + 2)));
                const double more = listed + row.height + (isLast ? 0 : joinLine);
                const bool fits = bottom - top <= window && more <= window;
                if (!fits && !(part.rows.empty() && row.along <= from))
                    break;
                part.top = top;
                part.bottom = std::max(part.bottom, row.along + down);
                listed += row.height;
                part.rows.push_back(row);
            }
            part.last = next == rows.size();
            if (part.last) {
                part.to = mat_.length;
                part.bottom = std::max(part.bottom, mat_.length);
                parts.push_back(std::move(part));
                return parts;
            }
            // Half way to what comes next, or as far as the paper reaches on a long bare stretch.
            const double before = part.rows.empty() ? from : std::max(part.rows.back().along, from);
            const double reach = part.top + window - joinOverlap;
            part.to =
                std::min(rows[next].tier >= 0 ? (before + rows[next].along) / 2 : rows[next].along, reach);
            // A joint by itself takes a sheet even where its leaves leave no room for the overlap.
            if (part.to <= from)
                part.to = std::min(reach, rows[next].along);
            part.bottom = std::max(part.bottom, part.to + joinOverlap);
            from = part.to;
            parts.push_back(std::move(part));
        }
    }

    MatBlock block(const Views& shown, const Part& part, int sheet) const;
    void drawStem(Canvas& canvas, double axis, const Part& part, double y0) const;
    void drawScale(Canvas& canvas, double x, const Part& part, double y0) const;
    void drawView(Canvas& canvas, bool side, double left, const Part& part, double headTop, double y0,
                  double bottom) const;
    void drawLeaf(Canvas& canvas, const MatLeaf& leaf, PointMm joint, int tierPlace, LeafStyle style) const;
    void drawCodes(Canvas& canvas, bool side, double axis, const Part& part, double y0) const;
    void drawJoin(Canvas& canvas, double left, double right, double listLeft, double y, double textY,
                  char letter, int other) const;

    const SheetContext& context_;
    std::size_t place_;
    const Stem& stem_;
    BoxMm room_;
    bool landscape_;
    double list_ = 0;
    std::optional<Length> even_;
    MatStem mat_;
    std::vector<std::pair<Views, std::vector<Part>>> parts_;
};

void MatLayout::drawStem(Canvas& canvas, double axis, const Part& part, double y0) const {
    const double from = part.first ? -1 : part.from - joinOverlap;
    const double to = part.last ? mat_.length : part.to + joinOverlap;
    const auto stretch = [&](double a, double b, double thick) {
        a = std::max(a, from);
        b = std::min(b, to);
        if (b <= a)
            return;
        const double half = std::max(thick, 0.6) / 2;
        ShapeMark shape;
        shape.points = {
            {axis - half, y0 + a}, {axis + half, y0 + a}, {axis + half, y0 + b}, {axis - half, y0 + b}};
        shape.filled = true;
        shape.fill = Ink::wire;
        shape.width = 0.12;
        shape.ink = Ink::wireEdge;
        canvas.add(std::move(shape));
    };
    if (mat_.tiers.empty())
        stretch(0, mat_.length, stem_.core ? inMillimetres(stem_.core->diameter) : 0);
    for (std::size_t i = 0; i < mat_.tiers.size(); ++i) {
        const MatTier& tier = mat_.tiers[i];
        const double end = i + 1 < mat_.tiers.size() ? mat_.tiers[i + 1].along : mat_.length;
        stretch(i == 0 ? -1 : tier.along, end, tier.thick);
    }
}

void MatLayout::drawScale(Canvas& canvas, double x, const Part& part, double y0) const {
    // Heights above the clay line; every 5 mm, or every quarter of an inch.
    const bool inch = context_.plan.units.length == LengthUnit::inch;
    const double step = inch ? millimetresPerInch / 4 : 5;
    const int each = inch ? 4 : 2; // numbered ones
    const double from = part.first ? std::min(0.0, part.top + 3) : part.from - joinOverlap;
    const double to = part.last ? mat_.length : part.to + joinOverlap;
    canvas.line({x, y0 + from}, {x, y0 + to}, 0.15, Ink::quiet);
    const auto first = static_cast<long>(std::ceil((mat_.clay - to) / step - 1e-9));
    const auto last = static_cast<long>(std::floor((mat_.clay - from) / step + 1e-9));
    for (long i = first; i <= last; ++i) {
        const double y = y0 + mat_.clay - static_cast<double>(i) * step;
        const bool numbered = i % each == 0;
        canvas.line({x - (numbered ? 2.2 : 1.2), y}, {x, y}, 0.15, Ink::quiet);
        if (numbered)
            canvas.text({x - 2.5, y + 0.8}, std::to_string(inch ? i / each : i * 5), type::small, Align::right,
                        Ink::quiet);
    }
}

void MatLayout::drawLeaf(Canvas& canvas, const MatLeaf& leaf, PointMm joint, int tierPlace,
                         LeafStyle style) const {
    const double turn = leaf.degrees * pi / 180;
    LeafMark mark;
    mark.leaf = leaf.leaf;
    mark.base = {joint.x + leaf.out * std::sin(turn), joint.y - leaf.out * std::cos(turn)};
    mark.degrees = leaf.degrees;
    mark.style = style;
    if (style != LeafStyle::ghost)
        mark.slot = {stem_.id, tierPlace, leaf.slot};
    canvas.add(std::move(mark));
}

void MatLayout::drawView(Canvas& canvas, bool side, double left, const Part& part, double headTop, double y0,
                         double bottom) const {
    const double width = 2 * half(side), axis = left + width / 2;
    if (side)
        canvas.fill({left, headTop, width, bottom - headTop}, Ink::wash);
    // What both headings say stands on one line each.
    canvas.text({axis, headTop + ascent(type::small)},
                says(side ? SheetWord::seenFromSide : SheetWord::seenFromFront), type::smallStrong,
                Align::middle);
    const double second = headTop + lineHeight(type::small) + ascent(type::small);
    canvas.text({left + 1, second}, context_.words.side(side ? Side::front : Side::left), type::small,
                Align::left, Ink::quiet);
    canvas.text({left + width - 1, second}, context_.words.side(side ? Side::back : Side::right), type::small,
                Align::right, Ink::quiet);

    std::vector<int> own;
    for (const MatRow& row : part.rows)
        if (row.tier >= 0)
            own.push_back(row.tier);
    // Ghosts of the neighbouring sheets first, where they lie wholly on this one.
    for (std::size_t t = 0; t < mat_.tiers.size(); ++t) {
        const MatTier& tier = mat_.tiers[t];
        const int number = static_cast<int>(t);
        if (std::find(own.begin(), own.end(), number) != own.end() || !shows({!side, side}, tier))
            continue;
        for (const MatLeaf& leaf : tier.leaves)
            if (leaf.sideView == side && !leaf.tooLong && tier.along - leaf.up >= part.top &&
                tier.along + leaf.down <= part.bottom && y0 + tier.along - leaf.up >= headTop + viewHead())
                drawLeaf(canvas, leaf, {axis, y0 + tier.along}, number, LeafStyle::ghost);
    }
    drawStem(canvas, axis, part, y0);
    for (const int t : own) {
        const MatTier& tier = mat_.tiers[static_cast<std::size_t>(t)];
        for (const MatLeaf& leaf : tier.leaves)
            if (leaf.sideView == side && !leaf.tooLong)
                drawLeaf(canvas, leaf, {axis, y0 + tier.along}, t, LeafStyle::tinted);
    }
    drawCodes(canvas, side, axis, part, y0);
}

void MatLayout::drawCodes(Canvas& canvas, bool side, double axis, const Part& part, double y0) const {
    std::vector<BoxMm> taken;
    const auto put = [&](PointMm middle, const std::string& text, TextStyle style, bool ring) {
        const double tall = 0.76 * style.points * millimetresPerPoint;
        TextMark mark{{middle.x, middle.y + tall / 2},
                      Align::middle,
                      text,
                      style,
                      Ink::black,
                      canvas.width(text, style),
                      0};
        BoxMm box = boxOf(mark, context_.plan);
        if (ring)
            box = {middle.x - 1.7, middle.y - 1.7, 3.4, 3.4};
        if (std::any_of(taken.begin(), taken.end(), [&](const BoxMm& other) { return other.overlaps(box); }))
            return false;
        taken.push_back(box);
        if (ring)
            canvas.add(CircleMark{middle, 1.6, true, Ink::paper, 0.15, Ink::quiet});
        canvas.add(std::move(mark));
        return true;
    };
    // The tier's number on its joint, in the view that has its leaves; too close ones are in the list alone.
    for (const MatRow& row : part.rows) {
        if (row.tier < 0)
            continue;
        const MatTier& tier = mat_.tiers[static_cast<std::size_t>(row.tier)];
        const bool here = tier.leaves.empty()
                              ? !side
                              : std::any_of(tier.leaves.begin(), tier.leaves.end(),
                                            [&](const MatLeaf& l) { return l.sideView == side; });
        if (here)
            put({axis, y0 + row.along}, std::to_string(row.tier + 1), TextStyle{6, true}, true);
    }
    for (const MatRow& row : part.rows) {
        if (row.tier < 0)
            continue;
        for (const MatLeaf& leaf : mat_.tiers[static_cast<std::size_t>(row.tier)].leaves) {
            const Mix* mix = find(context_.plan, leaf.leaf.mix);
            const Kind* kind = find(context_.plan, leaf.leaf.kind);
            if (leaf.sideView != side || leaf.tooLong || !mix || !kind)
                continue;
            const std::string& code = mix->code.empty() ? mix->name : mix->code;
            const TextStyle style{7.5, true};
            const double length = inMillimetres(kind->length), width = inMillimetres(kind->width);
            if (std::min(length, width) < 3 || canvas.width(code, style) > length - 1)
                continue;
            const double turn = leaf.degrees * pi / 180, at = leaf.out + length * 0.55;
            put({axis + at * std::sin(turn), y0 + row.along - at * std::cos(turn)}, code, style, false);
        }
    }
}

void MatLayout::drawJoin(Canvas& canvas, double left, double right, double listLeft, double y, double textY,
                         char letter, int other) const {
    canvas.line({left, y}, {right, y}, 0.2, Ink::accent, true);
    for (const double x : {left, right}) {
        const double in = x == left ? -2.4 : 2.4;
        ShapeMark mark;
        mark.points = {{x, y}, {x + in, y - 1.4}, {x + in, y + 1.4}};
        mark.filled = true;
        mark.fill = Ink::accent;
        canvas.add(std::move(mark));
    }
    canvas.text({listLeft, textY + ascent(type::smallStrong)},
                says(SheetWord::join, {std::string(1, letter), std::to_string(other)}), type::smallStrong,
                Align::left, Ink::accent);
}

MatBlock MatLayout::block(const Views& shown, const Part& part, int sheet) const {
    MatBlock out;
    out.stem = place_;
    out.sheet = sheet;
    out.sheets = static_cast<int>(sheets());
    out.landscape = landscape_;
    Canvas canvas(context_, out.marks);
    const double front = shown.front && mat_.frontView ? 2 * half(false) : 0;
    const double sideWidth = shown.side && mat_.sideView ? 2 * half(true) : 0;
    const double between = front > 0 && sideWidth > 0 ? viewGap : 0;
    const double listLeft = scaleRoom + front + between + sideWidth + listGap;
    out.width = listLeft + list_;

    // Headings.
    double y = canvas.paragraph({0, 0}, out.width - 30, says(SheetWord::matOf, {stem_.name}), type::heading);
    if (out.sheets > 1)
        canvas.text({out.width, ascent(type::heading)},
                    says(SheetWord::matSheet, {std::to_string(sheet), std::to_string(out.sheets)}),
                    type::strong, Align::right);
    if (part.first)
        for (const auto& [text, style] : heading())
            y += canvas.paragraph({0, y}, out.width, text, style);
    if (stem_.tiers.empty())
        y += canvas.paragraph({0, y}, out.width, says(SheetWord::noLeaves), type::small);
    if (mat_.steeper)
        y += canvas.paragraph({0, y}, out.width, says(SheetWord::drawnSteeper), type::small, Align::left,
                              Ink::accent);
    if (mat_.tooLong)
        y += canvas.paragraph({0, y}, out.width, says(SheetWord::leafTooLong), type::small, Align::left,
                              Ink::accent);
    y += headGap;

    MatRows list(context_, stem_, mat_);
    const double headTop = y;
    const double body = headTop + std::max(viewHead(), list.headHeight());
    const double y0 = body - part.top; // where the first joint is, or would be
    std::vector<MatRow> rows = part.rows;
    const double listed = part.rowsHeight();
    const double bottom = std::max(y0 + part.bottom, body + listed);
    list.drawHead(canvas, {listLeft, headTop});
    std::vector<double> wanted;
    for (const MatRow& row : rows)
        wanted.push_back(y0 + row.along);
    spreadRows(rows, wanted, body + (part.first ? 0 : joinLine), bottom - (part.last ? 0 : joinLine));

    double left = scaleRoom;
    if (front > 0) {
        drawView(canvas, false, left, part, headTop, y0, bottom);
        left += front + between;
    }
    if (sideWidth > 0)
        drawView(canvas, true, left, part, headTop, y0, bottom);
    drawScale(canvas, scaleRoom - axisGap, part, y0);
    canvas.text({0, headTop + ascent(type::small)}, says(SheetWord::heightScale), type::small, Align::left,
                Ink::quiet);
    const double viewsRight = listLeft - listGap;
    for (const MatRow& row : rows) {
        const double joint = y0 + row.along;
        const double at = row.top + (row.tier < 0 ? row.height / 2 : lineHeight(type::small) / 2 + 0.7);
        if (row.tier >= 0) // the joint's own mark, exactly where it is
            canvas.line({viewsRight - 1.8, joint}, {viewsRight, joint}, 0.2);
        if (row.tier >= 0 || row.along >= mat_.clay - 1e-9)
            canvas.line({viewsRight, joint}, {listLeft - 1, at}, 0.12, Ink::quiet);
        list.draw(canvas, listLeft, row);
    }
    if (mat_.clay >= part.top && mat_.clay <= part.bottom && part.last)
        canvas.line({scaleRoom - axisGap, y0 + mat_.clay}, {viewsRight, y0 + mat_.clay}, 0.35, Ink::quiet);
    if (!part.first)
        drawJoin(canvas, scaleRoom, viewsRight, listLeft, y0 + part.from, body,
                 static_cast<char>('A' + (sheet - 2) % 26), sheet - 1);
    if (!part.last)
        drawJoin(canvas, scaleRoom, viewsRight, listLeft, y0 + part.to, bottom - joinLine,
                 static_cast<char>('A' + (sheet - 1) % 26), sheet + 1);
    out.height = bottom + blockFoot;
    return out;
}

} // namespace

std::vector<MatBlock> matBlocks(const SheetContext& context, std::size_t stem, const BoxMm& upright,
                                const BoxMm& lying) {
    const MatLayout up(context, stem, upright, false);
    if (up.sheets() == 1 && up.whole())
        return up.blocks();
    const MatLayout across(context, stem, lying, true);
    if ((across.whole() && !up.whole()) || (across.whole() == up.whole() && across.sheets() < up.sheets()))
        return across.blocks();
    return up.blocks();
}

} // namespace stemwright

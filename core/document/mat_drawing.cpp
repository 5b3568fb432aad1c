#include "core/document/mat_layout.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {
constexpr double pi = 3.14159265358979323846;
constexpr double codeParts[] = {0.55, 0.65, 0.75, 0.82, 0.45}; ///< of a leaf's length, where its code may stand
} // namespace

void MatLayout::drawStem(Canvas& canvas, double axis, const MatPart& part, double y0) const {
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

void MatLayout::drawScale(Canvas& canvas, double x, const MatPart& part, double y0) const {
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

void MatLayout::drawView(Canvas& canvas, bool side, double left, const MatPart& part, double headTop, double y0,
                         double bottom) const {
    const double width = 2 * half(side), axis = left + width / 2;
    if (side)
        canvas.fill({left, headTop, width, bottom - headTop}, Ink::wash);
    drawViewHead(canvas, side, left, headTop);

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

void MatLayout::drawViewHead(Canvas& canvas, bool side, double left, double top) const {
    const double width = 2 * half(side), axis = left + width / 2;
    const SheetWords& words = context_.words;
    // What both headings say stands on one line each.
    canvas.text({axis, top + ascent(type::small)},
                says(side ? SheetWord::seenFromSide : SheetWord::seenFromFront), type::smallStrong,
                Align::middle);
    const double second = top + lineHeight(type::small) + ascent(type::small);
    const std::string first = words.side(side ? Side::front : Side::left);
    const std::string last = words.side(side ? Side::back : Side::right);
    canvas.text({left + mat::viewEdge, second}, first, type::small, Align::left, Ink::quiet);
    if (facesInViews_) {
        // In the middle of what the other two leave.
        const double from = left + mat::viewEdge + canvas.width(first, type::small);
        const double to = left + width - mat::viewEdge - canvas.width(last, type::small);
        canvas.text({(from + to) / 2, second}, words.plane(side ? Plane::frontToBack : Plane::sideToSide),
                    type::small, Align::middle);
    }
    canvas.text({left + width - mat::viewEdge, second}, last, type::small, Align::right, Ink::quiet);
}

void MatLayout::drawCodes(Canvas& canvas, bool side, double axis, const MatPart& part, double y0) const {
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
        else if (context_.options.grey)
            // Patterns would run through the letters.
            canvas.fill({box.x - 0.5, box.y - 0.4, box.width + 1, box.height + 0.8}, Ink::paper);
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
            // On the part that the leaves further down leave free, if any is.
            const double turn = leaf.degrees * pi / 180;
            const auto middle = [&](double along) {
                const double at = leaf.out + length * along;
                return PointMm{at * std::sin(turn), row.along - at * std::cos(turn)};
            };
            const double wide = canvas.width(code, style) / 2, tall = 0.38 * style.points * millimetresPerPoint;
            PointMm place = middle(codeParts[0]);
            for (const double along : codeParts)
                if (const PointMm free = middle(along); !coversBelow(row.tier, side, free, wide, tall)) {
                    place = free;
                    break;
                }
            put({axis + place.x, y0 + place.y}, code, style, false);
        }
    }
}

bool MatLayout::coversBelow(int tier, bool side, PointMm middle, double wide, double tall) const {
    for (std::size_t t = static_cast<std::size_t>(tier) + 1; t < mat_.tiers.size(); ++t) {
        const MatTier& below = mat_.tiers[t];
        if (below.along - below.up() > middle.y + tall)
            continue;
        for (const MatLeaf& leaf : below.leaves) {
            const Kind* kind = find(context_.plan, leaf.leaf.kind);
            if (leaf.sideView != side || leaf.tooLong || !kind)
                continue;
            // In the leaf's own directions it is about an ellipse.
            const double turn = leaf.degrees * pi / 180, c = std::cos(turn), s = std::sin(turn);
            const double half = inMillimetres(kind->length) / 2, across = inMillimetres(kind->width) / 2;
            for (const double x : {middle.x - wide, middle.x, middle.x + wide})
                for (const double y : {middle.y - tall, middle.y, middle.y + tall}) {
                    const double dx = x, dy = y - below.along;
                    const double u = (dx * c + dy * s) / across,
                                 v = (-dx * s + dy * c + leaf.out + half) / half;
                    if (u * u + v * v < 1)
                        return true;
                }
        }
    }
    return false;
}

double MatLayout::joinWidth(const Canvas& canvas, int other) const {
    return canvas.width(says(SheetWord::join, {"W", std::to_string(other)}), type::smallStrong);
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
    const std::string said = says(SheetWord::join, {std::string(1, letter), std::to_string(other)});
    // A narrow list at the paper's edge lets it begin over the views.
    const double x = std::min(listLeft, room_.width - canvas.width(said, type::smallStrong));
    canvas.text({x, textY + ascent(type::smallStrong)}, said, type::smallStrong, Align::left, Ink::accent);
}

MatBlock MatLayout::block(const MatViews& shown, const MatPart& part, int sheet) const {
    MatBlock out;
    out.stem = place_;
    out.sheet = sheet;
    out.sheets = static_cast<int>(sheets());
    out.landscape = landscape_;
    Canvas canvas(context_, out.marks);
    const double front = shown.front && mat_.frontView ? 2 * half(false) : 0;
    const double sideWidth = shown.side && mat_.sideView ? 2 * half(true) : 0;
    const double between = front > 0 && sideWidth > 0 ? mat::viewGap : 0;
    out.width = widthOf(shown);
    const double listLeft = out.width - list_;
    // What says where sheets are joined is wider than a narrow list.
    for (const int other : {sheet - 1, sheet + 1})
        if (other >= 1 && other <= out.sheets)
            out.width = std::max(out.width, std::min(room_.width, listLeft + joinWidth(canvas, other)));

    // Headings.
    double y = 0;
    const std::string name = says(SheetWord::matOf, {stem_.name});
    if (beside_ > 0) {
        const double left = out.width + mat::besideGap;
        out.besideFrom = left;
        out.besideHeight = canvas.paragraph({left, 0}, beside_, name, type::heading);
        for (const auto& [text, style] : heading())
            out.besideHeight += canvas.paragraph({left, out.besideHeight}, beside_, text, style);
    } else {
        y += canvas.paragraph({0, 0}, out.width - mat::sheetNumber, name, type::heading);
        if (out.sheets > 1)
            canvas.text({out.width, ascent(type::heading)},
                        says(SheetWord::matSheet, {std::to_string(sheet), std::to_string(out.sheets)}),
                        type::strong, Align::right);
        if (part.first)
            for (const auto& [text, style] : heading())
                y += canvas.paragraph({0, y}, out.width, text, style);
    }
    if (stem_.tiers.empty())
        y += canvas.paragraph({0, y}, out.width, says(SheetWord::noLeaves), type::small);
    if (mat_.steeper)
        y += canvas.paragraph({0, y}, out.width, says(SheetWord::drawnSteeper), type::small, Align::left,
                              Ink::accent);
    if (mat_.tooLong)
        y += canvas.paragraph({0, y}, out.width, says(SheetWord::leafTooLong), type::small, Align::left,
                              Ink::accent);
    y += mat::headGap;

    MatRows list(context_, stem_, mat_);
    const double headTop = y;
    const double body = headTop + std::max(viewHead(), list.headHeight());
    const double y0 = body - part.top; // where the first joint is, or would be
    std::vector<MatRow> rows = part.rows;
    const double listed = part.rowsHeight();
    const double bottom = std::max(y0 + part.bottom, body + listed);
    if (!stem_.tiers.empty())
        list.drawHead(canvas, {listLeft, headTop});
    std::vector<double> wanted;
    for (const MatRow& row : rows)
        wanted.push_back(y0 + row.along);
    spreadRows(rows, wanted, body + (part.first ? 0 : mat::joinLine), bottom - (part.last ? 0 : mat::joinLine));

    double left = mat::scaleRoom;
    if (front > 0) {
        drawView(canvas, false, left, part, headTop, y0, bottom);
        left += front + between;
    }
    if (sideWidth > 0)
        drawView(canvas, true, left, part, headTop, y0, bottom);
    drawScale(canvas, mat::scaleRoom - mat::axisGap, part, y0);
    // A stem whose heading stands beside it bears its name too, so that it is not its neighbour's below there.
    const double nameRoom = mat::scaleRoom + half(front <= 0) -
                            std::max(canvas.width(says(SheetWord::seenFromFront), type::smallStrong),
                                     canvas.width(says(SheetWord::seenFromSide), type::smallStrong)) /
                                2 -
                            1;
    const bool named = beside_ > 0 && canvas.width(name, type::smallStrong) <= nameRoom;
    if (named)
        canvas.text({0, headTop + ascent(type::small)}, name, type::smallStrong);
    canvas.text({0, headTop + (named ? lineHeight(type::small) : 0) + ascent(type::small)},
                says(SheetWord::heightScale), type::small, Align::left, Ink::quiet);
    const double viewsRight = listLeft - mat::listGap;
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
        canvas.line({mat::scaleRoom - mat::axisGap, y0 + mat_.clay}, {viewsRight, y0 + mat_.clay}, 0.35,
                    Ink::quiet);
    if (!part.first)
        drawJoin(canvas, mat::scaleRoom, viewsRight, listLeft, y0 + part.from, body,
                 static_cast<char>('A' + (sheet - 2) % 26), sheet - 1);
    if (!part.last)
        drawJoin(canvas, mat::scaleRoom, viewsRight, listLeft, y0 + part.to, bottom - mat::joinLine,
                 static_cast<char>('A' + (sheet - 1) % 26), sheet + 1);
    out.height = bottom + mat::blockFoot;
    if (beside_ > 0) {
        out.width = room_.width;
        if (!named)
            out.besideHeight = out.height;
    }
    return out;
}

} // namespace stemwright

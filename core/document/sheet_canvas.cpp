#include "core/document/sheet_canvas.h"

#include "core/document/bench.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string_view>

namespace stemwright {

namespace {
template <class... Fs> struct Each : Fs... { using Fs::operator()...; };
constexpr double rowPadding = 0.7; ///< above and below the text of a table's row
constexpr double airy = 12;        ///< between columns where there is room for it
constexpr std::string_view noBreakSpace = "\xc2\xa0";
constexpr double crowded = 2;       ///< the least that columns should have beyond the gap
constexpr double brokenHead = 0.62; ///< of a heading, so that it goes into two lines

/// How wide the widest piece is that does not break.
double longestWord(const SheetContext& context, const std::string& text, TextStyle style) {
    double most = 0;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        most = std::max(most, context.measure.width(text.substr(from, to - from), style) + 0.2);
        from = to + 1;
    }
    return most;
}

} // namespace

std::vector<std::size_t> SheetContext::stems() const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        if (options.stems.empty() || options.stems.contains(i))
            out.push_back(i);
    return out;
}

std::string SheetContext::ownMeasure() const {
    const bool measured = std::any_of(plan.binding.wraps.begin(), plan.binding.wraps.end(),
                                      [](const Wrap& wrap) { return wrap.overlapMeasured; });
    if (!measured)
        return {};
    std::string names;
    for (const StemId stem : measuredStems(plan))
        names += (names.empty() ? "" : ", ") + find(plan, stem)->name;
    return names.empty() ? words.word(SheetWord::ownMeasureOf) : words.word(SheetWord::ownMeasure, {names});
}

double lineHeight(TextStyle style) {
    return style.points * millimetresPerPoint * 1.25;
}
double ascent(TextStyle style) {
    return style.points * millimetresPerPoint * 0.95;
}
double descent(TextStyle style) {
    return style.points * millimetresPerPoint * 0.25;
}

void Canvas::line(PointMm from, PointMm to, double width, Ink ink, bool dashed) {
    marks_.emplace_back(LineMark{from, to, width, ink, dashed});
}

void Canvas::box(const BoxMm& b, double edge, Ink ink) {
    ShapeMark shape;
    shape.points = {{b.x, b.y}, {b.right(), b.y}, {b.right(), b.bottom()}, {b.x, b.bottom()}};
    shape.width = edge;
    shape.ink = ink;
    marks_.emplace_back(std::move(shape));
}

void Canvas::fill(const BoxMm& b, Ink ink) {
    ShapeMark shape;
    shape.points = {{b.x, b.y}, {b.right(), b.y}, {b.right(), b.bottom()}, {b.x, b.bottom()}};
    shape.filled = true;
    shape.fill = ink;
    marks_.emplace_back(std::move(shape));
}

void Canvas::text(PointMm at, const std::string& text, TextStyle style, Align align, Ink ink) {
    if (text.empty())
        return;
    // No-break spaces have done their work once lines are broken; on the page they are spaces like all others,
    // so that a search finds what it looks for.
    std::string shown = text;
    for (std::size_t i = shown.find(noBreakSpace); i != std::string::npos; i = shown.find(noBreakSpace, i))
        shown.replace(i, noBreakSpace.size(), " ");
    const double wide = width(shown, style);
    marks_.emplace_back(TextMark{at, align, std::move(shown), style, ink, wide, 0});
}

double Canvas::paragraph(PointMm top, double width, const std::string& text, TextStyle style, Align align,
                         Ink ink) {
    if (text.empty())
        return 0;
    const double x = align == Align::left ? top.x : align == Align::middle ? top.x + width / 2 : top.x + width;
    double y = top.y;
    for (const std::string& one : context_.measure.lines(text, style, width)) {
        this->text({x, y + ascent(style)}, one, style, align, ink);
        y += lineHeight(style);
    }
    return y - top.y;
}

double Canvas::paragraphHeight(double width, const std::string& text, TextStyle style) const {
    if (text.empty())
        return 0;
    return static_cast<double>(context_.measure.lines(text, style, width).size()) * lineHeight(style);
}

Table Table::fitted(const SheetContext& context, const std::vector<std::vector<std::string>>& rows,
                    const std::vector<Align>& aligns, TextStyle style, TextStyle headStyle, double width) {
    const std::size_t count = aligns.size();
    std::vector<double> wanted(count, 4), heads(count, 0);
    for (std::size_t r = 0; r < rows.size(); ++r)
        for (std::size_t c = 0; c < count && c < rows[r].size(); ++c)
            (r == 0 ? heads : wanted)[c] =
                std::max((r == 0 ? heads : wanted)[c],
                         context.measure.width(rows[r][c], r == 0 ? headStyle : style) + 0.2);
    const double room = width - gap * static_cast<double>(count - 1);
    const auto withHeads = [&](double part) {
        std::vector<double> out = wanted;
        for (std::size_t c = 0; c < count; ++c)
            out[c] = std::max(out[c], std::max(longestWord(context, rows[0][c], headStyle), heads[c] * part));
        return out;
    };
    // Where that would crowd the columns, a long heading over short figures breaks into two lines.
    const std::vector<double> whole = withHeads(1);
    wanted = std::accumulate(whole.begin(), whole.end(), 0.0) + crowded * static_cast<double>(count - 1) <= room
                 ? whole
                 : withHeads(brokenHead);
    double sum = std::accumulate(wanted.begin(), wanted.end(), 0.0);
    if (sum > room) {
        // The widest columns give way until all fit: every column keeps what it wants up to a common limit.
        double low = 0, high = room;
        for (int i = 0; i < 50; ++i) {
            const double limit = (low + high) / 2;
            double taken = 0;
            for (const double w : wanted)
                taken += std::min(w, limit);
            (taken > room ? high : low) = limit;
        }
        for (double& w : wanted)
            w = std::min(w, low);
        sum = room;
    }
    // What is left over lets figures stand apart; the rest goes to the first column.
    double spare = room - sum;
    const double each = count > 1 ? std::min(airy - gap, spare / static_cast<double>(count - 1)) : 0;
    for (std::size_t c = 1; c < count; ++c) {
        wanted[c] += each;
        spare -= each;
    }
    wanted[0] += spare;
    std::vector<Column> columns;
    for (std::size_t c = 0; c < count; ++c)
        columns.push_back({wanted[c], aligns[c]});
    return Table(std::move(columns), style);
}

double Table::roomFor(const std::vector<std::string>& cells, std::size_t c) const {
    double width = columns_[c].width;
    if (columns_[c].align == Align::left)
        for (std::size_t next = c + 1; next < columns_.size() && next < cells.size() && cells[next].empty();
             ++next)
            width += gap_ + columns_[next].width;
    return width;
}

double Table::height(const SheetContext& context, const std::vector<std::string>& cells,
                     TextStyle style) const {
    std::size_t most = 1;
    for (std::size_t c = 0; c < columns_.size() && c < cells.size(); ++c)
        if (!cells[c].empty())
            most = std::max(most, context.measure.lines(cells[c], style, roomFor(cells, c)).size());
    return static_cast<double>(most) * lineHeight(style) + 2 * rowPadding;
}

double Table::row(Canvas& canvas, PointMm top, const std::vector<std::string>& cells, TextStyle style,
                  Ink ink) const {
    double x = top.x;
    for (std::size_t c = 0; c < columns_.size() && c < cells.size(); ++c) {
        canvas.paragraph({x, top.y + rowPadding}, roomFor(cells, c), cells[c], style, columns_[c].align, ink);
        x += columns_[c].width + gap_;
    }
    return height(canvas.context(), cells, style);
}

double Table::width() const {
    double sum = gap_ * static_cast<double>(columns_.size() - 1);
    for (const Column& column : columns_)
        sum += column.width;
    return sum;
}

void shift(std::vector<Mark>& marks, double dx, double dy) {
    const auto move = [&](PointMm& p) {
        p.x += dx;
        p.y += dy;
    };
    for (Mark& mark : marks)
        std::visit(Each{[&](LineMark& m) {
                            move(m.from);
                            move(m.to);
                        },
                        [&](ShapeMark& m) {
                            for (PointMm& p : m.points)
                                move(p);
                        },
                        [&](CircleMark& m) { move(m.middle); }, [&](LeafMark& m) { move(m.base); },
                        [&](PlantMark& m) {
                            m.box.x += dx;
                            m.box.y += dy;
                        },
                        [&](TextMark& m) { move(m.at); }},
                   mark);
}

} // namespace stemwright

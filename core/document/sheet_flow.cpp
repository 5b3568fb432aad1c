#include "core/document/sheet_flow.h"

#include <algorithm>

namespace stemwright {

namespace {
constexpr double columnGap = 8;
constexpr double headingAbove = 3, headingBelow = 1;
} // namespace

SheetFlow::SheetFlow(const SheetContext& context, const SheetFrame& frame, std::string title,
                     SheetColumns columns)
    : context_(context), frame_(frame), title_(std::move(title)), columns_(columns) {
    open();
}

void SheetFlow::open() {
    pages_.push_back(frame_.page(columns_.landscape, title_));
    column_ = 0;
    room_ = frame_.room(columns_.landscape);
    room_.width = (room_.width - columnGap * (columns_.count - 1)) / columns_.count;
    y_ = room_.y;
}

bool SheetFlow::need(double height) {
    if (y_ + height <= room_.bottom() + 1e-6 || y_ <= room_.y + 1e-6)
        return false;
    if (++column_ < columns_.count) {
        room_.x += room_.width + columnGap;
        y_ = room_.y;
    } else {
        open();
    }
    return true;
}

double SheetFlow::headingHeight(const std::string& text) const {
    const auto lines = context_.measure.lines(text, type::heading, room_.width).size();
    return headingAbove + static_cast<double>(lines) * lineHeight(type::heading) + headingBelow;
}

void SheetFlow::heading(const std::string& text, double keepWith) {
    need(headingHeight(text) + keepWith);
    if (y_ > room_.y)
        y_ += headingAbove;
    y_ += canvas().paragraph({room_.x, y_}, room_.width, text, type::heading) + headingBelow;
}

void SheetFlow::paragraph(const std::string& text, TextStyle style, Ink ink) {
    // Line by line, since a long one may be longer than the page.
    for (const std::string& line : context_.measure.lines(text, style, room_.width)) {
        need(lineHeight(style));
        canvas().text({room_.x, y_ + ascent(style)}, line, style, Align::left, ink);
        y_ += lineHeight(style);
    }
}

void SheetFlow::table(const Table& table, const std::vector<std::string>& head,
                      const std::vector<std::vector<std::string>>& rows,
                      const std::function<void(Canvas&, std::size_t, PointMm, double)>& before,
                      double leastHeight, const std::string& again) {
    const auto putHead = [&] {
        Canvas on = canvas();
        y_ += table.row(on, {room_.x, y_}, head, type::smallStrong, Ink::quiet);
        on.line({room_.x, y_}, {room_.x + table.width(), y_}, 0.2, Ink::quiet);
    };
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double height = std::max(table.rowHeight(context_, rows[i]), leastHeight);
        const double headHeight = table.height(context_, head, type::smallStrong);
        if (i == 0) {
            need(headHeight + height);
            putHead();
        } else if (need(height)) {
            if (!again.empty())
                y_ += canvas().paragraph({room_.x, y_}, room_.width, again, type::heading) + 1;
            putHead();
        }
        Canvas on = canvas();
        const double text = table.rowHeight(context_, rows[i]);
        if (before)
            before(on, i, {room_.x, y_}, height);
        table.row(on, {room_.x, y_ + (height - text) / 2}, rows[i]);
        y_ += height;
        on.line({room_.x, y_}, {room_.x + table.width(), y_}, 0.1, Ink::hair);
    }
}

double SheetFlow::tableHeight(const Table& table, const std::vector<std::string>& head,
                              const std::vector<std::vector<std::string>>& rows, double leastHeight) const {
    double height = table.height(context_, head, type::smallStrong);
    for (const auto& row : rows)
        height += std::max(table.rowHeight(context_, row), leastHeight);
    return height;
}

} // namespace stemwright

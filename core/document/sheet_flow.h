#pragma once

#include "core/document/sheet_frame.h"

#include <functional>
#include <string>
#include <vector>

namespace stemwright {

/// How the pages of a flow are held, and in how many columns each is filled.
struct SheetColumns {
    bool landscape = false;
    int count = 1;
};

/// Fills pages of one frame from the top down, column by column: a new one whenever the next thing does not
/// fit.
class SheetFlow {
public:
    SheetFlow(const SheetContext& context, const SheetFrame& frame, std::string title,
              SheetColumns columns = {});

    /// The column that is being filled.
    const BoxMm& room() const { return room_; }
    double y() const { return y_; }
    double left() const { return room_.bottom() - y_; }
    Canvas canvas() { return Canvas(context_, pages_.back().marks); }
    Page& page() { return pages_.back(); }

    /// A new column unless `height` is left in this one. What is higher than a page begins on a new one.
    bool need(double height);
    void skip(double height) { y_ += height; }
    void heading(const std::string& text, double keepWith);
    double headingHeight(const std::string& text) const;
    void paragraph(const std::string& text, TextStyle style, Ink ink = Ink::black);
    /// A table with its head again on each page, below `again` where that is not empty. `before` draws into a
    /// row: its place and height.
    void table(const Table& table, const std::vector<std::string>& head,
               const std::vector<std::vector<std::string>>& rows,
               const std::function<void(Canvas&, std::size_t row, PointMm top, double height)>& before = {},
               double leastHeight = 0, const std::string& again = {});
    double tableHeight(const Table& table, const std::vector<std::string>& head,
                       const std::vector<std::vector<std::string>>& rows, double leastHeight) const;

    std::vector<Page> take() { return std::move(pages_); }

private:
    void open();

    const SheetContext& context_;
    const SheetFrame& frame_;
    std::string title_;
    SheetColumns columns_;
    int column_ = 0;
    BoxMm room_;
    std::vector<Page> pages_;
    double y_ = 0;
};

} // namespace stemwright

#pragma once

#include "core/document/sheet.h"
#include "core/document/sheet_words.h"

#include <string>
#include <vector>

namespace stemwright {

/// What every maker of pages needs.
struct SheetContext {
    const Plan& plan;
    const Figures& figures;
    const SheetOptions& options;
    const TextMeasure& measure;
    const SheetWords& words;
    /// The page of each stem's first mat, by place in plan.stems; 0 for none, empty where no mats are printed.
    std::vector<int> matPage = {};
    /// The same of its binding card.
    std::vector<int> cardPage = {};

    /// The stems that are asked for, as places in plan.stems.
    std::vector<std::size_t> stems() const;
    /// That the lengths of binding are the maker's own measure; empty where they are not.
    std::string ownMeasure() const;
};

/// From a baseline to the next, and the parts of it above and below the baseline; mm.
double lineHeight(TextStyle style);
double ascent(TextStyle style);
double descent(TextStyle style);

namespace type {
inline constexpr TextStyle title{13, true};
inline constexpr TextStyle heading{10, true};
inline constexpr TextStyle text{8, false};
inline constexpr TextStyle strong{8, true};
inline constexpr TextStyle small{6.8, false};
inline constexpr TextStyle smallStrong{6.8, true};
} // namespace type

/// Puts marks into a list. All measures are millimetres.
class Canvas {
public:
    Canvas(const SheetContext& context, std::vector<Mark>& marks) : context_(context), marks_(marks) {}

    void line(PointMm from, PointMm to, double width, Ink ink = Ink::black, bool dashed = false);
    void box(const BoxMm& box, double edge, Ink ink = Ink::hair);
    void fill(const BoxMm& box, Ink ink);

    double width(const std::string& text, TextStyle style) const { return context_.measure.width(text, style); }
    /// A line of text on its baseline.
    void text(PointMm at, const std::string& text, TextStyle style, Align align = Align::left,
              Ink ink = Ink::black);
    /// Text from `top` down, broken into lines that are `width` wide. The height it takes.
    double paragraph(PointMm top, double width, const std::string& text, TextStyle style,
                     Align align = Align::left, Ink ink = Ink::black);
    double paragraphHeight(double width, const std::string& text, TextStyle style) const;

    template <class One> void add(One mark) { marks_.emplace_back(std::move(mark)); }
    const SheetContext& context() const { return context_; }

private:
    const SheetContext& context_;
    std::vector<Mark>& marks_;
};

/// Columns of cells that wrap, so that nothing in them is cut off. Text at the left of its column runs on over
/// empty cells to its right.
class Table {
public:
    struct Column {
        double width = 20;
        Align align = Align::left;
    };
    static constexpr double gap = 2; ///< between columns, as a rule

    Table(std::vector<Column> columns, TextStyle style, double between = gap)
        : columns_(std::move(columns)), style_(style), gap_(between) {}

    /// Columns as wide as their texts, long headings broken into lines, the widest columns narrowed until all
    /// fit into `width`; what is left over parts the columns, and the rest goes to the first.
    static Table fitted(const SheetContext& context, const std::vector<std::vector<std::string>>& rows,
                        const std::vector<Align>& aligns, TextStyle style, TextStyle headStyle, double width);

    double height(const SheetContext& context, const std::vector<std::string>& cells, TextStyle style) const;
    double rowHeight(const SheetContext& context, const std::vector<std::string>& cells) const {
        return height(context, cells, style_);
    }
    /// Draws the cells with their upper left at `top`; the height taken.
    double row(Canvas& canvas, PointMm top, const std::vector<std::string>& cells, TextStyle style,
               Ink ink = Ink::black) const;
    double row(Canvas& canvas, PointMm top, const std::vector<std::string>& cells) const {
        return row(canvas, top, cells, style_);
    }
    double width() const;
    const std::vector<Column>& columns() const { return columns_; }

private:
    double roomFor(const std::vector<std::string>& cells, std::size_t column) const;

    std::vector<Column> columns_;
    TextStyle style_;
    double gap_;
};

/// Moves marks; for parts of a page that are laid out by themselves.
void shift(std::vector<Mark>& marks, double dx, double dy);

} // namespace stemwright

#include "core/document/sheet_frame.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double headGap = 3;      ///< between the header's rule and what follows
constexpr double numberRoom = 34;  ///< for "page 12 of 345" and the date
constexpr double ruleRoom = 116;   ///< the two rules with their names
constexpr double rulesHeight = 11; ///< both of them

SheetWord titleWord(SheetPage what) {
    switch (what) {
    case SheetPage::glance:
        return SheetWord::glanceTitle;
    case SheetPage::mats:
        return SheetWord::matsTitle;
    case SheetPage::cards:
        return SheetWord::cardsTitle;
    case SheetPage::leaves:
        return SheetWord::leavesTitle;
    case SheetPage::supplies:
        return SheetWord::suppliesTitle;
    case SheetPage::pot:
        return SheetWord::potTitle;
    }
    return SheetWord::glanceTitle;
}

/// A rule of exactly `length` with end ticks and parts, its name above it.
void rule(Canvas& canvas, PointMm left, double length, int parts, const std::string& name) {
    canvas.line(left, {left.x + length, left.y}, 0.25);
    for (int i = 0; i <= parts; ++i) {
        const double x = left.x + length * i / parts;
        const double tick = i == 0 || i == parts ? 2.2 : 1.2;
        canvas.line({x, left.y - tick}, {x, left.y}, i == 0 || i == parts ? 0.25 : 0.15);
    }
    canvas.text({left.x + length + 1.5, left.y}, name, type::small);
}

} // namespace

SheetFrame::SheetFrame(const SheetContext& context, SheetPage what, std::vector<SheetCaution> cautions,
                       std::string remark)
    : context_(context), what_(what), cautions_(std::move(cautions)), remark_(std::move(remark)) {}

std::string SheetFrame::title() const {
    const std::string& title = context_.plan.about.title;
    return title.empty() ? context_.words.word(SheetWord::untitled) : title;
}

double SheetFrame::headHeight(double width) const {
    std::vector<Mark> none;
    const Canvas canvas(context_, none);
    return lineHeight(type::title) + canvas.paragraphHeight(width - numberRoom, title(), type::text) + 1;
}

double SheetFrame::footHeight(double width) const {
    std::vector<Mark> none;
    const Canvas canvas(context_, none);
    const double beside = width - ruleRoom;
    double height =
        canvas.paragraphHeight(beside, context_.words.word(SheetWord::ruleCheck), type::smallStrong) + 0.6;
    if (!remark_.empty())
        height += canvas.paragraphHeight(beside, remark_, type::small);
    for (const SheetCaution caution : cautions_)
        height += canvas.paragraphHeight(beside, context_.words.caution(caution), type::small);
    return std::max(rulesHeight, height) + 2;
}

BoxMm SheetFrame::room(bool landscape) const {
    const PaperSize size = paperSize(context_.options.paper);
    const double width = (landscape ? size.height : size.width) - 2 * pageMargin;
    const double height = (landscape ? size.width : size.height) - 2 * pageMargin;
    const double head = headHeight(width) + headGap;
    return {pageMargin, pageMargin + head, width, height - head - footHeight(width) - 2};
}

Page SheetFrame::page(bool landscape, const std::string& name) const {
    const PaperSize size = paperSize(context_.options.paper);
    Page page;
    page.what = what_;
    page.landscape = landscape;
    page.width = landscape ? size.height : size.width;
    page.height = landscape ? size.width : size.height;
    page.title = name;
    Canvas canvas(context_, page.marks);
    const double left = pageMargin, right = page.width - pageMargin, width = right - left;

    canvas.text({left, pageMargin + ascent(type::title)}, context_.words.word(titleWord(what_)), type::title);
    const double head = headHeight(width);
    const double second = pageMargin + lineHeight(type::title);
    canvas.paragraph({left, second}, width - numberRoom, title(), type::text, Align::left, Ink::quiet);
    canvas.text({right, second + ascent(type::text)}, context_.plan.about.date, type::text, Align::right,
                Ink::quiet);
    canvas.line({left, pageMargin + head}, {right, pageMargin + head}, 0.2, Ink::hair);

    const double bottom = page.height - pageMargin, top = bottom - footHeight(width);
    canvas.line({left, top}, {right, top}, 0.2, Ink::hair);
    rule(canvas, {left, top + 5}, 100, 10, context_.words.word(SheetWord::ruleMm));
    rule(canvas, {left, top + 10.5}, 4 * millimetresPerInch, 16, context_.words.word(SheetWord::ruleInch));
    const double beside = left + ruleRoom;
    double y = top + 1.6;
    y += canvas.paragraph({beside, y}, right - beside, context_.words.word(SheetWord::ruleCheck),
                          type::smallStrong) +
         0.6;
    if (!remark_.empty())
        y += canvas.paragraph({beside, y}, right - beside, remark_, type::small);
    for (const SheetCaution caution : cautions_)
        y += canvas.paragraph({beside, y}, right - beside, context_.words.caution(caution), type::small);
    return page;
}

void finishPages(const SheetContext& context, std::vector<Page>& pages) {
    for (std::size_t i = 0; i < pages.size(); ++i) {
        Canvas canvas(context, pages[i].marks);
        canvas.text(
            {pages[i].width - pageMargin, pageMargin + ascent(type::title)},
            context.words.word(SheetWord::pageOf, {std::to_string(i + 1), std::to_string(pages.size())}),
            type::text, Align::right, Ink::quiet);
    }
}

} // namespace stemwright

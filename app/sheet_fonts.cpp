#include "app/look.h"
#include "app/sheet_words.h"
#include "app/wording.h"

#include <QRegularExpression>
#include <QTextLayout>

#include <algorithm>
#include <cmath>

namespace stemwright {

QFont sheetFont(TextStyle style) {
    QFont font(look::family());
    font.setPixelSize(static_cast<int>(std::lround(style.points * millimetresPerPoint * sheetUnits)));
    font.setWeight(style.bold ? QFont::DemiBold : QFont::Normal);
    // Widths must not depend on the device.
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(QFont::PreferAntialias);
    return font;
}

QStringList shapedApart(const QString& line) {
    static const QString marks = QStringLiteral("-–—()[]{}:@/·•×+<>«»‹›");
    if (std::none_of(line.begin(), line.end(), [](QChar c) { return marks.contains(c); }) ||
        std::any_of(line.begin(), line.end(),
                    [](QChar c) { return c.direction() == QChar::DirR || c.direction() == QChar::DirAL; }))
        return {line};
    QStringList pieces;
    bool apart = true;
    for (const QChar c : line) {
        const bool mark = marks.contains(c);
        if (mark || apart)
            pieces << QString();
        pieces.back() += c;
        apart = mark;
    }
    return pieces;
}

FontMeasure::FontMeasure() = default;
FontMeasure::~FontMeasure() = default;

FontMeasure::Face& FontMeasure::face(TextStyle style) const {
    for (const auto& face : faces_)
        if (face->style == style)
            return *face;
    const QFont font = sheetFont(style);
    faces_.push_back(std::make_unique<Face>(Face{style, font, QFontMetricsF(font), {}, {}}));
    return *faces_.back();
}

double FontMeasure::width(const std::string& utf8, TextStyle style) const {
    Face& there = face(style);
    const auto [entry, fresh] = there.widths.try_emplace(utf8, 0);
    if (fresh)
        for (const QString& piece : shapedApart(text(utf8)))
            entry->second += there.metrics.horizontalAdvance(piece) / sheetUnits;
    return entry->second;
}

std::vector<std::string> FontMeasure::lines(const std::string& utf8, TextStyle style, double width) const {
    static const std::string breaks("\r\n\t\xe2");
    // What fits needs no layout; breaks of the text's own are for the slow way.
    if (utf8.find_first_of(breaks) == std::string::npos && this->width(utf8, style) <= width + 0.01)
        return {utf8};
    // A row is measured before it is drawn, and the cards say the same of every stem.
    const auto [entry, fresh] = face(style).broken.try_emplace({utf8, width});
    if (fresh)
        entry->second = brokenLines(utf8, style, width);
    return entry->second;
}

std::vector<std::string> FontMeasure::brokenLines(const std::string& utf8, TextStyle style,
                                                  double width) const {
    QString whole = text(utf8);
    // A page has no use for them inside a name; they become spaces.
    static const QRegularExpression any(QStringLiteral("[\\r\\n\\t\\x{2028}\\x{2029}]+"));
    whole.replace(any, QStringLiteral(" "));
    const QFont font = face(style).font;
    if (face(style).metrics.horizontalAdvance(whole) <= width * sheetUnits + 1)
        return {whole.toStdString()};
    QTextLayout layout(whole, font);
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout.setTextOption(option);
    std::vector<std::string> lines;
    layout.beginLayout();
    for (;;) {
        QTextLine line = layout.createLine();
        if (!line.isValid())
            break;
        line.setLineWidth(std::max(width, 1.0) * sheetUnits);
        lines.push_back(whole.mid(line.textStart(), line.textLength()).trimmed().toStdString());
    }
    layout.endLayout();
    if (lines.empty())
        lines.emplace_back();
    return lines;
}

} // namespace stemwright

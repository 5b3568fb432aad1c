#include "app/board/board_cards.h"

#include "app/look.h"
#include "app/wording.h"
#include "core/figures/findings.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace stemwright {

namespace {

constexpr double padding = 7;
/// Below this a card has no room for words beside its bars.
constexpr double leastForWords = 62;

QString tr(const char* source) {
    return QCoreApplication::translate("Board", source);
}

CardLength lengthLine(const Wrap& wrap, Length length, const Units& units) {
    const QString cut = cutText(length, units);
    switch (wrap.with) {
    case WrapWith::wire:
        return {wrap.with, tr("wire %1").arg(cut), cut};
    case WrapWith::floss:
        return {wrap.with, tr("thread %1").arg(cut), cut};
    case WrapWith::tape:
        return {wrap.with, tr("tape %1").arg(cut), cut};
    }
    return {wrap.with, cut, cut};
}

/// A sign for what is wound around, as wide as high: one round for a wire, strands for thread, a band for tape.
void paintSign(QPainter& painter, const QRectF& rect, WrapWith with) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look::quiet, 1.2));
    painter.setBrush(Qt::NoBrush);
    switch (with) {
    case WrapWith::wire:
        painter.drawEllipse(rect.adjusted(1, 1, -1, -1));
        break;
    case WrapWith::floss:
        for (const double y : {0.25, 0.5, 0.75})
            painter.drawLine(QPointF(rect.left(), rect.top() + rect.height() * y),
                             QPointF(rect.right(), rect.top() + rect.height() * y));
        break;
    case WrapWith::tape:
        painter.fillRect(rect.adjusted(0, rect.height() / 4, 0, -rect.height() / 4), look::quiet);
        break;
    }
    painter.restore();
}

/// The type of a card that is short of room.
QFont tinyFont() {
    QFont tiny = look::font(look::Type::small);
    tiny.setPointSizeF(tiny.pointSizeF() * 0.85);
    return tiny;
}

/// The words where they are wanted and have room, else the sign and the figure; a figure is never cut.
void paintLength(QPainter& painter, const QRectF& row, const CardLength& length, bool inWords) {
    const auto wide = [](const QFont& font, const QString& words) {
        return QFontMetricsF(font).horizontalAdvance(words);
    };
    const QFont small = look::font(look::Type::small);
    const int flags = Qt::AlignLeft | Qt::AlignVCenter;
    painter.setFont(small);
    if (inWords && wide(small, length.words) <= row.width()) {
        painter.drawText(row, flags, length.words);
        return;
    }
    constexpr double sign = 9, between = 3;
    const double room = row.width() - sign - between;
    // One type for all cards of a width: by the longest figure that is likely, not by each card's own.
    const QFont font = wide(small, QStringLiteral("00.00 m")) <= room ? small : tinyFont();
    if (wide(font, length.figure) > room + padding / 2)
        return;
    paintSign(painter, QRectF(row.left(), row.center().y() - sign / 2, sign, sign), length.with);
    painter.setFont(font);
    painter.drawText(row.adjusted(sign + between, 0, padding, 0), flags, length.figure);
}

void paintBar(QPainter& painter, const QRectF& rect, const std::vector<BarPart>& parts, double opacity) {
    double all = 0;
    for (const BarPart& part : parts)
        all += part.amount;
    if (all <= 0) {
        painter.fillRect(rect, look::line);
        return;
    }
    painter.setOpacity(opacity);
    double left = rect.left();
    for (const BarPart& part : parts) {
        const double width = rect.width() * part.amount / all;
        if (width <= 0)
            continue;
        // A hair of paper between the colours tells neighbours apart that look alike.
        painter.fillRect(QRectF(left, rect.top(), std::max(width - 0.8, 0.4), rect.height()), part.colour);
        left += width;
    }
    painter.setOpacity(1);
}

} // namespace

QString StemCard::lengthWords() const {
    QStringList words;
    for (const CardLength& length : lengths)
        words << length.words;
    return words.join(QStringLiteral(", "));
}

StemCard cardOf(const Plan& plan, const StemFigures& figures) {
    StemCard card;
    card.height = sizeText(figures.height, plan.units);
    card.leaves = countText(figures.leaves);
    card.driftNumber = driftText(figures.drift);
    card.drift = tr("drift %1").arg(card.driftNumber);
    card.driftHigh = figures.drift >= highDrift;
    for (std::size_t i = 0; i < figures.wraps.size() && i < plan.binding.wraps.size(); ++i)
        card.lengths.push_back(lengthLine(plan.binding.wraps[i], figures.wraps[i].toCut, plan.units));
    if (card.lengths.empty()) {
        const QString cut = cutText(figures.leafWire, plan.units);
        card.lengths.push_back({WrapWith::wire, tr("leaf wire %1").arg(cut), cut});
    }
    // Beads by colour: those that the stem holds, over those of its fair share of every mix.
    std::vector<double> fair(plan.colours.size());
    std::size_t line = 0;
    for (const Kind& kind : plan.kinds)
        for (const StockLine& stock : kind.stock) {
            const double leaves = line < figures.fairShare.size() ? figures.fairShare[line] : 0;
            ++line;
            const Mix* mix = leaves > 0 ? find(plan, stock.mix) : nullptr;
            if (!mix)
                continue;
            double shares = 0;
            for (const BeadShare& share : mix->colours)
                shares += share.share;
            for (const BeadShare& share : mix->colours)
                for (std::size_t c = 0; c < plan.colours.size(); ++c)
                    if (plan.colours[c].id == share.colour)
                        fair[c] += leaves * kind.beads * share.share / shares;
        }
    for (std::size_t c = 0; c < plan.colours.size(); ++c) {
        const Srgb srgb = plan.colours[c].srgb;
        const QColor colour(srgb.red, srgb.green, srgb.blue);
        card.held.push_back({colour, c < figures.beads.size() ? static_cast<double>(figures.beads[c]) : 0});
        card.fair.push_back({colour, fair[c]});
    }
    return card;
}

bool lengthsFit(const std::vector<StemCard>& cards, double width) {
    const QFontMetricsF metrics(look::font(look::Type::small));
    return std::all_of(cards.begin(), cards.end(), [&](const StemCard& card) {
        return std::all_of(card.lengths.begin(), card.lengths.end(), [&](const CardLength& length) {
            return metrics.horizontalAdvance(length.words) <= width - 2 * padding;
        });
    });
}

void paintCard(QPainter& painter, const QRectF& rect, const StemCard& card, bool lengthsInWords) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look::line, 1));
    painter.setBrush(look::card);
    painter.drawRoundedRect(rect.adjusted(0.5, 0.5, -0.5, -0.5), look::corner, look::corner);
    painter.setRenderHint(QPainter::Antialiasing, false);
    const bool words = rect.width() >= leastForWords;
    const double side = words ? padding : std::min(3.0, rect.width() / 8);
    const QRectF in = rect.adjusted(side, padding - 2, -side, -padding + 3);
    const double line = in.height() / 6.4;
    const double barTop = in.top() + line * 1.55;
    paintBar(painter, QRectF(in.left(), barTop, in.width(), 8), card.held, 1);
    paintBar(painter, QRectF(in.left(), barTop + 10, in.width(), 4), card.fair, 0.75);
    if (!words) {
        // Too narrow for words: figures alone, as far as they fit, and a mark where the drift is high.
        const QFont tiny = tinyFont();
        const QFontMetricsF metrics(tiny);
        painter.setFont(tiny);
        const auto figure = [&](double top, const QString& number, const QColor& colour) {
            if (metrics.horizontalAdvance(number) > rect.width() - 2)
                return;
            painter.setPen(colour);
            painter.drawText(QRectF(rect.left(), top, rect.width(), line), Qt::AlignCenter, number);
        };
        figure(in.top() + line * 0.3, card.height.section(QLatin1Char(' '), 0, 0), look::ink);
        figure(in.top() + line * 3.05, card.driftNumber, card.driftHigh ? look::accent : look::quiet);
        if (card.driftHigh)
            painter.fillRect(QRectF(in.left(), in.top() + line * 4.3, in.width(), 4), look::accent);
        painter.restore();
        return;
    }
    const auto row = [&](double n) { return QRectF(in.left(), in.top() + line * n, in.width(), line * 1.15); };
    painter.setFont(look::font(look::Type::strong));
    painter.setPen(look::ink);
    painter.drawText(row(0), Qt::AlignLeft | Qt::AlignVCenter, card.height);
    painter.setFont(look::font(look::Type::small));
    const QFontMetricsF small(look::font(look::Type::small));
    const double taken = QFontMetricsF(look::font(look::Type::strong)).horizontalAdvance(card.height);
    painter.setPen(look::quiet);
    if (taken + small.horizontalAdvance(card.leaves) + 4 <= in.width())
        painter.drawText(row(0), Qt::AlignRight | Qt::AlignVCenter, card.leaves);
    if (card.driftHigh)
        painter.setFont(look::font(look::Type::strong));
    painter.setPen(card.driftHigh ? look::accent : look::ink);
    painter.drawText(row(3.05), Qt::AlignLeft | Qt::AlignVCenter, card.drift);
    painter.setFont(look::font(look::Type::small));
    painter.setPen(look::quiet);
    for (std::size_t i = 0; i < std::min<std::size_t>(2, card.lengths.size()); ++i)
        paintLength(painter, row(4.2 + 1.1 * static_cast<double>(i)), card.lengths[i], lengthsInWords);
    painter.restore();
}

void paintHead(QPainter& painter, const QRectF& rect, const Stem& stem) {
    const QFontMetricsF metrics(look::font(look::Type::strong));
    painter.setFont(look::font(look::Type::strong));
    painter.setPen(look::ink);
    const double room = rect.width() - 4 - (stem.locked ? 16 : 0);
    // Where only part of "Stem 12" has room, its number is what tells it from its neighbours.
    QString name = text(stem.name);
    if (metrics.horizontalAdvance(name) > room)
        if (const QString word = name.section(QLatin1Char(' '), -1);
            !word.isEmpty() && word.front().isDigit() && metrics.horizontalAdvance(word) <= room)
            name = word;
    name = metrics.elidedText(name, Qt::ElideRight, room);
    painter.drawText(rect, Qt::AlignCenter, name);
    if (!stem.locked)
        return;
    // A small padlock after the name.
    const double left = rect.center().x() + metrics.horizontalAdvance(name) / 2 + 5;
    const double middle = rect.center().y();
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look::quiet, 1.4));
    painter.setBrush(Qt::NoBrush);
    painter.drawArc(QRectF(left + 1.5, middle - 6, 5, 7), 0, 180 * 16);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look::quiet);
    painter.drawRoundedRect(QRectF(left, middle - 2, 8, 6.5), 1.2, 1.2);
    painter.restore();
}

} // namespace stemwright

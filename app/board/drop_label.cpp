#include "app/board/drop_label.h"

#include "app/look.h"

#include <QFontMetrics>
#include <QPainter>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int padding = 11;
constexpr int between = 10;
constexpr int mostWidth = 380;
constexpr int distance = 18;

} // namespace

void DropLabel::say(const DropPreview& preview) {
    title_ = preview.title;
    warning_ = preview.warning;
    lines_ = preview.lines;
    allowed_ = preview.allowed();
    measure();
}

void DropLabel::say(const QString& refusal) {
    title_ = refusal;
    warning_.clear();
    lines_.clear();
    allowed_ = false;
    measure();
}

void DropLabel::clear() {
    title_.clear();
    warning_.clear();
    lines_.clear();
    size_ = {};
}

QString DropLabel::text() const {
    DropPreview preview;
    preview.title = title_;
    preview.warning = warning_;
    preview.lines = lines_;
    return preview.text();
}

void DropLabel::measure() {
    const QFontMetrics title(look::font(look::Type::text));
    const QFontMetrics small(look::font(look::Type::small));
    const QFontMetrics strong(look::font(look::Type::strong));
    const auto wrapped = [&](const QFontMetrics& metrics, const QString& said) {
        return metrics.boundingRect(QRect(0, 0, mostWidth - 2 * padding, 1000),
                                    Qt::TextWordWrap | Qt::AlignLeft, said);
    };
    const QRect titleRect = wrapped(title, title_);
    const QRect warningRect = warning_.isEmpty() ? QRect() : wrapped(strong, warning_);
    whoWidth_ = 0;
    int figures = 0;
    for (const DropPreview::Line& line : lines_) {
        whoWidth_ = std::max(whoWidth_, small.horizontalAdvance(line.who) + 2);
        figures = std::max(figures, strong.horizontalAdvance(line.figures()) + 2);
    }
    whoWidth_ = std::min(whoWidth_, 120);
    const int width = std::max({titleRect.width() + 2, warningRect.width() + 2,
                                lines_.isEmpty() ? 0 : whoWidth_ + between + figures + 2});
    const int height = titleRect.height() + (warning_.isEmpty() ? 0 : warningRect.height() + 4) +
                       (lines_.isEmpty() ? 0 : 4) + static_cast<int>(lines_.size()) * (strong.height() + 1);
    size_ = QSize(width + 2 * padding, height + 2 * padding - 4);
}

QRect DropLabel::placed(QPoint beside, const QRect& bounds, const QRect& spare) const {
    const QRect room = bounds.adjusted(6, 6, -6, -6);
    const auto fit = [&](QPoint corner) {
        corner.setX(std::clamp(corner.x(), room.left(), std::max(room.left(), room.right() - size_.width())));
        corner.setY(std::clamp(corner.y(), room.top(), std::max(room.top(), room.bottom() - size_.height())));
        return QRect(corner, size_);
    };
    // Right above, right below, left above, left below: the first that hides nothing of what it speaks of.
    const int right = std::max(beside.x(), spare.right()) + distance;
    const int left = std::min(beside.x(), spare.left()) - distance - size_.width();
    const int above = beside.y() - distance - size_.height();
    const int below = beside.y() + distance;
    QRect first;
    for (const QPoint corner :
         {QPoint(right, above), QPoint(right, below), QPoint(left, above), QPoint(left, below)}) {
        const QRect rect = fit(corner);
        if (first.isNull())
            first = rect;
        if (!rect.intersects(spare) && !rect.contains(beside))
            return rect;
    }
    return first;
}

void DropLabel::paint(QPainter& painter, const QRect& rect) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look::night);
    painter.drawRoundedRect(rect, look::corner, look::corner);
    if (!allowed_ || !warning_.isEmpty()) {
        painter.setBrush(allowed_ ? look::onNightAccent : look::bad);
        painter.drawRoundedRect(QRect(rect.left(), rect.top() + 6, 4, rect.height() - 12), 2, 2);
    }
    QRect in = rect.adjusted(padding, padding - 2, -padding, -padding + 2);
    painter.setFont(look::font(look::Type::text));
    painter.setPen(look::onNight);
    QRect used;
    painter.drawText(in, Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, title_, &used);
    int top = used.bottom() + 4;
    if (!warning_.isEmpty()) {
        painter.setFont(look::font(look::Type::strong));
        painter.setPen(look::onNightAccent);
        painter.drawText(QRect(in.left(), top, in.width(), in.height()),
                         Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, warning_, &used);
        top = used.bottom() + 4;
    }
    const QFont small = look::font(look::Type::small), strong = look::font(look::Type::strong);
    const QFontMetrics smallMetrics(small), strongMetrics(strong);
    for (const DropPreview::Line& line : lines_) {
        const QRect row(in.left(), top, in.width(), strongMetrics.height() + 1);
        painter.setFont(small);
        painter.setPen(look::onNight);
        painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter,
                         smallMetrics.elidedText(line.who, Qt::ElideRight, whoWidth_));
        // What changes stands out from what stays; the arrow says it without the colour.
        QRect rest = row.adjusted(whoWidth_ + between, 0, 0, 0);
        for (qsizetype i = 0; i < line.parts.size(); ++i) {
            const DropPreview::Figure& part = line.parts[i];
            const QString said = i > 0 ? QStringLiteral(" · ") + part.text : part.text;
            painter.setFont(strong);
            painter.setPen(part.better    ? look::onNightBetter
                           : part.changes ? look::onNightAccent
                                          : look::onNight);
            painter.drawText(rest, Qt::AlignLeft | Qt::AlignVCenter, said);
            rest.setLeft(rest.left() + strongMetrics.horizontalAdvance(said));
        }
        top += row.height();
    }
    painter.restore();
}

} // namespace stemwright

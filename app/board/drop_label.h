#pragma once

#include "app/board/drop_preview.h"

#include <QRect>
#include <QSize>

class QPainter;

namespace stemwright {

/// The dark label that says what a drop would do.
class DropLabel {
public:
    void say(const DropPreview& preview);
    /// A refusal alone.
    void say(const QString& refusal);
    void clear();

    bool empty() const { return title_.isEmpty(); }
    QString text() const;
    QSize size() const { return size_; }
    /// Beside the point, where it is wholly within `bounds` and, if it can be, clear of `spare`.
    QRect placed(QPoint beside, const QRect& bounds, const QRect& spare) const;
    void paint(QPainter& painter, const QRect& rect) const;

private:
    void measure();

    QString title_;
    QString warning_;
    QVector<DropPreview::Line> lines_;
    bool allowed_ = true;
    QSize size_;
    int whoWidth_ = 0;
};

} // namespace stemwright

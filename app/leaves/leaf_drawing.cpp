#include "app/leaves/leaf_drawing.h"

#include "app/look.h"
#include "app/wording.h"

#include <QFontMetrics>
#include <QPainter>

#include <QtMath>

#include <algorithm>
#include <array>
#include <cmath>

namespace stemwright {

namespace {

/// Round the beads of one row, so that it is found whatever its colour.
void markRowOf(QPainter& painter, const LeafLook& look, QPointF base, double scale, MarkedRow row) {
    const LeafRows rows = leafRows(shapeOf(look));
    if (row.ring < 0 || row.ring >= static_cast<int>(rows.rows.size()))
        return;
    const LeafRow& marked = rows.rows[static_cast<std::size_t>(row.ring)];
    painter.save();
    painter.translate(base);
    painter.setBrush(Qt::NoBrush);
    for (const auto& [colour, width] : {std::pair{look::card, 4.5}, std::pair{look::focus, 2.0}}) {
        painter.setPen(QPen(colour, width));
        for (std::size_t i = marked.first; i < marked.first + marked.count; ++i) {
            const BeadMark& bead = rows.beads[i];
            if (bead.middle.x * row.side < -1e-6)
                continue;
            painter.save();
            painter.translate(bead.middle.x * scale, bead.middle.y * scale);
            painter.rotate(bead.degrees);
            painter.drawEllipse(QPointF(), bead.across / 2 * scale, bead.along / 2 * scale);
            painter.restore();
        }
    }
    painter.restore();
}

/// What the leaf takes around its base, mm: its measures, and the beads of a small one that reach beyond them.
QRectF boxOf(const LeafLook& look) {
    QRectF box(-look.width / 2, -look.length, look.width, look.length);
    for (const BeadMark& bead : leafRows(shapeOf(look)).beads) {
        const double turn = qDegreesToRadians(bead.degrees);
        const double x = std::hypot(bead.across * std::cos(turn), bead.along * std::sin(turn)) / 2;
        const double y = std::hypot(bead.across * std::sin(turn), bead.along * std::cos(turn)) / 2;
        box |= QRectF(bead.middle.x - x, bead.middle.y - y, 2 * x, 2 * y);
    }
    return box;
}

} // namespace

void paintRuledLeaf(QPainter& painter, const QRectF& room, const LeafLook& look, const Units& units,
                    LeafSprites& sprites, MarkedRow marked) {
    painter.setFont(look::font(look::Type::small));
    const int line = painter.fontMetrics().height() + look::unit;
    const QRectF drawn = room.adjusted(0, 0, 0, -line - 8);
    if (!(look.length > 0) || drawn.width() < 20 || drawn.height() < 20)
        return;
    const QRectF box = boxOf(look);
    const double scale = std::min(drawn.width() / box.width(), drawn.height() / box.height());
    const QPointF base = drawn.center() - box.center() * scale;
    if (look.bands.empty())
        paintLeaf(painter, look, base, 0, scale, LeafDetail::outline);
    else
        sprites.draw(painter, look, base, 0, scale);
    markRowOf(painter, look, base, scale, marked);

    const bool inch = units.length == LengthUnit::inch;
    const std::array<double, 3> steps = inch ? std::array{25.4, 12.7, 6.35} : std::array{10.0, 5.0, 1.0};
    double ruled = steps.back();
    for (const double step : steps)
        if (step * scale <= room.width() * 0.6) {
            ruled = step;
            break;
        }
    const double y = base.y() + box.bottom() * scale + 8 + line * 0.55;
    const double left = room.center().x() - ruled * scale / 2, right = left + ruled * scale;
    painter.setPen(QPen(look::quiet, 1.5));
    painter.drawLine(QPointF(left, y), QPointF(right, y));
    for (const double x : {left, right})
        painter.drawLine(QPointF(x, y - 4), QPointF(x, y + 4));
    painter.drawText(QRectF(right + 6, y - line / 2.0, 80, line), Qt::AlignVCenter,
                     sizeText(millimetres(ruled), units));
}

LeafDrawing::LeafDrawing(const Units& units, QWidget* parent) : QWidget(parent), units_(units) {
    setObjectName(QStringLiteral("leafDrawing"));
    setAccessibleName(tr("The leaf as it will look"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void LeafDrawing::setLook(const LeafLook& look) {
    if (look == look_)
        return;
    look_ = look;
    update();
}

void LeafDrawing::markRow(MarkedRow row) {
    marked_ = row;
    update();
}

void LeafDrawing::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintRuledLeaf(painter, QRectF(rect()).adjusted(8, 8, -8, -4), look_, units_, sprites_, marked_);
}

} // namespace stemwright

#include "app/board/board_painter.h"

#include "app/look.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainterPath>

#include <cmath>

namespace stemwright {

namespace {

constexpr double shadow = 0.22; ///< what stays of a leaf that is in the hand
constexpr double leastZoomForNumbers = 0.55;

QString tr(const char* source) {
    return QCoreApplication::translate("Board", source);
}

std::uint64_t keyOf(Leaf leaf, double reach) {
    return (std::uint64_t{leaf.kind.value} << 40u) | (std::uint64_t{leaf.mix.value} << 16u) |
           static_cast<std::uint64_t>(std::lround(reach * 64));
}

} // namespace

void paintFrame(QPainter& painter, const QRectF& rect, const QColor& colour, Qt::PenStyle style, double width) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QPen pen(colour, width, style);
    if (style == Qt::DashLine)
        pen.setDashPattern({4, 2.5});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(rect, look::corner - 1, look::corner - 1);
    painter.restore();
}

void BoardPainter::forget() {
    looks_.clear();
}

const LeafLook& BoardPainter::lookFor(const Plan& plan, Leaf leaf, double reach) {
    const auto [it, fresh] = looks_.try_emplace(keyOf(leaf, reach));
    if (fresh) {
        it->second = lookOf(plan, leaf);
        it->second.length *= static_cast<double>(std::lround(reach * 64)) / 64;
    }
    return it->second;
}

void BoardPainter::paintLeafAt(QPainter& painter, const Plan& plan, const LeafSpot& spot, Leaf leaf,
                               double scale, double opacity) {
    sprites_.draw(painter, lookFor(plan, leaf, spot.reach), spot.base, spot.degrees, scale, opacity);
}

void BoardPainter::paint(QPainter& painter, const Plan& plan, const BoardLayout& layout, const QRectF& visible,
                         const Show& show) {
    scale_ = layout.scale();
    zoom_ = layout.zoom();
    // A leaf may reach a little beyond its column.
    const double margin = 8 * zoom_;
    const auto [first, last] = layout.columnsIn(visible.left() - margin, visible.right() + margin);
    for (int i = first; i < last; ++i) {
        const auto index = static_cast<std::size_t>(i);
        paintStem(painter, plan, plan.stems[index], layout.stems()[index], visible, show);
    }
    if (show.gaps) {
        painter.setPen(QPen(look::faint, 1.2, Qt::SolidLine, Qt::RoundCap));
        for (int i = first; i < last; ++i) {
            const StemSpot& spot = layout.stems()[static_cast<std::size_t>(i)];
            if (plan.stems[static_cast<std::size_t>(i)].locked)
                continue;
            for (int g = 0; g <= static_cast<int>(spot.tiers.size()); ++g) {
                const QPointF middle = layout.rect(Place::ofGap(spot.id, g)).center();
                for (const double side : {-1.0, 1.0})
                    painter.drawLine(QPointF(spot.axis + side * 16 * zoom_, middle.y()),
                                     QPointF(spot.axis + side * 24 * zoom_, middle.y()));
            }
        }
    }
}

void BoardPainter::paintStem(QPainter& painter, const Plan& plan, const Stem& stem, const StemSpot& spot,
                             const QRectF& visible, const Show& show) {
    if (stem.tiers.empty()) {
        const QRectF room(spot.column.left() + 10, spot.tip + 2, spot.column.width() - 20, 44 * zoom_);
        paintFrame(painter, room, look::faint, Qt::DashLine, 1.2);
        if (zoom_ >= leastZoomForNumbers) {
            painter.setFont(look::font(look::Type::small));
            painter.setPen(look::quiet);
            painter.drawText(room, Qt::AlignCenter | Qt::TextWordWrap, tr("no leaves yet"));
        }
    }
    // Tiers out of sight are passed over; a leaf reaches no further than a tier.
    const double margin = 48 * zoom_;
    std::size_t first = 0, last = spot.tiers.size();
    while (first < last && spot.tiers[first].band.bottom() + margin < visible.top())
        ++first;
    while (last > first && spot.tiers[last - 1].band.top() - margin > visible.bottom())
        --last;
    const auto eachLeaf = [&](bool back) {
        for (std::size_t t = first; t < last; ++t)
            for (std::size_t s = 0; s < spot.tiers[t].leaves.size() && s < stem.tiers[t].slots.size(); ++s)
                if (spot.tiers[t].leaves[s].back == back)
                    paintSlot(painter, plan, stem.tiers[t].slots[s],
                              {stem.id, static_cast<int>(t), static_cast<int>(s)}, spot.tiers[t].leaves[s],
                              show);
    };
    eachLeaf(true);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look::stem);
    // Each stretch begins a little above its tier, under the one before, so that no seam is seen.
    const auto stretch = [&](double from, double to, double thickness, bool foot) {
        QPainterPath path;
        path.addRect(
            QRectF(spot.axis - thickness / 2, from, thickness, to - from - (foot ? thickness / 2 : 0)));
        if (foot)
            path.addEllipse(QPointF(spot.axis, to - thickness / 2), thickness / 2, thickness / 2);
        path.setFillRule(Qt::WindingFill);
        painter.drawPath(path);
    };
    if (spot.tiers.empty())
        stretch(spot.tip + 50 * zoom_, spot.foot, 1.5 * zoom_, true);
    for (std::size_t t = 0; t < spot.tiers.size(); ++t) {
        const double to = t + 1 < spot.tiers.size() ? spot.tiers[t + 1].y : spot.foot;
        if (to >= visible.top() && spot.tiers[t].y <= visible.bottom())
            stretch(spot.tiers[t].y - (t > 0 ? 1 : 0), to, spot.tiers[t].thickness, t + 1 == spot.tiers.size());
    }
    painter.restore();
    eachLeaf(false);
    if (zoom_ < leastZoomForNumbers)
        return;
    if (show.codes)
        paintCodes(painter, plan, stem, spot, first, last);
    painter.setFont(look::font(look::Type::small));
    for (std::size_t t = first; t < last; ++t) {
        const bool bound = stem.tiers[t].progress.bound;
        // Numbers are quiet enough to be passed over, and dark enough to be read.
        painter.setPen(bound ? look::good : look::quiet);
        painter.setOpacity(bound ? 1 : 0.75);
        const QRectF at(spot.column.left() + 2, spot.tiers[t].y - 9, 22, 18);
        painter.drawText(at, Qt::AlignLeft | Qt::AlignVCenter,
                         bound ? QStringLiteral("%1 ✓").arg(t + 1) : QString::number(t + 1));
    }
    painter.setOpacity(1);
}

void BoardPainter::paintSlot(QPainter& painter, const Plan& plan, const Slot& slot, SlotRef at,
                             const LeafSpot& spot, const Show& show) {
    if (show.selected && show.selected(at)) {
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(look::accent, 1.4));
        painter.setBrush(look::accentSoft);
        painter.drawRoundedRect(spot.zone.adjusted(-1, -1, 1, 1), 6, 6);
        painter.restore();
    }
    const bool lifted = show.lifted && show.lifted(at);
    if (slot.filled())
        paintLeafAt(painter, plan, spot, slot.leaf, scale_, lifted ? shadow : 1);
    else
        sprites_.draw(painter, lookFor(plan, slot.leaf, spot.reach), spot.base, spot.degrees, scale_, 1);
    const QPointF middle = spot.zone.center();
    if (slot.pinned) {
        // A pin's head, ringed with paper so that it is seen on any leaf.
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(look::paper, 1.6));
        painter.setBrush(look::ink);
        painter.drawEllipse(middle, 3.4, 3.4);
        painter.restore();
    }
}

void BoardPainter::paintCodes(QPainter& painter, const Plan& plan, const Stem& stem, const StemSpot& spot,
                              std::size_t first, std::size_t last) {
    QFont font = look::font(look::Type::small);
    font.setPointSizeF(font.pointSizeF() * 0.88);
    const QFontMetricsF metrics(font);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(font);
    for (std::size_t t = first; t < last; ++t)
        for (std::size_t s = 0; s < spot.tiers[t].leaves.size() && s < stem.tiers[t].slots.size(); ++s) {
            const Slot& slot = stem.tiers[t].slots[s];
            const Mix* mix = slot.filled() ? find(plan, slot.leaf.mix) : nullptr;
            if (!mix)
                continue;
            // Beside a leaf that points to or from the viewer, under one that is spread.
            const QRectF zone = spot.tiers[t].leaves[s].zone;
            const bool headOn = spot.tiers[t].leaves[s].reach < 0.8;
            const QString code = text(mix->code);
            const QSizeF size(metrics.horizontalAdvance(code) + 4, metrics.height() - 1);
            const QPointF corner = headOn ? QPointF(zone.right() + 1, zone.center().y() - size.height() / 2)
                                          : QPointF(zone.center().x() - size.width() / 2, zone.bottom() - 3);
            const QRectF plate(corner, size);
            painter.setPen(Qt::NoPen);
            painter.setBrush(look::paper);
            painter.setOpacity(0.8);
            painter.drawRoundedRect(plate, 3, 3);
            painter.setOpacity(1);
            painter.setPen(look::ink);
            painter.drawText(plate, Qt::AlignCenter, code);
        }
    painter.restore();
}

} // namespace stemwright

// How the pot from above looks: the opening, the stems' discs, and what is offered.
#include "app/look.h"
#include "app/pot/from_above.h"
#include "app/pot/plant_scene.h"
#include "app/session.h"

#include "core/figures/pot_findings.h"
#include "core/figures/pot_shape.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stemwright {

void FromAbove::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Pot& pot = session_.plan().pot;
    const QPointF middle(width() / 2.0, height() / 2.0);
    const PotOutline outline(pot);
    const double rim = inMillimetres(pot.topDiameter) / 2, clay = inMillimetres(clayRadius(pot));
    const auto fill = [&](const PotRing& ring, const QColor& colour) {
        QPolygonF shape;
        for (std::size_t k = 0; k < outline.corner.size(); ++k) {
            const Point3 at = outline.at(ring, k);
            shape << onWidget({at.x, at.y});
        }
        painter.setBrush(colour);
        painter.drawPolygon(shape);
    };
    painter.setPen(Qt::NoPen);
    fill({rim, potWall, 0, false}, look::pot);
    fill({rim, 0, 0, false}, look::pot.darker(128));
    fill({clay, 0, 0, true}, look::clay.lighter(118));
    paintStems(painter);

    // Where the eye is: the front of the picture, turned with the plant.
    const double a = turn_ * M_PI / 180;
    const QPointF way(-std::sin(a), std::cos(a));
    const double out = std::min(width(), height()) / 2.0 - 11;
    const QPointF eye = middle + way * out, side(way.y(), -way.x());
    painter.setPen(Qt::NoPen);
    painter.setBrush(look::accent);
    painter.drawPolygon(QPolygonF({eye - way * 8, eye + way * 5 + side * 8, eye + way * 5 - side * 8}));
    painter.setFont(look::font(look::Type::small));
    painter.setPen(look::quiet);
    painter.drawText(QRectF(9, height() - 22, width() - 18, 16), Qt::AlignLeft | Qt::AlignVCenter, tr("front"));
    painter.drawText(QRectF(9, 6, width() - 18, 16), Qt::AlignLeft | Qt::AlignVCenter, tr("back"));
    if (hasFocus()) {
        painter.setPen(QPen(look::focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5), look::corner, look::corner);
    }
}

void FromAbove::paintStems(QPainter& painter) const {
    const Plan& plan = session_.plan();
    const double px = scale();
    for (std::size_t i = 0; i < places_.size(); ++i) {
        QColor tint = tips_[i], ring = tint.darker(160);
        tint.setAlpha(90);
        ring.setAlpha(190);
        const double r = std::max(5.0, body_.stems[i].clearance * px);
        painter.setPen(QPen(ring, 1.2));
        painter.setBrush(tint);
        painter.drawEllipse(onWidget(places_[i]), r, r);
    }
    // A suggestion that is shown: where each stem would go.
    if (const auto& offer = session_.offer()) {
        if (const auto* batch = std::get_if<Batch>(&offer->edit.what))
            for (const Edit& edit : batch->edits)
                if (const auto* reform = std::get_if<ReformStem>(&edit.what))
                    if (const auto at = index(reform->stem); at && reform->form.standing) {
                        const QPointF from = onWidget(places_[*at]);
                        const QPointF to = onWidget(
                            {inMillimetres(reform->form.standing->x), inMillimetres(reform->form.standing->y)});
                        painter.setPen(QPen(look::accent, 1.6, Qt::DashLine));
                        painter.drawLine(from, to);
                        painter.setBrush(look::accentSoft);
                        painter.setPen(QPen(look::accent, 1.6));
                        painter.drawEllipse(to, 7, 7);
                    }
    }
    painter.setFont(look::font(look::Type::small));
    for (std::size_t i = 0; i < places_.size(); ++i) {
        const StemBody& stem = body_.stems[i];
        const QPointF at = onWidget(places_[i]);
        const bool chosen = stem.stem == chosen_, bad = troubled(i);
        const double foot = std::max(10.0, footRadius(plan, stem) * px);
        painter.setPen(QPen(bad ? look::bad : chosen ? look::focus : look::quiet, chosen || bad ? 2.4 : 1));
        painter.setBrush(chosen ? look::card : QColor(255, 255, 255, 215));
        painter.drawEllipse(at, foot, foot);
        painter.setPen(bad ? look::bad : look::ink);
        painter.drawText(QRectF(at.x() - 20, at.y() - 9, 40, 18), Qt::AlignCenter, QString::number(i + 1));
    }
}

} // namespace stemwright

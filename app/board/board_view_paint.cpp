#include "app/board/board_view.h"

#include "app/look.h"
#include "app/wording.h"

#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace stemwright {

void BoardView::spoil() {
    baseSpoilt_ = true;
    update();
}

void BoardView::paintBase() {
    const double ratio = devicePixelRatioF();
    if (base_.size() != size() * ratio) {
        base_ = QPixmap(size() * ratio);
        base_.setDevicePixelRatio(ratio);
    }
    QPainter painter(&base_);
    painter.fillRect(rect(), look::paper);
    paintColumnsBase(painter);
    tray_.paint(painter, trayArea(), trayDown_->value(), session_.plan(), session_.figures(),
                painter_.sprites(), codes_);
    painter.fillRect(QRect(BoardTray::width, 0, 1, height()), look::line);
    baseSpoilt_ = false;
}

void BoardView::paintColumnsBase(QPainter& painter) {
    const Plan& plan = session_.plan();
    const QRect columns = columnsArea();
    const auto [first, last] =
        layout_.columnsIn(toBoard(columns.topLeft()).x(), toBoard(columns.topRight()).x());
    painter.save();
    painter.setClipRect(columns);
    const QPointF origin = fromBoard(QRectF(0, 0, 1, 1)).topLeft();
    painter.translate(origin);
    BoardPainter::Show show;
    show.codes = codes_;
    show.gaps = gesture_.holding();
    if (!selection_.empty())
        show.selected = [this](SlotRef at) { return selection_.contains(at); };
    if (const Held* held = gesture_.held()) {
        if (const auto* leaves = std::get_if<HeldLeaves>(held))
            show.lifted = [leaves](SlotRef at) {
                return std::find(leaves->from.begin(), leaves->from.end(), at) != leaves->from.end();
            };
        else if (const auto* tiers = std::get_if<HeldTiers>(held))
            show.lifted = [tiers](SlotRef at) {
                return at.stem == tiers->stem && at.tier >= tiers->first &&
                       at.tier < tiers->first + tiers->count;
            };
    }
    painter_.paint(painter, plan, layout_, QRectF(columns).translated(-origin), show);
    if (!offer_.empty())
        offer_.paint(painter, plan, layout_, painter_);
    painter.restore();
    if (plan.stems.empty()) {
        painter.setPen(look::quiet);
        painter.setFont(look::font(look::Type::text));
        painter.drawText(columns, Qt::AlignCenter, tr("No stems yet. Right-click, or use Edit, to add one."));
        return;
    }
    // Names and cards move sideways with their columns only.
    const QRect head = headArea(), cards = cardsArea();
    painter.save();
    painter.setClipRect(QRect(head.left(), 0, head.width(), height()));
    const bool inWords = lengthsFit(cards_, cardRect(first).width());
    for (int i = first; i < last; ++i) {
        const auto index = static_cast<std::size_t>(i);
        const QRectF column = fromBoard(layout_.stems()[index].column);
        paintHead(painter, QRectF(column.left(), head.top(), column.width(), head.height()), plan.stems[index]);
        if (index < cards_.size())
            paintCard(painter, cardRect(i), cards_[index], inWords);
    }
    painter.restore();
    // A line shows where columns go on out of sight.
    if (down_->value() > 0)
        painter.fillRect(QRect(head.left(), head.bottom(), head.width(), 1), look::line);
    if (down_->value() < down_->maximum())
        painter.fillRect(QRect(cards.left(), columns.bottom(), cards.width(), 1), look::line);
}

void BoardView::paintEvent(QPaintEvent* event) {
    if (baseSpoilt_ || base_.size() != size() * devicePixelRatioF())
        paintBase();
    QPainter painter(this);
    const double ratio = devicePixelRatioF();
    for (const QRect& part : event->region())
        painter.drawPixmap(part, base_,
                           QRect((QPointF(part.topLeft()) * ratio).toPoint(), part.size() * ratio));
    paintAbove(painter, event->rect());
}

void BoardView::paintTargets(QPainter& painter) {
    const DropPreview* preview = gesture_.preview();
    if (!preview)
        return;
    const bool allowed = preview->allowed();
    const QColor colour = allowed ? look::accent : look::bad;
    painter.save();
    if (preview->place.onTray())
        painter.setClipRect(trayArea());
    else if (preview->place.sort != Place::Sort::stem)
        painter.setClipRect(columnsArea());
    const Held& held = *gesture_.held();
    if (preview->place.sort == Place::Sort::gap || preview->place.sort == Place::Sort::stem) {
        const Stem* stem = stemwright::find(session_.plan(), preview->place.stem);
        const int index = preview->place.sort == Place::Sort::gap ? preview->place.tier
                                                                  : static_cast<int>(stem->tiers.size());
        const QRectF gap = fromBoard(layout_.rect(Place::ofGap(preview->place.stem, index)));
        const double middle = gap.center().y();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(colour, 3, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(QPointF(gap.left() + 4, middle), QPointF(gap.right() - 4, middle));
        painter.setPen(Qt::NoPen);
        painter.setBrush(colour);
        painter.drawEllipse(QPointF(gap.left() + 4, middle), 4, 4);
        painter.drawEllipse(QPointF(gap.right() - 4, middle), 4, 4);
    } else if (preview->place.onTray()) {
        paintFrame(painter, trayArea().adjusted(4, 4, -5, -5), colour, Qt::DashLine, 2);
    } else if (allowed && !std::holds_alternative<HeldTiers>(held)) {
        for (const SlotRef& at : preview->landed)
            paintFrame(painter, fromBoard(layout_.rect(Place::of(at))), colour, Qt::DashLine, 2);
    } else if (const auto* tiers = std::get_if<HeldTiers>(&held)) {
        const int first = preview->place.tier - tiers->grabbed;
        QRectF all;
        for (int t = first; t < first + tiers->count; ++t)
            all |= fromBoard(layout_.rect(Place::ofTier(preview->place.stem, t)));
        all.setLeft(all.left() + layout_.laneWidth() - 2);
        paintFrame(painter, all, colour, Qt::DashLine, 2);
    } else {
        paintFrame(painter, rectOf(preview->place), colour, Qt::DashLine, 2);
    }
    painter.restore();
}

void BoardView::paintAbove(QPainter& painter, const QRect& dirty) {
    const bool holding = gesture_.holding();
    if (hasFocus() && (focusByKey_ || focus_.onTray()) && !holding) {
        painter.save();
        if (focus_.onBoard() && focus_.sort != Place::Sort::stem)
            painter.setClipRect(columnsArea());
        paintFrame(painter, QRectF(rectOf(focus_)).adjusted(-1, -1, 1, 1), look::focus, Qt::SolidLine, 2.4);
        painter.restore();
    }
    if (shown_.sort != Place::Sort::paper) {
        painter.save();
        if (shown_.sort != Place::Sort::stem)
            painter.setClipRect(columnsArea());
        QRectF ring = rectOf(shown_);
        if (shown_.sort == Place::Sort::stem)
            ring = QRectF(ring.left() + 1, 2, ring.width() - 2, cardsArea().bottom() - 2);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor(look::accent.red(), look::accent.green(), look::accent.blue(), 26));
        painter.drawRoundedRect(ring.adjusted(-3, -3, 3, 3), look::corner, look::corner);
        paintFrame(painter, ring.adjusted(-3, -3, 3, 3), look::accent, Qt::SolidLine, 2.6);
        painter.restore();
    }
    if (gesture_.phase() == BoardGesture::Phase::banding) {
        const QRect band = gesture_.band(pointer_) & columnsArea();
        painter.setPen(QPen(look::accent, 1));
        painter.setBrush(QColor(look::accent.red(), look::accent.green(), look::accent.blue(), 28));
        painter.drawRect(band);
    }
    if (!holding && gesture_.phase() != BoardGesture::Phase::refused)
        return;
    paintTargets(painter);
    if (holding && ghost_.rect(pointer_).intersects(dirty))
        ghost_.paint(painter, pointer_);
    if (!label_.empty())
        label_.paint(painter, labelRect());
}

QRect BoardView::targetsRect() const {
    const DropPreview* preview = gesture_.preview();
    if (!preview)
        return {};
    if (preview->place.onTray())
        return trayArea();
    QRect all = rectOf(preview->place);
    if (preview->place.sort == Place::Sort::stem) {
        const Stem* stem = stemwright::find(session_.plan(), preview->place.stem);
        all |= rectOf(Place::ofGap(preview->place.stem, stem ? static_cast<int>(stem->tiers.size()) : 0));
    }
    for (const SlotRef& at : preview->landed)
        all |= rectOf(Place::of(at));
    if (const auto* tiers = std::get_if<HeldTiers>(gesture_.held()))
        if (preview->place.sort != Place::Sort::gap)
            for (int t = 0; t < tiers->count; ++t)
                all |= rectOf(Place::ofTier(preview->place.stem, preview->place.tier - tiers->grabbed + t));
    return all.adjusted(-8, -8, 8, 8);
}

QRegion BoardView::aboveRegion() const {
    QRegion region(labelRect());
    if (gesture_.holding())
        region += ghost_.rect(pointer_);
    const QRect targets = targetsRect();
    if (gesture_.preview() && gesture_.preview()->place.onTray()) {
        // The frame around the tray, not all that is in it.
        region += QRegion(targets) - QRegion(targets.adjusted(8, 8, -8, -8));
        return region;
    }
    return region + targets;
}

QRect BoardView::labelRect() const {
    if (label_.empty())
        return {};
    const DropPreview* preview = gesture_.preview();
    QRect spare(pointer_, QSize(1, 1));
    if (preview && !preview->place.onTray() && preview->place.sort != Place::Sort::stem)
        spare = rectOf(preview->place) & columnsArea();
    return label_.placed(pointer_, rect(), spare);
}

} // namespace stemwright

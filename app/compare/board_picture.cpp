#include "app/compare/board_picture.h"

#include "app/look.h"
#include "app/wording.h"

#include <QPaintEvent>
#include <QPainter>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int headHeight = 26;
constexpr int footHeight = 40;
/// Narrower columns are a picture without words.
constexpr double leastForText = 34;
constexpr double leastZoom = 0.18;
constexpr double mostZoom = 1.2;

std::set<SlotRef> unlikeSlots(const Plan& plan, const Plan& other) {
    std::set<SlotRef> unlike;
    for (const Stem& stem : plan.stems)
        for (std::size_t t = 0; t < stem.tiers.size(); ++t)
            for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s) {
                const SlotRef at{stem.id, static_cast<int>(t), static_cast<int>(s)};
                const Slot* there = find(other, at);
                if (!there || !(there->leaf == stem.tiers[t].slots[s].leaf))
                    unlike.insert(at);
            }
    return unlike;
}

} // namespace

BoardPicture::BoardPicture(QWidget* parent) : QWidget(parent) {
    setAttribute(Qt::WA_OpaquePaintEvent);
}

void BoardPicture::show(const Plan& plan, const Figures& figures, const Plan& other) {
    plan_ = plan;
    figures_ = figures;
    unlike_ = unlikeSlots(plan, other);
    painter_.forget();
    setZoom(zoom_);
}

double BoardPicture::fittingZoom(QSize room) const {
    BoardLayout whole;
    whole.arrange(plan_, 1);
    if (whole.size().isEmpty())
        return mostZoom;
    const double tall = (room.height() - headHeight - footHeight) / whole.size().height();
    const double wide = room.width() / whole.size().width();
    // All of it where that can still be read; otherwise its whole height, and the stems scroll sideways.
    constexpr double readable = 0.3;
    return std::clamp(std::min(tall, std::max(wide, readable)), leastZoom, mostZoom);
}

void BoardPicture::setZoom(double zoom) {
    zoom_ = zoom;
    layout_.arrange(plan_, zoom);
    setMinimumSize(sizeHint());
    updateGeometry();
    update();
}

QSize BoardPicture::sizeHint() const {
    return {static_cast<int>(std::ceil(layout_.size().width())),
            static_cast<int>(std::ceil(layout_.size().height())) + headHeight + footHeight};
}

void BoardPicture::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.fillRect(event->rect(), look::paper);
    painter.save();
    painter.translate(0, headHeight);
    const QRectF visible = QRectF(event->rect()).translated(0, -headHeight);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look::accentSoft);
    for (const SlotRef& at : unlike_)
        if (const QRectF rect = layout_.rect(Place::of(at)); rect.intersects(visible))
            painter.drawRoundedRect(rect, 5, 5);
    painter_.paint(painter, plan_, layout_, visible, {});
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look::accent, 1.2));
    for (const SlotRef& at : unlike_)
        if (const QRectF rect = layout_.rect(Place::of(at)); rect.intersects(visible))
            painter.drawRoundedRect(rect, 5, 5);
    painter.restore();
    const QFontMetrics small(look::font(look::Type::small));
    for (std::size_t i = 0; i < plan_.stems.size(); ++i) {
        const QRectF column = layout_.stems()[i].column;
        if (column.width() < leastForText)
            break;
        const QRect text(static_cast<int>(column.left()), 0, static_cast<int>(column.width()), headHeight);
        if (!text.translated(0, 0).intersects(
                QRect(event->rect().left(), 0, event->rect().width(), headHeight)))
            continue;
        painter.setFont(look::font(look::Type::small));
        painter.setPen(look::ink);
        painter.drawText(
            text, Qt::AlignCenter,
            small.elidedText(stemwright::text(plan_.stems[i].name), Qt::ElideLeft, text.width() - 2));
        const StemFigures& figures = figures_.stems[i];
        const QRect foot(text.left(), height() - footHeight, text.width(), footHeight / 2);
        painter.drawText(foot, Qt::AlignCenter,
                         small.elidedText(sizeText(figures.height, plan_.units), Qt::ElideRight, foot.width()));
        painter.setPen(look::quiet);
        painter.drawText(foot.translated(0, footHeight / 2), Qt::AlignCenter, driftText(figures.drift));
    }
}

} // namespace stemwright

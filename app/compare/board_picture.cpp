#include "app/compare/board_picture.h"

#include "app/look.h"
#include "app/wording.h"

#include <QPaintEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr int headHeight = 26;
constexpr int footHeight = 40;
/// Narrower columns have a number alone, and still narrower ones none.
constexpr double leastForText = 40;
constexpr double leastForNumber = 16;
/// Where more of the leaves are unlike than this part, frames say nothing any more.
constexpr double mostMarked = 0.5;
constexpr double leastZoom = 0.08;
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
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
}

void BoardPicture::show(const Plan& plan, const Figures& figures, const Plan& other) {
    plan_ = plan;
    figures_ = figures;
    unlike_ = unlikeSlots(plan, other);
    slots_ = figures.pot.slots;
    painter_.forget();
    setZoom(zoom_);
}

double BoardPicture::fittingZoom(QSize room) const {
    BoardLayout whole;
    whole.arrange(plan_, 1);
    if (whole.size().isEmpty())
        return mostZoom;
    // Sizes are rounded up to whole pixels.
    const double tall = (room.height() - headHeight - footHeight - 2) / whole.size().height();
    const double wide = (room.width() - 2) / whole.size().width();
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

void BoardPicture::paintMarks(QPainter& painter, const QRectF& visible) const {
    if (marked() > mostMarked * slots_)
        return;
    for (const SlotRef& at : unlike_)
        if (const QRectF rect = layout_.rect(Place::of(at)); rect.intersects(visible))
            painter.drawRoundedRect(rect, 5, 5);
}

void BoardPicture::paintWords(QPainter& painter, std::size_t stem) const {
    const QRect column = layout_.stems()[stem].column.toAlignedRect();
    if (column.width() < leastForNumber)
        return;
    const QRect head(column.left(), 0, column.width(), headHeight);
    painter.setFont(look::font(look::Type::small));
    painter.setPen(look::ink);
    if (column.width() < leastForText) {
        painter.drawText(head, Qt::AlignCenter, countText(static_cast<qint64>(stem) + 1));
        return;
    }
    const QFontMetrics small(painter.font());
    painter.drawText(head, Qt::AlignCenter,
                     small.elidedText(text(plan_.stems[stem].name), Qt::ElideLeft, head.width() - 2));
    const StemFigures& figures = figures_.stems[stem];
    const QRect foot(column.left(), height() - footHeight, column.width(), footHeight / 2);
    painter.drawText(foot, Qt::AlignCenter,
                     small.elidedText(sizeText(figures.height, plan_.units), Qt::ElideRight, foot.width()));
    painter.setPen(look::quiet);
    painter.drawText(foot.translated(0, footHeight / 2), Qt::AlignCenter, driftText(figures.drift));
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
    paintMarks(painter, visible);
    painter_.paint(painter, plan_, layout_, visible, {});
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look::accent, 1.2));
    paintMarks(painter, visible);
    painter.restore();
    const auto [first, last] = layout_.columnsIn(visible.left(), visible.right());
    for (int i = first; i < last; ++i)
        paintWords(painter, static_cast<std::size_t>(i));
}

} // namespace stemwright

#include "app/board/board_ghost.h"

#include "app/board/board_selection.h"
#include "app/look.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double opacity = 0.86;
/// A ghost of half the board would hide the other half.
constexpr double largest = 700;

struct Piece {
    LeafSpot spot;
    Leaf leaf;
};

} // namespace

void BoardGhost::make(const Plan& plan, const Held& held, const BoardLayout& layout, BoardPainter& painter,
                      QPointF grab, double devicePixelRatio) {
    std::vector<Piece> pieces;
    const auto add = [&](SlotRef at) {
        const StemSpot* spot = layout.find(at.stem);
        const Slot* slot = find(plan, at);
        if (spot && slot && slot->filled())
            pieces.push_back(
                {spot->tiers[static_cast<std::size_t>(at.tier)].leaves[static_cast<std::size_t>(at.slot)],
                 slot->leaf});
    };
    std::vector<QRectF> stretches;
    if (const auto* leaves = std::get_if<HeldLeaves>(&held)) {
        for (const SlotRef& at : leaves->from)
            add(at);
    } else if (const auto* tiers = std::get_if<HeldTiers>(&held)) {
        for (int t = tiers->first; t < tiers->first + tiers->count; ++t)
            for (const SlotRef& at : BoardSelection::tier(plan, tiers->stem, t))
                add(at);
        if (const StemSpot* spot = layout.find(tiers->stem)) {
            const TierSpot& first = spot->tiers[static_cast<std::size_t>(tiers->first)];
            const TierSpot& last = spot->tiers[static_cast<std::size_t>(tiers->first + tiers->count - 1)];
            stretches.emplace_back(spot->axis - first.thickness / 2, first.band.top(), first.thickness,
                                   last.band.bottom() - first.band.top());
        }
    } else {
        Piece piece;
        piece.leaf = std::get<HeldFromTray>(held).leaf;
        piece.spot.degrees = 90;
        const Kind* kind = find(plan, piece.leaf.kind);
        const double length = (kind ? inMillimetres(kind->length) : 15) * layout.scale();
        piece.spot.base = grab - QPointF(length / 2, 0);
        piece.spot.zone = QRectF(grab.x() - length / 2, grab.y() - length / 2, length, length);
        pieces.push_back(piece);
    }
    QRectF all;
    for (const Piece& piece : pieces)
        all |= piece.spot.zone;
    for (const QRectF& stretch : stretches)
        all |= stretch;
    all = all.adjusted(-10, -10, 10, 10) &
          QRectF(grab.x() - largest / 2, grab.y() - largest / 2, largest, largest);
    if (all.isEmpty())
        all = QRectF(grab, QSizeF(1, 1));
    const QRect box = all.toAlignedRect();
    picture_ = QPixmap(box.size() * devicePixelRatio);
    picture_.setDevicePixelRatio(devicePixelRatio);
    picture_.fill(Qt::transparent);
    QPainter on(&picture_);
    on.translate(-box.topLeft());
    on.setRenderHint(QPainter::Antialiasing);
    for (const bool back : {true, false}) {
        for (const Piece& piece : pieces)
            if (piece.spot.back == back)
                painter.paintLeafAt(on, plan, piece.spot, piece.leaf, layout.scale());
        if (back)
            for (const QRectF& stretch : stretches)
                on.fillRect(stretch, look::stem);
    }
    on.end();
    corner_ = box.topLeft() - grab.toPoint();
}

QRect BoardGhost::rect(QPoint pointer) const {
    return QRect(pointer + corner_, picture_.deviceIndependentSize().toSize());
}

void BoardGhost::paint(QPainter& painter, QPoint pointer) const {
    painter.save();
    painter.setOpacity(opacity);
    painter.drawPixmap(pointer + corner_, picture_);
    painter.restore();
}

} // namespace stemwright

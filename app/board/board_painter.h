#pragma once

#include "app/board/board_layout.h"
#include "app/leaf_painter.h"

#include <QColor>
#include <QPainter>
#include <QPixmap>

#include <functional>
#include <unordered_map>

namespace stemwright {

/// Draws stems with their leaves, in the layout's coordinates.
class BoardPainter {
public:
    /// Looks are kept from call to call; forget them when kinds, mixes or colours change.
    void forget();

    struct Show {
        bool codes = false;
        /// Marks every gap, for the time that something is held.
        bool gaps = false;
        std::function<bool(SlotRef)> selected;
        std::function<bool(SlotRef)> lifted; ///< in the hand, so only its shadow stays
    };
    /// What of the columns meets `visible`.
    void paint(QPainter& painter, const Plan& plan, const BoardLayout& layout, const QRectF& visible,
               const Show& show);
    /// One leaf as it lies at its spot.
    void paintLeafAt(QPainter& painter, const Plan& plan, const LeafSpot& spot, Leaf leaf, double scale,
                     double opacity = 1);

    LeafSprites& sprites() { return sprites_; }

private:
    void paintStem(QPainter& painter, const Plan& plan, const Stem& stem, const StemSpot& spot,
                   const QRectF& visible, const Show& show);
    void paintSlot(QPainter& painter, const Plan& plan, const Slot& slot, SlotRef at, const LeafSpot& spot,
                   const Show& show);
    void paintCodes(QPainter& painter, const Plan& plan, const Stem& stem, const StemSpot& spot,
                    std::size_t first, std::size_t last);
    const LeafLook& lookFor(const Plan& plan, Leaf leaf, double reach);

    double scale_ = 1;
    double zoom_ = 1;
    LeafSprites sprites_;
    std::unordered_map<std::uint64_t, LeafLook> looks_;
};

/// The dashed or solid frame around a place.
void paintFrame(QPainter& painter, const QRectF& rect, const QColor& colour, Qt::PenStyle style,
                double width = 1.6);

} // namespace stemwright

#pragma once

#include "app/board/board_place.h"

#include <QPointF>
#include <QRectF>
#include <QSizeF>

#include <vector>

namespace stemwright {

/// Where a leaf is drawn, and what part of the board is its.
struct LeafSpot {
    QPointF base;
    double degrees = 0; ///< clockwise from straight up
    double reach = 1;   ///< how much of its length is seen: less for leaves that point to or from the viewer
    bool back = false;
    QRectF zone;
};

struct TierSpot {
    double y = 0;         ///< where its leaves join the stem
    double thickness = 1; ///< of the stem below it
    QRectF band;          ///< all that is the tier's
    std::vector<LeafSpot> leaves;
};

struct StemSpot {
    StemId id;
    QRectF column;
    double axis = 0;
    double tip = 0;
    double foot = 0;
    std::vector<TierSpot> tiers;
};

/// The plan as columns, tip at the top, in pixels from the top left of the first column. At zoom 1 every slot,
/// tier number and end of a stem is at least look::target in both directions.
class BoardLayout {
public:
    void arrange(const Plan& plan, double zoom);

    const std::vector<StemSpot>& stems() const { return stems_; }
    /// Null where the stem is not there.
    const StemSpot* find(StemId id) const;
    int indexOf(StemId id) const;
    /// Pixels a millimetre of leaf.
    double scale() const { return scale_; }
    double zoom() const { return zoom_; }
    double columnWidth() const { return columnWidth_; }
    /// The part at a column's left that holds the tiers' numbers.
    double laneWidth() const { return laneWidth_; }
    QSizeF size() const { return size_; }

    Place at(QPointF point) const;
    /// What belongs to a place of the columns; empty where there is none such.
    QRectF rect(const Place& place) const;
    /// The slots whose zones meet the rectangle, in the board's order.
    std::vector<SlotRef> slotsIn(const QRectF& rect) const;
    /// The first and one past the last column that meet [left, right].
    std::pair<int, int> columnsIn(double left, double right) const;

private:
    void arrangeStem(const Plan& plan, const Stem& stem, StemSpot& spot) const;
    Place inStem(const StemSpot& spot, QPointF point) const;
    QRectF gapRect(const StemSpot& spot, int index) const;

    std::vector<StemSpot> stems_;
    double zoom_ = 1;
    double scale_ = 1;
    double columnWidth_ = 96;
    double laneWidth_ = 18;
    QSizeF size_;
};

} // namespace stemwright

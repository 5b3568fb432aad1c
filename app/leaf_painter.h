#pragma once

#include "core/plan/plan.h"

#include <QColor>
#include <QHash>
#include <QPainterPath>
#include <QPixmap>
#include <QPointF>

#include <vector>

class QPainter;

namespace stemwright {

/// All that is seen of a leaf: its measure and its colours, outer row inward.
struct LeafLook {
    double length = 0; ///< mm
    double width = 0;  ///< mm
    double bead = 0;   ///< mm between beads along a row, and between rows about that
    LeafEnd tipEnd = LeafEnd::round;
    LeafEnd baseEnd = LeafEnd::round;
    struct Band {
        QColor colour;
        double share = 1;
    };
    std::vector<Band> bands;

    friend bool operator==(const LeafLook&, const LeafLook&);
};

/// The look of a kind in a mix; with no mix an outline only (no bands).
LeafLook lookOf(const Plan& plan, Leaf leaf);

enum class LeafDetail {
    beads,   ///< every bead of every row, with its light
    rows,    ///< rows as bands of colour
    outline, ///< an empty slot: a dashed outline
};

/// The outline in millimetres, its base at the origin, pointing up (towards −y), scaled by `scale` to pixels.
QPainterPath leafOutline(const LeafLook& look, double scale);

/// Paints the leaf with its base at `base`, pointing `degrees` clockwise from straight up, `scale` pixels a
/// millimetre. Works for screens, PDF and SVG alike.
void paintLeaf(QPainter& painter, const LeafLook& look, QPointF base, double degrees, double scale,
               LeafDetail detail = LeafDetail::beads);

/// Leaves ready to be put on the screen: each distinct look, direction and scale is painted once.
class LeafSprites {
public:
    /// `opacity` below 1 is for leaves at the back; `devicePixelRatio` that of the widget.
    void draw(QPainter& painter, const LeafLook& look, QPointF base, double degrees, double scale,
              double opacity = 1);
    void clear();

private:
    QHash<QString, std::pair<QPixmap, QPointF>> ready_;
};

} // namespace stemwright

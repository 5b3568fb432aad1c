#pragma once

#include "core/figures/leaf_rows.h"
#include "core/plan/plan.h"

#include <QColor>
#include <QImage>
#include <QPainterPath>
#include <QPointF>

#include <cstdint>
#include <unordered_map>
#include <utility>
#include <vector>

class QPainter;

namespace stemwright {

/// All that is seen of a leaf: its measure and its colours, outer row inward.
struct LeafLook {
    double length = 0; ///< mm
    double width = 0;  ///< mm
    int beads = 0;
    LeafEnd tipEnd = LeafEnd::round;
    LeafEnd baseEnd = LeafEnd::round;
    struct Band {
        QColor colour;
        double share = 1;

        friend bool operator==(const Band&, const Band&) = default;
    };
    std::vector<Band> bands;
    /// Its rows where they are known, as LeafShape has them.
    std::vector<int> rows{};
    bool loops = false;
    double pointReach = LeafShape::usualPointReach;

    friend bool operator==(const LeafLook&, const LeafLook&) = default;
};

/// What its rows are laid out from.
LeafShape shapeOf(const LeafLook& look);

/// The look of a kind in a mix; with no mix an outline only (no bands).
LeafLook lookOf(const Plan& plan, Leaf leaf);
/// The same of a kind that need not stand in the plan.
LeafLook lookOf(const Plan& plan, const KindForm& form, MixId mix);

enum class LeafDetail {
    beads,   ///< every bead of every row, with its light
    fine,    ///< beads without their light, for pictures on paper in which a bead is below a millimetre
    rows,    ///< rows as bands of colour
    outline, ///< an empty slot: a dashed outline
};

/// The outline, its base at the origin, pointing up (towards −y), `scale` pixels a millimetre.
QPainterPath leafOutline(const LeafLook& look, double scale);

/// Paints the leaf with its base at `base`, pointing `degrees` clockwise from straight up, `scale` pixels a
/// millimetre. Works for screens, PDF and SVG alike. A look without bands is an outline whatever the detail.
void paintLeaf(QPainter& painter, const LeafLook& look, QPointF base, double degrees, double scale,
               LeafDetail detail = LeafDetail::beads);

/// Leaves ready to be put on the screen: each distinct look, direction, scale and device pixel ratio is painted
/// once. What was not used for longest is forgotten when all of it grows beyond `mostBytes`. One for each
/// thread that paints.
class LeafSprites {
public:
    static constexpr std::size_t mostBytes = 64u << 20u;

    /// `opacity` below 1 is for what is held or moves away, never for leaves at the back: a paler leaf reads as
    /// another mix. Directions are taken to half a degree.
    void draw(QPainter& painter, const LeafLook& look, QPointF base, double degrees, double scale,
              double opacity = 1);
    void clear();
    /// How many pictures are kept, and their bytes; for tests.
    std::size_t size() const { return ready_.size(); }
    std::size_t bytes() const { return bytes_; }

private:
    struct Key {
        LeafLook look;
        int halfDegrees = 0;
        std::int64_t scale = 0; ///< in 1/1024 device pixels a millimetre
        std::int64_t ratio = 0; ///< in 1/64
    };
    /// The same without a copy of the look, for looking up.
    struct View {
        const LeafLook& look;
        int halfDegrees;
        std::int64_t scale;
        std::int64_t ratio;
    };
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(const View& view) const noexcept;
        std::size_t operator()(const Key& key) const noexcept;
    };
    struct Same {
        using is_transparent = void;
        template <class A, class B> bool operator()(const A& a, const B& b) const {
            return a.halfDegrees == b.halfDegrees && a.scale == b.scale && a.ratio == b.ratio &&
                   a.look == b.look;
        }
    };
    struct Sprite {
        QImage picture;
        QPoint corner; ///< of the picture from the leaf's base, device pixels
        std::uint64_t used = 0;
    };

    /// The rows of a look, in its colours until the next call: laid out once for all directions and mixes.
    const LeafRows& rowsOf(const LeafLook& look);
    void forgetOldest();

    static constexpr std::size_t mostLaidOut = 32; ///< shapes

    std::unordered_map<Key, Sprite, Hash, Same> ready_;
    std::vector<std::pair<LeafShape, LeafRows>> laidOut_;
    std::size_t bytes_ = 0;
    std::uint64_t clock_ = 0;
};

} // namespace stemwright

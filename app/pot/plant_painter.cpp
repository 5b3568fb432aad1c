#include "app/pot/plant_painter.h"

#include "app/look.h"
#include "app/pot/depth_raster.h"

#include "core/figures/panes.h"
#include "core/figures/pot_shape.h"

#include <QLinearGradient>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

QColor lit(const QColor& colour, const Vec3f& normal, float gloss = 0) {
    const Tint tint = shaded({colour.redF(), colour.greenF(), colour.blueF()}, normal, {0.9F, 0.95F}, gloss);
    return QColor::fromRgbF(std::clamp(tint.x, 0.0F, 1.0F), std::clamp(tint.y, 0.0F, 1.0F),
                            std::clamp(tint.z, 0.0F, 1.0F));
}

Vec3f toEye(const View& view, const Point3& v) {
    const Point3 seen = view.direction(v);
    return seen.z < 0
               ? Vec3f{static_cast<float>(-seen.x), static_cast<float>(-seen.y), static_cast<float>(-seen.z)}
               : Vec3f{static_cast<float>(seen.x), static_cast<float>(seen.y), static_cast<float>(seen.z)};
}

class Draughtsman {
public:
    Draughtsman(QPainter& painter, const PlantScene& scene, const View& view, const Framing& framing)
        : painter_(painter),
          scene_(scene),
          view_(view),
          framing_(framing),
          rings_(potProfile(scene.pot)),
          outline_(scene.pot) {
        // Whatever rises from the clay inside the rim stands behind the pot's front wall.
        for (const StemBody& stem : scene.body.stems)
            for (const StemPiece& piece : stem.pieces)
                sunk_.push_back(piece.from.z < scene.rim &&
                                beyondClay(scene.pot, piece.from.x, piece.from.y) < 0);
    }

    void paint() {
        std::vector<Pane> panes = backToFront(panesOf(scene_.body, view_));
        backOfPot();
        for (const Pane& pane : panes)
            if (isSunk(pane))
                paintStem(pane);
            else if (pane.tag < scene_.body.leaves.size() && leafIsSunk(pane.tag))
                paintLeafPane(pane);
        frontOfPot();
        for (const Pane& pane : panes) {
            if (pane.tag >= scene_.body.leaves.size())
                paintStem(pane, scene_.rim);
            else if (!leafIsSunk(pane.tag))
                paintLeafPane(pane);
        }
    }

private:
    /// A leaf that is all inside the pot.
    bool leafIsSunk(std::size_t index) const {
        for (const Point3& p : scene_.body.corners(scene_.body.leaves[index]))
            if (p.z > scene_.rim || beyondClay(scene_.pot, p.x, p.y) > 0)
                return false;
        return true;
    }

    bool isSunk(const Pane& pane) const {
        return pane.tag >= scene_.body.leaves.size() && sunk_[pane.tag - scene_.body.leaves.size()];
    }

    QPolygonF polygon(const std::vector<SeenPoint>& corners) const {
        QPolygonF out;
        for (const SeenPoint& p : corners)
            out << framing_.onPicture(p);
        return out;
    }

    QPolygonF level(const PotRing& ring) const {
        QPolygonF out;
        for (std::size_t k = 0; k < outline_.corner.size(); ++k)
            out << framing_.onPicture(view_.point(outline_.at(ring, k)));
        return out;
    }
    static QPainterPath filled(const QPolygonF& shape) {
        QPainterPath out;
        out.addPolygon(shape);
        out.closeSubpath();
        return out;
    }

    /// The side of the pot as it is seen: the bands between its levels, each the hull of two.
    QPainterPath wall(std::size_t from, std::size_t to) const {
        QPainterPath all;
        for (std::size_t i = from; i < to; ++i) {
            const QPolygonF both = level(rings_[i]) + level(rings_[i + 1]);
            const std::vector<QPointF> around = hull({both.begin(), both.end()});
            const QPolygonF band(QList<QPointF>(around.begin(), around.end()));
            all = i == from ? filled(band) : all.united(filled(band));
        }
        return all;
    }

    QLinearGradient round(const QColor& colour, const QRectF& across) const {
        QLinearGradient shade(across.left(), 0, across.right(), 0);
        for (const double part : {0.0, 0.15, 0.3, 0.5, 0.7, 0.85, 1.0}) {
            const double x = 2 * part - 1;
            shade.setColorAt(
                part, lit(colour, {static_cast<float>(x), 0, static_cast<float>(std::sqrt(1 - x * x))}, 0.2F));
        }
        return shade;
    }

    PotRing atRim(double out) const {
        return {inMillimetres(scene_.pot.topDiameter) / 2, out, scene_.rim, false};
    }

    void backOfPot() {
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(lit(scene_.potColour.darker(150), {0, 0.3F, 0.95F}));
        const QPolygonF opening = level(atRim(0));
        painter_.drawPolygon(opening);
        const QPolygonF clay = level({scene_.groundRadius, 0, scene_.ground, true});
        painter_.setBrush(lit(scene_.clayColour.darker(118), {0, -0.6F, 0.8F}));
        painter_.drawPath(filled(clay).intersected(filled(opening)));
    }

    void frontOfPot() {
        const QPainterPath opening = filled(level(atRim(0))), rim = filled(level(atRim(potWall)));
        std::size_t lip = 1;
        while (lip + 1 < rings_.size() && !rings_[lip + 1].inside)
            ++lip;
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(round(scene_.potColour, rim.boundingRect()));
        painter_.drawPath(wall(1, lip).united(rim).subtracted(opening));
        painter_.setBrush(lit(scene_.potColour, {-0.1F, -0.8F, 0.6F}, 0.3F));
        painter_.drawPath(rim.subtracted(opening));
    }

    void paintStem(const Pane& pane, double above = -1e9) {
        // The part below the rim was painted behind the front wall already.
        if (above > -1e9 && isSunk(pane)) {
            const auto& piece = pieceOf(pane);
            if (piece.to.z <= above)
                return;
        }
        const QPolygonF shape = polygon(pane.corners);
        const StemPiece& piece = pieceOf(pane);
        const QPointF a = framing_.onPicture(view_.point(piece.from)),
                      b = framing_.onPicture(view_.point(piece.to));
        const QPointF run = b - a;
        const double long_ = std::max(1e-9, std::hypot(run.x(), run.y()));
        const QPointF side(-run.y() / long_ * piece.radius * framing_.scale,
                           run.x() / long_ * piece.radius * framing_.scale);
        QLinearGradient shade(a - side, a + side);
        for (const double part : {0.02, 0.25, 0.5, 0.75, 0.98}) {
            const double x = 2 * part - 1;
            const QPointF out = side / std::max(1e-9, std::hypot(side.x(), side.y())) * x;
            shade.setColorAt(part,
                             lit(scene_.stemColour, {static_cast<float>(out.x()), static_cast<float>(out.y()),
                                                     static_cast<float>(std::sqrt(1 - x * x))}));
        }
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(shade);
        if (above > -1e9 && isSunk(pane)) {
            // From the rim up only.
            const double part =
                std::clamp((above - piece.from.z) / std::max(1e-9, piece.to.z - piece.from.z), 0.0, 1.0);
            const QPointF at = a + run * part;
            painter_.drawPolygon(QPolygonF({at - side, b - side, b + side, at + side}));
            return;
        }
        painter_.drawPolygon(shape);
    }

    const StemPiece& pieceOf(const Pane& pane) const {
        std::size_t index = pane.tag - scene_.body.leaves.size();
        for (const StemBody& stem : scene_.body.stems) {
            if (index < stem.pieces.size())
                return stem.pieces[index];
            index -= stem.pieces.size();
        }
        return scene_.body.stems.back().pieces.back();
    }

    void paintLeafPane(const Pane& pane) {
        const LeafBody& leaf = scene_.body.leaves[pane.tag];
        LeafLook look = scene_.looks[scene_.lookOf[pane.tag]].look;
        // The beads of a leaf are round: some of each are turned to the lamp whatever its plane.
        const Vec3f plane = toEye(view_, leaf.face), round = plane * 0.45F + Vec3f{-0.2F, -0.35F, 0.45F};
        const Vec3f face = round * (1 / std::sqrt(dot(round, round)));
        for (LeafLook::Band& band : look.bands)
            band.colour = lit(band.colour, face, 0.1F);
        const Point3 right = view_.direction(leaf.right), along = view_.direction(leaf.along);
        const QPointF base = framing_.onPicture(view_.point(leaf.base));
        QTransform onPicture(right.x, right.y, -along.x, -along.y, 0, 0);
        onPicture *= QTransform::fromScale(framing_.scale, framing_.scale);
        onPicture *= QTransform::fromTranslate(base.x(), base.y());
        if (std::abs(onPicture.determinant()) < 1e-3 * framing_.scale * framing_.scale)
            return; // edge-on
        if (!pane.divided) {
            painter_.save();
            painter_.setTransform(onPicture, true);
            paintLeaf(painter_, look, {0, 0}, 0, 1, LeafDetail::rows);
            painter_.restore();
            return;
        }
        // A piece: its rows as filled shapes, each cut to the piece, since SVG writers know no clip.
        QPainterPath piece;
        piece.addPolygon(polygon(pane.corners));
        piece.closeSubpath();
        const LeafRows& rows = scene_.looks[scene_.lookOf[pane.tag]].rows;
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(look.bands.front().colour);
        painter_.drawPath(piece);
        int shown = 0;
        for (const LeafRow& row : rows.rows) {
            if (row.count == 0 || !row.closed)
                continue;
            const int band = rows.beads[row.first + row.count / 2].band;
            if (band == shown)
                continue;
            shown = band;
            QPolygonF run;
            for (const PointMm& p : row.run)
                run << onPicture.map(QPointF(p.x, p.y));
            QPainterPath inner;
            inner.addPolygon(run);
            inner.closeSubpath();
            painter_.setBrush(look.bands[static_cast<std::size_t>(band)].colour);
            painter_.drawPath(inner.intersected(piece));
        }
    }

    QPainter& painter_;
    const PlantScene& scene_;
    const View& view_;
    const Framing& framing_;
    std::vector<PotRing> rings_;
    PotOutline outline_;
    std::vector<bool> sunk_;
};

} // namespace

void paintPlant(QPainter& painter, const PlantScene& scene, const View& view, const Framing& framing) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    Draughtsman(painter, scene, view, framing).paint();
    painter.restore();
}

} // namespace stemwright

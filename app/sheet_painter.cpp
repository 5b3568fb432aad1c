#include "app/sheet_painter.h"

#include "app/leaf_painter.h"
#include "app/look.h"
#include "app/mix_pattern.h"
#include "app/pot/plant_on_paper.h"
#include "app/sheet_words.h"
#include "app/wording.h"

#include <QFontMetricsF>
#include <QImage>
#include <QPaintEngine>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

template <class... Fs> struct Each : Fs... { using Fs::operator()...; };

QColor greyOf(const QColor& colour) {
    // What a printer without colour makes of it: the light it throws back, as the eye weighs it.
    const int grey = qGray(colour.rgb());
    return QColor(grey, grey, grey);
}

/// The greys of a leaf's colours, those of neighbouring rows kept apart so that the mix can still be seen.
void greyBands(LeafLook& look) {
    constexpr int apart = 34, darkest = 45, lightest = 228;
    int before = -1;
    for (LeafLook::Band& band : look.bands) {
        int grey = std::clamp(qGray(band.colour.rgb()), darkest, lightest);
        if (before >= 0 && std::abs(grey - before) < apart) {
            const int lighter = before + apart, darker = before - apart;
            grey = (grey >= before && lighter <= lightest) || darker < darkest ? lighter : darker;
        }
        before = grey;
        band.colour = QColor(grey, grey, grey);
    }
}

QColor towardsPaper(const QColor& colour, double part) {
    const auto mix = [part](float c) { return c + (1.0f - c) * static_cast<float>(part); };
    return QColor::fromRgbF(mix(colour.redF()), mix(colour.greenF()), mix(colour.blueF()));
}

/// About the breadth of a bead in millimetres, by the room that each has on its leaf.
double beadOnPaper(const LeafLook& look) {
    return std::sqrt(look.length * look.width / std::max(look.beads, 1));
}

class PagePainter {
public:
    PagePainter(QPainter& painter, const Plan& plan, bool grey) : painter_(painter), plan_(plan), grey_(grey) {}

    void operator()(const LineMark& mark) {
        painter_.setPen(pen(mark.width, mark.ink, mark.dashed));
        painter_.drawLine(at(mark.from), at(mark.to));
    }

    void operator()(const ShapeMark& mark) {
        QPolygonF points;
        points.reserve(static_cast<qsizetype>(mark.points.size()));
        for (const PointMm& p : mark.points)
            points << at(p);
        painter_.setPen(mark.width > 0 ? pen(mark.width, mark.ink, mark.dashed) : QPen(Qt::NoPen));
        painter_.setBrush(mark.filled ? QBrush(colour(mark.fill)) : QBrush(Qt::NoBrush));
        if (mark.closed)
            painter_.drawPolygon(points);
        else
            painter_.drawPolyline(points);
    }

    void operator()(const CircleMark& mark) {
        painter_.setPen(mark.width > 0 ? pen(mark.width, mark.ink, false) : QPen(Qt::NoPen));
        painter_.setBrush(mark.filled ? QBrush(colour(mark.fill)) : QBrush(Qt::NoBrush));
        painter_.drawEllipse(at(mark.middle), mark.radius * sheetUnits, mark.radius * sheetUnits);
    }

    void operator()(const LeafMark& mark) {
        LeafLook look = lookOf(plan_, mark.leaf);
        look.length *= mark.shorten;
        const double scale = mark.scale * sheetUnits;
        if (grey_)
            greyBands(look);
        for (LeafLook::Band& band : look.bands) {
            if (mark.style == LeafStyle::tinted || grey_)
                band.colour = towardsPaper(band.colour, grey_ ? greyPale : 0.55);
        }
        if (mark.style == LeafStyle::beads) {
            if (look.bands.empty())
                return;
            const QTransform& transform = painter_.transform();
            if (raster_ && beadOnPaper(look) * scale * transform.m11() < mostSpritePixels) {
                // On a screen the beads of small pictures are shaded by the pixel: the same to the eye, at
                // once.
                const QPointF base = transform.map(at(mark.base));
                painter_.save();
                painter_.resetTransform();
                sprites_.draw(painter_, look, base, mark.degrees, scale * transform.m11());
                painter_.restore();
            } else {
                paintLeaf(painter_, look, at(mark.base), mark.degrees, scale,
                          beadOnPaper(look) * mark.scale < 1 ? LeafDetail::fine : LeafDetail::beads);
            }
            if (grey_)
                pattern(mark, look, scale);
            return;
        }
        if (mark.style == LeafStyle::tinted && !look.bands.empty()) {
            paintLeaf(painter_, look, at(mark.base), mark.degrees, scale, LeafDetail::rows);
            if (grey_)
                pattern(mark, look, scale);
        }
        const bool open = mark.style == LeafStyle::ghost || look.bands.empty();
        painter_.save();
        painter_.translate(at(mark.base));
        painter_.rotate(mark.degrees);
        painter_.strokePath(leafOutline(look, scale),
                            pen(open ? 0.2 : 0.25, open ? Ink::quiet : Ink::black, open));
        painter_.restore();
    }

    void operator()(const PlantMark& mark) {
        const double pixels = raster_ ? painter_.transform().m11() * sheetUnits : plantPixelsPerMm;
        const QRectF box(at({mark.box.x, mark.box.y}),
                         QSizeF(mark.box.width * sheetUnits, mark.box.height * sheetUnits));
        painter_.save();
        painter_.setRenderHint(QPainter::SmoothPixmapTransform);
        painter_.drawImage(box, plantOnPaper(plan_, mark, std::clamp(pixels, 1.0, plantPixelsPerMm), grey_));
        painter_.restore();
    }

    void operator()(const TextMark& mark) {
        const QString said = text(mark.text);
        const double left = mark.align == Align::left     ? 0
                            : mark.align == Align::middle ? mark.width / 2
                                                          : mark.width;
        painter_.setFont(sheetFont(mark.style));
        painter_.setPen(colour(mark.ink));
        const bool turned = mark.degrees != 0;
        QPointF pen = at({mark.at.x - left, mark.at.y});
        if (turned) {
            painter_.save();
            painter_.translate(at(mark.at));
            painter_.rotate(mark.degrees);
            pen = QPointF(-left * sheetUnits, 0);
        }
        const QStringList pieces = shapedApart(said);
        for (const QString& piece : pieces) {
            painter_.drawText(pen, piece);
            if (pieces.size() > 1)
                pen.rx() += QFontMetricsF(painter_.font()).horizontalAdvance(piece);
        }
        if (turned)
            painter_.restore();
    }

private:
    /// The mix's pattern over its greys, which alone do not tell all mixes apart.
    void pattern(const LeafMark& mark, const LeafLook& look, double scale) {
        QTransform turn;
        const QPointF base = at(mark.base);
        turn.translate(base.x(), base.y());
        turn.rotate(mark.degrees);
        const QPolygonF outline = turn.map(leafOutline(look, scale)).toFillPolygon();
        paintPattern(painter_, outline, patternOf(plan_, mark.leaf.mix), sheetUnits,
                     QPen(colour(Ink::black), patternWidth * sheetUnits, Qt::SolidLine, Qt::FlatCap));
    }

    static QPointF at(PointMm p) { return QPointF(p.x, p.y) * sheetUnits; }

    QColor colour(Ink ink) const {
        const QColor chosen = look::printed(ink);
        return grey_ ? greyOf(chosen) : chosen;
    }

    QPen pen(double width, Ink ink, bool dashed) const {
        QPen pen(colour(ink), width * sheetUnits, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
        if (dashed)
            pen.setDashPattern({6, 4});
        return pen;
    }

    static constexpr double mostSpritePixels = 8;  ///< breadth of a bead
    static constexpr double patternWidth = 0.13;   ///< mm
    static constexpr double greyPale = 0.55;       ///< so that patterns and codes read on any mix
    static constexpr double plantPixelsPerMm = 11; ///< of the plant's picture: 280 to the inch

    QPainter& painter_;
    const Plan& plan_;
    bool grey_;
    bool raster_ = painter_.paintEngine() && painter_.paintEngine()->type() == QPaintEngine::Raster;
    LeafSprites sprites_;
};

} // namespace

std::vector<Page> pagesOf(const Plan& plan, const Figures& figures, const SheetOptions& options) {
    return sheetPages(plan, figures, options, FontMeasure(), TranslatedWords(plan.units));
}

void paintPage(QPainter& painter, const Page& page, const Plan& plan, double unitsPerMm, bool grey) {
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(unitsPerMm / sheetUnits, unitsPerMm / sheetUnits);
    PagePainter paint(painter, plan, grey);
    for (const Mark& mark : page.marks)
        std::visit(paint, mark);
    painter.restore();
}

QImage pagePicture(const Page& page, const Plan& plan, double pixelsPerMm, bool grey) {
    QImage picture(QSize(qRound(page.width * pixelsPerMm), qRound(page.height * pixelsPerMm)),
                   QImage::Format_ARGB32_Premultiplied);
    picture.fill(Qt::white);
    QPainter painter(&picture);
    paintPage(painter, page, plan, pixelsPerMm, grey);
    return picture;
}

} // namespace stemwright

#include "app/leaf_painter.h"

#include "app/look.h"

#include <QPainter>
#include <QPen>

#include <algorithm>
#include <cmath>
#include <span>

namespace stemwright {

namespace {

/// A leaf that fills more than this is painted afresh each time rather than kept.
constexpr int mostSpritePixels = 1 << 21;

QPainterPath pathOf(const std::vector<PointMm>& run, bool closed, double scale) {
    QPolygonF points;
    points.reserve(static_cast<qsizetype>(run.size()));
    for (const PointMm& p : run)
        points << QPointF(p.x, p.y) * scale;
    QPainterPath path;
    path.addPolygon(points);
    if (closed)
        path.closeSubpath();
    return path;
}

QColor blend(const QColor& a, const QColor& b, double part) {
    const auto mix = [part](float x, float y) { return x + (y - x) * static_cast<float>(part); };
    return QColor::fromRgbF(mix(a.redF(), b.redF()), mix(a.greenF(), b.greenF()), mix(a.blueF(), b.blueF()));
}

/// An ellipse lying along `degrees` clockwise from up: four cubic pieces, as QPainterPath has them (textbook).
void addEllipse(QPainterPath& path, QPointF middle, double along, double across, double degrees) {
    constexpr double kappa = 0.5522847498307936;
    const double turn = degrees * M_PI / 180, c = std::cos(turn), s = std::sin(turn);
    const QPointF up(s * along / 2, -c * along / 2), right(c * across / 2, s * across / 2);
    const QPointF corners[] = {-up, right, up, -right, -up};
    path.moveTo(middle + corners[0]);
    for (int i = 0; i < 4; ++i)
        path.cubicTo(middle + corners[i] + corners[i + 1] * kappa, middle + corners[i + 1] + corners[i] * kappa,
                     middle + corners[i + 1]);
}

/// Where the light comes from, upper left on the page, turned into the frame of a leaf.
QPointF lightIn(double degrees) {
    const double back = -degrees * M_PI / 180;
    return {-0.6 * std::cos(back) + 0.8 * std::sin(back), -0.6 * std::sin(back) - 0.8 * std::cos(back)};
}

/// Row by row from the centre outward, each colour in three layers: a darker edge, the glass, and its light.
/// Whole rows at a time, since what is printed grows with every change of colour.
void paintBeads(QPainter& painter, const LeafLook& look, const LeafRows& rows, double degrees, double scale,
                bool fine) {
    const std::size_t bands = look.bands.size();
    const QPointF from = lightIn(degrees);
    for (auto row = rows.rows.rbegin(); row != rows.rows.rend(); ++row) {
        std::vector<QPainterPath> edge(bands), glass(bands), light(bands);
        for (auto* layer : {&edge, &glass, &light})
            for (QPainterPath& path : *layer)
                path.setFillRule(Qt::WindingFill);
        // A row of one colour has its edges as one stroke where it is small: a quarter of the marks.
        const auto beads = std::span(rows.beads).subspan(row->first, row->count);
        const bool whole = fine && !beads.empty() &&
                           std::all_of(beads.begin(), beads.end(),
                                       [&](const BeadMark& bead) { return bead.band == beads.front().band; });
        if (whole) {
            const auto band = static_cast<std::size_t>(rows.beads[row->first].band);
            painter.strokePath(pathOf(row->run, row->closed, scale),
                               QPen(blend(look.bands[band].colour, Qt::black, 0.34), rows.pitch * scale * 0.94,
                                    Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        }
        for (std::size_t i = row->first; i < row->first + row->count; ++i) {
            const BeadMark& bead = rows.beads[i];
            const auto band = static_cast<std::size_t>(bead.band);
            const QPointF middle = QPointF(bead.middle.x, bead.middle.y) * scale;
            const double along = bead.along * scale, across = bead.across * scale;
            const double small = std::min(along, across), rim = small * 0.09;
            if (!whole)
                addEllipse(edge[band], middle, along * 1.04, across * 0.98, bead.degrees);
            addEllipse(glass[band], middle + from * rim * 0.35, along * 1.04 - 2 * rim, across * 0.98 - 2 * rim,
                       bead.degrees);
            if (!fine)
                addEllipse(light[band], middle + from * small * 0.2, small * 0.34, small * 0.42, bead.degrees);
        }
        for (std::size_t i = 0; i < bands; ++i) {
            if (glass[i].isEmpty())
                continue;
            painter.fillPath(edge[i], blend(look.bands[i].colour, Qt::black, 0.34));
            painter.fillPath(glass[i], look.bands[i].colour);
            painter.fillPath(light[i], blend(look.bands[i].colour, Qt::white, 0.5));
        }
    }
}

/// One bead into a picture, pixel by pixel: some fifty times quicker than paths, which decides how soon a board
/// of many looks is first seen. The same edge, glass and light as paintBeads.
void shadeBead(QImage& picture, QPointF middle, double along, double across, double radians,
               const QColor& colour) {
    const double a = std::max(across * 0.49, 0.4), b = std::max(along * 0.52, 0.4), small = std::min(a, b);
    const double reach = std::max(a, b) + 1;
    const double c = std::cos(radians), s = std::sin(radians);
    // Light and edge fade where a bead is too small to show them.
    const double depth = std::clamp((small - 0.5) / 1.5, 0.15, 1.0);
    const double red = colour.redF(), green = colour.greenF(), blue = colour.blueF();
    const int left = std::max(0, static_cast<int>(middle.x() - reach));
    const int right = std::min(picture.width() - 1, static_cast<int>(middle.x() + reach));
    const int top = std::max(0, static_cast<int>(middle.y() - reach));
    const int bottom = std::min(picture.height() - 1, static_cast<int>(middle.y() + reach));
    for (int y = top; y <= bottom; ++y) {
        auto* line = reinterpret_cast<QRgb*>(picture.scanLine(y));
        for (int x = left; x <= right; ++x) {
            const double dx = x + 0.5 - middle.x(), dy = y + 0.5 - middle.y();
            const double u = (dx * c + dy * s) / a, v = (-dx * s + dy * c) / b;
            // Not hypot: its care for overflow costs more than all the rest of a pixel.
            const double r = std::sqrt(u * u + v * v);
            // How far inside the edge: the implicit function over its gradient.
            const double slope = r > 1e-6 ? std::sqrt(u * u / (a * a) + v * v / (b * b)) / r : 1 / small;
            const double cover = std::clamp(0.5 + (1 - r) / slope, 0.0, 1.0);
            if (cover <= 0)
                continue;
            const double edge = std::clamp((r - 0.7) / 0.3, 0.0, 1.0);
            const double lx = (dx + 0.26 * small) / small, ly = (dy + 0.34 * small) / small;
            const double light = std::clamp(1 - (lx * lx + ly * ly) * 4.5, 0.0, 1.0);
            const double lit = 1 - 0.36 * depth * edge * edge + 0.05 * depth * (-dx * 0.6 - dy * 0.8) / small;
            const double white = 0.55 * depth * light;
            const auto shade = [&](double channel) {
                const double value = std::clamp(channel * lit, 0.0, 1.0);
                return value + (1 - value) * white;
            };
            const QRgb under = line[x];
            const auto over = [&](double top_, int below) {
                return static_cast<int>(std::lround(top_ * cover * 255 + below * (1 - cover)));
            };
            line[x] = qRgba(over(shade(red), qRed(under)), over(shade(green), qGreen(under)),
                            over(shade(blue), qBlue(under)), over(1.0, qAlpha(under)));
        }
    }
}

/// The leaf's beads in a picture of its own, its base at `base`.
void shadeLeaf(QImage& picture, const LeafLook& look, const LeafRows& rows, QPointF base, double degrees,
               double scale) {
    QTransform turn;
    turn.translate(base.x(), base.y());
    turn.rotate(degrees);
    turn.scale(scale, scale);
    for (auto row = rows.rows.rbegin(); row != rows.rows.rend(); ++row)
        for (std::size_t i = row->first; i < row->first + row->count; ++i) {
            const BeadMark& bead = rows.beads[i];
            shadeBead(picture, turn.map(QPointF(bead.middle.x, bead.middle.y)), bead.along * scale,
                      bead.across * scale, (bead.degrees + degrees) * M_PI / 180,
                      look.bands[static_cast<std::size_t>(bead.band)].colour);
        }
}

/// Rows as bands, each a stroke along its run; a row of two colours takes the one of most of its beads.
void paintRows(QPainter& painter, const LeafLook& look, const LeafRows& rows, double scale) {
    painter.fillPath(leafOutline(look, scale), blend(look.bands.back().colour, Qt::black, 0.1));
    for (const LeafRow& row : rows.rows) {
        std::vector<std::size_t> counts(look.bands.size());
        for (std::size_t i = 0; i < row.count; ++i)
            ++counts[static_cast<std::size_t>(rows.beads[row.first + i].band)];
        const auto most = std::max_element(counts.begin(), counts.end()) - counts.begin();
        const QColor colour = look.bands[static_cast<std::size_t>(most)].colour;
        QPen pen(colour, rows.pitch * scale, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
        painter.strokePath(pathOf(row.run, row.closed, scale), pen);
        // A fine darker line tells the rows apart.
        painter.strokePath(pathOf(row.run, row.closed, scale),
                           QPen(blend(colour, Qt::black, 0.16), rows.pitch * scale * 0.22));
    }
}

void paintOutline(QPainter& painter, const LeafLook& look, double scale) {
    const double thin = std::max(1.0, 0.25 * scale);
    QPen pen(look::faint, thin);
    pen.setDashPattern({3, 2.4});
    painter.strokePath(leafOutline(look, scale), pen);
}

} // namespace

LeafShape shapeOf(const LeafLook& look) {
    LeafShape shape{look.length, look.width, look.tipEnd, look.baseEnd, look.beads, {}};
    for (const LeafLook::Band& band : look.bands)
        shape.shares.push_back(band.share);
    shape.rows = look.rows;
    shape.loops = look.loops;
    shape.pointReach = look.pointReach;
    return shape;
}

LeafLook lookOf(const Plan& plan, Leaf leaf) {
    const Kind* kind = find(plan, leaf.kind);
    return lookOf(plan, kind ? static_cast<const KindForm&>(*kind) : KindForm{}, leaf.mix);
}

LeafLook lookOf(const Plan& plan, const KindForm& form, MixId inMix) {
    LeafShape shape = shapeOf(form);
    LeafLook look{shape.length, shape.width,           shape.beads, shape.tipEnd,    shape.baseEnd,
                  {},           std::move(shape.rows), shape.loops, shape.pointReach};
    if (const Mix* mix = find(plan, inMix))
        for (const BeadShare& share : mix->colours)
            if (const Colour* colour = find(plan, share.colour))
                look.bands.push_back(
                    {QColor(colour->srgb.red, colour->srgb.green, colour->srgb.blue), share.share});
    return look;
}

QPainterPath leafOutline(const LeafLook& look, double scale) {
    return pathOf(leafOutline(shapeOf(look)), true, scale);
}

void paintLeaf(QPainter& painter, const LeafLook& look, QPointF base, double degrees, double scale,
               LeafDetail detail) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(base);
    painter.rotate(degrees);
    if (look.bands.empty() || detail == LeafDetail::outline) {
        paintOutline(painter, look, scale);
    } else {
        const LeafRows rows = leafRows(shapeOf(look));
        if (detail == LeafDetail::beads || detail == LeafDetail::fine)
            paintBeads(painter, look, rows, degrees, scale, detail == LeafDetail::fine);
        else
            paintRows(painter, look, rows, scale);
    }
    painter.restore();
}

std::size_t LeafSprites::Hash::operator()(const View& view) const noexcept {
    std::uint64_t h = 0xcbf29ce484222325u;
    const auto add = [&h](std::uint64_t v) { h = (h ^ v) * 0x9e3779b97f4a7c15u, h ^= h >> 29u; };
    add(static_cast<std::uint64_t>(view.halfDegrees));
    add(static_cast<std::uint64_t>(view.scale));
    add(static_cast<std::uint64_t>(view.ratio));
    add(std::hash<double>()(view.look.length));
    add(std::hash<double>()(view.look.width));
    add(static_cast<std::uint64_t>(view.look.beads));
    for (const int row : view.look.rows)
        add(static_cast<std::uint64_t>(row));
    for (const LeafLook::Band& band : view.look.bands) {
        add(band.colour.rgba());
        add(std::hash<double>()(band.share));
    }
    return static_cast<std::size_t>(h);
}

std::size_t LeafSprites::Hash::operator()(const Key& key) const noexcept {
    return operator()(View{key.look, key.halfDegrees, key.scale, key.ratio});
}

void LeafSprites::draw(QPainter& painter, const LeafLook& look, QPointF base, double degrees, double scale,
                       double opacity) {
    const double ratio = painter.device() ? painter.device()->devicePixelRatio() : 1.0;
    int half = static_cast<int>(std::lround(degrees * 2)) % 720;
    if (half < 0)
        half += 720;
    const View view{look, half, std::llround(scale * ratio * 1024), std::llround(ratio * 64)};
    auto found = ready_.find(view);
    if (found == ready_.end()) {
        const double pixels = scale * ratio;
        QTransform turn;
        turn.rotate(half / 2.0);
        // Around it room for beads that stand out from the outline, for antialiasing and the outline's pen.
        const double beadRoom = std::sqrt(look.length * look.width / std::max(look.beads, 1)) * pixels * 0.25;
        const int room = 2 + (look.bands.empty() ? 0 : static_cast<int>(std::ceil(beadRoom)));
        const QRect box = turn.map(leafOutline(look, pixels))
                              .boundingRect()
                              .toAlignedRect()
                              .adjusted(-room, -room, room, room);
        if (qint64{box.width()} * box.height() > mostSpritePixels) {
            painter.save();
            painter.setOpacity(painter.opacity() * opacity);
            paintLeaf(painter, look, base, half / 2.0, scale);
            painter.restore();
            return;
        }
        Sprite sprite;
        sprite.corner = box.topLeft();
        QImage picture(box.size(), QImage::Format_ARGB32_Premultiplied);
        picture.fill(Qt::transparent);
        if (look.bands.empty()) {
            QPainter inside(&picture);
            paintLeaf(inside, look, -QPointF(box.topLeft()), half / 2.0, pixels);
        } else {
            shadeLeaf(picture, look, rowsOf(look), -QPointF(box.topLeft()), half / 2.0, pixels);
        }
        sprite.picture = std::move(picture);
        sprite.picture.setDevicePixelRatio(ratio);
        bytes_ += static_cast<std::size_t>(box.width()) * static_cast<std::size_t>(box.height()) * 4;
        found = ready_.emplace(Key{look, half, view.scale, view.ratio}, std::move(sprite)).first;
        found->second.used = ++clock_;
        if (bytes_ > mostBytes)
            forgetOldest();
    }
    Sprite& sprite = found->second;
    sprite.used = ++clock_;
    const double before = painter.opacity();
    if (opacity < 1)
        painter.setOpacity(before * opacity);
    const QTransform& transform = painter.transform();
    QPointF corner = base + QPointF(sprite.corner) / ratio;
    if (transform.type() <= QTransform::TxTranslate) {
        // On whole device pixels: a quick copy, and as sharp as it was painted.
        const QPointF offset(transform.dx(), transform.dy());
        const QPointF device = (corner + offset) * ratio;
        corner = QPointF(std::round(device.x()), std::round(device.y())) / ratio - offset;
    }
    painter.drawImage(corner, sprite.picture);
    if (opacity < 1)
        painter.setOpacity(before);
}

const LeafRows& LeafSprites::rowsOf(const LeafLook& look) {
    LeafShape shape = shapeOf(look);
    const std::vector<double> shares = std::exchange(shape.shares, {});
    auto found =
        std::find_if(laidOut_.begin(), laidOut_.end(), [&](const auto& entry) { return entry.first == shape; });
    if (found == laidOut_.end()) {
        if (laidOut_.size() >= mostLaidOut)
            laidOut_.erase(laidOut_.begin());
        laidOut_.emplace_back(shape, leafRows(shape));
        found = std::prev(laidOut_.end());
    }
    colourRows(found->second, shares);
    return found->second;
}

void LeafSprites::clear() {
    laidOut_.clear();
    ready_.clear();
    bytes_ = 0;
}

/// Forgets half of the bytes, so that it need not be done again at the next leaf; the newest stays.
void LeafSprites::forgetOldest() {
    std::vector<std::uint64_t> used;
    used.reserve(ready_.size());
    for (const auto& [key, sprite] : ready_)
        used.push_back(sprite.used);
    const auto middle = used.begin() + static_cast<std::ptrdiff_t>(used.size() / 2);
    std::nth_element(used.begin(), middle, used.end());
    const std::uint64_t keep = std::min(*middle, clock_);
    for (auto it = ready_.begin(); it != ready_.end();) {
        if (it->second.used >= keep) {
            ++it;
            continue;
        }
        const QSize size = it->second.picture.size();
        bytes_ -= static_cast<std::size_t>(size.width()) * static_cast<std::size_t>(size.height()) * 4;
        it = ready_.erase(it);
    }
}

} // namespace stemwright

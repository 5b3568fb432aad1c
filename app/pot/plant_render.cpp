#include "app/pot/plant_render.h"

#include "app/look.h"
#include "app/pot/plant_sculptor.h"

#include "core/figures/pot_shape.h"

#include <QPainter>
#include <QRadialGradient>
#include <QtConcurrent>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr int bandRows = 24;

} // namespace

QImage renderPlant(const PlantScene& scene, const PlantPicture& picture) {
    if (picture.size.isEmpty())
        return {};
    LeafTextures own;
    const Solids solids = Sculptor(scene, picture).solids(picture.textures ? *picture.textures : own);
    if (picture.stop.stop_requested())
        return {};
    QImage image(picture.size, QImage::Format_ARGB32_Premultiplied);
    image.bits(); // detached once, before several threads write to it
    std::vector<int> bands;
    for (int top = 0; top < picture.size.height(); top += bandRows)
        bands.push_back(top);
    QtConcurrent::blockingMap(bands, [&](int top) {
        if (!picture.stop.stop_requested())
            fillRows(image, top, std::min(top + bandRows, picture.size.height()), picture.fineness, solids);
    });
    return picture.stop.stop_requested() ? QImage() : image;
}

QImage plantGround(const PlantScene& scene, const PlantPicture& picture, Ground ground) {
    QImage image(picture.size, QImage::Format_ARGB32_Premultiplied);
    const bool light = ground == Ground::light;
    image.fill(light ? look::paper : look::night);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    // A pool of light behind the plant.
    QRadialGradient pool(QPointF(picture.size.width() * 0.46, picture.size.height() * 0.4),
                         std::max(picture.size.width(), picture.size.height()) * 0.72);
    pool.setColorAt(0, light ? look::card : look::night.lighter(150));
    pool.setColorAt(0.55, light ? look::paper : look::night.lighter(108));
    pool.setColorAt(1, light ? look::bar : look::night.darker(140));
    painter.fillRect(image.rect(), pool);
    // The shadow at the foot: what stands there, flattened by the tilt, away from the lamp.
    const double sine = std::sin(inRadians(picture.view.tilt()));
    const PotRing footRing = potProfile(scene.pot)[2];
    const double part = std::sqrt(breadthPart(scene.pot)); // the shadow is round, of the pot's own area
    const double foot = (footRing.radius + footRing.out) * part,
                 wide = std::max(foot, inMillimetres(scene.pot.topDiameter) / 2 * part);
    const QPointF at = picture.framing.onPicture(picture.view.point({0, 0, scene.floor}));
    const auto shadow = [&](QPointF middle, double rx, double ry, int strength) {
        QRadialGradient dark(QPointF(0, 0), 1);
        dark.setColorAt(0, QColor(30, 24, 16, strength));
        dark.setColorAt(0.55, QColor(30, 24, 16, strength / 2));
        dark.setColorAt(1, QColor(30, 24, 16, 0));
        painter.save();
        painter.translate(middle);
        painter.scale(rx, std::max(ry, 1.0));
        painter.setPen(Qt::NoPen);
        painter.setBrush(dark);
        painter.drawEllipse(QPointF(0, 0), 1, 1);
        painter.restore();
    };
    const double px = picture.framing.scale;
    shadow(at + QPointF(wide * 0.35 * px, wide * 0.2 * sine * px), wide * 1.75 * px,
           wide * px * std::max(0.07, 1.45 * sine), light ? 60 : 130);
    shadow(at, foot * 1.15 * px, foot * px * std::max(0.04, 1.12 * sine), light ? 120 : 190);
    return image;
}

} // namespace stemwright

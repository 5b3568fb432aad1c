#include "app/leaves/leaf_pictures.h"

#include "app/look.h"

#include <QGuiApplication>
#include <QPainter>

#include <algorithm>

namespace stemwright {

namespace {

QPixmap canvas(QSize size) {
    const qreal ratio = qGuiApp->devicePixelRatio();
    QPixmap pixmap(size * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    return pixmap;
}

} // namespace

QColor toColour(Srgb colour) {
    return QColor(colour.red, colour.green, colour.blue);
}

QPixmap swatch(const QColor& colour) {
    QPixmap pixmap = canvas({18, 18});
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look::quiet, 1));
    painter.setBrush(colour);
    painter.drawEllipse(QRectF(1, 1, 16, 16));
    return pixmap;
}

LeafLook lookOfMix(const Plan& plan, MixId mix) {
    // The measures of a kind that nobody has changed yet.
    const KindForm form;
    LeafLook look{
        inMillimetres(form.length), inMillimetres(form.width), form.beads, form.tipEnd, form.baseEnd, {}};
    if (const Mix* found = find(plan, mix))
        for (const BeadShare& share : found->colours)
            if (const Colour* colour = find(plan, share.colour))
                look.bands.push_back({toColour(colour->srgb), share.share});
    return look;
}

QString keyOf(const LeafLook& look) {
    QString key = QStringLiteral("%1 %2 %3 %4 %5")
                      .arg(look.length)
                      .arg(look.width)
                      .arg(look.beads)
                      .arg(static_cast<int>(look.tipEnd))
                      .arg(static_cast<int>(look.baseEnd));
    for (const LeafLook::Band& band : look.bands)
        key += QStringLiteral(" %1*%2").arg(band.colour.name()).arg(band.share);
    return key;
}

QPixmap LeafPictures::picture(const LeafLook& look, QSize size) {
    const QString key = keyOf(look) + QStringLiteral("@%1x%2").arg(size.width()).arg(size.height());
    if (const auto it = ready_.constFind(key); it != ready_.constEnd())
        return *it;
    // As many as a table can show; what is beyond has long been scrolled away.
    if (ready_.size() > 2000)
        ready_.clear();
    QPixmap pixmap = canvas(size);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    const double scale = std::min((size.width() - 2) / std::max(look.length, 0.1),
                                  (size.height() - 2) / std::max(look.width, 0.1));
    const QPointF base((size.width() - look.length * scale) / 2, size.height() / 2.0);
    paintLeaf(painter, look, base, 90, scale, LeafDetail::beads);
    painter.end();
    return *ready_.insert(key, pixmap);
}

} // namespace stemwright

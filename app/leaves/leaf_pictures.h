#pragma once

#include "app/leaf_painter.h"

#include <QColor>
#include <QHash>
#include <QPixmap>
#include <QSize>

namespace stemwright {

QColor toColour(Srgb colour);

/// A disc of the colour, edged so that a pale one is seen on a pale ground.
QPixmap swatch(const QColor& colour);

/// The look of a mix where there is no kind to give it a shape.
LeafLook lookOfMix(const Plan& plan, MixId mix);

/// Leaves lying on their side, as large as fits, for the lines of tables; each is painted once.
class LeafPictures {
public:
    QPixmap picture(const LeafLook& look, QSize size);

private:
    QHash<QString, QPixmap> ready_;
};

/// A text that is the same for looks that are the same.
QString keyOf(const LeafLook& look);

} // namespace stemwright

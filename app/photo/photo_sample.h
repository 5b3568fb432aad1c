#pragma once

#include "core/quantity/colour.h"

#include <QImage>
#include <QPoint>
#include <QString>

#include <optional>

namespace stemwright {

/// The mean colour of a disc of an image in linear light (core/quantity/colour.h), each pixel by how opaque it
/// is. `across` is the disc's diameter in pixels, at least 1; what reaches beyond the image counts nothing.
/// Nothing where the disc holds no pixel, or only ones that are seen through.
std::optional<Srgb> discColour(const QImage& image, QPoint middle, int across);

/// A photograph that was read, or the sentence that says why it was not.
struct Photo {
    QImage image; ///< sRGB, upright, neither side longer than `longestSide`
    QString why;

    static constexpr int longestSide = 3000; ///< px: more than a screen shows, and a bead still is many pixels
};

/// Reads and shrinks an image file; takes a while for a large one, and may run in any thread.
Photo readPhoto(const QString& path);
/// The same of an image that is there already, such as one that was pasted.
Photo fitPhoto(QImage image);

} // namespace stemwright

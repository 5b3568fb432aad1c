#include "app/photo/photo_sample.h"

#include <QColorSpace>
#include <QCoreApplication>
#include <QFileInfo>
#include <QImageReader>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int mostMegabytes = 1024; ///< that one image may take while it is read

QString tr(const char* source) {
    return QCoreApplication::translate("Photo", source);
}

QSize fitted(QSize size) {
    return std::max(size.width(), size.height()) > Photo::longestSide
               ? size.scaled(Photo::longestSide, Photo::longestSide, Qt::KeepAspectRatio)
               : size;
}

} // namespace

std::optional<Srgb> discColour(const QImage& image, QPoint middle, int across) {
    const double radius = std::max(across, 1) / 2.0;
    const int reach = static_cast<int>(radius);
    LinearRgb sum;
    double weight = 0;
    for (int y = std::max(0, middle.y() - reach); y <= std::min(image.height() - 1, middle.y() + reach); ++y)
        for (int x = std::max(0, middle.x() - reach); x <= std::min(image.width() - 1, middle.x() + reach);
             ++x) {
            const double dx = x - middle.x(), dy = y - middle.y();
            if (dx * dx + dy * dy > radius * radius)
                continue;
            const QRgb pixel = image.pixel(x, y);
            const double opaque = qAlpha(pixel) / 255.0;
            const LinearRgb light =
                toLinear({static_cast<std::uint8_t>(qRed(pixel)), static_cast<std::uint8_t>(qGreen(pixel)),
                          static_cast<std::uint8_t>(qBlue(pixel))});
            sum.red += opaque * light.red;
            sum.green += opaque * light.green;
            sum.blue += opaque * light.blue;
            weight += opaque;
        }
    if (!(weight > 0))
        return std::nullopt;
    return toSrgb(LinearRgb{sum.red / weight, sum.green / weight, sum.blue / weight});
}

Photo fitPhoto(QImage image) {
    if (image.isNull())
        return {{}, tr("There is no picture here.")};
    if (const QSize size = fitted(image.size()); size != image.size())
        image = image.scaled(size, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    // Telephones write other primaries than screens have.
    if (image.colorSpace().isValid() && image.colorSpace() != QColorSpace(QColorSpace::SRgb))
        image.convertToColorSpace(QColorSpace::SRgb);
    image.convertTo(QImage::Format_ARGB32);
    return {std::move(image), {}};
}

Photo readPhoto(const QString& path) {
    const QString name = QFileInfo(path).fileName();
    if (!QFileInfo(path).isFile())
        return {{}, tr("“%1” is not there or is no file.").arg(name)};
    QImageReader::setAllocationLimit(mostMegabytes);
    QImageReader reader(path);
    reader.setAutoTransform(true);
    reader.setDecideFormatFromContent(true);
    // Some forms are read at the smaller size at once, which saves most of the time and memory.
    if (const QSize size = reader.size(); size.isValid())
        if (const QSize wanted = fitted(size); wanted != size)
            reader.setScaledSize(wanted);
    QImage image;
    if (reader.read(&image))
        return fitPhoto(std::move(image));
    switch (reader.error()) {
    case QImageReader::FileNotFoundError:
    case QImageReader::DeviceError:
        return {{}, tr("“%1” cannot be read.").arg(name)};
    case QImageReader::UnsupportedFormatError:
        return {{}, tr("“%1” is no picture of a form that is known here; save it as PNG or JPEG.").arg(name)};
    default:
        return {{}, tr("“%1” is damaged or too large to be read as a picture.").arg(name)};
    }
}

} // namespace stemwright

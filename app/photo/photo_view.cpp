#include "app/photo/photo_view.h"

#include "app/look.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double lensRadius = 62; ///< px of the magnifier on the screen
constexpr double lensOff = 26;    ///< px between the point and the magnifier
constexpr double mostNearer = 40;
constexpr int discsInLens = 3; ///< so many discs fit across the magnifier

} // namespace

PhotoView::PhotoView(QWidget* parent) : QWidget(parent) {
    setObjectName(QStringLiteral("photoView"));
    setAccessibleName(tr("The photograph"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::CrossCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void PhotoView::setImage(const QImage& image) {
    image_ = image;
    nearer_ = 1;
    point_ = QPoint(image.width() / 2, image.height() / 2);
    clampOffset();
    tell();
}

void PhotoView::setPoint(QPoint point) {
    if (image_.isNull())
        return;
    point_ = {std::clamp(point.x(), 0, image_.width() - 1), std::clamp(point.y(), 0, image_.height() - 1)};
    tell();
}

void PhotoView::setAcross(int across) {
    across = std::clamp(across, leastAcross, mostAcross);
    if (across == across_)
        return;
    across_ = across;
    Q_EMIT acrossChanged(across_);
    tell();
}

std::optional<Srgb> PhotoView::colour() const {
    return image_.isNull() ? std::nullopt : discColour(image_, point_, across_);
}

void PhotoView::tell() {
    const auto now = colour();
    setAccessibleDescription(now ? tr("%1 at %2 across, %3 down")
                                       .arg(QString::fromStdString(toText(*now)))
                                       .arg(point_.x())
                                       .arg(point_.y())
                                 : QString());
    update();
    Q_EMIT pointed();
}

double PhotoView::fitScale() const {
    if (image_.isNull())
        return 1;
    return std::min(
        {static_cast<double>(width()) / image_.width(), static_cast<double>(height()) / image_.height(), 8.0});
}

QPointF PhotoView::seenAt(QPoint pixel) const {
    return offset_ + (QPointF(pixel) + QPointF(0.5, 0.5)) * scale();
}

QPoint PhotoView::pixelAt(QPointF seen) const {
    const QPointF at = (seen - offset_) / scale();
    return {static_cast<int>(std::floor(at.x())), static_cast<int>(std::floor(at.y()))};
}

void PhotoView::clampOffset() {
    const QSizeF whole = QSizeF(image_.size()) * scale();
    const auto within = [](double offset, double room, double size) {
        // Smaller than its room it stands in the middle; larger, no ground shows beside it.
        return size <= room ? (room - size) / 2 : std::clamp(offset, room - size, 0.0);
    };
    offset_ = {within(offset_.x(), width(), whole.width()), within(offset_.y(), height(), whole.height())};
}

void PhotoView::zoom(double factor, QPointF around) {
    const QPointF at = (around - offset_) / scale();
    nearer_ = std::clamp(nearer_ * factor, 1.0, mostNearer);
    offset_ = around - at * scale();
    clampOffset();
    update();
}

void PhotoView::keepInSight() {
    const QRectF room = QRectF(rect()).adjusted(24, 24, -24, -24);
    const QPointF at = seenAt(point_);
    offset_ += QPointF(std::clamp(at.x(), room.left(), room.right()) - at.x(),
                       std::clamp(at.y(), room.top(), room.bottom()) - at.y());
    clampOffset();
}

void PhotoView::resizeEvent(QResizeEvent*) {
    clampOffset();
}

void PhotoView::mouseMoveEvent(QMouseEvent* event) {
    setPoint(pixelAt(event->position()));
}

void PhotoView::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || image_.isNull())
        return;
    setFocus(Qt::MouseFocusReason);
    setPoint(pixelAt(event->position()));
    Q_EMIT taken();
}

void PhotoView::wheelEvent(QWheelEvent* event) {
    if (event->angleDelta().y() != 0)
        zoom(std::pow(1.2, event->angleDelta().y() / 120.0), event->position());
    event->accept();
}

void PhotoView::keyPressEvent(QKeyEvent* event) {
    const int step = event->modifiers().testFlag(Qt::ShiftModifier) ? 10 : 1;
    const auto move = [&](int x, int y) {
        setPoint(point_ + QPoint(x, y) * step);
        keepInSight();
    };
    switch (event->key()) {
    case Qt::Key_Left:
        return move(-1, 0);
    case Qt::Key_Right:
        return move(1, 0);
    case Qt::Key_Up:
        return move(0, -1);
    case Qt::Key_Down:
        return move(0, 1);
    case Qt::Key_PageUp:
        return setAcross(across_ + 2);
    case Qt::Key_PageDown:
        return setAcross(across_ - 2);
    case Qt::Key_Plus:
        return zoom(1.5, seenAt(point_));
    case Qt::Key_Minus:
        return zoom(1 / 1.5, seenAt(point_));
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (!image_.isNull()) {
            Q_EMIT taken();
            return;
        }
        break;
    default:
        break;
    }
    QWidget::keyPressEvent(event);
}

void PhotoView::paintMagnifier(QPainter& painter) const {
    const QPointF at = seenAt(point_);
    // Beside the point, on the side where there is room.
    const double away = lensOff + lensRadius;
    const QPointF middle(
        at.x() + away + lensRadius < width() ? at.x() + away : at.x() - away,
        std::clamp(at.y() - away / 2, lensRadius + 2, std::max(lensRadius + 2.0, height() - lensRadius - 2)));
    const double times = std::clamp(2 * lensRadius / (discsInLens * std::max(across_, 3)), scale(), 40.0);
    QPainterPath lens;
    lens.addEllipse(middle, lensRadius, lensRadius);
    painter.save();
    painter.setClipPath(lens);
    painter.fillPath(lens, look::paper);
    const double half = lensRadius / times;
    const QPointF point = QPointF(point_) + QPointF(0.5, 0.5);
    const QRectF from(point.x() - half, point.y() - half, 2 * half, 2 * half);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, false);
    painter.drawImage(QRectF(middle.x() - lensRadius, middle.y() - lensRadius, 2 * lensRadius, 2 * lensRadius),
                      image_, from);
    painter.restore();
    painter.setBrush(Qt::NoBrush);
    for (const auto& [colour, width] : {std::pair{look::card, 4.0}, std::pair{look::night, 1.5}}) {
        painter.setPen(QPen(colour, width));
        painter.drawEllipse(middle, lensRadius, lensRadius);
        painter.drawEllipse(middle, across_ / 2.0 * times, across_ / 2.0 * times);
    }
}

void PhotoView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look::side);
    if (image_.isNull()) {
        painter.setPen(look::quiet);
        painter.setFont(look::font(look::Type::text));
        painter.drawText(
            rect().adjusted(16, 16, -16, -16), Qt::AlignCenter | Qt::TextWordWrap,
            tr("Open a photograph of your beads, or paste one or drop one here. Daylight and a grey "
               "or white ground give the truest colours."));
    } else {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setRenderHint(QPainter::SmoothPixmapTransform, scale() < 2);
        painter.drawImage(QRectF(offset_, QSizeF(image_.size()) * scale()), image_);
        const QPointF at = seenAt(point_);
        const double radius = std::max(across_ / 2.0 * scale(), 2.5);
        painter.setBrush(Qt::NoBrush);
        for (const auto& [colour, width] : {std::pair{look::card, 3.5}, std::pair{look::night, 1.5}}) {
            painter.setPen(QPen(colour, width));
            painter.drawEllipse(at, radius, radius);
        }
        paintMagnifier(painter);
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(look::focus, 2));
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

} // namespace stemwright

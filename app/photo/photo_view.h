#pragma once

#include "app/photo/photo_sample.h"

#include <QWidget>

namespace stemwright {

/// A photograph to point into: the disc at the point is averaged, and a magnifier shows what is under it. The
/// mouse points, arrow keys move by a pixel of the image (with Shift by ten), Page Up and Page Down make the
/// disc larger and smaller, the wheel and + and − go nearer and farther, Enter or a click takes.
class PhotoView : public QWidget {
    Q_OBJECT
public:
    static constexpr int leastAcross = 1, mostAcross = 101; ///< px of the image

    explicit PhotoView(QWidget* parent = nullptr);

    void setImage(const QImage& image);
    const QImage& image() const { return image_; }
    QPoint point() const { return point_; }
    void setPoint(QPoint point);
    int across() const { return across_; }
    void setAcross(int across);
    /// The mean of the disc; nothing without an image or over nothing.
    std::optional<Srgb> colour() const;
    /// Where a pixel of the image is seen.
    QPointF seenAt(QPoint pixel) const;

    QSize sizeHint() const override { return {640, 460}; }
    QSize minimumSizeHint() const override { return {320, 240}; }

Q_SIGNALS:
    void pointed();
    void acrossChanged(int across);
    void taken();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    double fitScale() const;
    double scale() const { return fitScale() * nearer_; }
    QPoint pixelAt(QPointF seen) const;
    void zoom(double factor, QPointF around);
    void clampOffset();
    void keepInSight();
    void paintMagnifier(QPainter& painter) const;
    void tell();

    QImage image_;
    QPoint point_;
    int across_ = 9;
    double nearer_ = 1;
    QPointF offset_; ///< of the image's corner from the widget's
};

} // namespace stemwright

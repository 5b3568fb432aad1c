#pragma once

#include <QWidget>

namespace stemwright {

class Session;

/// The stems' heights side by side, each topped by the colour of its tip. A click goes to the stem.
class Skyline : public QWidget {
    Q_OBJECT
public:
    explicit Skyline(Session& session, QWidget* parent = nullptr);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void stemChosen(unsigned stem);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    bool event(QEvent* event) override;

private:
    /// The stem whose column is at x, or −1.
    int stemAt(double x) const;
    QRectF plot() const;

    Session& session_;
};

} // namespace stemwright

#pragma once

#include "app/board/board_layout.h"
#include "app/board/board_painter.h"
#include "core/figures/figures.h"

#include <QWidget>

#include <set>

namespace stemwright {

/// A board to be looked at only: the stems with their names above, height and drift below, as large as its
/// height lets it be.
class BoardPicture : public QWidget {
    Q_OBJECT
public:
    explicit BoardPicture(QWidget* parent = nullptr);

    /// Leaves that the other board has otherwise are framed, unless most of them are unlike.
    void show(const Plan& plan, const Figures& figures, const Plan& other);
    /// The size of everything on it, so that two boards are drawn alike: 1 is the board's own.
    double fittingZoom(QSize room) const;
    void setZoom(double zoom);
    int marked() const { return static_cast<int>(unlike_.size()); }

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintMarks(QPainter& painter, const QRectF& visible) const;
    /// A stem's name, height and drift, as far as its column has room.
    void paintWords(QPainter& painter, std::size_t stem) const;

    Plan plan_;
    Figures figures_;
    std::set<SlotRef> unlike_;
    int slots_ = 0;
    BoardLayout layout_;
    BoardPainter painter_;
    double zoom_ = 1;
};

} // namespace stemwright

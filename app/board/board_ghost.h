#pragma once

#include "app/board/board_painter.h"

#include <QPixmap>

namespace stemwright {

/// The picture of what is held, painted once when it is picked up.
class BoardGhost {
public:
    /// `grab` is where it was taken hold of, in the layout's coordinates; of a tray leaf nothing.
    void make(const Plan& plan, const Held& held, const BoardLayout& layout, BoardPainter& painter,
              QPointF grab, double devicePixelRatio);
    void clear() { picture_ = {}; }
    bool empty() const { return picture_.isNull(); }
    QRect rect(QPoint pointer) const;
    void paint(QPainter& painter, QPoint pointer) const;

private:
    QPixmap picture_;
    QPoint corner_; ///< from the pointer
};

} // namespace stemwright

#pragma once

#include "app/board/board_place.h"
#include "app/leaf_painter.h"
#include "core/figures/figures.h"

#include <QRect>

#include <vector>

class QPainter;

namespace stemwright {

/// The tray as rows under the names of the kinds; positions count from its top, whatever is scrolled.
class BoardTray {
public:
    static constexpr int width = 176;
    static constexpr int headHeight = 38;

    struct Row {
        bool heading = false;
        KindId kind;
        std::size_t line = 0; ///< of Figures::lines
        Leaf leaf;
        int top = 0;
        int height = 0;
    };

    void arrange(const Plan& plan, const Figures& figures);
    int height() const { return height_; }
    const std::vector<Row>& rows() const { return rows_; }
    Place at(QPoint point) const;
    QRect rect(Leaf line) const;
    /// The next line down (or up); the same where there is none.
    Leaf next(Leaf line, int by) const;
    /// The line nearest to a height.
    Leaf nearest(int y) const;

    /// Paints the rows into `area`, scrolled by `offset`.
    void paint(QPainter& painter, const QRect& area, int offset, const Plan& plan, const Figures& figures,
               LeafSprites& sprites, bool codes) const;

private:
    std::vector<Row> rows_;
    int height_ = 0;
    double scale_ = 1;
};

} // namespace stemwright

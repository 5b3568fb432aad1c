#pragma once

#include "app/leaf_painter.h"
#include "core/plan/plan.h"

#include <QWidget>

namespace stemwright {

/// A row to be marked: a ring of LeafRows from the outer one inward, all of it or its left (−1) or right (1)
/// side. None for a ring below 0.
struct MarkedRow {
    int ring = -1;
    int side = 0;
};

/// Paints a leaf as large as there is room, its tip up, with a rule under it, since its scale is its own.
void paintRuledLeaf(QPainter& painter, const QRectF& room, const LeafLook& look, const Units& units,
                    LeafSprites& sprites, MarkedRow marked = {});

/// Such a leaf as a widget.
class LeafDrawing : public QWidget {
    Q_OBJECT
public:
    explicit LeafDrawing(const Units& units, QWidget* parent = nullptr);

    void setLook(const LeafLook& look);
    const LeafLook& look() const { return look_; }
    void markRow(MarkedRow row);

    QSize sizeHint() const override { return {260, 320}; }
    QSize minimumSizeHint() const override { return {180, 200}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Units units_;
    LeafLook look_;
    LeafSprites sprites_;
    MarkedRow marked_;
};

} // namespace stemwright

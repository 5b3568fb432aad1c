#pragma once

#include "app/leaf_painter.h"
#include "core/plan/plan.h"

#include <QWidget>

namespace stemwright {

/// Paints a leaf as large as there is room, its tip up, with a rule under it, since its scale is its own. One
/// of its rows, counted from the outer one inward, may be marked; −1 for none.
void paintRuledLeaf(QPainter& painter, const QRectF& room, const LeafLook& look, const Units& units,
                    LeafSprites& sprites, int markedRow = -1);

/// Such a leaf as a widget.
class LeafDrawing : public QWidget {
    Q_OBJECT
public:
    explicit LeafDrawing(const Units& units, QWidget* parent = nullptr);

    void setLook(const LeafLook& look);
    const LeafLook& look() const { return look_; }
    void markRow(int row);

    QSize sizeHint() const override { return {260, 320}; }
    QSize minimumSizeHint() const override { return {180, 200}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Units units_;
    LeafLook look_;
    LeafSprites sprites_;
    int marked_ = -1;
};

} // namespace stemwright

#pragma once

#include "app/leaf_painter.h"
#include "app/leaves/leaf_drawing.h"
#include "core/plan/plan.h"

#include <QWidget>

namespace stemwright {

class Session;

/// One leaf as large as there is room for, with its measures.
class LeafPreview : public QWidget {
    Q_OBJECT
public:
    explicit LeafPreview(Session& session, QWidget* parent = nullptr);

    void setKind(KindId kind);
    void setMix(MixId mix);
    void markRow(MarkedRow row);
    KindId kind() const { return leaf_.kind; }
    MixId mix() const { return leaf_.mix; }

    QSize sizeHint() const override { return {300, 360}; }
    QSize minimumSizeHint() const override { return {200, 200}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void refresh();
    LeafLook shownLook() const;
    QStringList lines() const;

    Session& session_;
    Leaf leaf_;
    LeafSprites sprites_;
    MarkedRow marked_;
};

} // namespace stemwright

#pragma once

#include "app/leaf_painter.h"
#include "core/plan/plan.h"

#include <QWidget>

namespace stemwright {

class Session;

/// What is in her hands now, drawn large: a tier's leaves on the stem, what is above them as outlines, the
/// stretch to wrap below, and the tier from above; or the whole stem, where the step is about all of it.
class BindPicture : public QWidget {
    Q_OBJECT
public:
    explicit BindPicture(Session& session, QWidget* parent = nullptr);

    /// `tier` is -1 for the whole stem. `wrap` is what is wrapped in this step, below the tier or at the foot.
    void setStep(StemId stem, int tier, Length wrap);
    /// Turned as she holds it: the tier that is bound now always lies to her left and right.
    void setAsHeld(bool on);
    bool asHeld() const { return asHeld_; }
    /// How far the picture is turned for that, counter-clockwise seen from above.
    Angle turned() const;

    /// Where a slot's leaf points on the picture, clockwise from up, degrees; for tests.
    double directionOf(int tier, int slot) const;

    QSize sizeHint() const override { return {620, 560}; }
    QSize minimumSizeHint() const override { return {320, 300}; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Seen {
        double degrees = 0;
        double shorten = 1;
        bool back = false;
    };
    Seen seen(const Stem& stem, int tier, std::size_t slot) const;
    void paintTier(QPainter& painter, const Stem& stem);
    void paintWhole(QPainter& painter, const Stem& stem);
    void paintFromAbove(QPainter& painter, const Stem& stem, const QRectF& room);
    void paintLabels(QPainter& painter, const Stem& stem, QPointF joint, double scale);
    /// Where a bracket beside the stretch from the joint to `to` is clear of the leaves before it.
    double besideFront(const Stem& stem, QPointF joint, double scale, double thick, double to) const;
    void paintStretch(QPainter& painter, double x, double from, double to, double thick, bool wound) const;

    Session& session_;
    LeafSprites sprites_;
    StemId stem_;
    int tier_ = -1;
    Length wrap_;
    bool asHeld_ = false;
};

} // namespace stemwright

#pragma once

#include "app/pot/plant_render.h"

#include <QFutureWatcher>
#include <QPixmap>
#include <QWidget>

#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

class QTimer;

namespace stemwright {

class Session;

/// The plant in the round. Dragging, the arrow keys and whoever calls setTurn() turn it; a click chooses the
/// leaf that is seen there. While posing, the tip of a stem is dragged instead: sideways and toward the eye it
/// leans, with Shift it bends.
///
/// In motion every leaf is a flat picture; at rest every bead is drawn, off the window's thread.
class PlantView : public QWidget {
    Q_OBJECT
public:
    explicit PlantView(Session& session, QWidget* parent = nullptr);
    ~PlantView() override;

    int turn() const { return turn_; }
    int tilt() const { return tilt_; }
    double zoom() const { return zoom_; }
    Ground ground() const { return ground_; }
    ColourVision eyes() const { return eyes_; }
    View view() const { return View(degrees(turn_), degrees(tilt_)); }
    const PlantScene& scene() const { return *scene_; }

    void setTurn(int deg);
    void setTilt(int deg);
    void setZoom(double zoom, QPointF around);
    void setGround(Ground ground);
    void setEyes(ColourVision eyes);
    void setPosing(bool on);
    bool posing() const { return posing_; }
    /// Whether a stem's tip is in the hand; letting go leaves it as it was.
    bool held() const { return held_.has_value(); }
    void letGo() { cancel(); }
    /// The stem that is chosen from above, or none.
    void choose(StemId stem);
    /// Shows the stems standing elsewhere, or with nothing where the plan has them.
    void preview(std::optional<std::vector<PlaceMm>> at);
    /// Shows another plan, one that is offered; with nothing the session's.
    void showOffered(std::optional<Plan> plan);
    /// What is drawn: the session's plan, or what is offered or held.
    const Plan& shownPlan() const { return plan_; }
    /// The plan has changed.
    void reload();

    /// Where a stem's tip is seen, for its handle.
    QPointF tipAt(StemId stem) const;
    Framing framing() const;
    /// Whether what is shown is the full picture, and not one in motion.
    bool atRest() const { return resting_; }
    /// The picture of a frame in motion, as it would be painted now; for measuring.
    QImage movingFrame() const;

    QSize sizeHint() const override { return {640, 560}; }
    QSize minimumSizeHint() const override { return {240, 240}; }

Q_SIGNALS:
    void turned(int deg);
    void tilted(int deg);
    void placeChosen(unsigned stem, int tier, int slot);
    /// It has come to rest: figures of what is in sight may be worked out.
    void rested();
    /// What a pose would be, while it is held; empty when it is not.
    void hinted(const QString& text);
    /// Why a key did nothing.
    void said(const QString& text);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

private:
    enum class Hand { none, pressed, turning, moving, posing };

    void stir(bool rebuild = false);
    void startFull();
    void rebuild();
    PlantPicture picture(PlantDetail detail, int fineness) const;
    Pose poseOf(StemId stem) const;
    Pose withinHold(Pose pose) const;
    void poseByHand(QPointF off, bool bend);
    bool poseByKey(QKeyEvent* event);
    void holdPose(const Pose& pose, bool limited);
    void dropPose();
    void cancel();
    std::optional<StemId> tipNear(QPointF at) const;
    Pose leaned(const Pose& from, Point3 towards, double deg, bool bend) const;

    Session& session_;
    Plan plan_;
    std::optional<Plan> offered_;
    std::shared_ptr<const PlantScene> scene_;
    int turn_ = 0, tilt_ = 14;
    double zoom_ = 1;
    QPointF shift_;
    Ground ground_ = Ground::light;
    ColourVision eyes_ = ColourVision::full;
    bool posing_ = false;
    StemId chosen_;
    std::optional<std::vector<PlaceMm>> places_;
    std::optional<Pose> held_; ///< of the chosen stem
    Pose from_;

    Hand hand_ = Hand::none;
    QPointF pressed_, last_;

    bool resting_ = false;
    QImage shown_;
    QPixmap under_;
    QTimer* rest_;
    mutable LeafTextures textures_;
    mutable double frameMs_ = 0; ///< what the last frame in motion took
    std::stop_source stop_;
    std::unique_ptr<QFutureWatcher<QImage>> watcher_;
};

} // namespace stemwright

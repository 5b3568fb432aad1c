#pragma once

#include "core/figures/plant_shape.h"
#include "core/plan/plan.h"

#include <QWidget>

#include <optional>
#include <vector>

namespace stemwright {

class Session;

/// The pot from above, the front at the bottom: a disc for each stem at the size of its clearance. A stem is
/// dragged about; or a click on the chosen one picks it up and the next puts it down; or Space does, and the
/// arrows move it. Esc puts it back. Nothing changes before it is put down.
class FromAbove : public QWidget {
    Q_OBJECT
public:
    explicit FromAbove(Session& session, QWidget* parent = nullptr);

    StemId chosen() const { return chosen_; }
    void choose(StemId stem);
    bool held() const { return held_; }
    /// Puts a held stem back.
    void letGo() { cancel(); }
    /// From which side the plant is looked at, for the mark at the rim.
    void setTurn(int deg);
    void reload();

    /// Where a place on the clay is in the widget, and the other way about.
    QPointF onWidget(const PlaceMm& at) const;
    PlaceMm onClay(const QPointF& at) const;
    /// Where the stems stand now, the held one where it is held.
    const std::vector<PlaceMm>& places() const { return places_; }
    /// What is said of the held stem, a line each.
    QStringList hint() const;

    QSize sizeHint() const override { return {320, 250}; }
    QSize minimumSizeHint() const override { return {220, 210}; }

Q_SIGNALS:
    void chosenChanged(unsigned stem);
    /// A stem is held where it is not yet; empty once it is not.
    void previewed(const std::optional<std::vector<stemwright::PlaceMm>>& at);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

private:
    std::optional<std::size_t> stemAt(QPointF at) const;
    std::optional<std::size_t> index(StemId stem) const;
    void moveTo(PlaceMm at);
    void drop();
    void cancel();
    void chooseBeside(double x, double y);
    bool troubled(std::size_t stem) const;
    double scale() const;
    void describe();
    void paintStems(QPainter& painter) const;

    Session& session_;
    PlantBody body_;
    std::vector<PlaceMm> places_;
    std::vector<QColor> tips_;
    StemId chosen_;
    bool held_ = false;    ///< a stem is in the hand
    bool pressed_ = false; ///< by the mouse
    bool carried_ = false; ///< held, and no button is down
    bool again_ = false;   ///< the pressed stem was chosen before
    QPointF pressAt_, grip_;
    int turn_ = 0;
};

} // namespace stemwright

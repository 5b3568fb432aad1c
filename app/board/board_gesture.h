#pragma once

#include "app/board/drop_preview.h"

#include <QPoint>
#include <QRect>

#include <optional>

namespace stemwright {

/// What the hand is doing, from press to release. It knows nothing of widgets, changes nothing in the plan, and
/// can be ended at any moment without harm.
class BoardGesture {
public:
    enum class Phase {
        idle,
        pressed,  ///< a button is down, and whether it is a click or a drag is still open
        dragging, ///< something is held for as long as the button is down
        carrying, ///< something is held until the next click, or until it is put down by key
        refused,  ///< what was to be dragged cannot be; the reason shows until the button is up
        banding,  ///< a rubber band is drawn
        panning,  ///< the board is pushed about
    };

    explicit BoardGesture(const Session& session) : session_(session) {}

    Phase phase() const { return phase_; }
    bool holding() const { return phase_ == Phase::dragging || phase_ == Phase::carrying; }
    /// Null while nothing is held.
    const Held* held() const { return holding() ? &*held_ : nullptr; }
    /// Null while held over nothing that takes leaves.
    const DropPreview* preview() const { return holding() && preview_ ? &*preview_ : nullptr; }
    const QString& refusal() const { return refusal_; }

    void press(const Place& place, QPoint at);
    const Place& pressPlace() const { return pressPlace_; }
    QPoint pressPoint() const { return pressPoint_; }
    /// Whether the pointer is far enough from the press for a drag.
    bool isDrag(QPoint at) const;

    /// Takes the thing into the hand, or says why not (then the phase is refused after a press, and idle
    /// otherwise).
    bool pickUp(Held held, bool carry);
    void startBand() { phase_ = Phase::banding; }
    void startPan(QPoint at);
    QRect band(QPoint at) const { return QRect(pressPoint_, at).normalized(); }

    /// The held thing is over this place now. Whether what would happen has changed.
    bool hover(const Place& place);
    /// Ends whatever there is; nothing has happened to the plan.
    void end();

private:
    const Session& session_;
    Phase phase_ = Phase::idle;
    Place pressPlace_;
    QPoint pressPoint_;
    std::optional<Held> held_;
    std::optional<Place> over_;
    std::optional<DropPreview> preview_;
    QString refusal_;
};

} // namespace stemwright

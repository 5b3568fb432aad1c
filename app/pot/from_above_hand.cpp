// What the mouse and the keys do to the stems in the pot from above.
#include "app/pot/from_above.h"

#include <QApplication>
#include <QKeyEvent>
#include <QMouseEvent>

#include <algorithm>
#include <cmath>

namespace stemwright {

void FromAbove::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton)
        return;
    if (carried_) {
        moveTo(onClay(event->position() - grip_));
        drop();
        return;
    }
    const auto at = stemAt(event->position());
    if (!at) {
        cancel();
        return;
    }
    again_ = chosen_ == body_.stems[*at].stem;
    choose(body_.stems[*at].stem);
    pressed_ = true;
    pressAt_ = event->position();
    grip_ = event->position() - onWidget(places_[*at]);
}

void FromAbove::mouseMoveEvent(QMouseEvent* event) {
    if (!pressed_ && !carried_)
        return;
    if (!held_ && (event->position() - pressAt_).manhattanLength() < QApplication::startDragDistance())
        return;
    held_ = true;
    moveTo(onClay(event->position() - grip_));
}

void FromAbove::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || !pressed_)
        return;
    pressed_ = false;
    if (held_) {
        drop();
    } else if (again_) {
        // Without dragging: a click on the chosen stem picks it up, the next one puts it down.
        held_ = carried_ = true;
        moveTo(places_[*index(chosen_)]);
    }
}

void FromAbove::chooseBeside(double x, double y) {
    const auto from = index(chosen_);
    if (!from) {
        if (!body_.stems.empty())
            choose(body_.stems.front().stem);
        return;
    }
    // The nearest that lies more in that direction than across it.
    double least = 1e300;
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < places_.size(); ++i) {
        const double dx = places_[i].x - places_[*from].x, dy = places_[i].y - places_[*from].y;
        const double along = dx * x + dy * y, across = std::abs(dx * y - dy * x);
        if (along > 1e-6 && along >= across && along + across < least)
            least = along + across, best = i;
    }
    if (best)
        choose(body_.stems[*best].stem);
}

void FromAbove::keyPressEvent(QKeyEvent* event) {
    double x = 0, y = 0;
    switch (event->key()) {
    case Qt::Key_Left:
        x = -1;
        break;
    case Qt::Key_Right:
        x = 1;
        break;
    case Qt::Key_Up:
        y = 1;
        break;
    case Qt::Key_Down:
        y = -1;
        break;
    case Qt::Key_Space:
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (held_) {
            drop();
        } else if (index(chosen_)) {
            held_ = true;
            moveTo(places_[*index(chosen_)]);
        } else {
            chooseBeside(1, 0);
        }
        return;
    case Qt::Key_Escape:
        if (held_) {
            cancel();
            return;
        }
        QWidget::keyPressEvent(event);
        return;
    default:
        QWidget::keyPressEvent(event);
        return;
    }
    if (!held_)
        return chooseBeside(x, y);
    const double step = event->modifiers() & Qt::ShiftModifier ? 5 : 1;
    const PlaceMm now = places_[*index(chosen_)];
    moveTo({now.x + x * step, now.y + y * step});
}

} // namespace stemwright

#include "app/board/board_view.h"

#include "app/board/board_commands.h"
#include "app/wording.h"

#include <QContextMenuEvent>
#include <QMenu>
#include <QMouseEvent>
#include <QScrollBar>
#include <QWheelEvent>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int edge = 28;      ///< how near to an edge the board begins to scroll
constexpr int edgeSpeed = 14; ///< pixels a step at the very edge

/// How fast to scroll for a pointer at `at` between two edges: negative before the first.
int speedAt(int at, int first, int last) {
    if (at < first + edge)
        return -std::min(edgeSpeed, (first + edge - at) / 2 + 1);
    if (at > last - edge)
        return std::min(edgeSpeed, (at - last + edge) / 2 + 1);
    return 0;
}

} // namespace

void BoardView::startDrag(QPoint at, Qt::KeyboardModifiers modifiers) {
    const Place place = gesture_.pressPlace();
    const std::optional<Held> held = holdable(place, modifiers.testFlag(Qt::AltModifier));
    if (!held) {
        if (!columnsArea().contains(gesture_.pressPoint())) {
            gesture_.end();
            return;
        }
        bandBase_.clear();
        if (modifiers & (Qt::ControlModifier | Qt::ShiftModifier))
            bandBase_ = selection_.inOrder(session_.plan());
        gesture_.startBand();
        bandTo(at);
        return;
    }
    pickedByKey_ = false;
    pointer_ = at;
    if (!take(*held, false, toBoard(gesture_.pressPoint())))
        return;
    moveHeld(at);
}

void BoardView::bandTo(QPoint at) {
    pointer_ = at;
    std::vector<SlotRef> slots = bandBase_;
    const QRect band = gesture_.band(at);
    const std::vector<SlotRef> caught =
        layout_.slotsIn(QRectF(toBoard(band.topLeft()), toBoard(band.bottomRight())));
    slots.insert(slots.end(), caught.begin(), caught.end());
    select(std::move(slots));
    watchEdges();
}

void BoardView::watchEdges() {
    const bool wanted = (gesture_.phase() == BoardGesture::Phase::dragging && !pickedByKey_) ||
                        gesture_.phase() == BoardGesture::Phase::banding;
    const QRect area = columnsArea();
    const bool near = pointer_.x() >= area.left() && (speedAt(pointer_.x(), area.left(), area.right()) != 0 ||
                                                      speedAt(pointer_.y(), area.top(), area.bottom()) != 0);
    if (wanted && near) {
        if (!edgeTimer_.isActive())
            edgeTimer_.start();
    } else {
        edgeTimer_.stop();
    }
}

void BoardView::scrollAtEdges() {
    const QRect area = columnsArea();
    const int before = across_->value(), above = down_->value();
    across_->setValue(before + speedAt(pointer_.x(), area.left(), area.right()));
    down_->setValue(above + speedAt(pointer_.y(), area.top(), area.bottom()));
    if (gesture_.phase() == BoardGesture::Phase::banding)
        bandTo(pointer_);
    if (across_->value() == before && down_->value() == above)
        edgeTimer_.stop();
}

void BoardView::mousePressEvent(QMouseEvent* event) {
    const QPoint at = event->position().toPoint();
    noMenu_ = false;
    if (event->button() == Qt::RightButton) {
        noMenu_ = gesture_.phase() != BoardGesture::Phase::idle;
        cancel();
        return;
    }
    if (event->button() == Qt::MiddleButton) {
        if (gesture_.holding())
            return;
        gesture_.startPan(at);
        setCursor(Qt::ClosedHandCursor);
        return;
    }
    if (event->button() != Qt::LeftButton)
        return;
    if (gesture_.phase() == BoardGesture::Phase::carrying) {
        pickedByKey_ = false;
        moveHeld(at);
        if (gesture_.preview())
            putDown();
        else
            cancel();
        return;
    }
    const Place place = placeAt(at);
    hadSelected_ = place.onSlot() ? selection_.contains(place.slotRef()) : place == focus_ && !focusByKey_;
    focusByKey_ = false;
    gesture_.press(place, at);
    if (place.sort != Place::Sort::paper && place.sort != Place::Sort::gap && place.sort != Place::Sort::tray)
        setFocusPlace(place);
    update();
}

void BoardView::mouseMoveEvent(QMouseEvent* event) {
    const QPoint at = event->position().toPoint();
    switch (gesture_.phase()) {
    case BoardGesture::Phase::idle:
        showHover(at);
        break;
    case BoardGesture::Phase::pressed:
        if (gesture_.isDrag(at))
            startDrag(at, event->modifiers());
        break;
    case BoardGesture::Phase::carrying:
        pickedByKey_ = false;
        [[fallthrough]];
    case BoardGesture::Phase::dragging:
        moveHeld(at);
        break;
    case BoardGesture::Phase::refused: {
        const QRegion before = aboveRegion();
        pointer_ = at;
        update(before + aboveRegion());
        break;
    }
    case BoardGesture::Phase::banding:
        bandTo(at);
        break;
    case BoardGesture::Phase::panning:
        across_->setValue(across_->value() - at.x() + gesture_.pressPoint().x());
        down_->setValue(down_->value() - at.y() + gesture_.pressPoint().y());
        gesture_.startPan(at);
        break;
    }
}

void BoardView::mouseReleaseEvent(QMouseEvent* event) {
    const QPoint at = event->position().toPoint();
    if (event->button() == Qt::MiddleButton && gesture_.phase() == BoardGesture::Phase::panning)
        cancel();
    if (event->button() != Qt::LeftButton)
        return;
    switch (gesture_.phase()) {
    case BoardGesture::Phase::pressed: {
        const Place place = gesture_.pressPlace();
        gesture_.end();
        click(place, event->modifiers());
        break;
    }
    case BoardGesture::Phase::dragging: {
        moveHeld(at);
        const DropPreview* preview = gesture_.preview();
        const QString refusal = preview && !preview->allowed() ? preview->title : QString();
        if (!putDown()) {
            cancel();
            if (!refusal.isEmpty())
                say(refusal);
        }
        break;
    }
    case BoardGesture::Phase::refused:
    case BoardGesture::Phase::banding:
        cancel();
        break;
    default:
        break;
    }
}

void BoardView::mouseDoubleClickEvent(QMouseEvent* event) {
    mousePressEvent(event);
}

void BoardView::click(const Place& place, Qt::KeyboardModifiers modifiers) {
    const Plan& plan = session_.plan();
    const bool add = modifiers.testFlag(Qt::ControlModifier);
    const bool range = modifiers.testFlag(Qt::ShiftModifier);
    if (place.onSlot() || place.sort == Place::Sort::tier) {
        const std::vector<SlotRef> here = place.onSlot() ? std::vector<SlotRef>{place.slotRef()}
                                                         : BoardSelection::tier(plan, place.stem, place.tier);
        if (range && rangeStart_) {
            std::vector<SlotRef> slots =
                BoardSelection::range(plan, *rangeStart_, {place.stem, place.tier, std::max(place.slot, 0)});
            if (add) {
                const std::vector<SlotRef> before = selection_.inOrder(plan);
                slots.insert(slots.end(), before.begin(), before.end());
            }
            select(std::move(slots));
            return;
        }
        if (!here.empty())
            rangeStart_ = here.front();
        if (add) {
            std::vector<SlotRef> slots = selection_.inOrder(plan);
            for (const SlotRef& at : here) {
                const auto it = std::find(slots.begin(), slots.end(), at);
                it == slots.end() ? slots.push_back(at) : static_cast<void>(slots.erase(it));
            }
            select(std::move(slots));
            return;
        }
        const bool chosen = !here.empty() && std::all_of(here.begin(), here.end(),
                                                         [&](SlotRef at) { return selection_.contains(at); });
        if (chosen && hadSelected_) {
            if (const auto held = holdable(place)) {
                pickedByKey_ = false;
                if (take(*held, true, toBoard(gesture_.pressPoint())))
                    moveHeld(gesture_.pressPoint());
                return;
            }
        }
        select(here);
        say(tr("Drag to move; click again to pick up, then click where it goes"));
        return;
    }
    if (place.sort == Place::Sort::trayLine) {
        if (hadSelected_) {
            pickedByKey_ = false;
            if (take(HeldFromTray{place.leaf}, true, toBoard(gesture_.pressPoint())))
                moveHeld(gesture_.pressPoint());
            return;
        }
        select({});
        say(tr("Drag onto a stem; or click again to pick up, then click where it goes"));
        return;
    }
    if (place.sort == Place::Sort::stem) {
        select(BoardSelection::stem(plan, place.stem));
        return;
    }
    if (!add && !range)
        select({});
}

void BoardView::showHover(QPoint at) {
    const Place place = placeAt(at);
    const Plan& plan = session_.plan();
    const Slot* slot = place.onSlot() ? stemwright::find(plan, place.slotRef()) : nullptr;
    const bool takes =
        (slot && slot->filled()) || place.sort == Place::Sort::tier || place.sort == Place::Sort::trayLine;
    if (takes)
        setCursor(Qt::OpenHandCursor);
    else
        unsetCursor();
    if (slot)
        say(tr("%1: %2").arg(placeText(plan, place.slotRef()), slotText(plan, *slot)));
    else if (place.sort == Place::Sort::tier)
        say(tr("%1: drag to move the whole tier").arg(placeText(plan, {place.stem, place.tier, -1})));
    else
        say({});
}

void BoardView::leaveEvent(QEvent*) {
    if (gesture_.phase() == BoardGesture::Phase::idle)
        say({});
}

void BoardView::wheelEvent(QWheelEvent* event) {
    const QPoint at = event->position().toPoint();
    const QPoint turn = event->pixelDelta().isNull() ? event->angleDelta() / 2 : event->pixelDelta();
    if (event->modifiers().testFlag(Qt::ControlModifier)) {
        if (event->angleDelta().y() != 0)
            zoomTo(zoom() * (event->angleDelta().y() > 0 ? 1.12 : 1 / 1.12), at);
    } else if (trayArea().contains(at)) {
        trayDown_->setValue(trayDown_->value() - turn.y());
    } else {
        const bool sideways = event->modifiers().testFlag(Qt::ShiftModifier) || down_->maximum() == 0;
        across_->setValue(across_->value() - turn.x() - (sideways ? turn.y() : 0));
        if (!sideways)
            down_->setValue(down_->value() - turn.y());
    }
    event->accept();
}

void BoardView::contextMenuEvent(QContextMenuEvent* event) {
    if (noMenu_) {
        noMenu_ = false;
        return;
    }
    cancel();
    Place place = focus_;
    QPoint at = event->globalPos();
    if (event->reason() == QContextMenuEvent::Keyboard) {
        scrollTo(place);
        at = mapToGlobal(rectOf(place).center());
    } else {
        place = placeAt(event->pos());
        if (place.onSlot() && !selection_.contains(place.slotRef()))
            select({place.slotRef()});
        else if (place.sort == Place::Sort::tier)
            select(BoardSelection::tier(session_.plan(), place.stem, place.tier));
        if (place.sort != Place::Sort::paper)
            setFocusPlace(place);
    }
    QMenu* menu = commands_->menuFor(place);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    menu->popup(at);
}

} // namespace stemwright

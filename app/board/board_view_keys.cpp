#include "app/board/board_view.h"

#include "app/board/board_accessible.h"
#include "app/board/board_steps.h"
#include "app/wording.h"

#include <QFocusEvent>
#include <QKeyEvent>

#include <algorithm>

namespace stemwright {

namespace {

bool isStep(int key) {
    switch (key) {
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Home:
    case Qt::Key_End:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
        return true;
    default:
        return false;
    }
}

bool isTake(int key) {
    return key == Qt::Key_Space || key == Qt::Key_Return || key == Qt::Key_Enter;
}

} // namespace

void BoardView::hoverFocus() {
    hoverOver(focus_, rectOf(focus_).center());
    BoardAccessible::tellFocus(*this);
}

void BoardView::keyWhileHolding(QKeyEvent* event) {
    const int key = event->key();
    if (key == Qt::Key_Escape || event->matches(QKeySequence::Undo)) {
        cancel();
    } else if (gesture_.phase() == BoardGesture::Phase::carrying) {
        if (isTake(key)) {
            putDown();
        } else if (key == Qt::Key_Delete || key == Qt::Key_Backspace) {
            hoverOver(Place::ofTray(), pointer_);
            putDown();
        } else if (isStep(key)) {
            pickedByKey_ = true;
            focusByKey_ = true;
            const Place next = stepFrom(focus_, static_cast<Qt::Key>(key), layout_, tray_, true);
            scrollTo(next);
            focus_ = next;
            hoverFocus();
            Q_EMIT focusPlaceChanged();
        }
    }
}

void BoardView::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    if (gesture_.holding() || gesture_.phase() == BoardGesture::Phase::banding) {
        keyWhileHolding(event);
        event->accept();
        return;
    }
    const Qt::KeyboardModifiers modifiers = event->modifiers() & ~Qt::KeypadModifier;
    if (isStep(key)) {
        focusByKey_ = true;
        if (modifiers == Qt::ControlModifier &&
            (key == Qt::Key_Up || key == Qt::Key_Down || key == Qt::Key_Left || key == Qt::Key_Right))
            moveLeaf(static_cast<Qt::Key>(key));
        else
            moveFocus(static_cast<Qt::Key>(key), modifiers);
        return;
    }
    if (isTake(key)) {
        focusByKey_ = true;
        if (focus_.sort == Place::Sort::stem)
            select(BoardSelection::stem(session_.plan(), focus_.stem));
        else if (const auto held = holdable(focus_, modifiers.testFlag(Qt::ShiftModifier)))
            pickUp(*held);
        else
            say(tr("There is no leaf here"));
        update();
        return;
    }
    if (key == Qt::Key_Escape && (!selection_.empty() || session_.offer())) {
        if (session_.offer())
            session_.dropOffer();
        else
            select({});
        return;
    }
    if (event->matches(QKeySequence::ZoomIn) || (modifiers == Qt::ControlModifier && key == Qt::Key_Equal)) {
        zoomIn();
        return;
    }
    if (event->matches(QKeySequence::ZoomOut)) {
        zoomOut();
        return;
    }
    if (modifiers == Qt::ControlModifier && key == Qt::Key_0) {
        zoomReset();
        return;
    }
    QWidget::keyPressEvent(event);
}

void BoardView::moveFocus(Qt::Key key, Qt::KeyboardModifiers modifiers) {
    const Place from = focus_;
    const Place next = stepFrom(from, key, layout_, tray_, false);
    if (modifiers.testFlag(Qt::ShiftModifier) && from.onSlot() && next.onSlot()) {
        if (!rangeStart_ || !selection_.contains(*rangeStart_) || !selection_.contains(from.slotRef()))
            rangeStart_ = from.slotRef();
        select(BoardSelection::range(session_.plan(), *rangeStart_, next.slotRef()));
    } else if (!modifiers.testFlag(Qt::ShiftModifier) && !selection_.empty()) {
        select({});
        rangeStart_.reset();
    }
    scrollTo(next);
    setFocusPlace(next);
    update();
    const Plan& plan = session_.plan();
    if (const Slot* slot = next.onSlot() ? stemwright::find(plan, next.slotRef()) : nullptr)
        say(tr("%1: %2 — Space picks up").arg(placeText(plan, next.slotRef()), slotText(plan, *slot)));
    else
        say({});
}

void BoardView::moveLeaf(Qt::Key key) {
    const Plan& plan = session_.plan();
    const std::optional<Held> held = holdable(focus_);
    if (!held || !focus_.onBoard()) {
        say(tr("There is no leaf here"));
        return;
    }
    const bool upright = key == Qt::Key_Up || key == Qt::Key_Down;
    const int by = key == Qt::Key_Up || key == Qt::Key_Left ? -1 : 1;
    const int index = layout_.indexOf(focus_.stem) + (upright ? 0 : by);
    if (index < 0 || index >= static_cast<int>(plan.stems.size()))
        return;
    const Stem& stem = plan.stems[static_cast<std::size_t>(index)];
    const int count = static_cast<int>(stem.tiers.size());
    Target target = IntoGap{stem.id, 0};
    if (count > 0) {
        const int tier = upright ? focus_.tier + by : std::min(focus_.tier, count - 1);
        if (tier < 0 || tier >= count)
            return;
        const int slots = static_cast<int>(stem.tiers[static_cast<std::size_t>(tier)].slots.size());
        target = OntoSlot{{stem.id, tier, std::min(std::max(focus_.slot, 0), std::max(slots - 1, 0))}};
    }
    const bool chosen = focus_.onSlot() && selection_.contains(focus_.slotRef());
    Result<Put> done = put(plan, *held, target);
    if (!done) {
        make(done.problem());
        return;
    }
    const std::vector<SlotRef> landed = done.value().landed;
    if (!make(done.value().edit) || landed.empty())
        return;
    std::size_t grabbed = 0;
    if (const auto* leaves = std::get_if<HeldLeaves>(&*held))
        grabbed = leaves->grabbed;
    if (chosen)
        select(landed);
    const Place next = Place::of(landed[std::min(grabbed, landed.size() - 1)]);
    scrollTo(next);
    setFocusPlace(next);
    update();
}

void BoardView::announceFocus() {
    BoardAccessible::tellFocus(*this);
}

void BoardView::focusInEvent(QFocusEvent* event) {
    if (event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason)
        focusByKey_ = true;
    update();
    announceFocus();
}

void BoardView::focusOutEvent(QFocusEvent*) {
    cancel();
    update();
}

} // namespace stemwright

#include "app/board/board_view.h"

#include "app/deed_text.h"
#include "app/messages.h"
#include "app/wording.h"

#include <algorithm>

namespace stemwright {

// What is in the hand: taking, holding over places, putting down and letting go.

void BoardView::say(const QString& text) {
    Q_EMIT statusChanged(text);
}

std::optional<Held> BoardView::holdable(const Place& place, bool wholeTier) const {
    const Plan& plan = session_.plan();
    if (place.sort == Place::Sort::trayLine)
        return HeldFromTray{place.leaf};
    if (place.sort == Place::Sort::tier || (place.onSlot() && wholeTier)) {
        // A run of tiers, where the choice is just that: whole tiers of one stem, this one among them.
        HeldTiers held{place.stem, place.tier, 1, 0};
        const auto whole = [&](int tier) {
            const std::vector<SlotRef> slots = BoardSelection::tier(plan, place.stem, tier);
            return !slots.empty() &&
                   std::all_of(slots.begin(), slots.end(), [&](SlotRef at) { return selection_.contains(at); });
        };
        if (whole(place.tier)) {
            while (held.first > 0 && whole(held.first - 1))
                --held.first, ++held.count, ++held.grabbed;
            while (whole(held.first + held.count))
                ++held.count;
        }
        return held;
    }
    if (!place.onSlot())
        return std::nullopt;
    const Slot* slot = stemwright::find(plan, place.slotRef());
    if (!slot || !slot->filled())
        return std::nullopt;
    HeldLeaves held{{place.slotRef()}, 0};
    if (selection_.contains(place.slotRef())) {
        held.from = selection_.filled(plan);
        held.grabbed = static_cast<std::size_t>(std::find(held.from.begin(), held.from.end(), place.slotRef()) -
                                                held.from.begin());
    }
    return held;
}

bool BoardView::take(const Held& held, bool carry, QPointF grab) {
    if (!gesture_.pickUp(held, carry)) {
        label_.say(gesture_.refusal());
        say(gesture_.refusal());
        if (gesture_.phase() != BoardGesture::Phase::refused)
            label_.clear();
        update();
        return false;
    }
    session_.dropOffer();
    ghost_.make(session_.plan(), held, layout_, painter_, grab, devicePixelRatioF());
    label_.clear();
    spoil();
    const QString how = !carry         ? tr("Holding %1: let go over a place to put it there, Escape lets go")
                        : pickedByKey_ ? tr("Holding %1: arrows carry it, Space puts it down, Escape lets go")
                                       : tr("Holding %1: click a place to put it down, Escape lets go");
    say(how.arg(heldText(session_.plan(), held)));
    return true;
}

bool BoardView::pickUp(const Held& held) {
    pickedByKey_ = true;
    // Held a little above the place, so that both can be seen.
    const QPointF middle = focus_.onTray() ? QPointF() : layout_.rect(focus_).center();
    if (!take(held, true, middle + QPointF(0, 10)))
        return false;
    hoverFocus();
    return true;
}

void BoardView::hoverOver(const Place& place, QPoint pointer) {
    const QRegion before = aboveRegion();
    pointer_ = pointer;
    if (gesture_.hover(place)) {
        if (const DropPreview* preview = gesture_.preview())
            label_.say(*preview);
        else
            label_.clear();
    }
    update(before + aboveRegion());
}

void BoardView::moveHeld(QPoint to) {
    hoverOver(placeAt(to), to);
    watchEdges();
}

void BoardView::cancel() {
    const bool held = gesture_.holding();
    if (gesture_.phase() == BoardGesture::Phase::idle)
        return;
    gesture_.end();
    edgeTimer_.stop();
    label_.clear();
    ghost_.clear();
    unsetCursor();
    spoil();
    if (held)
        say(tr("Let go: nothing has changed"));
}

bool BoardView::putDown() {
    const DropPreview* preview = gesture_.preview();
    if (!preview || !preview->allowed()) {
        if (preview)
            say(preview->title);
        return false;
    }
    const Edit edit = *preview->edit;
    const std::vector<SlotRef> landed = preview->landed;
    const Place place = preview->place;
    gesture_.end();
    edgeTimer_.stop();
    label_.clear();
    ghost_.clear();
    if (!make(edit)) {
        // Asked about tiers that are bound, she would rather not: the leaves lie where they were.
        unsetCursor();
        spoil();
        return false;
    }
    select(landed);
    rangeStart_ = landed.empty() ? std::nullopt : std::optional(landed.front());
    setFocusPlace(landed.empty() ? place : Place::of(landed.front()));
    spoil();
    return true;
}

bool BoardView::putDownAt(const Place& place) {
    if (!gesture_.holding())
        return false;
    hoverOver(place, rectOf(place).center());
    return putDown();
}

bool BoardView::make(const Result<Edit>& edit) {
    if (!edit) {
        say(sentence(edit.problem()));
        return false;
    }
    making_ = true;
    const bool made = session_.make(edit.value());
    making_ = false;
    if (made)
        say(tr("Done: %1").arg(deedText(edit.value())));
    return made;
}

} // namespace stemwright

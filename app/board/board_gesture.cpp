#include "app/board/board_gesture.h"

#include "app/messages.h"

#include <QApplication>

namespace stemwright {

void BoardGesture::press(const Place& place, QPoint at) {
    end();
    phase_ = Phase::pressed;
    pressPlace_ = place;
    pressPoint_ = at;
}

bool BoardGesture::isDrag(QPoint at) const {
    return (at - pressPoint_).manhattanLength() >= QApplication::startDragDistance();
}

bool BoardGesture::pickUp(Held held, bool carry) {
    const bool pressed = phase_ == Phase::pressed;
    if (const auto problem = cannotHold(session_.plan(), held)) {
        refusal_ = sentence(*problem);
        phase_ = pressed && !carry ? Phase::refused : Phase::idle;
        return false;
    }
    refusal_.clear();
    held_ = std::move(held);
    over_.reset();
    preview_.reset();
    phase_ = carry ? Phase::carrying : Phase::dragging;
    return true;
}

void BoardGesture::startPan(QPoint at) {
    end();
    phase_ = Phase::panning;
    pressPoint_ = at;
}

bool BoardGesture::hover(const Place& place) {
    if (!holding() || over_ == place)
        return false;
    over_ = place;
    preview_ = previewDrop(session_, *held_, place);
    return true;
}

void BoardGesture::end() {
    phase_ = Phase::idle;
    held_.reset();
    over_.reset();
    preview_.reset();
}

} // namespace stemwright

#include "app/bind/bind_place.h"

// Keys, pedal and clock, and the window that the place stands in.

#include <QKeyEvent>
#include <QPushButton>

namespace stemwright {

void BindPlace::setClock(std::function<qint64()> clock) {
    clock_ = std::move(clock);
    shownAt_ = clock_();
}

void BindPlace::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Space:
    case Qt::Key_PageDown:
        // A foot that rests on the pedal binds one tier, not ten.
        if (!event->isAutoRepeat())
            goOn();
        return;
    case Qt::Key_Backspace:
    case Qt::Key_PageUp:
        if (!event->isAutoRepeat())
            goBack();
        return;
    case Qt::Key_Escape:
        if (wholeScreen_->isChecked())
            return wholeScreen_->setChecked(false);
        // Out of a field, a list or a box the keys come back to the place.
        if (!hasFocus())
            return setFocus();
        [[fallthrough]];
    default:
        QWidget::keyPressEvent(event);
    }
}

bool BindPlace::eventFilter(QObject* watched, QEvent* event) {
    if (watched == window() && event->type() == QEvent::WindowStateChange)
        showWholeScreen();
    return QWidget::eventFilter(watched, event);
}

void BindPlace::showWholeScreen() {
    // The window's own keys and its frame change it too.
    const bool whole = window()->isFullScreen();
    const QSignalBlocker quiet(wholeScreen_);
    wholeScreen_->setChecked(whole);
    wholeScreen_->setText(whole ? tr("As a &window") : tr("&Whole screen"));
    Q_EMIT wholeScreenShown(whole && isVisible());
}

void BindPlace::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    shownAt_ = clock_();
    window()->installEventFilter(this);
    showWholeScreen();
}

void BindPlace::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    shownAt_.reset();
    // The other places have no button that would lead out of it.
    if (!event->spontaneous() && wholeScreen_->isChecked())
        wholeScreen_->setChecked(false);
}

} // namespace stemwright

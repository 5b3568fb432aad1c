#include "app/fields/fitted_label.h"

#include <QEvent>

namespace stemwright {

FittedLabel::FittedLabel(QWidget* parent) : QLabel(parent) {
    setTextFormat(Qt::PlainText);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
}

void FittedLabel::setWordings(const QStringList& wordings) {
    wordings_ = wordings;
    setToolTip(whole());
    setAccessibleName(whole());
    fit();
}

void FittedLabel::fit() {
    const int room = contentsRect().width();
    for (const QString& wording : wordings_)
        if (fontMetrics().horizontalAdvance(wording) <= room) {
            setText(wording);
            return;
        }
    setText(fontMetrics().elidedText(wordings_.value(wordings_.size() - 1), Qt::ElideRight, room));
}

QSize FittedLabel::sizeHint() const {
    return {fontMetrics().horizontalAdvance(whole()), QLabel::sizeHint().height()};
}

QSize FittedLabel::minimumSizeHint() const {
    return {0, QLabel::minimumSizeHint().height()};
}

void FittedLabel::resizeEvent(QResizeEvent* event) {
    QLabel::resizeEvent(event);
    fit();
}

void FittedLabel::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        fit();
}

} // namespace stemwright

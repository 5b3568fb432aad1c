#include "app/bind/bench_label.h"

#include "app/look.h"

#include <QLabel>

namespace stemwright {

QFont benchFont(double times, bool bold) {
    QFont font = look::font(bold ? look::Type::strong : look::Type::text);
    font.setPointSizeF(font.pointSizeF() * times);
    return font;
}

QLabel* benchLabel(QWidget* parent, const char* name, double times, bool bold) {
    auto* made = new QLabel(parent);
    made->setObjectName(QLatin1String(name));
    made->setFont(benchFont(times, bold));
    made->setWordWrap(true);
    made->setTextFormat(Qt::PlainText);
    return made;
}

} // namespace stemwright

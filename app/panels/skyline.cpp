#include "app/panels/skyline.h"

#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"

#include <QHelpEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QToolTip>

#include <algorithm>

namespace stemwright {

namespace {

constexpr double mostNameWidth = 52; ///< px that one name may have before names are cut

/// The colour of the topmost leaf's outer row; the stem's own where it has no leaf.
QColor tipColour(const Plan& plan, const Stem& stem) {
    for (const Tier& tier : stem.tiers)
        for (const Slot& slot : tier.slots)
            if (slot.filled())
                if (const Mix* mix = find(plan, slot.leaf.mix); mix && !mix->colours.empty())
                    if (const Colour* colour = find(plan, mix->colours.front().colour))
                        return {colour->srgb.red, colour->srgb.green, colour->srgb.blue};
    return look::stem;
}

/// What all names begin with, up to and with a space: "Stem " of "Stem 1" and "Stem 12".
QString commonStart(const QStringList& names) {
    if (names.size() < 2)
        return {};
    QString start = names.front();
    for (const QString& name : names)
        while (!name.startsWith(start))
            start.chop(1);
    return start.left(start.lastIndexOf(QLatin1Char(' ')) + 1);
}

/// The stems' names, short enough to stand under them in a step's room: without what all begin with, where that
/// leaves every one something.
QStringList shortNames(const Plan& plan, const QFontMetrics& metrics, double step) {
    QStringList names;
    for (const Stem& stem : plan.stems)
        names += nameText(plan, stem.id);
    const bool fits = std::all_of(names.begin(), names.end(), [&](const QString& name) {
        return metrics.horizontalAdvance(name) + 6 <= step;
    });
    const QString start = fits ? QString() : commonStart(names);
    if (!start.isEmpty() && !names.contains(start))
        for (QString& name : names)
            name.remove(0, start.size());
    return names;
}

} // namespace

Skyline::Skyline(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    setObjectName(QStringLiteral("skyline"));
    setAccessibleName(tr("Skyline"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    const auto refresh = [this] {
        const PotFigures& pot = session_.figures().pot;
        const Units& units = session_.plan().units;
        setAccessibleDescription(tr("%1 stems, %2 to %3 high")
                                     .arg(pot.stems)
                                     .arg(sizeText(pot.shortest, units), sizeText(pot.tallest, units)));
        update();
    };
    connect(&session, &Session::changed, this, refresh);
    refresh();
}

QSize Skyline::sizeHint() const {
    return {280, 176};
}
QSize Skyline::minimumSizeHint() const {
    return {160, 120};
}

QRectF Skyline::plot() const {
    return QRectF(rect()).adjusted(2, 10, -2, -20);
}

int Skyline::stemAt(double x) const {
    const auto count = static_cast<double>(session_.figures().stems.size());
    const int i = static_cast<int>((x - plot().left()) / std::max(plot().width() / std::max(count, 1.0), 1e-9));
    return i >= 0 && i < static_cast<int>(count) ? i : -1;
}

void Skyline::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF area = plot();
    const std::vector<StemFigures>& stems = session_.figures().stems;
    const double tallest = std::max(inMillimetres(session_.figures().pot.tallest), 1.0);
    const double step = area.width() / std::max<double>(static_cast<double>(stems.size()), 1);

    // Names are thinned out where they would touch, and long ones are cut rather than thinned to nothing.
    painter.setFont(look::font(look::Type::small));
    const QStringList names = shortNames(session_.plan(), painter.fontMetrics(), step);
    double widest = 0;
    for (const QString& name : names)
        widest = std::max(widest, std::min(painter.fontMetrics().horizontalAdvance(name) + 6.0, mostNameWidth));
    const auto every = static_cast<std::size_t>(std::max(1.0, std::ceil(widest / std::max(step, 1.0))));
    const double room = std::max(step * static_cast<double>(every), 24.0);

    for (std::size_t i = 0; i < stems.size(); ++i) {
        const double x = area.left() + (static_cast<double>(i) + 0.5) * step;
        const double top =
            area.bottom() - std::max(0.0, inMillimetres(stems[i].height)) / tallest * (area.height() - 6);
        // A slight bend, to the side that its number decides: grown, not manufactured.
        const double bend = std::min(4.0, step / 6) * (i % 3 == 0 ? 1 : -0.7);
        QPainterPath path({x, area.bottom()});
        path.cubicTo({x - bend, area.bottom() - (area.bottom() - top) * 0.4},
                     {x + bend, area.bottom() - (area.bottom() - top) * 0.6}, {x, top});
        painter.setPen(QPen(look::stem, std::clamp(step / 9, 1.2, 3.0), Qt::SolidLine, Qt::RoundCap));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(path);
        const double r = std::clamp(step / 6, 2.0, 4.5);
        painter.setPen(QPen(look::quiet, 0.6));
        painter.setBrush(tipColour(session_.plan(), session_.plan().stems[i]));
        painter.drawEllipse(QPointF(x, top), r, r);
        if (i % every == 0) {
            painter.setPen(look::quiet);
            const QString name =
                i < static_cast<std::size_t>(names.size())
                    ? painter.fontMetrics().elidedText(names[static_cast<qsizetype>(i)], Qt::ElideRight,
                                                       static_cast<int>(room) - 8)
                    : QString();
            // A wide name at either end stays within the window.
            const double left = std::clamp(x - room / 2, 0.0, std::max(0.0, width() - room));
            painter.drawText(QRectF(left, area.bottom() + 4, room, 16), Qt::AlignHCenter | Qt::AlignTop, name);
        }
    }
    painter.setPen(QPen(look::quiet, 1.5));
    painter.drawLine(QPointF(area.left(), area.bottom()), QPointF(area.right(), area.bottom()));
}

void Skyline::mousePressEvent(QMouseEvent* event) {
    const int i = stemAt(event->position().x());
    if (event->button() == Qt::LeftButton && i >= 0)
        Q_EMIT stemChosen(session_.figures().stems[static_cast<std::size_t>(i)].stem.value);
}

bool Skyline::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const int i = stemAt(help->pos().x());
        if (i >= 0) {
            const StemFigures& stem = session_.figures().stems[static_cast<std::size_t>(i)];
            QToolTip::showText(help->globalPos(),
                               tr("%1: %2").arg(nameText(session_.plan(), stem.stem),
                                                sizeText(stem.height, session_.plan().units)),
                               this);
        }
        return true;
    }
    return QWidget::event(event);
}

} // namespace stemwright

#include "app/pot/sight_panel.h"

#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"

#include <QLocale>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr int rowHeight = 17;
constexpr int heightsHeight = 62;
constexpr std::size_t mostColours = 8;

QString percent(double share) {
    return SightPanel::tr("%1 %").arg(std::lround(share * 100));
}

} // namespace

SightPanel::SightPanel(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    setObjectName(QStringLiteral("sightPanel"));
    setAccessibleName(tr("In sight"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void SightPanel::show(Sight sight, std::vector<std::size_t> order) {
    sight_ = std::move(sight);
    order_ = std::move(order);
    QStringList said;
    const Plan& plan = session_.plan();
    for (const std::size_t c : colours())
        said << tr("%1 %2 in sight, %3 of all")
                    .arg(text(plan.colours[c].name), percent(sight_.shares[c]), percent(sight_.ofAll[c]));
    QStringList heights;
    for (const std::size_t i : order_)
        heights << QString::number(std::lround(inMillimetres(session_.figures().stems[i].height)));
    said << tr("heights from left to right: %1").arg(heights.join(QStringLiteral(", "))) << bareText();
    setAccessibleDescription(said.join(QStringLiteral("; ")));
    updateGeometry();
    update();
}

std::vector<std::size_t> SightPanel::colours() const {
    std::vector<std::size_t> out;
    if (sight_.shares.size() != session_.plan().colours.size())
        return out;
    for (std::size_t c = 0; c < sight_.ofAll.size(); ++c)
        if (sight_.ofAll[c] > 0 || sight_.shares[c] > 0)
            out.push_back(c);
    std::stable_sort(out.begin(), out.end(),
                     [this](std::size_t a, std::size_t b) { return sight_.ofAll[a] > sight_.ofAll[b]; });
    if (out.size() > mostColours)
        out.resize(mostColours);
    return out;
}

QString SightPanel::bareText() const {
    const auto barest = std::max_element(sight_.bare.begin(), sight_.bare.end());
    if (barest == sight_.bare.end() || *barest < 0.5)
        return tr("No stem shows between its leaves.");
    const auto at = static_cast<std::size_t>(barest - sight_.bare.begin());
    if (at >= session_.plan().stems.size())
        return {};
    return tr("Barest: %1, %2 of stem without a leaf before it")
        .arg(text(session_.plan().stems[at].name), sizeText(millimetres(*barest), session_.plan().units));
}

QSize SightPanel::sizeHint() const {
    return {330, 42 + static_cast<int>(colours().size()) * rowHeight + heightsHeight + 26};
}
QSize SightPanel::minimumSizeHint() const {
    return {200, sizeHint().height()};
}

void SightPanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Plan& plan = session_.plan();
    painter.setFont(look::font(look::Type::heading));
    painter.setPen(look::ink);
    painter.drawText(QRectF(0, 0, width(), 22), Qt::AlignLeft | Qt::AlignVCenter, tr("In sight"));
    painter.setFont(look::font(look::Type::small));
    painter.setPen(look::quiet);
    painter.drawText(QRectF(0, 0, width(), 22), Qt::AlignRight | Qt::AlignVCenter, tr("in sight · of all"));
    double y = 28;
    const double name = 92, figure = 84, bar = std::max(20.0, width() - name - figure - 8);
    double most = 0.01;
    for (const std::size_t c : colours())
        most = std::max({most, sight_.shares[c], sight_.ofAll[c]});
    for (const std::size_t c : colours()) {
        const Srgb s = plan.colours[c].srgb;
        const QColor colour(s.red, s.green, s.blue);
        painter.setPen(look::ink);
        painter.drawText(QRectF(0, y, name - 4, rowHeight), Qt::AlignLeft | Qt::AlignVCenter,
                         painter.fontMetrics().elidedText(text(plan.colours[c].name), Qt::ElideRight,
                                                          static_cast<int>(name) - 6));
        painter.setPen(QPen(colour.darker(130), 0.6));
        painter.setBrush(colour);
        painter.drawRect(QRectF(name, y + 3, bar * sight_.shares[c] / most, 6));
        QColor pale = colour;
        pale.setAlpha(110);
        painter.setBrush(pale);
        painter.drawRect(QRectF(name, y + 10, bar * sight_.ofAll[c] / most, 4));
        painter.setPen(std::abs(sight_.shares[c] - sight_.ofAll[c]) > 0.05 ? look::accent : look::quiet);
        painter.drawText(QRectF(width() - figure, y, figure, rowHeight), Qt::AlignRight | Qt::AlignVCenter,
                         tr("%1 · %2").arg(percent(sight_.shares[c]), percent(sight_.ofAll[c])));
        y += rowHeight;
    }
    // The heights from left to right as they are seen.
    y += 10;
    const double base = y + heightsHeight - 16;
    double tallest = 1;
    for (const StemFigures& stem : session_.figures().stems)
        tallest = std::max(tallest, inMillimetres(stem.height));
    const double step = width() / std::max<double>(1, static_cast<double>(order_.size()));
    for (std::size_t k = 0; k < order_.size(); ++k) {
        if (order_[k] >= session_.figures().stems.size())
            continue;
        const double high = inMillimetres(session_.figures().stems[order_[k]].height);
        const double x = (static_cast<double>(k) + 0.5) * step,
                     top = base - (heightsHeight - 22) * high / tallest;
        painter.setPen(QPen(look::stem, std::clamp(step / 7, 1.5, 4.0), Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(QPointF(x, base), QPointF(x, top));
        if (step >= 22) {
            painter.setPen(look::quiet);
            painter.drawText(QRectF(x - step / 2, base + 2, step, 14), Qt::AlignCenter,
                             QString::number(order_[k] + 1));
        }
    }
    painter.setPen(QPen(look::line, 1));
    painter.drawLine(QPointF(0, base + 1), QPointF(width(), base + 1));
    painter.setPen(look::quiet);
    painter.drawText(QRectF(0, base + 18, width(), 18), Qt::AlignLeft | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(bareText(), Qt::ElideRight, width()));
}

} // namespace stemwright

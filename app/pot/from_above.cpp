#include "app/pot/from_above.h"

#include "app/look.h"
#include "app/pot/place_hint.h"
#include "app/pot/plant_scene.h"
#include "app/session.h"
#include "app/wording.h"

#include "core/figures/pot_findings.h"
#include "core/figures/pot_shape.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double frame = 24; ///< px around the pot, for "front", "back" and the eye

QColor tipColour(const Plan& plan, const Stem& stem) {
    for (const Tier& tier : stem.tiers)
        for (const Slot& slot : tier.slots)
            if (slot.filled())
                if (const Mix* mix = stemwright::find(plan, slot.leaf.mix); mix && !mix->colours.empty())
                    if (const Colour* colour = stemwright::find(plan, mix->colours.front().colour))
                        return {colour->srgb.red, colour->srgb.green, colour->srgb.blue};
    return look::stem;
}

} // namespace

FromAbove::FromAbove(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    setObjectName(QStringLiteral("fromAbove"));
    setAccessibleName(tr("The pot from above"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Expanding);
    reload();
}

void FromAbove::reload() {
    const bool had = held_;
    held_ = pressed_ = carried_ = false;
    const Plan& plan = session_.plan();
    places_ = standings(plan);
    body_ = plantBody(plan, places_);
    tips_.clear();
    for (const Stem& stem : plan.stems)
        tips_.push_back(tipColour(plan, stem));
    if (!index(chosen_))
        chosen_ = {};
    describe();
    update();
    if (had)
        Q_EMIT previewed(std::nullopt);
}

void FromAbove::describe() {
    const auto at = index(chosen_);
    if (!at) {
        setAccessibleDescription(tr("%1 stems").arg(places_.size()));
        return;
    }
    QStringList lines{tr("%1, %2 mm right and %3 mm back of the middle")
                          .arg(nameText(session_.plan(), chosen_))
                          .arg(std::lround(places_[*at].x))
                          .arg(std::lround(places_[*at].y))};
    if (held_)
        lines << tr("held") << hint();
    setAccessibleDescription(lines.join(QStringLiteral("; ")));
}

void FromAbove::setTurn(int deg) {
    turn_ = deg;
    update();
}

void FromAbove::choose(StemId stem) {
    if (stem == chosen_)
        return;
    cancel();
    chosen_ = stem;
    describe();
    update();
    Q_EMIT chosenChanged(stem.value);
}

double FromAbove::scale() const {
    const Pot& pot = session_.plan().pot;
    double right = inMillimetres(pot.topDiameter) / 2, back = right * breadthPart(pot);
    for (const PlaceMm& at : standings(session_.plan())) {
        right = std::max(right, std::abs(at.x) + 1);
        back = std::max(back, std::abs(at.y) + 1);
    }
    return std::max(0.01, std::min((width() / 2.0 - frame) / (right + potWall),
                                   (height() / 2.0 - frame) / (back + potWall)));
}

QPointF FromAbove::onWidget(const PlaceMm& at) const {
    return QPointF(width() / 2.0 + at.x * scale(), height() / 2.0 - at.y * scale());
}

PlaceMm FromAbove::onClay(const QPointF& at) const {
    return {(at.x() - width() / 2.0) / scale(), (height() / 2.0 - at.y()) / scale()};
}

std::optional<std::size_t> FromAbove::index(StemId stem) const {
    for (std::size_t i = 0; i < body_.stems.size(); ++i)
        if (body_.stems[i].stem == stem)
            return i;
    return std::nullopt;
}

std::optional<std::size_t> FromAbove::stemAt(QPointF at) const {
    std::optional<std::size_t> nearest;
    double least = 1e300;
    for (std::size_t i = 0; i < places_.size(); ++i) {
        const QPointF off = onWidget(places_[i]) - at;
        const double far = std::hypot(off.x(), off.y());
        const double reach = std::max<double>(look::target / 2.0, body_.stems[i].clearance * scale());
        if (far <= reach && far < least)
            least = far, nearest = i;
    }
    return nearest;
}

bool FromAbove::troubled(std::size_t stem) const {
    const Plan& plan = session_.plan();
    const double foot = footRadius(plan, body_.stems[stem]);
    if (beyondClay(plan.pot, places_[stem].x, places_[stem].y) + foot > 0.05)
        return true;
    for (std::size_t i = 0; i < places_.size(); ++i)
        if (i != stem && std::hypot(places_[i].x - places_[stem].x, places_[i].y - places_[stem].y) <
                             foot + footRadius(plan, body_.stems[i]) - 0.05)
            return true;
    return false;
}

QStringList FromAbove::hint() const {
    const auto at = index(chosen_);
    return at ? placeHint(session_.plan(), session_.figures(), body_, places_, *at) : QStringList();
}

void FromAbove::moveTo(PlaceMm at) {
    const auto stem = index(chosen_);
    if (!stem)
        return;
    // Tenths of a millimetre are finer than a hand plants; a little outside the rim is as far as it goes.
    const double right = inMillimetres(session_.plan().pot.topDiameter) / 2 + 20;
    const double back = (right - 20) * breadthPart(session_.plan().pot) + 20;
    at = {std::clamp(at.x, -right, right), std::clamp(at.y, -back, back)};
    places_[*stem] = {std::round(at.x * 10) / 10 + 0.0, std::round(at.y * 10) / 10 + 0.0};
    body_ = plantBody(session_.plan(), places_);
    describe();
    update();
    Q_EMIT previewed(places_);
}

void FromAbove::drop() {
    const auto at = index(chosen_);
    const Stem* stem = stemwright::find(session_.plan(), chosen_);
    if (!at || !stem)
        return cancel();
    const PlaceMm place = places_[*at];
    held_ = carried_ = false;
    ReformStem edit{chosen_, *stem};
    Standing standing = stem->standing.value_or(Standing{});
    standing.x = millimetres(place.x);
    standing.y = millimetres(place.y);
    edit.form.standing = standing;
    if (!session_.make(edit))
        reload();
    Q_EMIT previewed(std::nullopt);
}

void FromAbove::cancel() {
    pressed_ = false;
    if (held_)
        reload();
}

void FromAbove::focusInEvent(QFocusEvent* event) {
    if (!index(chosen_) && !body_.stems.empty() && event->reason() != Qt::MouseFocusReason)
        choose(body_.stems.front().stem);
    QWidget::focusInEvent(event);
    update();
}

void FromAbove::focusOutEvent(QFocusEvent* event) {
    cancel();
    QWidget::focusOutEvent(event);
    update();
}

bool FromAbove::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        if (const auto at = stemAt(help->pos()); at && !held_)
            QToolTip::showText(
                help->globalPos(),
                placeHint(session_.plan(), session_.figures(), body_, places_, *at).join(QLatin1Char('\n')),
                this);
        else
            QToolTip::hideText();
        return true;
    }
    // Escape belongs to what is held before it belongs to the window.
    if (event->type() == QEvent::ShortcutOverride && held_ &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

} // namespace stemwright

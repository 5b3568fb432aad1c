#include "app/status_line.h"

#include "app/best_standing.h"
#include "app/explanations.h"
#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"

#include <QAccessible>
#include <QActionGroup>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QTimer>
#include <QToolButton>

#include <algorithm>

namespace stemwright {

namespace {
constexpr int gap = 36; ///< px between one thing said and the next
} // namespace

StatusLine::StatusLine(Session& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      best_(new BestStanding(session, this)),
      placed_(new QLabel(this)),
      drift_(new QLabel(this)),
      heights_(new QLabel(this)),
      hint_(new QLabel(this)),
      message_(new QLabel(this)),
      units_(new QToolButton(this)),
      timer_(new QTimer(this)) {
    setObjectName(QStringLiteral("statusLine"));
    setAttribute(Qt::WA_StyledBackground);
    placed_->setObjectName(QStringLiteral("placed"));
    drift_->setObjectName(QStringLiteral("potDrift"));
    drift_->setToolTip(
        tr("Drift: how far the stems' colours are from the pot's, ΔE00, the mean of the stems by their "
           "beads. Unevenness: the sum of (leaves held − fair share)² over stems and mixes. The least "
           "unevenness possible keeps the leaves that are on stems, and the pinned ones in their places. The "
           "drift beside it is that of a board with this unevenness; Suggest, Spread the colours shows it. "
           "Another board may drift less and be less even."));
    heights_->setObjectName(QStringLiteral("heights"));
    hint_->setObjectName(QStringLiteral("hint"));
    hint_->setProperty("quiet", true);
    message_->setObjectName(QStringLiteral("message"));
    message_->setProperty("refusal", true);
    message_->hide();

    units_->setObjectName(QStringLiteral("units"));
    units_->setAccessibleName(tr("Units"));
    units_->setPopupMode(QToolButton::InstantPopup);
    units_->setAutoRaise(true);
    units_->setMinimumSize(look::target * 2, look::target);
    auto* menu = new QMenu(units_);
    auto* group = new QActionGroup(menu);
    const auto add = [&](const QString& name, LengthUnit length, MassUnit mass) {
        QAction* action = menu->addAction(name);
        action->setCheckable(true);
        group->addAction(action);
        connect(action, &QAction::triggered, this, [this, length, mass] {
            Units units = session_.plan().units;
            units.length = length;
            units.mass = mass;
            session_.make(Set<Units>{units});
        });
        connect(menu, &QMenu::aboutToShow, action,
                [this, action, length] { action->setChecked(session_.plan().units.length == length); });
    };
    add(tr("Millimetres and grams"), LengthUnit::millimetre, MassUnit::gram);
    add(tr("Inches and ounces"), LengthUnit::inch, MassUnit::ounce);
    units_->setMenu(menu);

    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(18, 3, 12, 3);
    layout->setSpacing(gap);
    layout->addWidget(placed_);
    layout->addWidget(drift_);
    layout->addWidget(heights_);
    layout->addWidget(message_);
    layout->addStretch();
    layout->addWidget(hint_);
    layout->addWidget(units_);

    timer_->setSingleShot(true);
    connect(timer_, &QTimer::timeout, this, [this] { showFigures(true); });
    connect(&session_, &Session::changed, this, &StatusLine::refresh);
    connect(best_, &BestStanding::changed, this, &StatusLine::showStanding);
    refresh();
}

void StatusLine::say(const QString& sentence) {
    message_->setText(sentence);
    message_->setToolTip(sentence);
    showFigures(false);
    // As long as it takes to read: five seconds, and more for
    // long ones. The next edit takes it away as well.
    timer_->start(std::max(5000, static_cast<int>(sentence.size()) * 90));
    QAccessibleEvent alert(message_, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void StatusLine::hint(const QString& sentence) {
    hinted_ = sentence;
    hint_->setToolTip(sentence);
    // What the hand holds needs the room; the tray and the skyline say the counts and the heights beside it.
    showFigures(!message_->isVisibleTo(this));
}

void StatusLine::showFigures(bool on) {
    message_->setVisible(!on);
    drift_->setVisible(on);
    const bool alone = on && hinted_.isEmpty();
    // In a narrow window the heights go first, then the counts: the tray and the skyline say them too.
    const int room = width() - units_->sizeHint().width() - 2 * gap - 30;
    const int drift = drift_->sizeHint().width(), placed = placed_->sizeHint().width() + gap;
    const int said = on ? drift : message_->sizeHint().width();
    hint_->setText(hint_->fontMetrics().elidedText(hinted_, Qt::ElideRight, std::max(0, room - said)));
    placed_->setVisible(alone && drift + placed <= room);
    heights_->setVisible(alone && drift + placed + heights_->sizeHint().width() + gap <= room);
}

void StatusLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    showFigures(!message_->isVisibleTo(this));
}

QString StatusLine::standing() const {
    const PotFigures& pot = session_.figures().pot;
    const QString now = tr("pot drift %1 · unevenness %2").arg(driftText(pot.drift), shareText(pot.unevenness));
    if (pot.leaves == 0)
        return now;
    const std::optional<Best>& best = best_->best();
    if (!best)
        return tr("%1 — working out the least unevenness possible …").arg(now);
    if (pot.unevenness <= best->bound + 1e-9)
        return tr("%1 — the least unevenness these leaves allow").arg(now);
    const QString drift = driftText(best->drift);
    return best->proved ? tr("%1 — least unevenness possible %2, then drift %3")
                              .arg(now, shareText(best->unevenness), drift)
                        : tr("%1 — least unevenness possible from %2 to %3, then drift %4")
                              .arg(now, shareText(best->bound), shareText(best->unevenness), drift);
}

void StatusLine::showStanding() {
    drift_->setText(standing());
    showFigures(!message_->isVisibleTo(this));
}

void StatusLine::refresh() {
    const PotFigures& pot = session_.figures().pot;
    const Units& units = session_.plan().units;
    placed_->setText(tr("%1 placed · %2 in the tray").arg(countText(pot.leaves), countText(pot.inTray)));
    showStanding();
    const auto explained = [&](std::initializer_list<FigureName> names) {
        QStringList parts;
        for (const FigureName name : names)
            parts << QStringLiteral("%1: %2").arg(
                figureName(name),
                explanationText(explain(session_.plan(), session_.figures(), {}, {name, 0, 0}), units));
        return parts.join(QStringLiteral("\n\n"));
    };
    placed_->setToolTip(explained({FigureName::potLeaves, FigureName::potInTray}));
    heights_->setToolTip(explained({FigureName::potShortest, FigureName::potHeightVariation}));
    heights_->setText(
        pot.stems ? tr("heights %1 to %2").arg(sizeText(pot.shortest, units), sizeText(pot.tallest, units))
                  : tr("no stems yet"));
    units_->setText(units.length == LengthUnit::inch ? tr("in, oz") : tr("mm, g"));
    timer_->stop();
    showFigures(true);
}

} // namespace stemwright

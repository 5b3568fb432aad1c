#include "app/board/board_view.h"

#include "app/board/board_accessible.h"
#include "app/board/board_commands.h"
#include "app/board/board_steps.h"
#include "app/board/card_tips.h"
#include "app/look.h"
#include "app/wording.h"

#include <QEvent>
#include <QHelpEvent>
#include <QResizeEvent>
#include <QScrollBar>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr int headHeight = 38;
constexpr int bar = 12;        ///< of a scroll bar
constexpr int boardMargin = 8; ///< left of the first column
constexpr int cardMargin = 8;
constexpr double leastZoom = 0.2, mostZoom = 3;
// A little smaller rather than a scroll bar for the last few pixels; larger where there is room.
constexpr double leastOpeningZoom = 0.92, mostOpeningZoom = 1.5;
constexpr double zoomStep = 1.2;
constexpr int ringTime = 1600; ///< ms that a shown place stays ringed
constexpr int edgeTick = 16;   ///< ms between steps of scrolling at the edges

} // namespace

BoardView::BoardView(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), gesture_(session), commands_(std::make_unique<BoardCommands>(*this)) {
    setObjectName(QStringLiteral("board"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setMinimumSize(BoardTray::width + 240, headHeight + cardHeight + 120);
    BoardAccessible::install();
    setAccessibleName(tr("Board"));
    setAccessibleDescription(
        tr("Arrows move over leaves and stems, Space picks up and puts down, Escape lets go."));
    const auto addBar = [&](Qt::Orientation orientation, const char* name) {
        auto* scroll = new QScrollBar(orientation, this);
        scroll->setObjectName(QLatin1String(name));
        scroll->setFocusPolicy(Qt::NoFocus);
        connect(scroll, &QScrollBar::valueChanged, this, [this] {
            spoil();
            if (!gesture_.holding())
                return;
            if (pickedByKey_)
                hoverFocus();
            else
                moveHeld(pointer_);
        });
        return scroll;
    };
    across_ = addBar(Qt::Horizontal, "boardAcross");
    down_ = addBar(Qt::Vertical, "boardDown");
    trayDown_ = addBar(Qt::Vertical, "trayDown");
    showTimer_.setSingleShot(true);
    showTimer_.setInterval(ringTime);
    connect(&showTimer_, &QTimer::timeout, this, [this] {
        shown_ = {};
        update();
    });
    edgeTimer_.setInterval(edgeTick);
    connect(&edgeTimer_, &QTimer::timeout, this, &BoardView::scrollAtEdges);
    connect(&session_, &Session::changed, this, &BoardView::follow);
    connect(&session_, &Session::offerChanged, this, [this] {
        offer_.clear();
        if (const auto& offer = session_.offer()) {
            cancel();
            offer_.show(session_.plan(), offer->edit);
            if (!offer_.empty())
                scrollTo(offer_.first());
        }
        spoil();
    });
    layout_.arrange(session_.plan(), 1);
    arrange();
    focus_ = firstPlace(layout_, tray_);
    commands_->refresh();
}

BoardView::~BoardView() = default;

QRect BoardView::trayArea() const {
    return QRect(0, 0, BoardTray::width, height());
}
QRect BoardView::headArea() const {
    return QRect(BoardTray::width + 1, 0, width() - BoardTray::width - 1 - bar, headHeight);
}
QRect BoardView::cardsArea() const {
    return QRect(BoardTray::width + 1, height() - cardHeight - cardMargin - bar,
                 width() - BoardTray::width - 1 - bar, cardHeight);
}
QRect BoardView::columnsArea() const {
    const int bottom = cardsArea().top() - cardMargin;
    return QRect(BoardTray::width + 1, headHeight, width() - BoardTray::width - 1 - bar, bottom - headHeight);
}

QPointF BoardView::toBoard(QPoint at) const {
    const QRect area = columnsArea();
    return {at.x() - area.left() - boardMargin + across_->value() + 0.0,
            at.y() - area.top() + down_->value() + 0.0};
}

QRectF BoardView::fromBoard(const QRectF& rect) const {
    const QRect area = columnsArea();
    return rect.translated(area.left() + boardMargin - across_->value(), area.top() - down_->value());
}

QRectF BoardView::cardRect(int stem) const {
    const StemSpot& spot = layout_.stems()[static_cast<std::size_t>(stem)];
    const QRectF column = fromBoard(spot.column);
    const double gap = std::min(4.0, column.width() * 0.06);
    return QRectF(column.left() + gap, cardsArea().top(), column.width() - 2 * gap, cardHeight);
}

Place BoardView::placeAt(QPoint at) const {
    if (!rect().contains(at))
        return {};
    if (trayArea().contains(at))
        return tray_.at(at + QPoint(0, trayDown_->value()));
    if (columnsArea().contains(at))
        return layout_.at(toBoard(at));
    if (headArea().contains(at) || cardsArea().contains(at)) {
        const Place below = layout_.at(QPointF(toBoard(at).x(), 0));
        return below.onBoard() ? Place::of(below.stem) : Place{};
    }
    return {};
}

QRect BoardView::rectOf(const Place& place) const {
    if (place.sort == Place::Sort::tray)
        return trayArea().adjusted(2, 2, -2, -2);
    if (place.sort == Place::Sort::trayLine)
        return tray_.rect(place.leaf).translated(0, -trayDown_->value());
    QRectF rect = fromBoard(layout_.rect(place));
    if (place.sort == Place::Sort::stem && place.onBoard()) {
        rect.setTop(4);
        rect.setHeight(headHeight - 8);
    }
    if (place.sort == Place::Sort::tier)
        rect.setLeft(rect.left() + 1);
    return rect.toAlignedRect();
}

void BoardView::arrange() {
    tray_.arrange(session_.plan(), session_.figures());
    layout_.arrange(session_.plan(), layout_.zoom());
    cards_.clear();
    for (const StemFigures& stem : session_.figures().stems)
        cards_.push_back(cardOf(session_.plan(), stem));
    arrangeBars();
}

void BoardView::arrangeBars() {
    const QRect area = columnsArea();
    across_->setGeometry(area.left(), height() - bar, area.width(), bar);
    down_->setGeometry(area.right() + 1, area.top(), bar, area.height());
    const int wide = static_cast<int>(std::ceil(layout_.size().width())) + 2 * boardMargin;
    const int high = static_cast<int>(std::ceil(layout_.size().height()));
    across_->setPageStep(area.width());
    across_->setRange(0, std::max(0, wide - area.width()));
    across_->setSingleStep(static_cast<int>(layout_.columnWidth() / 2));
    across_->setVisible(across_->maximum() > 0);
    down_->setPageStep(area.height());
    down_->setRange(0, std::max(0, high - area.height()));
    down_->setSingleStep(24);
    down_->setVisible(down_->maximum() > 0);
    trayDown_->setGeometry(BoardTray::width - bar, BoardTray::headHeight, bar,
                           height() - BoardTray::headHeight);
    trayDown_->setPageStep(height());
    trayDown_->setRange(0, std::max(0, tray_.height() - height()));
    trayDown_->setSingleStep(34);
    trayDown_->setVisible(trayDown_->maximum() > 0);
    spoil();
}

void BoardView::follow(const Change& change) {
    if (!making_)
        cancel();
    if (change.reach.everything)
        painter_.forget();
    if (change.anotherPlan) {
        selection_.clear();
        rangeStart_.reset();
        shown_ = {};
    }
    arrange();
    selection_.keepExisting(session_.plan());
    if (rangeStart_ && !stemwright::find(session_.plan(), *rangeStart_))
        rangeStart_.reset();
    if (change.anotherPlan || !exists(session_.plan(), focus_)) {
        Place next = firstPlace(layout_, tray_);
        if (!change.anotherPlan && stemwright::find(session_.plan(), focus_.stem)) {
            // The nearest that is left of the stem.
            const auto tiers = static_cast<int>(stemwright::find(session_.plan(), focus_.stem)->tiers.size());
            next = tiers == 0
                       ? Place::of(focus_.stem)
                       : Place::of(SlotRef{focus_.stem, std::min(std::max(focus_.tier, 0), tiers - 1), 0});
            if (!exists(session_.plan(), next))
                next = Place::of(focus_.stem);
        }
        focus_ = next;
    }
    if (change.anotherPlan) {
        across_->setValue(0);
        down_->setValue(0);
        trayDown_->setValue(0);
    }
    commands_->refresh();
    BoardAccessible::rebuild(*this);
    announceFocus();
    Q_EMIT selectionChanged();
}

void BoardView::zoomTo(double zoom, QPoint keep) {
    zoom = std::clamp(zoom, leastZoom, mostZoom);
    if (std::abs(zoom - layout_.zoom()) < 1e-9)
        return;
    cancel();
    // What is under `keep` stays under it.
    const QPointF before = toBoard(keep);
    const double ratio = zoom / layout_.zoom();
    layout_.arrange(session_.plan(), zoom);
    arrangeBars();
    const QPointF after = before * ratio - toBoard(keep);
    across_->setValue(across_->value() + static_cast<int>(std::lround(after.x())));
    down_->setValue(down_->value() + static_cast<int>(std::lround(after.y())));
    BoardAccessible::rebuild(*this);
    Q_EMIT zoomChanged();
}

void BoardView::zoomIn() {
    zoomTo(zoom() * zoomStep, columnsArea().center());
}
void BoardView::zoomOut() {
    zoomTo(zoom() / zoomStep, columnsArea().center());
}
void BoardView::zoomReset() {
    zoomTo(1, columnsArea().topLeft());
}

void BoardView::zoomToOpen() {
    const double width = layout_.size().width() / layout_.zoom();
    const double fits = width > 0 ? (columnsArea().width() - 2.0 * boardMargin) / width : 1;
    zoomTo(fits < leastOpeningZoom ? 1.0 : std::min(fits, mostOpeningZoom), columnsArea().topLeft());
    across_->setValue(0);
    down_->setValue(0);
}

void BoardView::zoomFit() {
    // Everything grows with the zoom, so one division finds it.
    const QSizeF size = layout_.size() / layout_.zoom();
    const QRect area = columnsArea();
    if (size.width() <= 0 || size.height() <= 0)
        return;
    zoomTo(std::min({(area.width() - 2.0 * boardMargin) / size.width(), area.height() / size.height(), 1.6}),
           area.topLeft());
    across_->setValue(0);
    down_->setValue(0);
}

void BoardView::setCodesShown(bool shown) {
    codes_ = shown;
    spoil();
}

QList<QAction*> BoardView::editActions() const {
    return commands_->editActions();
}

void BoardView::scrollTo(const Place& place) {
    const int margin = 24;
    if (place.onTray()) {
        const QRect rect = rectOf(place);
        if (place.sort == Place::Sort::trayLine) {
            if (rect.top() < BoardTray::headHeight)
                trayDown_->setValue(trayDown_->value() + rect.top() - BoardTray::headHeight);
            else if (rect.bottom() > height())
                trayDown_->setValue(trayDown_->value() + rect.bottom() - height() + margin);
        }
        return;
    }
    const QRect area = columnsArea();
    QRectF rect = fromBoard(layout_.rect(place));
    if (rect.isEmpty())
        return;
    const QRectF column = fromBoard(layout_.rect(Place::of(place.stem)));
    if (column.left() < area.left())
        across_->setValue(across_->value() +
                          static_cast<int>(std::floor(column.left() - area.left() - boardMargin)));
    else if (column.right() > area.right())
        across_->setValue(across_->value() +
                          static_cast<int>(std::ceil(column.right() - area.right() + boardMargin)));
    if (place.sort == Place::Sort::stem)
        return;
    if (rect.top() < area.top() + margin)
        down_->setValue(down_->value() + static_cast<int>(std::floor(rect.top() - area.top())) - margin);
    else if (rect.bottom() > area.bottom() - margin)
        down_->setValue(down_->value() + static_cast<int>(std::ceil(rect.bottom() - area.bottom())) + margin);
}

void BoardView::showPlace(StemId stem, int tier, int slot) {
    Place place = slot >= 0   ? Place::of(SlotRef{stem, tier, slot})
                  : tier >= 0 ? Place::ofTier(stem, tier)
                              : Place::of(stem);
    if (!exists(session_.plan(), place))
        return;
    scrollTo(place);
    if (place.sort == Place::Sort::tier &&
        !stemwright::find(session_.plan(), stem)->tiers[static_cast<std::size_t>(tier)].slots.empty())
        setFocusPlace(Place::of(SlotRef{stem, tier, 0}));
    else
        setFocusPlace(place);
    shown_ = place;
    showTimer_.start();
    update();
}

void BoardView::setFocusPlace(const Place& place) {
    if (focus_ == place || !exists(session_.plan(), place))
        return;
    focus_ = place;
    update();
    announceFocus();
    Q_EMIT focusPlaceChanged();
}

void BoardView::select(std::vector<SlotRef> slots) {
    selection_.set(std::move(slots));
    commands_->refresh();
    spoil();
    Q_EMIT selectionChanged();
}

void BoardView::resizeEvent(QResizeEvent*) {
    arrangeBars();
}

bool BoardView::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip && !gesture_.holding()) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const Place place = placeAt(help->pos());
        QString tip;
        if (const Slot* slot = place.onSlot() ? stemwright::find(session_.plan(), place.slotRef()) : nullptr)
            tip =
                tr("%1\n%2").arg(placeText(session_.plan(), place.slotRef()), slotText(session_.plan(), *slot));
        else if (place.sort == Place::Sort::tier)
            tip = placeText(session_.plan(), {place.stem, place.tier, -1});
        else if (place.sort == Place::Sort::stem && cardsArea().contains(help->pos())) {
            const Plan& plan = session_.plan();
            const auto at = std::find_if(plan.stems.begin(), plan.stems.end(),
                                         [&](const Stem& stem) { return stem.id == place.stem; });
            const auto index = at - plan.stems.begin();
            const QRectF card = cardRect(static_cast<int>(index));
            if (at != plan.stems.end())
                QToolTip::showText(help->globalPos(),
                                   cardTip(session_, card, help->pos(), static_cast<std::size_t>(index)), this,
                                   card.toAlignedRect());
            return true;
        }
        if (tip.isEmpty())
            QToolTip::hideText();
        else
            QToolTip::showText(help->globalPos(), tip, this, rectOf(place));
        return true;
    }
    // While something is held, Ctrl+Z lets go of it rather than undoing something else.
    if (event->type() == QEvent::ShortcutOverride &&
        (gesture_.holding() || gesture_.phase() == BoardGesture::Phase::banding)) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

} // namespace stemwright

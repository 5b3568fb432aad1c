#include "app/pot/plant_view.h"

#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QHelpEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QTimer>
#include <QToolTip>
#include <QtConcurrent>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr int restAfter = 40; ///< ms without a movement
constexpr double degreesAPixel = 0.4;
constexpr double mostZoom = 12;
constexpr int keyStep = 5;       ///< degrees
constexpr double slowFrame = 16; ///< ms

} // namespace

PlantView::PlantView(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), rest_(new QTimer(this)) {
    setObjectName(QStringLiteral("plantView"));
    setAccessibleName(tr("The plant in the round"));
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::OpenHandCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    rest_->setSingleShot(true);
    rest_->setInterval(restAfter);
    connect(rest_, &QTimer::timeout, this, &PlantView::startFull);
    rebuild();
}

PlantView::~PlantView() {
    stop_.request_stop();
    if (watcher_)
        watcher_->waitForFinished();
}

void PlantView::rebuild() {
    textures_ = {};
    plan_ = offered_ ? *offered_ : session_.plan();
    if (held_)
        if (Stem* stem = stemwright::find(plan_, chosen_))
            stem->pose = held_;
    if (places_ && places_->size() == plan_.stems.size())
        scene_ = std::make_shared<const PlantScene>(plan_, eyes_, std::span<const PlaceMm>(*places_));
    else
        scene_ = std::make_shared<const PlantScene>(plan_, eyes_);
    setAccessibleDescription(tr("%1 stems, %2 leaves, turned by %3 degrees")
                                 .arg(scene_->body.stems.size())
                                 .arg(scene_->body.leaves.size())
                                 .arg(turn_));
}

void PlantView::reload() {
    places_.reset();
    offered_.reset();
    held_.reset();
    hand_ = Hand::none;
    if (!stemwright::find(session_.plan(), chosen_))
        chosen_ = {};
    stir(true);
}

/// Something moved: what is shown is drawn simply until it rests.
void PlantView::stir(bool again) {
    if (again)
        rebuild();
    stop_.request_stop();
    stop_ = std::stop_source();
    if (watcher_) {
        disconnect(watcher_.get(), nullptr, this, nullptr);
        watcher_.reset();
    }
    resting_ = false;
    rest_->start();
    update();
}

PlantPicture PlantView::picture(PlantDetail detail, int fineness) const {
    const double ratio = devicePixelRatioF();
    PlantPicture out;
    out.view = view();
    out.size = (QSizeF(size()) * ratio).toSize();
    out.framing = framing();
    out.framing.scale *= ratio;
    out.framing.origin *= ratio;
    out.detail = detail;
    out.fineness = fineness;
    return out;
}

Framing PlantView::framing() const {
    Framing out = framed(*scene_, degrees(tilt_), size());
    out.scale *= zoom_;
    const QPointF middle(width() / 2.0, height() / 2.0);
    out.origin = middle + (out.origin - middle) * zoom_ + shift_;
    return out;
}

QImage PlantView::movingFrame() const {
    // On a slow machine, or with a very large plant, smooth motion comes before smooth edges.
    PlantPicture frame = picture(PlantDetail::moving, frameMs_ > slowFrame ? 1 : 2);
    frame.textures = &textures_;
    QElapsedTimer clock;
    clock.start();
    const QImage image = renderPlant(*scene_, frame);
    const double took = static_cast<double>(clock.nsecsElapsed()) / 1e6;
    // A frame of one sample a pixel would have taken some three times as long with four.
    frameMs_ = frame.fineness == 2 ? took : took * 3;
    return image;
}

void PlantView::startFull() {
    PlantPicture wanted = picture(PlantDetail::full, 2);
    if (wanted.size.isEmpty() || !isVisible())
        return;
    stop_ = std::stop_source();
    wanted.stop = stop_.get_token();
    watcher_ = std::make_unique<QFutureWatcher<QImage>>();
    connect(watcher_.get(), &QFutureWatcher<QImage>::finished, this, [this] {
        const QImage image = watcher_->result();
        if (image.isNull())
            return;
        shown_ = image;
        shown_.setDevicePixelRatio(devicePixelRatioF());
        resting_ = true;
        update();
        Q_EMIT rested();
    });
    watcher_->setFuture(QtConcurrent::run([scene = scene_, wanted] { return renderPlant(*scene, wanted); }));
}

void PlantView::setTurn(int deg) {
    deg = ((deg % 360) + 360) % 360;
    if (deg == turn_)
        return;
    turn_ = deg;
    stir();
    Q_EMIT turned(turn_);
}

void PlantView::setTilt(int deg) {
    deg = std::clamp(deg, 0, 90);
    if (deg == tilt_)
        return;
    tilt_ = deg;
    under_ = {};
    stir();
    Q_EMIT tilted(tilt_);
}

void PlantView::setZoom(double zoom, QPointF around) {
    zoom = std::clamp(zoom, 1.0, mostZoom);
    const double by = zoom / zoom_;
    const QPointF middle(width() / 2.0, height() / 2.0);
    // What is under the pointer stays there.
    shift_ = zoom <= 1 ? QPointF() : (shift_ - (around - middle)) * by + (around - middle);
    zoom_ = zoom;
    under_ = {};
    stir();
}

void PlantView::setGround(Ground ground) {
    ground_ = ground;
    under_ = {};
    update();
}

void PlantView::setEyes(ColourVision eyes) {
    eyes_ = eyes;
    stir(true);
}

void PlantView::setPosing(bool on) {
    cancel();
    posing_ = on;
    update();
}

void PlantView::choose(StemId stem) {
    cancel();
    chosen_ = stem;
    update();
}

void PlantView::preview(std::optional<std::vector<PlaceMm>> at) {
    places_ = std::move(at);
    under_ = {};
    stir(true);
}

void PlantView::showOffered(std::optional<Plan> plan) {
    if (!plan && !offered_)
        return;
    offered_ = std::move(plan);
    under_ = {};
    stir(true);
}

QPointF PlantView::tipAt(StemId stem) const {
    for (const StemBody& body : scene_->body.stems)
        if (body.stem == stem)
            return framing().onPicture(view().point(body.tip));
    return {};
}

void PlantView::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const double ratio = devicePixelRatioF();
    if (under_.isNull() || under_.deviceIndependentSize() != QSizeF(size())) {
        under_ = QPixmap::fromImage(plantGround(*scene_, picture(PlantDetail::full, 1), ground_));
        under_.setDevicePixelRatio(ratio);
    }
    painter.drawPixmap(0, 0, under_);
    if (!resting_) {
        // It may have come to rest while nobody saw it.
        if (!rest_->isActive() && !watcher_)
            rest_->start();
        shown_ = movingFrame();
        shown_.setDevicePixelRatio(ratio);
    }
    painter.drawImage(QPointF(0, 0), shown_);
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor mark = ground_ == Ground::light ? look::focus : look::onNightAccent;
    for (const StemBody& stem : scene_->body.stems) {
        const bool chosen = stem.stem == chosen_;
        if (!posing_ && !chosen)
            continue;
        const QPointF at = framing().onPicture(view().point(stem.tip));
        painter.setPen(QPen(mark, chosen ? 2.2 : 1.2));
        painter.setBrush(posing_ ? QBrush(QColor(255, 255, 255, chosen ? 210 : 120)) : QBrush(Qt::NoBrush));
        painter.drawEllipse(at, chosen ? 9 : 7, chosen ? 9 : 7);
    }
    if (hasFocus()) {
        painter.setPen(QPen(mark, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5), look::corner, look::corner);
    }
}

void PlantView::resizeEvent(QResizeEvent*) {
    under_ = {};
    stir();
}

void PlantView::mousePressEvent(QMouseEvent* event) {
    pressed_ = last_ = event->position();
    if (event->button() == Qt::RightButton || event->button() == Qt::MiddleButton) {
        hand_ = zoom_ > 1 ? Hand::moving : Hand::none;
        return;
    }
    if (event->button() != Qt::LeftButton)
        return;
    hand_ = Hand::pressed;
    if (posing_)
        if (const auto stem = tipNear(pressed_)) {
            chosen_ = *stem;
            from_ = poseOf(*stem);
            hand_ = Hand::posing;
        }
    setCursor(Qt::ClosedHandCursor);
}

void PlantView::mouseMoveEvent(QMouseEvent* event) {
    const QPointF at = event->position(), by = at - last_;
    if (hand_ == Hand::pressed && (at - pressed_).manhattanLength() >= QApplication::startDragDistance())
        hand_ = Hand::turning;
    switch (hand_) {
    case Hand::none:
        if (posing_)
            setCursor(tipNear(at) ? Qt::PointingHandCursor : Qt::OpenHandCursor);
        return;
    case Hand::pressed:
        return;
    case Hand::turning: {
        // The rest is kept for the next movement, so that slow dragging turns as far as quick dragging.
        const int turn = static_cast<int>(by.x() * degreesAPixel),
                  tilt = static_cast<int>(by.y() * degreesAPixel);
        setTurn(turn_ + turn);
        setTilt(tilt_ + tilt);
        last_ += QPointF(turn / degreesAPixel, tilt / degreesAPixel);
        return;
    }
    case Hand::moving:
        shift_ += by;
        last_ = at;
        under_ = {};
        stir();
        return;
    case Hand::posing: {
        poseByHand(at - pressed_, event->modifiers() & Qt::ShiftModifier);
        return;
    }
    }
}

void PlantView::mouseReleaseEvent(QMouseEvent* event) {
    const Hand was = hand_;
    hand_ = Hand::none;
    setCursor(Qt::OpenHandCursor);
    if (was == Hand::posing) {
        dropPose();
    } else if (was == Hand::pressed && event->button() == Qt::LeftButton) {
        if (const auto leaf = leafAt(*scene_, view(), framing(), event->position())) {
            const SlotRef at = scene_->body.leaves[*leaf].at;
            Q_EMIT placeChosen(at.stem.value, at.tier, at.slot);
        }
    }
}

void PlantView::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && zoom_ > 1)
        setZoom(1, event->position());
}

void PlantView::wheelEvent(QWheelEvent* event) {
    setZoom(zoom_ * std::pow(1.0015, event->angleDelta().y()), event->position());
    event->accept();
}

void PlantView::keyPressEvent(QKeyEvent* event) {
    const QPointF middle(width() / 2.0, height() / 2.0);
    if (event->modifiers() & Qt::ControlModifier && poseByKey(event))
        return;
    switch (event->key()) {
    case Qt::Key_Left:
        setTurn(turn_ - keyStep);
        return;
    case Qt::Key_Right:
        setTurn(turn_ + keyStep);
        return;
    case Qt::Key_Up:
        setTilt(tilt_ - keyStep);
        return;
    case Qt::Key_Down:
        setTilt(tilt_ + keyStep);
        return;
    case Qt::Key_Home:
        setZoom(1, middle);
        setTurn(0);
        return;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        setZoom(zoom_ * 1.25, middle);
        return;
    case Qt::Key_Minus:
        setZoom(zoom_ / 1.25, middle);
        return;
    case Qt::Key_Escape:
        if (hand_ != Hand::none) {
            cancel();
            return;
        }
        break;
    default:
        break;
    }
    QWidget::keyPressEvent(event);
}

void PlantView::focusOutEvent(QFocusEvent* event) {
    cancel();
    QWidget::focusOutEvent(event);
    update();
}

bool PlantView::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        if (const auto leaf = leafAt(*scene_, view(), framing(), help->pos())) {
            const LeafBody& body = scene_->body.leaves[*leaf];
            if (const Slot* slot = stemwright::find(session_.plan(), body.at))
                QToolTip::showText(help->globalPos(),
                                   placeText(session_.plan(), body.at) + QLatin1Char('\n') +
                                       slotText(session_.plan(), *slot),
                                   this);
        } else {
            QToolTip::hideText();
        }
        return true;
    }
    return QWidget::event(event);
}

} // namespace stemwright

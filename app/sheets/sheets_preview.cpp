#include "app/sheets/sheets_preview.h"

#include "app/look.h"
#include "app/sheet_painter.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QWheelEvent>
#include <QtConcurrent>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {
constexpr int around = 5 * look::unit; ///< beside and between the pages, px
constexpr double leastZoom = 0.15;
constexpr double mostZoom = 4;
constexpr double zoomStep = 1.2;
constexpr int kept = 24; ///< pictures of pages
} // namespace

SheetsPreview::SheetsPreview(QWidget* parent) : QAbstractScrollArea(parent) {
    setObjectName(QStringLiteral("sheetsPreview"));
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Preview of the paper"));
    viewport()->setObjectName(QStringLiteral("sheetsPreviewViewport"));
    connect(&painting_, &QFutureWatcher<Painted>::finished, this, [this] {
        const Painted done = painting_.result();
        if (done.page >= 0)
            keep(done.page, done.scale, done.picture);
        ask();
    });
}

SheetsPreview::~SheetsPreview() {
    painting_.waitForFinished();
}

QSize SheetsPreview::sizeHint() const {
    return {700, 600};
}

void SheetsPreview::show(std::shared_ptr<const SheetSet> sheets) {
    const int page = currentPage();
    sheets_ = std::move(sheets);
    pictures_.clear();
    told_ = -1;
    layOut();
    if (sheets_ && page > 0)
        goTo(std::min(page, static_cast<int>(sheets_->pages.size()) - 1));
    ask();
    viewport()->update();
}

QString SheetsPreview::makingWords() {
    return tr("The pages are being made…");
}

void SheetsPreview::setMaking(bool making) {
    if (making == making_)
        return;
    making_ = making;
    viewport()->update();
}

double SheetsPreview::pixelsPerMm(std::size_t page) const {
    if (zoom_ > 0)
        return zoom_ * physicalDpiX() / 25.4;
    // Each by its own width, so that one that lies makes none of the others smaller. A page is never blown up
    // beyond its size just because the window is wide.
    const double width = sheets_ && page < sheets_->pages.size() ? sheets_->pages[page].width : 210;
    const double fitting = (viewport()->width() - 2.0 * around) / width;
    return std::clamp(fitting, leastZoom * physicalDpiX() / 25.4, 1.5 * physicalDpiX() / 25.4);
}

QRect SheetsPreview::placeOf(std::size_t page) const {
    const double scale = pixelsPerMm(page);
    const Page& one = sheets_->pages[page];
    const int w = qRound(one.width * scale), h = qRound(one.height * scale);
    return {(std::max(width_, viewport()->width()) - w) / 2, tops_[page], w, h};
}

void SheetsPreview::layOut() {
    tops_.clear();
    width_ = 0;
    int y = around;
    if (sheets_)
        for (std::size_t i = 0; i < sheets_->pages.size(); ++i) {
            const Page& page = sheets_->pages[i];
            const double scale = pixelsPerMm(i);
            tops_.push_back(y);
            y += qRound(page.height * scale) + around;
            width_ = std::max(width_, qRound(page.width * scale) + 2 * around);
        }
    height_ = y;
    verticalScrollBar()->setRange(0, std::max(0, height_ - viewport()->height()));
    verticalScrollBar()->setPageStep(viewport()->height());
    verticalScrollBar()->setSingleStep(40);
    horizontalScrollBar()->setRange(0, std::max(0, width_ - viewport()->width()));
    horizontalScrollBar()->setPageStep(viewport()->width());
    horizontalScrollBar()->setSingleStep(40);
}

int SheetsPreview::currentPage() const {
    // The one in the middle of the window.
    const int middle = verticalScrollBar()->value() + viewport()->height() / 3;
    const auto after = std::upper_bound(tops_.begin(), tops_.end(), middle);
    return std::max(0, static_cast<int>(after - tops_.begin()) - 1);
}

void SheetsPreview::goTo(int page) {
    if (page >= 0 && static_cast<std::size_t>(page) < tops_.size())
        verticalScrollBar()->setValue(tops_[static_cast<std::size_t>(page)] - around);
}

bool SheetsPreview::ready(int page) const {
    const auto found = pictures_.find(page);
    return found != pictures_.end() &&
           found->scale == pixelsPerMm(static_cast<std::size_t>(page)) * devicePixelRatioF();
}

void SheetsPreview::setZoom(double zoom) {
    zoom = zoom <= 0 ? 0 : std::clamp(zoom, leastZoom, mostZoom);
    if (zoom == zoom_)
        return;
    // What was at the top third stays there.
    const double at = (verticalScrollBar()->value() + viewport()->height() / 3.0) / std::max(height_, 1);
    zoom_ = zoom;
    layOut();
    verticalScrollBar()->setValue(qRound(at * height_ - viewport()->height() / 3.0));
    ask();
    viewport()->update();
    Q_EMIT zoomed();
}

void SheetsPreview::step(int steps) {
    const double now = pixelsPerMm(static_cast<std::size_t>(currentPage())) * 25.4 / physicalDpiX();
    setZoom(now * std::pow(zoomStep, steps));
}

/// Has the first page painted that is in sight and not ready, or the one beside them; one at a time, so that
/// what comes into sight meanwhile is next.
void SheetsPreview::ask() {
    if (!sheets_ || painting_.isRunning() || !isVisible())
        return;
    const int top = verticalScrollBar()->value(), bottom = top + viewport()->height();
    int wanted = -1;
    // In sight first, then a window's height below and above.
    for (const int margin : {0, viewport()->height()}) {
        for (std::size_t i = 0; i < tops_.size() && wanted < 0; ++i) {
            const QRect place = placeOf(i);
            if (place.bottom() >= top - margin && place.top() <= bottom + margin && !ready(static_cast<int>(i)))
                wanted = static_cast<int>(i);
        }
        if (wanted >= 0)
            break;
    }
    if (wanted < 0)
        return;
    const double scale = pixelsPerMm(static_cast<std::size_t>(wanted)) * devicePixelRatioF();
    painting_.setFuture(QtConcurrent::run([sheets = sheets_, wanted, scale] {
        const Page& page = sheets->pages[static_cast<std::size_t>(wanted)];
        return Painted{wanted, scale, pagePicture(page, sheets->plan, scale, sheets->options.grey)};
    }));
}

void SheetsPreview::keep(int page, double scale, const QImage& picture) {
    // A picture of pages that are no longer shown is of no use; its size tells.
    if (!sheets_ || static_cast<std::size_t>(page) >= sheets_->pages.size() ||
        scale != pixelsPerMm(static_cast<std::size_t>(page)) * devicePixelRatioF())
        return;
    pictures_.insert(page, {page, scale, picture});
    while (pictures_.size() > kept) {
        const int here = currentPage();
        const auto furthest =
            std::max_element(pictures_.begin(), pictures_.end(), [&](const auto& a, const auto& b) {
                return std::abs(a.page - here) < std::abs(b.page - here);
            });
        pictures_.erase(furthest);
    }
    viewport()->update();
}

void SheetsPreview::paintEvent(QPaintEvent*) {
    QPainter painter(viewport());
    painter.fillRect(viewport()->rect(), look::line);
    if (making_ && tops_.empty()) {
        painter.setPen(look::ink);
        painter.drawText(viewport()->rect(), Qt::AlignCenter, makingWords());
    }
    if (!sheets_)
        return;
    painter.translate(-horizontalScrollBar()->value(), -verticalScrollBar()->value());
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    const QRect seen =
        viewport()->rect().translated(horizontalScrollBar()->value(), verticalScrollBar()->value());
    for (std::size_t i = 0; i < tops_.size(); ++i) {
        const QRect place = placeOf(i);
        if (!place.intersects(seen))
            continue;
        painter.fillRect(place.translated(2, 3), look::faint);
        painter.fillRect(place, Qt::white);
        const auto found = pictures_.find(static_cast<int>(i));
        if (found != pictures_.end()) {
            // One of another size serves until the right one is there.
            painter.drawImage(place, found->picture);
        } else {
            painter.setPen(look::quiet);
            painter.drawText(place, Qt::AlignCenter, tr("Page %1 is being painted…").arg(i + 1));
        }
    }
    if (hasFocus()) {
        painter.resetTransform();
        painter.setPen(QPen(look::focus, 2));
        painter.drawRect(viewport()->rect().adjusted(1, 1, -1, -1));
    }
    const int page = currentPage();
    if (page != told_) {
        told_ = page;
        Q_EMIT pageChanged(page, static_cast<int>(tops_.size()));
    }
    ask();
}

void SheetsPreview::resizeEvent(QResizeEvent* event) {
    QAbstractScrollArea::resizeEvent(event);
    layOut();
    ask();
}

void SheetsPreview::scrollContentsBy(int, int) {
    viewport()->update();
    ask();
}

void SheetsPreview::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        step(1);
        return;
    case Qt::Key_Minus:
        step(-1);
        return;
    case Qt::Key_0:
        setZoom(0);
        return;
    case Qt::Key_1:
        setZoom(1);
        return;
    case Qt::Key_PageDown:
    case Qt::Key_Space:
        goTo(std::min(currentPage() + 1, static_cast<int>(tops_.size()) - 1));
        return;
    case Qt::Key_PageUp:
    case Qt::Key_Backspace:
        goTo(std::max(currentPage() - 1, 0));
        return;
    case Qt::Key_Home:
        goTo(0);
        return;
    case Qt::Key_End:
        goTo(static_cast<int>(tops_.size()) - 1);
        return;
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

void SheetsPreview::wheelEvent(QWheelEvent* event) {
    if (event->modifiers() & Qt::ControlModifier) {
        step(event->angleDelta().y() > 0 ? 1 : -1);
        event->accept();
        return;
    }
    QAbstractScrollArea::wheelEvent(event);
}

} // namespace stemwright

#include "app/best_standing.h"

#include "app/session.h"
#include "core/suggest/spread.h"

#include <QtConcurrent>

namespace stemwright {

namespace {

/// Enough for every board whose tray is empty, and for most with one.
constexpr std::uint64_t fewSteps = 25;

} // namespace

Best bestOf(const Plan& plan) {
    SpreadOptions options;
    options.trayUse = TrayUse::keep;
    options.search.steps = fewSteps;
    const Result<Suggestion> found = spread(plan, options);
    if (!found)
        return {0, 0, false, 0};
    const Suggestion& best = found.value();
    return {best.after, best.bound, best.proved, figures(taken(plan, best)).pot.drift};
}

BestStanding::BestStanding(Session& session, QObject* parent) : QObject(parent), session_(session) {
    connect(&session_, &Session::changed, this, &BestStanding::refresh);
    refresh();
}

BestStanding::~BestStanding() {
    if (watcher_)
        watcher_->waitForFinished();
}

void BestStanding::refresh() {
    if (session_.figures().pot.slots <= atOnce) {
        stale_ = false;
        best_ = bestOf(session_.plan());
        Q_EMIT changed();
        return;
    }
    best_.reset();
    Q_EMIT changed();
    // One at a time: edits that come meanwhile are worked out together when it is done.
    if (watcher_ && watcher_->isRunning()) {
        stale_ = true;
        return;
    }
    stale_ = false;
    watcher_ = std::make_unique<QFutureWatcher<Best>>();
    connect(watcher_.get(), &QFutureWatcher<Best>::finished, this, [this] {
        if (stale_) {
            // The watcher that calls this must not be replaced under its feet.
            QMetaObject::invokeMethod(this, &BestStanding::refresh, Qt::QueuedConnection);
            return;
        }
        // An edit to a smaller board may have been answered meanwhile.
        if (!best_)
            best_ = watcher_->result();
        Q_EMIT changed();
    });
    watcher_->setFuture(QtConcurrent::run([plan = session_.plan()] { return bestOf(plan); }));
}

} // namespace stemwright

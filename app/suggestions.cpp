#include "app/suggestions.h"

#include "app/messages.h"
#include "app/session.h"
#include "app/wording.h"
#include "core/suggest/order.h"
#include "core/suggest/spread.h"

#include <QtConcurrent>

namespace stemwright {

namespace {

QString arrow(const QString& before, const QString& after) {
    return QStringLiteral("%1 → %2").arg(before, after);
}

/// What the suggestion changes and how good it is known to be, a line each.
QString figuresOf(const Plan& plan, const Suggestion& found, const WhatIf* whatIf) {
    QStringList lines;
    lines << Suggestions::tr("Unevenness %1").arg(arrow(shareText(found.before), shareText(found.after)));
    if (found.unmatchedBefore || found.unmatchedAfter)
        lines << Suggestions::tr("Unmatched pairs %1")
                     .arg(arrow(countText(found.unmatchedBefore), countText(found.unmatchedAfter)));
    if (found.inversionsBefore || found.inversionsAfter)
        lines << Suggestions::tr("Steps against the colour order %1")
                     .arg(arrow(countText(found.inversionsBefore), countText(found.inversionsAfter)));
    if (whatIf)
        lines << Suggestions::tr("Pot drift %1")
                     .arg(arrow(driftText(whatIf->potDriftBefore), driftText(whatIf->potDriftAfter)));
    lines << Suggestions::tr("%1 leaves change place, %2 come from the tray")
                 .arg(countText(found.moved), countText(found.filled));
    lines << (found.proved ? (found.unmatchedBound > 0 || found.unmatchedBefore > 0
                                  ? Suggestions::tr("Proved: no fewer unmatched pairs, and with so few no less "
                                                    "unevenness.")
                                  : Suggestions::tr("Proved: these leaves allow nothing better."))
                           : Suggestions::tr("Not proved the best: nothing below %1 is possible.")
                                 .arg(shareText(found.bound)));
    for (const Shortage& shortage : found.shortages)
        lines << Suggestions::tr("%1 places stay empty for want of %2 leaves.")
                     .arg(countText(shortage.emptySlots), nameText(plan, shortage.kind));
    return lines.join(QLatin1Char('\n'));
}

} // namespace

Suggestions::Suggestions(Session& session, QObject* parent) : QObject(parent), session_(session) {
    connect(&session_, &Session::changed, this, &Suggestions::abandon);
}

Suggestions::~Suggestions() {
    stop_.request_stop();
    if (watcher_)
        watcher_->waitForFinished();
}

bool Suggestions::looking() const {
    return watcher_ && watcher_->isRunning();
}

void Suggestions::look(const QString& title, Search search) {
    abandon();
    session_.dropOffer();
    title_ = title;
    stop_ = std::stop_source();
    watcher_ = std::make_unique<QFutureWatcher<Found>>();
    connect(watcher_.get(), &QFutureWatcher<Found>::finished, this, [this] { offer(watcher_->result()); });
    Q_EMIT progress(tr("%1: looking …").arg(title));
    stemwright::Search terms;
    terms.stop = stop_.get_token();
    terms.progress = [this, title](const SearchState& state) {
        const QString text =
            tr("%1: best so far %2, none below %3").arg(title, shareText(state.best), shareText(state.bound));
        QMetaObject::invokeMethod(this, [this, text] {
            if (looking())
                Q_EMIT progress(text);
        });
    };
    watcher_->setFuture(QtConcurrent::run([plan = session_.plan(), terms, search = std::move(search)] {
        const Result<Suggestion> result = search(plan, terms);
        return result ? Found{result.value(), std::nullopt} : Found{std::nullopt, result.problem()};
    }));
}

void Suggestions::stop() {
    stop_.request_stop();
}

void Suggestions::abandon() {
    if (!watcher_)
        return;
    stop_.request_stop();
    disconnect(watcher_.get(), nullptr, this, nullptr);
    // The thread ends by itself soon after the stop; nobody waits for its answer any more.
    watcher_.reset();
    Q_EMIT progress({});
}

void Suggestions::offer(const Found& found) {
    Q_EMIT progress({});
    if (found.problem) {
        Q_EMIT said(sentence(*found.problem));
        return;
    }
    const Suggestion& suggestion = *found.suggestion;
    if (suggestion.edits.edits.empty()) {
        Q_EMIT said(suggestion.proved ? tr("%1: these leaves allow nothing better.").arg(title_)
                                      : tr("%1: nothing better was found.").arg(title_));
        return;
    }
    const Result<WhatIf> whatIf = session_.whatIf(Edit(suggestion.edits));
    const WhatIf* known = whatIf ? &whatIf.value() : nullptr;
    session_.showOffer(
        {Edit(suggestion.edits), title_, figuresOf(session_.plan(), suggestion, known), suggestion});
}

void Suggestions::spreadColours(bool matchedPairs) {
    look(matchedPairs ? tr("Spread the colours in matched pairs") : tr("Spread the colours"),
         [matchedPairs](const Plan& plan, const stemwright::Search& search) {
             SpreadOptions options;
             options.matchedPairs = matchedPairs;
             // What stands on the stems stays there; the tray fills the gaps.
             options.trayUse = TrayUse::keep;
             options.search = search;
             return spread(plan, options);
         });
}

void Suggestions::orderTipToBase() {
    look(tr("Order tip to base"), [](const Plan& plan, const stemwright::Search& search) -> Result<Suggestion> {
        OrderOptions options;
        options.search = search;
        return order(plan, options);
    });
}

void Suggestions::shuffle() {
    const std::uint32_t seed = ++shuffles_;
    look(tr("Shuffle, number %1").arg(seed), [seed](const Plan& plan, const stemwright::Search& search) {
        SpreadOptions options;
        options.trayUse = TrayUse::keep;
        options.seed = seed;
        options.search = search;
        return spread(plan, options);
    });
}

} // namespace stemwright

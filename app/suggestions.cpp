#include "app/suggestions.h"

#include "app/messages.h"
#include "app/suggestion_text.h"
#include "app/wording.h"
#include "core/figures/plant_shape.h"
#include "core/figures/pot_findings.h"
#include "core/suggest/order.h"
#include "core/suggest/pot_placing.h"
#include "core/suggest/spread.h"

#include <QtConcurrent>

#include <algorithm>

namespace stemwright {

namespace {

/// So many can still be told apart in a list.
constexpr std::size_t mostKept = 8;

constexpr std::uint64_t shuffleSteps = 10'000;

} // namespace

Suggestions::Suggestions(Session& session, QObject* parent) : QObject(parent), session_(session) {
    connect(&session_, &Session::changed, this, [this] {
        abandon();
        // They were made for the plan as it was.
        kept_.clear();
        Q_EMIT foundChanged();
    });
}

Suggestions::~Suggestions() {
    stop_.request_stop();
    if (watcher_)
        watcher_->waitForFinished();
}

bool Suggestions::looking() const {
    return watcher_ && watcher_->isRunning();
}

void Suggestions::look(const QString& title, Search search, Describe describe) {
    abandon();
    session_.dropOffer();
    title_ = title;
    describe_ = std::move(describe);
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
        Q_EMIT said(suggestion.aim == Aim::places ? placesKept(suggestion.proved)
                    : suggestion.proved           ? tr("%1: these leaves allow nothing better.").arg(title_)
                                                  : tr("%1: nothing better was found.").arg(title_));
        return;
    }
    const BeforeAfter plans(session_.plan(), suggestion.edits);
    keep({Edit(suggestion.edits), title_,
          describe_ ? describe_(suggestion) : suggestionLines(plans, suggestion).join(QLatin1Char('\n')),
          suggestion});
    session_.showOffer(kept_.back());
    Q_EMIT foundChanged();
}

QString Suggestions::placesKept(bool proved) const {
    // Which stem stands where is one thing, whether leaves meet there another.
    const Plan& plan = session_.plan();
    const std::vector<Finding> found = potFindings(plan, plantBody(plan));
    const bool meet = std::any_of(found.begin(), found.end(), [](const Finding& finding) {
        return finding.code == FindingCode::leavesTouch;
    });
    const QString said = proved ? tr("%1: no other order on even places is better").arg(title_)
                                : tr("%1: no better order on even places was found").arg(title_);
    return meet ? tr("%1; leaves that meet need more room.").arg(said) : tr("%1.").arg(said);
}

void Suggestions::keep(Offer offer) {
    std::erase_if(kept_, [&](const Offer& other) { return other.edit == offer.edit; });
    const auto known = [this](const QString& title) {
        return std::any_of(kept_.begin(), kept_.end(),
                           [&](const Offer& other) { return other.title == title; });
    };
    // Two that came of one command are told apart by a number.
    const QString title = offer.title;
    for (int number = 2; known(offer.title); ++number)
        offer.title = tr("%1, number %2").arg(title).arg(number);
    if (kept_.size() >= mostKept)
        kept_.erase(kept_.begin());
    kept_.push_back(std::move(offer));
}

void Suggestions::spreadColours(bool matchedPairs) {
    // Where nothing stands yet, no leaf has to move for a pair, and pairs are what the tiers are for.
    const bool fresh = session_.figures().pot.leaves == 0;
    look(matchedPairs ? tr("Spread the colours in matched pairs") : tr("Spread the colours"),
         [pairs = matchedPairs || fresh](const Plan& plan, const stemwright::Search& search) {
             SpreadOptions options;
             options.matchedPairs = pairs;
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
    look(tr("Shuffle, number %1").arg(seed),
         [seed](const Plan& plan, const stemwright::Search& search) -> Result<Suggestion> {
             // Any answer as good as today's will do, so the proof need not be waited for.
             stemwright::Search quick = search;
             quick.steps = shuffleSteps;
             Result<Suggestion> pairs = stemwright::shuffle(plan, seed, true, quick);
             // A board that was spread without heed to pairs stays as even as it is.
             if (!pairs || pairs.value().after <= pairs.value().before + 1e-9)
                 return pairs;
             return stemwright::shuffle(plan, seed, false, search);
         });
}

void Suggestions::varyHeights(const HeightsOptions& options, bool fills, bool matchedPairs) {
    look(tr("Vary the heights"),
         [options, fills, matchedPairs](const Plan& plan, const stemwright::Search& search) {
             if (!fills)
                 return heights(plan, options);
             SpreadOptions filling;
             filling.matchedPairs = matchedPairs;
             filling.search = search;
             return heightsFilled(plan, options, filling);
         });
}

void Suggestions::startMeOff(const StartOptions& options) {
    look(tr("Start me off"), [options](const Plan& plan, const stemwright::Search& search) {
        StartOptions now = options;
        now.spread.search = search;
        return stemwright::startMeOff(plan, now);
    });
}

void Suggestions::placeInPot() {
    const std::uint32_t seed = placings_++;
    look(
        tr("Place in the pot"),
        [seed](const Plan& plan, const stemwright::Search& search) -> Result<Suggestion> {
            PlacingOptions options;
            options.viewedFrom = plan.pot.viewedFrom;
            options.seed = seed;
            const std::uint64_t steps = options.search.steps;
            options.search = search;
            options.search.steps = steps;
            return stemwright::placeInPot(plan, options);
        },
        [](const Suggestion& found) {
            QStringList lines;
            const auto cost = [](double value) { return QLocale().toString(value, 'f', 2); };
            lines << tr("Places for heights, likeness of neighbours: together %1; less is better")
                         .arg(QStringLiteral("%1 → %2").arg(cost(found.before), cost(found.after)));
            lines << tr("%1 stems change place").arg(countText(found.moved));
            lines << (found.proved
                          ? tr("Proved: no other order on even places is better.")
                          : tr("Not proved the best: nothing below %1 is possible.").arg(cost(found.bound)));
            return lines.join(QLatin1Char('\n'));
        });
}

} // namespace stemwright

#pragma once

#include "app/session.h"
#include "core/suggest/start.h"

#include <QFutureWatcher>
#include <QObject>
#include <QString>

#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

namespace stemwright {

/// Looks for suggestions away from the window's thread, one at a time, and offers what it found over the board.
/// An edit made meanwhile ends the search, since its answer would be to another plan.
class Suggestions : public QObject {
    Q_OBJECT
public:
    using Search = std::function<Result<Suggestion>(const Plan&, const stemwright::Search&)>;

    explicit Suggestions(Session& session, QObject* parent = nullptr);
    ~Suggestions() override;

    /// What a suggestion changes and how good it is known to be, a line each.
    using Describe = std::function<QString(const Suggestion&)>;

    /// Starts a search; one that is running is stopped and forgotten. `describe` stands in for the words about
    /// unevenness and leaves.
    void look(const QString& title, Search search, Describe describe = {});
    /// Ends the search and offers the best it has.
    void stop();
    bool looking() const;

    void spreadColours(bool matchedPairs);
    void orderTipToBase();
    /// Another answer of equal figures, drawn by a seed that is told.
    void shuffle();
    /// With `fills`, the places that open get leaves from the tray.
    void varyHeights(const HeightsOptions& options, bool fills, bool matchedPairs);
    void startMeOff(const StartOptions& options);
    /// Which stem stands where; asked again, another one of equally good answers.
    void placeInPot();

    /// What was found for the plan as it is, the last one last; so that two can be compared.
    const std::vector<Offer>& found() const { return kept_; }

Q_SIGNALS:
    /// Text for a line of progress; empty when nothing runs.
    void progress(const QString& text);
    /// The plan is already as good as can be, or the search had no answer: a sentence.
    void said(const QString& sentence);
    void foundChanged();

private:
    struct Found {
        std::optional<Suggestion> suggestion;
        std::optional<Problem> problem;
    };
    void offer(const Found& found);
    void keep(Offer offer);
    /// What is said where no better order of the stems in the pot was found.
    QString placesKept(bool proved) const;
    void abandon();

    Session& session_;
    QString title_;
    Describe describe_;
    std::stop_source stop_;
    std::unique_ptr<QFutureWatcher<Found>> watcher_;
    std::uint32_t shuffles_ = 0;
    std::vector<Offer> kept_;
    std::uint32_t placings_ = 0;
};

} // namespace stemwright

#pragma once

#include "core/suggest/suggestion.h"

#include <QFutureWatcher>
#include <QObject>
#include <QString>

#include <functional>
#include <memory>
#include <optional>
#include <stop_token>

namespace stemwright {

class Session;

/// Looks for suggestions away from the window's thread, one at a time, and offers what it found over the board.
/// An edit made meanwhile ends the search, since its answer would be to another plan.
class Suggestions : public QObject {
    Q_OBJECT
public:
    using Search = std::function<Result<Suggestion>(const Plan&, const stemwright::Search&)>;

    explicit Suggestions(Session& session, QObject* parent = nullptr);
    ~Suggestions() override;

    /// Starts a search; one that is running is stopped and forgotten.
    void look(const QString& title, Search search);
    /// Ends the search and offers the best it has.
    void stop();
    bool looking() const;

    void spreadColours(bool matchedPairs);
    void orderTipToBase();
    /// Another answer of equal figures, drawn by a seed that is told.
    void shuffle();

Q_SIGNALS:
    /// Text for a line of progress; empty when nothing runs.
    void progress(const QString& text);
    /// The plan is already as good as can be, or the search had no answer: a sentence.
    void said(const QString& sentence);

private:
    struct Found {
        std::optional<Suggestion> suggestion;
        std::optional<Problem> problem;
    };
    void offer(const Found& found);
    void abandon();

    Session& session_;
    QString title_;
    std::stop_source stop_;
    std::unique_ptr<QFutureWatcher<Found>> watcher_;
    std::uint32_t shuffles_ = 0;
};

} // namespace stemwright

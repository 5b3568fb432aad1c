#pragma once

#include "core/plan/plan.h"

#include <QFutureWatcher>
#include <QObject>

#include <memory>
#include <optional>

namespace stemwright {

class Session;

/// The least unevenness that the leaves on the stems allow, and the drift that the pot would then have.
struct Best {
    double unevenness = 0; ///< of an answer that exists
    double bound = 0;      ///< nothing is below; equal to unevenness where that is proved
    bool proved = true;
    double drift = 0; ///< of that answer
};

/// As spread() gives it for the leaves that are on stems, with few steps: well within a frame on a usual board.
Best bestOf(const Plan& plan);

/// Knows the best beside the plan that is open. On usual boards it knows it as soon as the plan has changed; on
/// large ones it is worked out away from the window's thread, and told when it is there.
class BestStanding : public QObject {
    Q_OBJECT
public:
    explicit BestStanding(Session& session, QObject* parent = nullptr);
    ~BestStanding() override;

    /// Nothing while it is being worked out.
    const std::optional<Best>& best() const { return best_; }

    /// Leaves and places up to which it is worked out at once; both were measured (tests/bench).
    static constexpr int atOnce = 600;

Q_SIGNALS:
    void changed();

private:
    void refresh();

    Session& session_;
    std::optional<Best> best_;
    std::unique_ptr<QFutureWatcher<Best>> watcher_;
    bool stale_ = false;
};

} // namespace stemwright

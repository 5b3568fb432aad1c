#pragma once

#include "core/suggest/suggestion.h"

#include <chrono>

namespace stemwright {

/// Counts a search's steps and says when it must end; see Search.
class Budget {
public:
    explicit Budget(const Search& search) : search_(search), start_(Clock::now()), reported_(start_) {}

    /// Takes one step; false where none is left.
    bool step() {
        if (ended_)
            return false;
        ++steps_;
        if (steps_ > search_.steps || search_.stop.stop_requested())
            ended_ = true;
        else if (search_.limit && Clock::now() - start_ > *search_.limit)
            ended_ = true;
        return !ended_;
    }
    bool ended() const { return ended_; }
    std::uint64_t steps() const { return steps_; }
    bool watched() const { return static_cast<bool>(search_.progress); }

    /// Tells who watches, at most every 50 ms.
    void tell(double best, double bound) {
        if (!watched())
            return;
        const auto now = Clock::now();
        if (now - reported_ < std::chrono::milliseconds(50))
            return;
        reported_ = now;
        search_.progress({best, bound, steps_});
    }

private:
    using Clock = std::chrono::steady_clock;
    const Search& search_;
    Clock::time_point start_;
    Clock::time_point reported_;
    std::uint64_t steps_ = 0;
    bool ended_ = false;
};

} // namespace stemwright

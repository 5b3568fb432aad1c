#pragma once

#include "core/plan/edit.h"

#include <cstddef>
#include <vector>

namespace stemwright {

/// A plan with the edits that led to it. Undo applies the inverse of the last one, redo the edit again.
class History {
public:
    explicit History(Plan plan);

    const Plan& plan() const { return plan_; }

    /// Makes the edit; where it cannot be made the plan and the history are unchanged and the problem says why.
    /// What could be redone is forgotten. An edit that changes nothing is made but not remembered.
    std::optional<Problem> make(Edit edit);

    /// How many edits lie behind the plan: one more after each that is remembered.
    std::size_t steps() const { return done_; }
    bool canUndo() const { return done_ > 0; }
    bool canRedo() const { return done_ < steps_.size(); }
    /// The edit that undo would take back, or redo make again; only where it can.
    const Edit& toUndo() const { return steps_[done_ - 1].forward; }
    const Edit& toRedo() const { return steps_[done_].forward; }
    /// Each gives the edit that it applied.
    const Edit& undo();
    const Edit& redo();

    /// Whether the plan is what it was when it was last marked clean (saved); a new history is clean.
    bool clean() const { return clean_ == done_; }
    void markClean() { clean_ = done_; }

private:
    struct Step {
        Edit forward;
        Edit back;
    };
    static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

    Plan plan_;
    std::vector<Step> steps_;
    std::size_t done_ = 0;
    std::size_t clean_ = 0;
};

} // namespace stemwright

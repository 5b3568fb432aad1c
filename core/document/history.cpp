#include "core/document/history.h"

#include <cassert>

namespace stemwright {

namespace {

/// An edit that sets what was there already has an inverse equal to itself. So has a swap, which does change
/// something, and therefore a batch of swaps.
bool changesNothing(const Edit& edit, const Edit& back) {
    if (std::holds_alternative<SwapSlots>(edit.what))
        return false;
    const auto* batch = std::get_if<Batch>(&edit.what);
    if (!batch)
        return edit == back;
    const auto& undone = std::get<Batch>(back.what).edits;
    for (std::size_t i = 0; i < batch->edits.size(); ++i)
        if (!changesNothing(batch->edits[i], undone[undone.size() - 1 - i]))
            return false;
    return true;
}

} // namespace

History::History(Plan plan) : plan_(std::move(plan)) {}

std::optional<Problem> History::make(Edit edit) {
    Result<Edit> back = apply(plan_, edit);
    if (!back)
        return back.problem();
    if (changesNothing(edit, back.value()))
        return std::nullopt;
    if (clean_ != nowhere && clean_ > done_)
        clean_ = nowhere;
    steps_.erase(steps_.begin() + static_cast<std::ptrdiff_t>(done_), steps_.end());
    steps_.push_back({std::move(edit), std::move(back).value()});
    ++done_;
    return std::nullopt;
}

const Edit& History::undo() {
    assert(canUndo());
    const Edit& back = steps_[--done_].back;
    [[maybe_unused]] const auto forward = apply(plan_, back);
    assert(forward.ok());
    return back;
}

const Edit& History::redo() {
    assert(canRedo());
    const Edit& forward = steps_[done_++].forward;
    [[maybe_unused]] const auto back = apply(plan_, forward);
    assert(back.ok());
    return forward;
}

} // namespace stemwright

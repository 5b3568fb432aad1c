#pragma once

#include "core/plan/edit.h"

#include <deque>
#include <vector>

namespace stemwright {

/// Copies of the few stems that a gesture touches, changed step by step while the edits that do the same to the
/// plan are collected. Indices must be good; checking them is the caller's.
class StemDraft {
public:
    explicit StemDraft(const Plan& plan) : plan_(plan) {}

    /// The stem as it is by now.
    const Stem& stem(StemId id);

    void open(StemId stem, int index, Tier tier);
    void close(StemId stem, int index);
    void move(StemId from, int index, int count, StemId to, int toIndex);
    void turn(StemId stem, int index, Angle turn);
    void swap(SlotRef a, SlotRef b);
    void fill(SlotRef at, Leaf leaf);

    /// Turns the tiers of every touched stem whose tiers alternated before the gesture so that they do again:
    /// those above the first change keep their turns, those below follow.
    void turnAgain();

    Edit asOne(Deed deed) &&;
    bool empty() const { return edits_.empty(); }

private:
    struct Copy {
        Stem stem;
        bool alternated = false;
    };
    Copy& copy(StemId id);
    Slot& slot(SlotRef at);

    const Plan& plan_;
    std::deque<Copy> copies_; ///< a deque, so that stem()'s references last
    std::vector<Edit> edits_;
};

} // namespace stemwright

#pragma once

#include "core/plan/edit.h"
#include "core/plan/plan.h"

#include <chrono>
#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <vector>

namespace stemwright {

/// What a running search has reached.
struct SearchState {
    double best = 0;  ///< unevenness of the best answer so far
    double bound = 0; ///< no answer has less
    std::uint64_t steps = 0;
};

/// How long a search may take, and who watches it. With steps alone the same plan gives the same suggestion on
/// every machine; a time limit or a stop breaks that, which is why none is the default.
struct Search {
    /// One step is one sharing-out problem solved, or given up as too dear.
    std::uint64_t steps = 300'000;
    std::optional<std::chrono::milliseconds> limit;
    std::stop_token stop;
    /// Called from the searching thread, at most about twenty times a second.
    std::function<void(const SearchState&)> progress;
};

/// A kind of which there are fewer leaves than slots that want one.
struct Shortage {
    KindId kind;
    int emptySlots = 0; ///< that stay empty

    friend bool operator==(const Shortage&, const Shortage&) = default;
};

/// What a suggestion is the best in, where it is proved.
enum class Aim {
    unevenness, ///< the least
    pairs,      ///< the fewest unmatched pairs, and with so few the least unevenness
    order,      ///< the fewest inversions, and with so few the fewest unmatched pairs
    pairsOrder, ///< the fewest unmatched pairs of each stem's leaves, and with so few the fewest inversions
    heights,    ///< what heights.h says
    places,     ///< what pot_placing.h says
    several,    ///< each step in what it is for, after the ones before it
};

/// A changed plan, shown before it is taken: the edits that lead there (none where the plan is already as good
/// as can be), and its figures before and after. Unevenness is that of the whole pot as core/figures counts it.
struct Suggestion {
    Batch edits{Deed::suggestion, {}};
    Aim aim = Aim::unevenness;
    double before = 0;
    double after = 0;
    /// No answer has less. Equal to `after` where that is proved the best.
    double bound = 0;
    /// Unmatched pairs of the whole plan, as its findings count them. The bound is 0 where pairs were not asked
    /// for; where it is below unmatchedAfter, `bound` is not known better than 0.
    int unmatchedBefore = 0;
    int unmatchedAfter = 0;
    int unmatchedBound = 0;
    /// Inversions of the whole plan; by placeInPot, which moves no leaf, not counted. The bound is 0 where
    /// order was not asked for.
    std::int64_t inversionsBefore = 0;
    std::int64_t inversionsAfter = 0;
    std::int64_t inversionsBound = 0;
    /// Neighbours in height closer than the difference asked for, where one was.
    bool differenceAsked = false;
    int closeBefore = 0;
    int closeAfter = 0;
    int closeBound = 0;
    /// The answer is the best there is, in what the function that made it says is the best.
    bool proved = true;
    /// The search ended early: by its steps, its limit or its stop.
    bool stopped = false;
    /// Slots that held a leaf and get another one, or none.
    int moved = 0;
    /// Slots that were empty and get a leaf.
    int filled = 0;
    std::vector<Shortage> shortages;
    std::uint64_t steps = 0;
};

/// The plan as it would be if the suggestion were taken. The plan must be the one it was made for.
Plan taken(const Plan& plan, const Suggestion& suggestion);

/// The edits that bring one stem alone to what the suggestion gives it. A leaf that it needs comes from a slot
/// that the suggestion changes too, which gets in exchange what this one gives up (first of all one that the
/// suggestion gives just that), or from the tray. Slots that the suggestion leaves alone stay as they are. Only
/// for suggestions that keep every stem's tiers (spread and order); others give noSuchTier. An id that no stem
/// has gives noSuchStem.
Result<Batch> takenForStem(const Plan& plan, const Suggestion& suggestion, StemId stem);

} // namespace stemwright

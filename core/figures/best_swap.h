#pragma once

#include "core/figures/plan_tables.h"
#include "core/plan/plan.h"

#include <memory>
#include <optional>
#include <vector>

namespace stemwright {

/// Two leaves that would do better in each other's place.
struct Swap {
    SlotRef a;
    SlotRef b;
    /// What the swap adds to the pot's unevenness: below 0.
    double change = 0;

    friend bool operator==(const Swap&, const Swap&) = default;
};

/// Which swaps are looked at: all, those that a stem takes part in, or those in which that stem gives a leaf of
/// one kind and mix.
struct SwapScope {
    StemId stem{};
    std::optional<Leaf> gives = std::nullopt; ///< only heeded with a stem
};

/// Of all swaps of two leaves of one kind between two stems, the one that lessens the pot's unevenness most.
/// Found exactly: swapping a leaf of mix i on stem a with one of mix j on stem b changes nothing but four
/// counts, and with d = x − n·m/M the change of the unevenness is 4 + 2 (d(b,i) − d(a,i) + d(a,j) − d(b,j)), so
/// that for each two stems the best i and the best j are found apart; in whole numbers, M·d. Pinned slots,
/// locked stems and bound tiers stay as they are. Of equally good swaps: the one of the earlier kind, then of
/// the stems with the smaller ids, then of the earlier lines of stock; on each stem the place that bestPlace()
/// says. `a` is on the stem with the smaller id. Nothing where no swap helps.
std::optional<Swap> bestSwap(const Plan& plan, const PlanTables& tables, const SwapScope& scope = {});
std::optional<Swap> bestSwap(const Plan& plan, const SwapScope& scope = {});

/// The same for many scopes of one plan: the leaves are counted once. Plan and tables must outlive it.
class SwapFinder {
public:
    SwapFinder(const Plan& plan, const PlanTables& tables);
    ~SwapFinder();
    SwapFinder(SwapFinder&&) noexcept;
    SwapFinder& operator=(SwapFinder&&) noexcept;

    /// Which leaves change places, without the places: much cheaper.
    struct Trade {
        StemId a, b;
        Leaf aGives, bGives;
        double change = 0;
    };
    std::optional<Trade> bestTrade(const SwapScope& scope = {}) const;
    std::optional<Swap> best(const SwapScope& scope = {}) const;

private:
    struct State;
    std::unique_ptr<State> state_;
};

/// A stem's leaves that may be moved, by line (PlanTables::lines), from tip to base.
std::vector<std::vector<SlotRef>> freeLeaves(const PlanTables& tables, const Stem& stem);

/// Among places of one stem that are one as good as the other for the balance (at least one): where the new
/// leaf leaves fewest unmatched pairs, and then fewest inversions; of equal ones the first.
SlotRef bestPlace(const Plan& plan, const PlanTables& tables, const Stem& stem,
                  const std::vector<SlotRef>& places, Leaf in);

} // namespace stemwright

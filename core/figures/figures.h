#pragma once

#include "core/figures/hold.h"
#include "core/figures/wrap.h"
#include "core/plan/edit.h"
#include "core/plan/plan.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace stemwright {

// Every figure is a function of the plan alone. Lists that go "by line" follow tray(plan): every line of every
// kind's stock; those that go "by colour" follow plan.colours; those that go "by wrap" follow
// plan.binding.wraps.

struct StemFigures {
    StemId stem;
    /// From the clay line to the highest point, which a long leaf below the tip may be, as if the stem stood
    /// straight up: its pose is left out. Of a stem without tiers the top of its tail (core/figures/height.h).
    Length height;
    int tiers = 0;
    int slots = 0;
    int leaves = 0;
    std::vector<int> held;         ///< leaves, by line
    std::vector<double> fairShare; ///< leaves, by line: n·m/M; 0 where the board holds none of the kind
    /// Σ (held − fair share)² over the lines; 0 for a stem without leaves.
    double unevenness = 0;
    /// ΔE00, the earth mover's distance between the stem's beads and the pot's by colour; 0 without leaves.
    double drift = 0;
    std::vector<std::int64_t> beads; ///< by colour
    /// Pairs of leaves of one kind that stand against the order of its stock lines, over all kinds.
    int inversions = 0;
    /// Tiers that are pairs of unlike leaves (arrangement.h).
    int unmatchedPairs = 0;
    /// Leaf wires in the stem's foot.
    int wires = 0;
    /// The bundle at the foot: the wires and the core, without wraps.
    Length bundle;
    /// Wire in the leaves that stand on it.
    Length leafWire;
    std::vector<WrapFigures> wraps; ///< by wrap
    /// Weight, and whether it stands by itself.
    HoldFigures hold;
};

struct PotFigures {
    int stems = 0;
    int slots = 0;
    int leaves = 0; ///< on stems
    std::int64_t inTray = 0;
    double unevenness = 0; ///< sum over the stems
    /// Mean of the stems' drifts, each weighted by its beads; 0 for a board without leaves.
    double drift = 0;
    // The skyline is that of the stems that have a tier, each as if straight up; all 0 where none has.
    Length shortest;
    Length tallest;
    Length meanHeight;
    /// Coefficient of variation of the heights, s / mean with n − 1; 0 for fewer than two stems.
    double heightVariation = 0;
    /// Pairs of stems whose heights are closer than `nearTwin` of findings.h.
    int nearTwins = 0;
    std::vector<std::int64_t> beads;    ///< on stems, by colour
    std::vector<std::int64_t> allBeads; ///< of all stock, by colour
    Length leafWire;                    ///< of the leaves on stems
    Length allLeafWire;                 ///< of all stock
    std::int64_t toMake = 0;            ///< leaves that are not made yet: stillToMake() of core/plan/making.h
    std::vector<WrapFigures> wraps;     ///< sums over the stems, by wrap
    Mass mass;                          ///< of the stems above the clay
};

struct Figures {
    std::vector<TrayLine> lines;
    std::vector<StemFigures> stems; ///< in the plan's order
    PotFigures pot;
};

/// All of it, from nothing. The plan must be valid.
Figures figures(const Plan& plan);

/// A stem before and after an edit that has not been made.
struct StemWhatIf {
    StemId stem;
    double driftBefore = 0, driftAfter = 0;
    double unevennessBefore = 0, unevennessAfter = 0;
    Length heightBefore, heightAfter;
    int leavesBefore = 0, leavesAfter = 0;
    int inversionsBefore = 0, inversionsAfter = 0;
    int unmatchedBefore = 0, unmatchedAfter = 0; ///< pairs
};

struct WhatIf {
    std::vector<StemWhatIf> stems; ///< the stems that the edit reaches, in the plan's order
    double potDriftBefore = 0, potDriftAfter = 0;
    double potUnevennessBefore = 0, potUnevennessAfter = 0;
    Length shortestBefore, shortestAfter, tallestBefore, tallestAfter;
    std::int64_t inversionsBefore = 0, inversionsAfter = 0; ///< of all stems together
    std::int64_t unmatchedBefore = 0, unmatchedAfter = 0;   ///< likewise, pairs
};

/// Keeps the figures of a plan that changes by edits, and answers what an edit would do, at the cost of what it
/// touches rather than of the whole board. Gives to the last digit what figures() gives.
class Reckoner {
public:
    explicit Reckoner(Plan plan);
    ~Reckoner();
    Reckoner(Reckoner&&) noexcept;
    Reckoner& operator=(Reckoner&&) noexcept;

    const Plan& plan() const;
    const Figures& figures() const;

    /// The plan has become `after`; `reach` says what may differ.
    void follow(const Plan& after, const Reach& reach);
    /// What the edit would do; the problem where it cannot be made. Leaves plan and figures as they are. For
    /// edits whose reach is everything `stems` lists every stem that is there before and after.
    Result<WhatIf> whatIf(const Edit& edit);

private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace stemwright

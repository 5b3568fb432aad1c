#pragma once

#include "core/plan/stem.h"

#include <span>
#include <vector>

namespace stemwright {

// How a stem's tiers face and what stands across from what.

/// Directions closer than this are one: what a hand can tell by eye (own choice, no source).
inline constexpr Angle facingTolerance = degrees(10);

/// Whether a tier faces as the one above it does, on a stem whose arrangement turns: less than half of the
/// arrangement's turn apart, so that a tier is told from its place by the side it is nearer to. On a spiral,
/// where makers take many turns for the golden one, within facingTolerance. Never on a stem in one plane.
bool facesLikeAbove(const StemForm& form, const Tier& above, const Tier& tier);

/// The turn in which a one-plane stem lies: the first of those that most of its tiers share, to the degree.
/// 0 without tiers.
Angle planeOfStem(const Stem& stem);

/// Whether a tier of a one-plane stem is turned out of that plane by more than facingTolerance.
bool isOutOfPlane(Angle plane, const Tier& tier);

/// Whether the tier is a pair of leaves of unlike kind or mix, on a stem whose tiers are pairs.
bool isUnmatchedPair(const StemForm& form, const Tier& tier);

/// Counts the leaves that stand against an order, one kind's at a time from tip to base. Leaves of one tier are
/// beside each other and never against it.
class InversionCounter {
public:
    /// Begins a stem; the kind's order has that many places.
    void begin(int places);
    /// A leaf of the tier at hand, by its place in the order from 0.
    void add(int place) { tier_.push_back(place); }
    void endTier();
    int inversions() const { return inversions_; }

private:
    std::vector<int> above_; ///< leaves above, by place
    std::vector<int> tier_;
    int inversions_ = 0;
};

} // namespace stemwright

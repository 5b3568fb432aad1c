#pragma once

#include "core/suggest/suggestion.h"

namespace stemwright {

/// How many leaves of a kind a stem may have.
struct KindRange {
    KindId kind;
    int least = 0;
    int most = 0;
    /// Leaves of the kind that shall be left in the tray. Without: as few as the ranges and whole tiers allow.
    std::optional<int> rest;
};

struct HeightsOptions {
    /// Kinds that are not here keep the tiers they have. Each kind once.
    std::vector<KindRange> ranges;
    /// No two stems shall be closer in height than this, where that can be avoided.
    std::optional<Length> difference = std::nullopt;
};

/// What is known of a kind before the heights are shared out, all in leaves.
struct KindOutlook {
    KindId kind;
    int leaves = 0; ///< of the stock, but those on locked stems
    int placed = 0; ///< that will have a place; the others rest in the tray
    int least = 0;  ///< that the stems take together
    int most = 0;

    friend bool operator==(const KindOutlook&, const KindOutlook&) = default;
};

/// For each range what would come of it, or the problem that heights() would give: quick enough to ask at every
/// key that is pressed.
Result<std::vector<KindOutlook>> heightsOutlook(const Plan& plan, const HeightsOptions& options);

/// A range for every kind that there is a tier's worth of, from so much less to so much more than each stem's
/// equal part of the leaves: what a maker may begin from, and always to be met on `stems` stems without pins.
/// The part is our own choice, no source.
inline constexpr double usualPart = 0.3;
std::vector<KindRange> usualRanges(const Plan& plan, int stems);

/// Tiers for each stem, so that the heights differ as evenly as can be: every stem that is not locked gets a
/// number of tiers of each kind within the range, all leaves of the kind are given a place but the rest, and
/// the stems' numbers of tiers run from the shortest to the tallest in steps as equal as they can be. Height is
/// counted in tiers, as stems of one plan are spaced alike; where a step of a whole tier fits between any two,
/// no two are equal.
///
/// Exact in this: with n stems and a mean of h tiers, targets run evenly through h from the lowest sum of the
/// ranges or to the highest, whichever is nearer, and Σ (tiers − target)² is the least that ranges and numbers
/// of leaves allow. The stems that are taller now stay the taller ones; of those as tall now
/// neighbours by id become unlike (orderAmongAlike()). The numbers of tiers that
/// can be had are the bases of an integral polymatroid (a flow from kinds to stems), and on such a separable
/// convex sum is least where it is made up unit by unit from the cheapest that can still be completed
/// (Federgruen & Groenevelt, Operations Research 34, 1986, 909–918; from memory).
///
/// With a difference, as few neighbours in height (in millimetres, every place with its leaf) as can be are
/// closer than that, and only then the steps are even: exact among the answers in which the stems keep their
/// order by height (apart_heights.h). `closeAfter` counts them; where that many answers could not be looked at,
/// the even steps stand and `proved` is false.
///
/// Tiers with a pinned slot and bound ones stay; of the others those at the base of their kind's run go first,
/// and new ones, empty and waiting, open there too, smaller kinds above. Every tier that moves is turned as the
/// arrangement wants it. Odd leaves that fill no tier stay in the tray. `before` and `after` are the
/// unevenness, as everywhere; spread fills the places.
///
/// Problems: badRange, rangeTooHigh, rangeTooLow (only with a rest), pinsBeyondRange, rangeTwice,
/// rangesCollide, mixedTiers, nothingToShare, noSuchId for a kind.
Result<Suggestion> heights(const Plan& plan, const HeightsOptions& options);

} // namespace stemwright

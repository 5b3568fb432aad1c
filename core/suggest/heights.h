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
    /// Kinds that are not here keep the tiers they have.
    std::vector<KindRange> ranges;
};

/// Tiers for each stem, so that the heights differ as evenly as can be: every stem that is not locked gets a
/// number of tiers of each kind within the range, all leaves of the kind are given a place but the rest, and
/// the stems' numbers of tiers run from the shortest to the tallest in steps as equal as they can be. Height is
/// counted in tiers, as stems of one plan are spaced alike; where a step of a whole tier fits between any two,
/// no two are equal.
///
/// Exact in this: with n stems and a mean of h tiers, targets run evenly through h from the lowest sum of the
/// ranges or to the highest, whichever is nearer, and Σ (tiers − target)² is the least that ranges and numbers
/// of leaves allow. The stems that are taller now stay the taller ones (ties by id). The numbers of tiers that
/// can be had are the bases of an integral polymatroid (a flow from kinds to stems), and on such a separable
/// convex sum is least where it is made up unit by unit from the cheapest that can still be completed
/// (Federgruen & Groenevelt, Operations Research 34, 1986, 909–918; from memory).
///
/// Tiers with a pinned slot and bound ones stay; of the others those at the base of their kind's run go first,
/// and new ones, empty and waiting, open there too, smaller kinds above. Every tier that moves is turned as the
/// arrangement wants it. Odd leaves that fill no tier stay in the tray. `before` and `after` are the
/// unevenness, as everywhere; spread fills the places.
///
/// Problems: badRange, rangeTooHigh, rangeTooLow (only with a rest), rangesCollide, mixedTiers, nothingToShare,
/// noSuchId for a kind.
Result<Suggestion> heights(const Plan& plan, const HeightsOptions& options);

} // namespace stemwright

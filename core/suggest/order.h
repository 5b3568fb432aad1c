#pragma once

#include "core/suggest/suggestion.h"

namespace stemwright {

// Ordering the leaves of each stem from tip to base. Every stem keeps the leaves that it has; they change
// places among the slots of that stem that hold a leaf and are not pinned, on no locked stem and in no bound
// tier.

struct OrderOptions {
    /// As few unmatched pairs as the stem's leaves allow before as few inversions as can be; otherwise the
    /// order comes first, and pairs match as far as it lets them.
    bool matchedPairs = true;
    /// Here a step is one leaf put on trial.
    Search search;
};

/// The suggestion, for a valid plan. First the smaller kinds go above the larger (by length, then width), so
/// that as few leaves as can be stand below a smaller one; where the stem's kinds already stand as well as
/// that, they stay. Then, for each kind over the places that it has: fewest unmatched pairs and fewest
/// inversions, in the order that the options name, where an inversion is a leaf above another of its kind, in
/// another tier, that comes before it in the kind's stock. A stem that is as good as can be in all this stays
/// as it is.
///
/// Exact: a best-first search over what each place holds from tip to base. What leaves cost each other depends
/// only on which of them are above, so states with the same leaves left are one; the rest is bounded by the
/// unmatched pairs that the leaves left must leave over (exactly, order aside) and by the inversions that they
/// must have with leaves already placed and with pinned ones. `proved` says that the search came to its end on
/// every stem; inversionsBound and unmatchedBound are what no order can go below in the first and, given that,
/// the second wish (where the search did not end, of the first wish only). The figures count all stems, also
/// those that may not be touched.
Suggestion order(const Plan& plan, const OrderOptions& options = {});

} // namespace stemwright

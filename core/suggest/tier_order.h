#pragma once

#include "core/suggest/budget.h"

#include <cstdint>
#include <vector>

namespace stemwright {

/// The places of one kind in one tier.
struct TierPlaces {
    int open = 0;           ///< leaves to put here
    int mate = -1;          ///< with one open place: the mix opposite in its pair that stays; −1 for none
    bool pair = false;      ///< two open places that face each other
    std::vector<int> fixed; ///< mixes that stay here
};

/// One stem's places of one kind from tip to base, and the leaves for them. Mixes count in the order that they
/// should take from tip to base.
struct TierOrderTask {
    std::vector<TierPlaces> tiers;
    std::vector<int> leaves; ///< by mix; as many as there are open places
    bool pairsFirst = true;
};

/// Unmatched pairs and inversions, of which one comes first.
struct OrderCost {
    std::int64_t unmatched = 0;
    std::int64_t inversions = 0;

    friend bool operator==(const OrderCost&, const OrderCost&) = default;
};

struct TierOrder {
    std::vector<std::vector<int>> mixes; ///< by tier, for its open places, ascending
    OrderCost cost;
    OrderCost bound; ///< equal to the cost where that is proved the least
};

/// The best order; see order.h. Ends early after so many steps with the best order that is quickly found.
TierOrder orderTiers(const TierOrderTask& task, Budget& budget, std::uint64_t steps);

/// What an order costs; `mixes` as in TierOrder.
OrderCost costOf(const TierOrderTask& task, const std::vector<std::vector<int>>& mixes);

} // namespace stemwright

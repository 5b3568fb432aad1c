#pragma once

#include "app/board/board_painter.h"

#include <utility>
#include <vector>

namespace stemwright {

/// A suggestion drawn over the board: what would change, and what would then be there.
class BoardOffer {
public:
    /// Works out what the edit would change; an edit that cannot be made changes nothing.
    void show(const Plan& before, const Edit& edit);
    void clear();
    bool empty() const { return slots_.empty() && tiers_.empty() && gaps_.empty() && moves_.empty(); }
    /// The first place that changes.
    Place first() const;

    void paint(QPainter& painter, const Plan& before, const BoardLayout& layout, BoardPainter& leaves) const;

    struct NewLeaf {
        SlotRef at;
        Leaf leaf; ///< without a mix where the slot becomes empty
        bool fromTray = false;
    };
    const std::vector<NewLeaf>& changedSlots() const { return slots_; }
    struct TierMark {
        StemId stem;
        int tier = 0;
        enum class What { turned, closed, moved } what = What::turned;
    };
    const std::vector<TierMark>& changedTiers() const { return tiers_; }

    /// A leaf's way from slot to slot, both as they are drawn now.
    struct Trip {
        SlotRef from, to;
        bool bothWays = false; ///< two leaves change places
        friend bool operator==(const Trip&, const Trip&) = default;
    };
    const std::vector<Trip>& trips() const { return trips_; }

private:
    void paintTrips(QPainter& painter, const BoardLayout& layout) const;
    void follow(const Edit& edit);

    std::vector<NewLeaf> slots_;
    std::vector<TierMark> tiers_;
    std::vector<std::pair<StemId, int>> gaps_; ///< where tiers would open
    std::vector<Trip> trips_;
    std::vector<std::pair<SlotRef, std::pair<StemId, int>>> moves_; ///< tiers that go to another gap
};

} // namespace stemwright

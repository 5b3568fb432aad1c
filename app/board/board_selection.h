#pragma once

#include "core/plan/plan.h"

#include <vector>

namespace stemwright {

/// The slots that are chosen, each once.
class BoardSelection {
public:
    bool empty() const { return slots_.empty(); }
    std::size_t size() const { return slots_.size(); }
    bool contains(SlotRef at) const;
    /// In the board's order: stems as the plan has them, tiers from the tip.
    std::vector<SlotRef> inOrder(const Plan& plan) const;
    /// The same, only those with a leaf.
    std::vector<SlotRef> filled(const Plan& plan) const;

    void clear() { slots_.clear(); }
    void set(std::vector<SlotRef> slots);
    void add(const std::vector<SlotRef>& slots);
    void toggle(SlotRef at);
    /// Forgets what is no longer there.
    void keepExisting(const Plan& plan);

    /// Everything between two slots: on one stem the tiers from one to the other, over several stems the same
    /// tiers of each.
    static std::vector<SlotRef> range(const Plan& plan, SlotRef from, SlotRef to);
    static std::vector<SlotRef> stem(const Plan& plan, StemId stem);
    static std::vector<SlotRef> tier(const Plan& plan, StemId stem, int tier);

private:
    std::vector<SlotRef> slots_; ///< sorted
};

} // namespace stemwright

#include "core/suggest/order.h"

#include "core/suggest/exchange.h"
#include "core/suggest/plan_counts.h"
#include "core/suggest/tier_order.h"

#include <algorithm>
#include <map>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// The most leaves put on trial for one kind on one stem.
constexpr std::uint64_t stepsPerStem = 30'000;

/// A slot of the stem whose leaf may change places.
struct Movable {
    int tier = 0;
    int slot = 0;
    Leaf now;
    Leaf wanted;
};

/// The kinds by size: equal ones share a rank.
std::map<KindId, int> sizeRanks(const Plan& plan) {
    std::vector<const Kind*> kinds;
    for (const Kind& kind : plan.kinds)
        kinds.push_back(&kind);
    const auto size = [](const Kind* kind) { return std::pair(kind->length, kind->width); };
    std::stable_sort(kinds.begin(), kinds.end(),
                     [&](const Kind* a, const Kind* b) { return size(a) < size(b); });
    std::map<KindId, int> ranks;
    int rank = 0;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        rank += i > 0 && size(kinds[i - 1]) < size(kinds[i]);
        ranks[kinds[i]->id] = rank;
    }
    return ranks;
}

class StemOrder {
public:
    StemOrder(const Stem& stem, const std::map<KindId, int>& ranks)
        : stem_(stem), ranks_(ranks), movableAt_(stem.tiers.size()) {
        for (int t = 0; t < static_cast<int>(stem.tiers.size()); ++t) {
            const Tier& tier = stem.tiers[index(t)];
            movableAt_[index(t)].assign(tier.slots.size(), -1);
            for (int s = 0; s < static_cast<int>(tier.slots.size()); ++s) {
                const Slot& slot = tier.slots[index(s)];
                if (slot.filled() && !slot.pinned && !tier.progress.bound && !stem.locked) {
                    movableAt_[index(t)][index(s)] = static_cast<int>(movable_.size());
                    movable_.push_back({t, s, slot.leaf, {slot.leaf.kind, {}}});
                }
            }
        }
    }

    /// Gives every movable slot the kind it shall hold: the smaller at the tip. To exchange two movable leaves
    /// of which the larger is above never puts more large ones above small ones, whatever stands between, so
    /// the sorted order has as few as can be.
    void orderKinds() {
        std::vector<KindId> kinds;
        for (const Movable& m : movable_)
            kinds.push_back(m.now.kind);
        std::stable_sort(kinds.begin(), kinds.end(),
                         [&](KindId a, KindId b) { return ranks_.at(a) < ranks_.at(b); });
        const auto before = kindInversions();
        for (std::size_t first = 0; first < movable_.size();) {
            std::size_t last = first;
            while (last < movable_.size() && movable_[last].tier == movable_[first].tier)
                ++last;
            std::vector<KindId> here(kinds.begin() + static_cast<std::ptrdiff_t>(first),
                                     kinds.begin() + static_cast<std::ptrdiff_t>(last));
            settle(
                first, last, here, [](Leaf leaf) { return leaf.kind; },
                [](Movable& m, KindId kind) { m.wanted.kind = kind; });
            first = last;
        }
        if (kindInversions() >= before)
            for (Movable& m : movable_)
                m.wanted.kind = m.now.kind;
    }

    /// Orders the mixes of one kind over the places it has. Gives by how much the result may miss the best.
    OrderCost orderMixes(const Kind& kind, bool pairsFirst, Budget& budget) {
        TierOrderTask task = taskFor(kind, pairsFirst);
        std::vector<std::vector<int>> now(task.tiers.size());
        bool staysPossible = true;
        for (const Movable& m : movable_) {
            if (m.wanted.kind != kind.id)
                continue;
            if (m.now.kind == kind.id)
                now[index(m.tier)].push_back(column(kind, m.now.mix));
            else
                staysPossible = false;
        }
        const TierOrder best = orderTiers(task, budget, stepsPerStem);
        if (staysPossible) {
            const OrderCost cost = costOf(task, now);
            const auto wish = [&](const OrderCost& c) {
                return pairsFirst ? std::pair(c.unmatched, c.inversions) : std::pair(c.inversions, c.unmatched);
            };
            if (wish(cost) <= wish(best.cost)) {
                for (Movable& m : movable_)
                    if (m.wanted.kind == kind.id)
                        m.wanted = m.now;
                return missed(cost, best.bound, pairsFirst);
            }
        }
        putInPlace(kind, best.mixes);
        return missed(best.cost, best.bound, pairsFirst);
    }

    std::vector<Change> changes() const {
        std::vector<Change> all;
        for (const Movable& m : movable_)
            all.push_back({{stem_.id, m.tier, m.slot}, m.now, m.wanted});
        return all;
    }

private:
    /// By how much an order may miss the best. Where the first wish may, nothing is known of the second.
    static OrderCost missed(const OrderCost& cost, const OrderCost& bound, bool pairsFirst) {
        OrderCost more{cost.unmatched - bound.unmatched, cost.inversions - bound.inversions};
        if (pairsFirst && more.unmatched > 0)
            more.inversions = cost.inversions;
        if (!pairsFirst && more.inversions > 0)
            more.unmatched = cost.unmatched;
        return more;
    }

    static int column(const Kind& kind, MixId mix) {
        const auto it = std::find_if(kind.stock.begin(), kind.stock.end(),
                                     [&](const StockLine& line) { return line.mix == mix; });
        return static_cast<int>(it - kind.stock.begin());
    }

    const Movable* movable(int tier, int slot) const {
        const int at = movableAt_[index(tier)][index(slot)];
        return at < 0 ? nullptr : &movable_[index(at)];
    }

    /// Pairs of leaves in different tiers of which the upper is the larger, as wanted.
    std::int64_t kindInversions() const {
        std::int64_t count = 0;
        std::map<int, std::int64_t> above;
        for (int t = 0; t < static_cast<int>(stem_.tiers.size()); ++t) {
            std::vector<int> here;
            for (int s = 0; s < static_cast<int>(stem_.tiers[index(t)].slots.size()); ++s) {
                const Slot& slot = stem_.tiers[index(t)].slots[index(s)];
                if (const Movable* m = movable(t, s))
                    here.push_back(ranks_.at(m->wanted.kind));
                else if (slot.filled())
                    here.push_back(ranks_.at(slot.leaf.kind));
            }
            for (int rank : here)
                for (auto it = above.upper_bound(rank); it != above.end(); ++it)
                    count += it->second;
            for (int rank : here)
                ++above[rank];
        }
        return count;
    }

    /// Gives the values to the movable slots [first, last) of one tier, so that those stay that can.
    template <class T, class Get, class Put>
    void settle(std::size_t first, std::size_t last, std::vector<T> values, const Get& get, const Put& put) {
        std::vector<std::size_t> open;
        for (std::size_t i = first; i < last; ++i) {
            const auto same = std::find(values.begin(), values.end(), get(movable_[i].now));
            if (same == values.end()) {
                open.push_back(i);
                continue;
            }
            put(movable_[i], *same);
            values.erase(same);
        }
        for (std::size_t i = 0; i < open.size(); ++i)
            put(movable_[open[i]], values[i]);
    }

    TierOrderTask taskFor(const Kind& kind, bool pairsFirst) const {
        TierOrderTask task;
        task.pairsFirst = pairsFirst;
        task.leaves.assign(kind.stock.size(), 0);
        task.tiers.resize(stem_.tiers.size());
        for (const Movable& m : movable_) {
            task.tiers[index(m.tier)].open += m.wanted.kind == kind.id;
            if (m.now.kind == kind.id)
                ++task.leaves[index(column(kind, m.now.mix))];
        }
        for (int t = 0; t < static_cast<int>(stem_.tiers.size()); ++t) {
            TierPlaces& places = task.tiers[index(t)];
            const std::vector<Slot>& slots = stem_.tiers[index(t)].slots;
            for (int s = 0; s < static_cast<int>(slots.size()); ++s)
                if (!movable(t, s) && slots[index(s)].filled() && slots[index(s)].leaf.kind == kind.id)
                    places.fixed.push_back(column(kind, slots[index(s)].leaf.mix));
            if (leavesPerTier(stem_) == 2 && slots.size() == 2) {
                places.pair = places.open == 2;
                if (places.open == 1 && places.fixed.size() == 1)
                    places.mate = places.fixed[0];
            }
        }
        return task;
    }

    void putInPlace(const Kind& kind, const std::vector<std::vector<int>>& mixes) {
        for (int t = 0; t < static_cast<int>(stem_.tiers.size()); ++t) {
            std::vector<Leaf> leaves;
            for (int x : mixes[index(t)])
                leaves.push_back({kind.id, kind.stock[index(x)].mix});
            // Leaves that can stay do; the others follow in their order.
            std::vector<Movable*> open;
            for (Movable& m : movable_) {
                if (m.tier != t || m.wanted.kind != kind.id)
                    continue;
                const auto same = std::find(leaves.begin(), leaves.end(), m.now);
                if (same == leaves.end()) {
                    open.push_back(&m);
                    continue;
                }
                m.wanted = *same;
                leaves.erase(same);
            }
            for (std::size_t i = 0; i < open.size(); ++i)
                open[i]->wanted = leaves[i];
        }
    }

    const Stem& stem_;
    const std::map<KindId, int>& ranks_;
    std::vector<Movable> movable_;
    std::vector<std::vector<int>> movableAt_;
};

} // namespace

Suggestion order(const Plan& plan, const OrderOptions& options) {
    Suggestion suggestion;
    suggestion.aim = options.matchedPairs ? Aim::pairsOrder : Aim::order;
    suggestion.before = unevennessOf(plan);
    suggestion.unmatchedBefore = unmatchedPairsOf(plan);
    suggestion.inversionsBefore = inversionsOf(plan);
    Budget budget(options.search);
    const std::map<KindId, int> ranks = sizeRanks(plan);
    OrderCost missed;
    for (const Stem& stem : plan.stems) {
        StemOrder work(stem, ranks);
        work.orderKinds();
        for (const Kind& kind : plan.kinds) {
            const OrderCost more = work.orderMixes(kind, options.matchedPairs, budget);
            missed.unmatched += more.unmatched;
            missed.inversions += more.inversions;
            suggestion.proved &= more == OrderCost{};
        }
        const std::vector<Change> changes = work.changes();
        for (const Change& change : changes)
            suggestion.moved += !(change.now == change.wanted);
        const std::vector<Edit> edits = exchanges(changes);
        suggestion.edits.edits.insert(suggestion.edits.edits.end(), edits.begin(), edits.end());
    }
    const Plan after = taken(plan, suggestion);
    suggestion.after = suggestion.bound = unevennessOf(after);
    suggestion.unmatchedAfter = unmatchedPairsOf(after);
    suggestion.inversionsAfter = inversionsOf(after);
    suggestion.unmatchedBound = suggestion.unmatchedAfter - static_cast<int>(missed.unmatched);
    suggestion.inversionsBound = suggestion.inversionsAfter - missed.inversions;
    suggestion.stopped = budget.ended();
    suggestion.steps = budget.steps();
    return suggestion;
}

} // namespace stemwright

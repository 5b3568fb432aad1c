#include "core/suggest/shares.h"

#include <algorithm>
#include <unordered_map>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// Stems by id.
std::vector<const Stem*> byId(const Plan& plan) {
    std::vector<const Stem*> stems;
    stems.reserve(plan.stems.size());
    for (const Stem& stem : plan.stems)
        stems.push_back(&stem);
    std::sort(stems.begin(), stems.end(), [](const Stem* a, const Stem* b) { return a->id < b->id; });
    return stems;
}

bool isOpen(const Stem& stem, const Tier& tier, const Slot& slot) {
    return !stem.locked && !tier.progress.bound && !slot.pinned;
}

/// Which of the slots on one stem are filled in the end, before it is known with what.
struct RowDraft {
    std::vector<OpenSlot> open;
    std::vector<int> fixed; ///< by column
    int fixedLeaves = 0;
    int holding = 0; ///< open slots with a leaf

    int places() const { return fixedLeaves + static_cast<int>(open.size()); }
};

/// Cuts the waiting slots down to `leaves` more than are held; see sharesOf.
void ration(std::vector<RowDraft>& rows, int leaves) {
    std::vector<int> given(rows.size(), 0);
    for (; leaves > 0; --leaves) {
        int next = -1;
        for (int r = 0; r < static_cast<int>(rows.size()); ++r) {
            const RowDraft& row = rows[index(r)];
            const auto filled = [&](int i) {
                return std::int64_t{rows[index(i)].fixedLeaves + rows[index(i)].holding + given[index(i)]};
            };
            if (row.holding + given[index(r)] == static_cast<int>(row.open.size()))
                continue;
            if (next < 0 || filled(r) * rows[index(next)].places() < filled(next) * row.places())
                next = r;
        }
        ++given[index(next)];
    }
    for (std::size_t r = 0; r < rows.size(); ++r)
        std::erase_if(rows[r].open, [&](const OpenSlot& slot) { return slot.now < 0 && given[r]-- <= 0; });
}

void describePairs(const Plan& plan, Shares& shares, int row) {
    const Stem& stem = *find(plan, shares.stems[index(row)]);
    const std::vector<OpenSlot>& open = shares.open[index(row)];
    PairShape& shape = shares.shapes[index(row)];
    std::vector<int>& mateOf = shares.mateOf.emplace_back(open.size(), -1);
    for (std::size_t i = 0; i < open.size(); ++i) {
        const SlotRef at = open[i].at;
        const Tier& tier = stem.tiers[index(at.tier)];
        if (leavesPerTier(stem) != 2 || tier.slots.size() != 2) {
            ++shape.singles;
            continue;
        }
        if (i + 1 < open.size() && open[i + 1].at.tier == at.tier) {
            ++shape.pairs;
            ++i;
            continue;
        }
        const Slot& other = tier.slots[index(1 - at.slot)];
        if (other.filled() && other.leaf.kind == shares.kind && !isOpen(stem, tier, other)) {
            const auto it = std::find(shares.mixes.begin(), shares.mixes.end(), other.leaf.mix);
            mateOf[i] = static_cast<int>(it - shares.mixes.begin());
            ++shares.mates(row, mateOf[i]);
        } else {
            ++shape.singles;
        }
    }
}

} // namespace

std::vector<Shares> sharesOf(const Plan& plan) {
    std::vector<Shares> all(plan.kinds.size());
    std::vector<std::unordered_map<MixId, int>> columnOf(plan.kinds.size());
    std::unordered_map<KindId, std::size_t> kindAt;
    for (std::size_t k = 0; k < plan.kinds.size(); ++k) {
        all[k].kind = plan.kinds[k].id;
        kindAt.emplace(plan.kinds[k].id, k);
        for (const StockLine& line : plan.kinds[k].stock) {
            columnOf[k].emplace(line.mix, all[k].columns());
            all[k].mixes.push_back(line.mix);
            all[k].stock.push_back(line.total());
        }
    }
    std::vector<std::vector<RowDraft>> drafts(plan.kinds.size());
    for (const Stem* stem : byId(plan)) {
        const auto rowOf = [&](std::size_t k) -> RowDraft& {
            if (all[k].stems.empty() || all[k].stems.back() != stem->id) {
                all[k].stems.push_back(stem->id);
                drafts[k].emplace_back().fixed.assign(all[k].mixes.size(), 0);
            }
            return drafts[k].back();
        };
        for (std::size_t t = 0; t < stem->tiers.size(); ++t) {
            const Tier& tier = stem->tiers[t];
            for (std::size_t s = 0; s < tier.slots.size(); ++s) {
                const Slot& slot = tier.slots[s];
                const auto at = kindAt.find(slot.leaf.kind);
                const bool open = isOpen(*stem, tier, slot);
                if (at == kindAt.end() || (!open && !slot.filled()))
                    continue;
                RowDraft& row = rowOf(at->second);
                const int column = slot.filled() ? columnOf[at->second].at(slot.leaf.mix) : -1;
                if (open) {
                    row.open.push_back({{stem->id, static_cast<int>(t), static_cast<int>(s)}, column});
                    row.holding += column >= 0;
                } else {
                    ++row.fixed[index(column)];
                    ++row.fixedLeaves;
                }
            }
        }
    }
    for (std::size_t k = 0; k < all.size(); ++k) {
        Shares& shares = all[k];
        std::vector<RowDraft>& rows = drafts[k];
        int left = 0, waiting = 0;
        for (int count : shares.stock)
            left += count;
        for (const RowDraft& row : rows) {
            left -= row.fixedLeaves + row.holding;
            waiting += static_cast<int>(row.open.size()) - row.holding;
        }
        if (left < waiting) {
            shares.emptySlots = waiting - left;
            ration(rows, left);
        }
        shares.fixed = shares.now = shares.mates = Grid<int>(shares.rows(), shares.columns());
        shares.shapes.resize(rows.size());
        for (int r = 0; r < shares.rows(); ++r) {
            RowDraft& row = rows[index(r)];
            std::copy(row.fixed.begin(), row.fixed.end(), shares.fixed.row(r));
            for (const OpenSlot& slot : row.open)
                if (slot.now >= 0)
                    ++shares.now(r, slot.now);
            shares.free.push_back(static_cast<int>(row.open.size()));
            shares.leaves.push_back(row.places());
            shares.total += row.places();
            shares.open.push_back(std::move(row.open));
            describePairs(plan, shares, r);
        }
    }
    return all;
}

} // namespace stemwright

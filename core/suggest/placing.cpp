#include "core/suggest/placing.h"

#include <algorithm>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// One stem's open slots while they are given their leaves.
class Row {
public:
    Row(const Shares& shares, int row, const int* units)
        : shares_(shares),
          open_(shares.open[index(row)]),
          left_(units, units + shares.columns()),
          wanted_(open_.size(), -1),
          partner_(open_.size(), -1) {
        for (std::size_t i = 0; i + 1 < open_.size(); ++i)
            if (open_[i].at.tier == open_[i + 1].at.tier && pairTier(i))
                partner_[i] = static_cast<int>(i) + 1, partner_[i + 1] = static_cast<int>(i);
    }

    /// Which open slots stand opposite a leaf that stays: by slot, its column.
    void setMates(std::vector<int> mates) { mates_ = std::move(mates); }

    void keepWhatStays() {
        std::vector<int> surplus(left_.size(), 0);
        for (std::size_t c = 0; c < left_.size(); ++c)
            surplus[c] = -left_[c];
        for (const OpenSlot& slot : open_)
            if (slot.now >= 0)
                ++surplus[index(slot.now)];
        std::vector<bool> goes(open_.size(), false);
        for (const bool matchedToo : {false, true})
            for (std::size_t i = open_.size(); i-- > 0;)
                if (const int now = open_[i].now;
                    now >= 0 && !goes[i] && surplus[index(now)] > 0 && (matchedToo || !matchedNow(i, goes))) {
                    goes[i] = true;
                    --surplus[index(now)];
                }
        for (std::size_t i = 0; i < open_.size(); ++i)
            if (open_[i].now >= 0 && !goes[i])
                give(i, open_[i].now);
    }

    void matchMates() {
        for (std::size_t i = 0; i < open_.size(); ++i)
            if (wanted_[i] < 0 && mates_[i] >= 0 && left_[index(mates_[i])] > 0)
                give(i, mates_[i]);
    }

    void matchPartners() {
        for (std::size_t i = 0; i < open_.size(); ++i)
            if (wanted_[i] < 0 && partner_[i] >= 0)
                if (const int beside = wanted_[index(partner_[i])]; beside >= 0 && left_[index(beside)] > 0)
                    give(i, beside);
    }

    /// Pairs that can match: first those that match already, then those of which one leaf stays, then any.
    void pairUp() {
        for (const int staying : {2, 1})
            for (std::size_t i = 0; i < open_.size(); ++i)
                if (const int j = partner_[i]; j > static_cast<int>(i) && wanted_[i] < 0)
                    for (const int c : {open_[i].now, open_[index(j)].now})
                        if (c >= 0 && wanted_[i] < 0 && left_[index(c)] >= 2 &&
                            (open_[i].now == c) + (open_[index(j)].now == c) == staying)
                            give(i, c), give(index(j), c);
        int c = 0;
        for (std::size_t i = 0; i < open_.size(); ++i)
            if (const int j = partner_[i]; j > static_cast<int>(i) && wanted_[i] < 0) {
                while (c < static_cast<int>(left_.size()) && left_[index(c)] < 2)
                    ++c;
                if (c == static_cast<int>(left_.size()))
                    return;
                give(i, c), give(index(j), c);
            }
    }

    void keepWhereItIs() {
        for (std::size_t i = 0; i < open_.size(); ++i)
            if (const int now = open_[i].now; wanted_[i] < 0 && now >= 0 && left_[index(now)] > 0)
                give(i, now);
    }

    void giveTheRest() {
        int c = 0;
        for (std::size_t i = 0; i < open_.size(); ++i)
            if (wanted_[i] < 0) {
                while (left_[index(c)] == 0)
                    ++c;
                give(i, c);
            }
    }

    void addChanges(std::vector<Change>& changes) const {
        const auto leaf = [&](int column) {
            return Leaf{shares_.kind, column < 0 ? MixId{} : shares_.mixes[index(column)]};
        };
        for (std::size_t i = 0; i < open_.size(); ++i)
            if (open_[i].now != wanted_[i])
                changes.push_back({open_[i].at, leaf(open_[i].now), leaf(wanted_[i])});
    }

private:
    /// Three slots and more are no pair; a tier of two shows two open slots at most.
    bool pairTier(std::size_t i) const {
        const bool before = i > 0 && open_[i - 1].at.tier == open_[i].at.tier;
        const bool after = i + 2 < open_.size() && open_[i + 2].at.tier == open_[i].at.tier;
        return !before && !after && open_[i].at.slot == 0 && open_[i + 1].at.slot == 1;
    }

    bool matchedNow(std::size_t i, const std::vector<bool>& goes) const {
        if (mates_[i] == open_[i].now)
            return true;
        const int j = partner_[i];
        return j >= 0 && !goes[index(j)] && open_[index(j)].now == open_[i].now;
    }

    void give(std::size_t i, int column) {
        wanted_[i] = column;
        --left_[index(column)];
    }

    const Shares& shares_;
    const std::vector<OpenSlot>& open_;
    std::vector<int> left_;    ///< leaves still to give, by column
    std::vector<int> wanted_;  ///< by slot
    std::vector<int> partner_; ///< by slot: the other open slot of its pair, or −1
    std::vector<int> mates_;   ///< by slot: the column of the leaf opposite that stays, or −1
};

} // namespace

std::vector<Change> placeLeaves(const Shares& shares, const Grid<int>& units) {
    std::vector<Change> changes;
    for (int r = 0; r < shares.rows(); ++r) {
        Row row(shares, r, units.row(r));
        row.setMates(shares.mateOf[index(r)]);
        row.keepWhatStays();
        row.matchMates();
        row.matchPartners();
        row.giveTheRest();
        row.addChanges(changes);
    }
    return changes;
}

std::vector<Change> placePairs(const Shares& shares, const Grid<int>& units) {
    std::vector<Change> changes;
    for (int r = 0; r < shares.rows(); ++r) {
        Row row(shares, r, units.row(r));
        row.setMates(shares.mateOf[index(r)]);
        row.matchMates();
        row.pairUp();
        row.keepWhereItIs();
        row.giveTheRest();
        row.addChanges(changes);
    }
    return changes;
}

int unmatchedPairs(const Shares& shares, int row, const int* units) {
    int mates = 0, matchedMates = 0, matches = 0;
    for (int c = 0; c < shares.columns(); ++c) {
        const int beside = std::min(shares.mates(row, c), units[c]);
        mates += shares.mates(row, c);
        matchedMates += beside;
        matches += (units[c] - beside) / 2;
    }
    return mates - matchedMates + std::max(0, shares.shapes[index(row)].pairs - matches);
}

} // namespace stemwright

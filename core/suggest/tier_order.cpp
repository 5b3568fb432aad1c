#include "core/suggest/tier_order.h"

#include <algorithm>
#include <deque>
#include <queue>
#include <string>
#include <unordered_map>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// Both wishes in one number: the first counts far more than the second can come to.
constexpr std::int64_t firstWish = std::int64_t{1} << 36;

/// What is still to be matched from a tier on.
struct Ahead {
    int pairs = 0;
    std::vector<int> mates; ///< by mix
    int mateCount = 0;
};

/// One open place, in order from tip to base.
struct Place {
    int tier = 0;
    bool first = true; ///< of its tier
};

class TierSearch {
public:
    TierSearch(const TierOrderTask& task, Budget& budget, std::uint64_t steps)
        : task_(task), mixes_(static_cast<int>(task.leaves.size())), budget_(budget), steps_(steps) {
        lookAhead();
        countFixed();
    }

    TierOrder run() {
        Node root;
        root.left = task_.leaves;
        root.promise = promise(root);
        push(std::move(root));
        std::uint64_t used = 0;
        while (true) {
            const std::size_t at = queue_.top().node;
            queue_.pop();
            if (nodes_[at].closed)
                continue;
            nodes_[at].closed = true;
            if (nodes_[at].depth == static_cast<int>(places_.size()))
                return unwind(at, nodes_[at].promise);
            if (++used > steps_ || !budget_.step())
                return unwind(dive(at), nodes_[at].promise);
            expand(at);
        }
    }

private:
    struct Node {
        std::vector<int> left; ///< leaves not yet placed, by mix
        int depth = 0;         ///< places filled
        int last = -1;         ///< the mix before it in the same tier, or −1
        std::int64_t cost = 0;
        std::int64_t promise = 0; ///< cost, and what must come at least
        std::size_t parent = 0;
        int mix = -1; ///< that led here
        bool closed = false;
    };
    struct Waiting {
        std::int64_t promise;
        int depth;
        std::size_t node;
        bool operator<(const Waiting& other) const {
            if (promise != other.promise)
                return promise > other.promise;
            if (depth != other.depth)
                return depth < other.depth;
            return node > other.node;
        }
    };

    std::int64_t weighed(std::int64_t unmatched, std::int64_t inversions) const {
        return task_.pairsFirst ? unmatched * firstWish + inversions : inversions * firstWish + unmatched;
    }

    void lookAhead() {
        const int tiers = static_cast<int>(task_.tiers.size());
        ahead_.resize(index(tiers) + 1);
        ahead_.back().mates.assign(index(mixes_), 0);
        for (int t = tiers - 1; t >= 0; --t) {
            ahead_[index(t)] = ahead_[index(t) + 1];
            const TierPlaces& tier = task_.tiers[index(t)];
            ahead_[index(t)].pairs += tier.pair;
            if (tier.mate >= 0) {
                ++ahead_[index(t)].mates[index(tier.mate)];
                ++ahead_[index(t)].mateCount;
            }
        }
        for (int t = 0; t < tiers; ++t)
            for (int i = 0; i < task_.tiers[index(t)].open; ++i)
                places_.push_back({t, i == 0});
    }

    /// against_[t][x]: leaves that stay and stand against one of mix x in tier t.
    void countFixed() {
        const std::size_t tiers = task_.tiers.size();
        against_.assign(tiers, std::vector<std::int64_t>(index(mixes_), 0));
        std::vector<std::int64_t> above(index(mixes_), 0), below(index(mixes_), 0);
        for (const TierPlaces& tier : task_.tiers)
            for (int mix : tier.fixed)
                ++below[index(mix)];
        for (std::size_t t = 0; t < tiers; ++t) {
            for (int mix : task_.tiers[t].fixed)
                --below[index(mix)];
            std::int64_t smallerBelow = 0, largerAbove = 0;
            for (int x = 0; x < mixes_; ++x) {
                against_[t][index(x)] += smallerBelow;
                smallerBelow += below[index(x)];
            }
            for (int x = mixes_ - 1; x >= 0; --x) {
                against_[t][index(x)] += largerAbove;
                largerAbove += above[index(x)];
            }
            for (int mix : task_.tiers[t].fixed)
                ++above[index(mix)];
        }
        anyFixed_ = std::any_of(task_.tiers.begin(), task_.tiers.end(),
                                [](const TierPlaces& tier) { return !tier.fixed.empty(); });
    }

    /// What filling the next place with mix x adds.
    std::int64_t added(const Node& node, int x) const {
        const Place place = places_[index(node.depth)];
        const TierPlaces& tier = task_.tiers[index(place.tier)];
        std::int64_t inversions = against_[index(place.tier)][index(x)];
        for (int higher = x + 1; higher < mixes_; ++higher)
            inversions += task_.leaves[index(higher)] - node.left[index(higher)];
        std::int64_t unmatched = 0;
        if (tier.mate >= 0)
            unmatched = x != tier.mate;
        else if (tier.pair && !place.first)
            unmatched = x != node.last;
        return weighed(unmatched, inversions);
    }

    /// What must still come, at least.
    std::int64_t rest(const Node& node) const {
        std::int64_t inversions = 0, placedHigher = 0;
        for (int x = mixes_ - 1; x >= 0; --x) {
            inversions += node.left[index(x)] * placedHigher;
            placedHigher += task_.leaves[index(x)] - node.left[index(x)];
        }
        if (anyFixed_) {
            // With leaves that stay, those left cost least in their order: (x, t) is a Monge array.
            int x = 0, used = 0;
            for (std::size_t p = index(node.depth); p < places_.size(); ++p) {
                while (used == node.left[index(x)])
                    ++x, used = 0;
                ++used;
                inversions += against_[index(places_[p].tier)][index(x)];
            }
        }
        return weighed(unmatchedAhead(node), inversions);
    }

    /// A place opposite a leaf that stays is best filled with its like: that uses one leaf for a match, where a
    /// pair needs two. What is left then pairs up as far as it is even.
    std::int64_t unmatchedAhead(const Node& node) const {
        if (node.depth == static_cast<int>(places_.size()))
            return 0;
        const Place place = places_[index(node.depth)];
        const Ahead& ahead = ahead_[index(place.tier) + (place.first ? 0 : 1)];
        const bool half = !place.first && task_.tiers[index(place.tier)].pair;
        int mates = ahead.mateCount + half, matched = 0, matches = 0;
        for (int x = 0; x < mixes_; ++x) {
            const int beside =
                std::min(node.left[index(x)], ahead.mates[index(x)] + (half && node.last == x ? 1 : 0));
            matched += beside;
            matches += (node.left[index(x)] - beside) / 2;
        }
        return mates - matched + std::max(0, ahead.pairs - matches);
    }

    std::int64_t promise(const Node& node) const { return node.cost + rest(node); }

    Node child(std::size_t parent, int x) const {
        const Node& from = nodes_[parent];
        Node node;
        node.left = from.left;
        --node.left[index(x)];
        node.depth = from.depth + 1;
        const bool tierGoesOn =
            node.depth < static_cast<int>(places_.size()) && !places_[index(node.depth)].first;
        node.last = tierGoesOn ? x : -1;
        node.cost = from.cost + added(from, x);
        node.promise = promise(node);
        node.parent = parent;
        node.mix = x;
        return node;
    }

    void expand(std::size_t at) {
        for (int x = std::max(0, nodes_[at].last); x < mixes_; ++x)
            if (nodes_[at].left[index(x)] > 0)
                push(child(at, x));
    }

    void push(Node node) {
        std::string key(reinterpret_cast<const char*>(node.left.data()), node.left.size() * sizeof(int));
        key.append(reinterpret_cast<const char*>(&node.last), sizeof(int));
        const auto [it, isNew] = seen_.emplace(std::move(key), nodes_.size());
        if (!isNew) {
            if (nodes_[it->second].cost <= node.cost)
                return;
            nodes_[it->second].closed = true;
            it->second = nodes_.size();
        }
        queue_.push({node.promise, node.depth, nodes_.size()});
        nodes_.push_back(std::move(node));
    }

    /// Fills the remaining places one after another as seems best.
    std::size_t dive(std::size_t at) {
        while (nodes_[at].depth < static_cast<int>(places_.size())) {
            Node best;
            best.mix = -1;
            // Within a tier leaves ascend; where none is left that does, the tier's earlier ones stay and the
            // rest counts as if it came first, which costs the same or less in truth.
            for (int x = 0; x < mixes_; ++x)
                if (nodes_[at].left[index(x)] > 0)
                    if (Node next = child(at, x); best.mix < 0 || next.promise < best.promise)
                        best = std::move(next);
            nodes_.push_back(std::move(best));
            at = nodes_.size() - 1;
        }
        return at;
    }

    TierOrder unwind(std::size_t at, std::int64_t bound) const {
        TierOrder order;
        order.mixes.resize(task_.tiers.size());
        for (std::size_t n = at; nodes_[n].depth > 0; n = nodes_[n].parent)
            order.mixes[index(places_[index(nodes_[n].depth) - 1].tier)].push_back(nodes_[n].mix);
        for (std::vector<int>& tier : order.mixes)
            std::sort(tier.begin(), tier.end());
        order.cost = costOf(task_, order.mixes);
        order.bound.unmatched = task_.pairsFirst ? bound / firstWish : bound % firstWish;
        order.bound.inversions = task_.pairsFirst ? bound % firstWish : bound / firstWish;
        return order;
    }

    const TierOrderTask& task_;
    int mixes_;
    Budget& budget_;
    std::uint64_t steps_;
    std::vector<Ahead> ahead_;
    std::vector<Place> places_;
    std::vector<std::vector<std::int64_t>> against_;
    bool anyFixed_ = false;
    std::deque<Node> nodes_;
    std::unordered_map<std::string, std::size_t> seen_;
    std::priority_queue<Waiting> queue_;
};

} // namespace

OrderCost costOf(const TierOrderTask& task, const std::vector<std::vector<int>>& mixes) {
    OrderCost cost;
    std::vector<std::int64_t> above(task.leaves.size(), 0);
    // Leaves that stay count against those that move, not among themselves: no order changes that.
    std::vector<std::int64_t> fixedAbove(task.leaves.size(), 0);
    for (std::size_t t = 0; t < task.tiers.size(); ++t) {
        const TierPlaces& tier = task.tiers[t];
        for (int x : mixes[t])
            for (std::size_t higher = index(x) + 1; higher < above.size(); ++higher)
                cost.inversions += above[higher] + fixedAbove[higher];
        for (int x : tier.fixed)
            for (std::size_t higher = index(x) + 1; higher < above.size(); ++higher)
                cost.inversions += above[higher];
        if (tier.mate >= 0)
            cost.unmatched += mixes[t][0] != tier.mate;
        else if (tier.pair)
            cost.unmatched += mixes[t][0] != mixes[t][1];
        for (int x : mixes[t])
            ++above[index(x)];
        for (int x : tier.fixed)
            ++fixedAbove[index(x)];
    }
    return cost;
}

TierOrder orderTiers(const TierOrderTask& task, Budget& budget, std::uint64_t steps) {
    return TierSearch(task, budget, steps).run();
}

} // namespace stemwright

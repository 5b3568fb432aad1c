#include "core/suggest/pot_placer.h"

#include "core/suggest/draw.h"
#include "core/suggest/least_assignment.h"

#include <algorithm>

namespace stemwright {

namespace {
constexpr int mostForBound = 120;
constexpr int starts = 12;
} // namespace

void PotPlacer::run() {
    std::vector<int> start(nth(count_), -1);
    std::vector<int> loose;
    for (int s = 0; s < count_; ++s) {
        if (held_[nth(s)] >= 0)
            start[nth(held_[nth(s)])] = s;
        else
            loose.push_back(s);
    }
    std::stable_sort(loose.begin(), loose.end(),
                     [&](int a, int b) { return stems_.rank[nth(a)] < stems_.rank[nth(b)]; });
    std::vector<int> open;
    for (int p = 0; p < count_; ++p)
        if (start[nth(p)] < 0)
            open.push_back(p);
    std::stable_sort(open.begin(), open.end(),
                     [&](int a, int b) { return places_.rank[nth(a)] < places_.rank[nth(b)]; });
    for (std::size_t i = 0; i < open.size(); ++i)
        start[nth(open[i])] = loose[i];

    bound = lowerBound(start);
    std::mt19937 random(options_.seed);
    exchange(start);
    for (int i = 1; i < starts && !budget_.ended(); ++i) {
        std::vector<int> other = loose;
        shuffleList(other, random);
        for (std::size_t k = 0; k < open.size(); ++k)
            start[nth(open[k])] = other[k];
        exchange(start);
    }
    if (static_cast<int>(open.size()) <= exactStems)
        enumerate(open, loose, random);
    proved = proved || cost <= bound + placingHair;
    if (proved)
        bound = cost;
}

double PotPlacer::costOf(const std::vector<int>& stemAt) const {
    double sum = 0;
    for (int p = 0; p < count_; ++p) {
        sum += own(stemAt[nth(p)], p);
        for (const int q : places_.neighbours[nth(p)])
            if (q > p)
                sum += stems_.likeness(stemAt[nth(p)], stemAt[nth(q)]);
    }
    return sum;
}

double PotPlacer::own(int stem, int place) const {
    const double off = (stems_.rank[nth(stem)] - places_.rank[nth(place)]) / count_;
    return off * off;
}

double PotPlacer::around(const std::vector<int>& stemAt, int place, int stem, int except) const {
    double sum = own(stem, place);
    for (const int q : places_.neighbours[nth(place)])
        if (q != except)
            sum += stems_.likeness(stem, stemAt[nth(q)]);
    return sum;
}

void PotPlacer::keep(const std::vector<int>& stemAt, double now) {
    if (now < cost - placingHair) {
        cost = now;
        best = stemAt;
    }
}

void PotPlacer::exchange(std::vector<int> stemAt) {
    double now = costOf(stemAt);
    for (;;) {
        double most = placingHair;
        int one = -1, other = -1;
        for (int p = 0; p < count_ && !budget_.ended(); ++p) {
            if (held_[nth(stemAt[nth(p)])] >= 0)
                continue;
            for (int q = p + 1; q < count_; ++q) {
                if (held_[nth(stemAt[nth(q)])] >= 0)
                    continue;
                if (!budget_.step())
                    break;
                const int a = stemAt[nth(p)], b = stemAt[nth(q)];
                const double gain = around(stemAt, p, a, q) + around(stemAt, q, b, p) -
                                    around(stemAt, p, b, q) - around(stemAt, q, a, p);
                if (gain > most)
                    most = gain, one = p, other = q;
            }
            budget_.tell(std::min(cost, now), bound);
        }
        if (one < 0)
            break;
        std::swap(stemAt[nth(one)], stemAt[nth(other)]);
        now -= most;
    }
    keep(stemAt, costOf(stemAt));
}

void PotPlacer::enumerate(std::vector<int> open, std::vector<int> loose, std::mt19937& random) {
    // Places with many decided neighbours first, so that costs show early; a seed varies which of equal
    // answers is met first.
    shuffleList(loose, random);
    std::vector<int> stemAt(nth(count_), -1);
    for (int s = 0; s < count_; ++s)
        if (held_[nth(s)] >= 0)
            stemAt[nth(held_[nth(s)])] = s;
    double fixed = 0;
    for (int p = 0; p < count_; ++p) {
        if (stemAt[nth(p)] < 0)
            continue;
        fixed += own(stemAt[nth(p)], p);
        for (const int q : places_.neighbours[nth(p)])
            if (q > p && stemAt[nth(q)] >= 0)
                fixed += stems_.likeness(stemAt[nth(p)], stemAt[nth(q)]);
    }
    least_ = std::numeric_limits<double>::max();
    for (int i = 0; i < count_; ++i)
        for (int j = i + 1; j < count_; ++j)
            least_ = std::min(least_, stems_.likeness(i, j));
    if (count_ < 2)
        least_ = 0;
    // Pairs of neighbours that are still to be decided once so many open places are.
    pairsLeft_.assign(open.size() + 1, 0);
    for (std::size_t k = open.size(); k-- > 0;) {
        pairsLeft_[k] = pairsLeft_[k + 1];
        for (const int q : places_.neighbours[nth(open[k])])
            if (const auto found = std::find(open.begin(), open.end(), q);
                found == open.end() || static_cast<std::size_t>(found - open.begin()) < k)
                ++pairsLeft_[k];
    }
    std::vector<char> used(loose.size(), 0);
    whole_ = true;
    descend(open, loose, used, stemAt, 0, fixed);
    if (whole_)
        proved = true;
}

void PotPlacer::descend(const std::vector<int>& open, const std::vector<int>& loose, std::vector<char>& used,
                        std::vector<int>& stemAt, std::size_t depth, double sum) {
    if (depth == open.size()) {
        keep(stemAt, sum);
        return;
    }
    // The ranks that are left cost at least what they cost in order (both lists sorted: least sum of
    // squares).
    double rest = pairsLeft_[depth] * least_;
    stemRanks_.clear();
    for (std::size_t i = 0; i < loose.size(); ++i)
        if (!used[i])
            stemRanks_.push_back(stems_.rank[nth(loose[i])]);
    std::sort(stemRanks_.begin(), stemRanks_.end());
    for (std::size_t k = depth; k < open.size(); ++k) { // open places come by rank
        const double off = (stemRanks_[k - depth] - places_.rank[nth(open[k])]) / count_;
        rest += off * off;
    }
    if (sum + rest >= cost - placingHair)
        return;
    const int place = open[depth];
    for (std::size_t i = 0; i < loose.size(); ++i) {
        if (used[i])
            continue;
        if (!budget_.step()) {
            whole_ = false;
            return;
        }
        const int stem = loose[i];
        double more = own(stem, place);
        for (const int q : places_.neighbours[nth(place)])
            if (stemAt[nth(q)] >= 0)
                more += stems_.likeness(stem, stemAt[nth(q)]);
        stemAt[nth(place)] = stem;
        used[i] = 1;
        descend(open, loose, used, stemAt, depth + 1, sum + more);
        used[i] = 0;
        stemAt[nth(place)] = -1;
    }
    budget_.tell(cost, bound);
}

double PotPlacer::lowerBound(const std::vector<int>& start) const {
    if (count_ > mostForBound) {
        double sum = 0; // ranks in order are the least that any arrangement has
        if (std::all_of(held_.begin(), held_.end(), [](int p) { return p < 0; }))
            return 0;
        for (int p = 0; p < count_; ++p)
            if (held_[nth(start[nth(p)])] >= 0)
                sum += own(start[nth(p)], p);
        return sum;
    }
    Grid<double> costs(count_, count_);
    std::vector<double> likes;
    for (int s = 0; s < count_; ++s) {
        likes.clear();
        for (int other = 0; other < count_; ++other)
            if (other != s)
                likes.push_back(stems_.likeness(s, other));
        std::sort(likes.begin(), likes.end());
        for (int p = 0; p < count_; ++p) {
            double sum = own(s, p);
            for (std::size_t k = 0; k < places_.neighbours[nth(p)].size(); ++k)
                sum += likes[k] / 2;
            const bool barred = (held_[nth(s)] >= 0 && held_[nth(s)] != p) ||
                                (held_[nth(start[nth(p)])] == p && start[nth(p)] != s);
            costs(s, p) = barred ? 1e9 : sum;
        }
    }
    return leastAssignment(costs);
}

} // namespace stemwright

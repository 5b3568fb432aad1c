#include "core/suggest/pot_placing.h"

#include "core/figures/figures.h"
#include "core/suggest/budget.h"
#include "core/suggest/draw.h"
#include "core/suggest/grid.h"
#include "core/suggest/least_assignment.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <random>

namespace stemwright {

namespace {

constexpr double hair = 1e-9;
constexpr int mostForBound = 120;
constexpr int starts = 12;
constexpr double sameHeight = 0.01; ///< mm
constexpr double samePlaceMm = 0.2; ///< standings are kept to tenths

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

/// Places in the order of `key`, from 0; neighbours whose keys differ by less than `same` share their mean.
template <class Key> std::vector<double> ranks(int count, double same, const Key& key) {
    std::vector<int> order(at(count));
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return key(a) < key(b); });
    std::vector<double> rank(at(count), 0);
    for (int i = 0; i < count;) {
        int end = i + 1;
        while (end < count && key(order[at(end)]) - key(order[at(end - 1)]) < same)
            ++end;
        for (int k = i; k < end; ++k)
            rank[at(order[at(k)])] = (i + end - 1) / 2.0;
        i = end;
    }
    return rank;
}

/// The stems' side of the cost.
struct Stems {
    int count = 0;
    std::vector<double> rank; ///< 0 for the tallest
    Grid<double> likeness;    ///< weighted, stem by stem

    explicit Stems(const Plan& plan) : count(static_cast<int>(plan.stems.size())), likeness(count, count) {
        const Figures figures = stemwright::figures(plan);
        rank = ranks(count, sameHeight, [&](int i) { return -inMillimetres(figures.stems[at(i)].height); });
        double tallest = 0;
        for (const StemFigures& stem : figures.stems)
            tallest = std::max(tallest, inMillimetres(stem.height));
        std::vector<std::optional<Lab>> colours;
        for (const StemFigures& stem : figures.stems) {
            std::vector<WeightedSrgb> parts;
            for (std::size_t c = 0; c < stem.beads.size(); ++c)
                parts.push_back({plan.colours[c].srgb, static_cast<double>(stem.beads[c])});
            const auto mean = mixed(parts);
            colours.push_back(mean ? std::optional(toLab(*mean)) : std::nullopt);
        }
        for (int i = 0; i < count; ++i)
            for (int j = i + 1; j < count; ++j) {
                const double apart =
                    std::abs(inMillimetres(figures.stems[at(i)].height - figures.stems[at(j)].height));
                double like =
                    heightLikenessWeight * std::max(0.0, 1 - apart / std::max(unlikeHeights * tallest, hair));
                if (colours[at(i)] && colours[at(j)])
                    like += colourLikenessWeight *
                            std::max(0.0, 1 - difference(*colours[at(i)], *colours[at(j)]) / unlikeColours);
                likeness(i, j) = likeness(j, i) = like;
            }
    }
};

/// The places' side of it.
struct Places {
    std::vector<PlaceMm> list;
    std::vector<double> rank; ///< 0 for the innermost or hindmost
    std::vector<std::vector<int>> neighbours;

    Places(std::vector<PlaceMm> places, ViewedFrom viewedFrom) : list(std::move(places)) {
        const int count = static_cast<int>(list.size());
        rank = ranks(count, samePlaceMm, [&](int i) {
            const PlaceMm& p = list[at(i)];
            return viewedFrom == ViewedFrom::front ? -p.y : std::hypot(p.x, p.y);
        });
        const double reach = neighbourReach * nearestApart(list) + hair;
        neighbours.resize(at(count));
        for (int i = 0; i < count; ++i)
            for (int j = i + 1; j < count; ++j)
                if (std::hypot(list[at(i)].x - list[at(j)].x, list[at(i)].y - list[at(j)].y) <= reach) {
                    neighbours[at(i)].push_back(j);
                    neighbours[at(j)].push_back(i);
                }
    }
};

/// Searches for the best assignment; a stem that is held keeps its place.
class Placer {
public:
    Placer(const Stems& stems, const Places& places, std::vector<int> held, const PlacingOptions& options)
        : stems_(stems),
          places_(places),
          count_(stems.count),
          held_(std::move(held)),
          options_(options),
          budget_(options.search) {}

    std::vector<int> best; ///< the stem of each place
    double cost = std::numeric_limits<double>::max();
    double bound = 0;
    bool proved = false;

    void run() {
        std::vector<int> start(at(count_), -1);
        std::vector<int> loose;
        for (int s = 0; s < count_; ++s) {
            if (held_[at(s)] >= 0)
                start[at(held_[at(s)])] = s;
            else
                loose.push_back(s);
        }
        std::stable_sort(loose.begin(), loose.end(),
                         [&](int a, int b) { return stems_.rank[at(a)] < stems_.rank[at(b)]; });
        std::vector<int> open;
        for (int p = 0; p < count_; ++p)
            if (start[at(p)] < 0)
                open.push_back(p);
        std::stable_sort(open.begin(), open.end(),
                         [&](int a, int b) { return places_.rank[at(a)] < places_.rank[at(b)]; });
        for (std::size_t i = 0; i < open.size(); ++i)
            start[at(open[i])] = loose[i];

        bound = lowerBound(start);
        std::mt19937 random(options_.seed);
        exchange(start);
        for (int i = 1; i < starts && !budget_.ended(); ++i) {
            std::vector<int> other = loose;
            shuffleList(other, random);
            for (std::size_t k = 0; k < open.size(); ++k)
                start[at(open[k])] = other[k];
            exchange(start);
        }
        if (static_cast<int>(open.size()) <= exactStems)
            enumerate(open, loose, random);
        proved = proved || cost <= bound + hair;
        if (proved)
            bound = cost;
    }

    bool stopped() const { return budget_.ended(); }
    std::uint64_t steps() const { return budget_.steps(); }

    double costOf(const std::vector<int>& stemAt) const {
        double sum = 0;
        for (int p = 0; p < count_; ++p) {
            sum += own(stemAt[at(p)], p);
            for (const int q : places_.neighbours[at(p)])
                if (q > p)
                    sum += stems_.likeness(stemAt[at(p)], stemAt[at(q)]);
        }
        return sum;
    }

private:
    double own(int stem, int place) const {
        const double off = (stems_.rank[at(stem)] - places_.rank[at(place)]) / count_;
        return off * off;
    }

    /// What one place costs with that stem, its neighbours as they are but for `except`.
    double around(const std::vector<int>& stemAt, int place, int stem, int except) const {
        double sum = own(stem, place);
        for (const int q : places_.neighbours[at(place)])
            if (q != except)
                sum += stems_.likeness(stem, stemAt[at(q)]);
        return sum;
    }

    void keep(const std::vector<int>& stemAt, double now) {
        if (now < cost - hair) {
            cost = now;
            best = stemAt;
        }
    }

    /// The best exchange of two stems, again and again until none helps.
    void exchange(std::vector<int> stemAt) {
        double now = costOf(stemAt);
        for (;;) {
            double most = hair;
            int one = -1, other = -1;
            for (int p = 0; p < count_ && !budget_.ended(); ++p) {
                if (held_[at(stemAt[at(p)])] >= 0)
                    continue;
                for (int q = p + 1; q < count_; ++q) {
                    if (held_[at(stemAt[at(q)])] >= 0)
                        continue;
                    if (!budget_.step())
                        break;
                    const int a = stemAt[at(p)], b = stemAt[at(q)];
                    const double gain = around(stemAt, p, a, q) + around(stemAt, q, b, p) -
                                        around(stemAt, p, b, q) - around(stemAt, q, a, p);
                    if (gain > most)
                        most = gain, one = p, other = q;
                }
                budget_.tell(std::min(cost, now), bound);
            }
            if (one < 0)
                break;
            std::swap(stemAt[at(one)], stemAt[at(other)]);
            now -= most;
        }
        keep(stemAt, costOf(stemAt));
    }

    /// Every arrangement of the loose stems over the open places, but for those that a bound rules out.
    void enumerate(std::vector<int> open, std::vector<int> loose, std::mt19937& random) {
        // Places with many decided neighbours first, so that costs show early; a seed varies which of equal
        // answers is met first.
        shuffleList(loose, random);
        std::vector<int> stemAt(at(count_), -1);
        for (int s = 0; s < count_; ++s)
            if (held_[at(s)] >= 0)
                stemAt[at(held_[at(s)])] = s;
        double fixed = 0;
        for (int p = 0; p < count_; ++p) {
            if (stemAt[at(p)] < 0)
                continue;
            fixed += own(stemAt[at(p)], p);
            for (const int q : places_.neighbours[at(p)])
                if (q > p && stemAt[at(q)] >= 0)
                    fixed += stems_.likeness(stemAt[at(p)], stemAt[at(q)]);
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
            for (const int q : places_.neighbours[at(open[k])])
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

    void descend(const std::vector<int>& open, const std::vector<int>& loose, std::vector<char>& used,
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
                stemRanks_.push_back(stems_.rank[at(loose[i])]);
        std::sort(stemRanks_.begin(), stemRanks_.end());
        for (std::size_t k = depth; k < open.size(); ++k) { // open places come by rank
            const double off = (stemRanks_[k - depth] - places_.rank[at(open[k])]) / count_;
            rest += off * off;
        }
        if (sum + rest >= cost - hair)
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
            for (const int q : places_.neighbours[at(place)])
                if (stemAt[at(q)] >= 0)
                    more += stems_.likeness(stem, stemAt[at(q)]);
            stemAt[at(place)] = stem;
            used[i] = 1;
            descend(open, loose, used, stemAt, depth + 1, sum + more);
            used[i] = 0;
            stemAt[at(place)] = -1;
        }
        budget_.tell(cost, bound);
    }

    /// Gilmore and Lawler: each stem at each place with the neighbours it likes best, half of each pair's
    /// likeness to either side, and the cheapest assignment of that.
    double lowerBound(const std::vector<int>& start) const {
        if (count_ > mostForBound) {
            double sum = 0; // ranks in order are the least that any arrangement has
            if (std::all_of(held_.begin(), held_.end(), [](int p) { return p < 0; }))
                return 0;
            for (int p = 0; p < count_; ++p)
                if (held_[at(start[at(p)])] >= 0)
                    sum += own(start[at(p)], p);
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
                for (std::size_t k = 0; k < places_.neighbours[at(p)].size(); ++k)
                    sum += likes[k] / 2;
                const bool barred = (held_[at(s)] >= 0 && held_[at(s)] != p) ||
                                    (held_[at(start[at(p)])] == p && start[at(p)] != s);
                costs(s, p) = barred ? 1e9 : sum;
            }
        }
        return leastAssignment(costs);
    }

    const Stems& stems_;
    const Places& places_;
    int count_;
    std::vector<int> held_;
    const PlacingOptions& options_;
    Budget budget_;
    double least_ = 0;
    bool whole_ = true;
    std::vector<double> pairsLeft_;
    std::vector<double> stemRanks_;
};

/// The place nearest to where each locked stem stands; −1 for the others.
std::vector<int> heldPlaces(const Plan& plan, const std::vector<PlaceMm>& now,
                            const std::vector<PlaceMm>& places) {
    std::vector<int> held(plan.stems.size(), -1);
    std::vector<char> taken(places.size(), 0);
    for (std::size_t s = 0; s < plan.stems.size(); ++s) {
        if (!plan.stems[s].locked)
            continue;
        int nearest = -1;
        double least = std::numeric_limits<double>::max();
        for (std::size_t p = 0; p < places.size(); ++p)
            if (const double far = std::hypot(places[p].x - now[s].x, places[p].y - now[s].y);
                !taken[p] && far < least)
                least = far, nearest = static_cast<int>(p);
        held[s] = nearest;
        taken[at(nearest)] = 1;
    }
    return held;
}

} // namespace

double placingCost(const Plan& plan, const std::vector<PlaceMm>& standing, ViewedFrom viewedFrom) {
    const Stems stems(plan);
    const Places places(standing, viewedFrom);
    const PlacingOptions options;
    std::vector<int> stemAt(standing.size());
    std::iota(stemAt.begin(), stemAt.end(), 0);
    return Placer(stems, places, std::vector<int>(standing.size(), -1), options).costOf(stemAt);
}

Suggestion placeInPot(const Plan& plan, const PlacingOptions& options) {
    Suggestion out;
    if (plan.stems.empty())
        return out;
    const Stems stems(plan);
    const std::vector<PlaceMm> now = standings(plan);
    std::vector<PlaceMm> list = placesInPot(plan);
    const std::vector<int> held = heldPlaces(plan, now, list);
    for (std::size_t s = 0; s < held.size(); ++s)
        if (held[s] >= 0)
            list[at(held[s])] = now[s];
    const Places places(std::move(list), options.viewedFrom);
    Placer placer(stems, places, held, options);
    placer.run();
    out.before = placingCost(plan, now, options.viewedFrom);
    out.after = placer.cost;
    out.bound = placer.bound;
    out.proved = placer.proved;
    out.stopped = placer.stopped();
    out.steps = placer.steps();
    for (int p = 0; p < stems.count; ++p) {
        const Stem& stem = plan.stems[at(placer.best[at(p)])];
        if (stem.locked)
            continue;
        ReformStem edit{stem.id, stem};
        Standing standing = stem.standing.value_or(Standing{});
        const PlaceMm& place = places.list[at(p)];
        // Tenths of a millimetre are finer than a hand plants.
        standing.x = millimetres(std::round(place.x * 10) / 10 + 0.0);
        standing.y = millimetres(std::round(place.y * 10) / 10 + 0.0);
        edit.form.standing = standing;
        if (stem.standing == edit.form.standing)
            continue;
        out.edits.edits.emplace_back(std::move(edit));
        ++out.moved;
    }
    return out;
}

} // namespace stemwright

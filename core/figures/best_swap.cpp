#include "core/figures/best_swap.h"

#include "core/figures/arrangement.h"
#include "core/figures/remedies.h"
#include "core/figures/stem_figures.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>
#include <utility>

namespace stemwright {

namespace {

constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 4;

/// A table by stem (in the order of ids) and line.
class Counts {
public:
    Counts(std::size_t stems, std::size_t lines) : lines_(lines), cells_(stems * lines, 0) {}
    std::int64_t& operator()(std::size_t stem, std::size_t line) { return cells_[stem * lines_ + line]; }
    std::int64_t operator()(std::size_t stem, std::size_t line) const { return cells_[stem * lines_ + line]; }

private:
    std::size_t lines_;
    std::vector<std::int64_t> cells_;
};

/// The swap as counts: stem a gives line i, stem b gives line j.
struct CountSwap {
    std::int64_t gain = 0; ///< M·(change − 4) / 2
    std::size_t a = 0, b = 0, i = 0, j = 0;
};

/// The swaps of one kind.
class KindSwaps {
public:
    KindSwaps(const PlanTables::KindRow& kind, std::size_t stems, const Counts& held, const Counts& free)
        : first_(kind.firstLine),
          end_(kind.firstLine + kind.lines),
          stems_(stems),
          off_(stems, kind.lines),
          offer_(stems, kind.lines) {
        std::vector<std::int64_t> ofStem(stems, 0), ofLine(kind.lines, 0);
        for (std::size_t s = 0; s < stems; ++s)
            for (std::size_t l = first_; l < end_; ++l) {
                ofStem[s] += held(s, l);
                ofLine[l - first_] += held(s, l);
                all_ += held(s, l);
            }
        for (std::size_t s = 0; s < stems; ++s)
            for (std::size_t l = 0; l < kind.lines; ++l) {
                off_(s, l) = all_ * held(s, first_ + l) - ofStem[s] * ofLine[l];
                // What a stem has not got it cannot give.
                offer_(s, l) = free(s, first_ + l) > 0 ? off_(s, l) : -never;
            }
    }

    std::int64_t leaves() const { return all_; }

    /// Better than one that changes nothing.
    std::optional<CountSwap> best(std::optional<std::size_t> stem, std::optional<std::size_t> gives) const {
        CountSwap least;
        least.gain = -2 * all_;
        bool found = false;
        for (std::size_t a = 0; a < stems_; ++a)
            for (std::size_t b = a + 1; b < stems_; ++b) {
                if (stem && *stem != a && *stem != b)
                    continue;
                const auto [give, i] = bestOf(a, b, stem == a ? gives : std::nullopt);
                const auto [take, j] = bestOf(b, a, stem == b ? gives : std::nullopt);
                if (give + take < least.gain) {
                    least = {give + take, a, b, i + first_, j + first_};
                    found = true;
                }
            }
        return found ? std::optional(least) : std::nullopt;
    }

private:
    /// The leaf that `from` had best give to `to`.
    std::pair<std::int64_t, std::size_t> bestOf(std::size_t from, std::size_t to,
                                                std::optional<std::size_t> only) const {
        std::int64_t least = never;
        std::size_t line = 0;
        for (std::size_t l = 0; l < end_ - first_; ++l)
            if (!only || *only == l + first_)
                if (const std::int64_t cost = off_(to, l) - offer_(from, l); cost < least)
                    least = cost, line = l;
        return {least, line};
    }

    std::size_t first_, end_, stems_;
    std::int64_t all_ = 0;
    Counts off_;   ///< M·d
    Counts offer_; ///< the same where the stem has such a leaf to give
};

} // namespace

std::vector<std::vector<SlotRef>> freeLeaves(const PlanTables& tables, const Stem& stem) {
    std::vector<std::vector<SlotRef>> free(tables.lines().size());
    for (std::size_t t = 0; t < stem.tiers.size(); ++t)
        for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s) {
            const Slot& slot = stem.tiers[t].slots[s];
            if (slot.filled() && isFree(stem, stem.tiers[t], slot))
                free[static_cast<std::size_t>(tables.lineOf(slot.leaf))].push_back(
                    {stem.id, static_cast<int>(t), static_cast<int>(s)});
        }
    return free;
}

SlotRef bestPlace(const Plan& plan, const PlanTables& tables, const Stem& stem,
                  const std::vector<SlotRef>& places, Leaf in) {
    Stem after = stem;
    StemReckoner reckoner;
    SlotRef best = places.front();
    std::tuple<int, int> least{std::numeric_limits<int>::max(), 0};
    for (const SlotRef& place : places) {
        Tier& tier = after.tiers[static_cast<std::size_t>(place.tier)];
        const bool before = isUnmatchedPair(stem, tier);
        Leaf& here = tier.slots[static_cast<std::size_t>(place.slot)].leaf;
        const Leaf was = std::exchange(here, in);
        const std::tuple cost{int{isUnmatchedPair(stem, tier)} - int{before},
                              reckoner(after, plan, tables).inversions};
        here = was;
        if (cost < least) {
            least = cost;
            best = place;
        }
    }
    return best;
}

std::optional<Swap> bestSwap(const Plan& plan, const PlanTables& tables, const SwapScope& scope) {
    std::vector<const Stem*> stems;
    for (const Stem& stem : plan.stems)
        stems.push_back(&stem);
    std::sort(stems.begin(), stems.end(), [](const Stem* x, const Stem* y) { return x->id < y->id; });
    Counts held(stems.size(), tables.lines().size()), free = held;
    std::optional<std::size_t> only, gives;
    for (std::size_t s = 0; s < stems.size(); ++s) {
        if (stems[s]->id == scope.stem)
            only = s;
        for (const Tier& tier : stems[s]->tiers)
            for (const Slot& slot : tier.slots)
                if (slot.filled()) {
                    const auto line = static_cast<std::size_t>(tables.lineOf(slot.leaf));
                    ++held(s, line);
                    free(s, line) += isFree(*stems[s], tier, slot);
                }
    }
    if (scope.stem && !only)
        return std::nullopt;
    if (only && scope.gives)
        gives = static_cast<std::size_t>(tables.lineOf(*scope.gives));
    std::optional<Swap> best;
    for (const PlanTables::KindRow& kind : tables.kinds()) {
        if (gives && (*gives < kind.firstLine || *gives >= kind.firstLine + kind.lines))
            continue;
        const KindSwaps swaps(kind, stems.size(), held, free);
        const auto found = swaps.best(only, gives);
        if (!found)
            continue;
        const double change = 4 + 2 * static_cast<double>(found->gain) / static_cast<double>(swaps.leaves());
        if (best && change >= best->change)
            continue;
        const auto place = [&](std::size_t stem, std::size_t out, std::size_t in) {
            return bestPlace(plan, tables, *stems[stem], freeLeaves(tables, *stems[stem])[out],
                             tables.lines()[in].leaf);
        };
        best = Swap{place(found->a, found->i, found->j), place(found->b, found->j, found->i), change};
    }
    return best;
}

std::optional<Swap> bestSwap(const Plan& plan, const SwapScope& scope) {
    return bestSwap(plan, PlanTables(plan), scope);
}

} // namespace stemwright

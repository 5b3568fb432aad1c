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

struct SwapFinder::State {
    const Plan& plan;
    const PlanTables& tables;
    std::vector<const Stem*> stems;
    std::vector<KindSwaps> kinds;

    State(const Plan& p, const PlanTables& t) : plan(p), tables(t) {
        for (const Stem& stem : plan.stems)
            stems.push_back(&stem);
        std::sort(stems.begin(), stems.end(), [](const Stem* x, const Stem* y) { return x->id < y->id; });
        Counts held(stems.size(), tables.lines().size()), free = held;
        for (std::size_t s = 0; s < stems.size(); ++s)
            for (const Tier& tier : stems[s]->tiers)
                for (const Slot& slot : tier.slots)
                    if (slot.filled()) {
                        const auto line = static_cast<std::size_t>(tables.lineOf(slot.leaf));
                        ++held(s, line);
                        free(s, line) += isFree(*stems[s], tier, slot);
                    }
        for (const PlanTables::KindRow& kind : tables.kinds())
            kinds.emplace_back(kind, stems.size(), held, free);
    }

    struct Found {
        CountSwap swap;
        double change = 0;
    };
    std::optional<Found> best(const SwapScope& scope) const {
        std::optional<std::size_t> only, gives;
        for (std::size_t s = 0; s < stems.size(); ++s)
            if (stems[s]->id == scope.stem)
                only = s;
        if (scope.stem && !only)
            return std::nullopt;
        if (only && scope.gives)
            gives = static_cast<std::size_t>(tables.lineOf(*scope.gives));
        std::optional<Found> least;
        for (std::size_t k = 0; k < kinds.size(); ++k) {
            const PlanTables::KindRow& kind = tables.kinds()[k];
            if (gives && (*gives < kind.firstLine || *gives >= kind.firstLine + kind.lines))
                continue;
            const auto found = kinds[k].best(only, gives);
            if (!found)
                continue;
            const double change =
                4 + 2 * static_cast<double>(found->gain) / static_cast<double>(kinds[k].leaves());
            if (!least || change < least->change)
                least = Found{*found, change};
        }
        return least;
    }
};

SwapFinder::SwapFinder(const Plan& plan, const PlanTables& tables)
    : state_(std::make_unique<State>(plan, tables)) {}
SwapFinder::~SwapFinder() = default;
SwapFinder::SwapFinder(SwapFinder&&) noexcept = default;
SwapFinder& SwapFinder::operator=(SwapFinder&&) noexcept = default;

std::optional<SwapFinder::Trade> SwapFinder::bestTrade(const SwapScope& scope) const {
    const auto found = state_->best(scope);
    if (!found)
        return std::nullopt;
    const auto& [swap, change] = *found;
    return Trade{state_->stems[swap.a]->id, state_->stems[swap.b]->id, state_->tables.lines()[swap.i].leaf,
                 state_->tables.lines()[swap.j].leaf, change};
}

std::optional<Swap> SwapFinder::best(const SwapScope& scope) const {
    const auto found = state_->best(scope);
    if (!found)
        return std::nullopt;
    const auto& [swap, change] = *found;
    const auto place = [&](std::size_t stem, std::size_t out, std::size_t in) {
        const Stem& at = *state_->stems[stem];
        return bestPlace(state_->plan, state_->tables, at, freeLeaves(state_->tables, at)[out],
                         state_->tables.lines()[in].leaf);
    };
    return Swap{place(swap.a, swap.i, swap.j), place(swap.b, swap.j, swap.i), change};
}

std::optional<Swap> bestSwap(const Plan& plan, const PlanTables& tables, const SwapScope& scope) {
    return SwapFinder(plan, tables).best(scope);
}

std::optional<Swap> bestSwap(const Plan& plan, const SwapScope& scope) {
    return bestSwap(plan, PlanTables(plan), scope);
}

} // namespace stemwright

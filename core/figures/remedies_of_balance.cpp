// Remedies that bring a stem leaves of other stems or of the tray.
#include "core/figures/arrangement.h"
#include "core/figures/best_swap.h"
#include "core/figures/remedies.h"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <tuple>

namespace stemwright {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

/// The unevenness of all stems in a kind if the board had one leaf more of a line, on that stem: from
/// Σ (x − n·m/M)² = Σ x² − 2/M Σ m Σ n·x + Σ n² Σ m² / M², so that a candidate costs its kind's lines only.
class OneMore {
public:
    OneMore(const Remedying& about, std::size_t stem, std::size_t kind, const std::vector<int>& added)
        : kind_(about.tables.kinds()[kind]) {
        const std::size_t lines = kind_.lines;
        placed_.assign(lines, 0);
        crossed_.assign(lines, 0);
        here_.assign(lines, 0);
        for (std::size_t s = 0; s < about.figures.stems.size(); ++s) {
            std::vector<double> held(lines);
            double n = 0;
            for (std::size_t i = 0; i < lines; ++i) {
                held[i] = about.figures.stems[s].held[kind_.firstLine + i] +
                          (s == stem ? added[kind_.firstLine + i] : 0);
                n += held[i];
            }
            if (s == stem) {
                // This stem will have one more, whichever it is.
                n += 1;
                here_ = held;
                onStem_ = n;
            }
            for (std::size_t i = 0; i < lines; ++i) {
                placed_[i] += held[i];
                crossed_[i] += n * held[i];
                squares_ += held[i] * held[i];
            }
            sizes_ += n * n;
            all_ += n;
        }
    }

    double with(std::size_t line) const {
        const std::size_t more = line - kind_.firstLine;
        double cross = 0;
        double squares = 0;
        for (std::size_t i = 0; i < placed_.size(); ++i) {
            const double m = placed_[i] + (i == more ? 1 : 0);
            cross += m * (crossed_[i] + (i == more ? onStem_ : 0));
            squares += m * m;
        }
        return squares_ + 2 * here_[more] + 1 - 2 * cross / all_ + sizes_ * squares / (all_ * all_);
    }

private:
    const PlanTables::KindRow& kind_;
    std::vector<double> placed_, crossed_, here_;
    double onStem_ = 0, squares_ = 0, sizes_ = 0, all_ = 0;
};

/// The kinds that may fill a slot: the one it waits for, else those of its tier, else any.
std::vector<std::size_t> kindsFor(const Remedying& about, const Tier& tier, const Slot& slot) {
    std::vector<std::size_t> kinds;
    const auto add = [&](KindId id) {
        const auto kind = static_cast<std::size_t>(about.tables.kindOf(id));
        if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end())
            kinds.push_back(kind);
    };
    if (slot.leaf.kind)
        add(slot.leaf.kind);
    else
        for (const Slot& other : tier.slots)
            if (other.leaf.kind)
                add(other.leaf.kind);
    if (kinds.empty())
        for (const Kind& kind : about.plan.kinds)
            add(kind.id);
    return kinds;
}

int unmatched(const Stem& stem, int tier) {
    return isUnmatchedPair(stem, stem.tiers[static_cast<std::size_t>(tier)]) ? 1 : 0;
}

Leaf& leafAt(Stem& stem, const SlotRef& at) {
    return stem.tiers[static_cast<std::size_t>(at.tier)].slots[static_cast<std::size_t>(at.slot)].leaf;
}

} // namespace

/// Each free slot of the tier in turn gets the leaf of the tray that leaves least unevenness; of equal ones the
/// leaf that matches another of the tier.
std::vector<Edit> fillFromTray(const Remedying& about, std::size_t place, int tierNumber) {
    const Stem& stem = about.plan.stems[place];
    Tier tier = stem.tiers[static_cast<std::size_t>(tierNumber)];
    std::vector<int> added(about.tables.lines().size(), 0);
    std::vector<Edit> edits;
    for (std::size_t s = 0; s < tier.slots.size(); ++s) {
        Slot& slot = tier.slots[s];
        if (slot.filled() || !isFree(stem, tier, slot))
            continue;
        std::optional<std::size_t> best;
        std::pair<double, bool> least{never, false};
        for (const std::size_t kind : kindsFor(about, tier, slot)) {
            const OneMore more(about, place, kind, added);
            // Kinds are compared by what the leaf adds to the unevenness of its kind.
            const PlanTables::KindRow& row = about.tables.kinds()[kind];
            double before = 0;
            for (const StemFigures& figures : about.figures.stems)
                for (std::size_t i = row.firstLine; i < row.firstLine + row.lines; ++i)
                    before +=
                        (figures.held[i] - figures.fairShare[i]) * (figures.held[i] - figures.fairShare[i]);
            for (std::size_t i = row.firstLine; i < row.firstLine + row.lines; ++i) {
                const TrayLine& line = about.figures.lines[i];
                if (line.left() - added[i] <= 0)
                    continue;
                const bool unlike = std::none_of(tier.slots.begin(), tier.slots.end(),
                                                 [&](const Slot& other) { return other.leaf == line.leaf; });
                const double adds = more.with(i) - before;
                // Rounding is no reason to prefer one leaf.
                const bool less = adds < least.first - 1e-9;
                if (less || (adds < least.first + 1e-9 && least.second && !unlike)) {
                    least = {adds, unlike};
                    best = i;
                }
            }
        }
        if (!best)
            continue;
        slot.leaf = about.figures.lines[*best].leaf;
        ++added[*best];
        edits.push_back(FillSlot{{stem.id, tierNumber, static_cast<int>(s)}, slot.leaf});
    }
    return edits;
}

/// One leaf of the pair is exchanged for the other's like, from where fewest pairs remain unmatched, then least
/// unevenness, then nearest: the same stem before others, and the tray last.
std::vector<Edit> matchPair(const Remedying& about, std::size_t place, int tierNumber) {
    const Stem& stem = about.plan.stems[place];
    const Tier& tier = stem.tiers[static_cast<std::size_t>(tierNumber)];
    std::optional<Edit> best;
    std::tuple<int, double, int, int> least{0, never, 0, 0};
    const auto offer = [&](const std::tuple<int, double, int, int>& cost, Edit edit) {
        const bool sameBalance = std::abs(std::get<1>(cost) - std::get<1>(least)) < 1e-9;
        const bool better = std::get<0>(cost) != std::get<0>(least) ? std::get<0>(cost) < std::get<0>(least)
                            : sameBalance ? std::tie(std::get<2>(cost), std::get<3>(cost)) <
                                                std::tie(std::get<2>(least), std::get<3>(least))
                                          : std::get<1>(cost) < std::get<1>(least);
        if (better) {
            least = cost;
            best = std::move(edit);
        }
    };
    for (int side = 0; side < 2; ++side) {
        const Slot& here = tier.slots[static_cast<std::size_t>(side)];
        const Leaf wanted = tier.slots[static_cast<std::size_t>(1 - side)].leaf;
        const SlotRef at{stem.id, tierNumber, side};
        if (!isFree(stem, tier, here))
            continue;
        const std::size_t out = about.line(here.leaf);
        const std::size_t in = about.line(wanted);
        for (std::size_t s = 0; s < about.plan.stems.size(); ++s) {
            const Stem& other = about.plan.stems[s];
            if (about.figures.stems[s].held[in] == 0 || other.locked)
                continue;
            double change = 0;
            if (s != place)
                change = about.unevennessWith(place, out, in) - about.figures.stems[place].unevenness +
                         about.unevennessWith(s, in, out) - about.figures.stems[s].unevenness;
            Stem after = other;
            const auto theirs = freeLeaves(about.tables, other);
            for (const SlotRef& from : theirs[in]) {
                if (s == place && from.tier == tierNumber)
                    continue;
                Leaf& there = leafAt(after, from);
                const Leaf was = std::exchange(there, here.leaf);
                const int pairs = unmatched(after, from.tier) - unmatched(other, from.tier) - 1;
                there = was;
                if (pairs < 0)
                    offer({pairs, change, s == place ? 0 : 1, std::abs(from.tier - tierNumber)},
                          SwapSlots{at, from});
            }
        }
        if (about.figures.lines[in].left() > 0) {
            Plan after = about.plan;
            find(after, at)->leaf = wanted;
            offer({-1, figures(after).pot.unevenness - about.figures.pot.unevenness, 2, 0},
                  FillSlot{at, wanted});
        }
    }
    return best ? std::vector<Edit>{*best} : std::vector<Edit>{};
}

/// The best single swap in which this stem gives a leaf of that line.
std::vector<Edit> bestSwapForShare(const Remedying& about, std::size_t place, std::size_t line) {
    const auto swap =
        bestSwap(about.plan, about.tables, {about.plan.stems[place].id, about.tables.lines()[line].leaf});
    return swap ? std::vector<Edit>{SwapSlots{swap->a, swap->b}} : std::vector<Edit>{};
}

/// The swap of two leaves of a kind between this stem and another that lowers the pot's drift most while this
/// stem's own falls.
std::vector<Edit> bestSwapForDrift(const Remedying& about, std::size_t place) {
    const Stem& stem = about.plan.stems[place];
    const auto& lines = about.tables.lines();
    EarthMover mover;
    const auto driftWith = [&](std::size_t s, std::size_t out, std::size_t in) {
        std::vector<std::int64_t> beads = about.figures.stems[s].beads;
        for (const PlanTables::ColourBeads& part : lines[out].beads)
            beads[part.colour] -= part.beads;
        for (const PlanTables::ColourBeads& part : lines[in].beads)
            beads[part.colour] += part.beads;
        return driftOf(mover, beads, about.board, about.tables);
    };
    std::vector<double> weight;
    for (const StemFigures& figures : about.figures.stems) {
        double beads = 0;
        for (const std::int64_t count : figures.beads)
            beads += static_cast<double>(count);
        weight.push_back(beads);
    }
    std::vector<std::vector<std::vector<SlotRef>>> free;
    for (const Stem& other : about.plan.stems)
        free.push_back(freeLeaves(about.tables, other));

    double least = -1e-9;
    std::optional<std::tuple<std::size_t, std::size_t, std::size_t>> best;
    for (std::size_t a = 0; a < lines.size(); ++a) {
        if (free[place][a].empty())
            continue;
        const PlanTables::KindRow& kind = about.tables.kinds()[lines[a].kind];
        for (std::size_t b = kind.firstLine; b < kind.firstLine + kind.lines; ++b) {
            if (b == a)
                continue;
            const double own = driftWith(place, a, b) - about.figures.stems[place].drift;
            if (own >= -1e-9)
                continue;
            for (std::size_t s = 0; s < about.plan.stems.size(); ++s) {
                if (s == place || free[s][b].empty())
                    continue;
                // The other stem can gain no more than all of its drift.
                if (own * weight[place] - about.figures.stems[s].drift * weight[s] >= least)
                    continue;
                const double change =
                    own * weight[place] + (driftWith(s, b, a) - about.figures.stems[s].drift) * weight[s];
                if (change < least) {
                    least = change;
                    best = {s, a, b};
                }
            }
        }
    }
    if (!best)
        return {};
    const auto& [s, a, b] = *best;
    return {SwapSlots{
        bestPlace(about.plan, about.tables, stem, free[place][a], about.figures.lines[b].leaf),
        bestPlace(about.plan, about.tables, about.plan.stems[s], free[s][b], about.figures.lines[a].leaf)}};
}

} // namespace stemwright

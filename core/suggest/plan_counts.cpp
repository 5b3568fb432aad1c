#include "core/suggest/plan_counts.h"

#include <algorithm>
#include <numeric>
#include <unordered_map>
#include <vector>

namespace stemwright {

namespace {

/// Where the lines of all stocks stand: a number for each kind and mix, and where each kind's begin.
struct Lines {
    struct KindLines {
        std::size_t first = 0;
        std::unordered_map<MixId, std::size_t> of;
    };
    std::unordered_map<KindId, KindLines> kinds;
    std::size_t count = 0;

    explicit Lines(const Plan& plan) {
        for (const Kind& kind : plan.kinds) {
            KindLines& lines = kinds[kind.id];
            lines.first = count;
            for (const StockLine& line : kind.stock)
                lines.of.emplace(line.mix, count++);
        }
    }
};

} // namespace

double unevennessOf(const Plan& plan) {
    const Lines lines(plan);
    std::vector<std::vector<int>> held(plan.stems.size(), std::vector<int>(lines.count, 0));
    std::vector<int> pot(lines.count, 0);
    for (std::size_t s = 0; s < plan.stems.size(); ++s)
        for (const Tier& tier : plan.stems[s].tiers)
            for (const Slot& slot : tier.slots)
                if (slot.filled()) {
                    const std::size_t line = lines.kinds.at(slot.leaf.kind).of.at(slot.leaf.mix);
                    ++held[s][line];
                    ++pot[line];
                }
    double sum = 0;
    for (const auto& [kind, own] : lines.kinds) {
        const auto ofKind = [&](const std::vector<int>& counts) {
            const auto first = counts.begin() + static_cast<std::ptrdiff_t>(own.first);
            return std::accumulate(first, first + static_cast<std::ptrdiff_t>(own.of.size()), 0.0);
        };
        const double all = ofKind(pot);
        if (all <= 0)
            continue;
        for (const std::vector<int>& stem : held) {
            const double leaves = ofKind(stem);
            for (std::size_t line = own.first; line < own.first + own.of.size(); ++line) {
                const double off = stem[line] - leaves * pot[line] / all;
                sum += off * off;
            }
        }
    }
    return sum;
}

int unmatchedPairsOf(const Plan& plan) {
    int count = 0;
    for (const Stem& stem : plan.stems)
        if (leavesPerTier(stem) == 2)
            for (const Tier& tier : stem.tiers)
                count += tier.slots.size() == 2 && tier.slots[0].filled() && tier.slots[1].filled() &&
                         !(tier.slots[0].leaf == tier.slots[1].leaf);
    return count;
}

int fillableSlots(const Plan& plan) {
    std::unordered_map<KindId, int> waiting, left;
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            for (const Slot& slot : tier.slots)
                if (!slot.filled() && slot.leaf.kind && !slot.pinned && !stem.locked && !tier.progress.bound)
                    ++waiting[slot.leaf.kind];
    if (waiting.empty())
        return 0;
    for (const TrayLine& line : tray(plan))
        left[line.leaf.kind] += line.left();
    int fillable = 0;
    for (const auto& [kind, slots] : waiting)
        fillable += std::min(slots, left[kind]);
    return fillable;
}

std::int64_t inversionsOf(const Plan& plan) {
    const Lines lines(plan);
    std::int64_t count = 0;
    for (const Stem& stem : plan.stems) {
        std::vector<int> above(lines.count, 0);
        for (const Tier& tier : stem.tiers) {
            for (const Slot& slot : tier.slots)
                if (slot.filled()) {
                    const Lines::KindLines& own = lines.kinds.at(slot.leaf.kind);
                    for (std::size_t l = own.of.at(slot.leaf.mix) + 1; l < own.first + own.of.size(); ++l)
                        count += above[l];
                }
            for (const Slot& slot : tier.slots)
                if (slot.filled())
                    ++above[lines.kinds.at(slot.leaf.kind).of.at(slot.leaf.mix)];
        }
    }
    return count;
}

} // namespace stemwright

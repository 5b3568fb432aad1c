#include "core/figures/stem_figures.h"

#include "core/figures/arrangement.h"
#include "core/figures/height.h"
#include "core/figures/stretches.h"

#include <algorithm>

namespace stemwright {

StemFigures StemReckoner::operator()(const Stem& stem, const Plan& plan, const PlanTables& tables) {
    StemFigures out;
    out.stem = stem.id;
    out.tiers = static_cast<int>(stem.tiers.size());
    countLeaves(stem, tables, out);
    measure(stem, plan, tables, out);
    return out;
}

void StemReckoner::countLeaves(const Stem& stem, const PlanTables& tables, StemFigures& out) {
    out.held.assign(tables.lines().size(), 0);
    out.fairShare.assign(tables.lines().size(), 0);
    rows_.resize(tables.kinds().size());
    for (auto& row : rows_)
        row.clear();
    for (std::size_t i = 0; i < stem.tiers.size(); ++i) {
        out.unmatchedPairs += isUnmatchedPair(stem, stem.tiers[i]);
        for (const Slot& slot : stem.tiers[i].slots) {
            ++out.slots;
            if (!slot.filled())
                continue;
            const auto line = static_cast<std::size_t>(tables.lineOf(slot.leaf));
            ++out.leaves;
            ++out.held[line];
            rows_[tables.lines()[line].kind].push_back({static_cast<int>(i), tables.lines()[line].place});
        }
    }

    for (std::size_t k = 0; k < rows_.size(); ++k) {
        if (rows_[k].size() < 2)
            continue;
        order_.begin(static_cast<int>(tables.kinds()[k].lines));
        for (std::size_t i = 0; i < rows_[k].size(); ++i) {
            if (i > 0 && rows_[k][i].tier != rows_[k][i - 1].tier)
                order_.endTier();
            order_.add(rows_[k][i].line);
        }
        order_.endTier();
        out.inversions += order_.inversions();
    }

    out.beads.assign(tables.colours(), 0);
    for (std::size_t i = 0; i < out.held.size(); ++i) {
        if (out.held[i] == 0)
            continue;
        const PlanTables::Line& line = tables.lines()[i];
        for (const PlanTables::ColourBeads& part : line.beads)
            out.beads[part.colour] += std::int64_t{out.held[i]} * part.beads;
        out.leafWire += out.held[i] * tables.kinds()[line.kind].wire;
    }
}

void StemReckoner::measure(const Stem& stem, const Plan& plan, const PlanTables& tables, StemFigures& out) {
    reach_.assign(stem.tiers.size(), Length{});
    const Bundle foot = stretchesOf(stem, stretches_, [&](Bundle& bundle, std::size_t tier, const Slot& slot) {
        const auto& kind = tables.kinds()[static_cast<std::size_t>(tables.kindOf(slot.leaf.kind))];
        bundle.add(kind.wiresAtBase, kind.wireDiameter);
        reach_[tier] = std::max(reach_[tier], kind.reach);
    });
    out.wires = foot.wires();
    out.bundle = stretches_.back().bundle;
    out.height = heightOf(stem, reach_, plan.pot.plantingDepth);
    out.wraps = wrapFigures(plan.binding, stretches_);
    out.hold = holdFigures(stem, plan, tables, out.wraps);
}

} // namespace stemwright

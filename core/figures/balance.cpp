#include "core/figures/balance.h"

#include <numeric>

namespace stemwright {

double fairShare(int onStem, int ofMix, int ofKind) {
    return ofKind == 0 ? 0 : static_cast<double>(onStem) * ofMix / ofKind;
}

BoardCounts::BoardCounts(const PlanTables& tables)
    : placed(tables.lines().size(), 0), ofKind(tables.kinds().size(), 0), beads(tables.colours(), 0) {}

void BoardCounts::add(std::span<const int> held, const PlanTables& tables) {
    for (std::size_t i = 0; i < held.size(); ++i) {
        const PlanTables::Line& line = tables.lines()[i];
        placed[i] += held[i];
        ofKind[line.kind] += held[i];
        for (const PlanTables::ColourBeads& part : line.beads)
            beads[part.colour] += std::int64_t{held[i]} * part.beads;
    }
}

double unevennessOf(std::span<const int> held, const BoardCounts& board, const PlanTables& tables,
                    std::vector<double>* fairShares) {
    if (fairShares)
        fairShares->assign(held.size(), 0);
    double sum = 0;
    for (std::size_t k = 0; k < tables.kinds().size(); ++k) {
        const PlanTables::KindRow& kind = tables.kinds()[k];
        const auto ofKind = held.subspan(kind.firstLine, kind.lines);
        const int onStem = std::accumulate(ofKind.begin(), ofKind.end(), 0);
        if (onStem == 0)
            continue;
        for (std::size_t i = kind.firstLine; i < kind.firstLine + kind.lines; ++i) {
            const double share = fairShare(onStem, board.placed[i], board.ofKind[k]);
            if (fairShares)
                (*fairShares)[i] = share;
            sum += (held[i] - share) * (held[i] - share);
        }
    }
    return sum;
}

double driftOf(EarthMover& mover, std::span<const std::int64_t> stem, const BoardCounts& board,
               const PlanTables& tables) {
    return mover.betweenWeightings(stem, board.beads, tables.differences()).value_or(0);
}

} // namespace stemwright

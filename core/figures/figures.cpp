#include "core/figures/figures.h"

#include "core/figures/board_figures.h"
#include "core/figures/findings.h"
#include "core/figures/skyline.h"
#include "core/plan/making.h"

#include <numeric>

namespace stemwright {

StemShare shareOf(const StemFigures& stem) {
    return {stem.drift, stem.unevenness, stem.height, stem.tiers > 0,
            std::accumulate(stem.beads.begin(), stem.beads.end(), std::int64_t{0})};
}

PotShare potShareOf(const std::vector<StemShare>& stems) {
    PotShare pot;
    double weighted = 0;
    double beads = 0;
    for (const StemShare& stem : stems) {
        pot.unevenness += stem.unevenness;
        weighted += stem.drift * static_cast<double>(stem.beads);
        beads += static_cast<double>(stem.beads);
    }
    pot.drift = beads > 0 ? weighted / beads : 0;
    return pot;
}

std::vector<Length> skylineHeights(const std::vector<StemShare>& stems) {
    std::vector<Length> heights;
    heights.reserve(stems.size());
    for (const StemShare& stem : stems)
        if (stem.tiered)
            heights.push_back(stem.height);
    return heights;
}

BoardCounts countBoard(const std::vector<StemFigures>& stems, const PlanTables& tables) {
    BoardCounts board(tables);
    for (const StemFigures& stem : stems)
        board.add(stem.held, tables);
    return board;
}

std::vector<TrayLine> linesOf(const PlanTables& tables, const BoardCounts& board) {
    std::vector<TrayLine> lines;
    lines.reserve(tables.lines().size());
    for (std::size_t i = 0; i < tables.lines().size(); ++i) {
        const PlanTables::Line& line = tables.lines()[i];
        lines.push_back({line.leaf, line.made + line.toMake, board.placed[i]});
    }
    return lines;
}

void compareWithBoard(StemFigures& stem, const BoardCounts& board, const PlanTables& tables,
                      EarthMover& mover) {
    stem.unevenness = unevennessOf(stem.held, board, tables, &stem.fairShare);
    stem.drift = driftOf(mover, stem.beads, board, tables);
}

PotFigures potFiguresOf(const std::vector<StemFigures>& stems, const Plan& plan, const PlanTables& tables,
                        const BoardCounts& board) {
    PotFigures pot;
    pot.stems = static_cast<int>(stems.size());
    pot.wraps.resize(plan.binding.wraps.size());
    std::vector<StemShare> shares;
    shares.reserve(stems.size());
    for (const StemFigures& stem : stems) {
        shares.push_back(shareOf(stem));
        pot.slots += stem.slots;
        pot.leaves += stem.leaves;
        pot.mass += stem.hold.mass;
        for (std::size_t i = 0; i < pot.wraps.size(); ++i) {
            pot.wraps[i].used += stem.wraps[i].used;
            pot.wraps[i].toCut += stem.wraps[i].toCut;
        }
    }
    const PotShare share = potShareOf(shares);
    pot.drift = share.drift;
    pot.unevenness = share.unevenness;
    const std::vector<Length> heights = skylineHeights(shares);
    const Skyline sky = skylineOf(heights);
    pot.shortest = sky.shortest;
    pot.tallest = sky.tallest;
    pot.meanHeight = sky.mean;
    pot.heightVariation = sky.variation;
    pot.nearTwins = countNearTwins(heights, nearTwin);

    pot.beads = board.beads;
    pot.allBeads.assign(tables.colours(), 0);
    const std::vector<int> toMake = stillToMake(plan);
    for (std::size_t i = 0; i < tables.lines().size(); ++i) {
        const PlanTables::Line& line = tables.lines()[i];
        const int stock = line.made + line.toMake;
        pot.inTray += stock - board.placed[i];
        pot.toMake += toMake[i];
        pot.leafWire += board.placed[i] * tables.kinds()[line.kind].wire;
        pot.allLeafWire += stock * tables.kinds()[line.kind].wire;
        for (const PlanTables::ColourBeads& part : line.beads)
            pot.allBeads[part.colour] += std::int64_t{stock} * part.beads;
    }
    return pot;
}

Figures figuresOf(const Plan& plan, const PlanTables& tables, StemReckoner& reckoner, EarthMover& mover) {
    Figures all;
    all.stems.reserve(plan.stems.size());
    for (const Stem& stem : plan.stems)
        all.stems.push_back(reckoner(stem, plan, tables));
    const BoardCounts board = countBoard(all.stems, tables);
    all.lines = linesOf(tables, board);
    for (StemFigures& stem : all.stems)
        compareWithBoard(stem, board, tables, mover);
    all.pot = potFiguresOf(all.stems, plan, tables, board);
    return all;
}

Figures figures(const Plan& plan) {
    StemReckoner reckoner;
    EarthMover mover;
    return figuresOf(plan, PlanTables(plan), reckoner, mover);
}

} // namespace stemwright

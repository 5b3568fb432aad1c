// The numbers that go into the pot's figures and the supplies.
#include "core/figures/explain_parts.h"
#include "core/figures/findings.h"
#include "core/figures/pot_figures.h"
#include "core/plan/lookup.h"
#include "core/plan/making.h"

#include <cmath>
#include <numeric>
#include <utility>

namespace stemwright {

namespace {

void put(std::vector<Input>& out, Term term, TermUnit unit, double value, std::string of = {}) {
    out.push_back({term, unit, value, std::move(of)});
}

std::int64_t sum(const std::vector<std::int64_t>& values) {
    return std::accumulate(values.begin(), values.end(), std::int64_t{0});
}

/// One line for each stem: its name and its part.
template <class Part>
void eachStem(const Plan& plan, const Figures& figures, std::vector<Input>& out, Term term, TermUnit unit,
              const Part& part) {
    for (std::size_t i = 0; i < figures.stems.size(); ++i)
        put(out, term, unit, part(figures.stems[i]), plan.stems[i].name);
}

void stockOf(const Plan& plan, std::vector<Input>& out, Term term) {
    const std::vector<int> toMake = stillToMakeByKind(plan);
    for (std::size_t k = 0; k < plan.kinds.size(); ++k) {
        int count = 0;
        for (const StockLine& line : plan.kinds[k].stock)
            count += line.total();
        put(out, term, TermUnit::count, term == Term::stock ? count : toMake[k], plan.kinds[k].name);
    }
}

void shapeOfPot(const Pot& pot, std::vector<Input>& out, Length depth) {
    put(out, Term::topDiameter, TermUnit::size, inMillimetres(pot.topDiameter));
    if (pot.opening != PotOpening::round)
        put(out, Term::topBreadth, TermUnit::size, inMillimetres(pot.topBreadth));
    if (pot.shape == PotShape::frustum)
        put(out, Term::bottomDiameter, TermUnit::size, inMillimetres(pot.bottomDiameter));
    put(out, Term::depth, TermUnit::size, inMillimetres(depth));
}

void filling(const Plan& plan, const PotBalance& balance, bool cover, std::vector<Input>& out) {
    const Pot& pot = plan.pot;
    if (cover && !pot.cover)
        return;
    shapeOfPot(pot, out, cover ? pot.cover->depth : pot.clay.depth);
    put(out, Term::volume, TermUnit::volume, cover ? balance.coverVolume : balance.clayVolume);
    put(out, Term::density, TermUnit::density, cover ? densityOf(plan, *pot.cover) : densityOf(plan, pot.clay));
}

void purchase(std::vector<Input>& out, const Purchase& bought, double sold, double price, TermUnit unit) {
    if (sold > 0)
        put(out, Term::sold, unit, sold);
    if (bought.packs > 0)
        put(out, Term::packs, TermUnit::count, static_cast<double>(bought.packs));
    if (bought.cost > 0)
        put(out, Term::price, TermUnit::money, price);
}

} // namespace

void explainPot(const Plan& plan, const Figures& figures, FigureRef ref, std::vector<Input>& out) {
    const PotFigures& pot = figures.pot;
    const auto all = [&](Term term, TermUnit unit, const auto& part) {
        eachStem(plan, figures, out, term, unit, part);
    };
    const auto wrapOf = [&](const auto& member) {
        all(Term::used, TermUnit::cut, [&](const StemFigures& stem) {
            return ref.index < stem.wraps.size() ? inMillimetres(stem.wraps[ref.index].*member) : 0;
        });
    };
    const auto unweighed = [&] {
        explainUnweighed(
            plan,
            [&](const Kind& kind) {
                int leaves = 0;
                for (const TrayLine& line : figures.lines)
                    leaves += line.leaf.kind == kind.id ? line.placed : 0;
                return leaves;
            },
            out);
    };
    switch (ref.figure) {
    case FigureName::potStems:
        return put(out, Term::stems, TermUnit::count, pot.stems);
    case FigureName::potSlots:
        return all(Term::placesOfStem, TermUnit::count, [](const StemFigures& s) { return s.slots; });
    case FigureName::potLeaves:
        return all(Term::leavesOfStem, TermUnit::count, [](const StemFigures& s) { return s.leaves; });
    case FigureName::potInTray:
        stockOf(plan, out, Term::stock);
        return put(out, Term::placed, TermUnit::count, pot.leaves);
    case FigureName::potToMake:
        return stockOf(plan, out, Term::toMake);
    case FigureName::potUnevenness:
        return all(Term::unevennessOfStem, TermUnit::decimal,
                   [](const StemFigures& s) { return s.unevenness; });
    case FigureName::potDrift:
        for (std::size_t i = 0; i < figures.stems.size(); ++i) {
            put(out, Term::driftOfStem, TermUnit::decimal, figures.stems[i].drift, plan.stems[i].name);
            put(out, Term::beadsOfStem, TermUnit::count, static_cast<double>(sum(figures.stems[i].beads)),
                plan.stems[i].name);
        }
        return;
    case FigureName::potShortest:
    case FigureName::potTallest:
    case FigureName::potMeanHeight:
    case FigureName::potNearTwins:
        for (std::size_t i = 0; i < figures.stems.size(); ++i)
            if (figures.stems[i].tiers > 0)
                put(out, Term::heightOfStem, TermUnit::size, inMillimetres(figures.stems[i].height),
                    plan.stems[i].name);
        if (ref.figure == FigureName::potNearTwins)
            put(out, Term::twinDistance, TermUnit::size, inMillimetres(nearTwin));
        return;
    case FigureName::potHeightVariation:
        put(out, Term::standardDeviation, TermUnit::size, pot.heightVariation * inMillimetres(pot.meanHeight));
        return put(out, Term::meanHeight, TermUnit::size, inMillimetres(pot.meanHeight));
    case FigureName::potBeads:
        return all(Term::beadsOfStem, TermUnit::count, [&](const StemFigures& s) {
            return ref.index < s.beads.size() ? static_cast<double>(s.beads[ref.index]) : 0;
        });
    case FigureName::potAllBeads:
    case FigureName::potAllLeafWire:
        return stockOf(plan, out, Term::stock);
    case FigureName::potLeafWire:
        return all(Term::used, TermUnit::cut, [](const StemFigures& s) { return inMillimetres(s.leafWire); });
    case FigureName::potWrapUsed:
        return wrapOf(&WrapFigures::used);
    case FigureName::potWrapToCut:
        return wrapOf(&WrapFigures::toCut);
    case FigureName::potMass:
        all(Term::stemMass, TermUnit::mass, [](const StemFigures& s) { return inGrams(s.hold.mass); });
        return unweighed();
    case FigureName::potStake:
        put(out, Term::clayDepth, TermUnit::size, inMillimetres(plan.pot.clay.depth));
        return put(out, Term::stakeOverlap, TermUnit::size, inMillimetres(plan.pot.stake.overlap));
    default:
        break;
    }
    const PotBalance balance = potBalance(plan, figures);
    switch (ref.figure) {
    case FigureName::potClay:
        return filling(plan, balance, false, out);
    case FigureName::potCover:
        return filling(plan, balance, true, out);
    case FigureName::potWhole:
    case FigureName::potCentre:
        put(out, Term::potMassTerm, TermUnit::mass, inGrams(plan.pot.mass));
        put(out, Term::clayMass, TermUnit::mass, inGrams(balance.clay));
        if (plan.pot.cover)
            put(out, Term::coverMass, TermUnit::mass, inGrams(balance.cover));
        put(out, Term::stemMass, TermUnit::mass, inGrams(pot.mass));
        return unweighed();
    case FigureName::potTilt:
    case FigureName::potWeightToAdd:
        if (plan.pot.feet > 0) {
            if (plan.pot.footDiameter > Length{})
                put(out, Term::standsOn, TermUnit::size, inMillimetres(plan.pot.footDiameter));
            put(out, Term::feet, TermUnit::count, plan.pot.feet);
        }
        put(out, Term::foot, TermUnit::size, inMillimetres(balance.foot));
        put(out, Term::aside, TermUnit::size, inMillimetres(balance.aside));
        put(out, Term::centreHeight, TermUnit::size, inMillimetres(balance.centre));
        if (ref.figure == FigureName::potWeightToAdd)
            put(out, Term::wantedTilt, TermUnit::angle, inDegrees(steadyTilt));
        return unweighed();
    default:
        return;
    }
}

void explainSupplies(const Plan& plan, const Supplies& needs, FigureRef ref, std::vector<Input>& out) {
    const Buying& buying = plan.buying;
    switch (ref.figure) {
    case FigureName::buyLeaves:
        return stockOf(plan, out, Term::toMake);
    case FigureName::buyBeads: {
        if (ref.index >= needs.beads.size())
            return;
        const BeadSupply& bead = needs.beads[ref.index];
        put(out, Term::neededBeads, TermUnit::count, static_cast<double>(bead.beads));
        put(out, Term::spare, TermUnit::percent, buying.spare);
        const auto size = beadSizeNamed(plan, bead.size);
        if (size && size->mass > Mass{})
            put(out, Term::beadMass, TermUnit::decimal, 1000 * inGrams(size->mass));
        else
            put(out, Term::beadsUnweighed, TermUnit::count, static_cast<double>(bead.withSpare), bead.size);
        if (size)
            put(out, Term::beadPitch, TermUnit::wire, inMillimetres(size->pitch));
        const Colour* colour = find(plan, bead.colour);
        const Pack& pack = colour && colour->sold.amount > 0 ? colour->sold : buying.beads;
        return purchase(out, bead.buy, pack.amount, pack.price, TermUnit::mass);
    }
    case FigureName::buyLeafWire: {
        if (ref.index >= needs.leafWire.size())
            return;
        const std::vector<int> toMake = stillToMakeByKind(plan);
        for (std::size_t k = 0; k < plan.kinds.size(); ++k) {
            const Kind& kind = plan.kinds[k];
            if (toMake[k] == 0 || kind.wireDiameter != needs.leafWire[ref.index].diameter ||
                metalNameOf(kind) != needs.leafWire[ref.index].metal)
                continue;
            put(out, Term::toMake, TermUnit::count, toMake[k], kind.name);
            put(out, Term::wireALeaf, TermUnit::cut, inMillimetres(kind.wire), kind.name);
        }
        put(out, Term::spare, TermUnit::percent, buying.spare);
        const Pack& pack = leafWirePack(buying, needs.leafWire[ref.index].diameter);
        return purchase(out, needs.leafWire[ref.index].buy, pack.amount, pack.price, TermUnit::cut);
    }
    case FigureName::buyWrap: {
        if (ref.index >= needs.wraps.size())
            return;
        const WrapSupply& wrap = needs.wraps[ref.index];
        put(out, Term::stems, TermUnit::count, static_cast<double>(wrap.stems.size()));
        put(out, Term::used, TermUnit::cut, inMillimetres(wrap.toCut));
        const auto& sold = plan.binding.wraps[ref.index].sold;
        return purchase(out, wrap.buy, sold ? inMillimetres(*sold) : 0,
                        ref.index < buying.wraps.size() ? buying.wraps[ref.index].price : 0, TermUnit::cut);
    }
    case FigureName::buyBars: {
        if (ref.index >= needs.bars.size())
            return;
        const BarSupply& bar = needs.bars[ref.index];
        put(out, Term::pieces, TermUnit::count, static_cast<double>(bar.pieces.size()));
        put(out, Term::used, TermUnit::cut, inMillimetres(bar.length));
        if (bar.cutting.barCount == 0)
            return;
        put(out, Term::barsCut, TermUnit::count, bar.cutting.barCount);
        put(out, Term::fewestBars, TermUnit::count, bar.cutting.fewestBars);
        return put(out, Term::waste, TermUnit::cut, inMillimetres(bar.cutting.waste));
    }
    case FigureName::buyClay:
    case FigureName::buyCover: {
        const bool cover = ref.figure == FigureName::buyCover;
        if (cover && !plan.pot.cover)
            return;
        shapeOfPot(plan.pot, out, cover ? plan.pot.cover->depth : plan.pot.clay.depth);
        put(out, Term::density, TermUnit::density,
            cover ? densityOf(plan, *plan.pot.cover) : densityOf(plan, plan.pot.clay));
        const Pack& pack = cover ? buying.cover : buying.clay;
        return purchase(out, cover ? needs.coverToBuy : needs.clayToBuy, pack.amount, pack.price,
                        TermUnit::mass);
    }
    case FigureName::buyHours: {
        double leaves = 0;
        const std::vector<int> toMake = stillToMakeByKind(plan);
        for (std::size_t k = 0; k < plan.kinds.size(); ++k)
            leaves += toMake[k] * plan.kinds[k].minutes;
        put(out, Term::minutesOfLeaves, TermUnit::minutes, leaves);
        put(out, Term::tiersToBind, TermUnit::count, needs.tiersToBind);
        if (needs.tiersToBind > 0 && needs.minutesLeft > leaves)
            put(out, Term::minutesATier, TermUnit::minutes, (needs.minutesLeft - leaves) / needs.tiersToBind);
        return;
    }
    case FigureName::buyCost: {
        for (const BeadSupply& bead : needs.beads)
            if (bead.buy.cost > 0)
                put(out, Term::beadsCost, TermUnit::money, bead.buy.cost,
                    find(plan, bead.colour)->name + " " + bead.size);
        const auto rest = [&](const auto& list) {
            double cost = 0;
            for (const auto& each : list)
                cost += each.buy.cost;
            return cost;
        };
        const std::pair<Term, double> others[] = {
            {Term::leafWireCost, rest(needs.leafWire)},
            {Term::bindingCost, rest(needs.wraps)},
            {Term::barsCost, rest(needs.bars)},
            {Term::fillingCost, needs.clayToBuy.cost + needs.coverToBuy.cost}};
        for (const auto& [term, cost] : others)
            if (cost > 0)
                put(out, term, TermUnit::money, cost);
        return;
    }
    default:
        return;
    }
}

} // namespace stemwright

#include "core/figures/explain.h"

#include "core/figures/hold.h"
#include "core/quantity/circle_packing.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>
#include <utility>

namespace stemwright {
namespace {

struct Explained {
    Plan plan;
    Figures all;
    Supplies needs;

    explicit Explained(Plan of) : plan(std::move(of)), all(figures(plan)), needs(supplies(plan, all)) {}
    Explanation operator()(FigureRef ref) const { return explain(plan, all, needs, ref); }
    /// The sum of one term.
    double sum(FigureRef ref, Term term) const {
        double total = 0;
        for (const Input& input : (*this)(ref).inputs)
            total += input.term == term ? input.value : 0;
        return total;
    }
    /// Σ of products of one term and the one that follows it.
    double products(FigureRef ref, Term first, Term second) const {
        const Explanation of = (*this)(ref);
        double total = 0;
        for (std::size_t i = 0; i + 1 < of.inputs.size(); ++i)
            if (of.inputs[i].term == first && of.inputs[i + 1].term == second)
                total += of.inputs[i].value * of.inputs[i + 1].value;
        return total;
    }
};

Plan fullBoard() {
    Plan plan = test::smallBoard();
    plan.stems[0].core = CoreWire{millimetres(0.9), std::nullopt, Metal::softSteel, ""};
    plan.pot.cover = Cover{};
    plan.pot.plantingDepth = millimetres(10);
    plan.binding.wraps[0].sold = millimetres(8'000);
    plan.buying.bars = {{millimetres(300), 0.5}};
    plan.buying.beads = {5, 2, ""};
    plan.kinds[0].minutes = 12;
    plan.stems[1].tiers[0].progress = {true, 4, ""};
    return plan;
}

// Counts the fields, so that a new one fails to compile here until it is explained.
void fieldsAreExplained(const StemFigures& stem, const PotFigures& pot) {
    const auto& [id, height, tiers, slots, leaves, held, fair, unevenness, drift, beads, inversions, unmatched,
                 wires, bundle, leafWire, wraps, hold] = stem;
    const auto& [mass, moment, plastic, ratio, sag, centre, beyond] = hold;
    const auto& [stems, potSlots, potLeaves, inTray, potUnevenness, potDrift, shortest, tallest, mean,
                 variation, twins, potBeads, allBeads, potLeafWire, allLeafWire, toMake, potWraps, potMass] =
        pot;
    const auto& [used, toCut] = WrapFigures{};
    (void)std::tie(id, height, tiers, slots, leaves, held, fair, unevenness, drift, beads, inversions,
                   unmatched, wires, bundle, leafWire, wraps, mass, moment, plastic, ratio, sag, centre, beyond,
                   used, toCut);
    (void)std::tie(stems, potSlots, potLeaves, inTray, potUnevenness, potDrift, shortest, tallest, mean,
                   variation, twins, potBeads, allBeads, potLeafWire, allLeafWire, toMake, potWraps, potMass);
}

TEST(Explain, EveryFieldHasItsFigure) {
    fieldsAreExplained({}, {});
    int ofStem = 0, ofPot = 0, ofSupplies = 0;
    for (const FigureName name : allFigures())
        ++(isOfStem(name) ? ofStem : isOfSupplies(name) ? ofSupplies : ofPot);
    // 14 own fields but the id, the wraps' two and the hold's; "beyond the formula" is said with the sag.
    EXPECT_EQ(ofStem, 14 + 2 + 6);
    // 17 own fields, the wraps' two, and of the pot itself clay, cover, whole, centre, tilt, weight and stake.
    EXPECT_EQ(ofPot, 17 + 2 + 7);
    EXPECT_EQ(ofSupplies, 9);
}

TEST(Explain, EveryFigureSaysWhatWentInAndWhereItsFormulaIsFrom) {
    const Explained explained(fullBoard());
    std::vector<FigureRef> refs;
    for (std::size_t stem = 0; stem < 2; ++stem)
        for (const FigureRef ref : figuresOfStem(explained.all, stem))
            refs.push_back(ref);
    for (const FigureRef ref : figuresOfPot(explained.plan, explained.all))
        refs.push_back(ref);
    for (const FigureRef ref : figuresOfSupplies(explained.needs))
        refs.push_back(ref);
    std::set<FigureName> seen;
    for (const FigureRef ref : refs) {
        seen.insert(ref.figure);
        const Explanation said = explained(ref);
        EXPECT_EQ(said.figure, ref.figure);
        EXPECT_FALSE(said.inputs.empty()) << static_cast<int>(ref.figure);
        EXPECT_FALSE(said.sources.empty()) << static_cast<int>(ref.figure);
        for (const Input& input : said.inputs)
            EXPECT_TRUE(std::isfinite(input.value));
    }
    EXPECT_EQ(seen.size(), allFigures().size());
}

// The numbers that are said give the figure again.
TEST(Explain, TheNumbersGiveTheFigure) {
    const Explained explained(fullBoard());
    const StemFigures& stem = explained.all.stems[0];
    const auto of = [](FigureName name, std::size_t index = 0) { return FigureRef{name, 0, index}; };
    EXPECT_NEAR(explained.sum(of(FigureName::height), Term::tail) -
                    explained.sum(of(FigureName::height), Term::plantingDepth) +
                    explained.sum(of(FigureName::height), Term::spacings) +
                    explained.sum(of(FigureName::height), Term::reach),
                inMillimetres(stem.height), 1e-9);
    EXPECT_NEAR(explained.products(of(FigureName::leafWire), Term::heldLeaves, Term::wireALeaf),
                inMillimetres(stem.leafWire), 1e-9);
    EXPECT_EQ(explained.products(of(FigureName::wires), Term::heldLeaves, Term::wiresALeaf), stem.wires);
    EXPECT_EQ(explained.products(of(FigureName::beads, 1), Term::heldLeaves, Term::beadsALeaf),
              static_cast<double>(stem.beads[1]));
    const double strand = explained.sum(of(FigureName::bundle), Term::wireDiameter);
    const double core = explained.sum(of(FigureName::bundle), Term::coreDiameter);
    EXPECT_NEAR(std::hypot(strand * packingRatio(stem.wires), core), inMillimetres(stem.bundle), 1e-9);
    double unevenness = 0;
    const Explanation uneven = explained(of(FigureName::unevenness));
    for (std::size_t i = 0; i + 1 < uneven.inputs.size(); i += 2)
        unevenness += std::pow(uneven.inputs[i].value - uneven.inputs[i + 1].value, 2);
    EXPECT_NEAR(unevenness, stem.unevenness, 1e-9);
    const FigureRef fair = of(FigureName::fairShare, 1);
    EXPECT_NEAR(explained.sum(fair, Term::leavesOfKindOnStem) * explained.sum(fair, Term::leavesOfMix) /
                    explained.sum(fair, Term::leavesOfKind),
                stem.fairShare[1], 1e-9);
    const auto& wrap = stem.wraps[0];
    EXPECT_NEAR(explained.sum(of(FigureName::wrapToCut), Term::used) +
                    explained.sum(of(FigureName::wrapToCut), Term::handHold),
                inMillimetres(wrap.toCut), 1e-9);
    EXPECT_NEAR(explained.sum(of(FigureName::mass), Term::leafMasses) +
                    explained.sum(of(FigureName::mass), Term::coreMass) +
                    explained.sum(of(FigureName::mass), Term::bindingMass),
                inGrams(stem.hold.mass), 1e-6);
    EXPECT_NEAR((explained.sum(of(FigureName::hold), Term::plasticMomentOfWires) +
                 explained.sum(of(FigureName::hold), Term::plasticMomentOfCore)) /
                    explained.sum(of(FigureName::hold), Term::momentOfWeight),
                stem.hold.hold, 1e-9);
    EXPECT_NEAR(explained.sum(of(FigureName::plasticMoment), Term::plasticMomentOfWires) +
                    explained.sum(of(FigureName::plasticMoment), Term::plasticMomentOfCore),
                stem.hold.plasticMoment, 1e-9);
    EXPECT_NEAR(explained.sum(of(FigureName::moment), Term::stemMass) / 1000 * gravity *
                    explained.sum(of(FigureName::moment), Term::centreHeight),
                stem.hold.moment, 1e-6);
}

TEST(Explain, WhatRestsOnHerOwnMeasureSaysSo) {
    Plan plan = fullBoard();
    const auto sources = [](const Plan& of) { return Explained(of)({FigureName::wrapUsed, 0, 0}).sources; };
    const auto has = [](const std::vector<SourceName>& all, SourceName one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    };
    EXPECT_FALSE(has(sources(plan), SourceName::maker));
    plan.binding.wraps[0].overlapMeasured = true;
    EXPECT_TRUE(has(sources(plan), SourceName::maker));
}

TEST(Explain, BeadsThatNobodyWeighedAreNamedWhereTheyAreLeftOut) {
    Plan plan = fullBoard();
    const FigureRef of[] = {{FigureName::mass, 0, 0},     {FigureName::moment, 0, 0},
                            {FigureName::hold, 0, 0},     {FigureName::sag, 0, 0},
                            {FigureName::centre, 0, 0},   {FigureName::potMass, 0, 0},
                            {FigureName::potWhole, 0, 0}, {FigureName::potCentre, 0, 0},
                            {FigureName::potTilt, 0, 0},  {FigureName::potWeightToAdd, 0, 0},
                            {FigureName::buyBeads, 0, 0}};
    for (const FigureRef ref : of)
        EXPECT_EQ(Explained(plan).sum(ref, Term::beadsUnweighed), 0);
    plan.kinds[0].beadSize = plan.kinds[1].beadSize = "99/0";
    const Explained explained(plan);
    // Stem 1 has six leaves of forty beads, stem 2 four more.
    for (std::size_t i = 0; i < 5; ++i)
        EXPECT_EQ(explained.sum(of[i], Term::beadsUnweighed), 6 * 40) << i;
    for (std::size_t i = 5; i < 10; ++i)
        EXPECT_EQ(explained.sum(of[i], Term::beadsUnweighed), 10 * 40) << i;
    EXPECT_GT(explained.sum(of[10], Term::beadsUnweighed), 0);
    EXPECT_EQ(explained.sum(of[10], Term::beadMass), 0);
}

TEST(Explain, ATiltOnFeetSaysHowManyThereAre) {
    Plan plan = fullBoard();
    plan.pot.footDiameter = millimetres(60);
    const FigureRef tilt{FigureName::potTilt, 0, 0};
    EXPECT_EQ(Explained(plan).sum(tilt, Term::feet), 0);
    plan.pot.feet = 3;
    const Explained explained(plan);
    EXPECT_EQ(explained.sum(tilt, Term::feet), 3);
    EXPECT_EQ(explained.sum(tilt, Term::standsOn), 60);
    EXPECT_NEAR(explained.sum(tilt, Term::foot), 15, 1e-9);
}

TEST(Explain, WhatIsNotThereIsExplainedWithoutNumbers) {
    const Explained none{Plan{}};
    for (const FigureName name : allFigures())
        EXPECT_NO_FATAL_FAILURE(none({name, 7, 7}));
    EXPECT_TRUE(none({FigureName::height, 7, 0}).inputs.empty());
    EXPECT_TRUE(figuresOfStem(none.all, 0).empty());
}

} // namespace
} // namespace stemwright

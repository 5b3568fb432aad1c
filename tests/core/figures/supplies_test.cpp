#include "core/figures/supplies.h"

#include "core/figures/binding_steps.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace stemwright {
namespace {

Supplies suppliesOf(const Plan& plan) {
    return supplies(plan, figures(plan));
}

// smallBoard: 2 leaves to make of each of three mixes in two kinds (40 and 90 beads), plum and sea even.
TEST(Supplies, BeadsAreThoseOfTheLeavesToMakeAndSomeToSpare) {
    Plan plan = test::smallBoard();
    plan.buying.spare = 0.1;
    plan.buying.beads = {5, 2.5, ""};
    const Supplies all = suppliesOf(plan);
    ASSERT_EQ(all.beads.size(), 2u);
    const std::int64_t plum = 2 * (40 + 20) + 2 * (90 + 45);
    EXPECT_EQ(all.beads[0].beads, plum);
    EXPECT_EQ(all.beads[0].withSpare, 429);
    EXPECT_NEAR(inGrams(all.beads[0].mass), 429.0 / 105, 1e-9);
    EXPECT_NEAR(inMillimetres(all.beads[0].strung), 429 * 1.4, 1e-9);
    EXPECT_EQ(all.beads[0].buy.packs, 1);
    EXPECT_EQ(all.leavesToMake, 12);
    EXPECT_NEAR(all.cost, 2 * 2.5, 1e-12);
}

TEST(Supplies, LeafWireByDiameterAndMetal) {
    Plan plan = test::smallBoard();
    plan.buying.spare = 0;
    plan.buying.leafWire = {1000, 3, ""};
    EXPECT_EQ(suppliesOf(plan).leafWire.size(), 1u);
    EXPECT_NEAR(inMillimetres(suppliesOf(plan).leafWire[0].length), 12 * 300, 1e-9);
    EXPECT_EQ(suppliesOf(plan).leafWire[0].buy.packs, 4);
    plan.kinds[1].metal = Metal::softBrass;
    EXPECT_EQ(suppliesOf(plan).leafWire.size(), 2u);
}

TEST(Supplies, AColourIsBoughtInItsOwnPackets) {
    Plan plan = test::smallBoard();
    plan.buying.spare = 0;
    plan.buying.beads = {5, 2.5, ""};
    plan.colours[1].sold = {1, 0.75, ""};
    const Supplies all = suppliesOf(plan);
    EXPECT_EQ(all.beads[0].buy.packs, 1);
    EXPECT_EQ(all.beads[0].buy.cost, 2.5);
    EXPECT_EQ(all.beads[1].buy.packs, 4) << "390 beads at 105 to the gram";
    EXPECT_EQ(all.beads[1].buy.cost, 4 * 0.75);
}

TEST(Supplies, OwnMetalsAndBeadsWeighWhatThePlanSays) {
    Plan plan = test::smallBoard();
    const Supplies before = suppliesOf(plan);
    plan.own.metals = {{"light", 894, 100'000, 50, ""}};
    plan.own.beads = {{"11/0", millimetres(2), millimetres(2.8), grams(1.0 / 52.5), ""}};
    for (Kind& kind : plan.kinds)
        kind.ownMetal = "light";
    ASSERT_FALSE(firstProblem(plan));
    const Supplies after = suppliesOf(plan);
    EXPECT_NEAR(after.leafWire[0].mass / before.leafWire[0].mass, 0.1, 1e-9);
    EXPECT_NEAR(after.beads[0].mass / before.beads[0].mass, 2, 1e-9);
    EXPECT_NEAR(after.beads[0].strung / before.beads[0].strung, 2, 1e-9);
    EXPECT_EQ(after.leafWire[0].metal.own, "light");
    plan.kinds[0].ownMetal.clear();
    EXPECT_EQ(suppliesOf(plan).leafWire.size(), 2u) << "one wire of each metal";
}

TEST(Supplies, AStemIsBoundInOnePieceFromAWholeSkein) {
    Plan plan = test::smallBoard();
    const Figures all = figures(plan);
    plan.binding.wraps[0].sold = all.stems[0].wraps[0].toCut + millimetres(2);
    const Supplies two = suppliesOf(plan);
    ASSERT_EQ(two.wraps.size(), 1u);
    EXPECT_EQ(two.wraps[0].cutting.barCount, 2)
        << "the end of the first skein is too short for the second stem";
    EXPECT_EQ(two.wraps[0].stems, (std::vector<StemId>{StemId{1}, StemId{2}}));
    plan.binding.wraps[0].sold = millimetres(100);
    EXPECT_EQ(suppliesOf(plan).wraps[0].cutting.tooLong.size(), 2u);
}

TEST(Supplies, StakesAndCoresOfOneWireAreCutTogether) {
    Plan plan = test::smallBoard();
    plan.stems[0].core = CoreWire{plan.pot.stake.diameter, std::nullopt, plan.pot.stake.metal, ""};
    plan.buying.bars = {{millimetres(300), 0.5}};
    const Supplies all = suppliesOf(plan);
    ASSERT_EQ(all.bars.size(), 1u);
    EXPECT_EQ(all.bars[0].pieces.size(), 3u); // two stems have leaves, one of them a core
    EXPECT_NEAR(inMillimetres(all.bars[0].length), 2 * inMillimetres(stakeLength(plan.pot)) + 30 + 16, 1e-9);
    EXPECT_EQ(all.bars[0].cutting.barCount, 1);
    EXPECT_EQ(all.bars[0].buy.cost, 0.5);
    plan.stems[0].core->diameter = millimetres(0.9);
    EXPECT_EQ(suppliesOf(plan).bars.size(), 2u);
    plan.stems[0].core = std::nullopt;
    plan.buying.bars = {{millimetres(300)}, {millimetres(300), 5}, {millimetres(300), 1}};
    EXPECT_EQ(suppliesOf(plan).bars[0].buy.cost, 1) << "the cheapest price that is known";
}

TEST(Supplies, EachWireIsCutFromTheLengthsThatItIsSoldIn) {
    Plan plan = test::smallBoard();
    plan.stems[0].core = CoreWire{millimetres(0.9), std::nullopt, plan.pot.stake.metal, ""};
    plan.buying.bars = {{millimetres(300), 0.5}, {millimetres(500), 2, millimetres(0.9)}};
    Supplies all = suppliesOf(plan);
    ASSERT_EQ(all.bars.size(), 2u);
    const auto of = [&](double diameter) -> const BarSupply& {
        return *std::find_if(all.bars.begin(), all.bars.end(),
                             [&](const BarSupply& bars) { return bars.diameter == millimetres(diameter); });
    };
    ASSERT_EQ(of(0.9).cutting.bars.size(), 1u);
    EXPECT_EQ(of(0.9).cutting.bars[0].bar, millimetres(500)) << "and not the 300 mm of any wire";
    EXPECT_EQ(of(0.9).buy.cost, 2);
    const double stake = inMillimetres(plan.pot.stake.diameter);
    EXPECT_EQ(of(stake).cutting.bars[0].bar, millimetres(300)) << "what has no length of its own";
    plan.buying.bars = {{millimetres(500), 2, millimetres(0.9)}};
    all = suppliesOf(plan);
    EXPECT_EQ(of(stake).cutting.barCount, 0) << "cut from a coil";
    EXPECT_EQ(of(0.9).cutting.barCount, 1);
}

TEST(Supplies, LeafWireThatIsSoldInItsOwnWay) {
    Plan plan = test::smallBoard();
    plan.buying.spare = 0;
    plan.buying.leafWire = {1000, 3, ""};
    plan.kinds[1].wireDiameter = plan.kinds[0].wireDiameter + millimetres(0.1);
    plan.buying.leafWires = {{plan.kinds[1].wireDiameter, {500, 7, ""}, ""}};
    const Supplies all = suppliesOf(plan);
    ASSERT_EQ(all.leafWire.size(), 2u);
    const auto packs = [](double length, double pack) { return static_cast<int>(std::ceil(length / pack)); };
    EXPECT_EQ(all.leafWire[0].buy.packs, packs(inMillimetres(all.leafWire[0].length), 1000));
    EXPECT_EQ(all.leafWire[0].buy.cost, 3 * all.leafWire[0].buy.packs);
    EXPECT_EQ(all.leafWire[1].buy.packs, packs(inMillimetres(all.leafWire[1].length), 500));
    EXPECT_EQ(all.leafWire[1].buy.cost, 7 * all.leafWire[1].buy.packs);
    plan.buying.leafWires[0].sold.amount = 0;
    EXPECT_EQ(suppliesOf(plan).leafWire[1].buy.cost, 3 * packs(inMillimetres(all.leafWire[1].length), 1000))
        << "an entry that does not say how much is on a spool";
}

// The first step of a stem's work cuts its wraps, its core and its stake; what follows uses them.
TEST(Supplies, WhatAStemTakesIsBoughtUntilItIsCutAndNoLonger) {
    Plan plan = test::smallBoard();
    CoreWire core;
    core.diameter = millimetres(1.2);
    plan.stems[0].core = core;
    plan.binding.wraps.push_back(plan.binding.wraps[0]);
    const auto piecesOf = [&](StemId id) {
        std::size_t count = 0;
        const Supplies all = suppliesOf(plan);
        for (const WrapSupply& wrap : all.wraps)
            count += static_cast<std::size_t>(std::count(wrap.stems.begin(), wrap.stems.end(), id));
        for (const BarSupply& bar : all.bars)
            count += static_cast<std::size_t>(std::count(bar.stems.begin(), bar.stems.end(), id));
        return count;
    };
    const std::size_t others = piecesOf(StemId{2});
    const std::vector<BindingStep> steps = bindingSteps(plan, plan.stems[0]);
    ASSERT_EQ(steps[0].code, BindingStepCode::cut);
    for (std::size_t done = 0; done <= steps.size(); ++done) {
        plan.stems[0].bench.steps = 0;
        for (std::size_t i = 0; i < steps.size(); ++i)
            if (steps[i].code == BindingStepCode::tier)
                plan.stems[0].tiers[static_cast<std::size_t>(steps[i].tier)].progress.bound = i < done;
            else
                plan.stems[0].bench.steps += i < done;
        ASSERT_EQ(stepNow(plan.stems[0], steps), done);
        EXPECT_EQ(piecesOf(StemId{1}), done == 0 ? 4u : 0u) << done << " steps done";
        EXPECT_EQ(piecesOf(StemId{2}), others);
    }
    // A bare core is bound too, and its work begins with cutting as well.
    EXPECT_EQ(piecesOf(StemId{3}), 0u);
    plan.stems[2].core = core;
    EXPECT_EQ(piecesOf(StemId{3}), 4u);
    plan.stems[2].bench.steps = 1;
    EXPECT_EQ(piecesOf(StemId{3}), 0u);
}

// The most that a valid plan can hold: more leaves than 32 bits count.
TEST(Supplies, AndFiguresCountAStockOfAnySize) {
    Plan plan = test::smallBoard();
    for (std::uint32_t id = 4; id <= 500; ++id) {
        Mix mix = plan.mixes[0];
        mix.id = MixId{id};
        mix.code = {static_cast<char>('A' + id / 26), static_cast<char>('A' + id % 26)};
        plan.mixes.push_back(mix);
    }
    plan.kinds.resize(1, plan.kinds[0]);
    for (std::uint32_t id = 2; id <= 4; ++id) {
        plan.kinds.push_back(plan.kinds[0]);
        plan.kinds.back().id = KindId{id};
    }
    for (Kind& kind : plan.kinds) {
        kind.stock.clear();
        for (const Mix& mix : plan.mixes) {
            StockLine line;
            line.mix = mix.id;
            line.made = line.toMake = 1'000'000;
            kind.stock.push_back(line);
        }
    }
    plan.buying.beads = {0.001, 1, ""};
    const auto problem = firstProblem(plan);
    ASSERT_FALSE(problem) << problem->place;
    const Figures all = figures(plan);
    EXPECT_EQ(all.pot.toMake, 2'000'000'000);
    EXPECT_EQ(all.pot.inTray, 4'000'000'000 - all.pot.leaves);
    const Supplies needs = supplies(plan, all);
    EXPECT_EQ(needs.leavesToMake, 2'000'000'000);
    ASSERT_FALSE(needs.beads.empty());
    EXPECT_GT(needs.beads[0].buy.packs, 1'000'000'000);
    EXPECT_NEAR(static_cast<double>(needs.beads[0].buy.packs), inGrams(needs.beads[0].mass) / 0.001, 1);
}

TEST(Supplies, WhatIsBoundNeedsNothingMore) {
    Plan plan = test::smallBoard();
    for (Tier& tier : plan.stems[0].tiers)
        tier.progress = {true, 10, ""};
    plan.kinds[0].minutes = plan.kinds[1].minutes = 15;
    const Supplies all = suppliesOf(plan);
    EXPECT_EQ(all.wraps[0].stems, std::vector<StemId>{StemId{2}});
    EXPECT_EQ(all.tiersToBind, 2);
    EXPECT_NEAR(all.minutesLeft, 12 * 15 + 2 * 10, 1e-9);
    EXPECT_FALSE(all.minutesPartly);
    plan.kinds[1].minutes = 0;
    EXPECT_TRUE(suppliesOf(plan).minutesPartly);
}

TEST(Supplies, OfAnEmptyPlanAreNone) {
    const Supplies none = suppliesOf(Plan{});
    EXPECT_TRUE(none.beads.empty());
    EXPECT_TRUE(none.bars.empty());
    EXPECT_EQ(none.cost, 0);
}

} // namespace
} // namespace stemwright

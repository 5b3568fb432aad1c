#include "core/figures/findings.h"

#include "core/figures/pot_figures.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace stemwright {
namespace {

std::vector<Finding> noticed(const Plan& plan) {
    return findings(plan, figures(plan));
}

std::vector<Finding> ofCode(const Plan& plan, FindingCode code) {
    std::vector<Finding> all = noticed(plan);
    std::erase_if(all, [&](const Finding& finding) { return finding.code != code; });
    return all;
}

using Values = std::vector<std::string>;

void make(Plan& plan, const Edit& edit) {
    ASSERT_TRUE(apply(plan, edit));
}

/// The small board with its third stem filled, so that there is nothing to notice but what a test does to it.
Plan tidyBoard() {
    Plan plan = test::smallBoard();
    make(plan, FillSlot{{StemId{2}, 0, 1}, {KindId{1}, MixId{1}}}); // P P / S S
    make(plan, FillSlot{{StemId{2}, 1, 0}, {KindId{1}, MixId{3}}});
    make(plan, FillSlot{{StemId{2}, 1, 1}, {KindId{1}, MixId{3}}});
    Tier tier = newTier(plan.stems[2], nullptr, KindId{2});
    for (const std::uint32_t mix : {1u, 2u, 3u}) {
        tier.slots[0].leaf.mix = tier.slots[1].leaf.mix = MixId{mix};
        make(plan, OpenTier{StemId{3}, static_cast<int>(mix) - 1, tier});
        tier.turn = tier.turn + degrees(90);
    }
    return plan;
}

TEST(Findings, ATidyBoardHasNone) {
    const Plan plan = tidyBoard();
    for (const Finding& finding : noticed(plan))
        ADD_FAILURE() << "code " << static_cast<int>(finding.code) << " at stem " << finding.stem.value;
}

TEST(Findings, TiersThatFaceTheSameWay) {
    Plan plan = tidyBoard();
    make(plan, TurnTier{StemId{1}, 1, degrees(180)});
    const auto found = ofCode(plan, FindingCode::sameFacing);
    ASSERT_EQ(found.size(), 2u); // 0, 180 and then 180, 180
    EXPECT_EQ(found[0].stem, StemId{1});
    EXPECT_EQ(found[0].tier, 1);
    EXPECT_EQ(found[0].values, (Values{"2", "1"}));
    EXPECT_EQ(found[1].tier, 2);
}

TEST(Findings, ATierOutOfPlaneOnlyOnAOnePlaneStem) {
    Plan plan = tidyBoard();
    make(plan, TurnTier{StemId{1}, 1, degrees(0)});
    StemForm form = plan.stems[0];
    form.arrangement = Arrangement::onePlane;
    make(plan, ReformStem{StemId{1}, form});
    EXPECT_TRUE(noticed(plan).empty());
    make(plan, TurnTier{StemId{1}, 1, degrees(90)});
    const auto found = ofCode(plan, FindingCode::outOfPlane);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].tier, 1);
    EXPECT_EQ(found[0].values, (Values{"2"}));
    EXPECT_TRUE(ofCode(plan, FindingCode::sameFacing).empty());
}

TEST(Findings, TiersOfTooFewAndTooManySlots) {
    Plan plan = tidyBoard();
    Tier single;
    single.turn = degrees(90);
    single.slots.resize(1);
    single.slots[0].leaf.kind = KindId{2};
    single.slots[0].pinned = true;
    make(plan, OpenTier{StemId{3}, 0, single});
    EXPECT_TRUE(noticed(plan).empty()) << "a stem may end in one leaf";
    make(plan, MoveTiers{StemId{3}, 0, 1, StemId{3}, 3});
    ASSERT_EQ(ofCode(plan, FindingCode::shortTier).size(), 1u);
    EXPECT_EQ(ofCode(plan, FindingCode::shortTier)[0].values, (Values{"4", "1", "2"}));
    single.slots.resize(3, single.slots[0]);
    make(plan, CloseTier{StemId{3}, 3});
    make(plan, OpenTier{StemId{3}, 3, single});
    ASSERT_EQ(ofCode(plan, FindingCode::longTier).size(), 1u);
    EXPECT_EQ(ofCode(plan, FindingCode::longTier)[0].values, (Values{"4", "3", "2"}));
}

TEST(Findings, EmptySlotsAreSaidOnceATierAndNotWherePinned) {
    Plan plan = tidyBoard();
    make(plan, FillSlot{{StemId{1}, 1, 1}, {KindId{1}, MixId{}}});
    auto found = ofCode(plan, FindingCode::emptySlot);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].tier, 1);
    EXPECT_EQ(found[0].slot, 1);
    EXPECT_EQ(found[0].values, (Values{"2"}));
    make(plan, FillSlot{{StemId{1}, 1, 0}, {KindId{1}, MixId{}}});
    found = ofCode(plan, FindingCode::emptySlot);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].slot, 0);
    make(plan, PinSlot{{StemId{1}, 1, 0}, true});
    make(plan, PinSlot{{StemId{1}, 1, 1}, true});
    EXPECT_TRUE(ofCode(plan, FindingCode::emptySlot).empty());
}

TEST(Findings, UnmatchedPairs) {
    const auto found = ofCode(test::smallBoard(), FindingCode::unmatchedPair);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].stem, StemId{2});
    EXPECT_EQ(found[0].tier, 0);
}

TEST(Findings, LargerLeavesAboveSmallerOnes) {
    Plan plan = tidyBoard();
    make(plan, MoveTiers{StemId{3}, 0, 1, StemId{1}, 0});
    const auto found = ofCode(plan, FindingCode::largerAbove);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].stem, StemId{1});
    EXPECT_EQ(found[0].values, (Values{"1", "2"}));
}

TEST(Findings, ColoursOutOfOrder) {
    const auto found = ofCode(test::smallBoard(), FindingCode::outOfOrder);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].stem, StemId{2});
    EXPECT_EQ(found[0].tier, -1);
    EXPECT_EQ(found[0].values, (Values{"2"}));
}

TEST(Findings, AStemThatLeansAndDrifts) {
    Plan plan = test::smallBoard();
    // Stem 1 takes all plum: P P / P O / S S against S S / O O.
    make(plan, SwapSlots{{StemId{1}, 1, 0}, {StemId{2}, 0, 0}});
    make(plan, SwapSlots{{StemId{1}, 2, 0}, {StemId{2}, 0, 0}});
    make(plan, FillSlot{{StemId{1}, 2, 1}, {KindId{1}, MixId{1}}});
    const Figures all = figures(plan);
    const auto found = ofCode(plan, FindingCode::leans);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].stem, StemId{1});
    EXPECT_EQ(found[0].values[0], "Plum");
    EXPECT_EQ(found[0].values[1], "Small");
    EXPECT_EQ(found[0].values[2], std::to_string(all.stems[0].held[0]));
    EXPECT_EQ(found[0].values[3].find('.'), found[0].values[3].size() - 2);
    for (const Finding& drift : ofCode(plan, FindingCode::drifts))
        EXPECT_GE(std::stod(drift.values[0]), highDrift);
    EXPECT_EQ(
        ofCode(plan, FindingCode::drifts).size(),
        static_cast<std::size_t>(std::count_if(all.stems.begin(), all.stems.end(), [](const StemFigures& stem) {
            return stem.drift >= highDrift;
        })));
}

TEST(Findings, NearTwinsAreSaidAtTheLaterStem) {
    Plan plan = tidyBoard();
    StemForm form = plan.stems[1];
    form.tail = form.tail + millimetres(6); // 51 beside 53 mm
    make(plan, ReformStem{StemId{2}, form});
    const auto found = ofCode(plan, FindingCode::nearTwins);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].stem, StemId{2});
    EXPECT_EQ(found[0].values, (Values{"Stem 1", "2.0"}));
}

TEST(Findings, AStemWithoutLeavesIsSaidOnce) {
    Plan plan = tidyBoard();
    for (int tier = 0; tier < 3; ++tier)
        for (int slot = 0; slot < 2; ++slot)
            make(plan, FillSlot{{StemId{1}, tier, slot}, {KindId{1}, MixId{}}});
    const auto all = noticed(plan);
    EXPECT_EQ(std::count_if(all.begin(), all.end(), [](const Finding& f) { return f.stem == StemId{1}; }), 1);
    EXPECT_EQ(ofCode(plan, FindingCode::noLeaves).size(), 1u);
}

TEST(Findings, TooFewLeavesForTheSlotsThatWait) {
    Plan plan = test::smallBoard();
    Tier tier = newTier(plan.stems[2], nullptr, KindId{1});
    for (int i = 0; i < 2; ++i)
        make(plan, OpenTier{StemId{3}, 0, tier});
    EXPECT_EQ(ofCode(plan, FindingCode::tooFewLeaves).size(), 1u); // two are left in the tray
    EXPECT_EQ(ofCode(plan, FindingCode::tooFewLeaves)[0].values, (Values{"4", "Small", "2"}));
    make(plan, CloseTier{StemId{3}, 0});
    EXPECT_TRUE(ofCode(plan, FindingCode::tooFewLeaves).empty());
    EXPECT_TRUE(noticed(Plan{}).empty());
}

TEST(Findings, AThreadThatRunsOutIsSaidWithItsTier) {
    Plan plan = tidyBoard();
    const Length whole = figures(plan).stems[2].wraps[0].toCut;
    plan.binding.wraps[0].sold = whole;
    EXPECT_TRUE(ofCode(plan, FindingCode::threadRunsOut).empty());
    plan.binding.wraps[0].sold = whole - millimetres(1);
    auto found = ofCode(plan, FindingCode::threadRunsOut);
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found.back().stem, StemId{3});
    EXPECT_EQ(found.back().tier, 2) << "at the very end";
    EXPECT_EQ(found.back().values[0], "1");
    EXPECT_EQ(found.back().values[3], "2");
    // What the hand holds, the tail laid in and no more: the first turns are too many.
    plan.binding.wraps[0].sold = plan.binding.wraps[0].hold + plan.binding.wraps[0].startTail + millimetres(1);
    found = ofCode(plan, FindingCode::threadRunsOut);
    ASSERT_EQ(found.size(), 3u);
    EXPECT_EQ(found[0].tier, 0);
}

TEST(Findings, AStemThickerThanItsPot) {
    Plan plan = tidyBoard();
    plan.stems[0].core = CoreWire{millimetres(6), std::nullopt, Metal::softSteel, ""};
    EXPECT_TRUE(ofCode(plan, FindingCode::tooThickForPot).empty());
    plan.pot.topDiameter = millimetres(5);
    const auto found = ofCode(plan, FindingCode::tooThickForPot);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].stem, StemId{1});
    EXPECT_EQ(found[0].values[1], "5.0");
}

TEST(Findings, APatternThatCannotBeMade) {
    Plan plan = tidyBoard();
    plan.kinds[1].make = LeafMake{Making::rows, 5, 6, degrees(30), ""};
    const auto found = ofCode(plan, FindingCode::cannotBeMade);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].values, (Values{"Broad", "2", "6"}));
    EXPECT_FALSE(remedyFor(plan, figures(plan), found[0]));
}

TEST(Findings, APlantThatTipsAndTheWeightThatMendsIt) {
    Plan plan = tidyBoard();
    plan.pot.clay.depth = millimetres(1);
    plan.pot.footDiameter = millimetres(30);
    for (Stem& stem : plan.stems)
        stem.standing = Standing{millimetres(50), millimetres(0), ""};
    const auto found = ofCode(plan, FindingCode::plantTips);
    ASSERT_EQ(found.size(), 1u);
    const double weight = std::stod(found[0].values[1]);
    ASSERT_GT(weight, 0);
    // The weight in the middle of the floor is as a heavier pot of no height.
    const PotBalance balance = potBalance(plan, figures(plan));
    const double all = inGrams(balance.whole) + weight;
    const double aside = inGrams(balance.whole) * inMillimetres(balance.aside) / all;
    const double centre = inGrams(balance.whole) * inMillimetres(balance.centre) / all;
    EXPECT_GE(std::atan2(15 - aside, centre) * 180 / std::acos(-1.0), 10 - 1e-6);
    plan.pot.mass = grams(5'000);
    EXPECT_TRUE(ofCode(plan, FindingCode::plantTips).empty());
}

TEST(Findings, StemsThatAllLeanOneWayTipALightPot) {
    Plan plan = tidyBoard();
    plan.pot.clay.depth = millimetres(0);
    plan.pot.footDiameter = millimetres(60);
    for (Stem& stem : plan.stems)
        stem.standing = Standing{};
    EXPECT_TRUE(ofCode(plan, FindingCode::plantTips).empty());
    for (Stem& stem : plan.stems)
        stem.pose = Pose{degrees(85), degrees(0), degrees(180), ""};
    const auto found = ofCode(plan, FindingCode::plantTips);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].values[0], "0.0");
}

TEST(Findings, BeadsOfNoKnownWeight) {
    Plan plan = tidyBoard();
    EXPECT_TRUE(ofCode(plan, FindingCode::beadsUnweighed).empty());
    const Mass before = figures(plan).stems[0].hold.mass;
    plan.kinds[0].beadSize = "99/0";
    auto found = ofCode(plan, FindingCode::beadsUnweighed);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].values, (Values{"Small", "99/0", ""}));
    const Slot* slot = find(plan, SlotRef{found[0].stem, found[0].tier, found[0].slot});
    ASSERT_TRUE(slot) << "it leads to a leaf";
    EXPECT_EQ(slot->leaf.kind, plan.kinds[0].id);
    EXPECT_LT(figures(plan).stems[0].hold.mass, before);
    EXPECT_FALSE(remedyFor(plan, figures(plan), found[0]));
    // One of her own sizes that she never weighed is no better, one that she weighed is.
    plan.own.beads = {{"99/0", millimetres(2), millimetres(1.5), Mass{}, ""}};
    found = ofCode(plan, FindingCode::beadsUnweighed);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].values, (Values{"Small", "99/0", "own"}));
    plan.own.beads[0].mass = grams(0.01);
    EXPECT_TRUE(ofCode(plan, FindingCode::beadsUnweighed).empty());
    // A kind of which no leaf is on a stem.
    plan.own.beads.clear();
    for (Stem& stem : plan.stems)
        for (Tier& tier : stem.tiers)
            for (Slot& each : tier.slots)
                if (each.leaf.kind == plan.kinds[0].id)
                    each.leaf.mix = {};
    found = ofCode(plan, FindingCode::beadsUnweighed);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_FALSE(found[0].stem);
}

} // namespace
} // namespace stemwright

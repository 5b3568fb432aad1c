#include "core/figures/arrangement.h"
#include "core/figures/findings.h"
#include "core/figures/remedies.h"
#include "tests/support/boards.h"
#include "tests/support/random_edits.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

namespace stemwright {
namespace {

void make(Plan& plan, const Edit& edit) {
    ASSERT_TRUE(apply(plan, edit));
}

std::optional<Plan> remedied(const Plan& plan, const Finding& finding) {
    const auto remedy = remedyFor(plan, figures(plan), finding);
    if (!remedy)
        return std::nullopt;
    Plan after = plan;
    EXPECT_TRUE(apply(after, *remedy)) << "a remedy that cannot be made";
    EXPECT_EQ(std::get<Batch>(remedy->what).deed, Deed::remedy);
    return after;
}

std::optional<Plan> remedied(const Plan& plan, FindingCode code) {
    for (const Finding& finding : findings(plan, figures(plan)))
        if (finding.code == code)
            return remedied(plan, finding);
    ADD_FAILURE() << "no such finding";
    return std::nullopt;
}

std::vector<std::vector<std::uint32_t>> mixesOf(const Stem& stem) {
    std::vector<std::vector<std::uint32_t>> mixes;
    for (const Tier& tier : stem.tiers) {
        mixes.emplace_back();
        for (const Slot& slot : tier.slots)
            mixes.back().push_back(slot.leaf.mix.value);
    }
    return mixes;
}
using Mixes = std::vector<std::vector<std::uint32_t>>;

TEST(Remedies, ATierThatFacesLikeTheOneAboveTurnsAlone) {
    Plan plan = test::smallBoard();
    make(plan, TurnTier{StemId{1}, 2, degrees(90)}); // 0 90 90
    const auto after = remedied(plan, FindingCode::sameFacing);
    ASSERT_TRUE(after);
    EXPECT_EQ(after->stems[0].tiers[1].turn, degrees(90));
    EXPECT_EQ(planeOf(after->stems[0].tiers[2]), Plane::sideToSide);
}

TEST(Remedies, AllBelowTurnWhereOneAloneWouldNotDo) {
    Plan plan = test::smallBoard();
    make(plan, MoveTiers{StemId{2}, 0, 2, StemId{1}, 1}); // 0, then 0 90, then 90 180
    const auto after = remedied(plan, FindingCode::sameFacing);
    ASSERT_TRUE(after);
    const std::vector<Tier>& tiers = after->stems[0].tiers;
    EXPECT_EQ(tiers[0].turn, degrees(0));
    EXPECT_EQ(planeOf(tiers[1]), Plane::frontToBack);
    EXPECT_EQ(planeOf(tiers[2]), Plane::sideToSide);
}

TEST(Remedies, LeavesTakeTheOrderOfTheirStock) {
    const auto after = remedied(test::smallBoard(), FindingCode::outOfOrder);
    ASSERT_TRUE(after);
    EXPECT_EQ(mixesOf(after->stems[1]), (Mixes{{1, 2}, {2, 3}}));
}

TEST(Remedies, OrderKeepsPinnedLeavesWhereTheyAre) {
    Plan plan = test::smallBoard();
    make(plan, PinSlot{{StemId{2}, 0, 1}, true}); // the S at the tip
    EXPECT_FALSE(remedied(plan, FindingCode::outOfOrder)) << "P O O stand in order already";
    make(plan, SwapSlots{{StemId{2}, 0, 0}, {StemId{2}, 1, 1}}); // O S / O P
    const auto after = remedied(plan, FindingCode::outOfOrder);
    ASSERT_TRUE(after);
    EXPECT_EQ(mixesOf(after->stems[1]), (Mixes{{1, 3}, {2, 2}}));
}

TEST(Remedies, SmallLeavesGoToTheTip) {
    Plan plan = test::smallBoard();
    Tier broad = newTier(plan.stems[0], nullptr, KindId{2});
    broad.slots[0].leaf.mix = broad.slots[1].leaf.mix = MixId{1};
    make(plan, OpenTier{StemId{1}, 1, broad});
    const auto after = remedied(plan, FindingCode::largerAbove);
    ASSERT_TRUE(after);
    EXPECT_EQ(mixesOf(after->stems[0]), (Mixes{{1, 1}, {2, 2}, {3, 3}, {1, 1}}));
    EXPECT_EQ(after->stems[0].tiers[3].slots[0].leaf.kind, KindId{2});
    EXPECT_EQ(after->stems[0].tiers[1].turn, plan.stems[0].tiers[1].turn);
}

TEST(Remedies, PlacesAreOpenedAndClosed) {
    Plan plan = test::smallBoard();
    Tier single;
    single.turn = degrees(90);
    single.slots.resize(1);
    single.slots[0].leaf = {KindId{1}, MixId{3}};
    make(plan, OpenTier{StemId{2}, 2, single});
    auto after = remedied(plan, FindingCode::shortTier);
    ASSERT_TRUE(after);
    EXPECT_EQ(mixesOf(after->stems[1]).back(), (std::vector<std::uint32_t>{3, 0}));
    EXPECT_EQ(after->stems[1].tiers[2].slots[1].leaf.kind, KindId{1});

    Tier three = single;
    three.slots.resize(3);
    make(plan, CloseTier{StemId{2}, 2});
    make(plan, OpenTier{StemId{2}, 2, three});
    after = remedied(plan, FindingCode::longTier);
    ASSERT_TRUE(after);
    EXPECT_EQ(mixesOf(after->stems[1]).back(), (std::vector<std::uint32_t>{3, 0}));
}

// Leaves of a tier stand at equal angles: one place more or less turns all but the first.
TEST(Remedies, PlacesAreNeitherOpenedNorClosedWhereAPinnedLeafWouldTurn) {
    for (const std::size_t has : {std::size_t{3}, std::size_t{5}}) {
        for (const std::size_t pinned : {std::size_t{0}, std::size_t{1}}) {
            Plan plan = test::smallBoard();
            StemForm form = plan.stems[2];
            form.arrangement = Arrangement::whorled;
            form.whorl = 4;
            make(plan, ReformStem{StemId{3}, form});
            Tier tier;
            tier.slots.resize(has);
            tier.slots[0].leaf = {KindId{1}, MixId{1}};
            tier.slots[1].leaf = {KindId{1}, MixId{3}};
            tier.slots[pinned].pinned = true;
            make(plan, OpenTier{StemId{3}, 0, tier});
            const auto after = remedied(plan, has < 4 ? FindingCode::shortTier : FindingCode::longTier);
            EXPECT_EQ(after.has_value(), pinned == 0) << has << " places, number " << pinned << " pinned";
        }
    }
}

TEST(Remedies, OutOfPlaneTurnsBackAndKeepsItsSides) {
    Plan plan = test::smallBoard();
    StemForm form = plan.stems[0];
    form.arrangement = Arrangement::onePlane;
    make(plan, ReformStem{StemId{1}, form});
    make(plan, TurnTier{StemId{1}, 1, degrees(160)}); // 0, 160, 180
    const auto after = remedied(plan, FindingCode::outOfPlane);
    ASSERT_TRUE(after);
    EXPECT_EQ(after->stems[0].tiers[1].turn, degrees(180));
}

TEST(Remedies, APairIsMatchedFromItsOwnStemFirst) {
    Plan plan = test::smallBoard();
    make(plan, SwapSlots{{StemId{1}, 0, 0}, {StemId{1}, 2, 0}}); // S P / O O / P S
    const auto after = remedied(plan, FindingCode::unmatchedPair);
    ASSERT_TRUE(after);
    // Both pairs are put right by one swap.
    EXPECT_EQ(after->stems[0].tiers[0].slots[0].leaf, after->stems[0].tiers[0].slots[1].leaf);
    EXPECT_EQ(after->stems[0].tiers[2].slots[0].leaf, after->stems[0].tiers[2].slots[1].leaf);
    EXPECT_EQ(after->stems[1], plan.stems[1]);
}

TEST(Remedies, NothingIsTouchedThatIsPinnedLockedOrBound) {
    Plan plan = test::smallBoard();
    StemForm form = plan.stems[1];
    form.locked = true;
    Plan locked = plan;
    make(locked, ReformStem{StemId{2}, form});
    for (const Finding& finding : findings(locked, figures(locked)))
        if (finding.stem == StemId{2}) {
            EXPECT_FALSE(remedyFor(locked, figures(locked), finding));
        }
    Plan bound = plan;
    for (int tier = 0; tier < 2; ++tier)
        make(bound, MarkTier{StemId{2}, tier, {true, 5, ""}});
    for (const Finding& finding : findings(bound, figures(bound)))
        if (finding.stem == StemId{2}) {
            EXPECT_FALSE(remedyFor(bound, figures(bound), finding));
        }
}

TEST(Remedies, AFindingOfAStemThatIsGoneHasNone) {
    Plan plan = test::smallBoard();
    const auto all = findings(plan, figures(plan));
    ASSERT_FALSE(all.empty());
    plan.stems.clear();
    for (const Finding& finding : all)
        EXPECT_FALSE(remedyFor(plan, figures(plan), finding));
}

/// How bad a finding is, as a number that its remedy must make smaller.
double badness(const Plan& plan, const Finding& finding) {
    const Figures all = figures(plan);
    const auto it = std::find_if(plan.stems.begin(), plan.stems.end(),
                                 [&](const Stem& stem) { return stem.id == finding.stem; });
    if (it == plan.stems.end())
        return 0;
    const StemFigures& stem = all.stems[static_cast<std::size_t>(it - plan.stems.begin())];
    const auto saidOfStem = [&] {
        const auto found = findings(plan, all);
        return static_cast<double>(std::count_if(found.begin(), found.end(), [&](const Finding& other) {
            return other.code == finding.code && other.stem == finding.stem;
        }));
    };
    switch (finding.code) {
    case FindingCode::outOfOrder:
        return stem.inversions;
    case FindingCode::drifts:
        return stem.drift;
    case FindingCode::leans:
        for (std::size_t i = 0; i < stem.held.size(); ++i) {
            const Leaf leaf = all.lines[i].leaf;
            if (find(plan, leaf.mix)->name == finding.values[0] &&
                find(plan, leaf.kind)->name == finding.values[1])
                return stem.held[i];
        }
        return 0;
    case FindingCode::emptySlot: {
        const std::vector<Slot>& slots = it->tiers[static_cast<std::size_t>(finding.tier)].slots;
        return static_cast<double>(
            std::count_if(slots.begin(), slots.end(), [](const Slot& s) { return !s.filled(); }));
    }
    case FindingCode::shortTier:
    case FindingCode::longTier:
        return std::abs(static_cast<double>(it->tiers[static_cast<std::size_t>(finding.tier)].slots.size()) -
                        leavesPerTier(*it));
    case FindingCode::unmatchedPair: {
        double pairs = 0;
        for (const Stem& each : plan.stems)
            for (const Tier& tier : each.tiers)
                pairs += isUnmatchedPair(each, tier);
        return pairs;
    }
    case FindingCode::nearTwins:
        return all.pot.nearTwins;
    default:
        return saidOfStem();
    }
}

void expectKept(const Plan& before, const Plan& after) {
    ASSERT_EQ(before.stems.size(), after.stems.size());
    EXPECT_EQ(before.kinds, after.kinds) << "a remedy is no edit of the stock";
    for (std::size_t s = 0; s < before.stems.size(); ++s) {
        const Stem& was = before.stems[s];
        const Stem& is = after.stems[s];
        if (was.locked) {
            EXPECT_EQ(was, is) << "a locked stem was touched";
        }
        ASSERT_EQ(was.tiers.size(), is.tiers.size());
        for (std::size_t t = 0; t < was.tiers.size(); ++t) {
            if (was.tiers[t].progress.bound) {
                EXPECT_EQ(was.tiers[t], is.tiers[t]) << "a bound tier was touched";
            }
            for (std::size_t i = 0; i < was.tiers[t].slots.size(); ++i) {
                if (!was.tiers[t].slots[i].pinned)
                    continue;
                ASSERT_LT(i, is.tiers[t].slots.size());
                EXPECT_EQ(was.tiers[t].slots[i], is.tiers[t].slots[i]) << "a pinned slot was touched";
                EXPECT_LT(apart(slotTurn(was.tiers[t], i), slotTurn(is.tiers[t], i), degrees(360)),
                          degrees(1e-6))
                    << "a pinned leaf points elsewhere";
            }
        }
    }
}

/// A board with something of everything wrong.
Plan unruly(std::uint32_t seed) {
    Plan plan = test::randomBoard(seed, 5, 10, 5);
    std::mt19937 random(seed);
    test::RandomEdits edits(seed);
    for (int i = 0; i < 25; ++i)
        if (Edit edit = edits.next(plan); !reachOf(edit).everything)
            (void)apply(plan, edit);
    for (Stem& stem : plan.stems) {
        stem.locked = random() % 8 == 0;
        stem.arrangement = static_cast<Arrangement>(random() % 5 == 0 ? random() % 5 : 0);
        std::size_t bound = random() % 3 == 0 ? random() % (stem.tiers.size() + 1) : 0;
        for (std::size_t t = 0; t < stem.tiers.size(); ++t)
            stem.tiers[t].progress.bound = t < bound;
    }
    EXPECT_FALSE(firstProblem(plan));
    return plan;
}

// Whatever the board, a remedy can be made, lessens its finding, and leaves alone what it must.
TEST(RemediesProperty, LessenTheirFindingAndTouchNothingElse) {
    std::map<FindingCode, int> taken;
    for (std::uint32_t seed = 0; seed < 120 && !testing::Test::HasFailure(); ++seed) {
        const Plan plan = unruly(seed);
        for (const Finding& finding : findings(plan, figures(plan))) {
            SCOPED_TRACE("seed " + std::to_string(seed) + ", code " +
                         std::to_string(static_cast<int>(finding.code)) + ", stem " +
                         std::to_string(finding.stem.value) + ", tier " + std::to_string(finding.tier));
            const auto after = remedied(plan, finding);
            if (!after)
                continue;
            ++taken[finding.code];
            EXPECT_FALSE(firstProblem(*after));
            EXPECT_LT(badness(*after, finding), badness(plan, finding));
            expectKept(plan, *after);
            if (testing::Test::HasFailure())
                break;
        }
    }
    for (const FindingCode code :
         {FindingCode::sameFacing, FindingCode::outOfPlane, FindingCode::shortTier, FindingCode::longTier,
          FindingCode::emptySlot, FindingCode::unmatchedPair, FindingCode::largerAbove, FindingCode::outOfOrder,
          FindingCode::leans, FindingCode::drifts, FindingCode::nearTwins})
        EXPECT_GE(taken[code], 5) << "too few of code " << static_cast<int>(code);
}

double potUnevenness(Plan plan, const Edit& edit) {
    if (!apply(plan, edit))
        return 1e300;
    return figures(plan).pot.unevenness;
}

/// Every slot whose leaf a remedy might move.
std::vector<SlotRef> freeSlots(const Plan& plan, bool filled) {
    std::vector<SlotRef> slots;
    for (const Stem& stem : plan.stems)
        for (std::size_t t = 0; t < stem.tiers.size(); ++t)
            for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s)
                if (isFree(stem, stem.tiers[t], stem.tiers[t].slots[s]) &&
                    stem.tiers[t].slots[s].filled() == filled)
                    slots.push_back({stem.id, static_cast<int>(t), static_cast<int>(s)});
    return slots;
}

// The best single swap and the best leaf of the tray, against trying every one of them.
TEST(RemediesProperty, AreTheBestThereAre) {
    int swaps = 0;
    int fills = 0;
    for (std::uint32_t seed = 0; seed < 40; ++seed) {
        const Plan plan = unruly(seed);
        const Figures all = figures(plan);
        for (const Finding& finding : findings(plan, all)) {
            const auto remedy = remedyFor(plan, all, finding);
            if (finding.code == FindingCode::leans) {
                double best = all.pot.unevenness;
                for (const SlotRef& mine : freeSlots(plan, true)) {
                    const Leaf leaf = find(plan, mine)->leaf;
                    if (mine.stem != finding.stem || find(plan, leaf.mix)->name != finding.values[0] ||
                        find(plan, leaf.kind)->name != finding.values[1])
                        continue;
                    for (const SlotRef& theirs : freeSlots(plan, true))
                        if (theirs.stem != mine.stem && find(plan, theirs)->leaf.kind == leaf.kind)
                            best = std::min(best, potUnevenness(plan, SwapSlots{mine, theirs}));
                }
                if (remedy) {
                    ++swaps;
                    EXPECT_NEAR(potUnevenness(plan, *remedy), best, 1e-9) << "seed " << seed;
                } else {
                    EXPECT_NEAR(all.pot.unevenness, best, 1e-9) << "seed " << seed;
                }
            }
            if (finding.code == FindingCode::emptySlot && remedy) {
                const auto& edits = std::get<Batch>(remedy->what).edits;
                const FillSlot& first = std::get<FillSlot>(edits.front().what);
                const KindId kind = find(plan, first.at)->leaf.kind;
                if (!kind)
                    continue;
                double best = 1e300;
                for (const TrayLine& line : all.lines)
                    if (line.leaf.kind == kind && line.left() > 0)
                        best = std::min(best, potUnevenness(plan, FillSlot{first.at, line.leaf}));
                ++fills;
                EXPECT_NEAR(potUnevenness(plan, first), best, 1e-6) << "seed " << seed;
            }
        }
    }
    EXPECT_GT(swaps, 20);
    EXPECT_GT(fills, 20);
}

} // namespace
} // namespace stemwright

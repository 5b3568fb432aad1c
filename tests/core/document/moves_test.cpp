#include "core/document/moves.h"

#include "core/document/history.h"
#include "support/boards.h"

#include <gtest/gtest.h>

#include <random>

namespace stemwright {

namespace {

constexpr StemId one{1}, two{2}, three{3};
constexpr MixId plum{1}, plumOnSea{2}, sea{3};
constexpr KindId small{1};

class Moves : public testing::Test {
protected:
    Plan plan = test::smallBoard();

    void make(const Result<Edit>& edit) {
        ASSERT_TRUE(edit.ok()) << static_cast<int>(edit.problem().code);
        const auto back = apply(plan, edit.value());
        ASSERT_TRUE(back.ok()) << static_cast<int>(back.problem().code);
        EXPECT_FALSE(firstProblem(plan));
    }
    std::vector<SlotRef> drop(const Held& held, const Target& target) {
        const Result<Put> done = put(plan, held, target);
        EXPECT_TRUE(done.ok()) << static_cast<int>(done.problem().code);
        if (!done)
            return {};
        make(done.value().edit);
        return done.value().landed;
    }
    ProblemCode refused(const Held& held, const Target& target) {
        const Result<Put> done = put(plan, held, target);
        EXPECT_FALSE(done.ok());
        return done ? ProblemCode::notJson : done.problem().code;
    }
    MixId mix(StemId stem, int tier, int slot) const { return find(plan, SlotRef{stem, tier, slot})->leaf.mix; }
    std::size_t tiers(StemId stem) const { return find(plan, stem)->tiers.size(); }
    double turn(StemId stem, int tier) const {
        return inDegrees(find(plan, stem)->tiers[static_cast<std::size_t>(tier)].turn);
    }
    bool alternating(StemId stem) const { return alternates(*find(plan, stem), find(plan, stem)->tiers); }
};

HeldLeaves leaf(SlotRef at) {
    return {{at}, 0};
}

TEST_F(Moves, ALeafOnALeafSwapsThem) {
    const auto landed = drop(leaf({one, 0, 0}), OntoSlot{{two, 1, 1}});
    EXPECT_EQ(mix(one, 0, 0), plumOnSea);
    EXPECT_EQ(mix(two, 1, 1), plum);
    EXPECT_EQ(landed, (std::vector<SlotRef>{{two, 1, 1}}));
}

TEST_F(Moves, ALeafOnAnEmptySlotMovesAndLeavesASlotThatWaitsForItsKind) {
    make(emptySlots(plan, {{two, 0, 1}}));
    make(Edit(FillSlot{{two, 0, 1}, {KindId{2}, MixId{}}}));
    drop(leaf({one, 2, 0}), OntoSlot{{two, 0, 1}});
    EXPECT_EQ(mix(two, 0, 1), sea);
    EXPECT_FALSE(find(plan, SlotRef{one, 2, 0})->filled());
    EXPECT_EQ(find(plan, SlotRef{one, 2, 0})->leaf.kind, small);
}

TEST_F(Moves, ALeafInAGapOpensATierThatWaitsForItsMatch) {
    drop(leaf({two, 0, 1}), IntoGap{one, 1});
    ASSERT_EQ(tiers(one), 4u);
    EXPECT_EQ(mix(one, 1, 1), sea);
    EXPECT_FALSE(find(plan, SlotRef{one, 1, 0})->filled());
    EXPECT_EQ(find(plan, SlotRef{one, 1, 0})->leaf.kind, small);
    EXPECT_EQ(turn(one, 0), 0);
    EXPECT_EQ(turn(one, 1), 90);
    EXPECT_EQ(turn(one, 2), 180);
    EXPECT_EQ(turn(one, 3), 270);
}

TEST_F(Moves, AboveTheTipTheNewTierTurnsAndTheOthersStay) {
    const std::vector<double> before{turn(one, 0), turn(one, 1), turn(one, 2)};
    make(openTier(plan, one, 0));
    EXPECT_EQ(turn(one, 0), 270);
    for (int t = 0; t < 3; ++t)
        EXPECT_EQ(turn(one, t + 1), before[static_cast<std::size_t>(t)]);
}

TEST_F(Moves, ADeliberateTurnKeepsAllTurns) {
    make(turnTier(plan, one, 2));
    EXPECT_FALSE(alternating(one));
    drop(leaf({two, 0, 1}), IntoGap{one, 1});
    EXPECT_EQ(turn(one, 2), 90);
    EXPECT_EQ(turn(one, 3), 270);
}

TEST_F(Moves, ATierMovesAndBothStemsAlternateAgain) {
    drop(HeldTiers{one, 1, 1, 0}, IntoGap{two, 1});
    EXPECT_EQ(tiers(one), 2u);
    EXPECT_EQ(tiers(two), 3u);
    EXPECT_EQ(mix(two, 1, 0), plumOnSea);
    EXPECT_TRUE(alternating(one));
    EXPECT_TRUE(alternating(two));
}

TEST_F(Moves, ARunMovesWithinItsStem) {
    drop(HeldTiers{one, 0, 2, 0}, IntoGap{one, 3});
    EXPECT_EQ(mix(one, 0, 0), sea);
    EXPECT_EQ(mix(one, 1, 0), plum);
    EXPECT_EQ(mix(one, 2, 0), plumOnSea);
    EXPECT_TRUE(alternating(one));
    EXPECT_EQ(refused(HeldTiers{one, 0, 2, 0}, IntoGap{one, 1}), ProblemCode::samePlace);
}

TEST_F(Moves, ATierOnATierExchangesTheirLeaves) {
    const double upper = turn(one, 0), lower = turn(two, 1);
    drop(HeldTiers{one, 0, 1, 0}, OntoSlot{{two, 1, 0}});
    EXPECT_EQ(mix(one, 0, 0), plumOnSea);
    EXPECT_EQ(mix(two, 1, 0), plum);
    EXPECT_EQ(turn(one, 0), upper);
    EXPECT_EQ(turn(two, 1), lower);
}

TEST_F(Moves, ARunThatReachesOverItselfShifts) {
    drop(HeldTiers{one, 0, 2, 0}, OntoSlot{{one, 1, 0}});
    EXPECT_EQ(mix(one, 0, 0), sea);
    EXPECT_EQ(mix(one, 1, 0), plum);
    EXPECT_EQ(refused(HeldTiers{one, 0, 3, 0}, OntoSlot{{two, 0, 0}}), ProblemCode::noRoom);
}

TEST_F(Moves, ASelectionKeepsItsShape) {
    // Both leaves of the tip tier, shifted down by one: the sources and the goals do not meet.
    drop(HeldLeaves{{{one, 0, 0}, {one, 0, 1}}, 0}, OntoSlot{{one, 1, 0}});
    EXPECT_EQ(mix(one, 0, 0), plumOnSea);
    EXPECT_EQ(mix(one, 1, 1), plum);
    // Two tiers' left leaves shifted by one: they overlap, and the leaf pushed out fills the first place.
    drop(HeldLeaves{{{one, 0, 0}, {one, 1, 0}}, 0}, OntoSlot{{one, 1, 0}});
    EXPECT_EQ(mix(one, 0, 0), sea);
    EXPECT_EQ(mix(one, 1, 0), plumOnSea);
    EXPECT_EQ(mix(one, 2, 0), plum);
    EXPECT_EQ(refused(HeldLeaves{{{one, 1, 0}, {one, 2, 0}}, 0}, OntoSlot{{two, 1, 0}}), ProblemCode::noRoom);
}

TEST_F(Moves, ASelectionOfWholeTiersGoesAsTiers) {
    drop(HeldLeaves{{{one, 0, 0}, {one, 0, 1}, {one, 1, 0}, {one, 1, 1}}, 0}, IntoGap{three, 0});
    EXPECT_EQ(tiers(one), 1u);
    EXPECT_EQ(tiers(three), 2u);
    EXPECT_TRUE(alternating(three));
}

TEST_F(Moves, ScatteredLeavesInAGapOpenATierEach) {
    const auto landed = drop(HeldLeaves{{{one, 0, 0}, {one, 2, 1}, {two, 1, 0}}, 1}, IntoGap{two, 1});
    EXPECT_EQ(tiers(two), 5u);
    EXPECT_EQ(landed, (std::vector<SlotRef>{{two, 1, 0}, {two, 2, 1}, {two, 3, 0}}));
    EXPECT_EQ(mix(two, 1, 0), plum);
    EXPECT_EQ(mix(two, 2, 1), sea);
    EXPECT_EQ(mix(two, 3, 0), plumOnSea);
    EXPECT_TRUE(alternating(two));
    EXPECT_FALSE(find(plan, SlotRef{two, 4, 0})->filled());
}

TEST_F(Moves, ToAndFromTheTray) {
    const int before = inTray(plan, {small, plum});
    drop(leaf({one, 0, 0}), OntoTray{});
    EXPECT_EQ(inTray(plan, {small, plum}), before + 1);
    drop(HeldFromTray{{small, plum}}, OntoSlot{{one, 1, 0}});
    EXPECT_EQ(mix(one, 1, 0), plum);
    EXPECT_EQ(inTray(plan, {small, plum}), before);
    drop(HeldFromTray{{small, plum}}, IntoGap{three, 0});
    EXPECT_EQ(refused(HeldFromTray{{small, plum}}, OntoSlot{{one, 2, 0}}), ProblemCode::trayEmpty);
    EXPECT_EQ(refused(HeldFromTray{{small, sea}}, OntoSlot{{one, 2, 0}}), ProblemCode::leavesAlike);
    drop(HeldTiers{one, 1, 1, 0}, OntoTray{});
    EXPECT_EQ(tiers(one), 2u);
    EXPECT_TRUE(alternating(one));
    EXPECT_EQ(refused(HeldFromTray{{small, sea}}, OntoTray{}), ProblemCode::samePlace);
}

TEST_F(Moves, WhatIsPinnedOrLockedStays) {
    make(pinSlots(plan, {{one, 1, 0}}, true));
    EXPECT_EQ(refused(leaf({one, 1, 0}), OntoTray{}), ProblemCode::slotPinned);
    EXPECT_EQ(refused(leaf({two, 0, 0}), OntoSlot{{one, 1, 0}}), ProblemCode::slotPinned);
    EXPECT_EQ(refused(HeldTiers{one, 0, 2, 0}, OntoTray{}), ProblemCode::slotPinned);
    drop(leaf({one, 0, 0}), IntoGap{two, 1});
    make(lockStem(plan, two, true));
    EXPECT_EQ(refused(leaf({one, 0, 1}), IntoGap{two, 2}), ProblemCode::stemLocked);
    EXPECT_EQ(refused(leaf({two, 2, 0}), OntoTray{}), ProblemCode::stemLocked);
}

TEST_F(Moves, ThePlaceItselfAndWhatIsNotThereAreRefused) {
    EXPECT_EQ(refused(leaf({one, 0, 0}), OntoSlot{{one, 0, 0}}), ProblemCode::samePlace);
    EXPECT_EQ(refused(leaf({one, 0, 0}), OntoSlot{{one, 0, 1}}), ProblemCode::leavesAlike);
    EXPECT_EQ(refused(leaf({one, 7, 0}), OntoTray{}), ProblemCode::noSuchTier);
    EXPECT_EQ(refused(leaf({one, 0, 0}), IntoGap{one, 9}), ProblemCode::noSuchPlace);
    EXPECT_EQ(refused(leaf({one, 0, 0}), IntoGap{StemId{9}, 0}), ProblemCode::noSuchStem);
    make(emptySlots(plan, {{one, 0, 0}}));
    EXPECT_EQ(refused(leaf({one, 0, 0}), OntoSlot{{one, 1, 1}}), ProblemCode::slotEmpty);
}

TEST_F(Moves, ATierIsFittedToAnotherArrangement) {
    make(rearrangeStem(plan, three, Arrangement::alternate, 3));
    drop(HeldTiers{one, 0, 1, 0}, IntoGap{three, 0});
    ASSERT_EQ(tiers(three), 2u);
    EXPECT_EQ(turn(three, 1), 180);
    make(rearrangeStem(plan, two, Arrangement::whorled, 3));
    drop(HeldTiers{one, 0, 1, 0}, IntoGap{two, 2});
    EXPECT_EQ(find(plan, two)->tiers[2].slots.size(), 3u);
    EXPECT_FALSE(find(plan, SlotRef{two, 2, 2})->filled());
    // A lone leaf is a whole tier: it moves as one.
    drop(leaf({three, 1, 0}), IntoGap{three, 0});
    EXPECT_EQ(tiers(three), 2u);
}

TEST_F(Moves, ArrangementsResizeTiersAndTheTrayTakesTheRest) {
    make(rearrangeStem(plan, one, Arrangement::alternate, 3));
    for (int t = 0; t < 3; ++t) {
        EXPECT_EQ(find(plan, one)->tiers[static_cast<std::size_t>(t)].slots.size(), 1u);
        EXPECT_EQ(turn(one, t), t % 2 ? 180 : 0);
    }
    EXPECT_EQ(inTray(plan, {small, plum}), 2);
    make(rearrangeStem(plan, two, Arrangement::whorled, 4));
    EXPECT_EQ(find(plan, two)->tiers[0].slots.size(), 4u);
    EXPECT_EQ(turn(two, 1), 45);
    make(pinSlots(plan, {{two, 0, 0}, {two, 0, 1}}, true));
    EXPECT_EQ(rearrangeStem(plan, two, Arrangement::spiral, 3).problem().code, ProblemCode::slotPinned);
}

TEST_F(Moves, StemsAreAddedCopiedMovedRenamedAndRemoved) {
    make(addStem(plan, one, "New"));
    ASSERT_EQ(plan.stems.size(), 4u);
    EXPECT_EQ(plan.stems[1].name, "New");
    EXPECT_TRUE(plan.stems[1].tiers.empty());
    make(copyStem(plan, one, "Copy"));
    const Stem& copy = plan.stems[1];
    EXPECT_EQ(copy.name, "Copy");
    ASSERT_EQ(copy.tiers.size(), 3u);
    // The tray had one plum, no plum on sea and one sea of the small kind left.
    EXPECT_TRUE(copy.tiers[0].slots[0].filled());
    EXPECT_FALSE(copy.tiers[0].slots[1].filled());
    EXPECT_EQ(copy.tiers[0].slots[1].leaf.kind, small);
    EXPECT_FALSE(copy.tiers[1].slots[0].filled());
    make(moveStem(plan, one, 99));
    EXPECT_EQ(plan.stems.back().id, one);
    make(renameStem(plan, one, "Last"));
    EXPECT_EQ(plan.stems.back().name, "Last");
    make(removeStem(plan, one));
    EXPECT_EQ(find(plan, one), nullptr);
    EXPECT_EQ(removeStem(plan, one).problem().code, ProblemCode::noSuchStem);
}

// Whatever the hand does: leaves are neither made nor lost, the plan stays valid, a stem that alternated still
// does, what landed is what was held, and undo leads back to the very first plan.
TEST(MovesProperty, AnyGestureKeepsEveryLeafAndUndoes) {
    std::mt19937 random(20);
    const auto below = [&](std::size_t n) { return static_cast<int>(random() % std::max<std::size_t>(n, 1)); };
    int made = 0;
    for (std::uint32_t board = 0; board < 60; ++board) {
        Plan first = test::randomBoard(board, 5, 8, 4);
        first.stems[3].arrangement = Arrangement::whorled;
        first.stems[4].arrangement = Arrangement::spiral;
        first.stems[1].locked = board % 7 == 0;
        History history(first);
        for (int step = 0; step < 60; ++step) {
            const Plan& plan = history.plan();
            const auto stem = [&]() -> const Stem& {
                return plan.stems[static_cast<std::size_t>(below(plan.stems.size()))];
            };
            const auto slot = [&] {
                const Stem& at = stem();
                return SlotRef{at.id, below(at.tiers.size()), below(2)};
            };
            Held held = HeldFromTray{{KindId{static_cast<std::uint32_t>(1 + below(2))},
                                      MixId{static_cast<std::uint32_t>(1 + below(4))}}};
            if (const int sort = below(4); sort == 0) {
                held = HeldLeaves{{slot()}, 0};
            } else if (sort == 1) {
                HeldLeaves leaves;
                for (int n = 0; n < 2 + below(3); ++n)
                    if (const SlotRef at = slot();
                        std::find(leaves.from.begin(), leaves.from.end(), at) == leaves.from.end())
                        leaves.from.push_back(at);
                leaves.grabbed = static_cast<std::size_t>(below(leaves.from.size()));
                held = leaves;
            } else if (sort == 2) {
                const Stem& at = stem();
                held = HeldTiers{at.id, below(at.tiers.size()), 1 + below(3), 0};
            }
            Target target = OntoTray{};
            if (const int sort = below(5); sort < 2) {
                target = OntoSlot{slot()};
            } else if (sort < 4) {
                const Stem& at = stem();
                target = IntoGap{at.id, below(at.tiers.size() + 1)};
            }
            const auto done = put(plan, held, target);
            if (!done)
                continue;
            const Plan before = plan;
            ASSERT_FALSE(history.make(done.value().edit)) << "put() must give edits that can be made";
            const auto leavesMoved = [&] {
                if (const auto* leaves = std::get_if<HeldLeaves>(&held)) {
                    for (std::size_t i = 0; i < done.value().landed.size(); ++i)
                        if (!(find(plan, done.value().landed[i])->leaf == find(before, leaves->from[i])->leaf))
                            return false;
                } else if (const auto* tray = std::get_if<HeldFromTray>(&held)) {
                    return find(plan, done.value().landed.at(0))->leaf == tray->leaf;
                }
                return true;
            };
            if (!std::holds_alternative<HeldLeaves>(held) ||
                done.value().landed.size() == std::get<HeldLeaves>(held).from.size()) {
                ASSERT_TRUE(leavesMoved());
            }
            ASSERT_FALSE(firstProblem(plan));
            for (const Stem& was : before.stems)
                if (alternates(was, was.tiers)) {
                    ASSERT_TRUE(alternates(*find(plan, was.id), find(plan, was.id)->tiers));
                }
            ++made;
        }
        while (history.canUndo())
            history.undo();
        ASSERT_EQ(history.plan(), first);
    }
    EXPECT_GT(made, 1000);
}

TEST_F(Moves, AFormWithAnotherArrangementRearrangesTheTiersInTheSameEdit) {
    const Plan before = plan;
    StemForm form = *find(plan, one);
    form.name = "Tall";
    form.arrangement = Arrangement::alternate;
    const Result<Edit> edit = reformStem(plan, one, form);
    make(edit);
    EXPECT_EQ(find(plan, one)->name, "Tall");
    for (const Tier& tier : find(plan, one)->tiers)
        EXPECT_EQ(tier.slots.size(), 1u);
    EXPECT_EQ(turn(one, 1), 180);
    Plan again = before;
    const auto back = apply(again, edit.value());
    ASSERT_TRUE(back.ok());
    ASSERT_TRUE(apply(again, back.value()).ok());
    EXPECT_EQ(again, before);
}

TEST_F(Moves, AFormOfTheSameArrangementLeavesTheTiersAlone) {
    const std::vector<Tier> tiersBefore = find(plan, one)->tiers;
    StemForm form = *find(plan, one);
    form.tail = millimetres(44);
    make(reformStem(plan, one, form));
    EXPECT_EQ(find(plan, one)->tiers, tiersBefore);
    EXPECT_EQ(find(plan, one)->tail, millimetres(44));
}

} // namespace

} // namespace stemwright

#include "core/document/history.h"
#include "core/plan/edit.h"
#include "tests/support/boards.h"
#include "tests/support/random_edits.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

constexpr KindId small{1};
constexpr MixId plum{1}, sea{3};

TEST(Edit, TheBoardsOfTheTestsAreValid) {
    EXPECT_FALSE(firstProblem(test::smallBoard()));
    EXPECT_FALSE(firstProblem(test::largeBoard(20, 10)));
    for (std::uint32_t seed = 0; seed < 20; ++seed)
        EXPECT_FALSE(firstProblem(test::randomBoard(seed, 5, 8, 4)));
}

TEST(Edit, FillingASlotTakesFromTheTrayAndGivesBack) {
    Plan plan = test::smallBoard();
    const SlotRef at{StemId{1}, 0, 0};
    EXPECT_EQ(inTray(plan, {small, plum}), 1);
    EXPECT_EQ(inTray(plan, {small, sea}), 1);
    ASSERT_TRUE(apply(plan, FillSlot{at, {small, sea}}));
    EXPECT_EQ(inTray(plan, {small, plum}), 2);
    EXPECT_EQ(inTray(plan, {small, sea}), 0);
    const Plan before = plan;
    const auto refused = apply(plan, FillSlot{{StemId{1}, 0, 1}, {small, sea}});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.problem().code, ProblemCode::trayEmpty);
    EXPECT_EQ(plan, before);
}

TEST(Edit, ALeafThatIsAlreadyThereNeedsNoneInTheTray) {
    Plan plan = test::smallBoard();
    ASSERT_TRUE(apply(plan, FillSlot{{StemId{1}, 0, 0}, {small, sea}}));
    EXPECT_EQ(inTray(plan, {small, sea}), 0);
    EXPECT_TRUE(apply(plan, FillSlot{{StemId{1}, 0, 0}, {small, sea}}));
}

TEST(Edit, ATierCannotTakeTwoLeavesWhereTheTrayHasOne) {
    Plan plan = test::smallBoard();
    Tier tier = newTier(plan.stems[2], nullptr, small);
    tier.slots[0].leaf = tier.slots[1].leaf = {small, plum};
    EXPECT_FALSE(apply(plan, OpenTier{StemId{3}, 0, tier}));
    tier.slots[1].leaf.mix = MixId{};
    EXPECT_TRUE(apply(plan, OpenTier{StemId{3}, 0, tier}));
}

TEST(Edit, MovingTiersWithinAStemCountsAfterTheyAreTakenOut) {
    Plan plan = test::smallBoard();
    const std::vector<Tier> was = plan.stems[0].tiers;
    const auto back = apply(plan, MoveTiers{StemId{1}, 0, 2, StemId{1}, 1});
    ASSERT_TRUE(back);
    EXPECT_EQ(plan.stems[0].tiers, (std::vector<Tier>{was[2], was[0], was[1]}));
    ASSERT_TRUE(apply(plan, back.value()));
    EXPECT_EQ(plan.stems[0].tiers, was);
}

TEST(Edit, ABatchIsAllOrNothing) {
    Plan plan = test::smallBoard();
    const Plan before = plan;
    const auto result =
        apply(plan, Batch{Deed::several,
                          {CloseTier{StemId{1}, 0}, SwapSlots{{StemId{1}, 0, 0}, {StemId{2}, 0, 0}},
                           CloseTier{StemId{1}, 9}}});
    ASSERT_FALSE(result);
    EXPECT_EQ(result.problem().code, ProblemCode::noSuchTier);
    EXPECT_EQ(plan, before);
}

TEST(Edit, WhatIsInUseCannotBeRemoved) {
    Plan plan = test::smallBoard();
    for (const Edit& edit :
         {Edit(Remove<ColourId>{ColourId{1}}), Edit(Remove<MixId>{plum}), Edit(Remove<KindId>{small})}) {
        const auto result = apply(plan, edit);
        ASSERT_FALSE(result);
        EXPECT_EQ(result.problem().code, ProblemCode::stillUsed);
    }
    EXPECT_TRUE(apply(plan, Remove<KindId>{KindId{2}}));
}

TEST(Edit, AnOwnEntryThatIsInUseCannotGo) {
    Plan plan = test::smallBoard();
    OwnTables own;
    own.metals = {{"bronze", 8'800, 105'000, 130, ""}};
    own.beads = {{"11/0", millimetres(2.1), millimetres(1.5), grams(0.011), ""},
                 {"drop", millimetres(3), millimetres(3), grams(0.03), ""}};
    own.clays = {{"river", 1'700, ""}};
    ASSERT_TRUE(apply(plan, Set<OwnTables>{own}));
    KindForm form = plan.kinds[1];
    form.ownMetal = "bronze";
    form.beadSize = "drop";
    ASSERT_TRUE(apply(plan, ReformKind{KindId{2}, form}));
    Pot pot = plan.pot;
    pot.clay.own = "river";
    ASSERT_TRUE(apply(plan, Set<Pot>{pot}));
    const Plan before = plan;
    const auto without = [&](auto list, std::size_t i) {
        OwnTables fewer = own;
        auto& entries = fewer.*list;
        entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(i));
        const auto result = apply(plan, Set<OwnTables>{fewer});
        return result ? std::nullopt : std::optional(result.problem());
    };
    EXPECT_EQ(without(&OwnTables::metals, 0),
              (Problem{ProblemCode::ownInUse, "", {"bronze", "kind", "Broad"}}));
    EXPECT_EQ(without(&OwnTables::beads, 1), (Problem{ProblemCode::ownInUse, "", {"drop", "kind", "Broad"}}));
    EXPECT_EQ(without(&OwnTables::clays, 0), (Problem{ProblemCode::ownInUse, "", {"river", "pot", ""}}));
    EXPECT_EQ(plan, before);
    // The handbook has 11/0 too.
    EXPECT_FALSE(without(&OwnTables::beads, 0));
}

TEST(Edit, WhatNamesAnOwnEntryNeedsIt) {
    Plan plan = test::smallBoard();
    KindForm form = plan.kinds[0];
    form.ownMetal = "bronze";
    const auto refused = apply(plan, ReformKind{KindId{1}, form});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.problem(), (Problem{ProblemCode::noSuchId, "kinds[0].own_metal", {"metal", "bronze"}}));
    OwnTables twice;
    twice.covers = {{"moss", 90, ""}, {"moss", 95, ""}};
    EXPECT_EQ(apply(plan, Set<OwnTables>{twice}).problem(),
              (Problem{ProblemCode::duplicateId, "own.covers[1].name", {"moss"}}));
    twice.covers = {{"", 90, ""}};
    EXPECT_EQ(apply(plan, Set<OwnTables>{twice}).problem(),
              (Problem{ProblemCode::missingKey, "own.covers[0].name", {"name"}}));
    EXPECT_EQ(plan, test::smallBoard());
}

TEST(Edit, CountedRowsAreOnesThatThereAre) {
    Plan plan = test::smallBoard();
    KindForm form = plan.kinds[0];
    form.make = LeafMake{Making::rows, 6, 5, degrees(30), "", {{4, 21, ""}}};
    EXPECT_TRUE(apply(plan, ReformKind{KindId{1}, form}));
    form.make->counted = {{5, 21, ""}};
    EXPECT_EQ(apply(plan, ReformKind{KindId{1}, form}).problem(),
              (Problem{ProblemCode::outOfRange, "kinds[0].make.counted[0].row", {"5", "0", "4"}}));
    form.make->counted = {{1, 9, ""}, {1, 10, ""}};
    EXPECT_EQ(apply(plan, ReformKind{KindId{1}, form}).problem(),
              (Problem{ProblemCode::duplicateId, "kinds[0].make.counted[1].row", {"1"}}));
}

TEST(Edit, StockCannotFallBelowWhatIsPlaced) {
    Plan plan = test::smallBoard();
    std::vector<StockLine> stock = plan.kinds[0].stock;
    stock[0].made = stock[0].toMake = 1;
    const auto refused = apply(plan, SetStock{small, stock});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.problem().code, ProblemCode::stockBelowPlaced);
    EXPECT_EQ(refused.problem().values, (std::vector<std::string>{"Small", "Plum", "3", "2"}));
    stock[0].made = 2;
    EXPECT_TRUE(apply(plan, SetStock{small, stock}));
}

TEST(Edit, AValueOutOfItsLimitsIsRefusedWithItsPlace) {
    Plan plan = test::smallBoard();
    StemForm form = plan.stems[1];
    form.tail = millimetres(-1);
    const auto refused = apply(plan, ReformStem{StemId{2}, form});
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.problem().code, ProblemCode::outOfRange);
    EXPECT_EQ(refused.problem().place, "stems[1].tail_mm");
    EXPECT_EQ(plan, test::smallBoard());
}

TEST(History, RemembersWhatIsCleanAndForgetsWhatCannotBeRedone) {
    History history(test::smallBoard());
    EXPECT_TRUE(history.clean());
    EXPECT_FALSE(history.make(CloseTier{StemId{1}, 0}));
    EXPECT_FALSE(history.clean());
    history.markClean();
    history.undo();
    EXPECT_FALSE(history.clean());
    EXPECT_TRUE(history.canRedo());
    EXPECT_FALSE(history.make(CloseTier{StemId{2}, 0}));
    EXPECT_FALSE(history.canRedo());
    history.undo();
    // The clean state was cut off: nothing leads back to it.
    EXPECT_FALSE(history.clean());
}

TEST(History, AnEditThatChangesNothingIsNotRemembered) {
    History history(test::smallBoard());
    EXPECT_FALSE(history.make(PinSlot{{StemId{1}, 0, 0}, false}));
    EXPECT_FALSE(history.canUndo());
    EXPECT_FALSE(history.make(SwapSlots{{StemId{1}, 0, 0}, {StemId{1}, 1, 0}}));
    EXPECT_TRUE(history.canUndo());
}

int leavesInAll(const Plan& plan) {
    int all = 0;
    for (const TrayLine& line : tray(plan)) {
        EXPECT_GE(line.left(), 0);
        all += line.placed + line.left();
    }
    return all;
}

bool changesStock(const Edit& edit) {
    if (const auto* batch = std::get_if<Batch>(&edit.what))
        return std::any_of(batch->edits.begin(), batch->edits.end(), changesStock);
    return std::holds_alternative<SetStock>(edit.what);
}

// Leaves are conserved by every edit but those of the stock, and undo leads back to the very first plan.
TEST(EditProperty, LeavesAreConservedAndUndoLeadsBack) {
    int made = 0;
    for (std::uint32_t seed = 0; seed < 20'000; ++seed) {
        const Plan first = test::randomBoard(seed % 50, 3, 6, 3);
        History history(first);
        test::RandomEdits random(seed);
        for (int step = 0; step < 8 && !history.plan().stems.empty(); ++step) {
            const Edit edit = random.next(history.plan());
            const int before = leavesInAll(history.plan());
            const Plan unchanged = history.plan();
            if (history.make(edit)) {
                ASSERT_EQ(history.plan(), unchanged) << "seed " << seed << ", step " << step;
                continue;
            }
            ++made;
            if (!changesStock(edit)) {
                ASSERT_EQ(leavesInAll(history.plan()), before) << "seed " << seed << ", step " << step;
            }
            const auto problem = firstProblem(history.plan());
            ASSERT_FALSE(problem) << "seed " << seed << ", step " << step << ": " << problem->place;
        }
        const Plan last = history.plan();
        while (history.canUndo())
            history.undo();
        ASSERT_EQ(history.plan(), first) << "seed " << seed;
        while (history.canRedo())
            history.redo();
        ASSERT_EQ(history.plan(), last) << "seed " << seed;
    }
    EXPECT_GT(made, 40'000) << "too few of the edits were possible for the test to mean anything";
}

} // namespace
} // namespace stemwright

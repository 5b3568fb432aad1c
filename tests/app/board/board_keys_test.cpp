#include "app/board/board_fixture.h"

#include "app/board/board_steps.h"
#include "core/document/examples.h"

namespace stemwright::test {

namespace {

class BoardKeys : public BoardTest {};

TEST_F(BoardKeys, ArrowsWalkOverLeavesStemsAndTray) {
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{one, 0, 0}));
    key(Qt::Key_Right);
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{one, 0, 1}));
    key(Qt::Key_Right);
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{two, 0, 0}));
    key(Qt::Key_Down);
    // The next tier faces front to back: the leaf at the back lies above the other.
    EXPECT_EQ(board.focusPlace().tier, 1);
    const int upper = board.rectOf(board.focusPlace()).center().y();
    key(Qt::Key_Down);
    EXPECT_EQ(board.focusPlace().tier, 1);
    EXPECT_GT(board.rectOf(board.focusPlace()).center().y(), upper);
    key(Qt::Key_Home);
    EXPECT_EQ(board.focusPlace().tier, 0);
    key(Qt::Key_Up);
    EXPECT_EQ(board.focusPlace(), Place::of(two));
    key(Qt::Key_Left);
    EXPECT_EQ(board.focusPlace(), Place::of(one));
    key(Qt::Key_Down);
    key(Qt::Key_End);
    EXPECT_EQ(board.focusPlace().tier, 2);
    for (int i = 0; i < 3; ++i)
        key(Qt::Key_Left);
    EXPECT_EQ(board.focusPlace().sort, Place::Sort::trayLine);
    key(Qt::Key_Right);
    EXPECT_EQ(board.focusPlace().stem, one);
}

TEST(BoardSteps, ArrowsReachEveryPlace) {
    for (const ExampleInfo& info : examples()) {
        Plan plan = example(info.key);
        plan.stems[1].tiers.clear();
        BoardLayout layout;
        layout.arrange(plan, 1);
        BoardTray tray;
        tray.arrange(plan, figures(plan));
        for (const bool gaps : {false, true}) {
            std::vector<Place> reached{firstPlace(layout, tray)};
            for (std::size_t i = 0; i < reached.size(); ++i)
                for (const Qt::Key key : {Qt::Key_Up, Qt::Key_Down, Qt::Key_Left, Qt::Key_Right}) {
                    const Place next = stepFrom(reached[i], key, layout, tray, gaps);
                    ASSERT_TRUE(exists(plan, next));
                    if (std::find(reached.begin(), reached.end(), next) == reached.end())
                        reached.push_back(next);
                }
            const auto expect = [&](const Place& place) {
                EXPECT_NE(std::find(reached.begin(), reached.end(), place), reached.end())
                    << info.key << ": sort " << static_cast<int>(place.sort) << " stem " << place.stem.value
                    << " tier " << place.tier << " slot " << place.slot;
            };
            for (const Stem& stem : plan.stems) {
                for (const SlotRef& at : BoardSelection::stem(plan, stem.id))
                    expect(Place::of(at));
                if (!gaps)
                    expect(Place::of(stem.id));
                for (int g = 0; gaps && g <= static_cast<int>(stem.tiers.size()); ++g)
                    expect(Place::ofGap(stem.id, g));
            }
            for (const TrayLine& line : stemwright::tray(plan))
                expect(Place::of(line.leaf));
        }
    }
}

TEST_F(BoardKeys, PickUpAndPutDownDoWhatADragDoes) {
    dragAndDrop(slot(one, 0, 0), slot(two, 0, 1));
    const Plan dragged = plan();
    session.undo();
    board.setFocusPlace(Place::of(SlotRef{one, 0, 0}));
    QSignalSpy said(&board, &BoardView::statusChanged);
    key(Qt::Key_Space);
    ASSERT_TRUE(board.holding());
    EXPECT_TRUE(said.last().first().toString().contains(QStringLiteral("Space puts it down")));
    for (int i = 0; i < 3; ++i)
        key(Qt::Key_Right);
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{two, 0, 1}));
    EXPECT_TRUE(board.whatIfText().startsWith(QStringLiteral("swap with Stem 2, tier 1, right")))
        << board.whatIfText().toStdString();
    EXPECT_EQ(plan(), first);
    key(Qt::Key_Return);
    EXPECT_FALSE(board.holding());
    EXPECT_EQ(plan(), dragged);
}

TEST_F(BoardKeys, WhileHoldingTheGapsAreReachedToo) {
    board.setFocusPlace(Place::of(SlotRef{one, 0, 0}));
    key(Qt::Key_Space, Qt::ShiftModifier);
    ASSERT_TRUE(board.held() && std::holds_alternative<HeldTiers>(*board.held()));
    key(Qt::Key_Right);
    key(Qt::Key_Right);
    key(Qt::Key_Down);
    EXPECT_EQ(board.focusPlace(), Place::ofGap(two, 1));
    key(Qt::Key_Space);
    EXPECT_EQ(tiers(two), 3u);
    EXPECT_EQ(mix(two, 1, 0), plum);
    // A leaf of the tray, put on the stem without leaves.
    board.setFocusPlace(Place::of(Leaf{small, sea}));
    key(Qt::Key_Space);
    ASSERT_TRUE(board.holding());
    key(Qt::Key_Right);
    for (int i = 0; i < 8 && board.focusPlace().stem != three; ++i)
        key(Qt::Key_Right);
    EXPECT_EQ(board.focusPlace(), Place::ofGap(three, 0));
    key(Qt::Key_Space);
    EXPECT_EQ(tiers(three), 1u);
}

TEST_F(BoardKeys, EscapeLetsGo) {
    board.setFocusPlace(Place::of(SlotRef{one, 0, 0}));
    key(Qt::Key_Space);
    key(Qt::Key_Right);
    key(Qt::Key_Right);
    key(Qt::Key_Escape);
    EXPECT_FALSE(board.holding());
    EXPECT_EQ(plan(), first);
}

TEST_F(BoardKeys, CtrlAndArrowsMoveTheLeaf) {
    board.setFocusPlace(Place::of(SlotRef{one, 0, 0}));
    key(Qt::Key_Down, Qt::ControlModifier);
    EXPECT_EQ(mix(one, 1, 0), plum);
    EXPECT_EQ(mix(one, 0, 0), plumOnSea);
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{one, 1, 0}));
    key(Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(mix(two, 1, 0), plum);
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{two, 1, 0}));
    session.undo();
    session.undo();
    EXPECT_EQ(plan(), first);
}

TEST_F(BoardKeys, KeysActOnTheFocusOrOnTheChoice) {
    board.setFocusPlace(Place::of(SlotRef{one, 0, 0}));
    key(Qt::Key_P);
    EXPECT_TRUE(find(plan(), SlotRef{one, 0, 0})->pinned);
    key(Qt::Key_P);
    EXPECT_FALSE(find(plan(), SlotRef{one, 0, 0})->pinned);
    key(Qt::Key_T);
    EXPECT_EQ(inDegrees(find(plan(), one)->tiers[0].turn), 90);
    key(Qt::Key_T);
    key(Qt::Key_Insert);
    EXPECT_EQ(tiers(one), 4u);
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{one, 0, 0}));
    key(Qt::Key_Delete, Qt::ControlModifier);
    EXPECT_EQ(tiers(one), 3u);
    board.setFocusPlace(Place::of(SlotRef{one, 0, 0}));
    key(Qt::Key_Left, Qt::ShiftModifier); // two turns have brought the first leaf to the right
    EXPECT_EQ(board.selection().size(), 2u);
    key(Qt::Key_Delete);
    EXPECT_FALSE(find(plan(), SlotRef{one, 0, 0})->filled());
    EXPECT_FALSE(find(plan(), SlotRef{one, 0, 1})->filled());
    key(Qt::Key_A, Qt::ControlModifier);
    EXPECT_EQ(board.selection().size(), 6u);
    key(Qt::Key_Escape);
    EXPECT_TRUE(board.selection().empty());
}

TEST_F(BoardKeys, MenusOfferTheSame) {
    const auto names = [&](const Place& place) {
        board.setFocusPlace(place);
        const std::unique_ptr<QMenu> menu(board.commands().menuFor(place));
        QStringList all;
        for (const QAction* action : menu->actions())
            if (!action->objectName().isEmpty())
                all << action->objectName();
        return all;
    };
    EXPECT_TRUE(names(Place::of(SlotRef{one, 0, 0})).contains(QStringLiteral("boardPin")));
    EXPECT_TRUE(names(Place::ofTier(one, 0)).contains(QStringLiteral("boardTurnTier")));
    EXPECT_TRUE(names(Place::of(two)).contains(QStringLiteral("boardStemSettings")));
    EXPECT_TRUE(names(Place::ofGap(two, 0)).contains(QStringLiteral("boardOpenTier")));
    EXPECT_TRUE(names(Place::ofTray()).contains(QStringLiteral("boardAddStem")));
    QSignalSpy wanted(&board, &BoardView::stemSettingsWanted);
    board.setFocusPlace(Place::of(two));
    board.commands().action("boardStemSettings")->trigger();
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.first().first().value<StemId>(), two);
}

TEST_F(BoardKeys, StemSettingsWithoutAStemSayWhatIsMissing) {
    QSignalSpy said(&board, &BoardView::statusChanged), wanted(&board, &BoardView::stemSettingsWanted);
    board.setFocusPlace(Place::of(Leaf{small, sea}));
    key(Qt::Key_F2);
    EXPECT_EQ(wanted.count(), 0);
    ASSERT_FALSE(said.isEmpty());
    EXPECT_TRUE(said.last().first().toString().startsWith(QStringLiteral("Choose a stem")));
    board.setFocusPlace(Place::of(SlotRef{two, 0, 0}));
    key(Qt::Key_F2);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.first().first().value<StemId>(), two);
}

TEST_F(BoardKeys, TiersThatGoAreCounted) {
    board.setFocusPlace(Place::of(one));
    QAction* remove = board.commands().action("boardRemoveTier");
    board.commands().action("boardSelectStem")->trigger();
    EXPECT_EQ(remove->text(), QStringLiteral("Remove the 3 tiers"));
    QSignalSpy said(&board, &BoardView::statusChanged);
    remove->trigger();
    EXPECT_TRUE(find(plan(), one)->tiers.empty());
    EXPECT_EQ(said.last().first().toString(),
              QStringLiteral("3 tiers removed; the leaves are back in the tray"));
}

TEST_F(BoardKeys, StemsAreAddedCopiedMovedLockedAndRemoved) {
    const auto doIt = [&](const char* name) { board.commands().action(name)->trigger(); };
    board.setFocusPlace(Place::of(one));
    doIt("boardAddStem");
    ASSERT_EQ(plan().stems.size(), 4u);
    EXPECT_EQ(plan().stems[1].name, "Stem 4");
    EXPECT_EQ(board.focusPlace(), Place::of(plan().stems[1].id));
    doIt("boardStemRight");
    EXPECT_EQ(plan().stems[2].name, "Stem 4");
    doIt("boardRemoveStem");
    EXPECT_EQ(plan(), first);
    board.setFocusPlace(Place::of(two));
    QSignalSpy said(&board, &BoardView::statusChanged);
    doIt("boardCopyStem");
    ASSERT_EQ(plan().stems.size(), 4u);
    // Four leaves, of which the tray holds what the board has left.
    EXPECT_TRUE(said.last().first().toString().startsWith(QStringLiteral("Copied, with ")))
        << said.last().first().toString().toStdString();
    EXPECT_EQ(plan().stems[2].tiers.size(), 2u);
    board.setFocusPlace(Place::of(two));
    doIt("boardLockStem");
    EXPECT_TRUE(find(plan(), two)->locked);
    doIt("boardRemoveStem");
    EXPECT_TRUE(find(plan(), two)) << "a locked stem stays";
    board.setFocusPlace(Place::of(one));
    doIt("boardAlternate");
    EXPECT_EQ(find(plan(), one)->arrangement, Arrangement::alternate);
    EXPECT_EQ(find(plan(), one)->tiers[0].slots.size(), 1u);
}

} // namespace

} // namespace stemwright::test

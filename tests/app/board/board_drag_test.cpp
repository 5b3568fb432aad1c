#include "app/board/board_fixture.h"

namespace stemwright::test {

namespace {

class BoardDrag : public BoardTest {
protected:
    /// The label's lines as they must be, from the figures before and after the drop.
    static QString promised(const QString& title, const Plan& plan, const Figures& before, const Figures& after,
                            const std::vector<StemId>& stems) {
        const auto arrow = [](const QString& a, const QString& b) {
            return a == b ? a : QStringLiteral("%1 → %2").arg(a, b);
        };
        QString text = title;
        for (std::size_t i = 0; i < plan.stems.size(); ++i) {
            if (std::find(stems.begin(), stems.end(), plan.stems[i].id) == stems.end())
                continue;
            const StemFigures &was = before.stems[i], &is = after.stems[i];
            text +=
                QStringLiteral("\n%1 drift %2 · height %3")
                    .arg(stemwright::text(plan.stems[i].name), arrow(driftText(was.drift), driftText(is.drift)),
                         arrow(sizeText(was.height, plan.units), sizeText(is.height, plan.units)));
        }
        const auto range = [&](const PotFigures& pot) {
            return QStringLiteral("%1 to %2")
                .arg(sizeText(pot.shortest, plan.units), sizeText(pot.tallest, plan.units));
        };
        text += QStringLiteral("\nPot drift %1 · heights %2\nunevenness %3")
                    .arg(arrow(driftText(before.pot.drift), driftText(after.pot.drift)),
                         arrow(range(before.pot), range(after.pot)),
                         arrow(shareText(before.pot.unevenness), shareText(after.pot.unevenness)));
        const auto sum = [](const Figures& all, int StemFigures::*of) {
            int total = 0;
            for (const StemFigures& stem : all.stems)
                total += stem.*of;
            return QString::number(total);
        };
        QStringList order;
        const auto tell = [&](const QString& what, int StemFigures::*of) {
            if (sum(before, of) != sum(after, of))
                order << what.arg(arrow(sum(before, of), sum(after, of)));
        };
        tell(QStringLiteral("unmatched pairs %1"), &StemFigures::unmatchedPairs);
        tell(QStringLiteral("against the order %1"), &StemFigures::inversions);
        return order.isEmpty() ? text : text + QLatin1Char('\n') + order.join(QStringLiteral(" · "));
    }
};

TEST_F(BoardDrag, ALeafOntoALeafSwapsThemAsTheLabelSaid) {
    const Figures before = session.figures();
    drag(slot(one, 0, 0), slot(two, 0, 1));
    ASSERT_TRUE(board.holding());
    EXPECT_EQ(plan(), first) << "nothing changes before the drop";
    const QString said = board.whatIfText();
    release(slot(two, 0, 1));
    EXPECT_EQ(mix(one, 0, 0), sea);
    EXPECT_EQ(mix(two, 0, 1), plum);
    EXPECT_EQ(said, promised(QStringLiteral("swap with Stem 2, tier 1, right"), plan(), before,
                             session.figures(), {one, two}));
    EXPECT_NE(before.stems[0].drift, session.figures().stems[0].drift);
    session.undo();
    EXPECT_EQ(plan(), first);
}

TEST_F(BoardDrag, AGapOpensATierAsTheLabelSaid) {
    const Figures before = session.figures();
    drag(slot(two, 0, 1), gap(one, 1));
    const QString said = board.whatIfText();
    release(gap(one, 1));
    ASSERT_EQ(tiers(one), 4u);
    EXPECT_EQ(mix(one, 1, 1), sea);
    EXPECT_NE(before.stems[0].height, session.figures().stems[0].height);
    EXPECT_EQ(said, promised(QStringLiteral("open a tier at Stem 1, above tier 2"), plan(), before,
                             session.figures(), {one, two}));
}

TEST_F(BoardDrag, AnEmptyStemTakesALeaf) {
    dragAndDrop(slot(one, 2, 0), gap(three, 0));
    ASSERT_EQ(tiers(three), 1u);
    EXPECT_EQ(mix(three, 0, 0), sea);
}

TEST_F(BoardDrag, OntoTheTrayGoesBack) {
    const Figures before = session.figures();
    const QPoint tray(BoardTray::width / 2, board.height() - 20);
    drag(slot(one, 0, 0), tray);
    const QString said = board.whatIfText();
    release(tray);
    EXPECT_FALSE(find(plan(), SlotRef{one, 0, 0})->filled());
    EXPECT_TRUE(said.startsWith(QStringLiteral("back to the tray"))) << said.toStdString();
    EXPECT_EQ(session.figures().pot.inTray, before.pot.inTray + 1);
    EXPECT_TRUE(said.endsWith(promised({}, plan(), before, session.figures(), {})))
        << said.toStdString(); // the pot's line
}

TEST_F(BoardDrag, OutOfTheTrayFills) {
    dragAndDrop(line({small, plum}), slot(one, 1, 0));
    EXPECT_EQ(mix(one, 1, 0), plum);
    dragAndDrop(line({small, sea}), gap(two, 2));
    ASSERT_EQ(tiers(two), 3u);
    EXPECT_EQ(mix(two, 2, 0), sea);
}

TEST_F(BoardDrag, ATierByItsNumberMovesWhole) {
    dragAndDrop(number(one, 0), gap(two, 2));
    EXPECT_EQ(tiers(one), 2u);
    ASSERT_EQ(tiers(two), 3u);
    EXPECT_EQ(mix(two, 2, 0), plum);
    EXPECT_EQ(mix(two, 2, 1), plum);
    EXPECT_TRUE(alternates(*find(plan(), two), find(plan(), two)->tiers));
    EXPECT_TRUE(alternates(*find(plan(), one), find(plan(), one)->tiers));
    session.undo();
    EXPECT_EQ(plan(), first) << "one drop, one undo";
}

TEST_F(BoardDrag, ATierOntoATierExchangesTheirLeaves) {
    dragAndDrop(number(one, 2), slot(two, 1, 0));
    EXPECT_EQ(mix(two, 1, 0), sea);
    EXPECT_EQ(mix(one, 2, 0), plumOnSea);
}

TEST_F(BoardDrag, WithAltALeafTakesItsTierAlong) {
    dragAndDrop(slot(one, 0, 0), gap(two, 2), Qt::AltModifier);
    EXPECT_EQ(tiers(one), 2u);
    EXPECT_EQ(tiers(two), 3u);
}

TEST_F(BoardDrag, ARubberBandChoosesAndTheChoiceMovesTogether) {
    // Over the upper two tiers of stem 1.
    const QRect upper = board.rectOf(Place::of(SlotRef{one, 0, 0}));
    const QRect lower = board.rectOf(Place::of(SlotRef{one, 1, 0})); // the one in front
    const QPoint from(upper.left() - 6, upper.top() - 3), to(upper.left() + 90, lower.bottom() + 2);
    press(from);
    QMouseEvent begin(QEvent::MouseMove, QPointF(from + QPoint(20, 20)),
                      QPointF(board.mapToGlobal(from + QPoint(20, 20))), Qt::NoButton, Qt::LeftButton, {});
    QApplication::sendEvent(&board, &begin);
    move(to);
    release(to);
    EXPECT_EQ(board.selection().size(), 4u);
    EXPECT_EQ(plan(), first);
    const QPoint tray(BoardTray::width / 2, board.height() - 20);
    dragAndDrop(slot(one, 1, 0), tray);
    for (int t = 0; t < 2; ++t)
        for (int s = 0; s < 2; ++s)
            EXPECT_FALSE(find(plan(), SlotRef{one, t, s})->filled());
    EXPECT_TRUE(find(plan(), SlotRef{one, 2, 0})->filled());
}

TEST_F(BoardDrag, CtrlAndShiftChoose) {
    click(slot(one, 0, 0));
    EXPECT_EQ(board.selection().size(), 1u);
    click(slot(two, 1, 1), Qt::ControlModifier);
    EXPECT_EQ(board.selection().size(), 2u);
    click(slot(two, 1, 1), Qt::ControlModifier);
    EXPECT_EQ(board.selection().size(), 1u);
    click(slot(one, 0, 0));
    EXPECT_TRUE(board.holding()) << "a second click picks up";
    key(Qt::Key_Escape);
    click(slot(one, 2, 0));
    click(slot(one, 1, 1), Qt::ShiftModifier);
    EXPECT_EQ(board.selection().size(), 4u);
}

TEST_F(BoardDrag, ClickToPickUpAndClickToPutDownDoesWhatADragDoes) {
    dragAndDrop(slot(one, 0, 0), slot(two, 0, 1));
    const Plan dragged = plan();
    session.undo();
    click(slot(one, 0, 0));
    EXPECT_FALSE(board.holding());
    click(slot(one, 0, 0));
    ASSERT_TRUE(board.holding());
    move(slot(two, 0, 1));
    EXPECT_TRUE(board.whatIfText().startsWith(QStringLiteral("swap with Stem 2, tier 1, right")));
    EXPECT_EQ(plan(), first);
    click(slot(two, 0, 1));
    EXPECT_FALSE(board.holding());
    EXPECT_EQ(plan(), dragged);
}

class BoardDragEnds : public BoardTest {
protected:
    void hold() {
        drag(slot(one, 0, 0), slot(two, 0, 1));
        ASSERT_TRUE(board.holding());
        ASSERT_FALSE(board.whatIfText().isEmpty());
    }
    void expectHarmless() {
        EXPECT_FALSE(board.holding());
        EXPECT_TRUE(board.whatIfText().isEmpty());
        release(slot(two, 0, 1));
        EXPECT_EQ(plan(), first);
        EXPECT_FALSE(session.canUndo());
        EXPECT_FALSE(session.canRedo());
    }
};

TEST_F(BoardDragEnds, ByEscape) {
    hold();
    key(Qt::Key_Escape);
    expectHarmless();
}

TEST_F(BoardDragEnds, ByUndoWhichUndoesNothing) {
    ASSERT_TRUE(session.make(TurnTier{one, 2, degrees(10)}));
    const Plan turned = plan();
    hold();
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(board.holding());
    release(slot(two, 0, 1));
    EXPECT_EQ(plan(), turned);
}

TEST_F(BoardDragEnds, ByLosingTheFocus) {
    hold();
    QLineEdit other;
    other.show();
    QApplication::setActiveWindow(&other);
    other.setFocus();
    QTRY_VERIFY(!board.hasFocus());
    expectHarmless();
}

TEST_F(BoardDragEnds, ByTheRightButton) {
    hold();
    QTest::mousePress(&board, Qt::RightButton, {}, slot(two, 0, 1));
    QTest::mouseRelease(&board, Qt::RightButton, {}, slot(two, 0, 1));
    expectHarmless();
}

TEST_F(BoardDragEnds, ByAnEditFromElsewhere) {
    hold();
    ASSERT_TRUE(session.make(TurnTier{one, 2, degrees(10)}));
    EXPECT_FALSE(board.holding());
    const Plan turned = plan();
    release(slot(two, 0, 1));
    EXPECT_EQ(plan(), turned);
}

TEST_F(BoardDragEnds, OverNothing) {
    drag(slot(one, 0, 0), QPoint(board.width() - 30, board.height() / 2));
    EXPECT_TRUE(board.whatIfText().isEmpty());
    release(QPoint(board.width() - 30, board.height() / 2));
    EXPECT_FALSE(board.holding());
    EXPECT_EQ(plan(), first);
}

TEST_F(BoardDragEnds, WhatIsForbiddenSaysWhyAndChangesNothing) {
    ASSERT_TRUE(session.make(PinSlot{{two, 0, 1}, true}));
    const Plan pinned = plan();
    drag(slot(one, 0, 0), slot(two, 0, 1));
    EXPECT_TRUE(board.whatIfText().contains(QStringLiteral("pinned"))) << board.whatIfText().toStdString();
    release(slot(two, 0, 1));
    EXPECT_FALSE(board.holding());
    EXPECT_EQ(plan(), pinned);
    // And it cannot be taken either.
    drag(slot(two, 0, 1), slot(one, 0, 0));
    EXPECT_FALSE(board.holding());
    EXPECT_TRUE(board.whatIfText().contains(QStringLiteral("pinned"))) << board.whatIfText().toStdString();
    release(slot(one, 0, 0));
    EXPECT_TRUE(board.whatIfText().isEmpty());
    EXPECT_EQ(plan(), pinned);
}

class BoardEdges : public BoardTest {
protected:
    BoardEdges() : BoardTest(randomBoard(3, 30, 40, 6), {900, 600}) {}
    int across() const { return board.findChild<QScrollBar*>(QStringLiteral("boardAcross"))->value(); }
    int down() const { return board.findChild<QScrollBar*>(QStringLiteral("boardDown"))->value(); }
    SlotRef free() const {
        for (int t = 0;; ++t)
            for (int s = 0; s < 2; ++s)
                if (const Slot* at = find(plan(), SlotRef{one, t, s}); at->filled() && !at->pinned)
                    return {one, t, s};
    }
};

TEST_F(BoardEdges, TheBoardScrollsWhereSomethingIsHeldAndStopsInTheMiddle) {
    const QPoint edge(board.width() - 20, 300);
    drag(middle(Place::of(free())), edge);
    QTRY_VERIFY(across() > 200);
    move(QPoint(board.width() / 2, 300));
    const int there = across();
    QTest::qWait(80);
    EXPECT_EQ(across(), there);
    move(QPoint(board.width() / 2, board.height() - cardHeight - 40));
    QTRY_VERIFY(down() > 100);
    key(Qt::Key_Escape);
    release(edge);
    EXPECT_EQ(plan(), first);
}

TEST_F(BoardEdges, WheelMiddleButtonAndZoomMoveTheView) {
    QWheelEvent wheel(QPointF(500, 300), QPointF(board.mapToGlobal(QPoint(500, 300))), {}, {0, -240},
                      Qt::NoButton, {}, Qt::NoScrollPhase, false);
    QApplication::sendEvent(&board, &wheel);
    EXPECT_GT(down(), 50);
    QTest::mousePress(&board, Qt::MiddleButton, {}, {600, 300});
    move({400, 300});
    QTest::mouseRelease(&board, Qt::MiddleButton, {}, {400, 300});
    EXPECT_EQ(across(), 200);
    // What is under the pointer stays there when the board grows.
    const Place under = board.placeAt({500, 300});
    QWheelEvent grow(QPointF(500, 300), QPointF(board.mapToGlobal(QPoint(500, 300))), {}, {0, 120},
                     Qt::NoButton, Qt::ControlModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(&board, &grow);
    EXPECT_GT(board.zoom(), 1);
    EXPECT_EQ(board.placeAt({500, 300}).stem, under.stem);
    key(Qt::Key_0, Qt::ControlModifier);
    EXPECT_EQ(board.zoom(), 1);
    board.zoomFit();
    EXPECT_FALSE(board.findChild<QScrollBar*>(QStringLiteral("boardAcross"))->isVisible());
    EXPECT_FALSE(board.findChild<QScrollBar*>(QStringLiteral("boardDown"))->isVisible());
}

} // namespace

} // namespace stemwright::test

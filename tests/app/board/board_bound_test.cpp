#include "app/board/board_fixture.h"

#include "app/ask.h"

#include <QMessageBox>
#include <QTimer>

namespace stemwright::test {

namespace {

/// The first two tiers of stem 1 are bound. The question is answered in its real window, by a real key.
class BoardBound : public BoardTest {
protected:
    BoardBound() : BoardTest(bound()) { ask::setStand(std::nullopt); }

    static Plan bound() {
        Plan plan = smallBoard();
        for (int t = 0; t < 2; ++t)
            plan.stems[0].tiers[static_cast<std::size_t>(t)].progress.bound = true;
        return plan;
    }

    /// Answers the next question; by then `asked` holds what it said and how the plan was.
    void whenAsked(const char* choice) {
        asked.clear();
        QTimer::singleShot(0, &board, [this, choice = QLatin1String(choice)] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            ASSERT_TRUE(box) << "the drop did not ask";
            asked = box->text();
            EXPECT_EQ(plan(), first) << "nothing changes before the answer";
            for (QAbstractButton* button : box->buttons())
                if (button->text().remove(QLatin1Char('&')).contains(choice)) {
                    // Enter, pressed without a look, is no.
                    EXPECT_EQ(static_cast<QPushButton*>(button)->isDefault(),
                              choice == QLatin1String("Leave it"));
                    button->setFocus();
                    return QTest::keyClick(button, Qt::Key_Space);
                }
            ADD_FAILURE() << "no such answer";
            box->reject();
        });
    }
    bool isBound(StemId stem, std::size_t tier) const { return find(plan(), stem)->tiers[tier].progress.bound; }
    void expectWarned(const QString& places) {
        EXPECT_TRUE(
            board.whatIfText().contains(QStringLiteral("Bound already: %1. You are asked first.").arg(places)))
            << board.whatIfText().toStdString();
    }

    QString asked;
};

TEST_F(BoardBound, ATierThatIsBoundWarnsWhileHeldAsksAndStaysOnNo) {
    drag(number(one, 0), gap(two, 2));
    ASSERT_TRUE(board.holding());
    expectWarned(QStringLiteral("Stem 1, tier 1; Stem 1, tier 2"));
    const QImage before = board.grab().toImage();
    key(Qt::Key_Escape);
    const QImage idle = board.grab().toImage();
    EXPECT_NE(before, idle);
    drag(number(one, 0), gap(two, 2));
    whenAsked("Leave it");
    release(gap(two, 2));
    EXPECT_TRUE(asked.contains(QStringLiteral("Stem 1, tier 1"))) << asked.toStdString();
    EXPECT_EQ(plan(), first);
    EXPECT_FALSE(session.canUndo());
    EXPECT_FALSE(board.holding());
    EXPECT_TRUE(board.whatIfText().isEmpty());
    board.setFocus();
    EXPECT_EQ(board.grab().toImage(), idle) << "the leaves lie where they were";
}

TEST_F(BoardBound, OnYesItIsDoneAndOneUndoTakesItBack) {
    drag(number(one, 0), gap(two, 2));
    whenAsked("bind again");
    release(gap(two, 2));
    EXPECT_EQ(tiers(one), 2u);
    ASSERT_EQ(tiers(two), 3u);
    EXPECT_FALSE(isBound(one, 0));
    EXPECT_FALSE(isBound(two, 2));
    session.undo();
    EXPECT_EQ(plan(), first);
    EXPECT_FALSE(session.canUndo());
    drag(number(one, 0), gap(two, 2));
    whenAsked("change the plan alone");
    release(gap(two, 2));
    EXPECT_EQ(tiers(one), 2u);
    EXPECT_TRUE(isBound(one, 0));
    session.undo();
    EXPECT_EQ(plan(), first);
}

TEST_F(BoardBound, ALeafAndARunOfTiersAskToo) {
    drag(slot(one, 0, 0), slot(two, 0, 1));
    expectWarned(QStringLiteral("Stem 1, tier 1"));
    whenAsked("Leave it");
    release(slot(two, 0, 1));
    EXPECT_FALSE(asked.isEmpty());
    EXPECT_EQ(plan(), first);
    // Out of the tray onto a bound place.
    drag(line({small, sea}), slot(one, 1, 0));
    expectWarned(QStringLiteral("Stem 1, tier 2"));
    whenAsked("Leave it");
    release(slot(one, 1, 0));
    EXPECT_EQ(plan(), first);
    // Tiers 1 to 3, chosen as a run.
    click(number(one, 0));
    click(number(one, 2), Qt::ShiftModifier);
    drag(number(one, 2), gap(two, 2));
    expectWarned(QStringLiteral("Stem 1, tier 1; Stem 1, tier 2"));
    whenAsked("bind again");
    release(gap(two, 2));
    EXPECT_EQ(tiers(one), 0u);
    EXPECT_EQ(tiers(two), 5u);
    session.undo();
    EXPECT_EQ(plan(), first);
}

TEST_F(BoardBound, ATierPushedDownByAnotherWarnsAndWhatIsNotBoundDoesNot) {
    drag(number(two, 0), gap(one, 1));
    expectWarned(QStringLiteral("Stem 1, tier 2"));
    key(Qt::Key_Escape);
    release(gap(one, 1));
    drag(slot(two, 0, 0), slot(one, 2, 0));
    EXPECT_FALSE(board.whatIfText().isEmpty());
    EXPECT_FALSE(board.whatIfText().contains(QStringLiteral("Bound already")));
    release(slot(one, 2, 0));
    EXPECT_NE(plan(), first) << "unasked";
}

TEST_F(BoardBound, ByClicksAndByKeysItIsTheSame) {
    click(number(one, 0));
    click(number(one, 0));
    ASSERT_TRUE(board.holding());
    move(gap(two, 2));
    expectWarned(QStringLiteral("Stem 1, tier 1; Stem 1, tier 2"));
    whenAsked("Leave it");
    click(gap(two, 2));
    EXPECT_FALSE(asked.isEmpty());
    EXPECT_EQ(plan(), first);
    board.setFocus();
    key(Qt::Key_Escape);
    board.setFocusPlace(Place::of(SlotRef{one, 0, 1}));
    key(Qt::Key_Space, Qt::ShiftModifier);
    ASSERT_TRUE(board.holding());
    key(Qt::Key_Right);
    key(Qt::Key_Down);
    ASSERT_EQ(board.focusPlace(), Place::ofGap(two, 1));
    expectWarned(QStringLiteral("Stem 1, tier 1; Stem 1, tier 2"));
    whenAsked("Leave it");
    key(Qt::Key_Space);
    EXPECT_FALSE(asked.isEmpty());
    EXPECT_EQ(plan(), first);
    board.setFocus();
    // A leaf moved at once by Ctrl and an arrow has no label, and asks as well.
    board.setFocusPlace(Place::of(SlotRef{one, 0, 1}));
    whenAsked("bind again");
    key(Qt::Key_Right, Qt::ControlModifier);
    EXPECT_FALSE(asked.isEmpty());
    EXPECT_NE(plan(), first);
    session.undo();
    EXPECT_EQ(plan(), first);
}

} // namespace

} // namespace stemwright::test

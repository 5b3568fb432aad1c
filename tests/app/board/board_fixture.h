#pragma once

#include "app/board/board_view.h"

#include "app/board/board_commands.h"
#include "app/wording.h"
#include "support/boards.h"

#include <QtTest>
#include <QtWidgets>
#include <gtest/gtest.h>

namespace stemwright::test {

/// A board in a real window, driven by real mouse and key events. Three stems of pairs (support/boards.h).
class BoardTest : public testing::Test {
protected:
    static constexpr StemId one{1}, two{2}, three{3};
    static constexpr MixId plum{1}, plumOnSea{2}, sea{3};
    static constexpr KindId small{1};

    explicit BoardTest(Plan plan = smallBoard(), QSize size = {1000, 724})
        : session(std::move(plan)), first(session.plan()) {
        board.resize(size);
        board.show();
        QApplication::setActiveWindow(&board);
        EXPECT_TRUE(QTest::qWaitForWindowActive(&board));
        board.setFocus();
    }

    QPoint middle(const Place& place) const { return board.rectOf(place).center(); }
    QPoint slot(StemId stem, int tier, int at) const { return middle(Place::of(SlotRef{stem, tier, at})); }
    QPoint gap(StemId stem, int index) const { return middle(Place::ofGap(stem, index)); }
    /// On a tier's number.
    QPoint number(StemId stem, int tier) const {
        const QRect band = board.rectOf(Place::ofTier(stem, tier));
        return QPoint(band.left() + 8, band.center().y());
    }
    QPoint line(Leaf leaf) const { return middle(Place::of(leaf)); }

    void press(QPoint at, Qt::KeyboardModifiers modifiers = {}) {
        QTest::mousePress(&board, Qt::LeftButton, modifiers, at);
    }
    void move(QPoint to) { QTest::mouseMove(&board, to); }
    void release(QPoint at, Qt::KeyboardModifiers modifiers = {}) {
        QTest::mouseRelease(&board, Qt::LeftButton, modifiers, at);
    }
    void click(QPoint at, Qt::KeyboardModifiers modifiers = {}) {
        press(at, modifiers);
        release(at, modifiers);
    }
    /// Everything of a drag but the drop.
    void drag(QPoint from, QPoint to, Qt::KeyboardModifiers modifiers = {}) {
        press(from, modifiers);
        const QPoint threshold(QApplication::startDragDistance() + 1, 0);
        QMouseEvent begin(QEvent::MouseMove, QPointF(from + threshold),
                          QPointF(board.mapToGlobal(from + threshold)), Qt::NoButton, Qt::LeftButton,
                          modifiers);
        QApplication::sendEvent(&board, &begin);
        move((from + to) / 2);
        move(to);
    }
    void dragAndDrop(QPoint from, QPoint to, Qt::KeyboardModifiers modifiers = {}) {
        drag(from, to, modifiers);
        release(to);
    }
    void key(int key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(&board, static_cast<Qt::Key>(key), modifiers);
    }

    const Plan& plan() const { return session.plan(); }
    MixId mix(StemId stem, int tier, int at) const { return find(plan(), SlotRef{stem, tier, at})->leaf.mix; }
    std::size_t tiers(StemId stem) const { return find(plan(), stem)->tiers.size(); }

    Session session;
    const Plan first;
    BoardView board{session};
};

} // namespace stemwright::test

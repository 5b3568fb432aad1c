#include "app/board/board_fixture.h"

#include "app/board/board_cards.h"

#include "core/document/examples.h"

#include <QAccessible>

namespace stemwright::test {

namespace {

class BoardShown : public BoardTest {};

TEST(BoardLayoutTest, EverySlotIsLargeEnoughToHitAndIsHitInItsMiddle) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        BoardLayout layout;
        layout.arrange(plan, 1);
        ASSERT_EQ(layout.stems().size(), plan.stems.size());
        for (const Stem& stem : plan.stems)
            for (int t = 0; t < static_cast<int>(stem.tiers.size()); ++t) {
                const std::size_t slots = stem.tiers[static_cast<std::size_t>(t)].slots.size();
                for (int s = 0; s < static_cast<int>(slots); ++s) {
                    const Place place = Place::of(SlotRef{stem.id, t, s});
                    const QRectF zone = layout.rect(place);
                    EXPECT_GE(zone.width(), 24 - 1e-9) << info.key;
                    EXPECT_GE(zone.height(), 24 - 1e-9) << info.key;
                    if (slots <= 3) {
                        EXPECT_EQ(layout.at(zone.center()), place)
                            << info.key << " tier " << t << " slot " << s;
                    }
                }
                const QRectF band = layout.rect(Place::ofTier(stem.id, t));
                EXPECT_EQ(layout.at(QPointF(band.left() + 6, band.center().y())), Place::ofTier(stem.id, t));
                EXPECT_EQ(layout.at(layout.rect(Place::ofGap(stem.id, t)).center()), Place::ofGap(stem.id, t));
            }
    }
}

TEST(BoardLayoutTest, BesideTheLeavesAGapIsAsHighAsAHandNeeds) {
    const Plan plan = smallBoard();
    BoardLayout layout;
    layout.arrange(plan, 1);
    const StemSpot& stem = layout.stems().front();
    for (int t = 1; t < static_cast<int>(stem.tiers.size()); ++t) {
        const QRectF gap = layout.rect(Place::ofGap(stem.id, t));
        // The column's right edge, where no leaf lies.
        int high = 0;
        for (double y = gap.top() - 30; y < gap.bottom() + 30; ++y)
            high += layout.at(QPointF(stem.column.right() - 0.5, y)) == Place::ofGap(stem.id, t);
        EXPECT_GE(high, 24) << t;
    }
}

TEST(BoardLayoutTest, StemsThickenTowardsTheFootAndTiersNeverOverlap) {
    const Plan plan = example(examples().front().key);
    BoardLayout layout;
    layout.arrange(plan, 1);
    for (const StemSpot& stem : layout.stems())
        for (std::size_t t = 1; t < stem.tiers.size(); ++t) {
            EXPECT_GE(stem.tiers[t].thickness, stem.tiers[t - 1].thickness);
            EXPECT_GT(stem.tiers[t].band.top(), stem.tiers[t - 1].band.bottom());
        }
}

TEST_F(BoardShown, NamesAndCardsStayInSight) {
    // The smallest window that is promised leaves the board this much beside the panels.
    for (const QSize size : {QSize(980, 690), QSize(1620, 970)}) {
        board.resize(size);
        QApplication::processEvents();
        const QImage picture = board.grab().toImage();
        EXPECT_EQ(picture.size(), size * board.devicePixelRatioF());
        for (const Stem& stem : plan().stems) {
            const QRect head = board.rectOf(Place::of(stem.id));
            EXPECT_TRUE(board.rect().contains(head));
            EXPECT_EQ(board.placeAt(QPoint(head.center().x(), size.height() - 60)), Place::of(stem.id));
        }
    }
}

TEST_F(BoardShown, APlaceIsScrolledToAndRinged) {
    session.open(randomBoard(5, 40, 40, 6), {});
    const StemId last = plan().stems.back().id;
    board.showPlace(last, 19, 1);
    const QRect place = board.rectOf(Place::of(SlotRef{last, 19, 1}));
    EXPECT_TRUE(board.rect().contains(place));
    EXPECT_EQ(board.focusPlace(), Place::of(SlotRef{last, 19, 1}));
    EXPECT_EQ(board.placeAt(place.center()), board.focusPlace());
    const auto corner = [&] { return board.grab(place.adjusted(-5, -5, 5, 5)).toImage(); };
    const QImage ringed = corner();
    QTest::qWait(1800);
    EXPECT_NE(ringed, corner()) << "the ring goes again";
    board.showPlace(StemId{4711}, 0, 0);
    EXPECT_EQ(board.focusPlace().stem, last);
}

TEST_F(BoardShown, AnotherPlanStartsAtItsBeginning) {
    board.select({{one, 0, 0}});
    session.open(randomBoard(6, 4, 6, 3), {});
    EXPECT_TRUE(board.selection().empty());
    EXPECT_TRUE(exists(plan(), board.focusPlace()));
    session.open(Plan{}, {});
    board.grab();
    EXPECT_EQ(board.placeAt({500, 300}).sort, Place::Sort::paper);
}

TEST_F(BoardShown, TheFocusStaysWhereSomethingIs) {
    board.setFocusPlace(Place::of(SlotRef{one, 2, 1}));
    ASSERT_TRUE(session.make(CloseTier{one, 2}));
    EXPECT_EQ(board.focusPlace().stem, one);
    EXPECT_TRUE(exists(plan(), board.focusPlace()));
}

TEST_F(BoardShown, AnOfferShowsJustWhatItWouldChange) {
    const QImage before = board.grab().toImage();
    const Edit edit =
        Batch{Deed::suggestion, {SwapSlots{{one, 0, 0}, {two, 0, 1}}, TurnTier{one, 2, degrees(90)}}};
    session.showOffer({edit, QStringLiteral("Swap"), {}});
    EXPECT_NE(board.grab().toImage(), before);
    EXPECT_EQ(plan(), first);
    BoardOffer offer;
    offer.show(plan(), edit);
    ASSERT_EQ(offer.changedSlots().size(), 2u);
    EXPECT_EQ(offer.changedSlots()[0].at, (SlotRef{one, 0, 0}));
    EXPECT_EQ(offer.changedSlots()[0].leaf.mix, sea);
    EXPECT_EQ(offer.changedSlots()[1].leaf.mix, plum);
    EXPECT_EQ(offer.trips(), (std::vector<BoardOffer::Trip>{{{one, 0, 0}, {two, 0, 1}, true}}));
    // Three leaves in a ring go each to the next, whatever swaps make it so.
    offer.show(plan(), Batch{Deed::suggestion,
                             {SwapSlots{{one, 0, 0}, {one, 1, 0}}, SwapSlots{{one, 1, 0}, {two, 0, 1}},
                              FillSlot{{one, 2, 0}, {}}}});
    const auto goes = [&](SlotRef from, SlotRef to) {
        return std::count(offer.trips().begin(), offer.trips().end(), BoardOffer::Trip{from, to, false}) == 1;
    };
    EXPECT_TRUE(goes({one, 1, 0}, {one, 0, 0}));
    EXPECT_TRUE(goes({two, 0, 1}, {one, 1, 0}));
    EXPECT_TRUE(goes({one, 0, 0}, {two, 0, 1}));
    offer.show(plan(), edit);
    ASSERT_EQ(offer.changedTiers().size(), 1u);
    EXPECT_EQ(offer.changedTiers()[0].tier, 2);
    session.dropOffer();
    EXPECT_EQ(board.grab().toImage(), before);
    // A held thing lets go of the offer.
    session.showOffer({edit, {}, {}});
    drag(slot(one, 0, 0), slot(two, 0, 0));
    EXPECT_FALSE(session.offer());
    key(Qt::Key_Escape);
}

TEST_F(BoardShown, CodesCanBeShown) {
    const QImage before = board.grab().toImage();
    board.setCodesShown(true);
    EXPECT_NE(board.grab().toImage(), before);
    board.setCodesShown(false);
    EXPECT_EQ(board.grab().toImage(), before);
}

TEST_F(BoardShown, ScreenReadersHearPlacesAndAct) {
    QAccessible::setActive(true);
    QAccessibleInterface* root = QAccessible::queryAccessibleInterface(&board);
    ASSERT_TRUE(root);
    EXPECT_EQ(root->text(QAccessible::Name), QStringLiteral("Board"));
    ASSERT_EQ(root->childCount(), 4);
    QAccessibleInterface* stem = root->child(1);
    EXPECT_EQ(stem->text(QAccessible::Name), QStringLiteral("Stem 1"));
    EXPECT_TRUE(stem->text(QAccessible::Description).contains(QStringLiteral("drift")));
    ASSERT_EQ(stem->childCount(), 6);
    QAccessibleInterface* leaf = stem->child(0);
    EXPECT_EQ(leaf->text(QAccessible::Name), QStringLiteral("Stem 1, tier 1, left: Small leaf, Plum (P)"));
    EXPECT_EQ(leaf->role(), QAccessible::ListItem);
    EXPECT_EQ(leaf->parent(), stem);
    EXPECT_EQ(stem->indexOfChild(leaf), 0);
    EXPECT_EQ(root->indexOfChild(stem), 1);
    EXPECT_TRUE(leaf->rect().contains(board.mapToGlobal(slot(one, 0, 0))));
    const QPoint at = board.mapToGlobal(slot(one, 0, 0));
    EXPECT_EQ(stem->childAt(at.x(), at.y()), leaf);
    EXPECT_EQ(root->child(0)->childCount(), 6);
    // Pick up and put down by a screen reader's actions.
    QAccessibleActionInterface* act = leaf->actionInterface();
    ASSERT_TRUE(act && act->actionNames().contains(QAccessibleActionInterface::pressAction()));
    act->doAction(QAccessibleActionInterface::pressAction());
    ASSERT_TRUE(board.holding());
    EXPECT_TRUE(leaf->state().focused);
    root->child(2)->child(1)->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(mix(two, 0, 1), plum);
    EXPECT_EQ(mix(one, 0, 0), sea);
    // The old children are gone; fresh ones say what is there now.
    EXPECT_EQ(root->child(1)->child(0)->text(QAccessible::Name),
              QStringLiteral("Stem 1, tier 1, left: Small leaf, Sea (S)"));
    QAccessible::setActive(false);
}

TEST(BoardCards, LengthsThatStandSideBySideReadAlike) {
    StemCard small, large;
    small.lengths = {{WrapWith::floss, QStringLiteral("thread 7 ft"), QStringLiteral("7 ft")}};
    large.lengths = {{WrapWith::floss, QStringLiteral("thread 10 ft 11 in"), QStringLiteral("10 ft 11 in")}};
    EXPECT_TRUE(lengthsFit({small, small}, 96));
    EXPECT_FALSE(lengthsFit({small, large}, 96)) << "one that has no room takes the words from all";
    const auto painted = [](const StemCard& card, bool words) {
        QImage image(96, cardHeight, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::white);
        QPainter painter(&image);
        paintCard(painter, image.rect(), card, words);
        return image;
    };
    EXPECT_NE(painted(small, true), painted(small, false));
    EXPECT_EQ(painted(large, true), painted(large, false));
}

} // namespace

} // namespace stemwright::test

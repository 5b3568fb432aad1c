#include "app/pot/from_above.h"
#include "app/pot/plant_view.h"
#include "app/pot/pot_commands.h"
#include "app/pot/pot_place.h"
#include "app/pot/sight_panel.h"

#include "app/ask.h"
#include "app/command_parts.h"
#include "app/file_store.h"
#include "app/main_window.h"
#include "app/session.h"
#include "app/suggestions.h"
#include "core/document/examples.h"
#include "core/suggest/pot_placing.h"
#include "tests/support/boards.h"

#include <QComboBox>
#include <QListWidget>
#include <QPushButton>
#include <QSignalSpy>
#include <QSlider>
#include <QStackedWidget>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

namespace stemwright {
namespace {

class PotPlaceTest : public ::testing::Test {
protected:
    PotPlaceTest() : session(test::smallBoard()), suggestions(session), place(session, suggestions) {
        place.resize(1100, 760);
        place.show();
        above = place.findChild<FromAbove*>();
        view = place.findChild<PlantView*>();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&place));
    }
    QPoint at(std::size_t stem) const { return above->onWidget(above->places()[stem]).toPoint(); }
    std::optional<Standing> standing(std::size_t stem) const { return session.plan().stems[stem].standing; }
    bool rest() {
        return QTest::qWaitFor([this] { return view->atRest(); }, 20'000);
    }

    Session session;
    Suggestions suggestions;
    PotPlace place;
    FromAbove* above = nullptr;
    PlantView* view = nullptr;
};

TEST_F(PotPlaceTest, DraggingAStemMovesItOnlyWhenItIsDropped) {
    const Plan before = session.plan();
    const QPoint from = at(0), to = from + QPoint(24, -18);
    QTest::mousePress(above, Qt::LeftButton, {}, from);
    QTest::mouseMove(above, from + QPoint(12, -9));
    QTest::mouseMove(above, to);
    EXPECT_TRUE(above->held());
    EXPECT_EQ(session.plan(), before) << "nothing changes before the drop";
    EXPECT_FALSE(above->hint().isEmpty());
    EXPECT_TRUE(above->hint().first().contains(QStringLiteral("Stem 1")));
    QTest::mouseRelease(above, Qt::LeftButton, {}, to);
    ASSERT_TRUE(standing(0));
    const PlaceMm wanted = above->onClay(to);
    EXPECT_NEAR(inMillimetres(standing(0)->x), wanted.x, 0.3);
    EXPECT_NEAR(inMillimetres(standing(0)->y), wanted.y, 0.3);
    EXPECT_FALSE(standing(1)) << "the others keep their computed places";
    session.undo();
    EXPECT_EQ(session.plan(), before) << "one edit, one undo";
}

TEST_F(PotPlaceTest, SingleClicksPickUpAndPutDown) {
    const QPoint from = at(1), to = from + QPoint(-20, 16);
    QTest::mouseClick(above, Qt::LeftButton, {}, from);
    EXPECT_EQ(above->chosen(), StemId{2});
    EXPECT_FALSE(above->held()) << "the first click only chooses";
    QTest::mouseClick(above, Qt::LeftButton, {}, from);
    EXPECT_TRUE(above->held());
    QTest::mouseMove(above, to);
    EXPECT_FALSE(standing(1));
    QTest::mouseClick(above, Qt::LeftButton, {}, to);
    EXPECT_FALSE(above->held());
    ASSERT_TRUE(standing(1));
    EXPECT_NEAR(inMillimetres(standing(1)->x), above->onClay(to).x, 0.3);
    session.undo();
    EXPECT_FALSE(standing(1));
}

TEST_F(PotPlaceTest, AHeldStemIsWarnedOfStakesAndOfTheEdge) {
    above->setFocus();
    const QPoint other = at(1);
    QTest::mousePress(above, Qt::LeftButton, {}, at(0));
    QTest::mouseMove(above, other + QPoint(12, 0));
    QTest::mouseMove(above, other);
    EXPECT_TRUE(above->hint().join(QLatin1Char('\n')).contains(QStringLiteral("collide")));
    QTest::mouseMove(above, QPoint(above->width() - 3, above->height() / 2));
    EXPECT_TRUE(above->hint().join(QLatin1Char('\n')).contains(QStringLiteral("Outside the clay")));
    QTest::keyClick(above, Qt::Key_Escape);
}

TEST_F(PotPlaceTest, EscapePutsAHeldStemBack) {
    const Plan before = session.plan();
    const auto places = above->places();
    above->setFocus();
    QTest::mousePress(above, Qt::LeftButton, {}, at(1));
    QTest::mouseMove(above, at(1) + QPoint(30, 10));
    QTest::mouseMove(above, at(1) + QPoint(31, 10));
    ASSERT_TRUE(above->held());
    EXPECT_NE(above->places(), places);
    QTest::keyClick(above, Qt::Key_Escape);
    EXPECT_FALSE(above->held());
    EXPECT_EQ(above->places(), places);
    QTest::mouseRelease(above, Qt::LeftButton, {}, at(1));
    EXPECT_EQ(session.plan(), before);
}

TEST_F(PotPlaceTest, TheKeyboardDoesAllThatTheMouseDoes) {
    above->setFocus(Qt::TabFocusReason);
    above->choose(StemId{2});
    const PlaceMm from = above->places()[1];
    QTest::keyClick(above, Qt::Key_Space);
    EXPECT_TRUE(above->held());
    QTest::keyClick(above, Qt::Key_Right);
    QTest::keyClick(above, Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_FALSE(standing(1));
    QTest::keyClick(above, Qt::Key_Return);
    ASSERT_TRUE(standing(1));
    EXPECT_NEAR(inMillimetres(standing(1)->x), from.x + 1, 0.06);
    EXPECT_NEAR(inMillimetres(standing(1)->y), from.y + 5, 0.06);
    // Arrows alone choose the stem beside.
    above->choose(StemId{1});
    QTest::keyClick(above, Qt::Key_Up);
    EXPECT_NE(above->chosen(), StemId{1});
    EXPECT_TRUE(above->accessibleDescription().contains(QStringLiteral("Stem")));
}

TEST_F(PotPlaceTest, SliderKeysAndDraggingTurnThePlant) {
    auto* turn = place.findChild<QSlider*>(QStringLiteral("potTurn"));
    auto* tilt = place.findChild<QSlider*>(QStringLiteral("potTilt"));
    turn->setValue(40);
    EXPECT_EQ(view->turn(), 40);
    QTest::keyClick(view, Qt::Key_Right);
    EXPECT_EQ(view->turn(), 45);
    EXPECT_EQ(turn->value(), 45);
    const int before = view->tilt();
    QTest::keyClick(view, Qt::Key_Down);
    EXPECT_EQ(view->tilt(), before + 5);
    EXPECT_EQ(tilt->value(), view->tilt());
    const QPoint middle = view->rect().center();
    QTest::mousePress(view, Qt::LeftButton, {}, middle);
    QTest::mouseMove(view, middle + QPoint(50, 0));
    QTest::mouseMove(view, middle + QPoint(100, 0));
    QTest::mouseRelease(view, Qt::LeftButton, {}, middle + QPoint(100, 0));
    EXPECT_NEAR(view->turn(), 85, 3);
    QTest::keyClick(view, Qt::Key_Home);
    EXPECT_EQ(view->turn(), 0);
}

TEST_F(PotPlaceTest, ComesToRestInFullAndSaysWhatIsInSight) {
    ASSERT_TRUE(rest());
    auto* sight = place.findChild<SightPanel*>();
    double shares = 0;
    for (const double share : sight->sight().shares)
        shares += share;
    EXPECT_NEAR(shares, 1, 1e-9);
    EXPECT_TRUE(sight->accessibleDescription().contains(QStringLiteral("in sight")));
    view->setTurn(120);
    EXPECT_FALSE(view->atRest());
    EXPECT_TRUE(rest());
}

TEST_F(PotPlaceTest, AClickOnALeafChoosesItsPlace) {
    QSignalSpy chosen(&place, &PotPlace::placeChosen);
    const LeafBody& leaf = view->scene().body.leaves[0];
    const QPoint at = view->framing().onPicture(view->view().point(leaf.at3(0, -leaf.length * 0.7))).toPoint();
    QTest::mouseClick(view, Qt::LeftButton, {}, at);
    ASSERT_EQ(chosen.count(), 1);
    const auto arguments = chosen.takeFirst();
    const auto found = leafAt(view->scene(), view->view(), view->framing(), at);
    ASSERT_TRUE(found);
    const SlotRef expected = view->scene().body.leaves[*found].at;
    EXPECT_EQ(arguments[0].toUInt(), expected.stem.value);
    EXPECT_EQ(arguments[1].toInt(), expected.tier);
    EXPECT_EQ(arguments[2].toInt(), expected.slot);
}

TEST_F(PotPlaceTest, ATipIsDraggedToLeanAStem) {
    place.findChild<QPushButton*>(QStringLiteral("potPose"))->click();
    const Plan before = session.plan();
    const QPoint tip = view->tipAt(StemId{1}).toPoint();
    // As far as the tip goes when the stem leans by 12 degrees.
    const QPoint off(qRound(M_PI / 15 * view->scene().body.stems[0].tip.z * view->framing().scale), 0);
    view->setFocus();
    QTest::mousePress(view, Qt::LeftButton, {}, tip);
    QTest::mouseMove(view, tip + off / 2);
    QTest::mouseMove(view, tip + off);
    EXPECT_EQ(session.plan(), before);
    QTest::mouseRelease(view, Qt::LeftButton, {}, tip + off);
    ASSERT_TRUE(session.plan().stems[0].pose);
    EXPECT_NEAR(inDegrees(session.plan().stems[0].pose->lean), 12, 0.1);
    EXPECT_NEAR(view->tipAt(StemId{1}).x(), (tip + off).x(), 0.03 * off.x() + 3) << "it went with the hand";
    EXPECT_NEAR(inDegrees(session.plan().stems[0].pose->toward), 180, 2) << "to the right";
    EXPECT_FALSE(firstProblem(session.plan()));
    // Keys lean it back; Esc while it is held leaves it alone.
    for (int i = 0; i < 4; ++i)
        QTest::keyClick(view, Qt::Key_Left, Qt::ControlModifier);
    EXPECT_FALSE(session.plan().stems[0].pose) << "upright again, nothing is kept";
    QTest::keyClick(view, Qt::Key_Down, Qt::ControlModifier | Qt::ShiftModifier);
    ASSERT_TRUE(session.plan().stems[0].pose);
    EXPECT_EQ(session.plan().stems[0].pose->bend, degrees(3));
    EXPECT_EQ(session.plan().stems[0].pose->toward, degrees(90));
}

TEST_F(PotPlaceTest, StemsThatLeanOutOverTheFootMakeThePlantFall) {
    Plan plan = session.plan();
    plan.pot.clay.depth = millimetres(0);
    plan.pot.footDiameter = millimetres(60);
    for (Stem& stem : plan.stems)
        stem.standing = Standing{};
    session.open(plan, {});
    auto* list = place.findChild<QListWidget*>(QStringLiteral("potFindings"));
    const auto falls = [&] {
        return list->count() > 0 &&
               list->item(0)->text().startsWith(QStringLiteral("The plant falls by itself"));
    };
    EXPECT_FALSE(falls());
    for (const Stem& stem : plan.stems) {
        ReformStem edit{stem.id, stem};
        edit.form.pose = Pose{degrees(85), degrees(0), degrees(180), ""};
        ASSERT_TRUE(session.make(edit));
    }
    EXPECT_TRUE(falls()) << "leaning to the right, all of them";
    session.undo();
    session.undo();
    session.undo();
    EXPECT_FALSE(falls());
}

TEST_F(PotPlaceTest, AStemLeansNoFartherThanItsWiresHold) {
    // A long leaf on one thin wire: the weight of a leaf laid level bends it.
    Plan plan = session.plan();
    for (Kind& kind : plan.kinds) {
        kind.wireDiameter = millimetres(0.2);
        kind.wiresAtBase = 1;
        kind.beads = 400;
    }
    session.open(plan, {});
    const double hold = session.figures().stems[0].hold.hold;
    ASSERT_GT(hold, 0);
    ASSERT_LT(hold, 0.9);
    place.findChild<QPushButton*>(QStringLiteral("potPose"))->click();
    QSignalSpy hints(view, &PlantView::hinted);
    const QPoint tip = view->tipAt(StemId{1}).toPoint();
    QTest::mousePress(view, Qt::LeftButton, {}, tip);
    QTest::mouseMove(view, tip + QPoint(40, 0));
    QTest::mouseMove(view, tip + QPoint(400, 0));
    ASSERT_GT(hints.count(), 0);
    EXPECT_TRUE(hints.last()[0].toString().contains(QStringLiteral("hold no more")));
    QTest::mouseRelease(view, Qt::LeftButton, {}, tip + QPoint(400, 0));
    ASSERT_TRUE(session.plan().stems[0].pose);
    EXPECT_LE(std::sin(inRadians(session.plan().stems[0].pose->lean)), hold);
}

TEST_F(PotPlaceTest, SuggestsWhoStandsWhereAndWaits) {
    const Plan before = session.plan();
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("placeStems")), Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor([this] { return session.offer().has_value(); }, 10'000));
    EXPECT_EQ(session.plan(), before) << "shown before it is taken";
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("takeOffer")), Qt::LeftButton);
    for (const Stem& stem : session.plan().stems)
        EXPECT_TRUE(stem.standing);
    session.undo();
    EXPECT_EQ(session.plan(), before);
}

TEST_F(PotPlaceTest, ViewingSideIsKeptInThePlan) {
    auto* side = place.findChild<QComboBox*>(QStringLiteral("viewedFrom"));
    side->setFocus();
    QTest::keyClick(side, Qt::Key_Down);
    EXPECT_EQ(session.plan().pot.viewedFrom, ViewedFrom::front);
    session.undo();
    EXPECT_EQ(side->currentIndex(), 0);
}

TEST_F(PotPlaceTest, FindingsNameTheirStems) {
    Plan plan = session.plan();
    plan.stems[0].standing = Standing{millimetres(200), millimetres(0), ""};
    session.open(plan, {});
    auto* list = place.findChild<QListWidget*>(QStringLiteral("potFindings"));
    ASSERT_GT(list->count(), 0);
    EXPECT_TRUE(list->item(0)->text().contains(QStringLiteral("outside the clay")));
}

TEST_F(PotPlaceTest, TargetsAreLargeEnoughAndNamed) {
    for (const char* name :
         {"potTurn", "potTilt", "potPose", "potGround", "potEyes", "potSave", "placeStems", "viewedFrom"}) {
        auto* widget = place.findChild<QWidget*>(QLatin1String(name));
        ASSERT_TRUE(widget) << name;
        EXPECT_GE(widget->height(), 24) << name;
        EXPECT_GE(widget->width(), 24) << name;
        EXPECT_NE(widget->focusPolicy(), Qt::NoFocus) << name;
    }
    EXPECT_FALSE(above->accessibleName().isEmpty());
    EXPECT_FALSE(view->accessibleName().isEmpty());
}

TEST_F(PotPlaceTest, SavesAPicture) {
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("plant.svg"));
    ask::Stand stand;
    stand.file = [&] { return path; };
    ask::setStand(stand);
    QTest::mouseClick(place.findChild<QPushButton*>(QStringLiteral("potSave")), Qt::LeftButton);
    ask::setStand(std::nullopt);
    EXPECT_TRUE(QFile::exists(path));
}

TEST(PotInTheWindow, ALeafLeadsToTheBoardAndAKeyPlaces) {
    MainWindow window(test::smallBoard());
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    window.showPlaceNamed(QStringLiteral("pot"));
    auto* places = window.findChild<QStackedWidget*>(QStringLiteral("places"));
    auto* view = window.findChild<PlantView*>();
    ASSERT_TRUE(view);
    ASSERT_TRUE(QTest::qWaitFor([&] { return view->isVisible() && view->width() > 300; }));
    const LeafBody& leaf = view->scene().body.leaves[0];
    QTest::mouseClick(view, Qt::LeftButton, {},
                      view->framing().onPicture(view->view().point(leaf.at3(0, -leaf.length * 0.7))).toPoint());
    EXPECT_EQ(places->currentIndex(), 1) << "the board";
    window.findChild<QAction*>(QStringLiteral("placeInPot"))->trigger();
    EXPECT_EQ(places->currentIndex(), 2);
    EXPECT_TRUE(QTest::qWaitFor([&] { return window.session().offer().has_value(); }, 10'000));
    window.session().markSaved({});
}

TEST(PotCommands, WritePicturesAndPlacedPlans) {
    QTemporaryDir folder;
    const QString plan = folder.filePath(QStringLiteral("a.stemplan"));
    ASSERT_TRUE(writePlan(example("succulent"), plan, nullptr));
    std::ostringstream out, err;
    const QString png = folder.filePath(QStringLiteral("a.png"));
    EXPECT_EQ(pictureCommand({plan, QStringLiteral("-o"), png, QStringLiteral("--turn"), QStringLiteral("45"),
                              QStringLiteral("--size"), QStringLiteral("200x150")},
                             {out, err}),
              0)
        << err.str();
    EXPECT_EQ(QImage(png).size(), QSize(200, 150));
    const QString placed = folder.filePath(QStringLiteral("b.stemplan"));
    EXPECT_EQ(placeCommand({plan, QStringLiteral("-o"), placed}, {out, err}), 0) << err.str();
    EXPECT_NE(out.str().find("proved"), std::string::npos);
    QString why;
    const auto after = readPlan(placed, &why);
    ASSERT_TRUE(after) << why.toStdString();
    EXPECT_EQ(after->stems[0].tiers, example("succulent").stems[0].tiers);
}

TEST(PotCommands, RefuseWithASentence) {
    const auto refused = [](const QStringList& arguments) {
        std::ostringstream out, err;
        const int code = pictureCommand(arguments, {out, err});
        return code == 2 && !err.str().empty() && out.str().empty();
    };
    const QString plan = QStringLiteral("nowhere.stemplan"), o = QStringLiteral("-o");
    EXPECT_TRUE(refused({}));
    EXPECT_TRUE(refused({plan}));
    EXPECT_TRUE(refused({plan, o, QStringLiteral("a.gif")}));
    EXPECT_TRUE(refused({plan, o, QStringLiteral("a.png")}));
    EXPECT_TRUE(refused({plan, o, QStringLiteral("a.png"), QStringLiteral("--tilt"), QStringLiteral("91")}));
    EXPECT_TRUE(refused({plan, o, QStringLiteral("a.png"), QStringLiteral("--size"), QStringLiteral("big")}));
    EXPECT_TRUE(refused({plan, o, QStringLiteral("a.png"), QStringLiteral("--wrong")}));
    std::ostringstream out, err;
    EXPECT_EQ(placeCommand({plan, o, plan, QStringLiteral("--seed"), QStringLiteral("x")}, {out, err}), 2);
}

} // namespace
} // namespace stemwright

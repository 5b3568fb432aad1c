#include "tests/app/bind/bind_fixture.h"

#include "app/bind/bind_picture.h"
#include "core/document/bench.h"

#include <QAccessible>
#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>

namespace stemwright {
namespace {

TEST_F(BindPlaceTest, BindsAStemByTheSpaceBarAndKeepsEachStep) {
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Cut to length"));
    EXPECT_FALSE(said("bindCaution").isEmpty()) << "cut ends fly";
    key(Qt::Key_Space);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Lay in the tail"));
    key(Qt::Key_Space);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Tier 1: side to side"));
    EXPECT_TRUE(said("bindWrap").contains(QStringLiteral("8 mm"))) << said("bindWrap").toStdString();
    EXPECT_TRUE(said("bindNext").contains(QStringLiteral("Tier 2, front to back")));
    key(Qt::Key_Space);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Tier 2: front to back"));
    EXPECT_EQ(said("bindTurn"), QStringLiteral("Turn the stem a quarter."));
    EXPECT_EQ(boundTiers(), 1u);
    EXPECT_EQ(onDisk(), session().plan());
    EXPECT_FALSE(session().unsaved());
    for (int i = 0; i < 5; ++i) {
        key(Qt::Key_Space);
        EXPECT_EQ(onDisk(), session().plan());
    }
    EXPECT_EQ(boundTiers(), 3u);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Stem 1 is bound"));
    EXPECT_TRUE(child<QPushButton>("bindDone")->text().contains(QStringLiteral("Stem 2")));
    key(Qt::Key_Space);
    EXPECT_EQ(place->stem(), StemId{2});
    EXPECT_TRUE(asked.isEmpty());
}

TEST_F(BindPlaceTest, GoesBackByThePedalAndByBackspace) {
    for (int i = 0; i < 4; ++i)
        key(Qt::Key_PageDown);
    EXPECT_EQ(boundTiers(), 2u);
    key(Qt::Key_PageUp);
    EXPECT_EQ(boundTiers(), 1u);
    key(Qt::Key_Backspace);
    EXPECT_EQ(boundTiers(), 0u);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Tier 1: side to side"));
    EXPECT_EQ(onDisk(), session().plan());
    key(Qt::Key_Backspace);
    key(Qt::Key_Backspace);
    key(Qt::Key_Backspace);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Cut to length"));
    EXPECT_FALSE(child<QPushButton>("bindBack")->isEnabled());
}

TEST_F(BindPlaceTest, APedalThatIsHeldBindsOneTier) {
    key(Qt::Key_Space);
    key(Qt::Key_Space);
    for (int i = 0; i < 5; ++i) {
        QKeyEvent event(QEvent::KeyPress, Qt::Key_PageDown, Qt::NoModifier, {}, i > 0);
        QApplication::sendEvent(place, &event);
    }
    EXPECT_EQ(boundTiers(), 1u);
}

TEST_F(BindPlaceTest, IsDoneWithTheMouseAndLargeTargets) {
    auto* done = child<QPushButton>("bindDone");
    auto* back = child<QPushButton>("bindBack");
    for (QPushButton* button : {done, back}) {
        EXPECT_GE(button->height(), 64);
        EXPECT_GE(button->width(), 64);
    }
    for (int i = 0; i < 3; ++i)
        QTest::mouseClick(done, Qt::LeftButton);
    EXPECT_EQ(boundTiers(), 1u);
    QTest::mouseClick(back, Qt::LeftButton);
    EXPECT_EQ(boundTiers(), 0u);
    // A click leaves the keys where they were.
    key(Qt::Key_Space);
    EXPECT_EQ(boundTiers(), 1u);
}

TEST_F(BindPlaceTest, AnUndoIsKeptToo) {
    for (int i = 0; i < 4; ++i)
        key(Qt::Key_Space);
    ASSERT_EQ(boundTiers(), 2u);
    session().undo();
    EXPECT_EQ(boundTiers(), 1u);
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Tier 2: front to back"));
    EXPECT_EQ(onDisk(), session().plan());
}

TEST_F(BindPlaceTest, TurnsThePictureAsSheHoldsTheStem) {
    for (int i = 0; i < 3; ++i)
        key(Qt::Key_Space);
    auto* picture = child<BindPicture>("bindPicture");
    const auto across = [&](int slot) {
        return std::abs(std::sin(picture->directionOf(1, slot) * M_PI / 180));
    };
    // A tier that faces front to back points up and down on the picture until it is turned.
    EXPECT_LT(across(0), 0.01);
    EXPECT_TRUE(said("bindLeaf").startsWith(QStringLiteral("front and back: ")))
        << said("bindLeaf").toStdString();
    QTest::mouseClick(child<QCheckBox>("bindAsHeld"), Qt::LeftButton, {}, QPoint(8, 20));
    EXPECT_TRUE(picture->asHeld());
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_TRUE(said("bindLeaf").startsWith(QStringLiteral("left and right as you hold it: ")))
        << said("bindLeaf").toStdString();
    EXPECT_GT(across(0), 0.5);
    EXPECT_GT(across(1), 0.5);
    EXPECT_GT(std::abs(std::sin(picture->directionOf(1, 0) * M_PI / 180) -
                       std::sin(picture->directionOf(1, 1) * M_PI / 180)),
              1);
}

TEST_F(BindPlaceTest, TheStemIsChosenFromAList) {
    auto* stems = child<QComboBox>("bindStems");
    ASSERT_EQ(stems->count(), 3);
    EXPECT_TRUE(stems->itemText(2).contains(QStringLiteral("no leaves")));
    stems->setFocus();
    QTest::keyClick(stems, Qt::Key_Down);
    EXPECT_EQ(place->stem(), StemId{2});
    QTest::keyClick(place, Qt::Key_Space);
    EXPECT_EQ(stem(1).bench.steps, 1);
    place->setStem(StemId{3});
    EXPECT_EQ(said("bindTitle"), QStringLiteral("Nothing to bind"));
    place->goOn();
    EXPECT_NE(place->stem(), StemId{3}) << "goes on to a stem that has something to bind";
}

TEST_F(BindPlaceTest, TheLengthReallyUsedIsShownAndThenTakenAsOneEdit) {
    for (int i = 0; i < 8; ++i)
        key(Qt::Key_Space);
    auto* field = child<QLineEdit>("measured0");
    auto* take = child<QPushButton>("takeMeasure");
    ASSERT_TRUE(field->isVisible());
    EXPECT_FALSE(take->isEnabled());
    const Plan before = session().plan();
    const Length planned = session().figures().stems[0].wraps[0].used;
    field->setFocus();
    QTest::keyClicks(field, QString::number(1.2 * inMillimetres(planned), 'f', 1));
    EXPECT_EQ(session().plan(), before) << "shown before it is taken";
    EXPECT_TRUE(said("measureChange").contains(QStringLiteral("Stem 2")))
        << said("measureChange").toStdString();
    EXPECT_TRUE(said("measureChange").contains(QStringLiteral("→")));
    ASSERT_TRUE(take->isEnabled());
    QTest::mouseClick(take, Qt::LeftButton);
    EXPECT_TRUE(session().plan().binding.wraps[0].overlapMeasured);
    EXPECT_EQ(measuredStems(session().plan()), std::vector<StemId>{StemId{1}});
    EXPECT_NEAR(inMillimetres(session().figures().stems[0].wraps[0].used), 1.2 * inMillimetres(planned), 0.1);
    EXPECT_EQ(onDisk(), session().plan());
    session().undo();
    EXPECT_EQ(session().plan(), before);
}

TEST_F(BindPlaceTest, WhatCannotBeIsRefusedBesideTheField) {
    for (int i = 0; i < 8; ++i)
        key(Qt::Key_Space);
    auto* field = child<QLineEdit>("measured0");
    for (const char* odd : {"a hand", "-4 mm", "1e99"}) {
        field->setText(QLatin1String(odd));
        EXPECT_FALSE(child<QPushButton>("takeMeasure")->isEnabled()) << odd;
    }
    // Less than turns edge to edge would take: no overlap explains it, and the figures stay.
    const Binding before = session().plan().binding;
    field->setText(QStringLiteral("2 mm"));
    if (child<QPushButton>("takeMeasure")->isEnabled())
        QTest::mouseClick(child<QPushButton>("takeMeasure"), Qt::LeftButton);
    EXPECT_EQ(session().plan().binding, before);
}

TEST_F(BindPlaceTest, TimesATierOnlyIfSheWantsIt) {
    qint64 now = 0;
    place->setClock([&now] { return now; });
    key(Qt::Key_Space);
    key(Qt::Key_Space);
    now += 60'000;
    key(Qt::Key_Space);
    EXPECT_EQ(stem(0).tiers[0].progress.minutes, 0);
    QTest::mouseClick(child<QCheckBox>("bindTimed"), Qt::LeftButton, {}, QPoint(8, 20));
    now += 150'000;
    key(Qt::Key_Space);
    EXPECT_EQ(stem(0).tiers[1].progress.minutes, 2.5);
    EXPECT_TRUE(said("bindTime").contains(QStringLiteral("2.5 min"))) << said("bindTime").toStdString();
    // Whoever only marks what was bound before has not bound a tier in a second; nor does a night count.
    now += 1'000;
    key(Qt::Key_Space);
    EXPECT_EQ(stem(0).tiers[2].progress.minutes, 0);
    key(Qt::Key_Backspace);
    now += 9 * 3'600'000;
    key(Qt::Key_Space);
    EXPECT_EQ(stem(0).tiers[2].progress.minutes, 0);
    EXPECT_TRUE(said("bindTime").contains(QStringLiteral("2.5 min"))) << said("bindTime").toStdString();
}

TEST_F(BindPlaceTest, AFolderThatCannotBeWrittenIsSaidAndNothingIsLost) {
    QFile::remove(file);
    ASSERT_TRUE(folder.remove());
    key(Qt::Key_Space);
    EXPECT_TRUE(said("bindKept").contains(QStringLiteral("unsaved work"))) << said("bindKept").toStdString();
    EXPECT_TRUE(session().unsaved());
    EXPECT_TRUE(asked.isEmpty()) << "hands are full: no question now";
}

TEST_F(BindPlaceTest, AFileChangedByAnotherIsNotOverwritten) {
    QFile other(file);
    ASSERT_TRUE(other.open(QIODevice::Append));
    other.write("\n");
    other.close();
    key(Qt::Key_Space);
    EXPECT_TRUE(said("bindKept").contains(QStringLiteral("another program"))) << said("bindKept").toStdString();
    EXPECT_NE(onDisk(), session().plan());
    EXPECT_TRUE(asked.isEmpty());
}

TEST_F(BindPlaceTest, ABoardEditOfABoundTierAsksFirst) {
    for (int i = 0; i < 4; ++i)
        key(Qt::Key_Space);
    ASSERT_EQ(boundTiers(), 2u);
    const Plan before = session().plan();
    const Edit edit = FillSlot{{StemId{1}, 0, 0}, {before.kinds[0].id, {}}};
    answer = ask::Answer::cancel;
    EXPECT_FALSE(session().make(edit));
    EXPECT_EQ(session().plan(), before);
    ASSERT_EQ(asked.size(), 1);
    EXPECT_TRUE(asked[0].contains(QStringLiteral("Stem 1, tier 1"))) << asked[0].toStdString();
    answer = ask::Answer::recordOnly;
    EXPECT_TRUE(session().make(edit));
    EXPECT_EQ(boundTiers(), 2u);
    session().undo();
    answer = ask::Answer::bindAgain;
    EXPECT_TRUE(session().make(edit));
    EXPECT_EQ(boundTiers(), 0u);
    session().undo();
    EXPECT_EQ(session().plan(), before) << "one undo takes all of it back";
    // An offer that reaches bound tiers asks like any other way.
    answer = ask::Answer::cancel;
    asked.clear();
    session().showOffer({TurnTier{StemId{1}, 1, degrees(45)}, {}, {}});
    session().takeOffer();
    EXPECT_EQ(asked.size(), 1);
    EXPECT_EQ(session().plan(), before);
    EXPECT_TRUE(session().make(FillSlot{{StemId{1}, 2, 0}, {before.kinds[0].id, {}}}));
    EXPECT_EQ(asked.size(), 1) << "what is not bound is changed unasked";
}

TEST_F(BindPlaceTest, APlanWithoutStemsOrWithManyTiersIsBorne) {
    session().open(Plan{}, {});
    EXPECT_FALSE(said("bindTitle").isEmpty());
    key(Qt::Key_Space);
    key(Qt::Key_Backspace);
    Plan plan = wrapped();
    const Tier tier = plan.stems[2].tiers.empty() ? Tier{} : plan.stems[2].tiers[0];
    plan.stems[2].tiers.assign(400, tier);
    plan.stems[2].name = std::string(300, 'W');
    session().open(plan, {});
    place->setStem(StemId{3});
    for (int i = 0; i < 6; ++i)
        key(Qt::Key_Space);
    EXPECT_TRUE(said("bindTitle").contains(QStringLiteral("Tier"))) << said("bindTitle").toStdString();
    EXPECT_LE(place->minimumSizeHint().width(), 1280);
}

TEST_F(BindPlaceTest, EveryControlHasANameAndSpeaks) {
    for (auto* widget : place->findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || widget->objectName().startsWith(QLatin1String("qt_")))
            continue;
        if (qobject_cast<QPushButton*>(widget) || qobject_cast<QCheckBox*>(widget) ||
            qobject_cast<QComboBox*>(widget)) {
            QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(widget);
            EXPECT_FALSE(spoken->text(QAccessible::Name).isEmpty()) << widget->objectName().toStdString();
        }
    }
    key(Qt::Key_Space);
    EXPECT_TRUE(place->accessibleDescription().contains(QStringLiteral("Lay in the tail")));
}

} // namespace
} // namespace stemwright

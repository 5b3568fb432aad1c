#include "app/main_window.h"

#include "app/ask.h"
#include "app/board/board_view.h"
#include "app/session.h"
#include "app/sheets/sheets_preview.h"
#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QMap>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QSignalSpy>
#include <QStackedWidget>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include <gtest/gtest.h>

#include <functional>

namespace stemwright {
namespace {

/// A window with a small board, a folder of its own, and answers laid out beforehand.
class MainWindowTest : public ::testing::Test {
protected:
    MainWindowTest() : window(test::smallBoard()) {
        ask::Stand stand;
        stand.answer = [this](const QString& question) {
            asked << question;
            return answer;
        };
        stand.told = [this](const QString& sentence) { told << sentence; };
        stand.file = [this] { return file; };
        ask::setStand(stand);
        window.show();
    }
    ~MainWindowTest() override { ask::setStand(std::nullopt); }

    QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }
    Session& session() { return window.session(); }
    QAction* action(const char* name) { return window.findChild<QAction*>(QLatin1String(name)); }
    void change() { ASSERT_TRUE(session().make(CloseTier{StemId{1}, 0})); }
    static QByteArray read(const QString& path) {
        QFile opened(path);
        return opened.open(QIODevice::ReadOnly) ? opened.readAll() : QByteArray();
    }
    static void write(const QString& path, const QByteArray& bytes) {
        QFile opened(path);
        ASSERT_TRUE(opened.open(QIODevice::WriteOnly));
        opened.write(bytes);
    }

    QTemporaryDir folder;
    QString file;
    ask::Answer answer = ask::Answer::cancel;
    QStringList asked;
    QStringList told;
    MainWindow window;
};

TEST_F(MainWindowTest, WhatIsSavedOpensAgainAsItWas) {
    change();
    EXPECT_TRUE(session().unsaved());
    file = path("plan.stemplan");
    action("save")->trigger();
    EXPECT_FALSE(session().unsaved());
    const Plan saved = session().plan();
    change();
    answer = ask::Answer::discard;
    ASSERT_TRUE(window.openFile(file));
    EXPECT_EQ(session().plan(), saved);
    EXPECT_FALSE(session().unsaved());
    EXPECT_TRUE(told.isEmpty());
}

TEST_F(MainWindowTest, TheBoardIsSeenBeforeWhatStandsBesideIt) {
    const auto beside = [this] { return window.findChild<QWidget*>(QStringLiteral("findingsList")); };
    bool seenAlone = false;
    struct Watch : QObject {
        std::function<void()> painted;
        bool eventFilter(QObject*, QEvent* event) override {
            if (event->type() == QEvent::Paint)
                painted();
            return false;
        }
    } watch;
    watch.painted = [&] { seenAlone = seenAlone || !beside(); };
    auto* board = window.findChild<BoardView*>();
    board->installEventFilter(&watch);
    EXPECT_TRUE(QTest::qWaitFor([&] { return beside() && beside()->isVisible(); }));
    EXPECT_TRUE(seenAlone);
    // What was made late goes along with the plan.
    const auto* range = window.findChild<QLabel*>(QStringLiteral("skylineRange"));
    const QString before = range->text();
    EXPECT_FALSE(before.isEmpty());
    change();
    EXPECT_NE(range->text(), before);
}

TEST_F(MainWindowTest, SavingTwiceWritesTheSameBytes) {
    file = path("a.stemplan");
    ASSERT_TRUE(window.save());
    const QByteArray first = read(file);
    ASSERT_TRUE(window.openFile(file));
    ASSERT_TRUE(window.save());
    EXPECT_EQ(read(file), first);
    EXPECT_FALSE(first.isEmpty());
}

TEST_F(MainWindowTest, AFileChangedByAnotherIsNotOverwrittenUnasked) {
    file = path("plan.stemplan");
    ASSERT_TRUE(window.save());
    const QByteArray foreign = read(file) + "\n";
    write(file, foreign);
    change();
    answer = ask::Answer::cancel;
    EXPECT_FALSE(window.save());
    EXPECT_EQ(asked.size(), 1);
    EXPECT_EQ(read(file), foreign);
    EXPECT_TRUE(session().unsaved());
    answer = ask::Answer::overwrite;
    EXPECT_TRUE(window.save());
    EXPECT_NE(read(file), foreign);
    EXPECT_FALSE(session().unsaved());
}

TEST_F(MainWindowTest, ABrokenPlanLeavesTheOpenOneAlone) {
    change();
    const Plan before = session().plan();
    write(path("broken.stemplan"), "{\"format\": \"stemplan\", \"version\": 1, \"stems\": [");
    EXPECT_FALSE(window.openFile(path("broken.stemplan")));
    ASSERT_EQ(told.size(), 1);
    EXPECT_TRUE(told[0].contains(QStringLiteral("broken.stemplan"))) << told[0].toStdString();
    EXPECT_TRUE(told[0].contains(QStringLiteral("line 1"))) << told[0].toStdString();
    EXPECT_FALSE(window.openFile(folder.path()));
    EXPECT_FALSE(window.openFile(path("missing.stemplan")));
    EXPECT_EQ(told.size(), 3);
    EXPECT_EQ(session().plan(), before);
    EXPECT_TRUE(session().canUndo());
}

TEST_F(MainWindowTest, SavingWhereNothingCanBeWrittenLosesNothing) {
    change();
    file = path("no/such/folder/plan.stemplan");
    EXPECT_FALSE(window.save());
    EXPECT_EQ(told.size(), 1);
    EXPECT_TRUE(session().unsaved());
    EXPECT_TRUE(session().path().isEmpty());
}

TEST_F(MainWindowTest, ClosingWithUnsavedWorkAsks) {
    change();
    answer = ask::Answer::cancel;
    EXPECT_FALSE(window.close());
    EXPECT_EQ(asked.size(), 1);
    answer = ask::Answer::save;
    file = path("kept.stemplan");
    EXPECT_TRUE(window.close());
    EXPECT_TRUE(QFile::exists(file));
}

TEST_F(MainWindowTest, ClosingWithNothingToLoseDoesNotAsk) {
    EXPECT_TRUE(window.close());
    EXPECT_TRUE(asked.isEmpty());
}

TEST_F(MainWindowTest, UndoByTheMenuSaysWhatItTakesBack) {
    const Plan before = session().plan();
    change();
    EXPECT_TRUE(action("undo")->text().contains(QStringLiteral("remove tier")));
    action("undo")->trigger();
    EXPECT_EQ(session().plan(), before);
    EXPECT_FALSE(action("undo")->isEnabled());
    EXPECT_TRUE(action("redo")->isEnabled());
}

TEST_F(MainWindowTest, EveryPlaceIsReachedByAKey) {
    auto* places = window.findChild<QStackedWidget*>(QStringLiteral("places"));
    // A button that is pressed by its key goes down for a moment first.
    const auto shows = [&](int place) {
        QTest::keyClick(&window, static_cast<Qt::Key>(Qt::Key_1 + place), Qt::ControlModifier);
        return QTest::qWaitFor([&] { return places->currentIndex() == place; }, 2000);
    };
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    ASSERT_GE(places->count(), 3);
    for (int place = 0; place < places->count(); ++place)
        EXPECT_TRUE(shows(place)) << place;
    EXPECT_TRUE(shows(0));
}

TEST_F(MainWindowTest, GoingToAPlaceAgainBringsTheKeysBackToIt) {
    auto* stack = window.findChild<QStackedWidget*>();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    auto* pill = window.findChild<QPushButton*>(QStringLiteral("place_bind"));
    ASSERT_TRUE(pill);
    const auto inPlace = [&] {
        return QTest::qWaitFor([&] {
            const QWidget* at = QApplication::focusWidget();
            return at && stack->currentWidget()->isAncestorOf(at);
        });
    };
    QTest::mouseClick(pill, Qt::LeftButton);
    EXPECT_TRUE(inPlace());
    // Whatever held the keys, a click on the place where she is, or its key, gives them back.
    pill->setFocus();
    ASSERT_TRUE(pill->hasFocus());
    QTest::mouseClick(pill, Qt::LeftButton);
    EXPECT_TRUE(inPlace());
    pill->setFocus();
    QTest::keyClick(&window, Qt::Key_4, Qt::ControlModifier);
    EXPECT_TRUE(inPlace());
}

TEST_F(MainWindowTest, AnOpenMenuHasItsLettersToItself) {
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    window.findChild<BoardView*>()->setFocus();
    const Plan before = session().plan();
    // P pins and T turns on the board, which keeps the focus while a menu is open.
    for (const auto& [letter, name] : {std::pair{Qt::Key_P, "pot"}, std::pair{Qt::Key_T, "aboutPlan"}}) {
        QTest::keyClick(&window, Qt::Key_P, Qt::AltModifier);
        QWidget* menu = nullptr;
        ASSERT_TRUE(QTest::qWaitFor([&] { return (menu = QApplication::activePopupWidget()) != nullptr; }));
        QSignalSpy chosen(action(name), &QAction::triggered);
        QTimer::singleShot(50, [] {
            if (auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget()))
                dialog->reject();
        });
        QTest::keyClick(menu, letter);
        EXPECT_TRUE(QTest::qWaitFor([&] { return chosen.count() == 1; }, 1000)) << name;
        EXPECT_EQ(session().plan(), before);
        if (menu->isVisible())
            menu->close();
        QApplication::setActiveWindow(&window);
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    }
}

TEST_F(MainWindowTest, EachPlaceTakesTheKeysOfWhoComesByAKey) {
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    const char* takes[] = {"coloursTable", "board", "plantView", "bindPlace", "sheetsPreview"};
    for (int place = 0; place < 5; ++place) {
        QTest::keyClick(&window, static_cast<Qt::Key>(Qt::Key_1 + place), Qt::ControlModifier);
        const auto name = QLatin1String(takes[place]);
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return QApplication::focusWidget() && QApplication::focusWidget()->objectName() == name; },
            2000))
            << place << " " << QApplication::focusWidget()->objectName().toStdString();
    }
    // And they do something at once: the next page.
    auto* preview = window.findChild<SheetsPreview*>();
    ASSERT_TRUE(preview);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return preview->sheets() && preview->sheets()->pages.size() > 1; }, 20'000));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_PageDown);
    EXPECT_TRUE(QTest::qWaitFor([&] { return preview->currentPage() == 1; }, 2000));
    // What is seen comes nearer, not a board that is not.
    const double board = window.findChild<BoardView*>()->zoom(), before = preview->zoom();
    action("zoomIn")->trigger();
    EXPECT_GT(preview->zoom(), before);
    EXPECT_EQ(window.findChild<BoardView*>()->zoom(), board);
    window.showPlaceNamed(QStringLiteral("board"));
    action("zoomIn")->trigger();
    EXPECT_GT(window.findChild<BoardView*>()->zoom(), board);
}

TEST_F(MainWindowTest, NoMenuHasALetterTwice) {
    for (const QMenu* menu : window.menuBar()->findChildren<QMenu*>()) {
        QMap<QKeySequence, QString> owners;
        for (const QAction* each : menu->actions()) {
            const QKeySequence letter = QKeySequence::mnemonic(each->text());
            EXPECT_FALSE(!letter.isEmpty() && owners.contains(letter))
                << menu->title().toStdString() << ": " << each->text().toStdString() << " and "
                << owners.value(letter).toStdString();
            owners.insert(letter, each->text());
        }
    }
}

TEST_F(MainWindowTest, NoUnderlinedLetterOfAPlaceIsAMenusOrAnothers) {
    for (const char* place : {"leaves", "board", "pot", "bind", "sheets"}) {
        window.showPlaceNamed(QLatin1String(place));
        QMap<QKeySequence, QString> owners;
        const auto own = [&](const QString& said) {
            const QKeySequence letter = QKeySequence::mnemonic(said);
            if (letter.isEmpty())
                return;
            EXPECT_FALSE(owners.contains(letter))
                << place << ": " << letter.toString().toStdString() << " of “"
                << owners.value(letter).toStdString() << "” and of “" << said.toStdString() << "”";
            owners.insert(letter, said);
        };
        for (const QAction* menu : window.menuBar()->actions())
            own(menu->text());
        // Those too that are hidden now: each may show beside the others.
        const QWidget* shown = window.findChild<QStackedWidget*>(QStringLiteral("places"))->currentWidget();
        for (const auto* button : shown->findChildren<QAbstractButton*>())
            own(button->text());
        for (const auto* label : shown->findChildren<QLabel*>())
            if (label->buddy())
                own(label->text());
    }
}

TEST_F(MainWindowTest, ARefusedEditIsSaidInTheStatusLine) {
    EXPECT_FALSE(session().make(CloseTier{StemId{9}, 0}));
    auto* message = window.findChild<QLabel*>(QStringLiteral("message"));
    ASSERT_TRUE(message);
    EXPECT_TRUE(message->isVisible());
    EXPECT_FALSE(message->text().isEmpty());
    change();
    EXPECT_FALSE(message->isVisible());
}

TEST_F(MainWindowTest, ARemedyIsShownBeforeItIsTakenAndIsOneUndo) {
    // Stem 1's second tier turned to face as its first does.
    ASSERT_TRUE(session().make(TurnTier{StemId{1}, 1, degrees(0)}));
    const Plan before = session().plan();
    QAbstractItemView* list = nullptr;
    ASSERT_TRUE(QTest::qWaitFor([&] {
        list = window.findChild<QAbstractItemView*>(QStringLiteral("findingsList"));
        return list && list->isVisible() && list->visualRect(list->model()->index(0, 0)).isValid();
    }));
    QApplication::processEvents();
    int row = -1;
    for (int i = 0; i < list->model()->rowCount(); ++i)
        if (session().findings()[static_cast<std::size_t>(i)].code == FindingCode::sameFacing && row < 0)
            row = i;
    ASSERT_GE(row, 0);
    const QModelIndex index = list->model()->index(row, 0);
    list->scrollTo(index);
    QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualRect(index).center());
    auto* remedy = window.findChild<QPushButton*>(QStringLiteral("offerRemedy"));
    ASSERT_TRUE(remedy->isVisible());
    QTest::mouseClick(remedy, Qt::LeftButton);
    ASSERT_TRUE(session().offer());
    EXPECT_EQ(session().plan(), before) << "an offer changes nothing";
    const std::size_t findings = session().findings().size();
    QTest::mouseClick(window.findChild<QPushButton*>(QStringLiteral("takeOffer")), Qt::LeftButton);
    EXPECT_FALSE(session().offer());
    EXPECT_NE(session().plan(), before);
    EXPECT_LT(session().findings().size(), findings);
    session().undo();
    EXPECT_EQ(session().plan(), before);
}

TEST_F(MainWindowTest, GoingToTheLeavesByAKeyPutsTheHandIntoATable) {
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    for (const char* way : {"at first", "and again"}) {
        window.showPlaceNamed(QStringLiteral("board"));
        QTest::keyClick(&window, Qt::Key_1, Qt::ControlModifier);
        // A button that is pressed by its key comes up again a moment later, and does its work then.
        QAbstractItemView* table = nullptr;
        EXPECT_TRUE(QTest::qWaitFor([&] {
            table = window.findChild<QAbstractItemView*>(QStringLiteral("coloursTable"));
            return table && table->hasFocus();
        })) << way;
        ASSERT_TRUE(table);
        EXPECT_TRUE(table->currentIndex().isValid()) << way;
    }
}

} // namespace
} // namespace stemwright

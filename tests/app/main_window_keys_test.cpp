#include "app/main_window.h"

#include "app/board/board_view.h"
#include "app/session.h"
#include "app/sheets/sheets_preview.h"
#include "tests/support/boards.h"

#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QMap>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalSpy>
#include <QStackedWidget>
#include <QTest>
#include <QTextBrowser>
#include <QTimer>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

// What a hand on the keys alone finds: every place, every menu, and where the keys are listed.

class WindowKeysTest : public ::testing::Test {
protected:
    WindowKeysTest() : window(test::smallBoard()) {
        window.show();
        window.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }
    Session& session() { return window.session(); }
    QAction* action(const char* name) { return window.findChild<QAction*>(QLatin1String(name)); }

    MainWindow window;
};

TEST_F(WindowKeysTest, EveryPlaceIsReachedByAKey) {
    auto* places = window.findChild<QStackedWidget*>(QStringLiteral("places"));
    // A button that is pressed by its key goes down for a moment first.
    const auto shows = [&](int place) {
        QTest::keyClick(&window, static_cast<Qt::Key>(Qt::Key_1 + place), Qt::ControlModifier);
        return QTest::qWaitFor([&] { return places->currentIndex() == place; }, 2000);
    };
    ASSERT_GE(places->count(), 3);
    for (int place = 0; place < places->count(); ++place)
        EXPECT_TRUE(shows(place)) << place;
    EXPECT_TRUE(shows(0));
}

TEST_F(WindowKeysTest, GoingToAPlaceAgainBringsTheKeysBackToIt) {
    auto* stack = window.findChild<QStackedWidget*>();
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

TEST_F(WindowKeysTest, AnOpenMenuHasItsLettersToItself) {
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

TEST_F(WindowKeysTest, EachPlaceTakesTheKeysOfWhoComesByAKey) {
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

TEST_F(WindowKeysTest, TheKeysOfEveryPlaceAreListedAndScrolledByKeys) {
    bool seen = false;
    QTimer::singleShot(50, [&] {
        QWidget* dialog = QApplication::activeModalWidget();
        ASSERT_TRUE(dialog);
        auto* page = dialog->findChild<QTextBrowser*>(QStringLiteral("page"));
        ASSERT_TRUE(page);
        seen = true;
        for (const char* word : {"Board", "Leaves", "Pot", "Bind", "Sheets", "Page Down", "Backspace",
                                 "Shift+F7", "Ctrl+F6", "Shift+F8", "Shift+F1", "Alt+R"})
            EXPECT_TRUE(page->toPlainText().contains(QLatin1String(word))) << word;
        EXPECT_EQ(dialog->focusWidget(), page);
        ASSERT_GT(page->verticalScrollBar()->maximum(), 0);
        QTest::keyClick(dialog->focusWidget(), Qt::Key_PageDown);
        EXPECT_GT(page->verticalScrollBar()->value(), 0);
        QTest::keyClick(dialog->focusWidget(), Qt::Key_Escape);
    });
    QTest::keyClick(&window, Qt::Key_F1);
    EXPECT_TRUE(seen);
    EXPECT_FALSE(QApplication::activeModalWidget());
}

TEST_F(WindowKeysTest, NoMenuHasALetterTwice) {
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

TEST_F(WindowKeysTest, NoUnderlinedLetterOfAPlaceIsAMenusOrAnothers) {
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

} // namespace
} // namespace stemwright

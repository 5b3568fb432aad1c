#include "app/main_window.h"

#include "app/ask.h"
#include "app/board/board_view.h"
#include "app/session.h"
#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTemporaryDir>
#include <QTest>

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

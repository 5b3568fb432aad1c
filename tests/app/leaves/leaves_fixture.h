#pragma once

#include "app/leaves/leaves_place.h"
#include "app/session.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QClipboard>
#include <QGuiApplication>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QtTest>

namespace stemwright::test {

/// The place Leaves over a small board, worked with real keys and clicks.
class LeavesPlaceTest : public testing::Test {
protected:
    void SetUp() override {
        place.resize(1280, 700);
        place.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&place));
        place.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&place));
    }

    QTableView* table(const char* name) {
        auto* view = place.findChild<QTableView*>(QLatin1String(name));
        EXPECT_TRUE(view) << name;
        return view;
    }
    QString notice() { return place.findChild<QLabel*>(QStringLiteral("leavesNotice"))->text(); }
    /// Goes to a cell by a click into it.
    QTableView* at(const char* name, int row, int column) {
        QTableView* view = table(name);
        const QRect cell = view->visualRect(view->model()->index(row, column));
        EXPECT_TRUE(view->viewport()->rect().intersects(cell)) << name << " " << row << " " << column;
        QTest::mouseClick(view->viewport(), Qt::LeftButton, {}, cell.center());
        EXPECT_EQ(view->currentIndex(), view->model()->index(row, column));
        return view;
    }
    QWidget* editorOf(const QTableView* view) {
        // A closed editor lives on, hidden, until the next turn of the event loop.
        for (QWidget* editor : view->viewport()->findChildren<QWidget*>(QStringLiteral("cellEditor")))
            if (editor->isVisible())
                return editor;
        return nullptr;
    }
    void type(QTableView* view, const QString& text, Qt::Key end = Qt::Key_Return) {
        QTest::keyClick(view, Qt::Key_F2);
        QWidget* editor = editorOf(view);
        ASSERT_TRUE(editor);
        QTest::keyClicks(editor, text);
        QTest::keyClick(editor, end);
    }
    void paste(QTableView* view, const QString& text) {
        QGuiApplication::clipboard()->setText(text);
        QTest::keyClick(view, Qt::Key_V, Qt::ControlModifier);
    }
    const Plan& plan() { return session.plan(); }
    int steps() {
        int undone = 0;
        while (session.canUndo()) {
            session.undo();
            ++undone;
        }
        for (int i = 0; i < undone; ++i)
            session.redo();
        return undone;
    }

    Session session{smallBoard()};
    LeavesPlace place{session};
};

} // namespace stemwright::test

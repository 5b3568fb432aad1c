#pragma once

#include <QPushButton>
#include <QtTest>

#include <gtest/gtest.h>

#include <optional>
#include <utility>

namespace stemwright::test {

/// A dialog on a window of its own, active, as keys and mouse need it.
template <class Dialog> class DialogTest : public testing::Test {
protected:
    template <class... Arguments> void openWith(Arguments&&... arguments) {
        dialog.emplace(std::forward<Arguments>(arguments)...);
        dialog->show();
        dialog->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&*dialog));
    }
    template <class Widget> Widget* child(const char* name) {
        auto* widget = dialog->template findChild<Widget*>(QLatin1String(name));
        EXPECT_TRUE(widget) << name;
        return widget;
    }
    /// By the key that a button takes.
    void press(const char* name) {
        auto* button = child<QPushButton>(name);
        button->setFocus();
        QTest::keyClick(button, Qt::Key_Space);
    }

    std::optional<Dialog> dialog;
};

} // namespace stemwright::test

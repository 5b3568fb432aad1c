// The suggestions as she asks for them: keys of the window, dialogs, keys again.
#include "app/main_window.h"
#include "app/session.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"

#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QSpinBox>
#include <QTimer>
#include <QtTest>

#include <gtest/gtest.h>

#include <functional>

namespace stemwright {
namespace {

class SuggestMenuTest : public ::testing::Test {
protected:
    SuggestMenuTest() : window(test::randomBoard(11, 6, 8, 4)) {
        window.show();
        QApplication::setActiveWindow(&window);
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }
    Session& session() { return window.session(); }
    bool waitForOffer() {
        return QTest::qWaitFor([this] { return session().offer().has_value(); }, 20'000);
    }
    /// Presses the keys that open a dialog, and does `then` in it.
    void open(Qt::Key key, Qt::KeyboardModifiers modifiers, const char* name,
              const std::function<void(QDialog&)>& then) {
        bool seen = false;
        QTimer::singleShot(0, &window, [&] {
            // The dialog runs its own loop by then.
            QTimer::singleShot(50, &window, [&] {
                auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
                ASSERT_TRUE(dialog);
                seen = dialog->objectName() == QLatin1String(name);
                then(*dialog);
            });
        });
        QTest::keyClick(&window, key, modifiers);
        EXPECT_TRUE(seen) << name;
        // Without a window manager nobody gives the focus back.
        QApplication::setActiveWindow(&window);
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
    }

    MainWindow window;
};

TEST_F(SuggestMenuTest, HeightsAreVariedAndTakenByKeysOnly) {
    open(Qt::Key_F7, Qt::ShiftModifier, "heights", [](QDialog& dialog) {
        for (const char* most : {"heightsMost1", "heightsMost2"})
            if (auto* field = dialog.findChild<QSpinBox*>(QLatin1String(most))) {
                field->setFocus();
                QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
                QTest::keyClicks(field, QStringLiteral("40"));
            }
        for (const char* least : {"heightsLeast1", "heightsLeast2"})
            if (auto* field = dialog.findChild<QSpinBox*>(QLatin1String(least))) {
                field->setFocus();
                QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
                QTest::keyClicks(field, QStringLiteral("0"));
            }
        QTest::keyClick(&dialog, Qt::Key_Return);
        EXPECT_EQ(dialog.result(), QDialog::Accepted);
        if (dialog.isVisible())
            dialog.reject();
    });
    ASSERT_TRUE(waitForOffer());
    const Plan before = session().plan();
    QTest::keyClick(&window, Qt::Key_Return, Qt::ControlModifier);
    EXPECT_FALSE(session().offer());
    EXPECT_NE(session().plan(), before);
    QTest::keyClick(&window, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(session().plan(), before);
}

TEST_F(SuggestMenuTest, ACancelledDialogSuggestsNothing) {
    open(Qt::Key_F6, Qt::ControlModifier, "start",
         [](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Escape); });
    QTest::qWait(100);
    EXPECT_FALSE(session().offer());
    EXPECT_FALSE(session().unsaved());
}

TEST_F(SuggestMenuTest, TwoAreComparedAndOneTakenByKeysOnly) {
    QTest::keyClick(&window, Qt::Key_F6);
    ASSERT_TRUE(waitForOffer());
    const double least = session().offer()->suggestion->after;
    QTest::keyClick(&window, Qt::Key_Backspace, Qt::ControlModifier);
    EXPECT_FALSE(session().offer());
    QTest::keyClick(&window, Qt::Key_F8);
    ASSERT_TRUE(waitForOffer());
    open(Qt::Key_F8, Qt::ShiftModifier, "compare", [](QDialog& dialog) {
        EXPECT_EQ(dialog.findChild<QComboBox*>(QStringLiteral("leftWhich"))->currentText(),
                  QStringLiteral("Spread the colours"));
        auto* take = dialog.findChild<QWidget*>(QStringLiteral("leftTake"));
        take->setFocus();
        QTest::keyClick(take, Qt::Key_Space);
        if (dialog.isVisible())
            dialog.reject();
    });
    EXPECT_NEAR(session().figures().pot.unevenness, least, 1e-9);
    EXPECT_TRUE(session().unsaved());
}

} // namespace
} // namespace stemwright

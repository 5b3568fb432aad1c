#include "app/compare/compare_dialog.h"

#include "app/compare/board_picture.h"
#include "app/suggestions.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QtTest>

namespace stemwright {
namespace {

class CompareTest : public ::testing::Test {
protected:
    CompareTest() : session(test::randomBoard(11, 12, 6, 3)), suggestions(session) {}

    bool find(const std::function<void()>& start) {
        session.dropOffer();
        start();
        return QTest::qWaitFor([this] { return session.offer().has_value(); }, 60'000);
    }
    void open() {
        dialog = std::make_unique<CompareDialog>(session, suggestions);
        dialog->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(dialog.get()));
    }
    template <class Widget> Widget* child(const char* name) {
        auto* found = dialog->findChild<Widget*>(QLatin1String(name));
        EXPECT_TRUE(found) << name;
        return found;
    }

    Session session;
    Suggestions suggestions;
    std::unique_ptr<CompareDialog> dialog;
};

TEST_F(CompareTest, TodaysBoardAndOneAreSeenSideBySide) {
    const Plan before = session.plan();
    ASSERT_TRUE(find([this] { suggestions.spreadColours(false); }));
    open();
    EXPECT_EQ(child<QComboBox>("leftWhich")->currentIndex(), 0);
    EXPECT_EQ(child<QComboBox>("rightWhich")->currentText(), QStringLiteral("Spread the colours"));
    EXPECT_NE(child<QLabel>("leftFigures")->text(), child<QLabel>("rightFigures")->text());
    EXPECT_TRUE(child<QLabel>("rightFigures")->text().contains(QStringLiteral("roved")));
    const int marked = child<BoardPicture>("rightPicture")->marked();
    EXPECT_GT(marked, 0);
    EXPECT_EQ(child<BoardPicture>("leftPicture")->marked(), marked) << "both show where they differ";
    EXPECT_EQ(session.plan(), before);
    const double promised = session.offer()->suggestion->after;
    QTest::mouseClick(child<QPushButton>("rightTake"), Qt::LeftButton);
    EXPECT_EQ(dialog->result(), QDialog::Accepted);
    EXPECT_NEAR(session.figures().pot.unevenness, promised, 1e-9);
    session.undo();
    EXPECT_EQ(session.plan(), before) << "one undo";
}

TEST_F(CompareTest, TwoSuggestionsAreComparedAndEitherIsTaken) {
    ASSERT_TRUE(find([this] { suggestions.shuffle(); }));
    const Edit first = session.offer()->edit;
    ASSERT_TRUE(find([this] { suggestions.shuffle(); }));
    ASSERT_EQ(suggestions.found().size(), 2u);
    open();
    EXPECT_EQ(child<QComboBox>("leftWhich")->currentIndex(), 1);
    EXPECT_EQ(child<QComboBox>("rightWhich")->currentIndex(), 2);
    Plan expected = session.plan();
    ASSERT_TRUE(apply(expected, first));
    QTest::keyClick(child<QPushButton>("leftTake"), Qt::Key_Space);
    EXPECT_EQ(session.plan(), expected);
    EXPECT_TRUE(suggestions.found().empty()) << "what was found was for the plan as it was";
}

TEST_F(CompareTest, AnyTwoAreChosenByKeys) {
    ASSERT_TRUE(find([this] { suggestions.spreadColours(false); }));
    ASSERT_TRUE(find([this] { suggestions.orderTipToBase(); }));
    open();
    auto* right = child<QComboBox>("rightWhich");
    EXPECT_EQ(right->count(), 3);
    right->setFocus();
    QTest::keyClick(right, Qt::Key_Home);
    EXPECT_EQ(right->currentIndex(), 0);
    EXPECT_EQ(child<QPushButton>("rightTake")->text(), QStringLiteral("Leave the board as it is"));
    const Plan before = session.plan();
    QTest::keyClick(dialog.get(), Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    EXPECT_EQ(session.plan(), before);
    EXPECT_TRUE(session.offer()) << "the suggestion still lies over the board";
}

TEST_F(CompareTest, OneHandScrollsBoth) {
    ASSERT_TRUE(find([this] { suggestions.spreadColours(false); }));
    open();
    dialog->resize(500, 600);
    auto* left = child<QScrollArea>("leftScroll")->horizontalScrollBar();
    auto* right = child<QScrollArea>("rightScroll")->horizontalScrollBar();
    ASSERT_TRUE(QTest::qWaitFor([&] { return left->maximum() > 0 && right->maximum() > 0; }, 3000));
    left->setValue(left->maximum() / 2);
    EXPECT_EQ(right->value(), left->value());
    right->setValue(3);
    EXPECT_EQ(left->value(), 3);
}

TEST_F(CompareTest, WithNothingFoundItSaysSo) {
    open();
    EXPECT_TRUE(child<QLabel>("compareHint")->text().contains(QStringLiteral("Nothing")));
    EXPECT_EQ(child<BoardPicture>("leftPicture")->marked(), 0);
}

} // namespace
} // namespace stemwright

#include "app/panels/findings_panel.h"

#include "app/session.h"
#include "tests/support/boards.h"

#include <QListView>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

TEST(FindingsPanelTest, BeadsThatNobodyWeighedLeadToALeafOfTheirKind) {
    Plan plan = test::smallBoard();
    plan.kinds[0].beadSize = "99/0";
    Session session(plan);
    FindingsPanel panel(session);
    panel.resize(320, 900);
    panel.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&panel));
    auto* list = panel.findChild<QListView*>(QStringLiteral("findingsList"));
    QSignalSpy chosen(&panel, &FindingsPanel::placeChosen);
    for (int row = 0; row < list->model()->rowCount(); ++row) {
        const QModelIndex index = list->model()->index(row, 0);
        if (!index.data().toString().startsWith(QStringLiteral("What the beads of Small leaves weigh")))
            continue;
        list->scrollTo(index);
        QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualRect(index).center());
    }
    ASSERT_GE(chosen.count(), 1);
    const QList<QVariant> place = chosen.last();
    EXPECT_EQ(place[0].toUInt(), 1u);
    EXPECT_EQ(place[1].toInt(), 0);
    EXPECT_EQ(place[2].toInt(), 0);
    EXPECT_TRUE(panel.findChild<QPushButton*>(QStringLiteral("offerRemedy"))->isHidden())
        << "which size was meant nobody can guess";
}

} // namespace
} // namespace stemwright

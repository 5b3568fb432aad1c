#include "app/leaves/leaves_place.h"

#include "app/leaves/leaf_rows_model.h"
#include "app/session.h"
#include "core/document/examples.h"

#include <QHeaderView>
#include <QScrollBar>
#include <QTableView>
#include <QtTest>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

// What is seen at once on the least screen, 1280 × 800, of which the window's bars take their part.

class LeavesFitTest : public ::testing::Test {
protected:
    explicit LeavesFitTest() : session(example("spray")), place(session) {
        place.resize(1280, 682);
        place.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&place));
        QTest::qWait(1);
    }
    QTableView* table(const char* name) {
        auto* view = place.findChild<QTableView*>(QLatin1String(name));
        EXPECT_TRUE(view) << name;
        return view;
    }

    /// As wide as the widest of a column's cells.
    static int contents(const QAbstractItemView* view, int column) { return view->sizeHintForColumn(column); }

    Session session;
    LeavesPlace place;
};

TEST_F(LeavesFitTest, ColoursMixesAndTheirPartsAreWhole) {
    for (const char* name : {"coloursTable", "mixesTable", "mixColoursTable", "kindsTable"}) {
        QTableView* view = table(name);
        const QAbstractItemModel* model = view->model();
        const QRect last = view->visualRect(model->index(model->rowCount() - 1, 0));
        EXPECT_TRUE(view->viewport()->rect().contains(QRect(last.topLeft(), QSize(1, last.height()))))
            << name << " ends at " << last.bottom() << " of " << view->viewport()->height();
        EXPECT_FALSE(view->horizontalScrollBar()->isVisible()) << name;
        const QHeaderView* header = view->horizontalHeader();
        for (int section = 0; section < header->count(); ++section)
            EXPECT_GE(header->sectionSize(section),
                      std::max(header->sectionSizeHint(section), contents(view, section)))
                << name << section;
    }
}

TEST_F(LeavesFitTest, NamesOfMixesHaveTheirRoom) {
    for (const char* key : {"spray", "herb", "fern", "hedge", "succulent"}) {
        session.open(example(key), {});
        QTest::qWait(1);
        QTableView* mixes = table("mixesTable");
        for (int column = 0; column < mixes->model()->columnCount(); ++column)
            EXPECT_GE(mixes->columnWidth(column), contents(mixes, column)) << key << " " << column;
    }
}

TEST_F(LeavesFitTest, ThreeKindsStandBesideEachOther) {
    session.open(example("fern"), {});
    QTest::qWait(1);
    QTableView* kinds = table("kindsTable");
    ASSERT_EQ(kinds->model()->columnCount(), 3);
    EXPECT_FALSE(kinds->horizontalScrollBar()->isVisible());
    for (int column = 0; column < 3; ++column) {
        EXPECT_GE(kinds->columnWidth(column), contents(kinds, column)) << column;
        EXPECT_GE(kinds->columnWidth(column), kinds->horizontalHeader()->sectionSizeHint(column)) << column;
    }
}

TEST_F(LeavesFitTest, EveryColourOfALeafHasItsNameWhole) {
    QTableView* rows = table("leafRowsTable");
    const QHeaderView* header = rows->horizontalHeader();
    const auto needed = [&] {
        int all = 0;
        for (int section = 0; section < header->count(); ++section)
            all += header->sectionSizeHint(section);
        return all;
    };
    for (int section = 0; section < header->count(); ++section)
        EXPECT_GE(header->sectionSize(section), header->sectionSizeHint(section))
            << rows->model()->headerData(section, Qt::Horizontal).toString().toStdString();
    for (int section = 0; section < header->count(); ++section)
        EXPECT_GE(header->sectionSize(section), contents(rows, section)) << section;
    EXPECT_FALSE(rows->horizontalScrollBar()->isVisible()) << needed() << " of " << rows->viewport()->width();
    // With more room the colours share it, with less they scroll.
    place.resize(1900, 682);
    QTest::qWait(1);
    EXPECT_EQ(header->length(), rows->viewport()->width());
    place.resize(1000, 682);
    QTest::qWait(1);
    for (int section = 0; section < header->count(); ++section)
        EXPECT_GE(header->sectionSize(section), header->sectionSizeHint(section)) << section;
}

} // namespace
} // namespace stemwright

#include "app/panels/supplies_panel.h"

#include "app/session.h"
#include "core/document/examples.h"

#include <QLabel>
#include <QScrollArea>
#include <QTest>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

/// A plan with a price for everything, so that the amounts are as long as they get.
Plan dear() {
    Plan plan = example("spray");
    for (Kind& kind : plan.kinds)
        for (StockLine& line : kind.stock)
            line.toMake += std::exchange(line.made, 0);
    plan.buying.beads = {10, 2.5, ""};
    plan.buying.leafWire = {10'000, 4, ""};
    plan.buying.clay = {500, 6, ""};
    plan.buying.bars = {{millimetres(300), 0.5}};
    plan.buying.wraps = {{0, 1.2, ""}};
    return plan;
}

TEST(SuppliesPanel, CutsNoAmountInTheNarrowColumnBesideTheBoard) {
    Session session(dear());
    QScrollArea scroll;
    auto* panel = new SuppliesPanel(session, nullptr);
    scroll.setWidget(panel);
    scroll.setWidgetResizable(true);
    scroll.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll.resize(268, 300);
    scroll.show();
    const auto last = [&] {
        const QList<QLabel*> labels = panel->findChildren<QLabel*>();
        return labels.size() > 12 ? labels.last() : nullptr;
    };
    ASSERT_TRUE(QTest::qWaitFor([&] { return last() && last()->isVisible(); }));
    QTest::qWait(20);
    EXPECT_LE(panel->width(), scroll.viewport()->width()) << "nothing lies under the scroll bar";
    int inLines = 0;
    for (const QLabel* label : panel->findChildren<QLabel*>()) {
        if (!label->isVisible())
            continue;
        EXPECT_LE(label->geometry().right(), panel->width()) << label->text().toStdString();
        EXPECT_GE(label->height(), label->heightForWidth(label->width())) << label->text().toStdString();
        inLines += label->text().contains(QLatin1Char('\n'));
    }
    EXPECT_GT(inLines, 2) << "long amounts stand in lines";
}

} // namespace
} // namespace stemwright

#include "app/fields/fitted_label.h"

#include <QTest>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

TEST(FittedLabel, ShowsTheLongestWordingThatFitsAndNeverCutsWithoutSayingSo) {
    FittedLabel label;
    const QString all = QStringLiteral("92 mm to 151 mm · variety 18 %"),
                  less = QStringLiteral("92 mm to 151 mm");
    label.setWordings({all, less});
    const QFontMetrics metrics = label.fontMetrics();
    label.show();
    label.resize(metrics.horizontalAdvance(all) + 2, 20);
    EXPECT_EQ(label.text(), all);
    label.resize(metrics.horizontalAdvance(all) - 5, 20);
    EXPECT_EQ(label.text(), less);
    label.resize(metrics.horizontalAdvance(less) - 5, 20);
    EXPECT_TRUE(label.text().endsWith(QChar(0x2026))) << label.text().toStdString();
    EXPECT_TRUE(less.startsWith(label.text().chopped(1)));
    EXPECT_EQ(label.toolTip(), all);
    EXPECT_EQ(label.accessibleName(), all);
    label.resize(400, 20);
    EXPECT_EQ(label.text(), all);
}

} // namespace
} // namespace stemwright

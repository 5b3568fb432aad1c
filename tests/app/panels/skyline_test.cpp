#include "app/panels/skyline.h"

#include "app/session.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QtTest>

namespace stemwright {
namespace {

TEST(SkylineTest, ShowsTheStemsNamesRatherThanTheirPlaces) {
    Session session(test::smallBoard());
    Skyline skyline(session);
    skyline.resize(280, 176);
    skyline.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&skyline));
    const QImage before = skyline.grab().toImage();
    StemForm form = session.plan().stems[1];
    form.name = "Tall";
    ASSERT_TRUE(session.make(ReformStem{session.plan().stems[1].id, form}));
    EXPECT_NE(skyline.grab().toImage(), before);
}

TEST(SkylineTest, AClickChoosesTheStemUnderIt) {
    Session session(test::smallBoard());
    Skyline skyline(session);
    skyline.resize(300, 176);
    skyline.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&skyline));
    QSignalSpy chosen(&skyline, &Skyline::stemChosen);
    QTest::mouseClick(&skyline, Qt::LeftButton, {}, {150, 100});
    ASSERT_EQ(chosen.count(), 1);
    EXPECT_EQ(chosen.first().first().toUInt(), session.plan().stems[1].id.value);
}

} // namespace
} // namespace stemwright

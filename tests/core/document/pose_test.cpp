#include "core/document/plan_file.h"

#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

TEST(PoseInTheFile, ComesBackAndIsLeftOutWhereThereIsNone) {
    Plan plan = test::smallBoard();
    EXPECT_EQ(planText(plan).find("pose"), std::string::npos);
    EXPECT_EQ(planText(plan).find("viewed_from"), std::string::npos);
    plan.stems[1].pose = Pose{degrees(12), degrees(-30), degrees(225), ""};
    plan.pot.viewedFrom = ViewedFrom::front;
    const std::string text = planText(plan);
    const auto back = planFromText(text);
    ASSERT_TRUE(back.ok());
    EXPECT_EQ(back.value(), plan);
}

TEST(PoseInTheFile, OutOfReachIsRefused) {
    Plan plan = test::smallBoard();
    plan.stems[1].pose = Pose{degrees(91), degrees(0), degrees(0), ""};
    ASSERT_TRUE(firstProblem(plan));
    EXPECT_EQ(firstProblem(plan)->place, "stems[1].pose.lean_deg");
    plan.stems[1].pose = Pose{degrees(9), degrees(-181), degrees(0), ""};
    EXPECT_EQ(firstProblem(plan)->place, "stems[1].pose.bend_deg");
    plan.stems[1].pose = Pose{degrees(9), degrees(0), degrees(360), ""};
    EXPECT_EQ(firstProblem(plan)->place, "stems[1].pose.toward_deg");
}

TEST(PlanFile, APotStandsOnThreeFeetOrMoreOrNone) {
    Plan plan = test::smallBoard();
    EXPECT_EQ(planText(plan).find("feet"), std::string::npos) << "as older files";
    for (const int feet : {-1, 1, 2, 13}) {
        plan.pot.feet = feet;
        const auto problem = firstProblem(plan);
        ASSERT_TRUE(problem) << feet;
        EXPECT_EQ(problem->code, ProblemCode::outOfRange);
        EXPECT_EQ(problem->place, "pot.feet");
    }
    for (const int feet : {0, 3, 12}) {
        plan.pot.feet = feet;
        EXPECT_FALSE(firstProblem(plan)) << feet;
        const Result<Plan> back = planFromText(planText(plan));
        ASSERT_TRUE(back);
        EXPECT_EQ(back.value(), plan);
    }
}

} // namespace
} // namespace stemwright

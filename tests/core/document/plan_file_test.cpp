#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

Plan fullPlan() {
    Plan plan = test::smallBoard();
    plan.about = {"A full plan", "Every part set, nothing as it comes.\nTwo lines, \"quoted\", ünd more.",
                  "2024-02-29", ""};
    plan.units = {LengthUnit::inch, MassUnit::ounce, ""};
    plan.kinds[0].tipEnd = LeafEnd::pointed;
    plan.kinds[0].gauge = GaugeNumber{GaugeSystem::swg, 30};
    plan.kinds[0].minutes = 12.5;
    plan.binding.wraps[0] = {WrapWith::tape,
                             1,
                             millimetres(12.7),
                             millimetres(0.1),
                             std::nullopt,
                             0.25,
                             1.5,
                             millimetres(5),
                             millimetres(6),
                             millimetres(7),
                             millimetres(27'000),
                             ""};
    plan.binding.wraps.push_back({});
    plan.binding.wraps[1].with = WrapWith::wire;
    plan.binding.wraps[1].gauge = GaugeNumber{GaugeSystem::steel, 28};
    plan.pot.name = "Bowl";
    plan.pot.shape = PotShape::bowl;
    plan.pot.stake.metal = Metal::hardBrass;
    plan.pot.clay.density = 1234.5;
    plan.stems[0].core = CoreWire{millimetres(0.9), GaugeNumber{GaugeSystem::awg, 19}, Metal::hardCopper, ""};
    plan.stems[0].locked = true;
    plan.stems[0].standing = Standing{millimetres(-12.25), millimetres(3), ""};
    plan.stems[1].arrangement = Arrangement::whorled;
    plan.stems[1].whorl = 5;
    plan.stems[0].tiers[0].spacing = millimetres(1.0 / 3);
    plan.stems[0].tiers[0].turn = degrees(137.50776405003785);
    plan.stems[0].tiers[0].progress = {true, 4.5, ""};
    plan.stems[0].tiers[1].slots[0].pinned = true;
    plan.stems[0].tiers[1].slots[1].leaf = {KindId{1}, MixId{}};
    plan.stems[0].tiers[2].slots[1] = {};
    return plan;
}

void expectRoundTrip(const Plan& plan) {
    const std::string text = planText(plan);
    const Result<Plan> back = planFromText(text);
    ASSERT_TRUE(back) << back.problem().place << "\n" << text;
    EXPECT_EQ(back.value(), plan);
    EXPECT_EQ(planText(back.value()), text);
}

TEST(PlanFile, ReadsBackWhatItWrote) {
    ASSERT_FALSE(firstProblem(fullPlan())) << firstProblem(fullPlan())->place;
    expectRoundTrip(Plan{});
    expectRoundTrip(test::smallBoard());
    expectRoundTrip(fullPlan());
    for (std::uint32_t seed = 0; seed < 200; ++seed)
        expectRoundTrip(
            test::randomBoard(seed, 1 + static_cast<int>(seed % 7), 8, 2 + static_cast<int>(seed % 5)));
}

} // namespace
} // namespace stemwright

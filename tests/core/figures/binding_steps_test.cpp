#include "core/figures/binding_steps.h"

#include "core/figures/figures.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>

namespace stemwright {
namespace {

Plan twoLayers(std::uint32_t seed) {
    Plan plan = test::randomBoard(seed, 6, 20, 5);
    Wrap wire;
    wire.with = WrapWith::wire;
    wire.strands = 1;
    wire.width = wire.thickness = millimetres(0.3);
    wire.overlap = 0;
    plan.binding.wraps.insert(plan.binding.wraps.begin(), wire);
    plan.stems[2].core = CoreWire{};
    plan.stems[2].core->diameter = millimetres(1.2);
    plan.stems[3].tiers.clear();
    return plan;
}

TEST(BindingSteps, UseAddsUpToTheFigures) {
    for (std::uint32_t seed = 1; seed < 20; ++seed) {
        const Plan plan = twoLayers(seed);
        const Figures all = figures(plan);
        for (std::size_t s = 0; s < plan.stems.size(); ++s) {
            const auto steps = bindingSteps(plan, plan.stems[s]);
            if (steps.empty()) {
                EXPECT_TRUE(plan.stems[s].tiers.empty());
                continue;
            }
            for (std::size_t w = 0; w < plan.binding.wraps.size(); ++w)
                EXPECT_EQ(steps.back().used[w], all.stems[s].wraps[w].used);
            // The parts by themselves, before the last one is squared with the whole.
            const auto tail = std::find_if(steps.begin(), steps.end(),
                                           [](const auto& step) { return step.code == BindingStepCode::tail; });
            ASSERT_NE(tail, steps.end());
            EXPECT_GE(tail->used[0], std::prev(tail)->used[0]);
        }
    }
}

TEST(BindingSteps, NothingIsEverUnwound) {
    const Plan plan = twoLayers(3);
    for (const Stem& stem : plan.stems) {
        std::vector<Length> before(plan.binding.wraps.size());
        for (const BindingStep& step : bindingSteps(plan, stem)) {
            for (std::size_t w = 0; w < before.size(); ++w)
                EXPECT_GE(step.used[w], before[w]);
            before = step.used;
        }
    }
}

TEST(BindingSteps, EveryTierIsOneStepInOrder) {
    const Plan plan = twoLayers(4);
    for (const Stem& stem : plan.stems) {
        int next = 0;
        Length wrapped;
        for (const BindingStep& step : bindingSteps(plan, stem)) {
            if (step.code == BindingStepCode::tier) {
                EXPECT_EQ(step.tier, next++);
            }
            if (step.code == BindingStepCode::tier || step.code == BindingStepCode::tail)
                wrapped += step.along;
        }
        EXPECT_EQ(next, static_cast<int>(stem.tiers.size()));
        if (stem.tiers.empty())
            continue;
        Length length = stem.tail;
        for (std::size_t i = 0; i + 1 < stem.tiers.size(); ++i)
            length += stem.tiers[i].spacing.value_or(stem.spacing);
        EXPECT_NEAR(inMillimetres(wrapped), inMillimetres(length), 1e-9);
    }
}

TEST(BindingSteps, DecussateTurnsAQuarter) {
    const Plan plan = test::smallBoard();
    const auto steps = bindingSteps(plan, plan.stems[0]);
    for (const BindingStep& step : steps)
        if (step.code == BindingStepCode::tier) {
            EXPECT_EQ(step.turn, degrees(step.tier == 0 ? 0 : 90));
        }
}

TEST(BindingSteps, AStemIsStillToCutExactlyWhileItsFirstStepIsNotDone) {
    for (std::uint32_t seed = 1; seed < 20; ++seed) {
        Plan plan = twoLayers(seed);
        std::mt19937 random(seed);
        for (Stem& stem : plan.stems) {
            stem.bench.steps = random() % 2 ? static_cast<int>(random() % 3) : 0;
            for (std::size_t i = 0, bound = random() % 2 ? random() % 3 : 0;
                 i < std::min(bound, stem.tiers.size()); ++i)
                stem.tiers[i].progress.bound = true;
            const std::vector<BindingStep> steps = bindingSteps(plan, stem);
            EXPECT_EQ(isStillToCut(stem), !steps.empty() && stepNow(stem, steps) == 0);
        }
    }
}

TEST(BindingSteps, StemWithoutAnythingHasNoSteps) {
    Plan plan = test::smallBoard();
    EXPECT_TRUE(bindingSteps(plan, plan.stems[2]).empty());
    plan.stems[2].core = CoreWire{};
    plan.stems[2].core->diameter = millimetres(1);
    EXPECT_FALSE(bindingSteps(plan, plan.stems[2]).empty());
    plan.binding.wraps.clear();
    EXPECT_FALSE(bindingSteps(plan, plan.stems[0]).empty());
}

} // namespace
} // namespace stemwright

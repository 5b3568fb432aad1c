#include "core/document/bench.h"

#include "core/document/bound_tiers.h"
#include "core/document/plan_file.h"
#include "core/figures/binding_steps.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <set>

namespace stemwright {
namespace {

const StemId one{1}, two{2}, three{3};

Plan wrapped() {
    Plan plan = test::smallBoard();
    plan.binding.wraps = {Wrap{}};
    Wrap tape;
    tape.with = WrapWith::tape;
    tape.strands = 1;
    tape.width = millimetres(12);
    plan.binding.wraps.push_back(tape);
    return plan;
}

void make(Plan& plan, const std::optional<Edit>& edit) {
    ASSERT_TRUE(edit);
    ASSERT_TRUE(apply(plan, *edit));
}

std::size_t now(const Plan& plan, StemId id) {
    return stepNow(*find(plan, id), bindingSteps(plan, *find(plan, id)));
}

TEST(Bench, TickingEveryStepBindsTheStem) {
    for (Plan plan : {wrapped(), test::randomBoard(4, 5, 14, 5), test::smallBoard()})
        for (const Stem& stem : std::vector<Stem>(plan.stems)) {
            const std::size_t steps = bindingSteps(plan, stem).size();
            for (std::size_t i = now(plan, stem.id); i < steps; ++i) {
                EXPECT_EQ(now(plan, stem.id), i);
                make(plan, stepDone(plan, stem.id));
            }
            EXPECT_EQ(now(plan, stem.id), steps);
            EXPECT_FALSE(stepDone(plan, stem.id));
            for (const Tier& tier : find(plan, stem.id)->tiers)
                EXPECT_TRUE(tier.progress.bound);
        }
}

TEST(Bench, EveryStepGoesBackAndEveryEditUndoes) {
    Plan plan = wrapped();
    std::vector<Plan> before;
    while (const std::optional<Edit> edit = stepDone(plan, one, 1)) {
        before.push_back(plan);
        const Result<Edit> inverse = apply(plan, *edit);
        ASSERT_TRUE(inverse);
        Plan undone = plan;
        ASSERT_TRUE(apply(undone, inverse.value()));
        EXPECT_EQ(undone, before.back());
    }
    ASSERT_EQ(before.size(), bindingSteps(plan, *find(plan, one)).size());
    for (std::size_t i = before.size(); i-- > 0;) {
        make(plan, stepBack(plan, one));
        EXPECT_EQ(now(plan, one), i);
    }
    EXPECT_FALSE(stepBack(plan, one));
    // What a tier took is not forgotten by going back, and another try adds to it.
    EXPECT_EQ(find(plan, one)->tiers[0].progress.minutes, 1);
}

TEST(Bench, ProgressSurvivesTheFile) {
    Plan plan = wrapped();
    for (int i = 0; i < 4; ++i)
        make(plan, stepDone(plan, one, 2.5));
    const Result<Plan> again = planFromText(planText(plan));
    ASSERT_TRUE(again);
    EXPECT_EQ(again.value(), plan);
    EXPECT_EQ(now(again.value(), one), 4u);
}

TEST(Bench, ATierAddedAtTheBaseReopensTheEnd) {
    Plan plan = wrapped();
    while (const std::optional<Edit> edit = stepDone(plan, one))
        make(plan, edit);
    Tier tier = find(plan, one)->tiers[0];
    tier.progress = {};
    for (Slot& slot : tier.slots)
        slot.leaf.mix = {};
    const auto at = static_cast<int>(find(plan, one)->tiers.size());
    make(plan, Edit(OpenTier{one, at, tier}));
    const std::vector<BindingStep> steps = bindingSteps(plan, *find(plan, one));
    EXPECT_EQ(steps[now(plan, one)].tier, at);
    make(plan, stepDone(plan, one));
    EXPECT_EQ(steps[now(plan, one)].code, BindingStepCode::stake);
}

TEST(Bench, AMeasureOfOneStemSpeaksForTheOthers) {
    Plan plan = wrapped();
    const Figures before = figures(plan);
    const Length took = 1.25 * before.stems[0].wraps[0].used;
    const MeasureTaken calibration = calibrated(plan, one, {took, Length{}});
    EXPECT_TRUE(calibration.unfitted.empty());
    Plan after = plan;
    ASSERT_TRUE(apply(after, calibration.edit));
    const Figures then = figures(after);
    EXPECT_NEAR(inMillimetres(then.stems[0].wraps[0].used), inMillimetres(took), 0.01);
    EXPECT_GT(then.stems[1].wraps[0].used, before.stems[1].wraps[0].used);
    EXPECT_EQ(then.stems[1].wraps[1], before.stems[1].wraps[1]) << "a layer that was not measured stays";
    EXPECT_TRUE(after.binding.wraps[0].overlapMeasured);
    EXPECT_FALSE(after.binding.wraps[1].overlapMeasured);
    EXPECT_EQ(measuredStems(after), std::vector<StemId>{one});
    // A second measure is weighed with the first: the sums agree.
    const Length second = 0.9 * then.stems[1].wraps[0].used;
    ASSERT_TRUE(apply(after, calibrated(after, two, {second}).edit));
    const Figures last = figures(after);
    EXPECT_NEAR(inMillimetres(last.stems[0].wraps[0].used + last.stems[1].wraps[0].used),
                inMillimetres(took + second), 0.01);
}

TEST(Bench, AMeasureThatNoOverlapExplainsChangesNoFigure) {
    Plan plan = wrapped();
    const MeasureTaken calibration = calibrated(plan, one, {millimetres(1)});
    EXPECT_EQ(calibration.unfitted, std::vector<std::size_t>{0});
    Plan after = plan;
    ASSERT_TRUE(apply(after, calibration.edit));
    EXPECT_EQ(after.binding, plan.binding);
    EXPECT_EQ(tookOf(*find(after, one), 0), millimetres(1));
}

TEST(Bench, AMeasureKeepsWhatItDoesNotKnow) {
    Plan plan = wrapped();
    plan.stems[0].took = {{1, millimetres(900), R"({"thread":"old"})"},
                          {0, millimetres(700), R"({"when":"May"})"},
                          {3, millimetres(5), ""}};
    ASSERT_TRUE(apply(plan, calibrated(plan, one, {millimetres(650), millimetres(910)}).edit));
    EXPECT_EQ(plan.stems[0].took, (std::vector<Took>{{1, millimetres(910), R"({"thread":"old"})"},
                                                     {0, millimetres(650), R"({"when":"May"})"},
                                                     {3, millimetres(5), ""}}))
        << "a layer that the binding has no more may come back";
    ASSERT_TRUE(apply(plan, calibrated(plan, one, {millimetres(660)}).edit));
    EXPECT_EQ(tookOf(plan.stems[0], 1), Length{});
    StemForm form;
    for (const std::size_t wrap : {2u, 0u, 1u})
        setTook(form, wrap, millimetres(10));
    EXPECT_EQ(form.took[0].wrap, 0);
    EXPECT_EQ(form.took[2].wrap, 2);
}

class BoundTiers : public ::testing::Test {
protected:
    BoundTiers() {
        for (const int tier : {0, 1})
            EXPECT_TRUE(apply(plan, MarkTier{one, tier, {true, 3, ""}}));
    }
    std::vector<BoundTier> touched(const Edit& edit) {
        after = plan;
        EXPECT_TRUE(apply(after, edit));
        return boundTouched(plan, after);
    }
    Plan plan = test::smallBoard();
    Plan after;
};

TEST_F(BoundTiers, AreTouchedByWhatChangesThem) {
    const auto at = [](int tier) { return BoundTier{one, tier}; };
    const KindId kind = plan.kinds[0].id;
    EXPECT_EQ(touched(FillSlot{{one, 1, 0}, {kind, {}}}), std::vector{at(1)});
    EXPECT_EQ(touched(TurnTier{one, 0, degrees(45)}), std::vector{at(0)});
    EXPECT_EQ(touched(SwapSlots{{one, 0, 0}, {two, 0, 1}}), std::vector{at(0)});
    EXPECT_EQ(touched(CloseTier{one, 0}), (std::vector{at(0), at(1)}));
    EXPECT_EQ(touched(MoveTiers{one, 2, 1, one, 0}), (std::vector{at(0), at(1)}));
    EXPECT_EQ(touched(SpaceTier{one, 0, millimetres(30)}), std::vector{at(0)});
    EXPECT_EQ(touched(Remove<StemId>{one}), std::vector{at(0)});
    StemForm form = *find(plan, one);
    form.spacing = millimetres(19);
    EXPECT_EQ(touched(ReformStem{one, form}), std::vector{at(0)});
}

TEST_F(BoundTiers, AreNotTouchedByTheRest) {
    const KindId kind = plan.kinds[0].id;
    EXPECT_TRUE(touched(FillSlot{{one, 2, 0}, {kind, {}}}).empty());
    EXPECT_TRUE(touched(FillSlot{{two, 0, 0}, {kind, {}}}).empty());
    EXPECT_TRUE(touched(PinSlot{{one, 0, 0}, true}).empty());
    EXPECT_TRUE(touched(SpaceTier{one, 1, millimetres(30)}).empty()) << "below the last bound tier all is open";
    EXPECT_TRUE(touched(CloseTier{one, 2}).empty());
    EXPECT_TRUE(touched(MarkTier{one, 1, {}}).empty());
    EXPECT_TRUE(touched(Move<StemId>{one, 2}).empty());
    StemForm form = *find(plan, one);
    form.name = "another";
    form.tail = millimetres(77);
    EXPECT_TRUE(touched(ReformStem{one, form}).empty());
}

TEST_F(BoundTiers, AreToBeBoundAgainFromTheFirstThatChanged) {
    ASSERT_FALSE(touched(TurnTier{one, 0, degrees(45)}).empty());
    for (const Edit& edit : unbound(plan, after))
        ASSERT_TRUE(apply(after, edit));
    for (const Tier& tier : find(after, one)->tiers)
        EXPECT_FALSE(tier.progress.bound);
    ASSERT_FALSE(touched(FillSlot{{one, 1, 0}, {plan.kinds[0].id, {}}}).empty());
    for (const Edit& edit : unbound(plan, after))
        ASSERT_TRUE(apply(after, edit));
    EXPECT_TRUE(find(after, one)->tiers[0].progress.bound);
    EXPECT_FALSE(find(after, one)->tiers[1].progress.bound);
    // Tiers that were carried to another stem were not bound on that one.
    ASSERT_FALSE(touched(MoveTiers{one, 0, 2, three, 0}).empty());
    for (const Edit& edit : unbound(plan, after))
        ASSERT_TRUE(apply(after, edit));
    for (const Stem& stem : after.stems)
        for (const Tier& tier : stem.tiers)
            EXPECT_FALSE(tier.progress.bound);
}

TEST_F(BoundTiers, AreKnownBeforeTheEditIsMade) {
    const KindId kind = plan.kinds[0].id;
    const Plan before = plan;
    for (const Edit& edit :
         {Edit(FillSlot{{one, 1, 0}, {kind, {}}}), Edit(CloseTier{one, 0}),
          Edit(SwapSlots{{one, 0, 0}, {two, 0, 1}}), Edit(FillSlot{{two, 0, 0}, {kind, {}}})})
        EXPECT_EQ(boundTouched(plan, edit), touched(edit));
    EXPECT_TRUE(boundTouched(plan, Edit(MarkTier{one, 1, {}})).empty()) << "a step of the bench itself";
    EXPECT_TRUE(boundTouched(plan, Edit(CloseTier{one, 99})).empty()) << "what cannot be touches nothing";
    EXPECT_EQ(plan, before);
}

} // namespace
} // namespace stemwright

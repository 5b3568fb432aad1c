#include "core/document/rebinding.h"

#include "core/plan/plan.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

/// Wire within and floss without, each with a price, and a stem that says what it took of both.
Plan twoLayers() {
    Plan plan = test::smallBoard();
    Wrap wire, floss;
    wire.with = WrapWith::wire;
    floss.with = WrapWith::floss;
    floss.overlap = 0.35;
    plan.binding.wraps = {wire, floss};
    plan.buying.wraps = {{0, 1, ""}, {0, 5, "{\"shop\": 2}"}};
    plan.stems[0].took = {{0, millimetres(2400), "{\"when\": 1}"}, {1, millimetres(900), ""}};
    return plan;
}

Plan after(const Plan& plan, const Binding& now, const std::vector<int>& from) {
    Plan changed = plan;
    const auto edit = rebinding(plan, now, from);
    EXPECT_TRUE(edit);
    if (!edit)
        return changed;
    const auto back = apply(changed, *edit);
    EXPECT_TRUE(back);
    EXPECT_FALSE(firstProblem(changed));
    Plan undone = changed;
    EXPECT_TRUE(back && apply(undone, back.value()));
    EXPECT_EQ(undone, plan) << "one undo";
    return changed;
}

TEST(Rebinding, WhatIsKeptOfALayerGoesAwayWithIt) {
    const Plan plan = twoLayers();
    Binding now = plan.binding;
    now.wraps.erase(now.wraps.begin());
    const Plan changed = after(plan, now, {1});
    EXPECT_EQ(changed.buying.wraps, (std::vector<Pack>{plan.buying.wraps[1]}));
    EXPECT_EQ(changed.stems[0].took, (std::vector<Took>{{0, millimetres(900), ""}}));
}

TEST(Rebinding, LayersThatChangePlacesTakeTheirOwnAlong) {
    const Plan plan = twoLayers();
    Binding now = plan.binding;
    std::swap(now.wraps[0], now.wraps[1]);
    const Plan changed = after(plan, now, {1, 0});
    EXPECT_EQ(changed.buying.wraps, (std::vector<Pack>{plan.buying.wraps[1], plan.buying.wraps[0]}));
    EXPECT_EQ(changed.stems[0].took,
              (std::vector<Took>{{0, millimetres(900), ""}, {1, millimetres(2400), "{\"when\": 1}"}}));
}

TEST(Rebinding, ALayerOfAnotherSortBeginsAnew) {
    const Plan plan = twoLayers();
    Binding now = plan.binding;
    now.wraps[0].with = WrapWith::tape;
    const Plan changed = after(plan, now, {0, 1});
    EXPECT_EQ(changed.buying.wraps[0], Pack{});
    EXPECT_EQ(changed.buying.wraps[1], plan.buying.wraps[1]);
    EXPECT_EQ(changed.stems[0].took, (std::vector<Took>{{1, millimetres(900), ""}}));
}

TEST(Rebinding, ALayerWithinTheOthersMovesThemOutward) {
    const Plan plan = twoLayers();
    Binding now = plan.binding;
    now.wraps.insert(now.wraps.begin(), Wrap{});
    const Plan changed = after(plan, now, {-1, 0, 1});
    ASSERT_EQ(changed.buying.wraps.size(), 3u);
    EXPECT_EQ(changed.buying.wraps[0], Pack{});
    EXPECT_EQ(changed.buying.wraps[2], plan.buying.wraps[1]);
    EXPECT_EQ(changed.stems[0].took[0].wrap, 1);
    EXPECT_EQ(changed.stems[0].took[1].wrap, 2);
}

TEST(Rebinding, TheSameBindingIsNoEdit) {
    const Plan plan = twoLayers();
    EXPECT_FALSE(rebinding(plan, plan.binding, {0, 1}));
    Binding wider = plan.binding;
    wider.wraps[1].overlap = 0.5;
    const auto edit = rebinding(plan, wider, {0, 1});
    ASSERT_TRUE(edit);
    EXPECT_TRUE(std::holds_alternative<Set<Binding>>(edit->what)) << "and nothing else with it";
}

} // namespace
} // namespace stemwright

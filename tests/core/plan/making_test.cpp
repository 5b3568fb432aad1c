#include "core/plan/making.h"

#include "core/figures/figures.h"
#include "core/figures/supplies.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <numeric>
#include <utility>

namespace stemwright {
namespace {

/// A board whose leaves are all still to make.
Plan allToMake() {
    Plan plan = test::smallBoard();
    for (Kind& kind : plan.kinds)
        for (StockLine& line : kind.stock)
            line.toMake += std::exchange(line.made, 0);
    return plan;
}

int sum(const std::vector<int>& lines) {
    return std::accumulate(lines.begin(), lines.end(), 0);
}

TEST(Making, ABoundLeafHasBeenMade) {
    Plan plan = allToMake();
    const int all = sum(stillToMake(plan));
    Tier& first = plan.stems[0].tiers[0];
    first.progress.bound = true;
    int leaves = 0;
    for (const Slot& slot : first.slots)
        leaves += slot.filled();
    ASSERT_GT(leaves, 0);
    EXPECT_EQ(sum(stillToMake(plan)), all - leaves);
    const Figures figured = figures(plan);
    EXPECT_EQ(figured.pot.toMake, all - leaves);
    EXPECT_EQ(supplies(plan, figured).leavesToMake, all - leaves);
    EXPECT_EQ(figured.pot.inTray, figures(allToMake()).pot.inTray) << "no leaf is made or lost by it";
}

TEST(Making, MadeLeavesAreBoundFirst) {
    Plan plan = allToMake();
    Tier& first = plan.stems[0].tiers[0];
    first.progress.bound = true;
    const Leaf leaf = first.slots[0].leaf;
    int bound = 0;
    for (const Slot& slot : first.slots)
        bound += slot.leaf == leaf;
    std::size_t at = 0;
    for (Kind& kind : plan.kinds)
        for (StockLine& line : kind.stock) {
            if (kind.id == leaf.kind && line.mix == leaf.mix) {
                const int total = line.total();
                line.made = bound;
                line.toMake = total - bound;
                EXPECT_EQ(stillToMake(plan)[at], total - bound) << "the bound ones are the made ones";
                line.made = 0;
                line.toMake = 0;
                EXPECT_EQ(stillToMake(plan)[at], 0) << "never below none";
            }
            ++at;
        }
}

} // namespace
} // namespace stemwright

// Figures of boards of a tenth, one and ten times the large board's stems, to show that they grow with the
// leaves, and what an edit would do to the large one.
#include "core/figures/findings.h"
#include "tests/support/boards.h"

#include <benchmark/benchmark.h>

namespace stemwright {
namespace {

void allFigures(benchmark::State& state) {
    const Plan plan = test::largeBoard(static_cast<int>(state.range(0)), 40);
    for (auto _ : state)
        benchmark::DoNotOptimize(figures(plan));
    state.SetItemsProcessed(state.iterations() * state.range(0) * 40);
}
BENCHMARK(allFigures)->Arg(20)->Arg(200)->Arg(2000)->Unit(benchmark::kMicrosecond);

void allFindings(benchmark::State& state) {
    const Plan plan = test::largeBoard(static_cast<int>(state.range(0)), 40);
    const Figures all = figures(plan);
    for (auto _ : state)
        benchmark::DoNotOptimize(findings(plan, all));
    state.SetItemsProcessed(state.iterations() * state.range(0) * 40);
}
BENCHMARK(allFindings)->Arg(20)->Arg(200)->Arg(2000)->Unit(benchmark::kMicrosecond);

/// Where the dragged leaf hovers: another slot each time, so that nothing is asked twice in a row.
template <class EditAt> void whatIf(benchmark::State& state, EditAt editAt) {
    Reckoner reckoner(test::largeBoard());
    int i = 0;
    for (auto _ : state) {
        const auto what = reckoner.whatIf(editAt(reckoner.plan(), i++));
        if (!what)
            return state.SkipWithError("the edit cannot be made");
        benchmark::DoNotOptimize(what.value());
    }
}

SlotRef slotOf(const Plan& plan, int i) {
    return {plan.stems[static_cast<std::size_t>(1 + i % 199)].id, i % 20, i % 2};
}

void whatIfSwap(benchmark::State& state) {
    whatIf(state, [](const Plan& plan, int i) { return SwapSlots{{plan.stems[0].id, 3, 0}, slotOf(plan, i)}; });
}
BENCHMARK(whatIfSwap)->Unit(benchmark::kMicrosecond);

void whatIfMoveTier(benchmark::State& state) {
    whatIf(state, [](const Plan& plan, int i) {
        return MoveTiers{plan.stems[0].id, 3, 1, slotOf(plan, i).stem, i % 20};
    });
}
BENCHMARK(whatIfMoveTier)->Unit(benchmark::kMicrosecond);

/// The pot's beads change, so every stem's drift does.
void whatIfToTray(benchmark::State& state) {
    whatIf(state, [](const Plan& plan, int i) {
        const SlotRef at = slotOf(plan, i);
        return FillSlot{at, {find(plan, at)->leaf.kind, MixId{}}};
    });
}
BENCHMARK(whatIfToTray)->Unit(benchmark::kMicrosecond);

/// A leaf into a gap: taken out of its slot and put into a new tier.
void whatIfIntoGap(benchmark::State& state) {
    whatIf(state, [](const Plan& plan, int i) {
        const SlotRef from{plan.stems[0].id, 3, 0};
        const Leaf leaf = find(plan, from)->leaf;
        const SlotRef to = slotOf(plan, i);
        const Stem& stem = *find(plan, to.stem);
        Tier tier = newTier(stem, &stem.tiers[static_cast<std::size_t>(to.tier)], leaf.kind);
        tier.slots[0].leaf = leaf;
        return Batch{Deed::moveLeaf, {FillSlot{from, {leaf.kind, MixId{}}}, OpenTier{to.stem, to.tier, tier}}};
    });
}
BENCHMARK(whatIfIntoGap)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace stemwright

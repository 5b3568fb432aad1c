// What the window asks of the suggestions after every edit, and how the heights grow with the stems.
#include "core/figures/findings.h"
#include "core/suggest/start.h"
#include "tests/support/boards.h"

#if __has_include(<QApplication>)
#include "app/best_standing.h"
#endif

#include <benchmark/benchmark.h>

namespace stemwright {
namespace {

#if __has_include(<QApplication>)
/// The status line's best, drift and all: a frame is 16.7 ms, and up to BestStanding::atOnce places it is
/// worked out within one.
void bestStanding(benchmark::State& state) {
    const Plan plan = test::largeBoard(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
    for (auto _ : state)
        benchmark::DoNotOptimize(bestOf(plan));
}
BENCHMARK(bestStanding)->Args({12, 24})->Args({25, 24})->Args({200, 40})->Unit(benchmark::kMillisecond);
#endif

/// A stock for so many stems of 12 to 24 small and 4 to 12 broad leaves.
Plan bareBoard(int stems) {
    Plan plan = test::randomBoard(1, stems, 0, 6, 2);
    const int leaves[] = {18, 8};
    for (std::size_t k = 0; k < 2; ++k)
        for (StockLine& line : plan.kinds[k].stock)
            line.made = leaves[k] * stems / 6, line.toMake = 0;
    return plan;
}

void heightsGrowth(benchmark::State& state) {
    const Plan plan = bareBoard(static_cast<int>(state.range(0)));
    HeightsOptions options;
    options.ranges = {{KindId{1}, 12, 24, {}}, {KindId{2}, 4, 12, {}}};
    for (auto _ : state)
        benchmark::DoNotOptimize(heights(plan, options));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(heightsGrowth)->RangeMultiplier(10)->Range(10, 1000)->Unit(benchmark::kMicrosecond)->Complexity();

/// With a difference that the even steps cannot keep, all ways to keep it are looked at.
void heightsKeptApart(benchmark::State& state) {
    const Plan plan = bareBoard(static_cast<int>(state.range(0)));
    HeightsOptions options;
    options.ranges = {{KindId{1}, 12, 24, {}}, {KindId{2}, 4, 12, {}}};
    options.difference = millimetres(12);
    bool proved = true;
    for (auto _ : state)
        proved &= heights(plan, options).value().proved;
    state.counters["proved"] = proved;
}
BENCHMARK(heightsKeptApart)->Arg(6)->Arg(9)->Arg(12)->Arg(30)->Unit(benchmark::kMillisecond);

void startAUsualBoard(benchmark::State& state) {
    Plan plan = bareBoard(12);
    plan.stems.clear();
    StartOptions options;
    options.stems = 12;
    options.heights.ranges = usualRanges(plan, 12);
    bool proved = true;
    for (auto _ : state)
        proved &= startMeOff(plan, options).value().proved;
    state.counters["proved"] = proved;
}
BENCHMARK(startAUsualBoard)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace stemwright

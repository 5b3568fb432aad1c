// Sharing out beside general solvers on the same instances in the same run: an even spread beside LEMON's
// network simplex, matched pairs beside GLPK's integer programs. Costs are compared as well; a difference stops
// the run.
#include "core/figures/best_swap.h"
#include "core/suggest/spread.h"
#include "tests/outside/sharing_oracles.h"
#include "tests/support/boards.h"

#include <benchmark/benchmark.h>

#include <chrono>
#include <random>

namespace stemwright {
namespace {

/// A full board of one kind, its stems of unlike length.
Plan fullBoard(std::uint32_t seed, int stems, int leaves, int mixes) {
    Plan plan = test::randomBoard(seed, stems, leaves, mixes, 1);
    std::mt19937 random(seed + 1);
    for (Stem& stem : plan.stems) {
        stem.tiers.resize(stem.tiers.size() - random() % (stem.tiers.size() / 3 + 1));
        for (Tier& tier : stem.tiers)
            for (Slot& slot : tier.slots) {
                slot.pinned = false;
                if (!slot.filled())
                    slot.leaf.mix =
                        MixId{static_cast<std::uint32_t>(random() % static_cast<unsigned>(mixes)) + 1};
            }
    }
    for (StockLine& line : plan.kinds[0].stock) {
        line.made = placed(plan, {KindId{1}, line.mix});
        line.toMake = 0;
    }
    return plan;
}

std::vector<int> placedOf(const Plan& plan) {
    std::vector<int> counts;
    for (const TrayLine& line : tray(plan))
        counts.push_back(line.placed);
    return counts;
}

SpreadOptions withTheseLeaves(bool matchedPairs) {
    SpreadOptions options;
    options.matchedPairs = matchedPairs;
    options.trayUse = TrayUse::keep;
    return options;
}

/// From the plan to the edits and all figures.
void evenSpread(benchmark::State& state) {
    const Plan plan = fullBoard(3, static_cast<int>(state.range(0)), 24, static_cast<int>(state.range(1)));
    for (auto _ : state)
        benchmark::DoNotOptimize(spread(plan, withTheseLeaves(false)));
}
/// From the plan to the least unevenness, as the network simplex gives it.
void evenLeast(benchmark::State& state) {
    const Plan plan = fullBoard(3, static_cast<int>(state.range(0)), 24, static_cast<int>(state.range(1)));
    for (auto _ : state)
        benchmark::DoNotOptimize(leastUnevenness(plan, TrayUse::keep));
}
void evenNetworkSimplex(benchmark::State& state) {
    const Plan plan = fullBoard(3, static_cast<int>(state.range(0)), 24, static_cast<int>(state.range(1)));
    const double found = leastUnevenness(plan, TrayUse::keep).found;
    for (auto _ : state) {
        const outside::Sharing sharing = outside::sharingOf(plan, plan.kinds[0]);
        const auto least = outside::leastByNetworkSimplex(sharing, placedOf(plan));
        const double all = sharing.total;
        if (!least || std::abs(static_cast<double>(*least) / all / all - found) > 1e-6)
            state.SkipWithError("the costs differ");
    }
}
#define SIZES Args({12, 6})->Args({30, 12})->Args({200, 12})->Unit(benchmark::kMicrosecond)
BENCHMARK(evenSpread)->SIZES;
BENCHMARK(evenLeast)->SIZES;
BENCHMARK(evenNetworkSimplex)->SIZES;

void evenLeastGrowth(benchmark::State& state) {
    const Plan plan = fullBoard(3, static_cast<int>(state.range(0)), 24, 12);
    for (auto _ : state)
        benchmark::DoNotOptimize(leastUnevenness(plan, TrayUse::keep));
    state.SetComplexityN(state.range(0));
}
BENCHMARK(evenLeastGrowth)->RangeMultiplier(10)->Range(10, 1000)->Unit(benchmark::kMicrosecond)->Complexity();

/// Fifty plans of 9 stems and 6 mixes. The program is given a second for each of its two wishes, so that the
/// ratio is at least what is shown where it gives up.
void matchedPairs(benchmark::State& state) {
    using Clock = std::chrono::steady_clock;
    const auto milliseconds = [](Clock::duration d) {
        return std::chrono::duration<double, std::milli>(d).count();
    };
    for (auto _ : state) {
        std::vector<double> ratios;
        int gaveUp = 0, proved = 0;
        for (std::uint32_t seed = 0; seed < 50; ++seed) {
            const Plan plan = fullBoard(seed, 9, 16, 6);
            auto start = Clock::now();
            const Suggestion ours = spread(plan, withTheseLeaves(true)).value();
            const double own = milliseconds(Clock::now() - start);
            start = Clock::now();
            const outside::Sharing sharing = outside::sharingOf(plan, plan.kinds[0]);
            const std::vector<int> placed = placedOf(plan);
            const auto least = outside::SharingProgram(sharing, true).solve(&placed, 1000);
            ratios.push_back(milliseconds(Clock::now() - start) / own);
            gaveUp += !least;
            proved += ours.proved;
            if (least && ours.proved &&
                (least->unmatched != ours.unmatchedAfter || std::abs(least->unevenness - ours.after) > 1e-6))
                state.SkipWithError("the answers differ");
        }
        std::sort(ratios.begin(), ratios.end());
        state.counters["medianRatio"] = ratios[ratios.size() / 2];
        state.counters["leastRatio"] = ratios.front();
        state.counters["programGaveUp"] = gaveUp;
        state.counters["weProved"] = proved;
    }
}
BENCHMARK(matchedPairs)->Iterations(1)->Unit(benchmark::kMillisecond);

void bestSwapOnALargeBoard(benchmark::State& state) {
    const Plan plan = test::largeBoard();
    for (auto _ : state)
        benchmark::DoNotOptimize(bestSwap(plan));
}
BENCHMARK(bestSwapOnALargeBoard)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace stemwright

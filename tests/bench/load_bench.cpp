// Loading a plan beside the JSON library's own parse of the same text, turn by turn in one run, so that what
// else the machine does weighs on both. `load/parse` is to stay at or below 2 for a large board (200 stems of
// 40).
#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <benchmark/benchmark.h>
#include <nlohmann/json.hpp>

#include <chrono>

namespace stemwright {
namespace {

using Clock = std::chrono::steady_clock;

void load(benchmark::State& state) {
    const std::string text = planText(test::largeBoard(static_cast<int>(state.range(0)), 40));
    Clock::duration loading{}, parsing{};
    for (auto _ : state) {
        const auto start = Clock::now();
        const Result<Plan> plan = planFromText(text);
        const auto between = Clock::now();
        const nlohmann::json json = nlohmann::json::parse(text);
        const auto end = Clock::now();
        if (!plan || json.empty())
            return state.SkipWithError("the text is no plan");
        loading += between - start;
        parsing += end - between;
        state.SetIterationTime(std::chrono::duration<double>(between - start).count());
    }
    state.counters["load/parse"] = static_cast<double>(loading.count()) / static_cast<double>(parsing.count());
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK(load)->Arg(20)->Arg(200)->Arg(2000)->UseManualTime()->Unit(benchmark::kMicrosecond);

void save(benchmark::State& state) {
    const Plan plan = test::largeBoard(static_cast<int>(state.range(0)), 40);
    std::size_t size = 0;
    for (auto _ : state)
        size = planText(plan).size();
    state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(size));
}
BENCHMARK(save)->Arg(20)->Arg(200)->Arg(2000)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace stemwright

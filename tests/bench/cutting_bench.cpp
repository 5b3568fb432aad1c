// The cutting plan of 200 pieces of 12 lengths, beside a general integer program solver on the same problem:
// the solver gets the same patterns' whole list where that can be listed at all, and so has an easy start.
#include "core/figures/cutting_plan.h"

#include <benchmark/benchmark.h>
#include <glpk.h>

#include <random>
#include <vector>

namespace stemwright {
namespace {

struct Job {
    std::vector<CutPiece> pieces;
    std::vector<Length> bars{millimetres(600)};
};

/// Of lengths from 90 to 310 mm: two to six in a bar, as stakes and cores are.
Job jobOf(std::uint32_t seed) {
    std::mt19937 random(seed);
    Job job;
    int left = 200;
    for (int kind = 0; kind < 12; ++kind) {
        const int mean = left / (12 - kind);
        const int count =
            kind == 11 ? left : 1 + static_cast<int>(random() % static_cast<std::uint32_t>(2 * mean - 1));
        left -= count;
        job.pieces.push_back({millimetres(90.0 + static_cast<double>(random() % 221)), count});
    }
    return job;
}

void cuttingPlanExact(benchmark::State& state) {
    std::uint32_t seed = 0;
    int unproved = 0;
    for (auto _ : state) {
        state.PauseTiming();
        const Job job = jobOf(seed++ % 20);
        state.ResumeTiming();
        const CuttingPlan plan = cuttingPlan(job.pieces, job.bars);
        unproved += !plan.proved;
    }
    state.counters["unproved"] = unproved;
}
BENCHMARK(cuttingPlanExact)->Unit(benchmark::kMillisecond);

void listPatterns(const Job& job, std::size_t at, double room, std::vector<int>& now,
                  std::vector<std::vector<int>>& patterns) {
    if (at == job.pieces.size()) {
        for (std::size_t i = 0; i < now.size(); ++i)
            if (now[i] < job.pieces[i].count && inMillimetres(job.pieces[i].length) <= room)
                return; // another way has more in it
        patterns.push_back(now);
        return;
    }
    const double length = inMillimetres(job.pieces[at].length);
    for (int count = 0; count <= job.pieces[at].count && count * length <= room; ++count) {
        now[at] = count;
        listPatterns(job, at + 1, room - count * length, now, patterns);
    }
    now[at] = 0;
}

void cuttingPlanByIntegerProgram(benchmark::State& state) {
    std::uint32_t seed = 0;
    int unproved = 0;
    for (auto _ : state) {
        const Job job = jobOf(seed++ % 20);
        std::vector<std::vector<int>> patterns;
        std::vector<int> now(job.pieces.size(), 0);
        listPatterns(job, 0, inMillimetres(job.bars[0]), now, patterns);
        glp_prob* problem = glp_create_prob();
        glp_set_obj_dir(problem, GLP_MIN);
        glp_add_rows(problem, static_cast<int>(job.pieces.size()));
        for (std::size_t i = 0; i < job.pieces.size(); ++i)
            glp_set_row_bnds(problem, static_cast<int>(i) + 1, GLP_LO, job.pieces[i].count, 0);
        glp_add_cols(problem, static_cast<int>(patterns.size()));
        for (std::size_t c = 0; c < patterns.size(); ++c) {
            std::vector<int> index{0};
            std::vector<double> value{0};
            for (std::size_t i = 0; i < patterns[c].size(); ++i)
                if (patterns[c][i] > 0) {
                    index.push_back(static_cast<int>(i) + 1);
                    value.push_back(patterns[c][i]);
                }
            const int column = static_cast<int>(c) + 1;
            glp_set_col_kind(problem, column, GLP_IV);
            glp_set_col_bnds(problem, column, GLP_LO, 0, 0);
            glp_set_obj_coef(problem, column, 1);
            glp_set_mat_col(problem, column, static_cast<int>(index.size()) - 1, index.data(), value.data());
        }
        glp_iocp settings;
        glp_init_iocp(&settings);
        settings.msg_lev = GLP_MSG_OFF;
        settings.presolve = GLP_ON;
        settings.tm_lim = 2'000; // it is not waited for longer
        unproved += glp_intopt(problem, &settings) != 0;
        glp_delete_prob(problem);
    }
    state.counters["unproved"] = unproved;
}
BENCHMARK(cuttingPlanByIntegerProgram)->Unit(benchmark::kMillisecond)->Iterations(20);

} // namespace
} // namespace stemwright

// The plant in the round: what a frame of turning costs beside filling the same outlines once, and how it
// grows.
#include "core/figures/panes.h"
#include "core/figures/sight.h"
#include "core/figures/touching.h"
#include "core/suggest/pot_placing.h"
#include "tests/support/boards.h"

#include <benchmark/benchmark.h>

#if __has_include(<QGuiApplication>)
#include "app/pot/plant_render.h"

#include <QPainter>

#include <algorithm>
#include <chrono>
#define STEMWRIGHT_BENCH_APP
#endif

namespace stemwright {
namespace {

Plan potOf(int stems) {
    Plan plan = test::largeBoard(stems, 24);
    plan.pot.topDiameter = millimetres(300);
    return plan;
}

void BM_DepthOrder(benchmark::State& state) {
    const PlantBody plant = plantBody(potOf(static_cast<int>(state.range(0))));
    const View view(degrees(30), degrees(15));
    for (auto _ : state)
        benchmark::DoNotOptimize(backToFront(panesOf(plant, view)));
}
BENCHMARK(BM_DepthOrder)->Arg(10)->Arg(30)->Unit(benchmark::kMillisecond);

void BM_Sight(benchmark::State& state) {
    const Plan plan = potOf(static_cast<int>(state.range(0)));
    const PlantBody plant = plantBody(plan);
    for (auto _ : state)
        benchmark::DoNotOptimize(sightOf(plan, plant, View(degrees(30), degrees(15))));
}
BENCHMARK(BM_Sight)->Arg(10)->Arg(30)->Arg(100)->Unit(benchmark::kMillisecond);

void BM_Touching(benchmark::State& state) {
    const PlantBody plant = plantBody(potOf(static_cast<int>(state.range(0))));
    for (auto _ : state)
        benchmark::DoNotOptimize(touchingLeaves(plant));
}
BENCHMARK(BM_Touching)->Arg(10)->Arg(30)->Arg(100)->Unit(benchmark::kMillisecond);

void BM_PlaceInPot(benchmark::State& state) {
    const Plan plan = potOf(static_cast<int>(state.range(0)));
    Suggestion found;
    for (auto _ : state)
        found = placeInPot(plan);
    state.counters["proved"] = found.proved;
    state.counters["over_bound"] = found.bound > 0 ? found.after / found.bound : 0;
}
BENCHMARK(BM_PlaceInPot)->Arg(9)->Arg(30)->Unit(benchmark::kMillisecond);

#ifdef STEMWRIGHT_BENCH_APP

PlantPicture at(const PlantScene& scene, double turn, PlantDetail detail) {
    PlantPicture picture;
    picture.view = View(degrees(turn), degrees(15));
    picture.size = {1200, 800};
    picture.framing = framed(scene, picture.view.tilt(), picture.size);
    picture.detail = detail;
    return picture;
}

/// A frame in motion, turned a little each time, and the same leaves' outlines filled once by QPainter; the
/// 99th percentile of the frames and the ratio of the means.
void BM_TurnFrame(benchmark::State& state) {
    using Clock = std::chrono::steady_clock;
    const PlantScene scene(potOf(static_cast<int>(state.range(0))));
    std::vector<double> frames;
    double outlines = 0;
    LeafTextures textures;
    double turn = 0;
    for (auto _ : state) {
        turn += 3;
        const auto start = Clock::now();
        PlantPicture picture = at(scene, turn, PlantDetail::moving);
        picture.textures = &textures;
        picture.fineness = static_cast<int>(state.range(1));
        benchmark::DoNotOptimize(renderPlant(scene, picture));
        frames.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());

        state.PauseTiming();
        QImage image(picture.size, QImage::Format_ARGB32_Premultiplied);
        const auto from = Clock::now();
        image.fill(Qt::transparent);
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        painter.setBrush(Qt::darkGreen);
        for (const Pane& pane : panesOf(scene.body, picture.view)) {
            QPolygonF outline;
            for (const SeenPoint& p : pane.corners)
                outline << picture.framing.onPicture(p);
            painter.drawPolygon(outline);
        }
        painter.end();
        outlines += std::chrono::duration<double, std::milli>(Clock::now() - from).count();
        state.ResumeTiming();
    }
    std::sort(frames.begin(), frames.end());
    double sum = 0;
    for (const double frame : frames)
        sum += frame;
    state.counters["p50_ms"] = frames[frames.size() / 2];
    state.counters["p99_ms"] = frames[std::min(frames.size() - 1, frames.size() * 99 / 100)];
    state.counters["over_outlines"] = sum / outlines;
}
BENCHMARK(BM_TurnFrame)
    ->ArgNames({"stems", "fineness"})
    ->ArgsProduct({{10, 30, 100}, {1, 2}})
    ->Iterations(200)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

/// What each movement of a dragged stem or tip costs before its frame.
void BM_SceneAnew(benchmark::State& state) {
    const Plan plan = potOf(static_cast<int>(state.range(0)));
    for (auto _ : state)
        benchmark::DoNotOptimize(PlantScene(plan));
}
BENCHMARK(BM_SceneAnew)->Arg(10)->Arg(30)->Arg(100)->Unit(benchmark::kMillisecond);

void BM_FullPicture(benchmark::State& state) {
    const PlantScene scene(potOf(static_cast<int>(state.range(0))));
    double turn = 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(renderPlant(scene, at(scene, turn += 7, PlantDetail::full)));
}
BENCHMARK(BM_FullPicture)->Arg(10)->Arg(30)->Arg(100)->UseRealTime()->Unit(benchmark::kMillisecond);

#endif

} // namespace
} // namespace stemwright

// A drag over the large board, from the mouse's move to the painted what-if, beside painting the same window
// whole. Without a screen: what the graphics card takes is not in it.
#if __has_include(<QApplication>)

#include "app/board/board_view.h"
#include "app/look.h"
#include "tests/support/boards.h"

#include <QApplication>
#include <QMouseEvent>

#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>

namespace stemwright {
namespace {

/// Sees whether anything was painted.
class PaintCount : public QObject {
public:
    int paints = 0;
    bool eventFilter(QObject*, QEvent* event) override {
        paints += event->type() == QEvent::Paint;
        return false;
    }
};

struct LargeBoard {
    LargeBoard() : session(test::largeBoard(200, 40)), board(session) {
        board.resize(1620, 960);
        board.show();
        board.installEventFilter(&count);
        QApplication::processEvents();
    }

    void mouse(QEvent::Type type, QPoint at) {
        QMouseEvent event(type, QPointF(at), QPointF(board.mapToGlobal(at)),
                          type == QEvent::MouseMove ? Qt::NoButton : Qt::LeftButton, Qt::LeftButton, {});
        QApplication::sendEvent(&board, &event);
    }
    /// Slots that are in sight, in an order that leaps about.
    std::vector<QPoint> goals() const {
        std::vector<QPoint> all;
        for (std::size_t t = 0; t < 8; ++t)
            for (std::size_t s = 1; s < 12; ++s)
                all.push_back(
                    board.rectOf(Place::of(SlotRef{session.plan().stems[s].id, static_cast<int>(t), 0}))
                        .center());
        std::vector<QPoint> order;
        for (std::size_t i = 0; i < all.size(); ++i)
            order.push_back(all[i * 37 % all.size()]);
        return order;
    }

    Session session;
    BoardView board;
    PaintCount count;
};

/// `wholeTier` drags a tier into gaps, so that tiers below turn again on both stems; otherwise a leaf over
/// leaves.
void dragMove(benchmark::State& state, bool wholeTier) {
    LargeBoard large;
    const StemId first = large.session.plan().stems[0].id;
    QPoint from = large.board.rectOf(Place::of(SlotRef{first, 3, 0})).center();
    const QRect band = large.board.rectOf(Place::ofTier(first, 3));
    if (wholeTier)
        from = QPoint(band.left() + 6, band.center().y());
    std::vector<QPoint> goals = large.goals();
    if (wholeTier)
        for (QPoint& goal : goals) {
            const Place over = large.board.placeAt(goal);
            goal = large.board.rectOf(Place::ofGap(over.stem, over.tier)).center();
        }
    large.mouse(QEvent::MouseButtonPress, from);
    large.mouse(QEvent::MouseMove, from + QPoint(20, 0));
    QApplication::processEvents();
    if (!large.board.holding())
        return state.SkipWithError("nothing is held");
    std::vector<double> times;
    std::size_t next = 0;
    for (auto _ : state) {
        const int before = large.count.paints;
        const auto start = std::chrono::steady_clock::now();
        large.mouse(QEvent::MouseMove, goals[next++ % goals.size()]);
        QApplication::processEvents();
        times.push_back(
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
        if (large.count.paints == before || large.board.whatIfText().isEmpty())
            return state.SkipWithError("no what-if was painted");
    }
    std::sort(times.begin(), times.end());
    state.counters["p50_ms"] = times[times.size() / 2];
    state.counters["p99_ms"] = times[times.size() * 99 / 100];
}
BENCHMARK_CAPTURE(dragMove, leaf, false)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(dragMove, tier, true)->Unit(benchmark::kMillisecond);

/// The same window painted whole, leaves, names, cards and tray.
void paintWholeWindow(benchmark::State& state) {
    LargeBoard large;
    for (auto _ : state) {
        large.board.setCodesShown(false); // spoils what is kept
        large.board.repaint();
    }
}
BENCHMARK(paintWholeWindow)->Unit(benchmark::kMillisecond);

/// An edit made on the board and everything of it shown again.
void dropAndShow(benchmark::State& state) {
    LargeBoard large;
    const auto& stems = large.session.plan().stems;
    for (auto _ : state) {
        large.board.make(Edit(SwapSlots{{stems[1].id, 2, 0}, {stems[3].id, 4, 1}}));
        QApplication::processEvents();
    }
}
BENCHMARK(dropAndShow)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace stemwright

#endif

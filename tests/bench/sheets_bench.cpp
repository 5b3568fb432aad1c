// Thirty mats as PDF beside the same primitives painted straight into a PDF writer, and the first page of the
// preview of the example of thirty stems, which must be there within 100 ms. The comparison is the ratio of the
// two PDFs: at most 2.
#if __has_include(<QApplication>)

#include "app/sheet_painter.h"
#include "app/sheet_words.h"
#include "core/document/examples.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"

#include <benchmark/benchmark.h>

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QPicture>
#include <QTemporaryDir>

namespace stemwright {
namespace {

Plan thirtyStems() {
    return test::largeBoard(30, 24);
}

SheetOptions matsOnly() {
    SheetOptions options;
    options.only = {SheetPage::mats};
    return options;
}

/// Laying out, painting and writing: all that a maker waits for.
void matsAsPdf(benchmark::State& state) {
    const Plan plan = thirtyStems();
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("mats.pdf"));
    for (auto _ : state)
        if (QString why; !writePdf(plan, matsOnly(), file, &why))
            return state.SkipWithError(qPrintable(why));
}
BENCHMARK(matsAsPdf)->Unit(benchmark::kMillisecond);

/// The same strokes, fills and texts, recorded beforehand, into the same writer.
void samePrimitivesStraight(benchmark::State& state) {
    const Plan plan = thirtyStems();
    const std::vector<Page> pages = pagesOf(plan, figures(plan), matsOnly());
    std::vector<QPicture> recorded(pages.size());
    for (std::size_t i = 0; i < pages.size(); ++i) {
        QPainter painter(&recorded[i]);
        paintPage(painter, pages[i], plan, sheetUnits, false);
    }
    QTemporaryDir folder;
    for (auto _ : state) {
        QPdfWriter pdf(folder.filePath(QStringLiteral("straight.pdf")));
        pdf.setResolution(2540);
        pdf.setPageMargins(QMarginsF());
        QPainter painter(&pdf);
        for (std::size_t i = 0; i < recorded.size(); ++i) {
            if (i > 0)
                pdf.newPage();
            recorded[i].play(&painter);
        }
    }
}
BENCHMARK(samePrimitivesStraight)->Unit(benchmark::kMillisecond);

/// From the plan to the first page as a picture of the usual size.
void firstPageOfPreview(benchmark::State& state) {
    const Plan plan = example("hedge");
    const Figures all = figures(plan);
    for (auto _ : state) {
        const std::vector<Page> pages = pagesOf(plan, all, {});
        benchmark::DoNotOptimize(pagePicture(pages.front(), plan, 3.8, false));
    }
}
BENCHMARK(firstPageOfPreview)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace stemwright

#endif

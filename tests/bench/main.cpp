#include <benchmark/benchmark.h>

// The core's benchmarks are also built where there is no Qt.
#if __has_include("app/look.h") && __has_include(<QApplication>)
#include "app/look.h"

#include <QApplication>
#endif

int main(int argc, char** argv) {
#if __has_include("app/look.h") && __has_include(<QApplication>)
    // Painting needs an application, no screen; it lives until after the last benchmark, and no longer.
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    stemwright::look::apply();
#endif
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv))
        return 1;
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    return 0;
}

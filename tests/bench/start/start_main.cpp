// Cold start: a process of its own from exec to its first painted window, the board beside a main window that
// holds one label. The two take turns, so that a machine that slows down slows both.
#include "app/board/board_view.h"
#include "app/look.h"
#include "app/main_window.h"
#include "core/document/examples.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QLabel>
#include <QProcess>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <vector>

namespace {

using namespace stemwright;

/// Ends the process when `seen` has been painted for the first time: taking a window down again is no part of
/// starting, and what is made after the first picture is not waited for.
class EndWhenPainted : public QObject {
public:
    explicit EndWhenPainted(QWidget& seen) { seen.installEventFilter(this); }

    bool eventFilter(QObject*, QEvent* event) override {
        // What is posted here comes after the picture has gone to the screen.
        if (event->type() == QEvent::Paint)
            QMetaObject::invokeMethod(
                this, [] { std::_Exit(0); }, Qt::QueuedConnection);
        return false;
    }
};

int paintOnce(QWidget& window, QWidget& seen) {
    EndWhenPainted end(seen);
    window.show();
    return QApplication::exec();
}

double runOnce(const QString& program, const QString& mode) {
    QProcess process;
    QElapsedTimer timer;
    timer.start();
    process.start(program, {mode});
    process.waitForFinished(-1);
    return process.exitCode() == 0 ? static_cast<double>(timer.nsecsElapsed()) / 1e6 : -1;
}

double middle(std::vector<double> values) {
    std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2),
                     values.end());
    return values[values.size() / 2];
}

} // namespace

int main(int argc, char** argv) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("stemwright-start"));
    const QStringList arguments = QApplication::arguments();
    if (arguments.value(1) == QLatin1String("label")) {
        QMainWindow window;
        auto* label = new QLabel(QStringLiteral("A label"), &window);
        window.setCentralWidget(label);
        window.resize(1440, 900);
        return paintOnce(window, *label);
    }
    if (arguments.value(1) == QLatin1String("board")) {
        look::apply();
        MainWindow window(example(usualExample()));
        return paintOnce(window, *window.findChild<BoardView*>());
    }
    constexpr int runs = 21;
    std::vector<double> label, board, ratio;
    for (int i = -2; i < runs; ++i) {
        const double l = runOnce(arguments[0], QStringLiteral("label"));
        const double b = runOnce(arguments[0], QStringLiteral("board"));
        if (l < 0 || b < 0)
            return 1;
        if (i < 0)
            continue; // the first ones fill the caches
        label.push_back(l);
        board.push_back(b);
        ratio.push_back(b / l);
    }
    std::printf("cold start, median of %d: one label %.0f ms, board %.0f ms, ratio pair by pair %.2f\n", runs,
                middle(label), middle(board), middle(ratio));
    return 0;
}

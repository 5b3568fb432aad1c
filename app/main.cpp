#include "app/command_line.h"
#include "app/file_store.h"
#include "app/look.h"
#include "app/main_window.h"
#include "app/plurals.h"

#include "core/document/examples.h"

#include <QApplication>
#include <QEventLoop>
#include <QFile>
#include <QHashSeed>
#include <QLocale>
#include <QTimer>

#include <iostream>

namespace {

using namespace stemwright;

/// A terminal without a display still has figures and sheets, but no board.
bool hasDisplay() {
#ifdef Q_OS_LINUX
    return qEnvironmentVariableIsSet("QT_QPA_PLATFORM") || !qEnvironmentVariableIsEmpty("DISPLAY") ||
           !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY");
#else
    return true;
#endif
}

/// Where no board can be opened: first what is wrong besides.
int sayWithoutDisplay(int argc, char** argv, const QStringList& arguments) {
    const QCoreApplication application(argc, argv);
    WindowRequest request;
    if (const std::optional<int> code = runCommand(arguments, std::cout, std::cerr, &request))
        return *code;
    QString why;
    if (!request.plan.isEmpty() && !readPlan(request.plan, &why))
        std::cerr << why.toStdString() << '\n';
    else
        std::cerr
            << "There is no display to open the board on; stemwright --help says what works without one.\n";
    return exitUnusable;
}

int showWindow(const WindowRequest& request) {
    look::apply();
    std::optional<Plan> plan;
    FileMark mark;
    if (!request.plan.isEmpty()) {
        QString why;
        plan = readPlan(request.plan, &why, &mark);
        if (!plan) {
            std::cerr << why.toStdString() << '\n';
            return exitUnusable;
        }
    }
    MainWindow window(plan ? std::move(*plan) : example(usualExample()));
    if (!request.plan.isEmpty())
        window.adoptFile(request.plan, mark);
    if (!request.place.isEmpty())
        window.showPlaceNamed(request.place);
    if (!request.screenshot) {
        window.restoreWhereItWas();
        window.show();
        QTimer::singleShot(0, &window, &MainWindow::offerWorkLeftBehind);
        return QApplication::exec();
    }
    window.resize(request.width, request.height);
    window.show();
    // What is worked out beside the window has its moment too.
    QEventLoop moment;
    QTimer::singleShot(600, &moment, &QEventLoop::quit);
    moment.exec();
    if (!window.grab().save(*request.screenshot)) {
        std::cerr << QCoreApplication::translate("Main", "%1 cannot be written.")
                         .arg(*request.screenshot)
                         .toStdString()
                  << '\n';
        return exitUnusable;
    }
    return exitFine;
}

} // namespace

int main(int argc, char** argv) {
    QStringList arguments;
    for (int i = 0; i < argc; ++i)
        arguments << QFile::decodeName(argv[i]);
    const bool command = isCommand(arguments);
    if (command) {
        // The same plan gives the same bytes: no seed and no clock of this machine gets into a file.
        QHashSeed::setDeterministicGlobalSeed();
        qputenv("TZ", "UTC");
        // Standard error is for a command's own sentences, not for what Qt thinks of the desktop.
        qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& said) {
            if (type == QtCriticalMsg || type == QtFatalMsg)
                std::cerr << said.toStdString() << '\n';
        });
        // Fonts are needed for paper, a screen is not.
        qputenv("QT_QPA_PLATFORM", "offscreen");
        // English words with English figures, and the same bytes, whatever this machine's habits are.
        QLocale::setDefault(QLocale(QLocale::English, QLocale::World));
    } else if (!hasDisplay()) {
        return sayWithoutDisplay(argc, argv, arguments);
    }
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("stemwright"));
    QApplication::setOrganizationName(QStringLiteral("stemwright")); // the folder of its settings
    QApplication::setApplicationDisplayName(QStringLiteral("Stemwright"));
    QApplication::setApplicationVersion(QStringLiteral(STEMWRIGHT_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("stemwright"));

    installPlurals();

    WindowRequest request;
    if (const std::optional<int> code = runCommand(QApplication::arguments(), std::cout, std::cerr, &request))
        return *code;
    return showWindow(request);
}

#include "app/look.h"
#include "app/plurals.h"

#include <QApplication>
#include <QLocale>
#include <QStandardPaths>

#include <gtest/gtest.h>

int main(int argc, char** argv) {
    // Real widgets without a screen; whoever wants to watch sets another platform.
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("stemwright-tests"));
    // Nothing of a test gets among the plans and settings of whoever runs it.
    QStandardPaths::setTestModeEnabled(true);
    QLocale::setDefault(QLocale::c());
    stemwright::look::apply();
    stemwright::installPlurals();
    ::testing::InitGoogleTest(&argc, argv);
    return RUN_ALL_TESTS();
}

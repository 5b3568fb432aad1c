#include "app/settings.h"

#include <QDir>
#include <QSettings>
#include <QStandardPaths>

namespace stemwright::settings {

namespace {
constexpr QLatin1String recentKey("recent_plans");
constexpr QLatin1String geometryKey("window/geometry");
constexpr QLatin1String codesKey("board/show_codes");
} // namespace

QString folder() {
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    return documents.isEmpty() ? QDir::homePath() : documents;
}

QString recoveryFolder() {
    return QDir(QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation))
        .filePath(QStringLiteral("recovery"));
}

QStringList recentPlans() {
    return QSettings().value(recentKey).toStringList();
}
void setRecentPlans(const QStringList& paths) {
    QSettings().setValue(recentKey, paths);
}
QByteArray windowGeometry() {
    return QSettings().value(geometryKey).toByteArray();
}
void setWindowGeometry(const QByteArray& geometry) {
    QSettings().setValue(geometryKey, geometry);
}
bool showCodes() {
    return QSettings().value(codesKey, false).toBool();
}
void setShowCodes(bool on) {
    QSettings().setValue(codesKey, on);
}

} // namespace stemwright::settings

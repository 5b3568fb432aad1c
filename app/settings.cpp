#include "app/settings.h"

#include <QDir>
#include <QSettings>
#include <QStandardPaths>

namespace stemwright::settings {

namespace {
constexpr QLatin1String recentKey("recent_plans");
constexpr QLatin1String geometryKey("window/geometry");
constexpr QLatin1String codesKey("board/show_codes");
constexpr QLatin1String asHeldKey("bind/as_held");
constexpr QLatin1String timedKey("bind/timed");
} // namespace

QString folder() {
    const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    // Not every home has one, and a dialog takes a folder that is not there for a file's name.
    return documents.isEmpty() || !QDir(documents).exists() ? QDir::homePath() : documents;
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
bool bindAsHeld() {
    return QSettings().value(asHeldKey, false).toBool();
}
void setBindAsHeld(bool on) {
    QSettings().setValue(asHeldKey, on);
}
bool bindTimed() {
    return QSettings().value(timedKey, false).toBool();
}
void setBindTimed(bool on) {
    QSettings().setValue(timedKey, on);
}

} // namespace stemwright::settings

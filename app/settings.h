#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>

namespace stemwright::settings {

// What the program remembers between runs, a function a key.

/// Where plans are looked for and saved first: the documents folder.
QString folder();
/// Where unsaved work is kept against a crash.
QString recoveryFolder();
QStringList recentPlans();
void setRecentPlans(const QStringList& paths);
QByteArray windowGeometry();
void setWindowGeometry(const QByteArray& geometry);
bool showCodes();
void setShowCodes(bool on);
/// Bind turns its picture with the stem, and times each tier.
bool bindAsHeld();
void setBindAsHeld(bool on);
bool bindTimed();
void setBindTimed(bool on);

} // namespace stemwright::settings

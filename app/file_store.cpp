#include "app/file_store.h"

#include "app/messages.h"
#include "core/document/plan_file.h"

#include <QCoreApplication>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("FileStore", source);
}

QByteArray digestOf(const QByteArray& bytes) {
    return QCryptographicHash::hash(bytes, QCryptographicHash::Sha256);
}

void say(QString* why, const QString& sentence) {
    if (why)
        *why = sentence;
}

std::optional<QByteArray> readBytes(const QString& path, QString* why) {
    if (path.isEmpty()) {
        say(why, tr("The name of the plan's file is empty."));
        return std::nullopt;
    }
    const QString shown = QDir::toNativeSeparators(path);
    const QFileInfo info(path);
    if (!info.exists()) {
        say(why, tr("%1: there is no such file.").arg(shown));
        return std::nullopt;
    }
    // Folders, and devices that never end, are no plans.
    if (!info.isFile()) {
        say(why, info.isDir() ? tr("%1 is a folder, not a plan.").arg(shown)
                              : tr("%1 is no plain file.").arg(shown));
        return std::nullopt;
    }
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        say(why, tr("%1 cannot be read: %2.").arg(shown, file.errorString()));
        return std::nullopt;
    }
    QByteArray bytes = file.readAll();
    if (file.error() != QFileDevice::NoError) {
        say(why, tr("%1 cannot be read: %2.").arg(shown, file.errorString()));
        return std::nullopt;
    }
    return bytes;
}

} // namespace

std::optional<Plan> readPlanText(const QByteArray& bytes, const QString& name, QString* why) {
    if (bytes.isEmpty()) {
        say(why, tr("%1 is empty.").arg(name));
        return std::nullopt;
    }
    Result<Plan> plan = planFromText({bytes.constData(), static_cast<std::size_t>(bytes.size())});
    if (!plan) {
        say(why, tr("%1: %2").arg(name, sentence(plan.problem())));
        return std::nullopt;
    }
    return std::move(plan).value();
}

std::optional<Plan> readPlan(const QString& path, QString* why, FileMark* mark) {
    const std::optional<QByteArray> bytes = readBytes(path, why);
    if (!bytes)
        return std::nullopt;
    std::optional<Plan> plan = readPlanText(*bytes, QDir::toNativeSeparators(path), why);
    if (plan && mark)
        mark->digest = digestOf(*bytes);
    return plan;
}

bool writeBytes(const QByteArray& bytes, const QString& path, QString* why) {
    const QString shown = QDir::toNativeSeparators(path);
    if (QFileInfo(path).isDir()) {
        say(why, tr("%1 is a folder; the file needs a name.").arg(shown));
        return false;
    }
    QSaveFile file(path);
    // Without a place for the new file beside the old one nothing is written: a half-written plan is a lost
    // one.
    file.setDirectWriteFallback(false);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
        say(why, tr("%1 cannot be written: %2. What was there is unchanged.").arg(shown, file.errorString()));
        return false;
    }
    return true;
}

bool writePlan(const Plan& plan, const QString& path, QString* why, FileMark* mark) {
    const std::string text = planText(plan);
    const Result<Plan> again = planFromText(text);
    if (!again || !(again.value() == plan)) {
        say(why, tr("%1 was not written: the plan does not read back as it is. Please keep this window open "
                    "and save "
                    "under another name.")
                     .arg(QDir::toNativeSeparators(path)));
        return false;
    }
    const QByteArray bytes(text.data(), static_cast<qsizetype>(text.size()));
    if (!writeBytes(bytes, path, why))
        return false;
    if (mark)
        mark->digest = digestOf(bytes);
    return true;
}

bool changedOnDisk(const QString& path, const FileMark& mark) {
    const std::optional<QByteArray> bytes = readBytes(path, nullptr);
    return bytes && digestOf(*bytes) != mark.digest;
}

} // namespace stemwright

#include "app/recovery.h"

#include "app/file_store.h"
#include "app/session.h"
#include "core/document/journal.h"

#include <QDir>
#include <QFileInfo>
#include <QUuid>

#include <algorithm>
#include <utility>

namespace stemwright {

namespace {

constexpr QLatin1String journalSuffix(".journal");
/// A journal this long beyond its start begins anew, so that reading it back stays quick.
constexpr qint64 longJournal = 4 << 20;

QString lockOf(const QString& journal) {
    return journal + QLatin1String(".lock");
}

std::unique_ptr<QLockFile> lockFor(const QString& journal) {
    auto lock = std::make_unique<QLockFile>(lockOf(journal));
    // Never stale by age: work may rest for days. The lock of a process that is gone is taken all the same.
    lock->setStaleLockTime(0);
    return lock->tryLock() ? std::move(lock) : nullptr;
}

/// Whether the plan's file says the same, so that nothing would be lost without the journal.
bool saysNoMore(const LeftBehind& left) {
    if (left.path.isEmpty())
        return false;
    const std::optional<Plan> saved = readPlan(left.path, nullptr);
    return saved && *saved == left.plan;
}

} // namespace

Recovery::Recovery(Session& session, QString folder, std::function<QByteArray()> digestOfFile, QObject* parent)
    : QObject(parent), session_(session), folder_(std::move(folder)), digestOfFile_(std::move(digestOfFile)) {
    connect(&session, &Session::applied, this, &Recovery::follow);
    connect(&session, &Session::changed, this, [this](const Change& change) {
        if (!change.anotherPlan)
            return;
        drop();
        if (session_.unsaved())
            begin();
    });
    connect(&session, &Session::documentChanged, this, [this] {
        if (!session_.unsaved())
            drop();
    });
}

Recovery::~Recovery() {
    drop();
}

void Recovery::follow(const Edit& edit) {
    if (!session_.unsaved())
        return drop();
    if (!file_.isOpen() || file_.size() - startBytes_ > longJournal)
        return begin();
    const std::string line = journalLine(edit);
    if (file_.write(line.data(), static_cast<qint64>(line.size())) < 0 || !file_.flush())
        fail();
}

void Recovery::begin() {
    file_.close();
    if (!lock_) {
        if (!QDir().mkpath(folder_))
            return fail();
        // Plans are hers alone, whatever the folder's own rights.
        QFile::setPermissions(folder_, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
        const QString name = QUuid::createUuid().toString(QUuid::WithoutBraces) + journalSuffix;
        file_.setFileName(QDir(folder_).filePath(name));
        lock_ = lockFor(file_.fileName());
        if (!lock_)
            return fail();
    }
    const std::string text =
        journalText({session_.path().toStdString(), digestOfFile_().toHex().toStdString(), session_.plan()});
    if (!writeBytes(QByteArray(text.data(), static_cast<qsizetype>(text.size())), file_.fileName(), nullptr) ||
        !file_.open(QIODevice::WriteOnly | QIODevice::Append))
        return fail();
    startBytes_ = file_.size();
    failing_ = false;
}

void Recovery::drop() {
    if (!lock_)
        return;
    file_.close();
    file_.remove();
    lock_.reset();
}

void Recovery::fail() {
    file_.close();
    if (!std::exchange(failing_, true))
        Q_EMIT failed(tr("What is not saved cannot be kept against a crash: %1 cannot be written.")
                          .arg(QDir::toNativeSeparators(folder_)));
}

std::vector<LeftBehind> Recovery::found(const QString& folder) {
    std::vector<LeftBehind> all;
    const QDir dir(folder);
    for (const QFileInfo& info :
         dir.entryInfoList({QLatin1Char('*') + journalSuffix}, QDir::Files, QDir::Time)) {
        LeftBehind left;
        left.journal = info.filePath();
        left.lock = lockFor(left.journal);
        if (!left.lock)
            continue;
        QFile file(left.journal);
        if (!file.open(QIODevice::ReadOnly))
            continue;
        const QByteArray bytes = file.readAll();
        Result<Journal> journal = journalFromText({bytes.constData(), static_cast<std::size_t>(bytes.size())});
        if (!journal)
            continue;
        left.plan = std::move(journal.value().plan);
        left.path = QString::fromStdString(journal.value().start.file);
        left.digest = QByteArray::fromHex(QByteArray::fromStdString(journal.value().start.fileDigest));
        left.when = info.lastModified();
        if (saysNoMore(left))
            remove(left);
        else
            all.push_back(std::move(left));
    }
    return all;
}

void Recovery::remove(const LeftBehind& left) {
    QFile::remove(left.journal);
}

} // namespace stemwright

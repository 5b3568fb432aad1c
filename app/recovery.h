#pragma once

#include "core/plan/plan.h"

#include <QByteArray>
#include <QDateTime>
#include <QFile>
#include <QLockFile>
#include <QObject>
#include <QString>

#include <functional>
#include <memory>
#include <vector>

namespace stemwright {

class Session;
struct Edit;

/// What an end without a save left behind.
struct LeftBehind {
    QString journal; ///< its file
    Plan plan;
    QString path;      ///< where the plan was saved last; empty for one that never was
    QByteArray digest; ///< what that file held then (FileMark)
    QDateTime when;    ///< of the last edit
    /// Held as long as this is, so that no second window offers the same.
    std::shared_ptr<QLockFile> lock;
};

/// Keeps a journal of unsaved work beside the window, written with every edit, so that a kill or a crash loses
/// nothing. It is there only while there is unsaved work and goes when the work is saved, undone or given up.
/// What the operating system has not yet put on its disk when the power goes may be missing at the end.
class Recovery : public QObject {
    Q_OBJECT
public:
    /// `digestOfFile` tells what the plan's file held when it was last read or written here.
    Recovery(Session& session, QString folder, std::function<QByteArray()> digestOfFile,
             QObject* parent = nullptr);
    /// Gives the work up: whoever closes a window has been asked before.
    ~Recovery() override;

    /// The journals in the folder that no living process keeps, newest first. One that says no more than its
    /// plan's file does is removed instead; one that cannot be read stays where it is.
    static std::vector<LeftBehind> found(const QString& folder);
    /// Takes it away, once it has been opened or is not wanted.
    static void remove(const LeftBehind& left);

Q_SIGNALS:
    /// No journal can be kept, and why; told once until one can.
    void failed(const QString& sentence);

private:
    void follow(const Edit& edit);
    void begin();
    void drop();
    void fail();

    Session& session_;
    QString folder_;
    std::function<QByteArray()> digestOfFile_;
    QFile file_;
    std::unique_ptr<QLockFile> lock_;
    qint64 startBytes_ = 0;
    bool failing_ = false;
};

} // namespace stemwright

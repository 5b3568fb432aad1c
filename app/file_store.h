#pragma once

#include "core/plan/plan.h"

#include <QByteArray>
#include <QString>

#include <optional>

namespace stemwright {

/// What a plan's file held when it was last read or written here, so that a change by someone else is seen.
struct FileMark {
    QByteArray digest; ///< SHA-256 of the bytes; empty for a plan that has no file yet
};

/// Reads the plan at `path`. Where it cannot, `why` becomes one sentence that names the file and the place in
/// it.
std::optional<Plan> readPlan(const QString& path, QString* why, FileMark* mark = nullptr);

/// The same for a text that comes from elsewhere; `name` stands for the file in the sentence.
std::optional<Plan> readPlanText(const QByteArray& bytes, const QString& name, QString* why);

/// Writes the plan to `path` all at once or not at all: what is there stays until the new file is complete. The
/// text is read back before it replaces anything.
bool writePlan(const Plan& plan, const QString& path, QString* why, FileMark* mark = nullptr);

/// Writes bytes to a file the same way: for figures and the like.
bool writeBytes(const QByteArray& bytes, const QString& path, QString* why);

/// Whether the file differs from what `mark` remembers: changed or replaced by another program. A file that has
/// gone is no conflict, since nothing would be lost by writing it.
bool changedOnDisk(const QString& path, const FileMark& mark);

} // namespace stemwright

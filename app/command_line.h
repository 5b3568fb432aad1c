#pragma once

#include <QString>
#include <QStringList>

#include <iosfwd>
#include <optional>

namespace stemwright {

/// What the window is opened with, when no command was given.
struct WindowRequest {
    QString plan;                      ///< a path, or empty for the last plan or an example
    std::optional<QString> screenshot; ///< write a picture of the window here and end
    int width = 0;                     ///< of the window; 0 for its own choice
    int height = 0;
    QString place; ///< leaves, board, pot, bind, sheets; empty for board
};

/// Exit codes of the program.
inline constexpr int exitFine = 0;
inline constexpr int exitFindings = 1; ///< `check` found something
inline constexpr int exitUnusable = 2; ///< bad arguments or a file that cannot be used

/// Whether these arguments name a command that needs no window, so that none is waited for.
bool isCommand(const QStringList& arguments);

/// Runs the command of the arguments (program name first), or fills `window` and gives nothing. Writes to the
/// streams alone; exitUnusable also where `out` could not take all of it.
std::optional<int> runCommand(const QStringList& arguments, std::ostream& out, std::ostream& err,
                              WindowRequest* window);

} // namespace stemwright

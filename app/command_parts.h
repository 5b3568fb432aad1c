#pragma once

#include "app/command_line.h"

#include <QCommandLineParser>

#include <cstdint>

namespace stemwright {

// What the commands of the command line share.

/// Where a command writes and how it fails: one sentence, exit 2.
struct CommandStreams {
    std::ostream& out;
    std::ostream& err;

    int unusable(const QString& sentence) const;
    void say(const QString& text) const;
};

struct Command {
    const char* name;
    const char* usage;
    const char* says; ///< translated in the context CommandLine
    int (*run)(const QStringList& arguments, const CommandStreams& streams);
};

/// Parses a command's arguments. An exit code where they cannot be used or only help was wanted.
std::optional<int> parseCommand(QCommandLineParser& parser, const char* name, const QStringList& arguments,
                                const CommandStreams& streams, qsizetype least, qsizetype most);

/// -o, --output.
QCommandLineOption outputOption(const QString& what);

} // namespace stemwright

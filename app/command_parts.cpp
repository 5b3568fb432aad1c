#include "app/command_parts.h"

#include "app/wording.h"

#include <QCoreApplication>

#include <ostream>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

} // namespace

int CommandStreams::unusable(const QString& sentence) const {
    err << lineText(sentence).toStdString() << '\n';
    return exitUnusable;
}

void CommandStreams::say(const QString& text) const {
    out << text.toStdString();
}

std::optional<int> parseCommand(QCommandLineParser& parser, const char* name, const QStringList& arguments,
                                const CommandStreams& streams, qsizetype least, qsizetype most) {
    const QCommandLineOption help({QStringLiteral("h"), QStringLiteral("help")}, tr("Shows this help."));
    parser.addOption(help);
    if (!parser.parse(QStringList{QStringLiteral("stemwright %1").arg(QLatin1String(name))} + arguments))
        return streams.unusable(parser.errorText());
    if (parser.isSet(help)) {
        // Qt names the program alone.
        QString text = parser.helpText();
        streams.say(text.replace(text.indexOf(QLatin1String("[options]")), 9,
                                 QLatin1String(name) + QLatin1String(" [options]")));
        return exitFine;
    }
    for (const QString& option : outputOption({}).names())
        if (parser.optionNames().contains(option) && parser.value(option).isEmpty())
            return streams.unusable(tr("-o names no file: what stands after it is empty."));
    const qsizetype count = parser.positionalArguments().size();
    if (count < least)
        return streams.unusable(tr("%1 needs a plan; see stemwright %1 --help.").arg(QLatin1String(name)));
    if (count > most)
        return streams.unusable(tr("“%1” is one argument too many; see stemwright %2 --help.")
                                    .arg(parser.positionalArguments().at(most), QLatin1String(name)));
    return std::nullopt;
}

QCommandLineOption outputOption(const QString& what) {
    return {{QStringLiteral("o"), QStringLiteral("output")}, what, QStringLiteral("FILE")};
}

} // namespace stemwright

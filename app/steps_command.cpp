#include "app/steps_command.h"

#include "app/file_store.h"
#include "app/steps_text.h"

#include <QCoreApplication>

#include <ostream>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

int runSteps(const QStringList& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(
        tr("Prints the order of work: how each stem is bound, step by step, and how far it is."));
    parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
    const QCommandLineOption stem(QStringLiteral("stem"), tr("Only this stem, counted from 1."),
                                  QStringLiteral("N"));
    const QCommandLineOption json(QStringLiteral("json"), tr("As JSON, with the unit in each key."));
    parser.addOptions({stem, json});
    if (const auto code = parseCommand(parser, "steps", arguments, streams, 1, 1))
        return *code;
    QString why;
    const std::optional<Plan> plan = readPlan(parser.positionalArguments().front(), &why);
    if (!plan)
        return streams.unusable(why);
    std::optional<std::size_t> only;
    if (parser.isSet(stem)) {
        bool fine = false;
        const uint number = parser.value(stem).toUInt(&fine);
        if (plan->stems.empty())
            return streams.unusable(tr("--stem %1: the plan has no stems.").arg(parser.value(stem)));
        if (!fine || number < 1 || number > plan->stems.size())
            return streams.unusable(tr("--stem takes a number from 1 to %1, not “%2”.")
                                        .arg(plan->stems.size())
                                        .arg(parser.value(stem)));
        only = number - 1;
    }
    const Figures all = figures(*plan);
    if (parser.isSet(json))
        streams.out << stepsJson(*plan, all, only);
    else
        streams.say(stepsText(*plan, all, only));
    return exitFine;
}

} // namespace

Command stepsCommand() {
    return {"steps", "steps PLAN [--stem N] [--json]",
            QT_TRANSLATE_NOOP("CommandLine", "prints the order of work, step by step"), runSteps};
}

} // namespace stemwright

#include "app/supplies_command.h"

#include "app/figures_text.h"
#include "app/file_store.h"
#include "app/supplies_csv.h"
#include "core/figures/supplies.h"

#include <QCoreApplication>

#include <ostream>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

int run(const QStringList& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(
        tr("Prints what a plan still needs: beads by colour, wire, thread, stakes with how to cut them, clay, "
           "hours and cost."));
    parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
    const QCommandLineOption csv(QStringLiteral("csv"), tr("As CSV (RFC 4180), in the plan's units."));
    const QCommandLineOption output = outputOption(tr("The file to write instead."));
    parser.addOptions({csv, output});
    if (const auto code = parseCommand(parser, "supplies", arguments, streams, 1, 1))
        return *code;
    QString why;
    const std::optional<Plan> plan = readPlan(parser.positionalArguments().front(), &why);
    if (!plan)
        return streams.unusable(why);
    const Supplies needs = supplies(*plan, figures(*plan));
    const std::string said =
        parser.isSet(csv) ? suppliesCsv(*plan, needs) : suppliesText(*plan, needs).toStdString();
    if (!parser.isSet(output)) {
        streams.out << said;
        return exitFine;
    }
    return writeBytes(QByteArray::fromStdString(said), parser.value(output), &why) ? exitFine
                                                                                   : streams.unusable(why);
}

} // namespace

Command suppliesCommand() {
    return {"supplies", "supplies PLAN [--csv] [-o FILE]",
            QT_TRANSLATE_NOOP("CommandLine", "prints what to buy and to make"), run};
}

} // namespace stemwright

#include "app/command_line.h"

#include "app/command_parts.h"
#include "app/figures_text.h"
#include "app/file_store.h"
#include "app/messages.h"
#include "app/missing_glyphs.h"
#include "app/pot/pot_commands.h"
#include "app/sheet_painter.h"
#include "app/steps_command.h"
#include "app/suggest_commands.h"
#include "app/supplies_command.h"
#include "app/wording.h"
#include "core/document/examples.h"
#include "core/document/plan_file.h"
#include "core/figures/figures.h"
#include "core/figures/findings.h"
#include "core/figures/pot_findings.h"

#include <QCommandLineParser>
#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>

#include <ostream>
#include <set>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

using Arguments = QStringList;

const std::vector<Command>& commands();

int runExample(const Arguments& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(tr("Writes a built-in plan; without a name, lists them."));
    parser.addPositionalArgument(QStringLiteral("NAME"), tr("Which one."), QStringLiteral("[NAME]"));
    const QCommandLineOption output = outputOption(tr("The plan to write."));
    parser.addOption(output);
    if (const auto code = parseCommand(parser, "example", arguments, streams, 0, 1))
        return *code;
    if (parser.positionalArguments().isEmpty()) {
        for (const ExampleInfo& info : examples())
            streams.say(QStringLiteral("%1 %2: %3\n")
                            .arg(text(info.key).leftJustified(12), text(info.title), text(info.sentence)));
        return exitFine;
    }
    const QString name = parser.positionalArguments().front();
    for (const ExampleInfo& info : examples()) {
        if (text(info.key) != name)
            continue;
        const Plan plan = example(info.key);
        if (!parser.isSet(output)) {
            streams.out << planText(plan);
            return exitFine;
        }
        // What is there may be a plan with work in it; an example is never worth it.
        if (QFileInfo::exists(parser.value(output)) && !QFileInfo(parser.value(output)).isDir())
            return streams.unusable(tr("%1 is there already; nothing was written.")
                                        .arg(QDir::toNativeSeparators(parser.value(output))));
        QString why;
        return writePlan(plan, parser.value(output), &why) ? exitFine : streams.unusable(why);
    }
    return streams.unusable(tr("There is no example “%1”; stemwright example lists them.").arg(name));
}

int runFigures(const Arguments& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(tr("Prints every figure of a plan, by stem and for the pot."));
    parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
    const QCommandLineOption json(QStringLiteral("json"), tr("As JSON, with the unit in each key."));
    parser.addOption(json);
    if (const auto code = parseCommand(parser, "figures", arguments, streams, 1, 1))
        return *code;
    QString why;
    const std::optional<Plan> plan = readPlan(parser.positionalArguments().front(), &why);
    if (!plan)
        return streams.unusable(why);
    const Figures all = figures(*plan);
    if (parser.isSet(json))
        streams.out << figuresJson(*plan, all);
    else
        streams.say(figuresText(*plan, all));
    return exitFine;
}

int runCheck(const Arguments& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(tr("Prints what the board noticed; exit 1 if there is anything."));
    parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
    if (const auto code = parseCommand(parser, "check", arguments, streams, 1, 1))
        return *code;
    QString why;
    const std::optional<Plan> plan = readPlan(parser.positionalArguments().front(), &why);
    if (!plan)
        return streams.unusable(why);
    const Figures all = figures(*plan);
    const PlanTables tables(*plan);
    const SwapFinder swaps(*plan, tables);
    std::vector<Finding> found = findings(*plan, all);
    const std::vector<Finding> inPot = potFindings(*plan, plantBody(*plan));
    found.insert(found.end(), inPot.begin(), inPot.end());
    for (const Finding& finding : found) {
        const FindingWords said = words(*plan, finding);
        const QString line =
            QStringLiteral("%1. %2 %3").arg(said.title, said.detail, bestSwapText(*plan, all, finding, swaps));
        streams.say(line.trimmed() + QLatin1Char('\n'));
    }
    return found.empty() ? exitFine : exitFindings;
}

/// The pages by the words that ask for them.
const std::vector<std::pair<const char*, SheetPage>>& sheetPageNames() {
    static const std::vector<std::pair<const char*, SheetPage>> names{
        {"glance", SheetPage::glance}, {"mats", SheetPage::mats},         {"cards", SheetPage::cards},
        {"leaves", SheetPage::leaves}, {"supplies", SheetPage::supplies}, {"pot", SheetPage::pot}};
    return names;
}

/// Words of a list separated by commas; false where one of them is not known.
template <class Take> bool eachOf(const QString& list, Take take) {
    for (const QString& word : list.split(QLatin1Char(',')))
        if (!take(word.trimmed()))
            return false;
    return true;
}

/// "1,4-6" as places in the plan's list of stems.
std::optional<std::set<std::size_t>> stemsOf(const QString& list, std::size_t count) {
    std::set<std::size_t> stems;
    const bool fine = eachOf(list, [&](const QString& word) {
        const QStringList ends = word.split(QLatin1Char('-'));
        bool firstFine = false, lastFine = false;
        const uint first = ends.front().toUInt(&firstFine);
        const uint last = ends.back().toUInt(&lastFine);
        if (ends.size() > 2 || !firstFine || !lastFine || first < 1 || last < first || last > count)
            return false;
        for (uint i = first; i <= last; ++i)
            stems.insert(i - 1);
        return true;
    });
    return fine ? std::optional(stems) : std::nullopt;
}

int runSheets(const Arguments& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(
        tr("Writes the sheets, true size: one PDF, or into a folder an SVG a page."));
    parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
    const QCommandLineOption output =
        outputOption(tr("A PDF file, a folder (ending in /) for an SVG a page, or an SVG file for one page."));
    const QCommandLineOption paper(QStringLiteral("paper"), tr("a4, a3 or letter."), QStringLiteral("PAPER"),
                                   QStringLiteral("a4"));
    QStringList pageNames;
    for (const auto& [name, page] : sheetPageNames())
        pageNames << QLatin1String(name);
    const QCommandLineOption only(QStringLiteral("only"),
                                  tr("Only these pages: %1.").arg(pageNames.join(QStringLiteral(", "))),
                                  QStringLiteral("PAGE,…"));
    const QCommandLineOption stems(QStringLiteral("stems"), tr("Only these stems, such as 1,4-6."),
                                   QStringLiteral("LIST"));
    const QCommandLineOption grey(QStringLiteral("grey"), tr("For a printer without colour."));
    parser.addOptions({output, paper, only, stems, grey});
    if (const auto code = parseCommand(parser, "sheets", arguments, streams, 1, 1))
        return *code;
    if (!parser.isSet(output))
        return streams.unusable(
            tr("sheets needs -o FILE.pdf to say where they go; see stemwright sheets --help."));
    SheetOptions options;
    options.grey = parser.isSet(grey);
    const QString paperName = parser.value(paper).toLower();
    if (paperName == QLatin1String("a4"))
        options.paper = Paper::a4;
    else if (paperName == QLatin1String("a3"))
        options.paper = Paper::a3;
    else if (paperName == QLatin1String("letter"))
        options.paper = Paper::letter;
    else
        return streams.unusable(tr("--paper is one of a4, a3, letter, not “%1”.").arg(parser.value(paper)));
    if (parser.isSet(only)) {
        QString unknown;
        eachOf(parser.value(only), [&](const QString& word) {
            for (const auto& [name, page] : sheetPageNames())
                if (QLatin1String(name) == word) {
                    options.only.insert(page);
                    return true;
                }
            unknown = word;
            return false;
        });
        if (!unknown.isNull())
            return streams.unusable(
                tr("--only takes %1, not “%2”.").arg(pageNames.join(QStringLiteral(", ")), unknown));
    }
    QString why;
    const std::optional<Plan> plan = readPlan(parser.positionalArguments().front(), &why);
    if (!plan)
        return streams.unusable(why);
    if (parser.isSet(stems)) {
        const auto chosen = stemsOf(parser.value(stems), plan->stems.size());
        if (!chosen)
            return streams.unusable(tr("--stems takes numbers from 1 to %1, such as 1,4-6, not “%2”.")
                                        .arg(plan->stems.size())
                                        .arg(parser.value(stems)));
        options.stems = *chosen;
    }
    const QString to = parser.value(output);
    const bool folder = to.endsWith(QLatin1Char('/')) || QFileInfo(to).isDir();
    const bool svg = to.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
    if (!folder && !svg && !to.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive))
        return streams.unusable(tr("-o takes a file that ends in .pdf, a folder that ends in /, or .svg for a "
                                   "page alone, not “%1”.")
                                    .arg(to));
    const std::vector<Page> pages = pagesOf(*plan, figures(*plan), options);
    const bool written = folder ? writeSvg(*plan, pages, options.grey, to, &why)
                         : svg  ? writeSvgFile(*plan, pages, options.grey, to, &why)
                                : writePdf(*plan, pages, options.grey, to, &why);
    if (!written)
        return streams.unusable(why);
    // What was written is whole; that some of it cannot be read must not go unsaid.
    if (const QString missing = missingGlyphs(pages); !missing.isEmpty())
        streams.err << missing.toStdString() << '\n';
    return exitFine;
}

const std::vector<Command>& commands() {
    static const std::vector<Command> all{
        {"example", "example [NAME] [-o PLAN]",
         QT_TRANSLATE_NOOP("CommandLine", "writes a built-in plan; without a name, lists them"), runExample},
        {"figures", "figures PLAN [--json]",
         QT_TRANSLATE_NOOP("CommandLine", "prints every figure, by stem and for the pot"), runFigures},
        suppliesCommand(),
        spreadCommand(),
        orderCommand(),
        heightsCommand(),
        startCommand(),
        {"sheets",
         "sheets PLAN -o FILE.pdf|FILE.svg|FOLDER/ [--paper a4|a3|letter] [--only PAGE,…] [--stems 1,4-6] "
         "[--grey]",
         QT_TRANSLATE_NOOP("CommandLine", "writes the paper"), runSheets},
        stepsCommand(),
        {"place", "place PLAN -o PLAN [--seed N] [--json]",
         QT_TRANSLATE_NOOP("CommandLine",
                           "finds which stem stands where in the pot, and says how good that is"),
         placeCommand},
        {"picture",
         "picture PLAN -o FILE.png|svg [--turn DEG] [--tilt DEG] [--size WxH] [--ground light|dark] [--eyes "
         "EYES]",
         QT_TRANSLATE_NOOP("CommandLine", "paints the plant in its pot"), pictureCommand},
        {"check", "check PLAN",
         QT_TRANSLATE_NOOP("CommandLine", "prints the findings; exit 1 if there are any"), runCheck},
    };
    return all;
}

const Command* commandNamed(const QString& name) {
    for (const Command& command : commands())
        if (QLatin1String(command.name) == name)
            return &command;
    return nullptr;
}

QString generalHelp() {
    QString help =
        tr("Stemwright %1, a layout board for beaded plants.").arg(QStringLiteral(STEMWRIGHT_VERSION)) +
        QStringLiteral("\n\n");
    const auto entry = [&](const QString& usage, const QString& says) {
        help += QStringLiteral("  stemwright %1\n      %2\n").arg(usage, says);
    };
    entry(QStringLiteral("[PLAN]"), tr("opens the board"));
    for (const Command& command : commands())
        entry(QString::fromUtf8(command.usage), tr(command.says));
    entry(QStringLiteral("[--screenshot FILE.png [--size 1440x900] [--place board]] PLAN"),
          tr("draws the window into a picture and ends"));
    help += QLatin1Char('\n') +
            tr("stemwright COMMAND --help says more of each. Exit 2 and one sentence for what "
               "cannot be used.") +
            QLatin1Char('\n');
    return help;
}

std::optional<int> parseWindow(const Arguments& arguments, const CommandStreams& streams,
                               WindowRequest* window) {
    QCommandLineParser parser;
    const QCommandLineOption help({QStringLiteral("h"), QStringLiteral("help")}, {});
    const QCommandLineOption version({QStringLiteral("v"), QStringLiteral("version")}, {});
    const QCommandLineOption screenshot(QStringLiteral("screenshot"), {}, QStringLiteral("FILE"));
    const QCommandLineOption size(QStringLiteral("size"), {}, QStringLiteral("WxH"),
                                  QStringLiteral("1440x900"));
    const QCommandLineOption place(QStringLiteral("place"), {}, QStringLiteral("PLACE"),
                                   QStringLiteral("board"));
    for (const QCommandLineOption& option : {help, version, screenshot, size, place})
        parser.addOption(option);
    if (!parser.parse(Arguments{QStringLiteral("stemwright")} + arguments))
        return streams.unusable(parser.errorText() + QLatin1Char(' ') + tr("See stemwright --help."));
    if (parser.isSet(help)) {
        streams.say(generalHelp());
        return exitFine;
    }
    if (parser.isSet(version)) {
        streams.say(QStringLiteral("Stemwright %1\n").arg(QStringLiteral(STEMWRIGHT_VERSION)));
        return exitFine;
    }
    const Arguments rest = parser.positionalArguments();
    if (rest.size() > 1)
        return streams.unusable(tr("“%1” is no command; see stemwright --help.").arg(rest.front()));
    const QStringList sides = parser.value(size).split(QLatin1Char('x'));
    bool fine = sides.size() == 2;
    if (fine) {
        window->width = sides[0].toInt(&fine);
        bool tallFine = false;
        window->height = sides[1].toInt(&tallFine);
        fine = fine && tallFine && window->width >= 200 && window->height >= 200 && window->width <= 8000 &&
               window->height <= 8000;
    }
    if (!fine)
        return streams.unusable(
            tr("--size takes a width and a height from 200 to 8000, such as 1440x900, not “%1”.")
                .arg(parser.value(size)));
    const QStringList known{QStringLiteral("leaves"), QStringLiteral("board"), QStringLiteral("pot"),
                            QStringLiteral("bind"), QStringLiteral("sheets")};
    if (!known.contains(parser.value(place)))
        return streams.unusable(
            tr("--place is one of %1, not “%2”.").arg(known.join(QStringLiteral(", ")), parser.value(place)));
    window->place = parser.value(place);
    window->plan = rest.value(0);
    if (!rest.isEmpty() && window->plan.isEmpty())
        return streams.unusable(tr("The name of the plan's file is empty."));
    if (parser.isSet(screenshot))
        window->screenshot = parser.value(screenshot);
    if (window->screenshot && window->screenshot->isEmpty())
        return streams.unusable(tr("--screenshot names no file: what stands after it is empty."));
    return std::nullopt;
}

} // namespace

bool isCommand(const QStringList& arguments) {
    if (arguments.size() < 2)
        return false;
    if (commandNamed(arguments[1]))
        return true;
    for (const QString& argument : arguments.mid(1))
        if (argument == QLatin1String("-h") || argument == QLatin1String("--help") ||
            argument == QLatin1String("-v") || argument == QLatin1String("--version") ||
            argument.startsWith(QLatin1String("--screenshot")))
            return true;
    return false;
}

std::optional<int> runCommand(const QStringList& arguments, std::ostream& out, std::ostream& err,
                              WindowRequest* window) {
    const CommandStreams streams{out, err};
    const Command* command = arguments.size() > 1 ? commandNamed(arguments[1]) : nullptr;
    const std::optional<int> code = command ? std::optional(command->run(arguments.mid(2), streams))
                                            : parseWindow(arguments.mid(1), streams, window);
    // A full disk shows only once what is kept back is written; what was lost must not pass for done.
    if (code && code != exitUnusable && !out.flush())
        return streams.unusable(
            tr("Standard output cannot be written, so what was to stand there is not whole."));
    return code;
}

} // namespace stemwright

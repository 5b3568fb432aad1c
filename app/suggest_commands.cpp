#include "app/suggest_commands.h"

#include "app/file_store.h"
#include "app/messages.h"
#include "app/suggestion_text.h"
#include "app/wording.h"
#include "core/figures/findings.h"
#include "core/suggest/order.h"
#include "core/suggest/start.h"

#include <QCoreApplication>

#include <chrono>
#include <functional>
#include <ostream>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("CommandLine", source);
}

/// What all four take, and how each of them runs.
class SuggestCommand {
public:
    SuggestCommand(const char* name, const QString& description)
        : name_(name),
          output_(outputOption(tr("The plan to write; it may be the same."))),
          json_(QStringLiteral("json"), tr("The outcome as JSON, the unit in each key.")) {
        parser.setApplicationDescription(description);
        parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
        parser.addOptions({output_, json_});
    }

    QCommandLineParser parser;

    /// Reads the plan; an exit code where the arguments or the plan cannot be used.
    std::optional<int> begin(const QStringList& arguments, const CommandStreams& streams) {
        if (const auto code = parseCommand(parser, name_, arguments, streams, 1, 1))
            return code;
        if (!parser.isSet(output_))
            return streams.unusable(tr("%1 needs -o PLAN to say where the plan goes; see stemwright %1 --help.")
                                        .arg(QLatin1String(name_)));
        QString why;
        auto read = readPlan(parser.positionalArguments().front(), &why);
        if (!read)
            return streams.unusable(why);
        plan = std::move(*read);
        return std::nullopt;
    }

    Plan plan;

    /// Runs the search, writes the plan and says what changed.
    int finish(const CommandStreams& streams, const std::function<Result<Suggestion>()>& search) const {
        const auto start = std::chrono::steady_clock::now();
        const Result<Suggestion> found = search();
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
        if (!found)
            return streams.unusable(sentence(found.problem()));
        const BeforeAfter plans(plan, found.value().edits);
        QString why;
        if (!writePlan(plans.after, parser.value(output_), &why))
            return streams.unusable(why);
        if (parser.isSet(json_)) {
            streams.out << suggestionJson(plans, found.value(), took.count());
            return exitFine;
        }
        for (const QString& line : suggestionLines(plans, found.value()))
            streams.say(line + QLatin1Char('\n'));
        streams.say(tr("Worked out in %1 ms").arg(took.count(), 0, 'f', 1) + QLatin1Char('\n'));
        sayStems(streams, plans);
        return exitFine;
    }

private:
    static void sayStems(const CommandStreams& streams, const BeforeAfter& plans) {
        std::vector<QStringList> rows{{tr("stem"), tr("height"), tr("leaves"), tr("drift"), tr("uneven")}};
        for (const StemChange& stem : stemChanges(plans))
            rows.push_back({stem.name, stem.height, stem.leaves, stem.drift, stem.unevenness});
        std::vector<qsizetype> widths(5, 0);
        for (const QStringList& row : rows)
            for (qsizetype i = 0; i < row.size(); ++i)
                widths[static_cast<std::size_t>(i)] =
                    std::max(widths[static_cast<std::size_t>(i)], row[i].size());
        streams.say(QStringLiteral("\n"));
        for (const QStringList& row : rows) {
            QString line;
            for (qsizetype i = 0; i < row.size(); ++i)
                line += row[i].leftJustified(widths[static_cast<std::size_t>(i)] + 2);
            streams.say(line.trimmed() + QLatin1Char('\n'));
        }
    }

    const char* name_;
    QCommandLineOption output_;
    QCommandLineOption json_;
};

/// A whole number in its limits; the sentence that says why not otherwise.
std::optional<int> wholeNumber(const QString& text, int least, int most) {
    bool fine = false;
    const int value = text.toInt(&fine);
    return fine && value >= least && value <= most ? std::optional(value) : std::nullopt;
}

const QCommandLineOption& seedOption() {
    static const QCommandLineOption option(
        QStringLiteral("seed"), tr("One of the equally good answers, by this number."), QStringLiteral("N"));
    return option;
}

QString readSeed(const QCommandLineParser& parser, std::optional<std::uint32_t>& seed) {
    if (!parser.isSet(seedOption()))
        return {};
    bool fine = false;
    const QString value = parser.value(seedOption());
    seed = value.toUInt(&fine);
    return fine ? QString() : tr("--seed takes a whole number from 0, not “%1”.").arg(value);
}

/// The options that heights and start share.
struct HeightsArguments {
    QCommandLineOption range{QStringLiteral("range"),
                             tr("From so many to so many leaves of a kind on each stem, such as small=8-14; "
                                "once for each kind that shall vary."),
                             QStringLiteral("KIND=LEAST-MOST")};
    QCommandLineOption rest{QStringLiteral("rest"), tr("So many leaves of a kind shall stay in the tray."),
                            QStringLiteral("KIND=N")};
    QCommandLineOption difference{
        QStringLiteral("difference"),
        tr("No two stems closer in height than this, where it can be avoided; start keeps %1 mm without it.")
            .arg(inMillimetres(nearTwin)),
        QStringLiteral("MM")};

    void addTo(QCommandLineParser& parser) const { parser.addOptions({range, rest, difference}); }

    /// Empty where all could be read; otherwise a sentence.
    QString read(const QCommandLineParser& parser, const Plan& plan, HeightsOptions& options) const {
        for (const QString& value : parser.values(range)) {
            const auto [kind, numbers] = split(value);
            const Kind* found = kindNamed(plan, kind);
            if (!found)
                return noKind(plan, kind);
            const QStringList ends = numbers.split(QLatin1Char('-'));
            const auto least = wholeNumber(ends.front(), 0, 100'000);
            const auto most = wholeNumber(ends.back(), 0, 100'000);
            if (ends.size() > 2 || !least || !most)
                return tr("--range takes a kind and its leaves a stem, such as %1=8-14, not “%2”.")
                    .arg(lineText(found->name), value);
            options.ranges.push_back({found->id, *least, *most, std::nullopt});
        }
        for (const QString& value : parser.values(rest)) {
            const auto [kind, number] = split(value);
            const Kind* found = kindNamed(plan, kind);
            if (!found)
                return noKind(plan, kind);
            const auto count = wholeNumber(number, 0, 1'000'000);
            if (!count)
                return tr("--rest takes a kind and a number of leaves, such as %1=4, not “%2”.")
                    .arg(lineText(found->name), value);
            const auto at = std::find_if(options.ranges.begin(), options.ranges.end(),
                                         [&](const KindRange& r) { return r.kind == found->id; });
            if (at == options.ranges.end())
                return tr("--rest names %1, which has no --range.").arg(lineText(found->name));
            at->rest = *count;
        }
        if (parser.isSet(difference)) {
            bool fine = false;
            const double mm = parser.value(difference).toDouble(&fine);
            if (!fine || !(mm >= 0 && mm <= 1000))
                return tr("--difference takes millimetres from 0 to 1000, not “%1”.")
                    .arg(parser.value(difference));
            options.difference = millimetres(mm);
        }
        return {};
    }

private:
    static std::pair<QString, QString> split(const QString& value) {
        const qsizetype at = value.lastIndexOf(QLatin1Char('='));
        return at < 0 ? std::pair(value, QString()) : std::pair(value.left(at), value.mid(at + 1));
    }

    /// By its whole name, or by the beginning of it where only one kind begins so.
    static const Kind* kindNamed(const Plan& plan, const QString& name) {
        const Kind* found = nullptr;
        int fitting = 0;
        for (const Kind& kind : plan.kinds) {
            if (text(kind.name).compare(name, Qt::CaseInsensitive) == 0)
                return &kind;
            if (!name.isEmpty() && text(kind.name).startsWith(name, Qt::CaseInsensitive))
                found = &kind, ++fitting;
        }
        return fitting == 1 ? found : nullptr;
    }

    static QString noKind(const Plan& plan, const QString& name) {
        QStringList names;
        for (const Kind& kind : plan.kinds)
            names << lineText(kind.name);
        return tr("No kind of the plan is meant by “%1”; it has %2.")
            .arg(name, names.isEmpty() ? tr("none") : names.join(QStringLiteral(", ")));
    }
};

QCommandLineOption pairsOption() {
    return {QStringLiteral("matched-pairs"),
            tr("First as few unmatched pairs as can be, then the least unevenness.")};
}

int runSpread(const QStringList& arguments, const CommandStreams& streams) {
    SuggestCommand command("spread",
                           tr("Spreads the colours over the stems with the least unevenness that these "
                              "leaves allow, and writes the plan."));
    const QCommandLineOption pairs = pairsOption();
    const QCommandLineOption any(QStringLiteral("any-leaves"),
                                 tr("Leaves on stems may go back to the tray for others of their kind."));
    command.parser.addOptions({pairs, seedOption(), any});
    if (const auto code = command.begin(arguments, streams))
        return *code;
    SpreadOptions options;
    options.matchedPairs = command.parser.isSet(pairs);
    options.trayUse = command.parser.isSet(any) ? TrayUse::any : TrayUse::keep;
    if (const QString why = readSeed(command.parser, options.seed); !why.isEmpty())
        return streams.unusable(why);
    return command.finish(streams, [&] { return spread(command.plan, options); });
}

int runOrder(const QStringList& arguments, const CommandStreams& streams) {
    SuggestCommand command("order",
                           tr("Puts each stem's leaves in the order of their colours from tip to base, "
                              "smaller kinds above, and writes the plan."));
    const QCommandLineOption first(QStringLiteral("colours-first"),
                                   tr("The order of the colours before matched pairs."));
    command.parser.addOptions({first});
    if (const auto code = command.begin(arguments, streams))
        return *code;
    OrderOptions options;
    options.matchedPairs = !command.parser.isSet(first);
    return command.finish(streams, [&]() -> Result<Suggestion> { return order(command.plan, options); });
}

int runHeights(const QStringList& arguments, const CommandStreams& streams) {
    SuggestCommand command("heights",
                           tr("Gives each stem a number of leaves of each kind within the ranges, so "
                              "that the heights differ as evenly as can be, and writes the plan."));
    const HeightsArguments given;
    given.addTo(command.parser);
    const QCommandLineOption fill(QStringLiteral("fill"),
                                  tr("Fills the places that open from the tray, as evenly as can be."));
    const QCommandLineOption pairs = pairsOption();
    command.parser.addOptions({fill, pairs, seedOption()});
    if (const auto code = command.begin(arguments, streams))
        return *code;
    HeightsOptions options;
    if (const QString why = given.read(command.parser, command.plan, options); !why.isEmpty())
        return streams.unusable(why);
    if (options.ranges.empty())
        return streams.unusable(tr("heights needs --range KIND=LEAST-MOST for each kind that shall vary; see "
                                   "stemwright heights --help."));
    SpreadOptions filling;
    filling.matchedPairs = command.parser.isSet(pairs);
    if (const QString why = readSeed(command.parser, filling.seed); !why.isEmpty())
        return streams.unusable(why);
    return command.finish(streams, [&] {
        return command.parser.isSet(fill) ? heightsFilled(command.plan, options, filling)
                                          : heights(command.plan, options);
    });
}

int runStart(const QStringList& arguments, const CommandStreams& streams) {
    SuggestCommand command("start",
                           tr("Makes a complete board from the stock: stems, heights, colours and their "
                              "order, and writes the plan."));
    const HeightsArguments given;
    given.addTo(command.parser);
    const QCommandLineOption stems(QStringLiteral("stems"),
                                   tr("How many stems; without it, as many as the plan has."),
                                   QStringLiteral("N"));
    const QCommandLineOption loose(QStringLiteral("no-pairs"), tr("Pairs need not match."));
    command.parser.addOptions({stems, loose, seedOption()});
    if (const auto code = command.begin(arguments, streams))
        return *code;
    const int now = static_cast<int>(command.plan.stems.size());
    StartOptions options;
    options.stems = now;
    if (command.parser.isSet(stems)) {
        const auto wanted = wholeNumber(command.parser.value(stems), std::max(1, now), 1'000'000);
        if (!wanted)
            return streams.unusable(
                now > 0
                    ? tr("--stems takes a whole number from %1, since the plan has %1 stems and none is "
                         "taken away, not “%2”.")
                          .arg(now)
                          .arg(command.parser.value(stems))
                    : tr("--stems takes a whole number from 1, not “%1”.").arg(command.parser.value(stems)));
        options.stems = *wanted;
    }
    if (options.stems == 0)
        return streams.unusable(tr("The plan has no stems; start needs --stems N to make some."));
    options.form = startForm(command.plan, tr("Stem").toStdString());
    options.spread.matchedPairs = !command.parser.isSet(loose);
    if (const QString why = readSeed(command.parser, options.spread.seed); !why.isEmpty())
        return streams.unusable(why);
    if (const QString why = given.read(command.parser, command.plan, options.heights); !why.isEmpty())
        return streams.unusable(why);
    if (options.heights.ranges.empty())
        options.heights.ranges = usualRanges(command.plan, options.stems);
    if (!options.heights.difference)
        options.heights.difference = nearTwin;
    return command.finish(streams, [&] { return startMeOff(command.plan, options); });
}

} // namespace

Command spreadCommand() {
    return {"spread", "spread PLAN -o PLAN [--matched-pairs] [--any-leaves] [--seed N] [--json]",
            QT_TRANSLATE_NOOP("CommandLine", "spreads the colours, and says how good that is"), runSpread};
}

Command orderCommand() {
    return {"order", "order PLAN -o PLAN [--colours-first] [--json]",
            QT_TRANSLATE_NOOP("CommandLine", "orders each stem's leaves from tip to base"), runOrder};
}

Command heightsCommand() {
    return {"heights",
            "heights PLAN -o PLAN --range KIND=LEAST-MOST… [--rest KIND=N…] [--difference MM] [--fill] "
            "[--matched-pairs] [--seed N] [--json]",
            QT_TRANSLATE_NOOP("CommandLine", "varies the heights by the leaves on each stem"), runHeights};
}

Command startCommand() {
    return {"start",
            "start PLAN -o PLAN [--stems N] [--range KIND=LEAST-MOST…] [--rest KIND=N…] [--difference MM] "
            "[--no-pairs] [--seed N] [--json]",
            QT_TRANSLATE_NOOP("CommandLine", "makes a complete board from the stock"), runStart};
}

} // namespace stemwright

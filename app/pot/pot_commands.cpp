#include "app/pot/pot_commands.h"

#include "app/command_line.h"
#include "app/command_parts.h"
#include "app/file_store.h"
#include "app/look.h"
#include "app/pot/plant_painter.h"
#include "app/wording.h"

#include "core/suggest/pot_placing.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDir>
#include <QPainter>
#include <QSvgGenerator>

#include <nlohmann/json.hpp>

#include <chrono>
#include <ostream>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("PotCommands", source);
}

bool readAngle(const QString& text, double least, double most, Angle& into) {
    bool number = false;
    const double v = text.toDouble(&number);
    if (!number || !(v >= least && v <= most))
        return false;
    into = degrees(v);
    return true;
}

bool readSize(const QString& text, QSize& into) {
    const QStringList sides = text.split(QLatin1Char('x'));
    bool wide = false, tall = false;
    if (sides.size() != 2)
        return false;
    into = {sides[0].toInt(&wide), sides[1].toInt(&tall)};
    return wide && tall && into.width() >= 16 && into.height() >= 16 && into.width() <= 8000 &&
           into.height() <= 8000;
}

/// In the order of ColourVision.
const QStringList& eyeNames() {
    static const QStringList names{QStringLiteral("full"), QStringLiteral("protan"), QStringLiteral("deutan"),
                                   QStringLiteral("tritan"), QStringLiteral("grey")};
    return names;
}

} // namespace

QByteArray plantPng(const PlantScene& scene, const View& view, QSize size, Ground ground) {
    PlantPicture picture;
    picture.view = view;
    picture.size = size;
    picture.framing = framed(scene, view.tilt(), size);
    picture.fineness = 3;
    QImage image = plantGround(scene, picture, ground);
    QPainter painter(&image);
    painter.drawImage(0, 0, renderPlant(scene, picture));
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    // Nothing of it is transparent.
    image.convertToFormat(QImage::Format_RGB32).save(&buffer, "PNG");
    return bytes;
}

QByteArray plantSvg(const PlantScene& scene, const View& view, QSize size, Ground ground) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setSize(size);
    svg.setViewBox(QRect(QPoint(0, 0), size));
    svg.setResolution(254);
    QPainter painter(&svg);
    painter.fillRect(QRect(QPoint(0, 0), size), ground == Ground::light ? look::paper : look::night);
    paintPlant(painter, scene, view, framed(scene, view.tilt(), size));
    painter.end();
    return bytes;
}

int pictureCommand(const QStringList& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(tr("Paints the plant in its pot: a PNG, or an SVG of shapes."));
    parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
    const QCommandLineOption output = outputOption(tr("The picture to write: .png or .svg."));
    const QCommandLineOption turn(QStringLiteral("turn"), tr("The plant's turn, 0 being its front."),
                                  QStringLiteral("DEG"), QStringLiteral("0"));
    const QCommandLineOption tilt(QStringLiteral("tilt"), tr("From level, 0, to straight above, 90."),
                                  QStringLiteral("DEG"), QStringLiteral("18"));
    const QCommandLineOption size(QStringLiteral("size"), tr("Pixels, such as 1200x900."),
                                  QStringLiteral("WxH"), QStringLiteral("1200x1200"));
    const QCommandLineOption ground(QStringLiteral("ground"), tr("light or dark."), QStringLiteral("GROUND"),
                                    QStringLiteral("light"));
    const QCommandLineOption seenBy(QStringLiteral("eyes"),
                                    tr("Whose: %1.").arg(eyeNames().join(QStringLiteral(", "))),
                                    QStringLiteral("EYES"), eyeNames().front());
    parser.addOptions({output, turn, tilt, size, ground, seenBy});
    if (const auto code = parseCommand(parser, "picture", arguments, streams, 1, 1))
        return *code;
    if (!parser.isSet(output))
        return streams.unusable(
            tr("picture needs -o FILE to say where it goes; see stemwright picture --help."));
    const QString path = parser.value(output);
    const bool svg = path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
    if (!svg && !path.endsWith(QLatin1String(".png"), Qt::CaseInsensitive))
        return streams.unusable(
            tr("-o takes a file that ends in .png or .svg, not “%1”.").arg(QDir::toNativeSeparators(path)));
    Angle turned, tilted;
    QSize measure;
    if (!readAngle(parser.value(turn), -3600, 3600, turned))
        return streams.unusable(
            tr("--turn takes degrees from -3600 to 3600, not “%1”.").arg(parser.value(turn)));
    if (!readAngle(parser.value(tilt), 0, 90, tilted))
        return streams.unusable(tr("--tilt takes degrees from 0 to 90, not “%1”.").arg(parser.value(tilt)));
    if (!readSize(parser.value(size), measure))
        return streams.unusable(
            tr("--size takes a width and a height from 16 to 8000, such as 1200x900, not “%1”.")
                .arg(parser.value(size)));
    const bool dark = parser.value(ground) == QLatin1String("dark");
    if (!dark && parser.value(ground) != QLatin1String("light"))
        return streams.unusable(tr("--ground is light or dark, not “%1”.").arg(parser.value(ground)));
    const qsizetype eyes = eyeNames().indexOf(parser.value(seenBy));
    if (eyes < 0)
        return streams.unusable(tr("--eyes is one of %1, not “%2”.")
                                    .arg(eyeNames().join(QStringLiteral(", ")), parser.value(seenBy)));
    QString why;
    const std::optional<Plan> plan = readPlan(parser.positionalArguments().front(), &why);
    if (!plan)
        return streams.unusable(why);
    const PlantScene scene(*plan, static_cast<ColourVision>(eyes));
    const View view(turned, tilted);
    const Ground under = dark ? Ground::dark : Ground::light;
    const QByteArray bytes =
        svg ? plantSvg(scene, view, measure, under) : plantPng(scene, view, measure, under);
    return writeBytes(bytes, path, &why) ? exitFine : streams.unusable(why);
}

int placeCommand(const QStringList& arguments, const CommandStreams& streams) {
    QCommandLineParser parser;
    parser.setApplicationDescription(tr(
        "Finds which stem stands where in the pot: tall ones to the middle or the back, neighbours unlike in "
        "height and colour, evenly spaced; and writes the plan."));
    parser.addPositionalArgument(QStringLiteral("PLAN"), tr("The plan's file."));
    const QCommandLineOption output = outputOption(tr("The plan to write; it may be the same."));
    const QCommandLineOption seed(QStringLiteral("seed"),
                                  tr("One of the equally good answers, by this number."), QStringLiteral("N"));
    const QCommandLineOption json(QStringLiteral("json"), tr("The outcome as JSON."));
    parser.addOptions({output, seed, json});
    if (const auto code = parseCommand(parser, "place", arguments, streams, 1, 1))
        return *code;
    if (!parser.isSet(output))
        return streams.unusable(
            tr("place needs -o PLAN to say where the plan goes; see stemwright place --help."));
    PlacingOptions options;
    if (parser.isSet(seed)) {
        bool fine = false;
        options.seed = parser.value(seed).toUInt(&fine);
        if (!fine)
            return streams.unusable(
                tr("--seed takes a whole number from 0, not “%1”.").arg(parser.value(seed)));
    }
    QString why;
    const std::optional<Plan> plan = readPlan(parser.positionalArguments().front(), &why);
    if (!plan)
        return streams.unusable(why);
    options.viewedFrom = plan->pot.viewedFrom;
    const auto start = std::chrono::steady_clock::now();
    const Suggestion found = placeInPot(*plan, options);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    if (!writePlan(taken(*plan, found), parser.value(output), &why))
        return streams.unusable(why);
    if (parser.isSet(json)) {
        const nlohmann::ordered_json out{{"placing_before", found.before}, {"placing_after", found.after},
                                         {"placing_bound", found.bound},   {"proved", found.proved},
                                         {"stems_moved", found.moved},     {"time_ms", took.count()}};
        streams.out << out.dump(2) << '\n';
        return exitFine;
    }
    streams.say(tr("placing %1 → %2; none below %3 is possible (%4)\n")
                    .arg(shareText(found.before), shareText(found.after), shareText(found.bound),
                         found.proved ? tr("proved the best") : tr("not proved the best")));
    streams.say(tr("%1 stems change place, in %2 ms\n").arg(found.moved).arg(took.count(), 0, 'f', 1));
    return exitFine;
}

} // namespace stemwright

#include "app/leaves/mix_text.h"

#include "app/fields/entry.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("MixText", source);
}

constexpr double leastShare = 1e-6, mostShare = 1e6; // as firstProblem has them

const Colour* named(const Plan& plan, const QString& name) {
    for (const Colour& colour : plan.colours)
        if (text(colour.name).trimmed().compare(name, Qt::CaseInsensitive) == 0)
            return &colour;
    return nullptr;
}

} // namespace

QString mixText(const Plan& plan, const std::vector<BeadShare>& colours) {
    const bool alike =
        std::all_of(colours.begin(), colours.end(), [](const BeadShare& s) { return s.share == 1; });
    QStringList parts;
    for (const BeadShare& share : colours) {
        const Colour* colour = find(plan, share.colour);
        const QString name = colour ? text(colour->name) : QString();
        // A name that ends in a number would be read as a share.
        const bool number = !name.isEmpty() && name.back().isDigit();
        parts += alike && !number ? name : name + QLatin1Char(' ') + entryText(share.share, 6);
    }
    return parts.join(QStringLiteral(" + "));
}

QString readMix(const Plan& plan, const QString& line, std::vector<BeadShare>& colours) {
    static const QRegularExpression mark(QStringLiteral("[+;/·]"));
    static const QRegularExpression share(QStringLiteral("^(.*?)\\s+([0-9][0-9.,]*)\\s*%?$"));
    const std::vector<BeadShare> before = std::move(colours);
    colours.clear();
    for (const QString& part : line.split(mark)) {
        const QString item = part.simplified();
        if (item.isEmpty())
            return tr("A colour is missing between the signs.");
        BeadShare read;
        const Colour* colour = nullptr;
        if (const auto match = share.match(item); match.hasMatch()) {
            colour = named(plan, match.captured(1));
            const Entry<double> value = readNumber(match.captured(2), leastShare, mostShare, 6);
            if (colour && !value.value)
                return value.refusal;
            if (colour)
                read.share = *value.value;
        }
        if (!colour)
            colour = named(plan, item);
        if (!colour)
            return tr("There is no colour “%1” in this plan.").arg(item.left(40));
        read.colour = colour->id;
        // What a newer version keeps with a share stays with its colour.
        for (const BeadShare& old : before)
            if (old.colour == read.colour)
                read.extra = old.extra;
        colours.push_back(std::move(read));
    }
    return {};
}

} // namespace stemwright

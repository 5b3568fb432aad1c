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

QString renamedMix(const Plan& plan, const Mix& mix, const Colour& colour, const QString& newName) {
    const QString name = text(mix.name), old = text(colour.name).trimmed();
    if (old.isEmpty() || newName.isEmpty())
        return name;
    const auto found = [](const QString& words) {
        return QRegularExpression(QStringLiteral("(?<![\\p{L}\\p{N}])") + QRegularExpression::escape(words) +
                                      QStringLiteral("(?![\\p{L}\\p{N}])"),
                                  QRegularExpression::CaseInsensitiveOption |
                                      QRegularExpression::UseUnicodePropertiesOption);
    };
    // Where longer names of its other colours stand: those words are theirs.
    QList<QPair<qsizetype, qsizetype>> taken;
    for (const BeadShare& share : mix.colours)
        if (const Colour* other = find(plan, share.colour); other && other->id != colour.id)
            if (const QString words = text(other->name).trimmed(); words.size() > old.size())
                for (auto it = found(words).globalMatch(name); it.hasNext();) {
                    const auto match = it.next();
                    taken += {match.capturedStart(), match.capturedEnd()};
                }
    QString out;
    qsizetype from = 0;
    for (auto it = found(old).globalMatch(name); it.hasNext();) {
        const auto match = it.next();
        if (std::any_of(taken.begin(), taken.end(), [&](const auto& range) {
                return match.capturedStart() >= range.first && match.capturedEnd() <= range.second;
            }))
            continue;
        // A name in the middle of words is written small where it was: "Plum on frost".
        QString word = newName;
        if (match.captured().front().isLower() && old.front().isUpper())
            word[0] = word[0].toLower();
        out += name.mid(from, match.capturedStart() - from) + word;
        from = match.capturedEnd();
    }
    return out + name.mid(from);
}

} // namespace stemwright

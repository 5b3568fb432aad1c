#include "app/leaves/colours_model.h"

#include "app/fields/entry.h"
#include "app/leaves/leaf_pictures.h"
#include "app/leaves/mix_text.h"
#include "app/wording.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

ColoursModel::ColoursModel(Session& session, QObject* parent) : PartsModel(session, parent) {
    refresh();
}

QColor ColoursModel::shade(int line) const {
    return toColour(part(line).srgb);
}

QString ColoursModel::fieldName(int field) const {
    switch (field) {
    case Field::name:
        return tr("Name");
    case Field::value:
        return tr("Colour");
    default:
        return tr("Beads");
    }
}

bool ColoursModel::editable(int, int field) const {
    return field != Field::beads;
}

QString ColoursModel::shown(int line, int field) const {
    const auto at = static_cast<std::size_t>(line);
    const Colour& colour = plan().colours.at(at);
    switch (field) {
    case Field::name:
        return text(colour.name);
    case Field::value:
        return text(toText(colour.srgb));
    default: {
        const auto& all = session().figures().pot.allBeads;
        return at < all.size() ? countText(all[at]) : QString();
    }
    }
}

QVariant ColoursModel::more(int line, int field, int role) const {
    if (role == Qt::DecorationRole && field == Field::value)
        return swatch(shade(line));
    if (role == Qt::ToolTipRole && field == Field::beads)
        return tr("Beads of this colour in all leaves, made and to make");
    if (role == Qt::TextAlignmentRole && field == Field::beads)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    return {};
}

QString ColoursModel::write(Plan& draft, int line, int field, const QString& typed) const {
    Colour& colour = part(draft, line);
    if (field == Field::name) {
        const QString name = typed.trimmed();
        if (const QString why = nameRefusal(name); !why.isEmpty())
            return why;
        // Mixes that are named after it go by its new name.
        for (Mix& mix : draft.mixes)
            if (std::any_of(mix.colours.begin(), mix.colours.end(),
                            [&](const BeadShare& share) { return share.colour == colour.id; }))
                if (const QString renamed = renamedMix(draft, mix, colour, name);
                    nameRefusal(renamed).isEmpty())
                    mix.name = renamed.toStdString();
        colour.name = name.toStdString();
        return {};
    }
    // Spreadsheets drop the sign, and people write capitals.
    QString value = typed.trimmed();
    if (value.size() == 6 && !value.startsWith(QLatin1Char('#')))
        value.prepend(QLatin1Char('#'));
    const auto srgb = parseSrgb(value.toStdString());
    if (!srgb)
        return tr("“%1” is no colour; one is written #rrggbb, such as #6a9a86.").arg(typed.trimmed().left(40));
    colour.srgb = *srgb;
    return {};
}

bool ColoursModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    const std::vector<Mix> before = plan().mixes;
    if (!TableModel::setData(index, value, role))
        return false;
    QStringList renamed;
    for (const Mix& mix : before)
        if (const Mix* now = find(plan(), mix.id); now && now->name != mix.name)
            renamed += tr("%1 is now %2", "a mix by its old and new name").arg(text(mix.name), text(now->name));
    if (!renamed.isEmpty())
        Q_EMIT noted(tr("Mixes named after the colour: %1. Undo takes all of it back.")
                         .arg(renamed.join(QStringLiteral(", "))));
    return true;
}

QString ColoursModel::addTo(Plan& draft) const {
    // Each new colour is unlike the ones before it: hues a golden section apart.
    const auto count = static_cast<double>(draft.colours.size());
    double whole = 0;
    const QColor shade =
        QColor::fromHslF(static_cast<float>(std::modf(0.4 + count * 0.6180339887, &whole)), 0.28f, 0.5f);
    draft.colours.push_back({freeColourId(draft),
                             tr("Colour %1").arg(draft.colours.size() + 1).toStdString(),
                             {static_cast<std::uint8_t>(shade.red()), static_cast<std::uint8_t>(shade.green()),
                              static_cast<std::uint8_t>(shade.blue())},
                             ""});
    return {};
}

} // namespace stemwright

#include "app/leaves/colours_model.h"

#include "app/fields/entry.h"
#include "app/leaves/leaf_pictures.h"
#include "app/wording.h"

#include <cmath>

namespace stemwright {

ColoursModel::ColoursModel(Session& session, QObject* parent) : TableModel(session, parent) {
    refresh();
}

QColor ColoursModel::shade(int line) const {
    return toColour(plan().colours.at(static_cast<std::size_t>(line)).srgb);
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

QString ColoursModel::lineName(int line) const {
    return text(plan().colours.at(static_cast<std::size_t>(line)).name);
}

bool ColoursModel::editable(int, int field) const {
    return field != Field::beads;
}

std::vector<std::uint32_t> ColoursModel::keysOf(const Plan& plan) const {
    std::vector<std::uint32_t> keys;
    for (const Colour& colour : plan.colours)
        keys.push_back(colour.id.value);
    return keys;
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
    Colour& colour = draft.colours.at(static_cast<std::size_t>(line));
    if (field == Field::name) {
        colour.name = typed.trimmed().toStdString();
        return nameRefusal(typed.trimmed());
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

std::optional<Edit> ColoursModel::removal(const QList<int>& lines, QString&) const {
    Batch batch{Deed::removePart, {}};
    for (const int line : lines)
        batch.edits.push_back(Remove<ColourId>{colour(line)});
    return batch.edits.size() == 1 ? batch.edits.front() : Edit(std::move(batch));
}

std::optional<Edit> ColoursModel::moving(int line, int to) const {
    return Edit(Move<ColourId>{colour(line), to});
}

} // namespace stemwright

#include "app/leaves/leaf_rows_model.h"

#include "app/fields/entry.h"
#include "app/leaves/leaf_pictures.h"
#include "app/look.h"
#include "app/wording.h"
#include "core/figures/leaf_make.h"
#include "core/plan/limits.h"

#include <QFont>

#include <algorithm>
#include <numeric>

namespace stemwright {

LeafRowsModel::LeafRowsModel(Session& session, QObject* parent) : TableModel(session, parent) {
    refresh();
}

void LeafRowsModel::setLeaf(Leaf leaf) {
    if (leaf == leaf_)
        return;
    leaf_ = leaf;
    refresh();
}

std::vector<std::uint32_t> LeafRowsModel::keysOf(const Plan& plan) const {
    const Kind* kind = find(plan, leaf_.kind);
    const Mix* mix = find(plan, leaf_.mix);
    std::vector<RowLine> rows;
    if (kind)
        rows = rowLines(*kind, mix);
    // Rows have no id. Another leaf, or another number of colours or rows, is another table.
    const auto colours = mix ? static_cast<std::uint32_t>(mix->colours.size()) : 0;
    const std::uint32_t table = ((leaf_.kind.value * 31 + leaf_.mix.value) * 31 + colours) * 31 +
                                static_cast<std::uint32_t>(rows.size());
    std::vector<std::uint32_t> keys;
    for (std::size_t i = 0; kind && i <= rows.size(); ++i)
        keys.push_back(table * 128 + static_cast<std::uint32_t>(i));
    if (&plan == &this->plan())
        rows_ = std::move(rows);
    return keys;
}

const RowLine* LeafRowsModel::row(int line) const {
    return line >= 0 && line < static_cast<int>(rows_.size()) ? &rows_[static_cast<std::size_t>(line)]
                                                              : nullptr;
}

bool LeafRowsModel::hers(int line) const {
    const Kind* kind = shownKind();
    if (!kind)
        return false;
    if (sum(line))
        return !kind->make || kind->own.beads;
    const RowLine* at = row(line);
    return at && at->counted;
}

bool LeafRowsModel::anyHers() const {
    const Kind* kind = shownKind();
    return kind && kind->make &&
           (!kind->make->counted.empty() || kind->own.beads || kind->own.wire || kind->own.length ||
            kind->own.width || kind->own.wiresAtBase);
}

bool LeafRowsModel::giveBack() {
    if (!anyHers())
        return false;
    Plan draft = plan();
    Kind* kind = find(draft, leaf_.kind);
    kind->make->counted.clear();
    OwnMeasures none;
    none.extra = kind->own.extra;
    kind->own = none;
    static_cast<KindForm&>(*kind) = followPattern(draft, *kind);
    return commit(draft, deed());
}

int LeafRowsModel::fields() const {
    const Mix* mix = shownMix();
    return Field::firstColour + (mix ? static_cast<int>(mix->colours.size()) : 0);
}

QString LeafRowsModel::fieldName(int field) const {
    switch (field) {
    case Field::beads:
        return tr("Beads");
    case Field::whose:
        return tr("Whose");
    default: {
        const Mix* mix = shownMix();
        const auto at = static_cast<std::size_t>(field - Field::firstColour);
        const Colour* colour =
            mix && at < mix->colours.size() ? find(plan(), mix->colours[at].colour) : nullptr;
        return colour ? text(colour->name) : QString();
    }
    }
}

QVariant LeafRowsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Horizontal && section >= Field::firstColour && section < fields()) {
        const BeadShare& share = shownMix()->colours[static_cast<std::size_t>(section - Field::firstColour)];
        const Colour* colour = find(plan(), share.colour);
        if (role == Qt::DecorationRole && colour)
            return swatch(toColour(colour->srgb));
        if (role == Qt::ToolTipRole)
            return fieldName(section);
    }
    return TableModel::headerData(section, orientation, role);
}

QString LeafRowsModel::lineName(int line) const {
    const RowLine* at = row(line);
    return at ? at->name : tr("all", "the sum of all rows");
}

bool LeafRowsModel::editable(int, int field) const {
    return field == Field::beads;
}

std::optional<QString> LeafRowsModel::emptied(int field) const {
    return field == Field::beads ? std::optional(QString()) : std::nullopt;
}

QString LeafRowsModel::shown(int line, int field) const {
    if (field == Field::whose)
        return hers(line) ? tr("✎ yours") : sum(line) ? QString() : tr("reckoned");
    const RowLine* at = row(line);
    if (field == Field::beads)
        return countText(at ? at->beads : shownKind() ? shownKind()->beads : 0);
    const auto colour = static_cast<std::size_t>(field - Field::firstColour);
    const auto beadsOf = [colour](const RowLine& each) {
        return colour < each.colours.size() ? each.colours[colour] : 0;
    };
    if (at)
        return beadsOf(*at) > 0 ? countText(beadsOf(*at)) : QString();
    return countText(std::accumulate(rows_.begin(), rows_.end(), 0,
                                     [&](int all, const RowLine& each) { return all + beadsOf(each); }));
}

QString LeafRowsModel::typed(int line, int field) const {
    return shown(line, field);
}

QVariant LeafRowsModel::more(int line, int field, int role) const {
    switch (role) {
    case Qt::TextAlignmentRole:
        return field == Field::whose ? QVariant() : QVariant(Qt::AlignRight | Qt::AlignVCenter);
    case Qt::FontRole:
        return sum(line) || (field <= Field::whose && hers(line)) ? QVariant(look::font(look::Type::strong))
                                                                  : QVariant();
    case Qt::ForegroundRole:
        return field == Field::whose && !hers(line) ? QVariant(look::quiet) : QVariant(look::ink);
    case Qt::ToolTipRole:
        if (field == Field::beads || field == Field::whose)
            return hers(line) ? tr("You counted this on a real leaf. Delete gives it back to the pattern.")
                              : tr("Write here what you counted on a real leaf.");
        return {};
    default:
        return {};
    }
}

QString LeafRowsModel::write(Plan& draft, int line, int, const QString& text) const {
    Kind* kind = find(draft, leaf_.kind);
    if (!kind)
        return tr("this kind is gone.");
    const QString plain = text.trimmed();
    const RowLine* at = row(line);
    if (!at && (!kind->make || !plain.isEmpty())) {
        const Entry<int> beads = readCount(plain, 1, limits::beads);
        if (!beads.value)
            return beads.refusal;
        kind->beads = *beads.value;
        kind->own.beads = kind->make.has_value();
        return {};
    }
    if (at && (at->row < 0 || !kind->make))
        return tr("this kind is measured as a whole; give it a pattern first, and its rows can be counted.");
    if (!at) {
        kind->own.beads = false;
    } else {
        std::vector<CountedRow>& counted = kind->make->counted;
        const auto found = std::find_if(counted.begin(), counted.end(),
                                        [at](const CountedRow& each) { return each.row == at->row; });
        if (plain.isEmpty()) {
            if (found != counted.end())
                counted.erase(found);
        } else {
            const Entry<int> beads = readCount(plain, 1, limits::beads);
            if (!beads.value)
                return beads.refusal;
            if (found != counted.end())
                found->beads = *beads.value;
            else
                counted.insert(std::find_if(counted.begin(), counted.end(),
                                            [at](const CountedRow& each) { return each.row > at->row; }),
                               CountedRow{at->row, *beads.value});
        }
    }
    static_cast<KindForm&>(*kind) = followPattern(draft, *kind);
    if (kind->beads > limits::beads)
        return tr("%1 beads are the most in one leaf.").arg(countText(limits::beads));
    return {};
}

QString LeafRowsModel::addTo(Plan&) const {
    return tr("How many rows a leaf has is set in its pattern.");
}

std::optional<Edit> LeafRowsModel::removal(const QList<int>&, QString& why) const {
    why = tr("How many rows a leaf has is set in its pattern.");
    return std::nullopt;
}

std::optional<Edit> LeafRowsModel::moving(int, int) const {
    return std::nullopt;
}

} // namespace stemwright

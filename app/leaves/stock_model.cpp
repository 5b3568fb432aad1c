#include "app/leaves/stock_model.h"

#include "app/fields/entry.h"
#include "app/look.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QFont>

#include <algorithm>

namespace stemwright {

StockModel::StockModel(Session& session, QObject* parent) : TableModel(session, parent) {
    refresh();
}

void StockModel::setKind(KindId kind) {
    if (kind == kind_)
        return;
    kind_ = kind;
    refresh();
}

const Kind* StockModel::shownKind() const {
    return find(plan(), kind_);
}

std::vector<MixId> StockModel::missing() const {
    std::vector<MixId> mixes;
    if (const Kind* kind = shownKind())
        for (const Mix& mix : plan().mixes)
            if (!stockLine(*kind, mix.id))
                mixes.push_back(mix.id);
    return mixes;
}

bool StockModel::addLine(MixId mix) {
    Plan draft = plan();
    Kind* kind = find(draft, kind_);
    if (!kind || stockLine(*kind, mix))
        return false;
    kind->stock.push_back({mix, 0, 0, ""});
    return commit(draft, deed());
}

bool StockModel::pasteByMix(const QList<QStringList>& cells) {
    Plan draft = plan();
    Kind* kind = find(draft, kind_);
    if (!kind)
        return false;
    // Where each field stands: by a row of names above, or as the table has them.
    std::vector<int> fieldOf{Field::mixName, Field::made, Field::toMake};
    const auto header = cells.size() > 1 ? headerFields(cells.front()) : std::nullopt;
    if (header)
        fieldOf = *header;
    const auto columnOf = [&](int field) {
        const auto at = std::find(fieldOf.begin(), fieldOf.end(), field);
        return at == fieldOf.end() ? qsizetype(-1) : qsizetype(at - fieldOf.begin());
    };
    if (columnOf(Field::mixName) < 0) {
        Q_EMIT refused(
            tr("None of the columns that were pasted is named “Mix”, so nobody knows which is which."));
        return false;
    }
    for (int row = header ? 1 : 0; row < cells.size(); ++row) {
        const QString wanted = cells[row].value(columnOf(Field::mixName)).trimmed();
        const auto refuse = [&](const QString& why) {
            Q_EMIT refused(tr("Row %1 of what was pasted: %2").arg(row + 1).arg(why));
            return false;
        };
        const Mix* mix = nullptr;
        for (const Mix& each : draft.mixes)
            if (text(each.name).trimmed().compare(wanted, Qt::CaseInsensitive) == 0 ||
                text(each.code) == wanted ||
                tr("%1  %2", "a mix by its code and name").arg(text(each.code), text(each.name)) == wanted)
                mix = mix ? mix : &each;
        if (!mix)
            return refuse(tr("there is no mix “%1” in this plan.").arg(wanted.left(40)));
        auto line = std::find_if(kind->stock.begin(), kind->stock.end(),
                                 [&](const StockLine& each) { return each.mix == mix->id; });
        if (line == kind->stock.end())
            line = kind->stock.insert(line, {mix->id, 0, 0, ""});
        // What is reckoned may have been copied along; it is not read.
        for (const int field : {Field::made, Field::toMake}) {
            const qsizetype column = columnOf(field);
            if (column < 0 || column >= cells[row].size())
                continue;
            if (const QString why = writeCount(draft, *line, field, cells[row][column]); !why.isEmpty())
                return refuse(tr("%1, %2: %3").arg(text(mix->name), fieldName(field), why));
        }
    }
    return commit(draft, Deed::paste);
}

QString StockModel::fieldName(int field) const {
    switch (field) {
    case Field::mixName:
        return tr("Mix, tip to base");
    case Field::made:
        return tr("Made");
    case Field::toMake:
        return tr("To make");
    case Field::onStems:
        return tr("On stems");
    default:
        return tr("In the tray");
    }
}

QString StockModel::lineName(int line) const {
    return nameText(plan(), mix(line));
}

bool StockModel::editable(int, int field) const {
    return field == Field::made || field == Field::toMake;
}

std::optional<QString> StockModel::emptied(int) const {
    return QStringLiteral("0");
}

std::vector<std::uint32_t> StockModel::keysOf(const Plan& plan) const {
    std::vector<std::uint32_t> keys;
    if (const Kind* kind = find(plan, kind_))
        for (const StockLine& line : kind->stock)
            keys.push_back(line.mix.value);
    return keys;
}

int StockModel::placedOf(int line) const {
    // The lines of the figures are those of all kinds, one kind after the other.
    std::size_t at = static_cast<std::size_t>(line);
    for (const Kind& kind : plan().kinds) {
        if (kind.id == kind_)
            break;
        at += kind.stock.size();
    }
    const std::vector<TrayLine>& all = session().figures().lines;
    return at < all.size() ? all[at].placed : 0;
}

QString StockModel::shown(int line, int field) const {
    const StockLine& stock = shownKind()->stock.at(static_cast<std::size_t>(line));
    switch (field) {
    case Field::mixName: {
        const Mix* mix = find(plan(), stock.mix);
        return mix ? tr("%1  %2", "a mix by its code and name").arg(text(mix->code), text(mix->name))
                   : QString();
    }
    case Field::made:
        return countText(stock.made);
    case Field::toMake:
        return countText(stock.toMake);
    case Field::onStems:
        return countText(placedOf(line));
    default:
        return countText(stock.total() - placedOf(line));
    }
}

QString StockModel::typed(int line, int field) const {
    return field == Field::mixName ? lineName(line) : shown(line, field);
}

QVariant StockModel::more(int line, int field, int role) const {
    switch (role) {
    case Qt::DecorationRole:
        if (field == Field::mixName)
            return pictures_.picture(lookOf(plan(), {kind_, mix(line)}), {44, 24});
        return {};
    case Qt::TextAlignmentRole:
        return field == Field::mixName ? QVariant() : QVariant(Qt::AlignRight | Qt::AlignVCenter);
    case Qt::ForegroundRole:
        if (field == Field::mixName)
            return look::ink;
        if (field > Field::mixName && shown(line, field) == QLatin1String("0"))
            return look::quiet;
        return {};
    default:
        return {};
    }
}

QString StockModel::writeCount(Plan&, StockLine& line, int field, const QString& typed) const {
    // A spreadsheet leaves blank where there is none.
    const Entry<int> count = typed.trimmed().isEmpty() ? Entry<int>{0, {}} : readCount(typed, 0, limits::stock);
    if (count.value)
        (field == Field::made ? line.made : line.toMake) = *count.value;
    return count.refusal;
}

QString StockModel::write(Plan& draft, int line, int field, const QString& typed) const {
    Kind* kind = find(draft, kind_);
    return kind ? writeCount(draft, kind->stock.at(static_cast<std::size_t>(line)), field, typed) : QString();
}

QString StockModel::addTo(Plan& draft) const {
    Kind* kind = find(draft, kind_);
    if (!kind)
        return tr("Stock is counted by kind: add a kind first.");
    for (const Mix& mix : draft.mixes)
        if (!stockLine(*kind, mix.id)) {
            kind->stock.push_back({mix.id, 0, 0, ""});
            return {};
        }
    return draft.mixes.empty()
               ? tr("Stock is counted by mix: add a mix first.")
               : tr("Every mix of this plan is in the stock of %1 already.").arg(text(kind->name));
}

std::optional<Edit> StockModel::removal(const QList<int>& lines, QString& why) const {
    std::vector<StockLine> stock;
    for (int line = 0; line < this->lines(); ++line) {
        if (!lines.contains(line)) {
            stock.push_back(shownKind()->stock[static_cast<std::size_t>(line)]);
        } else if (const int count = placedOf(line); count > 0) {
            why = tr("%1 cannot go: %n of these leaves are on stems.", nullptr, count).arg(lineName(line));
            return std::nullopt;
        }
    }
    return Edit(SetStock{kind_, std::move(stock)});
}

std::optional<Edit> StockModel::moving(int line, int to) const {
    std::vector<StockLine> stock = shownKind()->stock;
    const auto from = stock.begin() + line;
    if (to < line)
        std::rotate(stock.begin() + to, from, from + 1);
    else
        std::rotate(from, from + 1, stock.begin() + to + 1);
    return Edit(SetStock{kind_, std::move(stock)});
}

} // namespace stemwright

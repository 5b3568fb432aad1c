#include "app/leaves/table_model.h"

#include "app/leaves/draft.h"
#include "app/look.h"
#include "app/messages.h"

#include <QRegularExpression>

#include <algorithm>

namespace stemwright {

TableModel::TableModel(Session& session, QObject* parent) : QAbstractTableModel(parent), session_(session) {
    connect(&session_, &Session::changed, this, &TableModel::refresh);
}

bool TableModel::editable(int, int) const {
    return true;
}
QStringList TableModel::choices(int, int) const {
    return {};
}
std::optional<QString> TableModel::emptied(int) const {
    return std::nullopt;
}
QVariant TableModel::more(int, int, int) const {
    return {};
}
QString TableModel::verify(const Plan&) const {
    return {};
}
const Plan& TableModel::plan() const {
    return session_.plan();
}

int TableModel::lineOf(const QModelIndex& index) const {
    return transposed() ? index.column() : index.row();
}
int TableModel::fieldOf(const QModelIndex& index) const {
    return transposed() ? index.row() : index.column();
}
QModelIndex TableModel::at(int line, int field) const {
    return transposed() ? index(field, line) : index(line, field);
}
std::uint32_t TableModel::key(int line) const {
    return line >= 0 && line < lines() ? keys_[static_cast<std::size_t>(line)] : 0;
}
int TableModel::lineOfKey(std::uint32_t key) const {
    const auto it = std::find(keys_.begin(), keys_.end(), key);
    return it == keys_.end() ? -1 : static_cast<int>(it - keys_.begin());
}

int TableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : transposed() ? fields() : lines();
}
int TableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : transposed() ? lines() : fields();
}

void TableModel::refresh() {
    std::vector<std::uint32_t> now = keysOf(plan());
    if (now != keys_) {
        beginResetModel();
        keys_ = std::move(now);
        endResetModel();
    } else if (rowCount() > 0 && columnCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        Q_EMIT headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
    }
}

QVariant TableModel::data(const QModelIndex& index, int role) const {
    const int line = lineOf(index), field = fieldOf(index);
    if (!index.isValid() || line >= lines() || field >= fields())
        return {};
    switch (role) {
    case Qt::DisplayRole:
        return shown(line, field);
    case Qt::EditRole:
        return typed(line, field);
    case Qt::AccessibleTextRole:
        return tr("%1, %2: %3").arg(lineName(line), fieldName(field), shown(line, field));
    case Qt::ForegroundRole:
        if (QVariant own = more(line, field, role); own.isValid())
            return own;
        return editable(line, field) ? QVariant() : QVariant(look::quiet);
    default:
        return more(line, field, role);
    }
}

QVariant TableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole)
        return QAbstractTableModel::headerData(section, orientation, role);
    const bool ofLine = (orientation == Qt::Vertical) != transposed();
    if (section < 0 || section >= (ofLine ? lines() : fields()))
        return {};
    return ofLine ? lineName(section) : fieldName(section);
}

Qt::ItemFlags TableModel::flags(const QModelIndex& index) const {
    if (!index.isValid())
        return Qt::NoItemFlags;
    const Qt::ItemFlags all = Qt::ItemIsSelectable | Qt::ItemIsEnabled | Qt::ItemNeverHasChildren;
    return editable(lineOf(index), fieldOf(index)) ? all | Qt::ItemIsEditable : all;
}

QString TableModel::at(int line, int field, const QString& why) const {
    const QString name = line < lines() ? lineName(line) : tr("line %1").arg(line + 1);
    return tr("%1, %2: %3", "a cell by its line and field, and what is wrong there")
        .arg(name, fieldName(field), why);
}

QString TableModel::whyNot(const Edit& edit) const {
    Plan trial = plan();
    const Result<Edit> done = apply(trial, edit);
    return done ? QString() : sentence(done.problem());
}

QString TableModel::refusal(const QModelIndex& index, const QString& typed) const {
    if (typed == data(index, Qt::EditRole).toString())
        return {};
    const int line = lineOf(index), field = fieldOf(index);
    Plan draft = plan();
    if (const QString why = write(draft, line, field, typed); !why.isEmpty())
        return at(line, field, why);
    if (const QString why = verify(draft); !why.isEmpty())
        return at(line, field, why);
    const auto edit = difference(plan(), draft, deed());
    if (const QString why = edit ? whyNot(*edit) : QString(); !why.isEmpty())
        return at(line, field, why);
    return {};
}

bool TableModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !index.isValid())
        return false;
    const QString typed = value.toString();
    if (typed == data(index, Qt::EditRole).toString())
        return true;
    if (const QString why = refusal(index, typed); !why.isEmpty()) {
        Q_EMIT refused(why);
        return false;
    }
    Plan draft = plan();
    write(draft, lineOf(index), fieldOf(index), typed);
    return commit(draft, deed());
}

std::optional<std::vector<int>> TableModel::headerFields(const QStringList& row) const {
    std::vector<int> found;
    int known = 0;
    for (const QString& cell : row) {
        const QString word = cell.trimmed();
        // What holds a figure or a colour is no heading.
        if (word.contains(QRegularExpression(QStringLiteral("[0-9#]"))))
            return std::nullopt;
        int at = -1;
        for (int field = 0; field < fields() && at < 0 && !word.isEmpty(); ++field)
            // "Mix" is enough for "Mix, tip to base".
            if (const QString name = fieldName(field);
                name.compare(word, Qt::CaseInsensitive) == 0 ||
                name.section(QLatin1Char(','), 0, 0).compare(word, Qt::CaseInsensitive) == 0)
                at = field;
        known += at >= 0 ? 1 : 0;
        found.push_back(at);
    }
    // One word may be a value; of several, most must be names of fields.
    if (known == 0 || 2 * known < static_cast<int>(found.size()))
        return std::nullopt;
    return found;
}

bool TableModel::unknownField(const QString& name) {
    Q_EMIT refused(tr("“%1” above what was pasted is none of the fields here.").arg(name.trimmed().left(40)));
    return false;
}

bool TableModel::paste(const QModelIndex& from, const QList<QStringList>& cells) {
    if (cells.isEmpty())
        return true;
    QList<QStringList> body = cells;
    QStringList names;
    if (transposed()) {
        for (const QStringList& row : cells)
            names += row.value(0);
        for (QStringList& row : body)
            row = row.mid(1);
    } else {
        names = cells.front();
        body.removeFirst();
    }
    const bool more = !body.isEmpty() && !body.front().isEmpty();
    const auto header = more ? headerFields(names) : std::nullopt;
    if (!header)
        return pasteCells(from, cells, {});
    for (std::size_t i = 0; i < header->size(); ++i)
        if ((*header)[i] < 0 && !names[static_cast<qsizetype>(i)].trimmed().isEmpty())
            return unknownField(names[static_cast<qsizetype>(i)]);
    return pasteCells(from, body, *header);
}

bool TableModel::pasteCells(const QModelIndex& from, const QList<QStringList>& cells,
                            const std::vector<int>& fieldOf) {
    Plan draft = plan();
    const QModelIndex start = from.isValid() ? from : at(lines(), 0);
    const int row = from.isValid() ? start.row() : (transposed() ? 0 : lines());
    const int column = from.isValid() ? start.column() : (transposed() ? lines() : 0);
    for (int r = 0; r < cells.size(); ++r)
        for (int c = 0; c < cells[r].size(); ++c) {
            const int line = transposed() ? column + c : row + r;
            int field = transposed() ? row + r : column + c;
            if (const auto named = static_cast<std::size_t>(transposed() ? r : c); !fieldOf.empty()) {
                field = named < fieldOf.size() ? fieldOf[named] : fields();
                if (field < 0)
                    continue; // a column without a name
            }
            if (field >= fields()) {
                Q_EMIT refused(transposed() ? tr("What was pasted has %1 rows, and only %2 fit from here.")
                                                  .arg(cells.size())
                                                  .arg(fields() - row)
                                            : tr("What was pasted has %1 columns, and only %2 fit from here.")
                                                  .arg(cells[r].size())
                                                  .arg(fields() - column));
                return false;
            }
            QString why;
            while (why.isEmpty() && line >= static_cast<int>(keysOf(draft).size()))
                why = addTo(draft);
            const QString& text = cells[r][c];
            if (why.isEmpty() && !editable(line, field)) {
                // What is reckoned comes along with a heading, and is not read.
                if (!fieldOf.empty() || (line < lines() && text.trimmed() == shown(line, field)))
                    continue;
                why = tr("this is reckoned and cannot be set.");
            }
            if (why.isEmpty())
                why = write(draft, line, field, text);
            if (!why.isEmpty()) {
                Q_EMIT refused(at(line, field, why));
                return false;
            }
        }
    return commit(draft, Deed::paste);
}

bool TableModel::fill(const QModelIndexList& cells, const QString& typed) {
    Plan draft = plan();
    for (const QModelIndex& index : cells) {
        const int line = lineOf(index), field = fieldOf(index);
        const QString why = editable(line, field) ? write(draft, line, field, typed)
                                                  : tr("this is reckoned and cannot be set.");
        if (!why.isEmpty()) {
            Q_EMIT refused(at(line, field, why));
            return false;
        }
    }
    return commit(draft, Deed::paste);
}

bool TableModel::clear(const QModelIndexList& cells) {
    Plan draft = plan();
    for (const QModelIndex& index : cells) {
        const int line = lineOf(index), field = fieldOf(index);
        if (!editable(line, field))
            continue;
        const auto text = emptied(field);
        const QString why = text ? write(draft, line, field, *text) : tr("this cannot be empty.");
        if (!why.isEmpty()) {
            Q_EMIT refused(at(line, field, why));
            return false;
        }
    }
    return commit(draft, deed());
}

int TableModel::add() {
    Plan draft = plan();
    const std::vector<std::uint32_t> before = keys_;
    if (const QString why = addTo(draft); !why.isEmpty()) {
        Q_EMIT refused(why);
        return -1;
    }
    if (!commit(draft, deed()))
        return -1;
    for (int line = 0; line < lines(); ++line)
        if (std::find(before.begin(), before.end(), key(line)) == before.end())
            return line;
    return lines() - 1;
}

bool TableModel::remove(const QList<int>& lines) {
    if (lines.isEmpty())
        return false;
    QString why;
    const auto edit = removal(lines, why);
    if (!edit) {
        Q_EMIT refused(why);
        return false;
    }
    return make(*edit);
}

bool TableModel::move(int line, int to) {
    if (line < 0 || line >= lines() || to < 0 || to >= lines() || line == to)
        return false;
    const auto edit = moving(line, to);
    return edit && make(*edit);
}

bool TableModel::commit(const Plan& draft, Deed deed) {
    if (const QString why = verify(draft); !why.isEmpty()) {
        Q_EMIT refused(why);
        return false;
    }
    const auto edit = difference(plan(), draft, deed);
    if (edit)
        return make(*edit);
    Q_EMIT accepted();
    return true;
}

bool TableModel::make(const Edit& edit) {
    if (const QString why = whyNot(edit); !why.isEmpty()) {
        Q_EMIT refused(why);
        return false;
    }
    const bool made = session_.make(edit);
    if (made)
        Q_EMIT accepted();
    return made;
}

} // namespace stemwright

#include "app/materials/material_table.h"

#include "app/fields/form_dialog.h"
#include "app/look.h"
#include "core/plan/limits.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace stemwright {

MaterialTable::MaterialTable(const QString& name, const QString& title, std::vector<MaterialColumn> columns,
                             LengthUnit unit, const OwnLine& fresh, QWidget* parent)
    : QWidget(parent),
      columns_(std::move(columns)),
      unit_(unit),
      fresh_(fresh),
      table_(new QTableWidget(this)),
      add_(new QPushButton(tr("Add one of yours"), this)),
      remove_(new QPushButton(tr("Remove"), this)),
      source_(new QLabel(this)) {
    source_->setObjectName(name + QStringLiteral("Source"));
    source_->setProperty("quiet", true);
    source_->setWordWrap(true);
    source_->setMinimumHeight(look::target);
    nameField(table_, name + QStringLiteral("Table"), title);
    nameField(add_, name + QStringLiteral("Add"), tr("Add an entry of yours to: %1").arg(title));
    nameField(remove_, name + QStringLiteral("Remove"), tr("Remove the entry of yours"));
    QStringList heads{tr("Name")};
    for (const MaterialColumn& column : columns_)
        heads += column.head;
    heads += tr("Source");
    table_->setColumnCount(static_cast<int>(heads.size()));
    table_->setHorizontalHeaderLabels(heads);
    for (std::size_t i = 0; i < columns_.size(); ++i)
        table_->horizontalHeaderItem(static_cast<int>(i) + 1)->setToolTip(columns_[i].hint);
    table_->verticalHeader()->setVisible(false);
    table_->verticalHeader()->setDefaultSectionSize(look::target + look::unit);
    table_->horizontalHeader()->setMinimumHeight(look::target);
    table_->horizontalHeader()->setHighlightSections(false);
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setStretchLastSection(true);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setWordWrap(false);
    table_->setTabKeyNavigation(false);
    table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                            QAbstractItemView::AnyKeyPressed);
    for (QPushButton* button : {add_, remove_})
        button->setAutoDefault(false);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(look::unit);
    buttons->addWidget(add_);
    buttons->addWidget(remove_);
    buttons->addStretch(1);
    auto* rows = new QVBoxLayout(this);
    rows->addWidget(table_, 1);
    rows->addWidget(source_);
    rows->addLayout(buttons);
    connect(add_, &QPushButton::clicked, this, &MaterialTable::addFresh);
    connect(remove_, &QPushButton::clicked, this, &MaterialTable::removeChosen);
    const auto follow = [this] {
        const int row = table_->currentRow();
        remove_->setEnabled(row >= handbook_);
        const QTableWidgetItem* source = row >= 0 ? table_->item(row, sourceColumn()) : nullptr;
        source_->setText(source && row < handbook_ ? tr("%1: %2.", "a material and the source of its values")
                                                         .arg(table_->item(row, 0)->text(), source->text())
                                                   : QString());
    };
    connect(table_, &QTableWidget::currentCellChanged, this, follow);
    follow();
}

QString MaterialTable::shown(std::size_t column, const std::optional<double>& value) const {
    if (!value)
        return {};
    switch (columns_[column].sort) {
    case MaterialColumn::Sort::millimetres:
        return entryText(millimetres(*value), LengthUnit::millimetre);
    case MaterialColumn::Sort::length:
        return entryText(millimetres(*value), unit_);
    default:
        return entryText(*value, columns_[column].decimals);
    }
}

Entry<std::optional<double>> MaterialTable::read(std::size_t column, const QString& text) const {
    const MaterialColumn& of = columns_[column];
    if (text.trimmed().isEmpty() && of.optional)
        return {std::optional<double>(), {}};
    switch (of.sort) {
    case MaterialColumn::Sort::millimetres:
    case MaterialColumn::Sort::length: {
        const auto length =
            readLength(text, of.sort == MaterialColumn::Sort::length ? unit_ : LengthUnit::millimetre,
                       millimetres(of.least), millimetres(of.most));
        if (!length.value)
            return {std::nullopt, length.refusal};
        return {std::optional(inMillimetres(*length.value)), {}};
    }
    case MaterialColumn::Sort::count: {
        const auto count = readCount(text, static_cast<int>(of.least), static_cast<int>(of.most));
        if (!count.value)
            return {std::nullopt, count.refusal};
        return {std::optional(static_cast<double>(*count.value)), {}};
    }
    case MaterialColumn::Sort::number:
        break;
    }
    const auto number = readNumber(text, of.least, of.most, of.decimals);
    if (!number.value)
        return {std::nullopt, number.refusal};
    return {std::optional(*number.value), {}};
}

void MaterialTable::fill(const std::vector<HandbookLine>& handbook, const std::vector<OwnLine>& own) {
    table_->setRowCount(0);
    set_.clear();
    handbook_ = static_cast<int>(handbook.size());
    for (const HandbookLine& line : handbook) {
        const int row = table_->rowCount();
        table_->insertRow(row);
        const auto put = [&](int column, const QString& words) {
            auto* item = new QTableWidgetItem(words);
            item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
            item->setForeground(look::quiet);
            item->setToolTip(words);
            table_->setItem(row, column, item);
        };
        put(0, line.name);
        for (std::size_t i = 0; i < columns_.size(); ++i)
            put(static_cast<int>(i) + 1,
                i < line.values.size() && line.values[i] ? shown(i, line.values[i]) : tr("–"));
        put(sourceColumn(), line.source);
    }
    for (const OwnLine& line : own)
        addOwn(line);
    if (table_->rowCount() > 0)
        table_->setCurrentCell(own.empty() ? 0 : handbook_, 0);
}

void MaterialTable::addOwn(const OwnLine& line) {
    const int row = table_->rowCount();
    table_->insertRow(row);
    set_.push_back(line);
    table_->setItem(row, 0, new QTableWidgetItem(line.name));
    for (std::size_t i = 0; i < columns_.size(); ++i)
        table_->setItem(row, static_cast<int>(i) + 1, new QTableWidgetItem(shown(i, line.values[i])));
    auto* source = new QTableWidgetItem(tr("✎ yours"));
    source->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    source->setFont(look::font(look::Type::strong));
    table_->setItem(row, sourceColumn(), source);
}

void MaterialTable::addFresh() {
    if (set_.size() >= limits::ownEntries)
        return;
    OwnLine line = fresh_;
    const QString base = line.name;
    for (int number = 2;; ++number) {
        bool taken = false;
        for (int row = 0; row < table_->rowCount(); ++row)
            taken = taken || table_->item(row, 0)->text() == line.name;
        if (!taken)
            break;
        line.name =
            tr("%1 %2", "an entry's name and a number that tells it from the others").arg(base).arg(number);
    }
    addOwn(line);
    table_->setCurrentCell(table_->rowCount() - 1, 0);
    table_->setFocus(Qt::OtherFocusReason);
    table_->scrollToBottom();
}

void MaterialTable::removeChosen() {
    const int row = table_->currentRow();
    if (row < handbook_)
        return;
    set_.erase(set_.begin() + (row - handbook_));
    table_->removeRow(row);
}

std::vector<OwnLine> MaterialTable::own() const {
    std::vector<OwnLine> all;
    for (std::size_t i = 0; i < set_.size(); ++i) {
        const int row = handbook_ + static_cast<int>(i);
        OwnLine line = set_[i];
        line.name = table_->item(row, 0)->text().trimmed();
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            const QString words = table_->item(row, static_cast<int>(c) + 1)->text();
            if (words == shown(c, set_[i].values[c]))
                continue;
            if (const auto value = read(c, words); value.value)
                line.values[c] = *value.value;
        }
        all.push_back(std::move(line));
    }
    return all;
}

QString MaterialTable::refusal() {
    for (std::size_t i = 0; i < set_.size(); ++i) {
        const int row = handbook_ + static_cast<int>(i);
        const auto refuse = [&](int column, const QString& head, const QString& why) {
            table_->setCurrentCell(row, column);
            table_->setFocus(Qt::OtherFocusReason);
            return tr("%1, %2: %3", "a material, one of its values, and what is wrong")
                .arg(table_->item(row, 0)->text().trimmed().left(40), head, why);
        };
        const QString name = table_->item(row, 0)->text().trimmed();
        if (name.isEmpty())
            return refuse(0, tr("Name"), tr("it needs a name to be chosen by."));
        if (const QString why = nameRefusal(name); !why.isEmpty())
            return refuse(0, tr("Name"), why);
        for (int other = handbook_; other < row; ++other)
            if (table_->item(other, 0)->text().trimmed() == name)
                return refuse(0, tr("Name"), tr("another entry of yours has this name."));
        for (std::size_t c = 0; c < columns_.size(); ++c) {
            const QString words = table_->item(row, static_cast<int>(c) + 1)->text();
            if (words != shown(c, set_[i].values[c]))
                if (const QString why = read(c, words).refusal; !why.isEmpty())
                    return refuse(static_cast<int>(c) + 1, columns_[c].head, why);
        }
    }
    return {};
}

} // namespace stemwright

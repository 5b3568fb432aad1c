// The three columns of the place Leaves and what stands in them.
#include "app/leaves/colours_model.h"
#include "app/leaves/grid_view.h"
#include "app/leaves/kinds_model.h"
#include "app/leaves/leaf_preview.h"
#include "app/leaves/leaf_rows_model.h"
#include "app/leaves/leaves_place.h"
#include "app/leaves/mixes_model.h"
#include "app/leaves/panel.h"
#include "app/leaves/stock_model.h"
#include "app/look.h"

#include <QApplication>
#include <QButtonGroup>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

namespace {

QVBoxLayout* columnOf(QWidget* column) {
    auto* rows = new QVBoxLayout(column);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(3 * look::unit);
    return rows;
}

void fit(GridView* view, std::initializer_list<int> widths, int stretched) {
    QHeaderView* header = view->horizontalHeader();
    int column = 0;
    for (const int width : widths)
        header->resizeSection(column++, width);
    header->setSectionResizeMode(stretched, QHeaderView::Stretch);
}

} // namespace

void LeavesPlace::buildLeft(QWidget* column) {
    auto* rows = columnOf(column);

    coloursPanel_ = new Panel(QStringLiteral("colours"), tr("Colours"), column);
    colours_ = watch(new GridView(coloursModel_, true, coloursPanel_));
    colours_->setObjectName(QStringLiteral("coloursTable"));
    coloursPanel_->setTable(colours_, tr("colour"));
    coloursPanel_->setEmptyText(tr("No colours yet. Add one, or paste names and #rrggbb from a spreadsheet."));
    fit(colours_, {150, 110, 64}, ColoursModel::Field::name);
    // Where a colour comes from, under the colours.
    const auto from = [this](const QString& name, const QString& words, const QString& accessible,
                             void (LeavesPlace::*ask)()) {
        auto* button = new QPushButton(words, coloursPanel_);
        button->setObjectName(name);
        button->setAccessibleName(accessible);
        button->setToolTip(accessible);
        button->setProperty("small", true);
        button->setMinimumHeight(look::target);
        connect(button, &QPushButton::clicked, this, ask);
        return button;
    };
    auto* sources = new QHBoxLayout;
    sources->setSpacing(look::unit);
    sources->addWidget(from(QStringLiteral("coloursPick"), tr("Pick…"),
                            tr("Pick the chosen colour from a palette"), &LeavesPlace::askColour));
    sources->addWidget(from(QStringLiteral("coloursPhoto"), tr("From a photograph…"),
                            tr("Take colours from a photograph of your beads"), &LeavesPlace::askPhoto),
                       1);
    coloursPanel_->rows()->addLayout(sources);
    rows->addWidget(coloursPanel_);

    mixesPanel_ = new Panel(QStringLiteral("mixes"), tr("Mixes"), column);
    mixes_ = watch(new GridView(mixesModel_, true, mixesPanel_));
    mixes_->setObjectName(QStringLiteral("mixesTable"));
    mixesPanel_->setTable(mixes_, tr("mix"));
    mixesPanel_->setEmptyText(tr("No mixes yet. A mix is a leaf's colours from the outer row inward."));
    fit(mixes_, {84, 104, 150}, MixesModel::Field::colours);
    rows->addWidget(mixesPanel_);
    connect(mixes_, &GridView::currentLineChanged, this,
            [this](int line) { chooseMix(mixesModel_->mix(line)); });

    mixColoursPanel_ = new Panel(QStringLiteral("mixColours"), tr("Colours of the mix"), column);
    mixColours_ = watch(new GridView(mixColoursModel_, false, mixColoursPanel_));
    mixColours_->setObjectName(QStringLiteral("mixColoursTable"));
    mixColoursPanel_->setTable(mixColours_, tr("colour of the mix"));
    mixColours_->verticalHeader()->setVisible(true);
    fit(mixColours_, {140, 70, 60}, MixColoursModel::Field::colour);
    rows->addWidget(mixColoursPanel_);
}

void LeavesPlace::buildMiddle(QWidget* column) {
    auto* rows = columnOf(column);

    kindsPanel_ = new Panel(QStringLiteral("kinds"), tr("Kinds"), column);
    kinds_ = watch(new GridView(kindsModel_, false, kindsPanel_));
    kinds_->setObjectName(QStringLiteral("kindsTable"));
    kindsPanel_->setTable(kinds_, tr("kind"));
    kindsPanel_->setEmptyText(tr("No kinds yet. A kind is a sort of leaf: its size, make and wire."));
    kinds_->horizontalHeader()->setHighlightSections(true);
    kinds_->verticalHeader()->setDefaultSectionSize(look::target);
    // All that is known of a kind is seen at once where there is room, and no more room is taken than that.
    kinds_->setWantedHeight((KindsModel::Field::fieldCount + 1) * look::target + 3 * look::unit);
    rows->addWidget(kindsPanel_, 0);
    connect(kinds_, &GridView::currentLineChanged, this,
            [this](int line) { chooseKind(kindsModel_->kind(line)); });
    connect(kinds_, &GridView::opened, this, [this](const QModelIndex& index) {
        if (kindsModel_->fieldOf(index) == KindsModel::Field::making)
            askPattern();
    });

    stockPanel_ = new Panel(QStringLiteral("stock"), tr("Stock"), column);
    stock_ = watch(new GridView(stockModel_, false, stockPanel_));
    stock_->setObjectName(QStringLiteral("stockTable"));
    kindTabs_ = new QWidget(stockPanel_);
    kindTabs_->setObjectName(QStringLiteral("kindTabs"));
    kindTabs_->setAccessibleName(tr("Kind whose stock is shown"));
    kindTabsRow_ = new QHBoxLayout(kindTabs_);
    kindTabsRow_->setContentsMargins(0, 0, 0, 0);
    kindTabsRow_->setSpacing(look::unit);
    kindButtons_ = new QButtonGroup(this);
    stockPanel_->rows()->addWidget(kindTabs_);
    stockPanel_->setTable(stock_, tr("line of stock"));
    // Which mix it is to be must be said at once.
    stockPanel_->adder()->disconnect(stock_);
    stockPanel_->adder()->setAccessibleName(tr("Add a mix to the stock"));
    stockPanel_->adder()->setProperty("menu", true);
    stockMenu_ = new QMenu(stockPanel_->adder());
    stockMenu_->setObjectName(QStringLiteral("stockMenu"));
    stockPanel_->adder()->setMenu(stockMenu_);
    connect(stockMenu_, &QMenu::aboutToShow, this, &LeavesPlace::fillStockMenu);
    stockPanel_->setEmptyText(
        tr("No stock yet. Add a mix, or paste mixes with their counts from a spreadsheet."));
    stock_->setPasteHandler([this](const QModelIndex& from, const QList<QStringList>& cells) {
        const auto header = stockModel_->headerFields(cells.front());
        const bool named = header && std::find(header->begin(), header->end(),
                                               static_cast<int>(StockModel::Field::mixName)) != header->end();
        if (from.isValid() && from.column() != StockModel::Field::mixName && !named)
            return false;
        stockModel_->pasteByMix(cells);
        return true;
    });
    fit(stock_, {200, 58, 66, 72, 84}, StockModel::Field::mixName);
    rows->addWidget(stockPanel_, 1);
    connect(stock_, &GridView::currentLineChanged, this,
            [this](int line) { chooseMix(stockModel_->mix(line)); });
}

void LeavesPlace::buildRight(QWidget* column) {
    auto* rows = columnOf(column);
    auto* title = new QLabel(tr("The leaf"), column);
    title->setObjectName(QStringLiteral("previewTitle"));
    title->setFont(look::font(look::Type::heading));
    title->setMinimumHeight(look::target);
    preview_ = new LeafPreview(session_, column);
    auto* pattern = new QPushButton(tr("Pattern…"), column);
    pattern->setObjectName(QStringLiteral("leafPattern"));
    pattern->setAccessibleName(tr("Choose whether this kind is measured or made from a pattern"));
    pattern->setToolTip(pattern->accessibleName());
    pattern->setProperty("small", true);
    pattern->setMinimumHeight(look::target);
    connect(pattern, &QPushButton::clicked, this, &LeavesPlace::askPattern);
    auto* head = new QHBoxLayout;
    head->setSpacing(look::unit);
    head->addWidget(title, 1);
    head->addWidget(pattern);
    rows->addLayout(head);
    rows->addWidget(preview_, 1);

    rowsPanel_ = new Panel(QStringLiteral("leafRows"), tr("Its beads, outer row inward"), column);
    rows_ = watch(new GridView(rowsModel_, false, rowsPanel_));
    rows_->setObjectName(QStringLiteral("leafRowsTable"));
    giveBack_ = rowsPanel_->addButton(QStringLiteral("leafGiveBack"), tr("Give back"),
                                      tr("Give all counts and measures of yours back to the pattern"));
    connect(giveBack_, &QPushButton::clicked, this, [this] { rowsModel_->giveBack(); });
    rowsPanel_->setTable(rows_);
    rows_->verticalHeader()->setVisible(true);
    rows_->verticalHeader()->setDefaultSectionSize(look::target);
    rows->addWidget(rowsPanel_, 0);
    connect(rows_, &GridView::currentLineChanged, this, &LeavesPlace::markRow);
    connect(qApp, &QApplication::focusChanged, this, &LeavesPlace::markRow);
    connect(rowsModel_, &QAbstractItemModel::modelReset, this, &LeavesPlace::fitRows);
}

} // namespace stemwright

#include "app/leaves/leaves_place.h"

#include "app/leaves/colours_model.h"
#include "app/leaves/grid_view.h"
#include "app/leaves/kinds_model.h"
#include "app/leaves/leaf_preview.h"
#include "app/leaves/leaf_rows_model.h"
#include "app/leaves/mixes_model.h"
#include "app/leaves/panel.h"
#include "app/leaves/pattern_dialog.h"
#include "app/leaves/stock_model.h"
#include "app/look.h"
#include "app/photo/photo_dialog.h"
#include "app/wording.h"
#include "core/plan/making.h"

#include <QAccessible>
#include <QApplication>
#include <QButtonGroup>
#include <QColorDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QScrollBar>
#include <QStyle>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

LeavesPlace::LeavesPlace(Session& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      coloursModel_(new ColoursModel(session, this)),
      mixesModel_(new MixesModel(session, this)),
      mixColoursModel_(new MixColoursModel(session, this)),
      kindsModel_(new KindsModel(session, this)),
      stockModel_(new StockModel(session, this)),
      rowsModel_(new LeafRowsModel(session, this)),
      notice_(new QLabel(this)) {
    setObjectName(QStringLiteral("leavesPlace"));
    setAccessibleName(tr("Leaves: colours, mixes, kinds and stock"));
    pickColour = [](const QColor& now, QWidget* over) -> std::optional<QColor> {
        const QColor chosen = QColorDialog::getColor(now, over, tr("Colour of the beads"));
        return chosen.isValid() ? std::optional(chosen) : std::nullopt;
    };

    auto* left = new QWidget(this);
    auto* middle = new QWidget(this);
    auto* right = new QFrame(this);
    left->setObjectName(QStringLiteral("leavesLeft"));
    middle->setObjectName(QStringLiteral("leavesMiddle"));
    right->setObjectName(QStringLiteral("leavesRight"));
    buildLeft(left);
    buildMiddle(middle);
    buildRight(right);
    auto* columns = new QHBoxLayout;
    columns->setSpacing(5 * look::unit);
    columns->addWidget(left, 35);
    columns->addWidget(middle, 44);
    columns->addWidget(right, 35);

    notice_->setObjectName(QStringLiteral("leavesNotice"));
    notice_->setProperty("refusal", true);
    notice_->setWordWrap(true);
    notice_->setMinimumHeight(look::target);
    notice_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);

    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(4 * look::unit, 3 * look::unit, 4 * look::unit, look::unit);
    rows->setSpacing(look::unit);
    rows->addLayout(columns, 1);
    rows->addWidget(notice_);

    // Whoever comes here by a key finds the hand in the first table.
    setFocusProxy(colours_);
    connect(&session_, &Session::changed, this, &LeavesPlace::refresh);
    connect(kindsModel_, &QAbstractItemModel::modelReset, this, &LeavesPlace::fitKinds);
    fitKinds();
    for (const TableModel* table :
         std::initializer_list<TableModel*>{coloursModel_, mixesModel_, mixColoursModel_})
        connect(table, &QAbstractItemModel::modelReset, this, &LeavesPlace::fitLeft);
    fitLeft();
    refresh();
}

LeavesPlace::~LeavesPlace() {
    // The hand leaves its tables while they go, and one that is typed into may still refuse what stands there.
    disconnect(qApp, nullptr, this, nullptr);
    for (GridView* view : findChildren<GridView*>()) {
        disconnect(view, nullptr, this, nullptr);
        disconnect(view->table(), nullptr, this, nullptr);
    }
}

GridView* LeavesPlace::watch(GridView* view) {
    connect(view, &GridView::leaving, this, [this, view](bool forward) {
        const std::vector<GridView*> tables{colours_, mixes_, mixColours_, kinds_, stock_, rows_};
        const auto at = std::find(tables.begin(), tables.end(), view) - tables.begin();
        const auto count = std::ssize(tables);
        tables[static_cast<std::size_t>((at + (forward ? 1 : count - 1)) % count)]->setFocus(
            forward ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    });
    connect(view, &GridView::refused, this, &LeavesPlace::refuse);
    connect(view->table(), &TableModel::accepted, this, &LeavesPlace::calm);
    connect(view->table(), &TableModel::noted, this, [this](const QString& sentence) { say(sentence, false); });
    return view;
}

void LeavesPlace::fitRows() {
    QHeaderView* header = rows_->horizontalHeader();
    constexpr int leastColour = 62, mostColour = 130;
    header->setSectionResizeMode(QHeaderView::Interactive);
    header->resizeSection(LeafRowsModel::Field::beads, 58);
    header->resizeSection(LeafRowsModel::Field::whose, 76);
    const int colours = rowsModel_->fields() - LeafRowsModel::Field::firstColour;
    header->setMinimumSectionSize(look::target);
    // Each colour as wide as its name; few share what room is left, many scroll.
    int taken = 0;
    for (int i = 0; i < colours; ++i) {
        const int section = LeafRowsModel::Field::firstColour + i;
        header->resizeSection(section, std::clamp(header->sectionSizeHint(section), leastColour, mostColour));
        taken += header->sectionSize(section);
    }
    const int room = rowsRoom() - taken;
    for (int i = 0; i < colours && room > 0; ++i) {
        const int section = LeafRowsModel::Field::firstColour + i;
        header->resizeSection(section, header->sectionSize(section) + room / colours + (i < room % colours));
    }
    constexpr int mostLines = 9;
    const int lines = std::min(std::max(rowsModel_->lines(), 2), mostLines);
    rows_->setWantedHeight((lines + 1) * look::target + 3 * look::unit +
                           (room < 0 ? rows_->horizontalScrollBar()->sizeHint().height() : 0));
    rows_->setMinimumHeight(std::min(lines + 1, 5) * look::target);
}

int LeavesPlace::rowsRoom() const {
    const QHeaderView* header = rows_->horizontalHeader();
    int room = rows_->width() - 2 * rows_->frameWidth() - rows_->verticalHeader()->sizeHint().width();
    for (int section = 0; section < LeafRowsModel::Field::firstColour; ++section)
        room -= header->sectionSize(section);
    return room;
}

void LeavesPlace::fitLeft() {
    // The tables of the left column share its height by what stands in them.
    const auto wants = [](const TableModel* table, int more) {
        constexpr int fewest = 2, most = 9;
        return (std::clamp(table->lines(), fewest, most) + 1) * (look::target + look::unit) + look::target +
               2 * look::unit + more;
    };
    auto* rows = static_cast<QVBoxLayout*>(coloursPanel_->parentWidget()->layout());
    rows->setStretchFactor(coloursPanel_, wants(coloursModel_, look::target + look::unit));
    rows->setStretchFactor(mixesPanel_, wants(mixesModel_, 0));
    rows->setStretchFactor(mixColoursPanel_, wants(mixColoursModel_, 0));
}

void LeavesPlace::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    // Once the columns have their widths.
    QMetaObject::invokeMethod(
        this,
        [this] {
            fitRows();
            // A mix's name and its colours share what its code leaves.
            QHeaderView* header = mixes_->horizontalHeader();
            const int room =
                mixes_->width() - 2 * mixes_->frameWidth() - header->sectionSize(MixesModel::Field::code);
            header->resizeSection(MixesModel::Field::name, room * 43 / 100);
        },
        Qt::QueuedConnection);
}

void LeavesPlace::fitKinds() {
    // A few kinds share the room, many scroll.
    constexpr int least = 106, most = 200, few = 3;
    QHeaderView* header = kinds_->horizontalHeader();
    const bool share = kindsModel_->lines() <= few;
    header->setMinimumSectionSize(share ? least : look::target);
    header->setMaximumSectionSize(share ? most : -1);
    header->setSectionResizeMode(share ? QHeaderView::Stretch : QHeaderView::Interactive);
    if (!share)
        for (int i = 0; i < kindsModel_->lines(); ++i)
            header->resizeSection(i, least);
}

void LeavesPlace::markRow() {
    const QWidget* hand = QApplication::focusWidget();
    const RowLine* row =
        hand && (hand == rows_ || rows_->isAncestorOf(hand)) ? rowsModel_->row(rows_->currentLine()) : nullptr;
    preview_->markRow(row ? MarkedRow{row->ring, row->side} : MarkedRow{});
}

void LeavesPlace::refresh() {
    const Plan& plan = session_.plan();
    // What was chosen may be gone; with nothing left nothing is chosen.
    if (!stemwright::find(plan, stockModel_->kind()))
        if (const KindId first = plan.kinds.empty() ? KindId{} : plan.kinds.front().id;
            first != stockModel_->kind())
            return chooseKind(first);
    if (!stemwright::find(plan, mixColoursModel_->mix()))
        if (const MixId first = plan.mixes.empty() ? MixId{} : plan.mixes.front().id;
            first != mixColoursModel_->mix())
            return chooseMix(first);
    fillKindTabs();

    coloursPanel_->setNote(plan.colours.empty() ? QString() : countText(coloursModel_->lines()));
    mixesPanel_->setNote(plan.mixes.empty() ? QString() : countText(mixesModel_->lines()));
    kindsPanel_->setNote(plan.kinds.empty() ? QString() : countText(kindsModel_->lines()));
    const Mix* mix = stemwright::find(plan, mixColoursModel_->mix());
    mixColoursPanel_->setNote(mix ? text(mix->name) : QString());
    qint64 made = 0, toMake = 0;
    if (const Kind* kind = stemwright::find(plan, stockModel_->kind()))
        for (const StockLine& line : kind->stock) {
            made += line.made;
            toMake += line.toMake;
        }
    rowsModel_->setLeaf({stockModel_->kind(), mixColoursModel_->mix()});
    giveBack_->setEnabled(rowsModel_->anyHers());
    QString note = tr("%1 made, %2 to make").arg(countText(made), countText(toMake));
    // What the stock calls still to make and is bound already has been made: the supplies leave it out.
    const std::vector<int> left = stillToMakeByKind(plan);
    for (std::size_t k = 0; k < plan.kinds.size(); ++k)
        if (plan.kinds[k].id == stockModel_->kind() && left[k] < toMake)
            note += tr(" (%1 bound)").arg(countText(toMake - left[k]));
    stockPanel_->setNote(note);
}

void LeavesPlace::chooseKind(KindId kind) {
    if (choosing_)
        return;
    choosing_ = true;
    stockModel_->setKind(kind);
    mixesModel_->setKind(kind);
    preview_->setKind(kind);
    kinds_->setCurrentLine(kindsModel_->lineOfKey(kind.value));
    choosing_ = false;
    refresh();
}

void LeavesPlace::chooseMix(MixId mix) {
    if (choosing_)
        return;
    choosing_ = true;
    mixColoursModel_->setMix(mix);
    preview_->setMix(mix);
    mixes_->setCurrentLine(mixesModel_->lineOfKey(mix.value));
    stock_->setCurrentLine(stockModel_->lineOfKey(mix.value));
    choosing_ = false;
    refresh();
}

void LeavesPlace::goTo(KindId kind, MixId mix) {
    chooseKind(kind);
    chooseMix(mix);
    if (const int line = stockModel_->lineOfKey(mix.value); line >= 0)
        stock_->setCurrentIndex(stockModel_->at(line, StockModel::Field::made));
    stock_->setFocus();
}

void LeavesPlace::fillKindTabs() {
    const Plan& plan = session_.plan();
    QList<QAbstractButton*> buttons = kindButtons_->buttons();
    while (buttons.size() > static_cast<qsizetype>(plan.kinds.size())) {
        QAbstractButton* gone = buttons.takeLast();
        kindButtons_->removeButton(gone);
        delete gone;
    }
    while (buttons.size() < static_cast<qsizetype>(plan.kinds.size())) {
        auto* button = new QPushButton(kindTabs_);
        button->setCheckable(true);
        button->setProperty("place", true);
        button->setMinimumHeight(look::target);
        button->setObjectName(QStringLiteral("kindTab%1").arg(buttons.size()));
        connect(button, &QPushButton::clicked, this,
                [this, at = static_cast<int>(buttons.size())] { chooseKind(kindsModel_->kind(at)); });
        kindButtons_->addButton(button);
        kindTabsRow_->addWidget(button);
        buttons += button;
    }
    for (qsizetype i = 0; i < buttons.size(); ++i) {
        const Kind& kind = plan.kinds[static_cast<std::size_t>(i)];
        qint64 all = 0;
        for (const StockLine& line : kind.stock)
            all += line.total();
        buttons[i]->setText(
            tr("%1  %2", "a kind and how many leaves of it there are").arg(text(kind.name), countText(all)));
        buttons[i]->setAccessibleName(
            tr("Stock of %1, %n leaves", nullptr, static_cast<int>(all)).arg(text(kind.name)));
        buttons[i]->setChecked(kind.id == stockModel_->kind());
    }
}

void LeavesPlace::fillStockMenu() {
    stockMenu_->clear();
    const Plan& plan = session_.plan();
    for (const MixId mix : stockModel_->missing()) {
        QAction* action = stockMenu_->addAction(nameText(plan, mix));
        connect(action, &QAction::triggered, this, [this, mix] {
            stockModel_->addLine(mix);
            goTo(stockModel_->kind(), mix);
        });
    }
    if (stockMenu_->isEmpty())
        stockMenu_->addAction(tr("Every mix is in this stock"))->setEnabled(false);
}

void LeavesPlace::askColour() {
    const int line = colours_->currentLine();
    if (line < 0)
        return refuse(tr("Choose a colour of the table first."));
    if (const auto chosen = pickColour(coloursModel_->shade(line), this))
        coloursModel_->setData(coloursModel_->at(line, ColoursModel::Field::value), chosen->name(),
                               Qt::EditRole);
}

void LeavesPlace::askPhoto() {
    PhotoDialog dialog(session_.plan(), coloursModel_->colour(colours_->currentLine()), this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    if (const auto edit = dialog.edit())
        session_.make(*edit);
    calm();
}

void LeavesPlace::askPattern() {
    if (!stemwright::find(session_.plan(), stockModel_->kind()))
        return refuse(tr("A pattern is that of a kind: add a kind first."));
    PatternDialog dialog(session_.plan(), stockModel_->kind(), mixColoursModel_->mix(), this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    if (const auto edit = dialog.edit())
        session_.make(*edit);
    calm();
}

void LeavesPlace::refuse(const QString& sentence) {
    say(sentence, true);
}

void LeavesPlace::say(const QString& sentence, bool refusal) {
    if (notice_->property("refusal").toBool() != refusal) {
        notice_->setProperty("refusal", refusal);
        style()->unpolish(notice_);
        style()->polish(notice_);
    }
    notice_->setText(sentence);
    notice_->setAccessibleName(sentence);
    QAccessibleEvent event(notice_, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void LeavesPlace::calm() {
    notice_->clear();
    notice_->setAccessibleName({});
}

} // namespace stemwright

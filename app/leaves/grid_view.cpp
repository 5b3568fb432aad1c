#include "app/leaves/grid_view.h"

#include "app/leaves/cell_delegate.h"
#include "app/leaves/table_model.h"
#include "app/look.h"

#include <QAction>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMenu>

#include <algorithm>

namespace stemwright {

GridView::GridView(TableModel* model, bool wholeLines, QWidget* parent)
    : QTableView(parent), table_(model), wholeLines_(wholeLines) {
    setModel(model);
    auto* delegate = new CellDelegate(this);
    setItemDelegate(delegate);
    connect(delegate, &CellDelegate::refused, this, &GridView::refused);
    connect(delegate, &CellDelegate::entered, this, [this] {
        const QModelIndex down = currentIndex().siblingAtRow(currentIndex().row() + 1);
        if (down.isValid())
            setCurrentIndex(down);
    });
    connect(delegate, &CellDelegate::moved, this, &GridView::stepCell);
    connect(model, &TableModel::refused, this, &GridView::refused);
    connect(this, &QAbstractItemView::doubleClicked, this, [this](const QModelIndex& index) {
        if (!index.flags().testFlag(Qt::ItemIsEditable))
            Q_EMIT opened(index);
    });
    connect(model, &QAbstractItemModel::modelAboutToBeReset, this, &GridView::keepPlace);
    connect(model, &QAbstractItemModel::modelReset, this, &GridView::returnToPlace);

    setSelectionMode(ExtendedSelection);
    setSelectionBehavior(wholeLines ? (model->transposed() ? SelectColumns : SelectRows) : SelectItems);
    setEditTriggers(DoubleClicked | EditKeyPressed | AnyKeyPressed);
    // Tab leaves the table; from a cell that was written in it goes on to the next cell (CellDelegate::moved).
    setTabKeyNavigation(false);
    setWordWrap(false);
    setIconSize({44, 24});
    setHorizontalScrollMode(ScrollPerPixel);
    setVerticalScrollMode(ScrollPerPixel);
    setCornerButtonEnabled(false);
    setShowGrid(true);
    horizontalHeader()->setMinimumHeight(look::target);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setHighlightSections(false);
    verticalHeader()->setHighlightSections(false);
    verticalHeader()->setDefaultSectionSize(look::target + look::unit);
    verticalHeader()->setMinimumSectionSize(look::target);
    verticalHeader()->setVisible(model->transposed());
}

void GridView::setWantedHeight(int height) {
    wantedHeight_ = height;
    setMaximumHeight(height);
    updateGeometry();
}

QSize GridView::sizeHint() const {
    const QSize usual = QTableView::sizeHint();
    return wantedHeight_ > 0 ? QSize(usual.width(), wantedHeight_) : usual;
}

int GridView::currentLine() const {
    return currentIndex().isValid() ? table_->lineOf(currentIndex()) : -1;
}

void GridView::setCurrentLine(int line) {
    if (line < 0 || line >= table_->lines() || line == currentLine())
        return;
    const int field = currentIndex().isValid() ? table_->fieldOf(currentIndex()) : 0;
    setCurrentIndex(table_->at(line, field));
}

void GridView::setPasteHandler(std::function<bool(const QModelIndex&, const QList<QStringList>&)> handler) {
    pasteHandler_ = std::move(handler);
}

void GridView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    if (current.isValid())
        Q_EMIT currentLineChanged(table_->lineOf(current));
}

void GridView::keepPlace() {
    keptLine_ = currentLine();
    keptKey_ = table_->key(keptLine_);
    keptField_ = currentIndex().isValid() ? table_->fieldOf(currentIndex()) : 0;
}

void GridView::returnToPlace() {
    if (keptLine_ < 0 || table_->lines() == 0)
        return;
    const int found = table_->lineOfKey(keptKey_);
    const int line = found >= 0 ? found : std::min(keptLine_, table_->lines() - 1);
    setCurrentIndex(table_->at(line, keptField_));
}

QList<int> GridView::chosenLines() const {
    QList<int> lines;
    for (const QModelIndex& index : selectionModel()->selectedIndexes())
        if (const int line = table_->lineOf(index); !lines.contains(line))
            lines += line;
    if (lines.isEmpty() && currentLine() >= 0)
        lines += currentLine();
    std::sort(lines.begin(), lines.end());
    return lines;
}

void GridView::addLine() {
    const int line = table_->add();
    if (line < 0)
        return;
    clearSelection();
    setCurrentIndex(table_->at(line, 0));
    setFocus();
    scrollTo(currentIndex());
}

void GridView::removeLines() {
    table_->remove(chosenLines());
}

void GridView::moveLine(int by) {
    table_->move(currentLine(), currentLine() + by);
}

void GridView::clearOrRemove() {
    if (wholeLines_)
        return removeLines();
    QModelIndexList cells = selectionModel()->selectedIndexes();
    if (cells.isEmpty() && currentIndex().isValid())
        cells += currentIndex();
    table_->clear(cells);
}

void GridView::copy() {
    QModelIndexList cells = selectionModel()->selectedIndexes();
    if (cells.isEmpty() && currentIndex().isValid())
        cells += currentIndex();
    if (cells.isEmpty())
        return;
    int top = cells[0].row(), bottom = top, left = cells[0].column(), right = left;
    for (const QModelIndex& index : cells) {
        top = std::min(top, index.row());
        bottom = std::max(bottom, index.row());
        left = std::min(left, index.column());
        right = std::max(right, index.column());
    }
    QList<QStringList> block;
    for (int row = top; row <= bottom; ++row) {
        QStringList line;
        for (int column = left; column <= right; ++column) {
            const QModelIndex index = table_->index(row, column);
            line += cells.contains(index) ? index.data(Qt::EditRole).toString() : QString();
        }
        block += line;
    }
    QGuiApplication::clipboard()->setText(textOf(block));
}

void GridView::paste() {
    const QList<QStringList> block = cellsOf(QGuiApplication::clipboard()->text());
    if (block.isEmpty())
        return;
    const QModelIndexList chosen = selectionModel()->selectedIndexes();
    if (!wholeLines_ && block.size() == 1 && block[0].size() == 1 && chosen.size() > 1) {
        table_->fill(chosen, block[0][0]);
        return;
    }
    // A block goes in at its top left corner.
    QModelIndex from = currentIndex();
    for (const QModelIndex& index : chosen)
        from = index.row() < from.row() || (index.row() == from.row() && index.column() < from.column()) ? index
                                                                                                         : from;
    if (wholeLines_ && from.isValid()) {
        // Whole lines are pasted as lines: behind the ones that are there, from their first field on.
        if (block[0].size() > 1)
            from = QModelIndex();
        else
            from = currentIndex();
    }
    if (!pasteHandler_ || !pasteHandler_(from, block))
        table_->paste(from, block);
}

GridView::Command GridView::commandOf(const QKeyEvent& event) const {
    if (event.matches(QKeySequence::Copy))
        return Command::copy;
    if (event.matches(QKeySequence::Paste))
        return Command::paste;
    const bool ctrl = event.modifiers().testFlag(Qt::ControlModifier);
    const bool alt = event.modifiers().testFlag(Qt::AltModifier);
    switch (event.key()) {
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        return ctrl ? Command::remove : Command::clear;
    case Qt::Key_Insert:
        return event.modifiers() == Qt::NoModifier ? Command::add : Command::none;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_F2:
        return Command::edit;
    case Qt::Key_Up:
        return alt && !table_->transposed() ? Command::back : Command::none;
    case Qt::Key_Down:
        return alt && !table_->transposed() ? Command::on : Command::none;
    case Qt::Key_Left:
        return alt && table_->transposed() ? Command::back : Command::none;
    case Qt::Key_Right:
        return alt && table_->transposed() ? Command::on : Command::none;
    default:
        return Command::none;
    }
}

bool GridView::event(QEvent* event) {
    // The window may have menus with the same keys; here they belong to the table.
    if (event->type() == QEvent::ShortcutOverride && state() != EditingState &&
        commandOf(*static_cast<QKeyEvent*>(event)) != Command::none) {
        event->accept();
        return true;
    }
    return QTableView::event(event);
}

void GridView::keyPressEvent(QKeyEvent* event) {
    if (state() == EditingState)
        return QTableView::keyPressEvent(event);
    switch (commandOf(*event)) {
    case Command::copy:
        return copy();
    case Command::paste:
        return paste();
    case Command::clear:
        return clearOrRemove();
    case Command::add:
        return addLine();
    case Command::remove:
        return removeLines();
    case Command::back:
        return moveLine(-1);
    case Command::on:
        return moveLine(1);
    case Command::edit:
        if (currentIndex().isValid() && currentIndex().flags().testFlag(Qt::ItemIsEditable))
            edit(currentIndex());
        else if (currentIndex().isValid())
            Q_EMIT opened(currentIndex());
        return;
    case Command::none:
        break;
    }
    if ((event->key() == Qt::Key_Tab || event->key() == Qt::Key_Backtab) &&
        event->modifiers().testFlag(Qt::ControlModifier)) {
        Q_EMIT leaving(event->key() == Qt::Key_Tab);
        return;
    }
    QTableView::keyPressEvent(event);
}

bool GridView::stepCell(bool forward) {
    const QModelIndex now = currentIndex();
    if (!now.isValid())
        return false;
    const int columns = table_->columnCount();
    const int next = now.row() * columns + now.column() + (forward ? 1 : -1);
    if (next < 0 || next >= columns * table_->rowCount())
        return false;
    setCurrentIndex(table_->index(next / columns, next % columns));
    return true;
}

void GridView::focusInEvent(QFocusEvent* event) {
    QTableView::focusInEvent(event);
    if (table_->lines() > 0 && !currentIndex().isValid())
        setCurrentIndex(table_->index(0, 0));
}

void GridView::contextMenuEvent(QContextMenuEvent* event) {
    QMenu menu(this);
    const auto item = [&](const QString& text, const QKeySequence& keys, auto act, bool on = true) {
        QAction* action = menu.addAction(text);
        action->setShortcut(keys);
        action->setShortcutVisibleInContextMenu(true);
        action->setEnabled(on);
        connect(action, &QAction::triggered, this, act);
    };
    const bool any = currentIndex().isValid();
    item(
        tr("Copy"), QKeySequence::Copy, [this] { copy(); }, any);
    item(tr("Paste"), QKeySequence::Paste, [this] { paste(); });
    menu.addSeparator();
    item(tr("Add"), Qt::Key_Insert, [this] { addLine(); });
    item(
        tr("Remove"), Qt::CTRL | Qt::Key_Delete, [this] { removeLines(); }, any);
    const bool across = table_->transposed();
    item(
        across ? tr("Move left") : tr("Move up"), Qt::ALT | (across ? Qt::Key_Left : Qt::Key_Up),
        [this] { moveLine(-1); }, currentLine() > 0);
    item(
        across ? tr("Move right") : tr("Move down"), Qt::ALT | (across ? Qt::Key_Right : Qt::Key_Down),
        [this] { moveLine(1); }, any && currentLine() + 1 < table_->lines());
    menu.exec(event->globalPos());
}

} // namespace stemwright

#pragma once

#include <QTableView>

#include <functional>

namespace stemwright {

class TableModel;

/// A table that the keyboard works throughout, as in a spreadsheet: arrows and Tab move, typing, F2 or Enter
/// edits, Delete empties or removes, Ctrl+C and Ctrl+V copy and paste blocks of cells, Insert adds a line, Alt
/// with an arrow moves one. Tab leaves the table at its ends.
class GridView : public QTableView {
    Q_OBJECT
public:
    /// Whole lines are chosen rather than cells where `wholeLines`.
    GridView(TableModel* model, bool wholeLines, QWidget* parent = nullptr);

    TableModel* table() const { return table_; }
    int currentLine() const;
    void setCurrentLine(int line);

    /// The height it wants to be where there is room, in place of a table's usual one.
    void setWantedHeight(int height);
    QSize sizeHint() const override;

    void addLine();
    void removeLines();
    void moveLine(int by);
    void copy();
    void paste();
    /// Does the pasting in the model's stead, where it can.
    void setPasteHandler(std::function<bool(const QModelIndex&, const QList<QStringList>&)> handler);

Q_SIGNALS:
    void currentLineChanged(int line);
    void refused(const QString& sentence);
    /// She goes on to the next table, or back to the one before.
    void leaving(bool forward);
    /// Enter or a double click on a cell that cannot be typed into.
    void opened(const QModelIndex& index);

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

private:
    enum class Command { none, copy, paste, clear, add, remove, back, on, edit };
    Command commandOf(const QKeyEvent& event) const;
    void clearOrRemove();
    QList<int> chosenLines() const;
    bool stepCell(bool forward);
    void keepPlace();
    void returnToPlace();

    TableModel* table_;
    bool wholeLines_;
    int wantedHeight_ = 0;
    std::function<bool(const QModelIndex&, const QList<QStringList>&)> pasteHandler_;
    std::uint32_t keptKey_ = 0;
    int keptLine_ = -1;
    int keptField_ = 0;
};

/// The cells of a text as spreadsheets put it on the clipboard: rows parted by line ends, cells by tabs, quotes
/// around cells that hold either.
QList<QStringList> cellsOf(const QString& text);
QString textOf(const QList<QStringList>& cells);

} // namespace stemwright

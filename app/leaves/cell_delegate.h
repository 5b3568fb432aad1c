#pragma once

#include <QStyledItemDelegate>

namespace stemwright {

class TableModel;

/// Paints and edits the cells of a TableModel. What is refused stays in its editor, with the reason shown,
/// until it is mended or given up with Esc.
class CellDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit CellDelegate(QObject* parent = nullptr);

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const override;
    bool eventFilter(QObject* watched, QEvent* event) override;

Q_SIGNALS:
    void refused(const QString& sentence);
    /// The maker is done with a cell by Enter.
    void entered();
    /// … or by Tab, forward or back.
    void moved(bool forward);

protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

private:
    void finish(QWidget* editor, EndEditHint hint);
};

} // namespace stemwright

#include "app/leaves/cell_delegate.h"

#include "app/leaves/table_model.h"
#include "app/look.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QPersistentModelIndex>
#include <QStyle>

#include <algorithm>

namespace stemwright {

namespace {

constexpr const char* cellProperty = "cell";

QString textOf(const QWidget* editor) {
    if (const auto* box = qobject_cast<const QComboBox*>(editor))
        return box->currentText();
    const auto* field = qobject_cast<const QLineEdit*>(editor);
    return field ? field->text() : QString();
}

} // namespace

CellDelegate::CellDelegate(QObject* parent) : QStyledItemDelegate(parent) {}

void CellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
    QStyleOptionViewItem plain = option;
    const bool focused = option.state.testFlag(QStyle::State_HasFocus);
    plain.state.setFlag(QStyle::State_HasFocus, false);
    // The ground goes to the cell's edge, what stands in it keeps off.
    if (plain.state.testFlag(QStyle::State_Selected))
        painter->fillRect(option.rect, look::accentSoft);
    plain.rect.adjust(look::unit, 0, -look::unit, 0);
    QStyledItemDelegate::paint(painter, plain, index);
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    if (!focused && !(view && view->currentIndex() == index && view->hasFocus()))
        return;
    painter->save();
    painter->setPen(QPen(look::focus, 2));
    painter->drawRect(QRectF(option.rect).adjusted(1, 1, -1, -1));
    painter->restore();
}

void CellDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    // A chosen row would be tinted by the style, and a bead's colour must never be.
    if (const QVariant shown = index.data(Qt::DecorationRole); shown.canConvert<QPixmap>()) {
        QIcon untinted;
        for (const QIcon::Mode mode : {QIcon::Normal, QIcon::Selected})
            untinted.addPixmap(shown.value<QPixmap>(), mode);
        option->icon = untinted;
    }
}

QSize CellDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const QSize hint = QStyledItemDelegate::sizeHint(option, index);
    return {hint.width() + 2 * look::unit, std::max(hint.height(), look::target + look::unit)};
}

QWidget* CellDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
    const auto* model = qobject_cast<const TableModel*>(index.model());
    if (!model)
        return nullptr;
    const QStringList choices = model->choices(model->lineOf(index), model->fieldOf(index));
    QWidget* editor = nullptr;
    if (choices.isEmpty()) {
        auto* field = new QLineEdit(parent);
        field->setFrame(false);
        field->setAlignment(Qt::Alignment(index.data(Qt::TextAlignmentRole).toInt()) &
                            Qt::AlignHorizontal_Mask);
        editor = field;
    } else {
        auto* box = new QComboBox(parent);
        box->setEditable(true);
        box->setInsertPolicy(QComboBox::NoInsert);
        box->addItems(choices);
        auto* self = const_cast<CellDelegate*>(this);
        connect(box, &QComboBox::activated, self, [self, box] { self->finish(box, NoHint); });
        editor = box;
    }
    editor->setObjectName(QStringLiteral("cellEditor"));
    editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    editor->setProperty(cellProperty, QVariant::fromValue(QPersistentModelIndex(index)));
    editor->setAutoFillBackground(true);
    // A cell is no taller than its row: the frame of a field would cover its text.
    editor->setStyleSheet(
        QStringLiteral("QLineEdit, QComboBox { border: 2px solid %1; border-radius: 0; padding: 0 "
                       "3px; min-height: 0; background: %2; }")
            .arg(look::focus.name(), look::card.name()));
    return editor;
}

void CellDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    const QString text = index.data(Qt::EditRole).toString();
    if (auto* box = qobject_cast<QComboBox*>(editor)) {
        const QSignalBlocker quiet(box);
        box->setCurrentIndex(box->findText(text));
        box->setEditText(text);
        box->lineEdit()->selectAll();
    } else if (auto* field = qobject_cast<QLineEdit*>(editor)) {
        // A change elsewhere must not wipe out what is being typed.
        if (!field->isModified()) {
            field->setText(text);
            field->selectAll();
        }
    }
}

void CellDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
    model->setData(index, textOf(editor), Qt::EditRole);
}

void CellDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                        const QModelIndex&) const {
    QRect room = option.rect;
    if (qobject_cast<QComboBox*>(editor) && room.width() < 96)
        room.setWidth(96);
    editor->setGeometry(room);
}

bool CellDelegate::eventFilter(QObject* watched, QEvent* event) {
    auto* editor = qobject_cast<QWidget*>(watched);
    if (!editor || event->type() != QEvent::KeyPress)
        return QStyledItemDelegate::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        finish(editor, NoHint);
        return true;
    case Qt::Key_Tab:
        finish(editor, EditNextItem);
        return true;
    case Qt::Key_Backtab:
        finish(editor, EditPreviousItem);
        return true;
    default:
        return QStyledItemDelegate::eventFilter(watched, event);
    }
}

void CellDelegate::finish(QWidget* editor, EndEditHint hint) {
    const QPersistentModelIndex cell = editor->property(cellProperty).value<QPersistentModelIndex>();
    if (const auto* model = qobject_cast<const TableModel*>(cell.model()); model && cell.isValid())
        if (const QString why = model->refusal(cell, textOf(editor)); !why.isEmpty()) {
            editor->setAccessibleDescription(why);
            Q_EMIT refused(why);
            return;
        }
    Q_EMIT commitData(editor);
    // Moving on is ours: the view would open the next cell's editor, reckoned ones included.
    Q_EMIT closeEditor(editor, NoHint);
    if (hint == NoHint)
        Q_EMIT entered();
    else
        Q_EMIT moved(hint == EditNextItem);
}

} // namespace stemwright

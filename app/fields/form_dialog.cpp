#include "app/fields/form_dialog.h"

#include "app/look.h"

#include <QAccessible>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

void nameField(QWidget* widget, const QString& objectName, const QString& accessible) {
    widget->setObjectName(objectName);
    widget->setAccessibleName(accessible);
    // A field of several parts is as high as they need.
    if (!widget->layout())
        widget->setMinimumHeight(std::max(widget->minimumHeight(), look::target));
}

QComboBox* choiceOf(const QList<QPair<QString, int>>& entries, QWidget* parent) {
    auto* box = new QComboBox(parent);
    for (const auto& [text, data] : entries)
        box->addItem(text, data);
    return box;
}

void choose(QComboBox* box, int data) {
    box->setCurrentIndex(std::max(0, box->findData(data)));
}

FormDialog::FormDialog(const QString& objectName, const QString& title, const QString& ok, QWidget* parent)
    : QDialog(parent), body_(new QVBoxLayout), notice_(new QLabel(this)) {
    setObjectName(objectName);
    setWindowTitle(title);
    notice_->setObjectName(objectName + QStringLiteral("Notice"));
    notice_->setProperty("refusal", true);
    notice_->setWordWrap(true);
    notice_->setMinimumHeight(look::target);
    auto* buttons = new QDialogButtonBox(this);
    auto* yes = buttons->addButton(ok, QDialogButtonBox::AcceptRole);
    auto* no = buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole);
    nameField(yes, objectName + QStringLiteral("Ok"), ok);
    nameField(no, objectName + QStringLiteral("Cancel"), no->text());
    yes->setDefault(true);
    yes_ = yes;
    no_ = no;
    connect(buttons, &QDialogButtonBox::accepted, this, &FormDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(5 * look::unit, 4 * look::unit, 5 * look::unit, 4 * look::unit);
    rows->setSpacing(3 * look::unit);
    rows->addLayout(body_, 1);
    rows->addWidget(notice_);
    rows->addWidget(buttons);
}

QString FormDialog::notice() const {
    return notice_->text();
}

QFormLayout* FormDialog::addForm() {
    auto* form = new QFormLayout;
    form->setLabelAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    form->setHorizontalSpacing(4 * look::unit);
    form->setVerticalSpacing(2 * look::unit);
    body_->addLayout(form);
    return form;
}

void FormDialog::watch(const QString& where, QWidget* field, std::function<QString()> refusal) {
    watched_.push_back({where, field, std::move(refusal)});
}

void FormDialog::forget(const QWidget* field) {
    std::erase_if(watched_, [&](const Watched& each) { return each.field == field; });
}

void FormDialog::addPlain(QFormLayout* form, QWidget* field, const QString& objectName, const QString& label) {
    nameField(field, objectName, label);
    form->addRow(label, field);
}

void FormDialog::say(const QString& sentence) {
    notice_->setText(sentence);
    notice_->setAccessibleName(sentence);
    if (sentence.isEmpty())
        return;
    QAccessibleEvent event(notice_, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

void FormDialog::showEvent(QShowEvent* event) {
    QDialog::showEvent(event);
    // The buttons were made first, but the hand comes to them last, as the eye does.
    QWidget* last = nullptr;
    QWidget* first = nullptr;
    for (QWidget* each = nextInFocusChain(); each && each != this; each = each->nextInFocusChain())
        if (each != yes_ && each != no_ && each->focusPolicy() & Qt::TabFocus) {
            last = each;
            if (!first && each->isVisible() && each->isEnabled())
                first = each;
        }
    if (!last)
        return;
    setTabOrder(last, yes_);
    setTabOrder(yes_, no_);
    if (first && (!focusWidget() || focusWidget() == yes_ || focusWidget() == no_))
        first->setFocus(Qt::OtherFocusReason);
}

void FormDialog::accept() {
    for (const Watched& each : watched_)
        if (const QString why = each.refusal(); !why.isEmpty()) {
            reveal(each.field);
            say(tr("%1: %2", "a field and what is wrong with it").arg(each.where, why));
            each.field->setFocus(Qt::OtherFocusReason);
            return;
        }
    const QString why = problem();
    say(why);
    if (why.isEmpty())
        QDialog::accept();
}

} // namespace stemwright

#pragma once

#include "app/fields/fields.h"

#include <QDialog>
#include <QPair>
#include <QString>

#include <functional>
#include <vector>

class QComboBox;
class QDialogButtonBox;
class QFormLayout;
class QLabel;
class QVBoxLayout;

namespace stemwright {

/// Names a widget for tests and for those who hear the window instead of seeing it.
void nameField(QWidget* widget, const QString& objectName, const QString& accessible);

/// A choice of words, each with a number behind it.
QComboBox* choiceOf(const QList<QPair<QString, int>>& entries, QWidget* parent);
void choose(QComboBox* box, int data);

/// A dialog of fields. It closes with Ok only when every field can be used; otherwise it says in one sentence
/// which cannot and why, and goes there.
class FormDialog : public QDialog {
    Q_OBJECT
public:
    FormDialog(const QString& objectName, const QString& title, const QString& ok, QWidget* parent);

    void accept() override;
    QString notice() const;

protected:
    /// Where a dialog puts its own parts, above the sentence and the buttons.
    QVBoxLayout* body() const { return body_; }
    QFormLayout* addForm();
    /// Has a field asked before the dialog closes; `where` names it in the sentence.
    void watch(const QString& where, QWidget* field, std::function<QString()> refusal);
    void forget(const QWidget* field);
    /// A row of the form with a field that is watched.
    template <class Field>
    Field* add(QFormLayout* form, Field* field, const QString& objectName, const QString& label);
    void addPlain(QFormLayout* form, QWidget* field, const QString& objectName, const QString& label);
    /// What no single field can see; empty where all is well.
    virtual QString problem() { return {}; }
    /// Brings a field into sight, where it may be on a page that is not shown.
    virtual void reveal(QWidget*) {}
    void say(const QString& sentence);
    void showEvent(QShowEvent* event) override;

private:
    struct Watched {
        QString where;
        QWidget* field;
        std::function<QString()> refusal;
    };
    std::vector<Watched> watched_;
    QVBoxLayout* body_;
    QLabel* notice_;
    QWidget* yes_ = nullptr;
    QWidget* no_ = nullptr;
};

template <class Field>
Field* FormDialog::add(QFormLayout* form, Field* field, const QString& objectName, const QString& label) {
    addPlain(form, field, objectName, label);
    if constexpr (requires { field->setObjectNames(objectName, label); })
        field->setObjectNames(objectName, label);
    watch(label, field, [field] {
        // A row that is not asked for is not in the way.
        return field->isEnabled() && field->isVisibleTo(field->window()) ? field->refusal() : QString();
    });
    return field;
}

} // namespace stemwright

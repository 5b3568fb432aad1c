#pragma once

#include "app/fields/form_dialog.h"
#include "core/plan/plan.h"

class QFormLayout;
class QListWidget;
class QPushButton;
class QSpinBox;
class QStackedWidget;

namespace stemwright {

/// One layer of the binding in its fields.
class WrapPage : public QWidget {
    Q_OBJECT
public:
    /// `origin` is the place that the layer had when the dialog was opened; -1 for a new one.
    WrapPage(const Wrap& wrap, int origin, const Units& units, const OwnTables& own, QWidget* parent);

    Wrap wrap() const;
    int origin() const { return origin_; }
    /// The first field that cannot be used, with its name; none where all can.
    struct Refusal {
        QString where, why;
        QWidget* field = nullptr;
    };
    Refusal refusal() const;

Q_SIGNALS:
    void kindChanged();

private:
    void follow();
    void suggest();
    void fillOwn();
    void takeOwn();

    Wrap before_;
    int origin_;
    OwnTables own_;
    NameField* name_;
    QComboBox* metal_;
    QComboBox* which_;
    QFormLayout* rows_;
    QComboBox* with_;
    WireField* wire_;
    QSpinBox* strands_;
    LengthField* width_;
    LengthField* thickness_;
    NumberField* overlap_;
    NumberField* stretch_;
    LengthField* startTail_;
    LengthField* finish_;
    LengthField* hold_;
    LengthField* sold_;
};

/// The layers of the binding from the wires outward.
class BindingDialog : public FormDialog {
    Q_OBJECT
public:
    BindingDialog(const Binding& binding, const Units& units, QWidget* parent = nullptr,
                  const OwnTables& own = {});

    /// The binding as it stands in the fields; what the dialog does not show is as it was.
    Binding binding() const;
    /// Of each layer the place that it had before; -1 for one that was added here.
    std::vector<int> origins() const;

protected:
    QString problem() override;

private:
    void addPage(const Wrap& wrap, int origin);
    void removePage();
    void movePage(int by);
    void relabel();
    WrapPage* page(int at) const;

    Binding before_;
    Units units_;
    OwnTables own_;
    QListWidget* list_;
    QStackedWidget* pages_;
    QPushButton* add_;
    QPushButton* remove_;
    QPushButton* up_;
    QPushButton* down_;
    NumberField* minutes_;
};

} // namespace stemwright

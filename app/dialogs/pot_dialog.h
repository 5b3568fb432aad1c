#pragma once

#include "app/fields/form_dialog.h"
#include "core/plan/plan.h"

class QCheckBox;
class QFormLayout;

namespace stemwright {

/// The pot, what fills it, and the stakes that stand in it.
class PotDialog : public FormDialog {
    Q_OBJECT
public:
    /// `own` are the plan's own metals, clays and covers, which can be chosen beside the handbook's.
    PotDialog(const Pot& pot, const Units& units, QWidget* parent = nullptr, const OwnTables& own = {});

    /// The pot as it stands in the fields; what the dialog does not show is as it was.
    Pot pot() const;

protected:
    QString problem() override;

private:
    void follow();
    /// A choice among the plan's own fillings; null where it has none.
    QComboBox* addFillings(QFormLayout* rows, const std::vector<OwnFilling>& own, const std::string& chosen,
                           const QString& name, const QString& label);

    Pot before_;
    Units units_;
    OwnTables own_;
    NameField* name_;
    QComboBox* shape_;
    QComboBox* opening_;
    LengthField* top_;
    LengthField* breadth_;
    LengthField* bottom_;
    LengthField* depth_;
    LengthField* planting_;
    LengthField* clayDepth_;
    QComboBox* clay_ = nullptr;
    NumberField* density_;
    QCheckBox* hasCover_;
    LengthField* coverDepth_;
    QComboBox* cover_ = nullptr;
    NumberField* coverDensity_;
    NumberField* mass_;
    LengthField* foot_;
    QComboBox* feet_;
    WireField* stake_;
    QComboBox* metal_;
    LengthField* overlap_;
};

} // namespace stemwright

#pragma once

#include "app/fields/form_dialog.h"
#include "core/plan/plan.h"

class QCheckBox;

namespace stemwright {

/// The pot, what fills it, and the stakes that stand in it.
class PotDialog : public FormDialog {
    Q_OBJECT
public:
    PotDialog(const Pot& pot, const Units& units, QWidget* parent = nullptr);

    /// The pot as it stands in the fields; what the dialog does not show is as it was.
    Pot pot() const;

private:
    void follow();

    Pot before_;
    NameField* name_;
    QComboBox* shape_;
    QComboBox* opening_;
    LengthField* top_;
    LengthField* breadth_;
    LengthField* bottom_;
    LengthField* depth_;
    LengthField* planting_;
    LengthField* clayDepth_;
    NumberField* density_;
    QCheckBox* hasCover_;
    LengthField* coverDepth_;
    NumberField* coverDensity_;
    NumberField* mass_;
    LengthField* foot_;
    WireField* stake_;
    QComboBox* metal_;
    LengthField* overlap_;
};

} // namespace stemwright

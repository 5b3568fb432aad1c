#pragma once

#include "app/fields/form_dialog.h"
#include "core/plan/plan.h"

class QCheckBox;
class QSpinBox;

namespace stemwright {

/// Everything about a stem but its tiers.
class StemDialog : public FormDialog {
    Q_OBJECT
public:
    StemDialog(const StemForm& stem, const Units& units, QWidget* parent = nullptr, const OwnTables& own = {});

    /// The form as it stands in the fields; what the dialog does not show is as it was.
    StemForm form() const;

private:
    void follow();

    StemForm before_;
    OwnTables own_;
    NameField* name_;
    QComboBox* arrangement_;
    QSpinBox* whorl_;
    LengthField* spacing_;
    LengthField* tail_;
    QCheckBox* hasCore_;
    WireField* core_;
    QComboBox* metal_;
    QCheckBox* locked_;
};

} // namespace stemwright

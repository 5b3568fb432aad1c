#pragma once

#include "app/fields/form_dialog.h"
#include "core/document/new_plan.h"
#include "core/plan/plan.h"

#include <array>

class QFormLayout;
class QRadioButton;
class QSpinBox;

namespace stemwright {

class ColourChoice;

/// Asks what a plan must know to begin with: stems, kinds, colours.
class NewPlanDialog : public FormDialog {
    Q_OBJECT
public:
    explicit NewPlanDialog(const Units& units, QWidget* parent = nullptr);

    /// The plan as the fields have it; only after the dialog was accepted.
    const Plan& plan() const { return plan_; }

protected:
    QString problem() override;

private:
    static constexpr int kindRows = 4;
    struct KindRow {
        QComboBox* preset;
        NameField* name;
        QSpinBox* leaves;
    };

    QWidget* buildKinds();
    void presetChosen(int row);
    NewPlan wanted() const;
    void follow();

    Units units_;
    Plan plan_;
    NameField* title_;
    QSpinBox* stems_;
    QSpinBox* tiers_;
    QComboBox* arrangement_;
    std::array<KindRow, kindRows> kinds_{};
    ColourChoice* colours_;
    QRadioButton* made_;
    QLabel* sum_;
    QLabel* pictures_;
};

} // namespace stemwright

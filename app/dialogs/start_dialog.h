#pragma once

#include "app/fields/form_dialog.h"
#include "core/suggest/start.h"

class QCheckBox;
class QSpinBox;

namespace stemwright {

class FeasibleLabel;
class KindRanges;

/// What *Start me off* is asked: how many stems, ranges for each kind, and whether pairs shall match. What
/// cannot be met is said while it is typed.
class StartDialog : public FormDialog {
    Q_OBJECT
public:
    StartDialog(const Plan& plan, QWidget* parent = nullptr);

    StartOptions options() const;

protected:
    QString problem() override;

private:
    void refresh();
    /// The usual ranges, until she has set her own.
    void followStems();

    const Plan plan_;
    QSpinBox* stems_;
    QComboBox* arrangement_;
    KindRanges* ranges_;
    LengthField* difference_;
    QCheckBox* pairs_;
    FeasibleLabel* outlook_;
    bool ownRanges_ = false;
};

} // namespace stemwright

#pragma once

#include "app/fields/form_dialog.h"
#include "core/plan/edit.h"

#include <optional>

class QTabWidget;

namespace stemwright {

class MaterialTable;

/// The materials that figures rest on: the handbook's with their sources, and the maker's own, which are kept
/// in her plan.
class MaterialsDialog : public FormDialog {
    Q_OBJECT
public:
    explicit MaterialsDialog(const Plan& plan, QWidget* parent = nullptr);

    /// Her entries as they stand, as one edit; nothing where they are as they were.
    std::optional<Edit> edit() const;

protected:
    QString problem() override;

private:
    OwnTables tables() const;

    Plan plan_;
    QTabWidget* tabs_;
    MaterialTable* metals_;
    MaterialTable* beads_;
    MaterialTable* flosses_;
    MaterialTable* tapes_;
    MaterialTable* clays_;
    MaterialTable* covers_;
};

} // namespace stemwright

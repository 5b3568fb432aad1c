#pragma once

#include "app/fields/form_dialog.h"
#include "core/figures/leaf_make.h"
#include "core/plan/edit.h"
#include "core/plan/plan.h"

#include <optional>

class QTableWidget;

namespace stemwright {

class LeafDrawing;

/// Where a kind's measures come from: measured by the maker, or reckoned from a pattern, which is drawn row by
/// row as it is set, in a mix of the plan, with its counts and what it changes.
class PatternDialog : public FormDialog {
    Q_OBJECT
public:
    PatternDialog(const Plan& plan, KindId kind, MixId mix, QWidget* parent = nullptr);

    /// The kind's form with the pattern and its measures; as it was where she measures it herself but for the
    /// pattern, which is gone then.
    KindForm form() const;
    /// What `form()` changes, as one edit; nothing where it changes nothing.
    std::optional<Edit> edit() const;

protected:
    QString problem() override;

private:
    enum class Origin { measured, oneLoop, loops, rows };

    void build();
    void follow();
    void refresh();
    void showFigures(const KindForm& now);
    void showRows(const KindForm& now);
    Origin origin() const;
    /// The pattern in the fields; nothing where it is measured or a field cannot be used.
    std::optional<LeafMake> make() const;
    std::optional<BeadSize> size() const;
    int patternWires() const;
    /// One sentence for what the pattern cannot be; empty where it can be made.
    QString fault() const;

    const Plan& plan_;
    KindId kind_;
    KindForm before_;
    QFormLayout* fields_ = nullptr;
    QComboBox* origin_ = nullptr;
    NumberField* beads_ = nullptr;
    NumberField* rows_ = nullptr;
    QComboBox* tip_ = nullptr;
    QComboBox* base_ = nullptr;
    NumberField* point_ = nullptr;
    QComboBox* size_ = nullptr;
    NumberField* wires_ = nullptr;
    QComboBox* mix_ = nullptr;
    LeafDrawing* drawing_ = nullptr;
    QTableWidget* figures_ = nullptr;
    QTableWidget* counts_ = nullptr;
};

} // namespace stemwright

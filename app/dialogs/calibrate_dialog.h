#pragma once

#include "app/fields/form_dialog.h"
#include "core/figures/calibration.h"
#include "core/plan/edit.h"
#include "core/plan/plan.h"

#include <optional>
#include <vector>

class QLabel;
class QTableWidget;

namespace stemwright {

/// What comes of the lengths that bound stems really took of one layer.
struct Calibration {
    /// The overlap that fits them; nothing where none does, and then `why` says it in one sentence.
    std::optional<double> overlap;
    QString why;
    /// What each stem of the plan takes of the layer with that overlap, in the plan's order; as it is now where
    /// there is none.
    std::vector<Length> after;
    /// One sentence on a stem that does not go with the others; empty where all do.
    QString doubt;
};
Calibration calibration(const Plan& plan, std::size_t wrap, const std::vector<MeasuredStem>& measured);

/// The binding with the fitted overlap, marked as her own measure, and what the stems took, as one edit.
Edit calibrationEdit(const Plan& plan, std::size_t wrap, double overlap,
                     const std::vector<MeasuredStem>& measured);

/// Asks what bound stems really took, shows what that makes of every other stem's length, and gives the edit.
class CalibrateDialog : public FormDialog {
    Q_OBJECT
public:
    explicit CalibrateDialog(const Plan& plan, QWidget* parent = nullptr);

    /// Puts in what one stem took, as if it had been typed.
    void setMeasured(std::size_t wrap, StemId stem, Length used);
    /// What was entered, as one edit; nothing where there is none.
    std::optional<Edit> edit() const;

protected:
    QString problem() override;

private:
    std::size_t wrap() const;
    void fill();
    void refresh();
    /// What is entered for the layer that is shown; a cell that cannot be read is said in `why`.
    std::vector<MeasuredStem> measured(QString* why = nullptr) const;
    void keep();

    const Plan& plan_;
    std::vector<Length> now_;                 ///< by stem, of the layer that is shown
    std::vector<std::vector<QString>> typed_; ///< by layer and stem
    QComboBox* wrap_;
    QTableWidget* table_;
    QLabel* outcome_;
    bool filling_ = false;
};

} // namespace stemwright

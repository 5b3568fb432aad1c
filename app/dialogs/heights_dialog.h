#pragma once

#include "app/fields/form_dialog.h"
#include "core/suggest/heights.h"

class QCheckBox;

namespace stemwright {

class FeasibleLabel;
class KindRanges;

/// What *Vary the heights* is asked: ranges for each kind, how far apart the heights shall be at least, and
/// whether the places that open are filled. What cannot be met is said while it is typed.
class HeightsDialog : public FormDialog {
    Q_OBJECT
public:
    HeightsDialog(const Plan& plan, QWidget* parent = nullptr);

    HeightsOptions options() const;
    /// The places that open shall be filled from the tray.
    bool fills() const;
    bool matchedPairs() const;

protected:
    QString problem() override;

private:
    void refresh();

    const Plan plan_;
    KindRanges* ranges_;
    LengthField* difference_;
    QCheckBox* fill_;
    QCheckBox* pairs_;
    FeasibleLabel* outlook_;
};

} // namespace stemwright

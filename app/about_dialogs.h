#pragma once

#include "core/plan/plan.h"

#include <QDialog>

class QDateEdit;
class QCheckBox;
class QLineEdit;
class QPlainTextEdit;

namespace stemwright {

/// Title, date and note of the plan.
class AboutPlanDialog : public QDialog {
    Q_OBJECT
public:
    AboutPlanDialog(const About& about, QWidget* parent);
    About about() const;

private:
    About before_;
    QLineEdit* title_;
    QCheckBox* dated_;
    QDateEdit* date_;
    QPlainTextEdit* note_;
};

/// What the keys and the mouse do.
void showKeys(QWidget* parent);
/// The cautions, in full.
void showCautions(QWidget* parent);
void showAbout(QWidget* parent);

} // namespace stemwright

#pragma once

#include "core/document/new_plan.h"

#include <QWidget>

class QGridLayout;
class QListWidget;
class QPushButton;

namespace stemwright {

/// Chooses the colours of a new plan: from a palette that goes together, or any other, in order from tip to
/// base.
class ColourChoice : public QWidget {
    Q_OBJECT
public:
    static constexpr int least = 2;
    static constexpr int most = 8;

    explicit ColourChoice(QWidget* parent = nullptr);

    std::vector<NewPlan::NewColour> colours() const;
    /// Empty where the choice can be used.
    QString refusal() const;

Q_SIGNALS:
    void changed();

private:
    void toggle(int entry, bool on);
    void addOther();
    void append(const QString& name, const QColor& colour, int entry);
    void removeChosen();
    void moveChosen(int by);
    void follow();

    QList<QPushButton*> palette_;
    QListWidget* chosen_;
    QPushButton* other_;
    QPushButton* remove_;
    QPushButton* up_;
    QPushButton* down_;
};

} // namespace stemwright

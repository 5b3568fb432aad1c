#pragma once

#include "core/suggest/heights.h"

#include <QLabel>
#include <QWidget>

#include <vector>

class QCheckBox;
class QSpinBox;

namespace stemwright {

/// A row for each kind: whether it shall vary, from how many to how many leaves a stem, how many rest in the
/// tray; and beside it what would come of that.
class KindRanges : public QWidget {
    Q_OBJECT
public:
    /// Object names begin with `name`, then the row from 1: "heightsLeast1".
    KindRanges(const QString& name, const Plan& plan, QWidget* parent = nullptr);

    void setRanges(const std::vector<KindRange>& ranges);
    /// Of the kinds that shall vary.
    std::vector<KindRange> ranges() const;
    void showOutlook(const std::vector<KindOutlook>& outlook);

Q_SIGNALS:
    void edited();

private:
    struct Row {
        KindId kind;
        QCheckBox* varies;
        QSpinBox* least;
        QSpinBox* most;
        QSpinBox* rest;
        QLabel* outlook;
    };
    std::vector<Row> rows_;
    bool setting_ = false;
};

/// Says whether the ranges can be met, and if not, why: for as long as they are typed.
class FeasibleLabel : public QLabel {
    Q_OBJECT
public:
    FeasibleLabel(const QString& name, QWidget* parent);
    void say(const Result<std::vector<KindOutlook>>& outlook);
};

} // namespace stemwright

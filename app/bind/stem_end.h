#pragma once

#include "core/plan/plan.h"

#include <QWidget>

#include <vector>

class QGridLayout;
class QLabel;
class QPushButton;

namespace stemwright {

class LengthField;
class Session;

/// The end of a stem: asks for the length that its binding really took, shows what that says of the other
/// stems, and takes it as the maker's own measure.
class StemEnd : public QWidget {
    Q_OBJECT
public:
    explicit StemEnd(Session& session, QWidget* parent = nullptr);

    void setStem(StemId stem);

Q_SIGNALS:
    /// The measure was taken, or left: the keys are the place's again.
    void done();

private:
    void build();
    std::vector<Length> used() const;
    void preview();
    void take();

    Session& session_;
    StemId stem_;
    struct Row {
        QLabel* what = nullptr;
        LengthField* used = nullptr;
        QLabel* said = nullptr;
    };
    std::vector<Row> rows_;
    QLabel* heading_;
    QWidget* fields_;
    QLabel* change_;
    QPushButton* take_;
};

} // namespace stemwright

#pragma once

#include "core/figures/sight.h"
#include "core/plan/plan.h"

#include <QWidget>

namespace stemwright {

class Session;

/// What the eye will see from the chosen side: each colour's share in sight beside its share of all leaves, the
/// heights from left to right, and the barest stretch of stem.
class SightPanel : public QWidget {
    Q_OBJECT
public:
    explicit SightPanel(Session& session, QWidget* parent = nullptr);

    /// `order` has the stems' places in the plan's list from left to right as they are seen.
    void show(Sight sight, std::vector<std::size_t> order);
    const Sight& sight() const { return sight_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    /// Colours in the order of their share of all leaves, at most as many as there is room for.
    std::vector<std::size_t> colours() const;
    QString bareText() const;

    Session& session_;
    Sight sight_;
    std::vector<std::size_t> order_;
};

} // namespace stemwright

#pragma once

#include "app/supply_lines.h"

#include <QFutureWatcher>
#include <QWidget>

#include <vector>

class QContextMenuEvent;
class QGridLayout;
class QTimer;

namespace stemwright {

class Session;

/// What the whole plan takes: wire, thread and beads, and the leaves still to make.
class SuppliesPanel : public QWidget {
    Q_OBJECT
public:
    explicit SuppliesPanel(Session& session, QWidget* parent = nullptr);
    ~SuppliesPanel() override;

private:
    void reckon();
    void exportCsv();
    /// Asks how the figure of the row there is reckoned.
    void contextMenuEvent(QContextMenuEvent* event) override;
    /// How wide an amount may be, px, so that the names beside it can still be read.
    int amountRoom() const;
    void list(const std::vector<SupplyLine>& lines);

    Session& session_;
    QGridLayout* rows_;
    std::vector<FigureRef> refs_; ///< by row
    QTimer* timer_;
    QFutureWatcher<std::vector<SupplyLine>>* watcher_;
};

} // namespace stemwright

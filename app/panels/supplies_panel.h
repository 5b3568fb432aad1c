#pragma once

#include <QWidget>

class QGridLayout;
class QTimer;

namespace stemwright {

class Session;

/// What the whole plan takes: wire, thread and beads, and the leaves still to make.
class SuppliesPanel : public QWidget {
    Q_OBJECT
public:
    explicit SuppliesPanel(Session& session, QWidget* parent = nullptr);

private:
    void refresh();

    Session& session_;
    QGridLayout* rows_;
    QTimer* timer_;
};

} // namespace stemwright

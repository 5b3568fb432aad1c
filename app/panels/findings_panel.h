#pragma once

#include "core/figures/findings.h"

#include <QListView>
#include <QWidget>

class QLabel;
class QPushButton;

namespace stemwright {

class Session;

/// The findings as cards. Choosing one goes to its place; a remedy is offered, shown on the board, and then
/// taken or dropped here.
class FindingsPanel : public QWidget {
    Q_OBJECT
public:
    explicit FindingsPanel(Session& session, QWidget* parent = nullptr);

Q_SIGNALS:
    void placeChosen(unsigned stem, int tier, int slot);

private:
    void refresh();
    void choose(const QModelIndex& index);
    void offerRemedy();

    class Model;
    class Card;
    Session& session_;
    Model* model_;
    QListView* list_;
    QLabel* count_;
    QLabel* calm_;
    QPushButton* remedy_;
};

} // namespace stemwright

#pragma once

#include "app/board/board_place.h"

#include <QList>
#include <QObject>

#include <functional>
#include <vector>

class QAction;
class QKeySequence;
class QMenu;

namespace stemwright {

class BoardView;

/// What can be done on the board besides dragging, as actions: the Edit menu, the right-click menus and the
/// keys all share them. They act on the chosen leaves, or on the place of the focus where none are chosen.
class BoardCommands : public QObject {
    Q_OBJECT
public:
    explicit BoardCommands(BoardView& board);

    /// In groups; a null stands between two.
    QList<QAction*> editActions() const;
    /// A fresh menu for a place; the caller's to delete.
    QMenu* menuFor(const Place& place);
    /// Which of them can be used now, and how pins and locks stand.
    void refresh();

    QAction* action(const char* name) const;

private:
    QAction* add(const char* name, const QString& text, const QKeySequence& key, std::function<void()> act);
    void addActions();
    void addStemActions();
    void fillMenu(QMenu& menu, const Place& place);
    void kindMenu(QMenu& menu, const Place& place);

    std::vector<SlotRef> slotsMeant() const;
    std::vector<std::pair<StemId, int>> tiersMeant() const;
    StemId stemMeant() const;
    QString freeStemName() const;
    void openTierHere(int below);
    void turnTiers();
    void removeTiersMeant();
    /// How many leaves a copy found in the tray.
    void sayCopied(StemId id);
    void moveStemBy(int by);

    BoardView& board_;
    QList<QAction*> all_;
};

} // namespace stemwright

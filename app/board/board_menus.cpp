#include "app/board/board_commands.h"
#include "app/board/board_view.h"
#include "app/wording.h"

#include <QAction>
#include <QMenu>

namespace stemwright {

QMenu* BoardCommands::menuFor(const Place& place) {
    refresh();
    auto* menu = new QMenu(&board_);
    menu->setObjectName(QStringLiteral("boardMenu"));
    fillMenu(*menu, place);
    return menu;
}

void BoardCommands::fillMenu(QMenu& menu, const Place& place) {
    const auto put = [&](std::initializer_list<const char*> names) {
        for (const char* name : names)
            menu.addAction(action(name));
        menu.addSeparator();
    };
    switch (place.sort) {
    case Place::Sort::slot:
        put({"boardPickUp", "boardPickUpTier", "boardToTray", "boardPin"});
        kindMenu(menu, place);
        put({"boardTurnTier", "boardOpenTier", "boardOpenTierBelow", "boardRemoveTier"});
        break;
    case Place::Sort::tier:
        put({"boardPickUpTier", "boardTurnTier", "boardPin", "boardToTray"});
        put({"boardOpenTier", "boardOpenTierBelow", "boardRemoveTier"});
        break;
    case Place::Sort::gap:
        put({"boardOpenTier"});
        break;
    case Place::Sort::trayLine:
        put({"boardPickUp"});
        return;
    case Place::Sort::stem:
        break;
    case Place::Sort::tray:
    case Place::Sort::paper:
        put({"boardAddStem"});
        return;
    }
    put({"boardSelectStem", "boardStemSettings", "boardLockStem"});
    QMenu* arrangement = menu.addMenu(tr("Arrangement"));
    arrangement->setObjectName(QStringLiteral("boardArrangementMenu"));
    for (const char* name :
         {"boardDecussate", "boardOnePlane", "boardAlternate", "boardWhorled", "boardSpiral"})
        arrangement->addAction(action(name));
    put({"boardAddStem", "boardCopyStem", "boardStemLeft", "boardStemRight", "boardRemoveStem"});
}

/// The leaves of the tray that could go into the slot, those of its kind first.
void BoardCommands::kindMenu(QMenu& menu, const Place& place) {
    const Plan& plan = board_.session().plan();
    const Slot* slot = find(plan, place.slotRef());
    if (!slot)
        return;
    QMenu* fill = menu.addMenu(slot->filled() ? tr("Put here instead") : tr("Fill from the tray"));
    fill->setObjectName(QStringLiteral("boardFillMenu"));
    for (const bool same : {true, false}) {
        for (const TrayLine& line : board_.session().figures().lines) {
            if (line.left() <= 0 || (line.leaf.kind == slot->leaf.kind) != same || line.leaf == slot->leaf)
                continue;
            Slot there;
            there.leaf = line.leaf;
            QAction* choose =
                fill->addAction(tr("%1 – %2 left").arg(slotText(plan, there), countText(line.left())));
            connect(choose, &QAction::triggered, this, [this, place, leaf = line.leaf] {
                const Result<Put> done =
                    stemwright::put(board_.session().plan(), HeldFromTray{leaf}, OntoSlot{place.slotRef()});
                board_.make(done ? Result<Edit>(done.value().edit) : Result<Edit>(done.problem()));
            });
        }
        if (same)
            fill->addSeparator();
    }
    fill->setEnabled(!fill->actions().isEmpty() && fill->actions().size() > 1);
    menu.addSeparator();
}

} // namespace stemwright

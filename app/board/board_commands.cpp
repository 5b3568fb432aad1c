#include "app/board/board_commands.h"

#include "app/board/board_view.h"
#include "app/wording.h"

#include <QAction>
#include <QKeySequence>

#include <algorithm>

namespace stemwright {

namespace {

/// Several edits as one, or the first problem.
Result<Edit> asOne(Deed deed, std::vector<Result<Edit>> edits) {
    Batch batch{deed, {}};
    for (Result<Edit>& edit : edits) {
        if (!edit)
            return edit.problem();
        batch.edits.push_back(std::move(edit).value());
    }
    return Edit(std::move(batch));
}

} // namespace

BoardCommands::BoardCommands(BoardView& board) : QObject(&board), board_(board) {
    addActions();
    addStemActions();
    connect(&board, &BoardView::focusPlaceChanged, this, &BoardCommands::refresh);
}

QAction* BoardCommands::add(const char* name, const QString& text, const QKeySequence& key,
                            std::function<void()> act) {
    auto* action = new QAction(text, this);
    action->setObjectName(QLatin1String(name));
    action->setShortcut(key);
    action->setShortcutContext(Qt::WidgetShortcut);
    connect(action, &QAction::triggered, this, [this, act = std::move(act)] {
        board_.cancel();
        act();
        refresh();
    });
    board_.addAction(action);
    all_.append(action);
    return action;
}

void BoardCommands::addActions() {
    add("boardPickUp", tr("Pick up"), {}, [this] {
        if (const auto held = board_.holdable(board_.focusPlace()))
            board_.pickUp(*held);
    });
    add("boardPickUpTier", tr("Pick up the whole tier"), {}, [this] {
        if (const auto held = board_.holdable(board_.focusPlace(), true))
            board_.pickUp(*held);
    });
    add("boardToTray", tr("Back to the tray"), QKeySequence::Delete,
        [this] { board_.make(emptySlots(board_.session().plan(), slotsMeant())); });
    add("boardPin", tr("Pinned"), Qt::Key_P, [this] {
        const Plan& plan = board_.session().plan();
        const std::vector<SlotRef> slots = slotsMeant();
        const bool all = std::all_of(slots.begin(), slots.end(),
                                     [&](SlotRef at) { return find(plan, at) && find(plan, at)->pinned; });
        board_.make(pinSlots(plan, slots, !all));
    })->setCheckable(true);
    add("boardTurnTier", tr("Turn the tier"), Qt::Key_T, [this] { turnTiers(); });
    add("boardOpenTier", tr("Open a tier above"), Qt::Key_Insert, [this] { openTierHere(0); });
    add("boardOpenTierBelow", tr("Open a tier below"), QKeySequence(Qt::SHIFT | Qt::Key_Insert),
        [this] { openTierHere(1); });
    add("boardRemoveTier", tr("Remove the tier"), QKeySequence(Qt::CTRL | Qt::Key_Delete),
        [this] { removeTiersMeant(); });
    add("boardSelectStem", tr("Choose the whole stem"), QKeySequence::SelectAll,
        [this] { board_.select(BoardSelection::stem(board_.session().plan(), stemMeant())); });
}

void BoardCommands::addStemActions() {
    const auto plan = [this]() -> const Plan& { return board_.session().plan(); };
    add("boardStemSettings", tr("Stem settings…"), Qt::Key_F2, [this] {
        if (const StemId stem = stemMeant())
            Q_EMIT board_.stemSettingsWanted(stem);
        else
            Q_EMIT board_.statusChanged(tr("Choose a stem or a leaf first: by a click, or by the arrows"));
    });
    add("boardAddStem", tr("Add a stem"), QKeySequence(Qt::CTRL | Qt::Key_Insert), [this, plan] {
        const StemId id = freeStemId(plan());
        if (board_.make(addStem(plan(), stemMeant(), freeStemName().toStdString())))
            board_.showPlace(id, -1, -1);
    });
    add("boardCopyStem", tr("Copy the stem"), QKeySequence(Qt::CTRL | Qt::Key_D), [this, plan] {
        const StemId id = freeStemId(plan());
        if (!board_.make(copyStem(plan(), stemMeant(), freeStemName().toStdString())))
            return;
        board_.showPlace(id, -1, -1);
        sayCopied(id);
    });
    add("boardRemoveStem", tr("Remove the stem"), {},
        [this, plan] { board_.make(removeStem(plan(), stemMeant())); });
    add("boardStemLeft", tr("Move the stem to the left"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Left),
        [this] { moveStemBy(-1); });
    add("boardStemRight", tr("Move the stem to the right"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Right),
        [this] { moveStemBy(1); });
    add("boardLockStem", tr("Stem pinned"), {}, [this, plan] {
        if (const Stem* stem = find(plan(), stemMeant()))
            board_.make(lockStem(plan(), stem->id, !stem->locked));
    })->setCheckable(true);
    const std::pair<const char*, Arrangement> arrangements[] = {
        {"boardDecussate", Arrangement::decussate}, {"boardOnePlane", Arrangement::onePlane},
        {"boardAlternate", Arrangement::alternate}, {"boardWhorled", Arrangement::whorled},
        {"boardSpiral", Arrangement::spiral},
    };
    for (const auto& [name, arrangement] : arrangements)
        add(name, arrangementText(arrangement), {}, [this, plan, wanted = arrangement] {
            if (const Stem* stem = find(plan(), stemMeant()))
                board_.make(rearrangeStem(plan(), stem->id, wanted, stem->whorl));
        })->setCheckable(true);
}

QAction* BoardCommands::action(const char* name) const {
    for (QAction* action : all_)
        if (action->objectName() == QLatin1String(name))
            return action;
    return nullptr;
}

QList<QAction*> BoardCommands::editActions() const {
    QList<QAction*> list;
    for (const char* name :
         {"boardToTray", "boardPin", "boardTurnTier", "boardOpenTier", "boardOpenTierBelow", "boardRemoveTier",
          "", "boardSelectStem", "boardStemSettings", "boardAddStem", "boardCopyStem", "boardRemoveStem",
          "boardStemLeft", "boardStemRight", "boardLockStem"})
        list.append(*name ? action(name) : nullptr);
    return list;
}

std::vector<SlotRef> BoardCommands::slotsMeant() const {
    const Plan& plan = board_.session().plan();
    if (!board_.selection().empty())
        return board_.selection().inOrder(plan);
    const Place& place = board_.focusPlace();
    if (place.onSlot())
        return {place.slotRef()};
    if (place.sort == Place::Sort::tier)
        return BoardSelection::tier(plan, place.stem, place.tier);
    return {};
}

std::vector<std::pair<StemId, int>> BoardCommands::tiersMeant() const {
    std::vector<std::pair<StemId, int>> tiers;
    for (const SlotRef& at : slotsMeant())
        if (std::find(tiers.begin(), tiers.end(), std::pair{at.stem, at.tier}) == tiers.end())
            tiers.emplace_back(at.stem, at.tier);
    const Place& place = board_.focusPlace();
    if (tiers.empty() && place.sort == Place::Sort::tier)
        tiers.emplace_back(place.stem, place.tier);
    return tiers;
}

StemId BoardCommands::stemMeant() const {
    return board_.focusPlace().stem;
}

QString BoardCommands::freeStemName() const {
    const Plan& plan = board_.session().plan();
    for (std::size_t n = plan.stems.size() + 1;; ++n) {
        const QString name = tr("Stem %1").arg(n);
        if (std::none_of(plan.stems.begin(), plan.stems.end(),
                         [&](const Stem& stem) { return text(stem.name) == name; }))
            return name;
    }
}

void BoardCommands::openTierHere(int below) {
    const Place& place = board_.focusPlace();
    const Stem* stem = find(board_.session().plan(), place.stem);
    if (!stem)
        return;
    int index = static_cast<int>(stem->tiers.size());
    if (place.sort == Place::Sort::gap)
        index = place.tier;
    else if (place.tier >= 0)
        index = place.tier + below;
    const StemId id = stem->id;
    if (board_.make(openTier(board_.session().plan(), id, index))) {
        board_.select({});
        board_.setFocusPlace(Place::of(SlotRef{id, index, 0}));
        board_.scrollTo(board_.focusPlace());
    }
}

void BoardCommands::sayCopied(StemId id) {
    const Stem* copy = find(board_.session().plan(), id);
    if (!copy)
        return;
    int places = 0, filled = 0;
    for (const Tier& tier : copy->tiers)
        for (const Slot& slot : tier.slots) {
            places += slot.leaf.kind ? 1 : 0;
            filled += slot.filled() ? 1 : 0;
        }
    Q_EMIT board_.statusChanged(
        filled == places
            ? tr("Copied, with %n leaf/leaves from the tray", nullptr, filled)
            : tr("Copied, with %1 of %n leaf/leaves: the tray has no more of the others", nullptr, places)
                  .arg(filled));
}

void BoardCommands::turnTiers() {
    std::vector<Result<Edit>> edits;
    for (const auto& [stem, tier] : tiersMeant())
        edits.push_back(turnTier(board_.session().plan(), stem, tier));
    if (!edits.empty())
        board_.make(edits.size() == 1 ? edits.front() : asOne(Deed::turnTiers, std::move(edits)));
}

void BoardCommands::removeTiersMeant() {
    std::vector<std::pair<StemId, int>> tiers = tiersMeant();
    if (tiers.empty())
        return;
    // From the foot up, and run by run, so that the numbers of those above stay good.
    std::sort(tiers.begin(), tiers.end());
    Batch all{Deed::closeTiers, {}};
    Plan plan = board_.session().plan();
    for (std::size_t end = tiers.size(); end > 0;) {
        std::size_t begin = end - 1;
        while (begin > 0 && tiers[begin - 1].first == tiers[begin].first &&
               tiers[begin - 1].second + 1 == tiers[begin].second)
            --begin;
        Result<Edit> edit =
            removeTiers(plan, tiers[begin].first, tiers[begin].second, static_cast<int>(end - begin));
        if (!edit) {
            board_.make(edit);
            return;
        }
        if (apply(plan, edit.value()))
            all.edits.push_back(std::move(edit).value());
        end = begin;
    }
    board_.select({});
    if (board_.make(all.edits.size() == 1 ? all.edits.front() : Edit(std::move(all))))
        Q_EMIT board_.statusChanged(
            tr("%n tier(s) removed; the leaves are back in the tray", nullptr, static_cast<int>(tiers.size())));
}

void BoardCommands::moveStemBy(int by) {
    const Plan& plan = board_.session().plan();
    const int index = board_.boardLayout().indexOf(stemMeant());
    const int to = index + by;
    if (index < 0 || to < 0 || to >= static_cast<int>(plan.stems.size()))
        return;
    if (board_.make(moveStem(plan, stemMeant(), to)))
        board_.scrollTo(Place::of(stemMeant()));
}

void BoardCommands::refresh() {
    const Plan& plan = board_.session().plan();
    const std::vector<SlotRef> slots = slotsMeant();
    const bool filled = std::any_of(slots.begin(), slots.end(),
                                    [&](SlotRef at) { return find(plan, at) && find(plan, at)->filled(); });
    const Stem* stem = find(plan, stemMeant());
    const auto tiersCount = static_cast<int>(tiersMeant().size());
    const bool tiers = tiersCount > 0;
    const auto enable = [&](bool on, std::initializer_list<const char*> names) {
        for (const char* name : names)
            action(name)->setEnabled(on);
    };
    enable(board_.holdable(board_.focusPlace()).has_value(), {"boardPickUp"});
    enable(filled, {"boardToTray"});
    enable(!slots.empty(), {"boardPin"});
    enable(tiers, {"boardPickUpTier", "boardTurnTier", "boardRemoveTier"});
    enable(stem != nullptr,
           {"boardOpenTier", "boardOpenTierBelow", "boardSelectStem", "boardCopyStem", "boardRemoveStem",
            "boardStemLeft", "boardStemRight", "boardLockStem", "boardDecussate", "boardOnePlane",
            "boardAlternate", "boardWhorled", "boardSpiral"});
    // Without a stem it says what is missing.
    enable(!plan.stems.empty(), {"boardStemSettings"});
    action("boardPin")->setChecked(!slots.empty() && std::all_of(slots.begin(), slots.end(), [&](SlotRef at) {
        return find(plan, at) && find(plan, at)->pinned;
    }));
    action("boardRemoveTier")
        ->setText(tiersCount > 1 ? tr("Remove the %n tier(s)", nullptr, tiersCount) : tr("Remove the tier"));
    action("boardLockStem")->setChecked(stem && stem->locked);
    const auto check = [&](const char* name, Arrangement arrangement) {
        action(name)->setChecked(stem && stem->arrangement == arrangement);
    };
    check("boardDecussate", Arrangement::decussate);
    check("boardOnePlane", Arrangement::onePlane);
    check("boardAlternate", Arrangement::alternate);
    check("boardWhorled", Arrangement::whorled);
    check("boardSpiral", Arrangement::spiral);
}

} // namespace stemwright

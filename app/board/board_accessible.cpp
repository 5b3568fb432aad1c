#include "app/board/board_accessible.h"

#include "app/board/board_view.h"
#include "app/wording.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QCoreApplication>
#include <QWindow>

#include <map>
#include <tuple>

namespace stemwright {

namespace {

QString words(const char* source) {
    return QCoreApplication::translate("Board", source);
}

class BoardRoot;

/// One place of the board. It keeps nothing of the plan but the place, and is invalid once that is gone.
class PlaceInterface : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    PlaceInterface(BoardRoot& root, const Place& place) : root_(root), place_(place) {}

    const Place& place() const { return place_; }
    bool isValid() const override;
    QObject* object() const override { return nullptr; }
    QWindow* window() const override;
    QAccessibleInterface* parent() const override;
    int childCount() const override { return static_cast<int>(children().size()); }
    QAccessibleInterface* child(int index) const override;
    int indexOfChild(const QAccessibleInterface* child) const override;
    QAccessibleInterface* childAt(int x, int y) const override;
    QString text(QAccessible::Text sort) const override;
    void setText(QAccessible::Text, const QString&) override {}
    QRect rect() const override;
    QAccessible::Role role() const override;
    QAccessible::State state() const override;
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }
    QStringList actionNames() const override;
    void doAction(const QString& name) override;
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

private:
    std::vector<Place> children() const;
    BoardView& board() const;
    const Plan& plan() const;

    BoardRoot& root_;
    Place place_;
};

class BoardRoot : public QAccessibleWidget {
public:
    explicit BoardRoot(BoardView* board) : QAccessibleWidget(board, QAccessible::List), board_(*board) {}
    ~BoardRoot() override { forget(); }

    BoardView& board() const { return board_; }
    QAccessibleInterface* at(const Place& place) const {
        const Key key{static_cast<int>(place.sort), place.stem.value,    place.tier, place.slot,
                      place.leaf.kind.value,        place.leaf.mix.value};
        const auto it = made_.find(key);
        if (it != made_.end())
            return QAccessible::accessibleInterface(it->second);
        auto* fresh = new PlaceInterface(const_cast<BoardRoot&>(*this), place);
        made_.emplace(key, QAccessible::registerAccessibleInterface(fresh));
        return fresh;
    }
    void forget() {
        for (const auto& [key, id] : made_)
            QAccessible::deleteAccessibleInterface(id);
        made_.clear();
    }

    int childCount() const override { return 1 + static_cast<int>(board_.session().plan().stems.size()); }
    QAccessibleInterface* child(int index) const override {
        const auto& stems = board_.session().plan().stems;
        if (index == 0)
            return at(Place::ofTray());
        if (index < 0 || static_cast<std::size_t>(index) > stems.size())
            return nullptr;
        return at(Place::of(stems[static_cast<std::size_t>(index - 1)].id));
    }
    int indexOfChild(const QAccessibleInterface* child) const override {
        for (int i = 0; i < childCount(); ++i)
            if (this->child(i) == child)
                return i;
        return -1;
    }
    QAccessibleInterface* focusChild() const override {
        return board_.hasFocus() ? at(board_.focusPlace()) : nullptr;
    }
    QAccessibleInterface* childAt(int x, int y) const override {
        const Place place = board_.placeAt(board_.mapFromGlobal(QPoint(x, y)));
        if (place.onTray())
            return at(Place::ofTray());
        return place.onBoard() ? at(Place::of(place.stem)) : nullptr;
    }

private:
    using Key = std::tuple<int, std::uint32_t, int, int, std::uint32_t, std::uint32_t>;
    BoardView& board_;
    mutable std::map<Key, QAccessible::Id> made_;
};

BoardView& PlaceInterface::board() const {
    return root_.board();
}
const Plan& PlaceInterface::plan() const {
    return board().session().plan();
}
bool PlaceInterface::isValid() const {
    return exists(plan(), place_);
}
QWindow* PlaceInterface::window() const {
    return board().window() ? board().window()->windowHandle() : nullptr;
}

QAccessibleInterface* PlaceInterface::parent() const {
    if (place_.sort == Place::Sort::trayLine)
        return root_.at(Place::ofTray());
    if (place_.sort == Place::Sort::tray || place_.sort == Place::Sort::stem)
        return &root_;
    return root_.at(Place::of(place_.stem));
}

std::vector<Place> PlaceInterface::children() const {
    std::vector<Place> all;
    if (place_.sort == Place::Sort::tray) {
        for (const TrayLine& line : board().session().figures().lines)
            all.push_back(Place::of(line.leaf));
    } else if (place_.sort == Place::Sort::stem) {
        for (const SlotRef& at : BoardSelection::stem(plan(), place_.stem))
            all.push_back(Place::of(at));
    }
    return all;
}

QAccessibleInterface* PlaceInterface::child(int index) const {
    const std::vector<Place> all = children();
    return index >= 0 && static_cast<std::size_t>(index) < all.size()
               ? root_.at(all[static_cast<std::size_t>(index)])
               : nullptr;
}

int PlaceInterface::indexOfChild(const QAccessibleInterface* child) const {
    const auto* other = dynamic_cast<const PlaceInterface*>(child);
    const std::vector<Place> all = children();
    for (std::size_t i = 0; other && i < all.size(); ++i)
        if (all[i] == other->place_)
            return static_cast<int>(i);
    return -1;
}

QAccessibleInterface* PlaceInterface::childAt(int x, int y) const {
    const Place place = board().placeAt(board().mapFromGlobal(QPoint(x, y)));
    const std::vector<Place> all = children();
    return std::find(all.begin(), all.end(), place) != all.end() ? root_.at(place) : nullptr;
}

QString PlaceInterface::text(QAccessible::Text sort) const {
    if (!isValid())
        return {};
    if (sort == QAccessible::Description) {
        // While something is held here, what putting it down would do.
        if (board().holding() && place_ == board().focusPlace())
            return board().whatIfText();
        if (place_.sort != Place::Sort::stem)
            return {};
        const int index = board().boardLayout().indexOf(place_.stem);
        const StemCard card =
            cardOf(plan(), board().session().figures().stems[static_cast<std::size_t>(index)]);
        return words("%1, leaves: %2, %3, %4").arg(card.height, card.leaves, card.drift, card.lengthWords());
    }
    if (sort != QAccessible::Name)
        return {};
    switch (place_.sort) {
    case Place::Sort::slot:
        return words("%1: %2").arg(placeText(plan(), place_.slotRef()),
                                   slotText(plan(), *find(plan(), place_.slotRef())));
    case Place::Sort::tier:
        return placeText(plan(), {place_.stem, place_.tier, -1});
    case Place::Sort::gap:
        return words("%1, before tier %2").arg(nameText(plan(), place_.stem)).arg(place_.tier + 1);
    case Place::Sort::stem:
        return find(plan(), place_.stem)->locked ? words("%1, locked").arg(nameText(plan(), place_.stem))
                                                 : nameText(plan(), place_.stem);
    case Place::Sort::trayLine: {
        Slot slot;
        slot.leaf = place_.leaf;
        return words("Tray: %1, %2 left").arg(slotText(plan(), slot), countText(inTray(plan(), place_.leaf)));
    }
    case Place::Sort::tray:
        return words("Tray");
    case Place::Sort::paper:
        return {};
    }
    return {};
}

QRect PlaceInterface::rect() const {
    QRect at = board().rectOf(place_);
    if (place_.sort == Place::Sort::stem)
        at.setBottom(board().height());
    return QRect(board().mapToGlobal(at.topLeft()), at.size());
}

QAccessible::Role PlaceInterface::role() const {
    return place_.sort == Place::Sort::tray || place_.sort == Place::Sort::stem ? QAccessible::List
                                                                                : QAccessible::ListItem;
}

QAccessible::State PlaceInterface::state() const {
    QAccessible::State state;
    if (!isValid()) {
        state.invalid = true;
        return state;
    }
    state.focusable = place_.sort != Place::Sort::tray;
    state.focused = board().hasFocus() && board().focusPlace() == place_;
    state.selectable = place_.onSlot();
    state.multiSelectable = place_.sort == Place::Sort::stem;
    state.selected = place_.onSlot() && board().selection().contains(place_.slotRef());
    state.movable = board().holdable(place_).has_value();
    state.offscreen = !board().rect().intersects(board().rectOf(place_));
    const Stem* stem = find(plan(), place_.stem);
    state.readOnly = stem && stem->locked;
    return state;
}

QStringList PlaceInterface::actionNames() const {
    QStringList names{setFocusAction()};
    if (board().holding() || board().holdable(place_))
        names << pressAction();
    return names;
}

void PlaceInterface::doAction(const QString& name) {
    if (!isValid())
        return;
    // An edit makes all children anew, so nothing of this one is used after it.
    BoardView& view = board();
    const Place place = place_;
    view.setFocus();
    view.scrollTo(place);
    if (name == setFocusAction()) {
        view.setFocusPlace(place);
    } else if (name == pressAction()) {
        if (view.holding()) {
            view.putDownAt(place);
        } else {
            view.setFocusPlace(place);
            if (const auto held = view.holdable(place))
                view.pickUp(*held);
        }
    }
}

BoardRoot* rootOf(BoardView& board) {
    return QAccessible::isActive() ? dynamic_cast<BoardRoot*>(QAccessible::queryAccessibleInterface(&board))
                                   : nullptr;
}

QAccessibleInterface* make(const QString& className, QObject* object) {
    auto* board = qobject_cast<BoardView*>(object);
    return board && className == QLatin1String(BoardView::staticMetaObject.className()) ? new BoardRoot(board)
                                                                                        : nullptr;
}

} // namespace

void BoardAccessible::install() {
    static const bool once = (QAccessible::installFactory(make), true);
    static_cast<void>(once);
}

void BoardAccessible::rebuild(BoardView& board) {
    if (BoardRoot* root = rootOf(board)) {
        root->forget();
        QAccessibleEvent event(&board, QAccessible::ObjectReorder);
        QAccessible::updateAccessibility(&event);
    }
}

void BoardAccessible::tellFocus(BoardView& board) {
    BoardRoot* root = board.hasFocus() ? rootOf(board) : nullptr;
    if (!root)
        return;
    QAccessibleEvent event(root->at(board.focusPlace()), QAccessible::Focus);
    QAccessible::updateAccessibility(&event);
    if (board.holding()) {
        QAccessibleEvent described(root->at(board.focusPlace()), QAccessible::DescriptionChanged);
        QAccessible::updateAccessibility(&described);
    }
}

} // namespace stemwright

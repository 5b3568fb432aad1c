#pragma once

#include "app/board/board_cards.h"
#include "app/board/board_gesture.h"
#include "app/board/board_ghost.h"
#include "app/board/board_layout.h"
#include "app/board/board_offer.h"
#include "app/board/board_painter.h"
#include "app/board/board_selection.h"
#include "app/board/board_tray.h"
#include "app/board/drop_label.h"
#include "app/session.h"

#include <QList>
#include <QRegion>
#include <QTimer>
#include <QWidget>

class QAction;
class QMenu;
class QScrollBar;

namespace stemwright {

class BoardCommands;

/// The board: the tray at the left and a column for each stem, names above and cards below staying in sight.
/// One widget that paints what is visible, so that a thing can be dragged from anywhere to anywhere on it.
class BoardView : public QWidget {
    Q_OBJECT
public:
    explicit BoardView(Session& session, QWidget* parent = nullptr);
    ~BoardView() override;

    Session& session() const { return session_; }
    const BoardLayout& boardLayout() const { return layout_; }
    const BoardTray& tray() const { return tray_; }

    /// Scrolls to the place, makes it the focus, and rings it for a moment. `tier` and `slot` are −1 for a
    /// whole stem or tier.
    void showPlace(StemId stem, int tier, int slot);
    void zoomIn();
    void zoomOut();
    void zoomReset();
    /// As a plan is first shown: its usual size, or larger where all stems still fit side by side.
    void zoomToOpen();
    /// As large as lets the whole board be seen.
    void zoomFit();
    double zoom() const { return layout_.zoom(); }
    bool codesShown() const { return codes_; }
    void setCodesShown(bool shown);

    /// What the Edit menu shows, in groups; a null stands for a separator.
    QList<QAction*> editActions() const;
    BoardCommands& commands() const { return *commands_; }

    /// What is at a point of the widget, and the part of the widget that is a place's (also where it is
    /// scrolled out of sight).
    Place placeAt(QPoint at) const;
    QRect rectOf(const Place& place) const;
    const Place& focusPlace() const { return focus_; }
    void setFocusPlace(const Place& place);
    const BoardSelection& selection() const { return selection_; }
    void select(std::vector<SlotRef> slots);
    void scrollTo(const Place& place);

    bool holding() const { return gesture_.holding(); }
    const Held* held() const { return gesture_.held(); }
    /// Takes the thing into the hand until it is put down; false where it cannot be taken (which is said).
    bool pickUp(const Held& held);
    /// What the focus or the selection would be in the hand; nothing for places that hold nothing.
    std::optional<Held> holdable(const Place& place, bool wholeTier = false) const;
    /// Puts what is held where it hovers. False where that is forbidden; then it stays in the hand.
    bool putDown();
    /// The same at a place of its own.
    bool putDownAt(const Place& place);
    /// Lets go without doing anything.
    void cancel();
    /// What the label beside the held thing says.
    QString whatIfText() const { return label_.text(); }
    /// Makes a hand's edit, or says why not.
    bool make(const Result<Edit>& edit);

Q_SIGNALS:
    void stemSettingsWanted(stemwright::StemId stem);
    /// What can be done here, or why something cannot.
    void statusChanged(const QString& text);
    void focusPlaceChanged();
    void selectionChanged();
    void zoomChanged();

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    friend class BoardCommands;

    // Where things are (board_view.cpp).
    QRect trayArea() const;
    QRect headArea() const;
    QRect columnsArea() const;
    QRect cardsArea() const;
    QPointF toBoard(QPoint at) const;
    QRectF fromBoard(const QRectF& rect) const;
    QRectF cardRect(int stem) const;
    void arrange();
    void arrangeBars();
    void follow(const Change& change);
    void zoomTo(double zoom, QPoint keep);

    // Painting (board_view_paint.cpp).
    void spoil();
    void paintBase();
    void paintColumnsBase(QPainter& painter);
    void paintAbove(QPainter& painter, const QRect& dirty);
    void paintTargets(QPainter& painter);
    QRect targetsRect() const;
    QRect labelRect() const;
    /// All that follows the pointer.
    QRegion aboveRegion() const;

    // What is in the hand (board_view_hand.cpp).
    void moveHeld(QPoint to);
    void hoverOver(const Place& place, QPoint pointer);
    bool take(const Held& held, bool carry, QPointF grab);
    void say(const QString& text);

    // The mouse (board_view_mouse.cpp).
    void startDrag(QPoint at, Qt::KeyboardModifiers modifiers);
    void click(const Place& place, Qt::KeyboardModifiers modifiers);
    void bandTo(QPoint at);
    void scrollAtEdges();
    void watchEdges();
    void showHover(QPoint at);

    // Keys (board_view_keys.cpp).
    void keyWhileHolding(QKeyEvent* event);
    void hoverFocus();
    void moveFocus(Qt::Key key, Qt::KeyboardModifiers modifiers);
    void moveLeaf(Qt::Key key);
    void announceFocus();

    Session& session_;
    BoardLayout layout_;
    BoardTray tray_;
    BoardPainter painter_;
    BoardGesture gesture_;
    BoardSelection selection_;
    BoardGhost ghost_;
    BoardOffer offer_;
    DropLabel label_;
    std::unique_ptr<BoardCommands> commands_;
    std::vector<StemCard> cards_;

    QScrollBar* across_ = nullptr;
    QScrollBar* down_ = nullptr;
    QScrollBar* trayDown_ = nullptr;

    /// All but what follows the pointer, painted when something changes and copied from while it does not.
    QPixmap base_;
    bool baseSpoilt_ = true;
    bool codes_ = false;
    bool making_ = false;

    Place focus_;
    bool focusByKey_ = false;
    std::optional<SlotRef> rangeStart_;
    std::vector<SlotRef> bandBase_;
    QPoint pointer_;
    bool pickedByKey_ = false;
    bool hadSelected_ = false; ///< the press was on a leaf that was chosen already
    bool noMenu_ = false;      ///< the right button has just let go of something
    Place shown_;              ///< what showPlace rings
    QTimer showTimer_;
    QTimer edgeTimer_;
};

} // namespace stemwright

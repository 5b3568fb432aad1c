#pragma once

#include "app/file_store.h"

#include <QMainWindow>

class QLabel;
class QStackedWidget;
class QButtonGroup;

namespace stemwright {

class Session;
class BoardView;
class BoardPage;
class StatusLine;
class FittedLabel;
class PotPlace;

/// The one window: the places in the order of the work, the menus, and the plan's file. Wiring only.
class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    explicit MainWindow(Plan plan, QWidget* parent = nullptr);
    ~MainWindow() override;

    Session& session() { return *session_; }

    /// Opens a file; where it cannot be used the open plan stays, and a message says why.
    bool openFile(const QString& path);
    /// The plan that the window was made with came from this file.
    void adoptFile(const QString& path, const FileMark& mark);
    /// "leaves", "board", "pot", "bind" or "sheets".
    void showPlaceNamed(const QString& name);
    /// Size and place of the last run.
    void restoreWhereItWas();
    /// Asks about unsaved work that an earlier run left behind, where there is any.
    void offerWorkLeftBehind();

public Q_SLOTS:
    bool save();
    bool saveAs();

protected:
    void showEvent(QShowEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void buildPlaces();
    QWidget* makePotPlace(QWidget* in);
    void buildMenus();
    void buildFileMenu();
    void buildEditMenu();
    void buildPlanMenu();
    void buildViewMenu();
    void buildHelpMenu();
    void buildSuggestMenu();
    void askStemSettings(StemId id);
    /// A hand that holds something lets go of it first, and takes back nothing: whether it did.
    bool letGo();
    void newPlan();
    void openChosen();
    void openExample(const QString& key);
    bool saveTo(const QString& path);
    /// Keeps the plan in its file at once and without a question, for hands that are full. Says where it is
    /// now, or why it is not there.
    QString keepProgress();
    /// Asks what to do with unsaved work; false where she would rather stay.
    bool mayLeave();
    void refreshTitle();
    void refreshUndo();
    void rememberRecent(const QString& path);
    void fillRecent();
    void fillExamples();

    Session* session_;
    FileMark mark_;
    bool shownBefore_ = false;
    QWidget* bar_ = nullptr;
    QStackedWidget* places_ = nullptr;
    QButtonGroup* placeButtons_ = nullptr;
    BoardPage* board_ = nullptr;
    PotPlace* pot_ = nullptr; ///< once she went there
    StatusLine* status_ = nullptr;
    QLabel* title_ = nullptr;
    FittedLabel* subtitle_ = nullptr;
    QLabel* saved_ = nullptr;
    QAction* undo_ = nullptr;
    QAction* redo_ = nullptr;
    QMenu* recent_ = nullptr;
    QMenu* examples_ = nullptr;
};

} // namespace stemwright

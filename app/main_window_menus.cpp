// The menus of the main window.
#include "app/about_dialogs.h"
#include "app/board/board_view.h"
#include "app/board_page.h"
#include "app/compare/compare_dialog.h"
#include "app/deed_text.h"
#include "app/dialogs/binding_dialog.h"
#include "app/dialogs/buying_dialog.h"
#include "app/dialogs/calibrate_dialog.h"
#include "app/dialogs/heights_dialog.h"
#include "app/dialogs/new_plan_dialog.h"
#include "app/dialogs/pot_dialog.h"
#include "app/dialogs/start_dialog.h"
#include "app/dialogs/stem_dialog.h"
#include "app/explanation_dialog.h"
#include "app/main_window.h"
#include "app/materials/materials_dialog.h"
#include "app/pot/pot_place.h"
#include "app/session.h"
#include "app/settings.h"
#include "app/sheets/sheets_preview.h"
#include "app/status_line.h"
#include "app/suggestions.h"
#include "app/wording.h"
#include "core/document/examples.h"
#include "core/document/moves.h"
#include "core/document/rebinding.h"

#include <QDir>
#include <QFileInfo>
#include <QKeyEvent>
#include <QMenuBar>

namespace stemwright {

namespace {

constexpr int recentMost = 8;

QAction* add(QMenu* menu, const char* name, const QString& text, const QKeySequence& keys = {}) {
    QAction* action = menu->addAction(text);
    action->setObjectName(QLatin1String(name));
    action->setShortcut(keys);
    return action;
}

/// The underlined letters of an open menu are its own: the board, which keeps the focus, has keys of one
/// letter.
class MenuLetters : public QObject {
public:
    using QObject::QObject;

    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() != QEvent::ShortcutOverride)
            return false;
        const auto* key = static_cast<QKeyEvent*>(event);
        const QKeySequence letter(QKeyCombination(Qt::ALT, static_cast<Qt::Key>(key->key())));
        if (key->modifiers() == Qt::NoModifier)
            for (const QAction* action : static_cast<QMenu*>(watched)->actions())
                if (QKeySequence::mnemonic(action->text()) == letter) {
                    event->accept();
                    return true;
                }
        return false;
    }
};

} // namespace

void MainWindow::buildMenus() {
    buildFileMenu();
    buildEditMenu();
    buildSuggestMenu();
    buildPlanMenu();
    buildViewMenu();
    buildHelpMenu();
    auto* letters = new MenuLetters(this);
    for (const QAction* top : menuBar()->actions()) {
        QMenu* menu = top->menu();
        menu->installEventFilter(letters);
        // Their keys are the window's, also while the menus are not seen.
        for (QAction* deed : menu->actions())
            if (!deed->shortcut().isEmpty() && deed->shortcutContext() == Qt::WindowShortcut)
                addAction(deed);
    }
}

void MainWindow::buildFileMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&File"));
    connect(add(menu, "newPlan", tr("&New…"), QKeySequence::New), &QAction::triggered, this,
            &MainWindow::newPlan);
    connect(add(menu, "openPlan", tr("&Open…"), QKeySequence::Open), &QAction::triggered, this,
            &MainWindow::openChosen);
    recent_ = menu->addMenu(tr("Open &recent"));
    connect(recent_, &QMenu::aboutToShow, this, &MainWindow::fillRecent);
    examples_ = menu->addMenu(tr("Open an &example"));
    examples_->setToolTipsVisible(true);
    // Their titles stand in the plans themselves, which are not read before someone asks.
    connect(examples_, &QMenu::aboutToShow, this, &MainWindow::fillExamples);
    menu->addSeparator();
    connect(add(menu, "save", tr("&Save"), QKeySequence::Save), &QAction::triggered, this, &MainWindow::save);
    connect(add(menu, "saveAs", tr("Save &as…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S)),
            &QAction::triggered, this, &MainWindow::saveAs);
    menu->addSeparator();
    connect(add(menu, "print", tr("&Print and sheets…"), QKeySequence::Print), &QAction::triggered, this,
            [this] { showPlaceNamed(QStringLiteral("sheets")); });
    connect(add(menu, "savePicture", tr("Save a p&icture of the plant…")), &QAction::triggered, this, [this] {
        showPlaceNamed(QStringLiteral("pot"));
        if (pot_)
            pot_->savePicture();
    });
    menu->addSeparator();
    connect(add(menu, "quit", tr("&Quit"), QKeySequence::Quit), &QAction::triggered, this, &QWidget::close);
}

void MainWindow::buildEditMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Edit"));
    undo_ = add(menu, "undo", tr("&Undo"), QKeySequence::Undo);
    redo_ = add(menu, "redo", tr("&Redo"), QKeySequence::Redo);
    BoardView& board = board_->view();
    connect(undo_, &QAction::triggered, this, [this] {
        if (letGo() || !session_->canUndo())
            return;
        const QString deed = deedText(*session_->toUndo());
        session_->undo();
        status_->hint(tr("Undone: %1").arg(deed));
    });
    connect(redo_, &QAction::triggered, this, [this] {
        if (letGo() || !session_->canRedo())
            return;
        const QString deed = deedText(*session_->toRedo());
        session_->redo();
        status_->hint(tr("Done again: %1").arg(deed));
    });
    menu->addSeparator();
    for (QAction* action : board.editActions())
        if (action)
            menu->addAction(action);
        else
            menu->addSeparator();
    connect(&board, &BoardView::stemSettingsWanted, this, [this](StemId id) { askStemSettings(id); });
}

bool MainWindow::letGo() {
    if (pot_ && pot_->letGo())
        return true;
    if (!board_->view().holding())
        return false;
    board_->view().cancel();
    return true;
}

void MainWindow::askStemSettings(StemId id) {
    const Stem* stem = stemwright::find(session_->plan(), id);
    if (!stem)
        return;
    StemDialog dialog(*stem, session_->plan().units, this, session_->plan().own);
    if (dialog.exec() == QDialog::Accepted)
        board_->view().make(reformStem(session_->plan(), id, dialog.form()));
}

void MainWindow::buildSuggestMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Suggest"));
    const auto spreads = [this, menu](const char* name, const QString& text, const QKeySequence& keys,
                                      auto start) {
        connect(add(menu, name, text, keys), &QAction::triggered, this, [this, start] {
            showPlaceNamed(QStringLiteral("board"));
            start(board_->suggestions());
        });
    };
    spreads("spread", tr("&Spread the colours"), QKeySequence(Qt::Key_F6),
            [](Suggestions& suggestions) { suggestions.spreadColours(false); });
    spreads("spreadPairs", tr("Spread the colours in &matched pairs"), QKeySequence(Qt::SHIFT | Qt::Key_F6),
            [](Suggestions& suggestions) { suggestions.spreadColours(true); });
    spreads("order", tr("&Order tip to base"), QKeySequence(Qt::Key_F7),
            [](Suggestions& suggestions) { suggestions.orderTipToBase(); });
    spreads("shuffle", tr("S&huffle"), QKeySequence(Qt::Key_F8),
            [](Suggestions& suggestions) { suggestions.shuffle(); });
    connect(add(menu, "placeInPot", tr("&Place in the pot"), QKeySequence(Qt::Key_F9)), &QAction::triggered,
            this, [this] {
                showPlaceNamed(QStringLiteral("pot"));
                board_->suggestions().placeInPot();
            });
    menu->addSeparator();
    spreads("varyHeights", tr("&Vary the heights…"), QKeySequence(Qt::SHIFT | Qt::Key_F7),
            [this](Suggestions& suggestions) {
                HeightsDialog dialog(session_->plan(), this);
                if (dialog.exec() == QDialog::Accepted)
                    suggestions.varyHeights(dialog.options(), dialog.fills(), dialog.matchedPairs());
            });
    spreads("startMeOff", tr("Start me o&ff…"), QKeySequence(Qt::CTRL | Qt::Key_F6),
            [this](Suggestions& suggestions) {
                StartDialog dialog(session_->plan(), this);
                if (dialog.exec() == QDialog::Accepted)
                    suggestions.startMeOff(dialog.options());
            });
    menu->addSeparator();
    spreads("compare", tr("&Compare side by side…"), QKeySequence(Qt::SHIFT | Qt::Key_F8),
            [this](Suggestions& suggestions) { CompareDialog(*session_, suggestions, this).exec(); });
    connect(board_, &BoardPage::compareWanted, findChild<QAction*>(QStringLiteral("compare")),
            &QAction::trigger);
    connect(board_, &BoardPage::startWanted, findChild<QAction*>(QStringLiteral("startMeOff")),
            &QAction::trigger);
    QAction* take =
        add(menu, "takeSuggestion", tr("&Take what is shown"), QKeySequence(Qt::CTRL | Qt::Key_Return));
    QAction* drop =
        add(menu, "dropSuggestion", tr("&Drop what is shown"), QKeySequence(Qt::CTRL | Qt::Key_Backspace));
    connect(take, &QAction::triggered, session_, &Session::takeOffer);
    connect(drop, &QAction::triggered, session_, &Session::dropOffer);
    const auto enable = [this, take, drop] {
        take->setEnabled(session_->offer().has_value());
        drop->setEnabled(session_->offer().has_value());
    };
    connect(session_, &Session::offerChanged, this, enable);
    enable();
}

void MainWindow::buildPlanMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Plan"));
    connect(add(menu, "aboutPlan", tr("&Title, date and note…")), &QAction::triggered, this, [this] {
        AboutPlanDialog dialog(session_->plan().about, this);
        if (dialog.exec() == QDialog::Accepted)
            session_->make(Set<About>{dialog.about()});
    });
    connect(add(menu, "binding", tr("&Binding…")), &QAction::triggered, this, [this] {
        BindingDialog dialog(session_->plan().binding, session_->plan().units, this, session_->plan().own);
        if (dialog.exec() == QDialog::Accepted)
            if (const auto edit = rebinding(session_->plan(), dialog.binding(), dialog.origins()))
                session_->make(*edit);
    });
    connect(add(menu, "calibrate", tr("&Calibrate the binding…")), &QAction::triggered, this, [this] {
        CalibrateDialog dialog(session_->plan(), this);
        if (dialog.exec() == QDialog::Accepted)
            if (const auto edit = dialog.edit())
                session_->make(*edit);
    });
    connect(add(menu, "materials", tr("&Materials…")), &QAction::triggered, this, [this] {
        MaterialsDialog dialog(session_->plan(), this);
        if (dialog.exec() == QDialog::Accepted)
            if (const auto edit = dialog.edit())
                session_->make(*edit);
    });
    connect(add(menu, "buying", tr("&How things are sold…")), &QAction::triggered, this, [this] {
        BuyingDialog dialog(session_->plan(), this);
        if (dialog.exec() == QDialog::Accepted)
            if (const auto edit = dialog.edit())
                session_->make(*edit);
    });
    connect(add(menu, "pot", tr("&Pot…")), &QAction::triggered, this, [this] {
        PotDialog dialog(session_->plan().pot, session_->plan().units, this, session_->plan().own);
        if (dialog.exec() == QDialog::Accepted)
            session_->make(Set<Pot>{dialog.pot()});
    });
}

void MainWindow::buildViewMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&View"));
    BoardView& board = board_->view();
    // The paper comes nearer where it is what is seen, and the board everywhere else.
    const auto zooms = [this, menu, &board](const char* name, const QString& said, const QKeySequence& keys,
                                            void (BoardView::*ofBoard)(), auto ofPaper) {
        connect(add(menu, name, said, keys), &QAction::triggered, this, [this, &board, ofBoard, ofPaper] {
            auto* paper = findChild<SheetsPreview*>();
            if (paper && paper->isVisible())
                ofPaper(*paper);
            else
                (board.*ofBoard)();
        });
    };
    zooms("zoomIn", tr("&Nearer"), QKeySequence::ZoomIn, &BoardView::zoomIn,
          [](SheetsPreview& paper) { paper.step(1); });
    zooms("zoomOut", tr("&Farther"), QKeySequence::ZoomOut, &BoardView::zoomOut,
          [](SheetsPreview& paper) { paper.step(-1); });
    zooms("zoomReset", tr("As it &was"), QKeySequence(Qt::CTRL | Qt::Key_0), &BoardView::zoomReset,
          [](SheetsPreview& paper) { paper.setZoom(0); });
    connect(add(menu, "zoomFit", tr("The whole &board"), QKeySequence(Qt::CTRL | Qt::Key_9)),
            &QAction::triggered, &board, &BoardView::zoomFit);
    menu->addSeparator();
    QAction* codes = add(menu, "showCodes", tr("Mix &codes on the leaves"), QKeySequence(Qt::Key_F4));
    codes->setCheckable(true);
    connect(codes, &QAction::toggled, this, [&board](bool on) {
        board.setCodesShown(on);
        settings::setShowCodes(on);
    });
    codes->setChecked(settings::showCodes());
}

void MainWindow::buildHelpMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Help"));
    connect(add(menu, "keys", tr("&Keys…"), QKeySequence(Qt::Key_F1)), &QAction::triggered, this,
            [this] { showKeys(this); });
    connect(add(menu, "explain", tr("&How is this reckoned?…"), QKeySequence(Qt::SHIFT | Qt::Key_F1)),
            &QAction::triggered, this, [this] {
                FigureRef first{FigureName::height, 0, 0};
                const std::vector<SlotRef> chosen = board_->view().selection().inOrder(session_->plan());
                const std::vector<Stem>& stems = session_->plan().stems;
                for (std::size_t i = 0; i < stems.size() && !chosen.empty(); ++i)
                    if (stems[i].id == chosen.front().stem)
                        first.stem = i;
                ExplanationDialog(*session_, first, this).exec();
            });
    connect(add(menu, "cautions", tr("&Cautions…")), &QAction::triggered, this, [this] { showCautions(this); });
    connect(add(menu, "about", tr("&About Stemwright…")), &QAction::triggered, this,
            [this] { showAbout(this); });
}

void MainWindow::newPlan() {
    if (!mayLeave())
        return;
    NewPlanDialog dialog(session_->plan().units, this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    mark_ = {};
    session_->open(dialog.plan(), {}, false);
    showPlaceNamed(QStringLiteral("board"));
}

void MainWindow::openExample(const QString& key) {
    if (!mayLeave())
        return;
    mark_ = {};
    session_->open(example(key.toStdString()), {});
}

void MainWindow::fillExamples() {
    if (!examples_->isEmpty())
        return;
    for (const ExampleInfo& info : examples()) {
        QAction* action = examples_->addAction(text(info.title));
        action->setObjectName(QStringLiteral("example_") + text(info.key));
        action->setToolTip(text(info.sentence));
        connect(action, &QAction::triggered, this, [this, key = text(info.key)] { openExample(key); });
    }
}

void MainWindow::rememberRecent(const QString& path) {
    QStringList paths = settings::recentPlans();
    paths.removeAll(path);
    paths.prepend(path);
    settings::setRecentPlans(paths.mid(0, recentMost));
}

void MainWindow::fillRecent() {
    recent_->clear();
    for (const QString& path : settings::recentPlans()) {
        // An ampersand in a file's name is no shortcut.
        QString name = QFileInfo(path).fileName();
        QAction* action = recent_->addAction(name.replace(QLatin1Char('&'), QStringLiteral("&&")));
        action->setToolTip(QDir::toNativeSeparators(path));
        action->setEnabled(QFileInfo::exists(path));
        connect(action, &QAction::triggered, this, [this, path] {
            if (mayLeave())
                openFile(path);
        });
    }
    recent_->setToolTipsVisible(true);
    if (recent_->isEmpty())
        recent_->addAction(tr("No plans yet"))->setEnabled(false);
}

void MainWindow::refreshUndo() {
    undo_->setEnabled(session_->canUndo());
    redo_->setEnabled(session_->canRedo());
    undo_->setText(session_->canUndo() ? tr("&Undo %1").arg(deedText(*session_->toUndo())) : tr("&Undo"));
    redo_->setText(session_->canRedo() ? tr("&Redo %1").arg(deedText(*session_->toRedo())) : tr("&Redo"));
}

void MainWindow::restoreWhereItWas() {
    restoreGeometry(settings::windowGeometry());
}

} // namespace stemwright

#include "app/main_window.h"

#include "app/ask.h"
#include "app/bind/bind_place.h"
#include "app/board/board_view.h"
#include "app/board_page.h"
#include "app/fields/fitted_label.h"
#include "app/leaves/leaves_place.h"
#include "app/look.h"
#include "app/messages.h"
#include "app/pot/pot_place.h"
#include "app/recovery.h"
#include "app/session.h"
#include "app/settings.h"
#include "app/sheets/sheets_place.h"
#include "app/status_line.h"
#include "app/wording.h"

#include <QButtonGroup>
#include <QCloseEvent>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QMenuBar>
#include <QMimeData>
#include <QPushButton>
#include <QShortcut>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include <functional>
#include <utility>

namespace stemwright {

namespace {

/// A place that is made when it is first shown, so that the board need not wait for it.
class LatePlace : public QWidget {
public:
    explicit LatePlace(std::function<QWidget*(QWidget*)> make) : make_(std::move(make)) {}

protected:
    void showEvent(QShowEvent* event) override {
        QWidget::showEvent(event);
        if (!make_)
            return;
        auto* layout = new QVBoxLayout(this);
        layout->setContentsMargins(0, 0, 0, 0);
        QWidget* place = std::exchange(make_, nullptr)(this);
        layout->addWidget(place);
        setFocusProxy(place);
    }

private:
    std::function<QWidget*(QWidget*)> make_;
};

} // namespace

MainWindow::MainWindow(Plan plan, QWidget* parent)
    : QMainWindow(parent), session_(new Session(std::move(plan), this)) {
    setObjectName(QStringLiteral("mainWindow"));
    setAcceptDrops(true);
    setMinimumSize(960, 600);
    resize(1440, 900);
    buildPlaces();
    buildMenus();

    connect(session_, &Session::changed, this, [this](const Change& change) {
        refreshUndo();
        refreshTitle();
        if (change.anotherPlan) {
            status_->hint({});
            board_->view().zoomToOpen();
        }
    });
    connect(session_, &Session::documentChanged, this, &MainWindow::refreshTitle);
    connect(session_, &Session::failed, this,
            [this](const Problem& problem) { status_->say(sentence(problem)); });
    connect(session_, &Session::declined, this,
            [this] { status_->hint(tr("Left as it was: nothing has changed")); });
    auto* recovery = new Recovery(
        *session_, settings::recoveryFolder(), [this] { return mark_.digest; }, this);
    connect(recovery, &Recovery::failed, status_, &StatusLine::say);
    refreshUndo();
    refreshTitle();
}

MainWindow::~MainWindow() = default;

void MainWindow::buildPlaces() {
    auto* middle = new QWidget(this);
    bar_ = new QWidget(middle);
    QWidget* bar = bar_;
    bar->setObjectName(QStringLiteral("topBar"));
    bar->setAttribute(Qt::WA_StyledBackground);
    title_ = new QLabel(bar);
    title_->setObjectName(QStringLiteral("planTitle"));
    title_->setFont(look::font(look::Type::title));
    subtitle_ = new FittedLabel(bar);
    subtitle_->setObjectName(QStringLiteral("planSubtitle"));
    subtitle_->setProperty("quiet", true);
    saved_ = new QLabel(bar);
    saved_->setObjectName(QStringLiteral("savedState"));
    saved_->setProperty("quiet", true);
    saved_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);

    places_ = new QStackedWidget(middle);
    places_->setObjectName(QStringLiteral("places"));
    board_ = new BoardPage(*session_, places_);
    placeButtons_ = new QButtonGroup(this);
    auto* pills = new QWidget(bar);
    auto* pillRow = new QHBoxLayout(pills);
    pillRow->setContentsMargins(0, 0, 0, 0);
    pillRow->setSpacing(10);
    const auto addPlace = [&](const QString& name, const char* key, QWidget* place) {
        const int id = places_->addWidget(place);
        const QKeySequence shortcut(QKeyCombination(Qt::CTRL, static_cast<Qt::Key>(Qt::Key_1 + id)));
        auto* button = new QPushButton(name, pills);
        button->setObjectName(QLatin1String("place_") + QLatin1String(key));
        button->setProperty("place", true);
        button->setProperty("key", QLatin1String(key));
        button->setCheckable(true);
        button->setFocusPolicy(Qt::TabFocus); // a click or its key leaves the keys to the place
        // Of the window, so that it leads out of the whole screen too, where the button is not seen.
        connect(new QShortcut(shortcut, this), &QShortcut::activated, button, &QPushButton::click);
        button->setToolTip(tr("%1 (%2)").arg(name, shortcut.toString(QKeySequence::NativeText)));
        placeButtons_->addButton(button, id);
        pillRow->addWidget(button);
    };
    // In the order of the work, which their keys follow. Only the board is made at once; the others when she
    // first goes there.
    addPlace(tr("Leaves"), "leaves",
             new LatePlace([this](QWidget* in) { return new LeavesPlace(*session_, in); }));
    addPlace(tr("Board"), "board", board_);
    addPlace(tr("Pot"), "pot", new LatePlace([this](QWidget* in) { return makePotPlace(in); }));
    addPlace(tr("Bind"), "bind", new LatePlace([this](QWidget* in) {
                 auto* bind = new BindPlace(
                     *session_, [this] { return keepProgress(); }, in);
                 connect(bind, &BindPlace::wholeScreenShown, this, [this](bool whole) {
                     for (QWidget* around : std::initializer_list<QWidget*>{bar_, menuBar(), status_})
                         around->setVisible(!whole);
                 });
                 return bind;
             }));
    addPlace(tr("Sheets"), "sheets",
             new LatePlace([this](QWidget* in) { return new SheetsPlace(*session_, in); }));
    connect(placeButtons_, &QButtonGroup::idToggled, this, [this](int id, bool on) {
        if (!on)
            return;
        // What a place said of itself is of no use in another.
        if (status_)
            status_->hint({});
        places_->setCurrentIndex(id);
        places_->currentWidget()->setFocus();
    });
    // Going where she already is brings the keys back there.
    connect(placeButtons_, &QButtonGroup::idClicked, this, [this] { places_->currentWidget()->setFocus(); });

    auto* barRow = new QHBoxLayout(bar);
    barRow->setContentsMargins(18, 6, 18, 6);
    auto* wing = new QWidget(bar);
    auto* left = new QHBoxLayout(wing);
    left->setContentsMargins(0, 0, 0, 0);
    left->setSpacing(8);
    left->addWidget(title_);
    left->addWidget(subtitle_, 1);
    // The places stay in the middle, however long the plan's title is: the wings share what is left.
    for (QWidget* side : {wing, static_cast<QWidget*>(saved_)})
        side->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    barRow->addWidget(wing, 1);
    barRow->addWidget(pills);
    barRow->addWidget(saved_, 1);

    status_ = new StatusLine(*session_, middle);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(bar);
    column->addWidget(places_, 1);
    column->addWidget(status_);
    setCentralWidget(middle);
    showPlaceNamed(QStringLiteral("board"));
    connect(board_, &BoardPage::said, status_, &StatusLine::hint);
    connect(&board_->view(), &BoardView::statusChanged, status_, &StatusLine::hint);
}

QWidget* MainWindow::makePotPlace(QWidget* in) {
    pot_ = new PotPlace(*session_, board_->suggestions(), in);
    connect(pot_, &PotPlace::said, status_, &StatusLine::hint);
    for (const auto& [wanted, name] :
         {std::pair{&PotPlace::compareWanted, "compare"}, std::pair{&PotPlace::startWanted, "startMeOff"}})
        connect(pot_, wanted, findChild<QAction*>(QLatin1String(name)), &QAction::trigger);
    connect(pot_, &PotPlace::placeChosen, this, [this](unsigned stem, int tier, int slot) {
        showPlaceNamed(QStringLiteral("board"));
        board_->view().showPlace(StemId{stem}, tier, slot);
    });
    return pot_;
}

void MainWindow::showPlaceNamed(const QString& name) {
    for (QAbstractButton* button : placeButtons_->buttons())
        if (button->property("key").toString() == name)
            button->setChecked(true);
}

bool MainWindow::openFile(const QString& path) {
    QString why;
    FileMark mark;
    std::optional<Plan> plan = readPlan(path, &why, &mark);
    if (!plan) {
        ask::tell(this, why);
        return false;
    }
    mark_ = mark;
    session_->open(std::move(*plan), QFileInfo(path).absoluteFilePath());
    rememberRecent(session_->path());
    return true;
}

void MainWindow::adoptFile(const QString& path, const FileMark& mark) {
    mark_ = mark;
    session_->markSaved(QFileInfo(path).absoluteFilePath());
    rememberRecent(session_->path());
}

void MainWindow::offerWorkLeftBehind() {
    for (const LeftBehind& left : Recovery::found(settings::recoveryFolder())) {
        const QString title =
            left.plan.about.title.empty() ? tr("Untitled plant") : text(left.plan.about.title);
        switch (ask::aboutWorkLeftBehind(this, title, QLocale().toString(left.when, QLocale::ShortFormat))) {
        case ask::Answer::open:
            mark_ = {left.digest};
            // Its own journal begins with it, before the old one goes.
            session_->open(left.plan, left.path, false);
            Recovery::remove(left);
            return;
        case ask::Answer::discard:
            Recovery::remove(left);
            break;
        default:
            break;
        }
    }
}

void MainWindow::openChosen() {
    if (!mayLeave())
        return;
    const QString folder = session_->path().isEmpty() ? settings::folder() : QFileInfo(session_->path()).path();
    const QString path = ask::fileToOpen(this, folder);
    if (!path.isEmpty())
        openFile(path);
}

bool MainWindow::save() {
    return session_->path().isEmpty() ? saveAs() : saveTo(session_->path());
}

bool MainWindow::saveAs() {
    QString name = text(session_->plan().about.title).simplified();
    // What no file system minds.
    for (const QChar odd : QStringLiteral("/\\:*?\"<>|"))
        name.replace(odd, QLatin1Char('-'));
    const QString suggested =
        session_->path().isEmpty()
            ? QDir(settings::folder())
                  .filePath((name.isEmpty() ? tr("Plant") : name.left(80)) + QStringLiteral(".stemplan"))
            : session_->path();
    const QString path =
        ask::fileToSave(this, suggested, tr("Stemwright plans (*.stemplan)"), QStringLiteral("stemplan"));
    if (path.isEmpty())
        return false;
    // The dialog has asked about a file that is there already.
    if (QFileInfo(path).absoluteFilePath() != session_->path())
        mark_ = {};
    return saveTo(QFileInfo(path).absoluteFilePath());
}

bool MainWindow::saveTo(const QString& path) {
    if (path == session_->path() && changedOnDisk(path, mark_))
        switch (ask::aboutChangedFile(this, path)) {
        case ask::Answer::overwrite:
            break;
        case ask::Answer::saveElsewhere:
            return saveAs();
        default:
            return false;
        }
    QString why;
    if (!writePlan(session_->plan(), path, &why, &mark_)) {
        ask::tell(this, why);
        return false;
    }
    session_->markSaved(path);
    rememberRecent(path);
    return true;
}

QString MainWindow::keepProgress() {
    const QString path = session_->path();
    QString why;
    if (!path.isEmpty()) {
        const QString shown = QFileInfo(path).fileName();
        if (!session_->unsaved())
            return tr("Kept in %1, with all changes").arg(shown);
        if (changedOnDisk(path, mark_)) {
            why = tr("%1 has been changed by another program.").arg(shown);
        } else if (writePlan(session_->plan(), path, &why, &mark_)) {
            session_->markSaved(path);
            return tr("Kept in %1, with all changes").arg(shown);
        }
    } else {
        why = tr("This plan has no file yet: save it (%1).")
                  .arg(QKeySequence(QKeySequence::Save).toString(QKeySequence::NativeText));
    }
    // The journal of unsaved work has it already (app/recovery.h).
    return tr("%1 Until then it is kept as unsaved work, which no kill loses.").arg(why);
}

bool MainWindow::mayLeave() {
    if (!session_->unsaved())
        return true;
    switch (ask::aboutUnsavedWork(this, text(session_->plan().about.title))) {
    case ask::Answer::save:
        return save();
    case ask::Answer::discard:
        return true;
    default:
        return false;
    }
}

void MainWindow::showEvent(QShowEvent* event) {
    QMainWindow::showEvent(event);
    if (std::exchange(shownBefore_, true))
        return;
    // Only now is it known how much room there is; once more when the desktop has had its say about it.
    board_->view().zoomToOpen();
    QTimer::singleShot(0, &board_->view(), &BoardView::zoomToOpen);
    QTimer::singleShot(0, this, [this] { setWindowIcon(QIcon(QStringLiteral(":/icon.svg"))); });
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!mayLeave()) {
        event->ignore();
        return;
    }
    // Whoever begins again begins with a window, from which there is a way out.
    setWindowState(windowState() & ~Qt::WindowFullScreen);
    settings::setWindowGeometry(saveGeometry());
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    const QList<QUrl> urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().isLocalFile())
        event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
    const QString path = event->mimeData()->urls().value(0).toLocalFile();
    if (!path.isEmpty() && mayLeave())
        openFile(path);
}

void MainWindow::refreshTitle() {
    const Plan& plan = session_->plan();
    const PotFigures& pot = session_->figures().pot;
    const QString title = plan.about.title.empty() ? tr("Untitled plant") : text(plan.about.title);
    title_->setText(QFontMetrics(title_->font()).elidedText(title, Qt::ElideRight, 340));
    title_->setToolTip(title);
    QStringList parts{tr("%n stem(s)", nullptr, pot.stems), tr("%n leaf/leaves", nullptr, pot.leaves)};
    if (!plan.pot.name.empty())
        parts << text(plan.pot.name);
    // What has no room is left out whole, the pot's name first.
    QStringList wordings;
    for (; !parts.isEmpty(); parts.removeLast())
        wordings << parts.join(QStringLiteral(" · "));
    subtitle_->setWordings(wordings);
    const QString name = QFileInfo(session_->path()).fileName();
    saved_->setText(session_->path().isEmpty() ? (session_->unsaved() ? tr("not saved") : tr("new"))
                    : session_->unsaved()      ? tr("%1, not saved").arg(name)
                                               : tr("saved in %1").arg(name));
    saved_->setToolTip(QDir::toNativeSeparators(session_->path()));
    setWindowTitle(tr("%1[*] — Stemwright").arg(title));
    setWindowModified(session_->unsaved());
}

} // namespace stemwright

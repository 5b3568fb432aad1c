#include "app/sheets/sheets_place.h"

#include "app/ask.h"
#include "app/look.h"
#include "app/missing_glyphs.h"
#include "app/session.h"
#include "app/sheet_painter.h"
#include "app/sheets/sheets_preview.h"
#include "app/wording.h"

#include <QAccessible>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <QtConcurrent>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int choicesWidth = 236; ///< px
constexpr int patience = 150;     ///< ms after an edit before the pages are laid out again

QLabel* headingLabel(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(look::font(look::Type::heading));
    return label;
}

} // namespace

SheetsPlace::SheetsPlace(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    setObjectName(QStringLiteral("sheetsPlace"));
    setAccessibleName(tr("Sheets: the paper, as it prints"));
    pickFolder = [](QWidget* over, const QString& from) {
        return QFileDialog::getExistingDirectory(over, SheetsPlace::tr("Folder for the SVG files"), from);
    };
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    auto* choices = new QWidget(this);
    choices->setObjectName(QStringLiteral("sheetsChoices"));
    choices->setFixedWidth(choicesWidth);
    row->addWidget(choices);
    buildChoices(choices);
    preview_ = new SheetsPreview(this);
    row->addWidget(preview_, 1);
    // Whoever comes here by a key turns the pages by keys.
    setFocusProxy(preview_);

    wait_.setSingleShot(true);
    wait_.setInterval(patience);
    connect(&wait_, &QTimer::timeout, this, &SheetsPlace::layOut);
    connect(&session_, &Session::changed, this, [this](const Change& change) {
        // Another plan's paper must not be looked at, saved or printed as this one's.
        if (change.anotherPlan)
            preview_->show(std::make_shared<SheetSet>());
        later();
    });
    connect(&layingOut_, &QFutureWatcherBase::finished, this, [this] {
        preview_->setMaking(false);
        preview_->show(layingOut_.result());
        missing_->setText(preview_->sheets()->missing);
        missing_->setVisible(!missing_->text().isEmpty());
        tellPages();
        if (std::exchange(again_, false))
            layOut();
    });
    connect(&writing_, &QFutureWatcherBase::finished, this, [this] {
        showWriting(false);
        const Written done = writing_.result();
        tell(done.sentence, !done.ok);
    });
    connect(preview_, &SheetsPreview::pageChanged, this, &SheetsPlace::tellPages);
}

SheetsPlace::~SheetsPlace() {
    if (stop_)
        *stop_ = true;
    layingOut_.waitForFinished();
    writing_.waitForFinished();
}

void SheetsPlace::buildChoices(QWidget* column) {
    auto* rows = new QVBoxLayout(column);
    rows->setContentsMargins(4 * look::unit, 3 * look::unit, 4 * look::unit, 3 * look::unit);
    rows->setSpacing(2 * look::unit);

    auto* paperLabel = headingLabel(tr("P&aper"), column);
    rows->addWidget(paperLabel);
    paper_ = new QComboBox(column);
    paper_->setObjectName(QStringLiteral("sheetsPaper"));
    paper_->setAccessibleName(tr("Paper"));
    paper_->addItem(tr("A4"), static_cast<int>(Paper::a4));
    paper_->addItem(tr("A3"), static_cast<int>(Paper::a3));
    paper_->addItem(tr("Letter"), static_cast<int>(Paper::letter));
    // Where Letter is at home the computer knows it.
    if (QLocale().measurementSystem() == QLocale::ImperialUSSystem)
        paper_->setCurrentIndex(2);
    paperLabel->setBuddy(paper_);
    rows->addWidget(paper_);
    connect(paper_, &QComboBox::currentIndexChanged, this, &SheetsPlace::later);

    grey_ = new QCheckBox(tr("For a gre&y printer"), column);
    grey_->setObjectName(QStringLiteral("sheetsGrey"));
    rows->addWidget(grey_);
    connect(grey_, &QCheckBox::toggled, this, &SheetsPlace::later);

    rows->addWidget(headingLabel(tr("Pages"), column));
    const std::pair<SheetPage, QString> offered[] = {{SheetPage::glance, tr("The plant at a gla&nce")},
                                                     {SheetPage::mats, tr("&Mats, true size")},
                                                     {SheetPage::cards, tr("Binding &cards")},
                                                     {SheetPage::leaves, tr("&Leaves to make")},
                                                     {SheetPage::supplies, tr("S&upplies and cutting plan")},
                                                     {SheetPage::pot, tr("Pot from a&bove, true size")}};
    for (const auto& [page, name] : offered) {
        auto* box = new QCheckBox(name, column);
        box->setObjectName(QStringLiteral("sheetsPage%1").arg(static_cast<int>(page)));
        box->setChecked(true);
        rows->addWidget(box);
        connect(box, &QCheckBox::toggled, this, &SheetsPlace::later);
        pages_.push_back({page, box});
    }

    auto* stemsLabel = headingLabel(tr("S&tems"), column);
    rows->addWidget(stemsLabel);
    stems_ = new QListWidget(column);
    stems_->setObjectName(QStringLiteral("sheetsStems"));
    stems_->setAccessibleName(tr("Stems on the sheets"));
    stemsLabel->setBuddy(stems_);
    rows->addWidget(stems_, 1);
    connect(stems_, &QListWidget::itemChanged, this, &SheetsPlace::later);
    fillStems();

    count_ = new QLabel(column);
    count_->setObjectName(QStringLiteral("sheetsCount"));
    count_->setProperty("quiet", true);
    rows->addWidget(count_);

    auto* zoomRow = new QHBoxLayout;
    const auto zoomButton = [&](const QString& name, const QString& text, const QString& said, auto deed) {
        auto* button = new QPushButton(text, column);
        button->setObjectName(name);
        button->setAccessibleName(said);
        button->setToolTip(said);
        button->setProperty("small", true);
        zoomRow->addWidget(button);
        connect(button, &QPushButton::clicked, this, deed);
    };
    zoomButton(QStringLiteral("sheetsSmaller"), tr("−"), tr("Smaller"), [this] { preview_->step(-1); });
    zoomButton(QStringLiteral("sheetsLarger"), tr("+"), tr("Larger"), [this] { preview_->step(1); });
    zoomButton(QStringLiteral("sheetsTrueSize"), tr("1:1"), tr("True size on this screen"),
               [this] { preview_->setZoom(1); });
    zoomButton(QStringLiteral("sheetsFit"), tr("Fit"), tr("As wide as the window"),
               [this] { preview_->setZoom(0); });
    rows->addLayout(zoomRow);

    const auto way = [&](const QString& name, const QString& text, auto deed) {
        auto* button = new QPushButton(text, column);
        button->setObjectName(name);
        rows->addWidget(button);
        connect(button, &QPushButton::clicked, this, deed);
        ways_.push_back(button);
        return button;
    };
    way(QStringLiteral("sheetsSavePdf"), tr("Save as P&DF…"), &SheetsPlace::savePdf)->setProperty("main", true);
    way(QStringLiteral("sheetsSaveSvg"), tr("Save as SV&G…"), &SheetsPlace::saveSvg);
    way(QStringLiteral("sheetsPrint"), tr("P&rint…"), &SheetsPlace::print);

    progress_ = new QProgressBar(column);
    progress_->setObjectName(QStringLiteral("sheetsProgress"));
    progress_->setAccessibleName(tr("Pages written"));
    progress_->setTextVisible(false);
    progress_->setFixedHeight(3 * look::unit);
    rows->addWidget(progress_);
    stopButton_ = new QPushButton(tr("St&op"), column);
    stopButton_->setObjectName(QStringLiteral("sheetsStop"));
    rows->addWidget(stopButton_);
    connect(stopButton_, &QPushButton::clicked, this, [this] {
        if (stop_)
            *stop_ = true;
    });
    progress_->hide();
    stopButton_->hide();

    missing_ = new QLabel(column);
    missing_->setObjectName(QStringLiteral("sheetsMissing"));
    missing_->setWordWrap(true);
    missing_->setTextFormat(Qt::PlainText);
    missing_->setVisible(false);
    rows->addWidget(missing_);
    notice_ = new QLabel(column);
    notice_->setObjectName(QStringLiteral("sheetsNotice"));
    notice_->setWordWrap(true);
    notice_->setTextFormat(Qt::PlainText);
    notice_->setVisible(false);
    rows->addWidget(notice_);
}

void SheetsPlace::fillStems() {
    const QSignalBlocker quiet(stems_);
    std::vector<Qt::CheckState> before;
    for (int i = 0; i < stems_->count(); ++i)
        before.push_back(stems_->item(i)->checkState());
    const Plan& plan = session_.plan();
    const bool same = before.size() == plan.stems.size();
    const int current = std::max(0, stems_->currentRow());
    // The line that she is on stays: a list that is as it was is left alone.
    int alike = 0;
    for (int i = 0; same && i < stems_->count(); ++i)
        alike += stems_->item(i)->text() == text(plan.stems[static_cast<std::size_t>(i)].name);
    if (same && alike == stems_->count())
        return;
    stems_->clear();
    for (std::size_t i = 0; i < plan.stems.size(); ++i) {
        auto* item = new QListWidgetItem(text(plan.stems[i].name), stems_);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsUserCheckable | Qt::ItemIsSelectable);
        item->setSizeHint(QSize(0, look::target));
        item->setCheckState(same ? before[i] : Qt::Checked);
    }
    stems_->setCurrentRow(std::min(current, stems_->count() - 1));
}

SheetOptions SheetsPlace::options() const {
    SheetOptions options;
    options.paper = static_cast<Paper>(paper_->currentData().toInt());
    options.grey = grey_->isChecked();
    for (const auto& [page, box] : pages_)
        if (box->isChecked())
            options.only.insert(page);
    for (int i = 0; i < stems_->count(); ++i)
        if (stems_->item(i)->checkState() == Qt::Checked)
            options.stems.insert(static_cast<std::size_t>(i));
    // All of them is what an empty set says; none of them leaves nothing to show.
    if (options.stems.size() == session_.plan().stems.size())
        options.stems.clear();
    else if (options.stems.empty())
        options.stems.insert(session_.plan().stems.size());
    return options;
}

void SheetsPlace::later() {
    stale_ = true;
    if (isVisible())
        wait_.start();
}

void SheetsPlace::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_)
        layOut();
}

void SheetsPlace::layOut() {
    wait_.stop();
    if (layingOut_.isRunning()) {
        again_ = true;
        return;
    }
    stale_ = false;
    fillStems();
    // No box ticked means no page, where an empty set would mean all of them.
    const SheetOptions chosen = options();
    if (chosen.only.empty()) {
        preview_->show(std::make_shared<SheetSet>());
        missing_->hide();
        tellPages();
        return;
    }
    preview_->setMaking(true);
    tellPages();
    layingOut_.setFuture(QtConcurrent::run([plan = session_.plan(), figures = session_.figures(), chosen] {
        auto set = std::make_shared<SheetSet>();
        set->pages = pagesOf(plan, figures, chosen);
        set->plan = plan;
        set->options = chosen;
        set->missing = missingGlyphs(set->pages);
        return std::shared_ptr<const SheetSet>(std::move(set));
    }));
}

void SheetsPlace::tellPages() {
    const SheetSet* sheets = preview_->sheets();
    const int pages = sheets ? static_cast<int>(sheets->pages.size()) : 0;
    const QString said = pages                ? tr("Page %1 of %2").arg(preview_->currentPage() + 1).arg(pages)
                         : preview_->making() ? SheetsPreview::makingWords()
                                              : tr("No pages");
    count_->setText(said);
    preview_->setAccessibleDescription(said);
    if (!writing_.isRunning())
        for (QPushButton* way : ways_)
            way->setEnabled(pages > 0);
}

void SheetsPlace::tell(const QString& sentence, bool refusal) {
    notice_->setProperty("refusal", refusal);
    notice_->style()->polish(notice_);
    notice_->setText(sentence);
    notice_->setVisible(!sentence.isEmpty());
    QAccessibleEvent event(notice_, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
    if (!sentence.isEmpty())
        Q_EMIT said(sentence);
}

QString SheetsPlace::suggested(const QString& suffix) const {
    const QFileInfo plan(session_.path());
    QString name = session_.path().isEmpty() ? text(session_.plan().about.title) : plan.completeBaseName();
    name.replace(QRegularExpression(QStringLiteral("[/\\\\:*?\"<>|\\x00-\\x1f]+")), QStringLiteral(" "));
    name = name.simplified().left(80);
    if (name.isEmpty())
        name = tr("sheets");
    const QString folder = session_.path().isEmpty() ? QDir::homePath() : plan.absolutePath();
    return QDir(folder).filePath(name + suffix);
}

void SheetsPlace::showWriting(bool on) {
    progress_->setVisible(on);
    stopButton_->setVisible(on);
    progress_->setRange(0, 0);
    for (QPushButton* way : ways_)
        way->setEnabled(!on);
}

void SheetsPlace::write(std::function<bool(QString*, const PageTold&)> work, const QString& sentence) {
    if (writing_.isRunning())
        return;
    showWriting(true);
    tell(tr("Writing…"), false);
    stop_ = std::make_shared<std::atomic_bool>(false);
    const PageTold told = [this, stop = stop_](int done, int all) {
        // The place waits for its threads before it goes, so it is there.
        QMetaObject::invokeMethod(
            this,
            [this, done, all] {
                progress_->setRange(0, all);
                progress_->setValue(done);
            },
            Qt::QueuedConnection);
        return !*stop;
    };
    writing_.setFuture(QtConcurrent::run([work = std::move(work), sentence, told] {
        QString why;
        const bool ok = work(&why, told);
        return Written{ok, ok              ? sentence
                           : why.isEmpty() ? SheetsPlace::tr("Stopped: nothing was written.")
                                           : why};
    }));
}

void SheetsPlace::savePdf() {
    const QString file =
        ask::fileToSave(this, suggested(QStringLiteral(".pdf")), tr("PDF (*.pdf)"), QStringLiteral("pdf"));
    if (file.isEmpty())
        return;
    write([plan = session_.plan(), chosen = options(),
           file](QString* why, const PageTold& told) { return writePdf(plan, chosen, file, why, told); },
          tr("Saved %1.").arg(QDir::toNativeSeparators(file)));
}

void SheetsPlace::saveSvg() {
    const QString folder = pickFolder(this, QFileInfo(suggested(QString())).absolutePath());
    if (folder.isEmpty())
        return;
    write(
        [plan = session_.plan(), chosen = options(), folder](QString* why, const PageTold& told) {
            return writeSvg(plan, chosen, folder, why, nullptr, told);
        },
        tr("Saved the pages in %1.").arg(QDir::toNativeSeparators(folder)));
}

void SheetsPlace::print() {
    QString why;
    // What is seen is what is printed; pages that are still being laid out are laid out now.
    const SheetSet* seen = stale_ || layingOut_.isRunning() ? nullptr : preview_->sheets();
    const SheetOptions chosen = options();
    const bool printed =
        seen ? printSheets(seen->plan, seen->pages, seen->options, this, &why)
             : printSheets(session_.plan(), pagesOf(session_.plan(), session_.figures(), chosen), chosen, this,
                           &why);
    if (!printed)
        tell(why, true);
}

} // namespace stemwright

#include "app/photo/photo_dialog.h"

#include "app/ask.h"
#include "app/leaves/draft.h"
#include "app/leaves/leaf_pictures.h"
#include "app/look.h"
#include "app/settings.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QDragEnterEvent>
#include <QFormLayout>
#include <QLabel>
#include <QListWidget>
#include <QMimeData>
#include <QProgressBar>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>
#include <QtConcurrent>

namespace stemwright {

namespace {

constexpr int useRole = Qt::UserRole;       // the id of the colour it changes, 0 for a new one
constexpr int valueRole = Qt::UserRole + 1; // QColor
constexpr int sideWidth = 250;

} // namespace

PhotoDialog::PhotoDialog(const Plan& plan, ColourId colour, QWidget* parent)
    : FormDialog(QStringLiteral("photoDialog"), tr("Colours from a photograph"), tr("Use these colours"),
                 parent),
      plan_(plan),
      view_(new PhotoView(this)) {
    setAcceptDrops(true);
    auto* sides = new QHBoxLayout;
    sides->setSpacing(4 * look::unit);
    body()->addLayout(sides, 1);
    sides->addWidget(view_, 1);
    auto* side = new QVBoxLayout;
    side->setSpacing(2 * look::unit);
    sides->addLayout(side);
    buildSide(side);
    if (const int at = use_->findData(colour.value); at >= 0)
        use_->setCurrentIndex(at);
    connect(view_, &PhotoView::pointed, this, &PhotoDialog::refresh);
    connect(view_, &PhotoView::taken, this, &PhotoDialog::take);
    connect(&reading_, &QFutureWatcher<Photo>::finished, this, [this] {
        progress_->setVisible(false);
        stop_->setVisible(false);
        open_->setEnabled(true);
        if (!stopped_)
            showPhoto(reading_.result());
    });
    refresh();
    resize(980, 640);
}

PhotoDialog::~PhotoDialog() {
    reading_.disconnect(this);
    reading_.waitForFinished();
}

void PhotoDialog::buildSide(QVBoxLayout* side) {
    const auto button = [this](const QString& words, const QString& name, const QString& accessible) {
        auto* made = new QPushButton(words, this);
        nameField(made, name, accessible);
        made->setToolTip(accessible);
        made->setAutoDefault(false);
        return made;
    };
    open_ = button(tr("Open a photograph…"), QStringLiteral("photoOpen"), tr("Open a photograph (Ctrl+O)"));
    open_->setShortcut(QKeySequence::Open);
    connect(open_, &QPushButton::clicked, this, &PhotoDialog::ask);
    progress_ = new QProgressBar(this);
    progress_->setRange(0, 0);
    nameField(progress_, QStringLiteral("photoProgress"), tr("Reading the photograph"));
    stop_ = button(tr("Stop"), QStringLiteral("photoStop"), tr("Stop reading"));
    connect(stop_, &QPushButton::clicked, this, &PhotoDialog::stopReading);
    progress_->setVisible(false);
    stop_->setVisible(false);
    side->addWidget(open_);
    side->addWidget(progress_);
    side->addWidget(stop_);

    auto* form = new QFormLayout;
    form->setVerticalSpacing(2 * look::unit);
    across_ = new QSpinBox(this);
    across_->setRange(PhotoView::leastAcross, PhotoView::mostAcross);
    across_->setSingleStep(2);
    across_->setValue(view_->across());
    nameField(across_, QStringLiteral("photoAcross"),
              tr("Disc that is averaged, pixels across (Page Up and Page Down)"));
    across_->setToolTip(across_->accessibleName());
    form->addRow(tr("Disc, pixels"), across_);
    connect(across_, &QSpinBox::valueChanged, view_, &PhotoView::setAcross);
    connect(view_, &PhotoView::acrossChanged, across_, &QSpinBox::setValue);
    use_ = choiceOf({}, this);
    use_->addItem(tr("is a new colour"), 0u);
    for (const Colour& colour : plan_.colours)
        use_->addItem(swatch(toColour(colour.srgb)), tr("changes %1").arg(text(colour.name)), colour.id.value);
    nameField(use_, QStringLiteral("photoUse"), tr("What the colour becomes"));
    use_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    use_->setToolTip(use_->accessibleName());
    side->addLayout(form);
    side->addWidget(use_);

    swatch_ = new QLabel(this);
    swatch_->setObjectName(QStringLiteral("photoSwatch"));
    swatch_->setMinimumHeight(64);
    swatch_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    value_ = new QLabel(this);
    value_->setObjectName(QStringLiteral("photoValue"));
    side->addWidget(swatch_);
    side->addWidget(value_);
    take_ = button(tr("Take (Enter)"), QStringLiteral("photoTake"), tr("Take the colour at the point"));
    connect(take_, &QPushButton::clicked, this, &PhotoDialog::take);
    side->addWidget(take_);

    auto* title = new QLabel(tr("Taken; F2 names one"), this);
    title->setProperty("quiet", true);
    taken_ = new QListWidget(this);
    nameField(taken_, QStringLiteral("photoTaken"), tr("Colours that were taken; F2 names one"));
    taken_->setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::DoubleClicked);
    title->setBuddy(taken_);
    side->addWidget(title);
    side->addWidget(taken_, 1);
    remove_ = button(tr("Remove"), QStringLiteral("photoRemove"), tr("Remove the colour that was taken"));
    connect(remove_, &QPushButton::clicked, this, &PhotoDialog::removeTaken);
    connect(taken_, &QListWidget::currentRowChanged, this, [this](int row) { remove_->setEnabled(row >= 0); });
    remove_->setEnabled(false);
    side->addWidget(remove_);
    for (QWidget* each : {static_cast<QWidget*>(taken_), static_cast<QWidget*>(use_),
                          static_cast<QWidget*>(open_), static_cast<QWidget*>(take_)})
        each->setFixedWidth(sideWidth);
    auto* keys = new QLabel(tr("Point and click. By keys: arrows move by a pixel, Shift by ten; Page Up and "
                               "Page Down size the disc; + and − zoom; Enter takes."),
                            this);
    keys->setProperty("quiet", true);
    keys->setWordWrap(true);
    body()->addWidget(keys);
}

void PhotoDialog::ask() {
    const QString path = ask::imageToOpen(this, settings::folder());
    if (!path.isEmpty())
        load(path);
}

void PhotoDialog::load(const QString& path) {
    if (reading_.isRunning())
        return;
    say({});
    stopped_ = false;
    open_->setEnabled(false);
    progress_->setVisible(true);
    stop_->setVisible(true);
    reading_.setFuture(QtConcurrent::run([path] { return readPhoto(path); }));
}

void PhotoDialog::stopReading() {
    stopped_ = true;
    progress_->setVisible(false);
    stop_->setVisible(false);
}

void PhotoDialog::showPhoto(const Photo& photo) {
    say(photo.why);
    if (photo.image.isNull())
        return;
    view_->setImage(photo.image);
    view_->setFocus(Qt::OtherFocusReason);
}

void PhotoDialog::pasteImage() {
    const QMimeData* pasted = QApplication::clipboard()->mimeData();
    if (pasted && pasted->hasImage())
        return showPhoto(fitPhoto(qvariant_cast<QImage>(pasted->imageData())));
    if (pasted && pasted->urls().size() == 1 && pasted->urls().front().isLocalFile())
        return load(pasted->urls().front().toLocalFile());
    say(tr("There is no picture to paste."));
}

void PhotoDialog::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Paste))
        return pasteImage();
    FormDialog::keyPressEvent(event);
}

void PhotoDialog::dragEnterEvent(QDragEnterEvent* event) {
    const QList<QUrl> urls = event->mimeData()->urls();
    if (event->mimeData()->hasImage() || (urls.size() == 1 && urls.front().isLocalFile()))
        event->acceptProposedAction();
}

void PhotoDialog::dropEvent(QDropEvent* event) {
    if (const QList<QUrl> urls = event->mimeData()->urls(); !urls.isEmpty())
        load(urls.front().toLocalFile());
    else
        showPhoto(fitPhoto(qvariant_cast<QImage>(event->mimeData()->imageData())));
}

void PhotoDialog::refresh() {
    const auto now = view_->colour();
    take_->setEnabled(now.has_value());
    if (!now) {
        swatch_->setPixmap({});
        value_->setText(view_->image().isNull() ? QString() : tr("Nothing is there to average."));
        return;
    }
    QPixmap large(sideWidth, 64);
    large.fill(toColour(*now));
    swatch_->setPixmap(large);
    value_->setText(text(toText(*now)));
}

void PhotoDialog::take() {
    const auto now = view_->colour();
    if (!now)
        return say(view_->image().isNull() ? tr("Open a photograph first.")
                                           : tr("Nothing is there to average."));
    const std::uint32_t use = use_->currentData().toUInt();
    std::size_t fresh = plan_.colours.size();
    for (int row = 0; row < taken_->count(); ++row) {
        // A colour that is changed twice is what it was changed to last.
        if (use != 0 && taken_->item(row)->data(useRole).toUInt() == use) {
            delete taken_->takeItem(row--);
            continue;
        }
        if (taken_->item(row)->data(useRole).toUInt() == 0)
            ++fresh;
    }
    if (use == 0 && fresh >= limits::colours)
        return say(tr("%1 colours are the most in one plan.").arg(limits::colours));
    const Colour* changed = stemwright::find(plan_, ColourId{use});
    const QColor shade = toColour(*now);
    auto* item = new QListWidgetItem(swatch(shade),
                                     changed ? text(changed->name) : tr("Colour %1").arg(fresh + 1), taken_);
    item->setFlags(item->flags() | Qt::ItemIsEditable);
    item->setData(useRole, use);
    item->setData(valueRole, shade);
    item->setToolTip(shade.name());
    item->setSizeHint({0, look::target + 2});
    taken_->setCurrentItem(item);
    say({});
}

void PhotoDialog::removeTaken() {
    if (const int row = taken_->currentRow(); row >= 0)
        delete taken_->takeItem(row);
}

QString PhotoDialog::problem() {
    if (taken_->count() == 0)
        return tr("Take a colour first: point at a bead and press Enter, or click it.");
    for (int row = 0; row < taken_->count(); ++row)
        if (const QString why = nameRefusal(taken_->item(row)->text().trimmed()); !why.isEmpty())
            return why;
    return {};
}

std::optional<Edit> PhotoDialog::edit() const {
    Plan draft = plan_;
    for (int row = 0; row < taken_->count(); ++row) {
        const QListWidgetItem* item = taken_->item(row);
        const QColor shade = item->data(valueRole).value<QColor>();
        const Srgb srgb{static_cast<std::uint8_t>(shade.red()), static_cast<std::uint8_t>(shade.green()),
                        static_cast<std::uint8_t>(shade.blue())};
        const std::string name = item->text().trimmed().toStdString();
        const ColourId id{item->data(useRole).toUInt()};
        if (id.value == 0)
            draft.colours.push_back({freeColourId(draft), name, srgb, ""});
        for (Colour& colour : draft.colours)
            if (colour.id == id) {
                colour.name = name;
                colour.srgb = srgb;
            }
    }
    return difference(plan_, draft, Deed::paste);
}

} // namespace stemwright

#include "app/panels/offer_panel.h"

#include "app/compare/board_picture.h"
#include "app/fields/form_dialog.h"
#include "app/look.h"
#include "app/suggestion_text.h"
#include "app/suggestions.h"
#include "app/wording.h"
#include "core/figures/standings.h"
#include "core/suggest/plan_counts.h"

#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr int mostRows = 14;
constexpr int mostPicture = 150;

/// The suggestion changes more than the leaves in their places, so that the board cannot show it all.
bool changesTiers(const BeforeAfter& plans) {
    return !std::equal(plans.before.stems.begin(), plans.before.stems.end(), plans.after.stems.begin(),
                       plans.after.stems.end(), [](const Stem& a, const Stem& b) {
                           return a.id == b.id && a.tiers.size() == b.tiers.size();
                       });
}

} // namespace

OfferPanel::OfferPanel(Session& session, Suggestions& suggestions, QWidget* parent)
    : QWidget(parent),
      session_(session),
      suggestions_(suggestions),
      title_(new QLabel(this)),
      scroll_(new QScrollArea(this)),
      take_(new QPushButton(tr("&Take it"), this)),
      takeForStem_(new QPushButton(tr("For one stem"), this)),
      compare_(new QPushButton(tr("Side &by side…"), this)),
      drop_(new QPushButton(tr("&Drop it"), this)),
      stop_(new QPushButton(tr("Stop, and show the best so far"), this)),
      hint_(new QPushButton(this)),
      stems_(new QMenu(this)) {
    setObjectName(QStringLiteral("offer"));
    setAttribute(Qt::WA_StyledBackground);
    setAccessibleName(tr("Suggestion"));
    title_->setObjectName(QStringLiteral("offerTitle"));
    title_->setFont(look::font(look::Type::strong));
    title_->setWordWrap(true);
    scroll_->setObjectName(QStringLiteral("offerScroll"));
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setWidgetResizable(true);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setMinimumHeight(110);
    scroll_->setWidget(makeDetails());
    scroll_->viewport()->setAutoFillBackground(false);
    scroll_->widget()->setAutoFillBackground(false);
    take_->setObjectName(QStringLiteral("takeOffer"));
    take_->setProperty("main", true);
    takeForStem_->setObjectName(QStringLiteral("takeForStem"));
    takeForStem_->setMenu(stems_);
    compare_->setObjectName(QStringLiteral("compareOffer"));
    drop_->setObjectName(QStringLiteral("dropOffer"));
    stop_->setObjectName(QStringLiteral("stopLooking"));
    hint_->setObjectName(QStringLiteral("firstStep"));
    hint_->setProperty("main", true);

    auto* buttons = new QGridLayout;
    buttons->setSpacing(look::unit);
    buttons->addWidget(take_, 0, 0);
    buttons->addWidget(drop_, 0, 1);
    buttons->addWidget(takeForStem_, 1, 0);
    buttons->addWidget(compare_, 1, 1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(10, 8, 10, 8);
    layout->setSpacing(look::unit);
    layout->addWidget(title_);
    layout->addWidget(scroll_, 1);
    layout->addLayout(buttons);
    layout->addWidget(stop_);
    layout->addWidget(hint_);

    connect(take_, &QPushButton::clicked, &session_, &Session::takeOffer);
    connect(drop_, &QPushButton::clicked, &session_, &Session::dropOffer);
    connect(compare_, &QPushButton::clicked, this, &OfferPanel::compareWanted);
    connect(stop_, &QPushButton::clicked, &suggestions_, &Suggestions::stop);
    connect(hint_, &QPushButton::clicked, this, [this] {
        if (session_.plan().stems.empty())
            Q_EMIT startWanted();
        else
            suggestions_.spreadColours(false);
    });
    connect(stems_, &QMenu::aboutToShow, this, &OfferPanel::fillStems);
    connect(&session_, &Session::offerChanged, this, &OfferPanel::refresh);
    connect(&session_, &Session::changed, this, &OfferPanel::refresh);
    connect(&suggestions_, &Suggestions::progress, this, [this](const QString& text) {
        progress_ = text;
        refresh();
    });
    refresh();
}

QWidget* OfferPanel::makeDetails() {
    auto* details = new QWidget;
    figures_ = new QLabel(details);
    figures_->setObjectName(QStringLiteral("offerFigures"));
    figures_->setFont(look::font(look::Type::small));
    figures_->setWordWrap(true);
    picture_ = new BoardPicture(details);
    picture_->setObjectName(QStringLiteral("offerPicture"));
    picture_->setAccessibleName(tr("The board as it would be"));
    table_ = new QTableWidget(details);
    table_->setObjectName(QStringLiteral("offerStems"));
    table_->setAccessibleName(tr("The stems before and after"));
    table_->setFont(look::font(look::Type::small));
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setTabKeyNavigation(false);
    table_->setShowGrid(false);
    table_->setWordWrap(false);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(look::target);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table_->setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    connect(table_, &QTableWidget::currentCellChanged, this, [this](int row) {
        if (row >= 0)
            Q_EMIT stemChosen(table_->item(row, 0)->data(Qt::UserRole).toUInt());
    });
    auto* rows = new QVBoxLayout(details);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(look::unit);
    // The figures first: on a small screen the rest is scrolled to.
    rows->addWidget(figures_);
    rows->addWidget(picture_);
    rows->addWidget(table_);
    rows->addStretch();
    return details;
}

void OfferPanel::refresh() {
    const auto& offer = session_.offer();
    const bool looking = !progress_.isEmpty();
    const bool shown = !looking && offer;
    scroll_->setVisible(shown);
    for (QPushButton* button : {take_, drop_})
        button->setVisible(shown);
    const bool places = offer && offer->suggestion && offer->suggestion->aim == Aim::places;
    // Stems change places among themselves: one of them alone would stand on another.
    takeForStem_->setVisible(shown && offer->suggestion && !places);
    // The boards are alike; the pot shows the rest.
    compare_->setVisible(shown && !places);
    stop_->setVisible(looking);
    hint_->hide();
    if (looking)
        title_->setText(progress_);
    else if (offer)
        showOffer();
    setVisible(looking || offer || showHint());
    fitText();
}

void OfferPanel::showOffer() {
    const Offer& offer = *session_.offer();
    title_->setText(offer.title);
    figures_->setText(offer.figures);
    const BeforeAfter plans(session_.plan(), offer.edit);
    const bool picture = changesTiers(plans);
    picture_->setVisible(picture);
    if (picture) {
        picture_->show(plans.after, plans.figuresAfter, plans.before);
        picture_->setZoom(picture_->fittingZoom({scroll_->viewport()->width(), mostPicture}));
    }
    const QSignalBlocker quiet(table_);
    if (offer.suggestion && offer.suggestion->aim == Aim::places)
        fillPlaces(plans);
    else
        fillStemChanges(plans);
    table_->resizeColumnsToContents();
    table_->horizontalHeader()->setStretchLastSection(true);
    const int rows = std::min(mostRows, table_->rowCount());
    table_->setVisible(rows > 0);
    table_->setFixedHeight(table_->horizontalHeader()->sizeHint().height() + rows * look::target +
                           2 * table_->frameWidth() + 2);
}

void OfferPanel::fillTable(const QStringList& headings, const std::vector<StemLine>& lines) {
    table_->clear();
    table_->setColumnCount(static_cast<int>(headings.size()));
    table_->setHorizontalHeaderLabels(headings);
    table_->setRowCount(static_cast<int>(lines.size()));
    for (int row = 0; row < table_->rowCount(); ++row) {
        const StemLine& line = lines[static_cast<std::size_t>(row)];
        for (int column = 0; column < table_->columnCount(); ++column) {
            auto* item = new QTableWidgetItem(line.cells.value(column));
            item->setData(Qt::UserRole, line.stem.value);
            table_->setItem(row, column, item);
        }
    }
}

void OfferPanel::fillStemChanges(const BeforeAfter& plans) {
    bool heights = false;
    std::vector<StemChange> differing;
    for (StemChange& stem : stemChanges(plans))
        if (stem.differs) {
            heights |= stem.heightDiffers;
            differing.push_back(std::move(stem));
        }
    QStringList headings{tr("Stem")};
    if (heights)
        headings << tr("Height");
    headings << tr("Drift") << tr("Uneven");
    std::vector<StemLine> lines;
    for (const StemChange& stem : differing) {
        QStringList cells{stem.name};
        if (heights)
            cells << stem.height;
        lines.push_back({stem.stem, cells << stem.drift << stem.unevenness});
    }
    fillTable(headings, lines);
}

void OfferPanel::fillPlaces(const BeforeAfter& plans) {
    const Units& units = plans.before.units;
    const bool inch = units.length == LengthUnit::inch;
    const auto number = [&](double mm) {
        return QLocale().toString(inch ? mm / millimetresPerInch : mm, 'f', inch ? 1 : 0);
    };
    const auto said = [&](const PlaceMm& at) {
        return tr("%1, %2", "where a stem stands: right or left, back or front")
            .arg((at.x < 0 ? tr("left %1") : tr("right %1")).arg(number(std::abs(at.x))),
                 (at.y < 0 ? tr("front %1") : tr("back %1")).arg(number(std::abs(at.y))));
    };
    const std::vector<PlaceMm> from = standings(plans.before), to = standings(plans.after);
    std::vector<StemLine> lines;
    for (std::size_t i = 0; i < from.size() && i < to.size(); ++i)
        if (std::hypot(from[i].x - to[i].x, from[i].y - to[i].y) > 0.05)
            lines.push_back(
                {plans.before.stems[i].id, {text(plans.before.stems[i].name), said(from[i]), said(to[i])}});
    fillTable({tr("Stem"), inch ? tr("From, in") : tr("From, mm"), tr("To")}, lines);
}

bool OfferPanel::showHint() {
    const Plan& plan = session_.plan();
    const PotFigures& pot = session_.figures().pot;
    if (plan.stems.empty()) {
        if (pot.inTray == 0)
            return false;
        title_->setText(tr("%1 leaves lie in the tray, and there is no stem yet.").arg(countText(pot.inTray)));
        hint_->setText(tr("Start &me off…"));
        hint_->show();
        return true;
    }
    const int places = fillableSlots(plan);
    if (places < manyPlaces)
        return false;
    title_->setText(tr("%1 empty places could have leaves from the tray.").arg(countText(places)));
    hint_->setText(tr("Spread the tra&y over the stems"));
    hint_->show();
    return true;
}

void OfferPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitText();
}

void OfferPanel::fitText() {
    // Nothing of a suggestion's figures may be cut, however little room the findings leave.
    const QMargins around = layout()->contentsMargins();
    const int width = this->width() - around.left() - around.right();
    if (width > 0)
        title_->setMinimumHeight(std::max(0, title_->heightForWidth(width)));
}

void OfferPanel::fillStems() {
    stems_->clear();
    const auto& offer = session_.offer();
    if (!offer || !offer->suggestion)
        return;
    for (const Stem& stem : session_.plan().stems) {
        const Result<Batch> part = takenForStem(session_.plan(), *offer->suggestion, stem.id);
        if (!part || part.value().edits.empty())
            continue;
        stems_->addAction(text(stem.name), this, [this, edit = Edit(part.value())] { session_.make(edit); });
    }
    if (stems_->isEmpty())
        stems_->addAction(tr("It cannot be taken apart"))->setEnabled(false);
}

} // namespace stemwright

#include "app/compare/compare_dialog.h"

#include "app/compare/board_picture.h"
#include "app/fields/form_dialog.h"
#include "app/look.h"
#include "app/suggestion_text.h"
#include "app/suggestions.h"
#include "app/wording.h"
#include "core/suggest/plan_counts.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>

#include <algorithm>

namespace stemwright {

CompareDialog::CompareDialog(Session& session, Suggestions& suggestions, QWidget* parent)
    : QDialog(parent), session_(session), offers_(suggestions.found()) {
    setObjectName(QStringLiteral("compare"));
    setWindowTitle(tr("Side by side"));
    // What lies over the board now is compared too, wherever it came from.
    if (const auto& shown = session.offer())
        if (std::none_of(offers_.begin(), offers_.end(),
                         [&](const Offer& offer) { return offer.edit == shown->edit; }))
            offers_.push_back(*shown);
    const int last = static_cast<int>(offers_.size());
    // The two last ones, or today's board and the only one.
    halves_ = {makeHalf(QStringLiteral("left"), tr("Left board"), last > 1 ? last - 1 : 0),
               makeHalf(QStringLiteral("right"), tr("Right board"), last)};

    auto* hint = new QLabel(
        last == 0
            ? tr("Nothing has been suggested for this plan yet: the menu Suggest does.")
            : tr("Leaves that the other board has otherwise are framed; below each stem its height and drift."),
        this);
    hint->setObjectName(QStringLiteral("compareHint"));
    hint->setProperty("quiet", true);
    auto* close = new QPushButton(tr("&Close"), this);
    nameField(close, QStringLiteral("compareClose"), tr("Close"));
    close->setAutoDefault(false);
    connect(close, &QPushButton::clicked, this, &QDialog::reject);

    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(5 * look::unit, 4 * look::unit, 5 * look::unit, 4 * look::unit);
    grid->setHorizontalSpacing(5 * look::unit);
    grid->setVerticalSpacing(2 * look::unit);
    for (int i = 0; i < 2; ++i) {
        const Half& half = halves_[static_cast<std::size_t>(i)];
        grid->addWidget(half.which, 0, i);
        grid->addWidget(half.scroll, 1, i);
        grid->addWidget(half.figures, 2, i, Qt::AlignTop);
        grid->addWidget(half.take, 3, i, Qt::AlignLeft);
        grid->setColumnStretch(i, 1);
        connect(half.which, &QComboBox::currentIndexChanged, this, &CompareDialog::refresh);
        connect(half.take, &QPushButton::clicked, this,
                [this, i] { take(halves_[static_cast<std::size_t>(i)]); });
    }
    grid->setRowStretch(1, 1);
    grid->addWidget(hint, 4, 0);
    grid->addWidget(close, 4, 1, Qt::AlignRight);
    // One hand scrolls both.
    for (const auto& [from, to] : {std::pair(0u, 1u), std::pair(1u, 0u)}) {
        QScrollArea* other = halves_[to].scroll;
        connect(halves_[from].scroll->horizontalScrollBar(), &QScrollBar::valueChanged,
                other->horizontalScrollBar(), &QScrollBar::setValue);
        connect(halves_[from].scroll->verticalScrollBar(), &QScrollBar::valueChanged,
                other->verticalScrollBar(), &QScrollBar::setValue);
    }
    const QSize room = parent ? parent->window()->size() : QSize(1280, 800);
    resize(room.width() * 94 / 100, room.height() * 92 / 100);
    refresh();
}

CompareDialog::Half CompareDialog::makeHalf(const QString& name, const QString& accessible, int chosen) {
    Half half;
    half.which = new QComboBox(this);
    nameField(half.which, name + QStringLiteral("Which"), accessible);
    half.which->addItem(tr("The board as it is"));
    for (const Offer& offer : offers_)
        half.which->addItem(offer.title);
    half.which->setCurrentIndex(chosen);
    half.picture = new BoardPicture;
    half.picture->setObjectName(name + QStringLiteral("Picture"));
    half.scroll = new QScrollArea(this);
    half.scroll->setObjectName(name + QStringLiteral("Scroll"));
    half.scroll->setAccessibleName(accessible);
    half.scroll->setWidget(half.picture);
    half.scroll->setWidgetResizable(true);
    half.scroll->setFrameShape(QFrame::NoFrame);
    half.figures = new QLabel(this);
    half.figures->setObjectName(name + QStringLiteral("Figures"));
    half.figures->setWordWrap(true);
    half.take = new QPushButton(this);
    half.take->setAutoDefault(false);
    nameField(half.take, name + QStringLiteral("Take"), tr("Take the board of this side"));
    return half;
}

const Offer* CompareDialog::offerOf(const Half& half) const {
    const int index = half.which->currentIndex();
    return index < 1 ? nullptr : &offers_[static_cast<std::size_t>(index - 1)];
}

void CompareDialog::refresh() {
    std::array<Plan, 2> plans{session_.plan(), session_.plan()};
    for (std::size_t i = 0; i < 2; ++i)
        if (const Offer* offer = offerOf(halves_[i]))
            static_cast<void>(apply(plans[i], offer->edit).ok());
    for (std::size_t i = 0; i < 2; ++i) {
        const Half& half = halves_[i];
        const Figures all = figures(plans[i]);
        half.picture->show(plans[i], all, plans[1 - i]);
        const PotFigures& pot = all.pot;
        const Offer* offer = offerOf(half);
        QStringList lines{
            tr("Unevenness %1 · drift %2 · heights %3")
                .arg(shareText(pot.unevenness), driftText(pot.drift), heightsText(pot, plans[i].units)),
            tr("Unmatched pairs %1 · steps against the colour order %2 · in the tray %3")
                .arg(countText(unmatchedPairsOf(plans[i])), countText(inversionsOf(plans[i])),
                     countText(pot.inTray))};
        if (offer && offer->suggestion)
            lines << proofText(*offer->suggestion);
        half.figures->setText(lines.join(QLatin1Char('\n')));
        half.take->setText(offer ? tr("Take this one") : tr("Leave the board as it is"));
        half.take->setProperty("main", offer != nullptr);
        half.picture->setAccessibleDescription(half.figures->text());
    }
    fit();
}

void CompareDialog::fit() {
    // Both as large as the larger of them lets them be.
    double zoom = 10;
    for (const Half& half : halves_)
        zoom = std::min(zoom, half.picture->fittingZoom(half.scroll->maximumViewportSize()));
    for (const Half& half : halves_)
        half.picture->setZoom(zoom);
}

void CompareDialog::take(const Half& half) {
    if (const Offer* offer = offerOf(half))
        session_.make(offer->edit);
    else
        session_.dropOffer();
    accept();
}

void CompareDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    fit();
}

void CompareDialog::showEvent(QShowEvent* event) {
    QDialog::showEvent(event);
    fit();
}

} // namespace stemwright

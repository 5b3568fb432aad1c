#include "app/panels/offer_panel.h"

#include "app/look.h"
#include "app/session.h"
#include "app/suggestions.h"
#include "app/wording.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

OfferPanel::OfferPanel(Session& session, Suggestions& suggestions, QWidget* parent)
    : QWidget(parent),
      session_(session),
      suggestions_(suggestions),
      title_(new QLabel(this)),
      figures_(new QLabel(this)),
      take_(new QPushButton(tr("&Take it"), this)),
      takeForStem_(new QPushButton(tr("For one stem"), this)),
      drop_(new QPushButton(tr("&Drop it"), this)),
      stop_(new QPushButton(tr("Stop, and show the best so far"), this)),
      stems_(new QMenu(this)) {
    setObjectName(QStringLiteral("offer"));
    setAttribute(Qt::WA_StyledBackground);
    setAccessibleName(tr("Suggestion"));
    title_->setObjectName(QStringLiteral("offerTitle"));
    title_->setFont(look::font(look::Type::strong));
    title_->setWordWrap(true);
    figures_->setObjectName(QStringLiteral("offerFigures"));
    figures_->setFont(look::font(look::Type::small));
    figures_->setWordWrap(true);
    take_->setObjectName(QStringLiteral("takeOffer"));
    take_->setProperty("main", true);
    takeForStem_->setObjectName(QStringLiteral("takeForStem"));
    takeForStem_->setMenu(stems_);
    drop_->setObjectName(QStringLiteral("dropOffer"));
    stop_->setObjectName(QStringLiteral("stopLooking"));

    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(look::unit);
    for (QPushButton* button : {take_, takeForStem_, drop_})
        buttons->addWidget(button);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(10, 8, 10, 8);
    layout->setSpacing(look::unit);
    layout->addWidget(title_);
    layout->addWidget(figures_);
    layout->addLayout(buttons);
    layout->addWidget(stop_);

    connect(take_, &QPushButton::clicked, &session_, &Session::takeOffer);
    connect(drop_, &QPushButton::clicked, &session_, &Session::dropOffer);
    connect(stop_, &QPushButton::clicked, &suggestions_, &Suggestions::stop);
    connect(stems_, &QMenu::aboutToShow, this, &OfferPanel::fillStems);
    connect(&session_, &Session::offerChanged, this, &OfferPanel::refresh);
    connect(&suggestions_, &Suggestions::progress, this, [this](const QString& text) {
        progress_ = text;
        refresh();
    });
    refresh();
}

void OfferPanel::refresh() {
    const auto& offer = session_.offer();
    const bool looking = !progress_.isEmpty();
    setVisible(offer || looking);
    if (!isVisibleTo(parentWidget()))
        return;
    title_->setText(looking ? progress_ : offer->title);
    figures_->setVisible(!looking);
    if (!looking)
        figures_->setText(offer->figures);
    for (QPushButton* button : {take_, drop_})
        button->setVisible(!looking);
    takeForStem_->setVisible(!looking && offer->suggestion);
    stop_->setVisible(looking);
    fitText();
}

void OfferPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitText();
}

void OfferPanel::fitText() {
    // Nothing of a suggestion's figures may be cut, however little room the findings leave.
    const QMargins around = layout()->contentsMargins();
    const int width = this->width() - around.left() - around.right();
    for (QLabel* label : {title_, figures_})
        if (width > 0)
            label->setMinimumHeight(std::max(0, label->heightForWidth(width)));
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

#include "app/board_page.h"

#include "app/board/board_view.h"
#include "app/fields/fitted_label.h"
#include "app/look.h"
#include "app/panels/findings_panel.h"
#include "app/panels/offer_panel.h"
#include "app/panels/skyline.h"
#include "app/panels/supplies_panel.h"
#include "app/session.h"
#include "app/suggestions.h"
#include "app/wording.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>

namespace stemwright {

namespace {
constexpr int sideWidth = 300;
}

BoardPage::BoardPage(Session& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      view_(new BoardView(session, this)),
      suggestions_(new Suggestions(session, this)),
      side_(new QWidget(this)) {
    setObjectName(QStringLiteral("boardPage"));
    side_->setObjectName(QStringLiteral("side"));
    side_->setAttribute(Qt::WA_StyledBackground);
    side_->setFixedWidth(sideWidth);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(view_, 1);
    layout->addWidget(side_);

    setFocusProxy(view_);
    view_->installEventFilter(this);
    connect(suggestions_, &Suggestions::said, this, &BoardPage::said);
    connect(suggestions_, &Suggestions::progress, this, &BoardPage::fillSide);
    connect(&session_, &Session::offerChanged, this, &BoardPage::fillSide);
}

bool BoardPage::eventFilter(QObject* watched, QEvent* event) {
    if (watched == view_ && event->type() == QEvent::Paint) {
        view_->removeEventFilter(this);
        QTimer::singleShot(0, this, &BoardPage::fillSide);
    }
    return QWidget::eventFilter(watched, event);
}

void BoardPage::fillSide() {
    if (side_->layout())
        return;
    auto* heading = new QLabel(tr("Skyline"), side_);
    heading->setFont(look::font(look::Type::heading));
    auto* range = new FittedLabel(side_);
    range->setObjectName(QStringLiteral("skylineRange"));
    range->setProperty("quiet", true);
    range->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    auto* skyline = new Skyline(session_, side_);
    auto* findings = new FindingsPanel(session_, side_);
    auto* offer = new OfferPanel(session_, *suggestions_, side_);
    auto* supplies = new SuppliesPanel(session_, side_);
    auto* suppliesScroll = new QScrollArea(side_);
    suppliesScroll->setObjectName(QStringLiteral("suppliesScroll"));
    suppliesScroll->setWidget(supplies);
    suppliesScroll->setWidgetResizable(true);
    suppliesScroll->setFrameShape(QFrame::NoFrame);
    suppliesScroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    suppliesScroll->setMinimumHeight(120);

    auto* top = new QHBoxLayout;
    top->addWidget(heading);
    top->addWidget(range, 1);
    auto* column = new QVBoxLayout(side_);
    column->setContentsMargins(18, 14, 14, 10);
    column->setSpacing(10);
    column->addLayout(top);
    column->addWidget(skyline);
    column->addWidget(findings, 3);
    column->addWidget(offer);
    column->addWidget(suppliesScroll, 2);

    const auto refresh = [this, range] {
        const PotFigures& pot = session_.figures().pot;
        const Units& units = session_.plan().units;
        const QString heights = tr("%1 to %2").arg(sizeText(pot.shortest, units), sizeText(pot.tallest, units));
        range->setWordings(
            pot.stems < 2
                ? QStringList()
                : QStringList{tr("%1 · variety %2 %")
                                  .arg(heights, QLocale().toString(pot.heightVariation * 100, 'f', 0)),
                              heights});
    };
    connect(&session_, &Session::changed, this, refresh);
    refresh();
    connect(offer, &OfferPanel::compareWanted, this, &BoardPage::compareWanted);
    connect(offer, &OfferPanel::startWanted, this, &BoardPage::startWanted);
    connect(offer, &OfferPanel::stemChosen, this,
            [this](unsigned stem) { view_->showPlace(StemId{stem}, -1, -1); });
    // A suggestion needs the room; what is to be bought can wait until it is taken or dropped.
    const auto makeRoom = [this, suppliesScroll] { suppliesScroll->setVisible(!session_.offer()); };
    connect(&session_, &Session::offerChanged, suppliesScroll, makeRoom);
    makeRoom();
    connect(skyline, &Skyline::stemChosen, this,
            [this](unsigned stem) { view_->showPlace(StemId{stem}, -1, -1); });
    connect(findings, &FindingsPanel::placeChosen, this,
            [this](unsigned stem, int tier, int slot) { view_->showPlace(StemId{stem}, tier, slot); });
}

} // namespace stemwright

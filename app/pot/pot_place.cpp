#include "app/pot/pot_place.h"

#include "app/ask.h"
#include "app/file_store.h"
#include "app/look.h"
#include "app/messages.h"
#include "app/panels/offer_panel.h"
#include "app/pot/from_above.h"
#include "app/pot/plant_view.h"
#include "app/pot/pot_commands.h"
#include "app/pot/sight_panel.h"
#include "app/session.h"
#include "app/suggestions.h"
#include "app/wording.h"

#include "core/figures/pot_findings.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QSlider>
#include <QVBoxLayout>

#include <algorithm>
#include <numeric>

namespace stemwright {

namespace {

QLabel* heading(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(look::font(look::Type::heading));
    return label;
}

QSlider* slider(const char* name, const QString& spoken, int most, QWidget* parent) {
    auto* out = new QSlider(Qt::Horizontal, parent);
    out->setObjectName(QLatin1String(name));
    out->setAccessibleName(spoken);
    out->setToolTip(spoken);
    out->setRange(0, most);
    out->setPageStep(15);
    out->setMinimumHeight(look::target);
    return out;
}

} // namespace

PotPlace::PotPlace(Session& session, Suggestions& suggestions, QWidget* parent)
    : QWidget(parent),
      session_(session),
      suggestions_(suggestions),
      above_(new FromAbove(session, this)),
      view_(new PlantView(session, this)),
      sight_(new SightPanel(session, this)) {
    setObjectName(QStringLiteral("potPlace"));
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(left());
    layout->addWidget(right(), 1);
    // Whoever comes here by a key turns the plant by keys; Tab goes on to the rest.
    setFocusProxy(view_);

    connect(above_, &FromAbove::chosenChanged, this, [this](unsigned stem) { view_->choose(StemId{stem}); });
    connect(above_, &FromAbove::previewed, this, [this](const std::optional<std::vector<PlaceMm>>& at) {
        view_->preview(at);
        // Beside the pot from above, where it hides none of the neighbours that it speaks of.
        showHint(at ? above_->hint().join(QLatin1Char('\n')) : QString());
    });
    connect(view_, &PlantView::placeChosen, this, [this](unsigned stem, int tier, int slot) {
        above_->choose(StemId{stem});
        Q_EMIT placeChosen(stem, tier, slot);
    });
    connect(view_, &PlantView::said, this, &PotPlace::said);
    connect(view_, &PlantView::rested, this, &PotPlace::refreshSight);
    connect(view_, &PlantView::hinted, this, &PotPlace::showHint);
    connect(view_, &PlantView::turned, this, [this](int deg) {
        turn_->setValue(deg);
        above_->setTurn(deg);
    });
    connect(view_, &PlantView::tilted, tilt_, &QSlider::setValue);
    connect(turn_, &QSlider::valueChanged, view_, &PlantView::setTurn);
    connect(tilt_, &QSlider::valueChanged, view_, &PlantView::setTilt);
    tilt_->setValue(view_->tilt());
    connect(&session_, &Session::changed, this, [this] {
        stale_ = true;
        if (isVisible())
            refresh();
    });
    connect(&session_, &Session::offerChanged, this, &PotPlace::showOffer);
    refresh();
}

QWidget* PotPlace::left() {
    auto* scroll = new QScrollArea(this);
    scroll->setObjectName(QStringLiteral("potSide"));
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFixedWidth(346);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* side = new QWidget(scroll);
    side->setAutoFillBackground(true);
    QPalette palette = side->palette();
    palette.setColor(QPalette::Window, look::side);
    side->setPalette(palette);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(16, 14, 14, 14);
    layout->setSpacing(8);
    layout->addWidget(heading(tr("From above"), side));
    above_->setMaximumHeight(324); // as broad as there is room for
    layout->addWidget(above_, 5);

    auto* row = new QHBoxLayout;
    viewedFrom_ = new QComboBox(side);
    viewedFrom_->setObjectName(QStringLiteral("viewedFrom"));
    viewedFrom_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    viewedFrom_->setMinimumContentsLength(14);
    viewedFrom_->setAccessibleName(tr("Looked at"));
    viewedFrom_->addItems({tr("seen from all round"), tr("seen from the front")});
    connect(viewedFrom_, &QComboBox::activated, this, [this](int index) {
        Pot pot = session_.plan().pot;
        pot.viewedFrom = static_cast<ViewedFrom>(index);
        session_.make(Set<Pot>{pot});
    });
    place_ = new QPushButton(tr("Place in the pot"), side);
    place_->setObjectName(QStringLiteral("placeStems"));
    place_->setToolTip(
        tr("Tall stems to the middle or the back, neighbours unlike in height and colour; again for another"));
    connect(place_, &QPushButton::clicked, &suggestions_, &Suggestions::placeInPot);
    row->addWidget(viewedFrom_, 1);
    row->addWidget(place_);
    layout->addLayout(row);

    auto* offer = new OfferPanel(session_, suggestions_, side);
    connect(offer, &OfferPanel::compareWanted, this, &PotPlace::compareWanted);
    connect(offer, &OfferPanel::startWanted, this, &PotPlace::startWanted);
    connect(offer, &OfferPanel::stemChosen, this, [this](unsigned stem) { above_->choose(StemId{stem}); });
    layout->addWidget(offer);
    layout->addWidget(sight_);
    layout->addWidget(heading(tr("In the pot"), side));
    calm_ = new QLabel(tr("Nothing collides."), side);
    calm_->setProperty("quiet", true);
    layout->addWidget(calm_);
    findings_ = new QListWidget(side);
    findings_->setObjectName(QStringLiteral("potFindings"));
    findings_->setAccessibleName(tr("Findings in the pot"));
    findings_->setWordWrap(true);
    findings_->setMinimumHeight(80);
    findings_->setFrameShape(QFrame::NoFrame);
    findings_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    const auto go = [this](QListWidgetItem* item) {
        const auto at = static_cast<std::size_t>(findings_->row(item));
        if (at < found_.size() && found_[at].stem) {
            above_->choose(found_[at].stem);
            Q_EMIT said(words(session_.plan(), found_[at]).title);
        }
    };
    connect(findings_, &QListWidget::itemActivated, this, go);
    connect(findings_, &QListWidget::itemClicked, this, go);
    layout->addWidget(findings_, 2);
    layout->addStretch();
    scroll->setWidget(side);
    return scroll;
}

QWidget* PotPlace::right() {
    auto* side = new QWidget(this);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(view_, 1);

    auto* bar = new QWidget(side);
    bar->setObjectName(QStringLiteral("potBar"));
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(14, 6, 14, 6);
    row->setSpacing(8);
    row->addWidget(new QLabel(tr("Turn"), bar));
    turn_ = slider("potTurn", tr("Turn the plant, in degrees"), 359, bar);
    row->addWidget(turn_, 3);
    row->addWidget(new QLabel(tr("Tilt"), bar));
    tilt_ = slider("potTilt", tr("Look from level, 0, to straight above, 90 degrees"), 90, bar);
    row->addWidget(tilt_, 1);
    const auto way = [&](const char* name, const QString& said) {
        auto* made = new QPushButton(said, bar);
        made->setObjectName(QLatin1String(name));
        made->setCheckable(true);
        made->setProperty("small", true);
        made->setMinimumHeight(look::target);
        row->addWidget(made);
        return made;
    };
    auto* pose = way("potPose", tr("Pose"));
    pose->setToolTip(
        tr("Drag a stem's tip to lean it, with Shift to bend it; Ctrl and the arrows lean the chosen stem"));
    connect(pose, &QPushButton::toggled, view_, &PlantView::setPosing);
    auto* ground = way("potGround", tr("Dark"));
    ground->setToolTip(tr("On a dark ground"));
    connect(ground, &QPushButton::toggled, this,
            [this](bool dark) { view_->setGround(dark ? Ground::dark : Ground::light); });
    auto* eyes = new QComboBox(bar);
    eyes->setObjectName(QStringLiteral("potEyes"));
    eyes->setAccessibleName(tr("Seen by"));
    eyes->addItems({tr("all colours"), tr("red-blind"), tr("green-blind"), tr("blue-blind"), tr("grey")});
    eyes->setToolTip(tr("How it looks to a colour-blind eye, and in grey"));
    connect(eyes, &QComboBox::activated, this,
            [this](int index) { view_->setEyes(static_cast<ColourVision>(index)); });
    row->addWidget(eyes);
    auto* save = new QPushButton(tr("Save picture…"), bar);
    save->setObjectName(QStringLiteral("potSave"));
    connect(save, &QPushButton::clicked, this, &PotPlace::savePicture);
    row->addWidget(save);
    layout->addWidget(bar);
    hint_ = new QLabel(view_);
    hint_->setObjectName(QStringLiteral("potHint"));
    hint_->setTextFormat(Qt::PlainText);
    hint_->setProperty("plate", true);
    hint_->setAttribute(Qt::WA_TransparentForMouseEvents);
    hint_->move(14, 12);
    hint_->hide();
    return side;
}

void PotPlace::showHint(const QString& said) {
    hint_->setText(said);
    hint_->adjustSize();
    hint_->setVisible(!said.isEmpty());
}

bool PotPlace::letGo() {
    const bool held = above_->held() || view_->held();
    above_->letGo();
    view_->letGo();
    return held;
}

void PotPlace::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    if (stale_)
        refresh();
    else
        showOffer();
}

void PotPlace::refresh() {
    stale_ = false;
    viewedFrom_->setCurrentIndex(static_cast<int>(session_.plan().pot.viewedFrom));
    place_->setEnabled(session_.plan().stems.size() > 1);
    above_->reload();
    view_->reload();
    refreshFindings();
    showOffer();
    refreshSight();
}

void PotPlace::refreshFindings() {
    const Plan& plan = session_.plan();
    found_ = potFindings(plan, view_->scene().body);
    // Whether it falls hangs on places and poses, which are given here; it comes first.
    for (const Finding& finding : session_.findings())
        if (finding.code == FindingCode::plantTips)
            found_.insert(found_.begin(), finding);
    findings_->clear();
    for (const Finding& finding : found_) {
        const FindingWords said = words(plan, finding);
        auto* item = new QListWidgetItem(said.title + QLatin1Char('\n') + said.detail, findings_);
        item->setToolTip(said.detail);
    }
    calm_->setVisible(found_.empty());
    findings_->setVisible(!found_.empty());
}

void PotPlace::refreshSight() {
    const Plan& plan = view_->shownPlan();
    const PlantScene& scene = view_->scene();
    if (scene.body.stems.size() != plan.stems.size())
        return;
    std::vector<std::size_t> order(plan.stems.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const View view = view_->view();
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return view.point(scene.body.stems[a].foot).x < view.point(scene.body.stems[b].foot).x;
    });
    sight_->show(sightOf(plan, scene.body, view), std::move(order));
}

/// A suggestion is shown as the plant that it would make.
void PotPlace::showOffer() {
    if (!isVisible())
        return; // showEvent() asks again
    above_->update();
    if (const auto& offer = session_.offer()) {
        Plan plan = session_.plan();
        if (apply(plan, offer->edit))
            return view_->showOffered(std::move(plan));
    }
    view_->showOffered(std::nullopt);
}

void PotPlace::savePicture() {
    const QString title = text(session_.plan().about.title);
    const QString path = ask::fileToSave(this, title.isEmpty() ? tr("plant") : title,
                                         tr("Pictures (*.png *.svg)"), QStringLiteral(".png"));
    if (path.isEmpty())
        return;
    const bool svg = path.endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
    const PlantScene scene(session_.plan(), view_->eyes());
    const QSize size(1600, 1600);
    QString why;
    const bool written = writeBytes(svg ? plantSvg(scene, view_->view(), size, view_->ground())
                                        : plantPng(scene, view_->view(), size, view_->ground()),
                                    path, &why);
    Q_EMIT said(written ? tr("Picture saved as %1").arg(path) : why);
}

} // namespace stemwright

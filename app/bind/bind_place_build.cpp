#include "app/bind/bind_place.h"

// What stands where in the place; what it shows and does is in bind_place.cpp.

#include "app/bind/bench_label.h"
#include "app/bind/bind_picture.h"
#include "app/bind/stem_end.h"
#include "app/look.h"
#include "app/settings.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int sideWidth = 430; ///< px

} // namespace

void BindPlace::build() {
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(5 * look::unit, 3 * look::unit, 5 * look::unit, 4 * look::unit);
    rows->setSpacing(3 * look::unit);
    rows->addWidget(buildTop());
    auto* middle = new QHBoxLayout;
    middle->setSpacing(5 * look::unit);
    picture_ = new BindPicture(session_, this);
    middle->addWidget(picture_, 1);
    middle->addWidget(buildSide());
    rows->addLayout(middle, 1);
    rows->addWidget(buildButtons());
    connect(asHeld_, &QCheckBox::toggled, this, [this](bool on) {
        settings::setBindAsHeld(on);
        picture_->setAsHeld(on);
        refresh();
    });
    asHeld_->setChecked(settings::bindAsHeld());
    timed_->setChecked(settings::bindTimed());
    connect(timed_, &QCheckBox::toggled, this, [this](bool on) {
        settings::setBindTimed(on);
        shownAt_ = clock_();
        showTime();
    });
}

QWidget* BindPlace::buildTop() {
    auto* top = new QWidget(this);
    auto* row = new QHBoxLayout(top);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(4 * look::unit);
    stems_ = new QComboBox(top);
    stems_->setObjectName(QStringLiteral("bindStems"));
    stems_->setAccessibleName(tr("Stem to bind"));
    stems_->setFont(benchFont(1.5, true));
    stems_->setMinimumHeight(44);
    stems_->setMinimumContentsLength(16);
    stems_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    connect(stems_, &QComboBox::activated, this, [this](int index) {
        setStem(StemId{stems_->itemData(index).toUInt()});
        setFocus();
    });
    row->addWidget(stems_, 1);
    where_ = benchLabel(top, "bindWhere", 1.5);
    where_->setWordWrap(false);
    row->addWidget(where_);
    progress_ = new QProgressBar(top);
    progress_->setObjectName(QStringLiteral("bindProgress"));
    progress_->setAccessibleName(tr("Steps done"));
    progress_->setTextVisible(false);
    progress_->setFixedHeight(12);
    row->addWidget(progress_, 1);
    const auto box = [&](const QString& text, const char* name, const QString& tip) {
        auto* made = new QCheckBox(text, top);
        made->setObjectName(QLatin1String(name));
        made->setToolTip(tip);
        made->setFont(benchFont(1.2));
        made->setMinimumHeight(44);
        // By Tab only, so that the space bar stays the place's after a click.
        made->setFocusPolicy(Qt::TabFocus);
        row->addWidget(made);
        return made;
    };
    asHeld_ = box(tr("As I ho&ld it"), "bindAsHeld",
                  tr("Turns the picture with the stem: the tier to bind now lies to your left and right"));
    timed_ = box(tr("T&ime each tier"), "bindTimed",
                 tr("Keeps how long each tier took, for the hours that are left"));
    wholeScreen_ = new QPushButton(tr("&Whole screen"), top);
    wholeScreen_->setObjectName(QStringLiteral("bindWholeScreen"));
    wholeScreen_->setToolTip(tr("Escape leaves it again"));
    wholeScreen_->setCheckable(true);
    wholeScreen_->setProperty("tall", true);
    wholeScreen_->setFont(benchFont(1.2));
    wholeScreen_->setFocusPolicy(Qt::TabFocus);
    connect(wholeScreen_, &QPushButton::toggled, this, [this](bool on) {
        window()->setWindowState(window()->windowState().setFlag(Qt::WindowFullScreen, on));
        showWholeScreen();
    });
    row->addWidget(wholeScreen_);
    return top;
}

QWidget* BindPlace::buildSide() {
    auto* scroll = new QScrollArea(this);
    scroll->setObjectName(QStringLiteral("bindSide"));
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setFixedWidth(sideWidth);
    auto* side = new QWidget(scroll);
    scroll->setWidget(side);
    auto* rows = new QVBoxLayout(side);
    rows->setContentsMargins(0, 0, 2 * look::unit, 0);
    rows->setSpacing(3 * look::unit);
    turn_ = benchLabel(side, "bindTurn", 1.5);
    title_ = benchLabel(side, "bindTitle", 2.6, true);
    doing_ = benchLabel(side, "bindDoing", 1.75);
    leaves_ = new QWidget(side);
    leaves_->setObjectName(QStringLiteral("bindLeaves"));
    leafRows_ = new QVBoxLayout(leaves_);
    leafRows_->setContentsMargins(0, 0, 0, 0);
    leafRows_->setSpacing(2 * look::unit);
    wrap_ = benchLabel(side, "bindWrap", 1.9, true);
    used_ = benchLabel(side, "bindUsed", 1.35);
    usedBar_ = new QProgressBar(side);
    usedBar_->setObjectName(QStringLiteral("bindUsedBar"));
    usedBar_->setAccessibleName(tr("Used of what was cut"));
    usedBar_->setTextVisible(false);
    usedBar_->setFixedHeight(12);
    caution_ = benchLabel(side, "bindCaution", 1.15, true);
    caution_->setProperty("refusal", true);
    next_ = benchLabel(side, "bindNext", 1.3);
    next_->setProperty("quiet", true);
    end_ = new StemEnd(session_, side);
    connect(end_, &StemEnd::done, this, [this] { setFocus(); });
    for (QWidget* part : std::initializer_list<QWidget*>{turn_, title_, leaves_, doing_, wrap_, used_, usedBar_,
                                                         end_, caution_, next_})
        rows->addWidget(part);
    rows->addStretch();
    return scroll;
}

QWidget* BindPlace::buildButtons() {
    auto* bottom = new QWidget(this);
    auto* row = new QHBoxLayout(bottom);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(4 * look::unit);
    const auto button = [&](const char* name) {
        auto* made = new QPushButton(bottom);
        made->setObjectName(QLatin1String(name));
        made->setFont(benchFont(1.7, true));
        made->setProperty("large", true);
        made->setFocusPolicy(Qt::TabFocus);
        return made;
    };
    back_ = button("bindBack");
    back_->setText(tr("Back"));
    back_->setToolTip(tr("Backspace or Page Up"));
    back_->setMinimumWidth(220);
    done_ = button("bindDone");
    done_->setProperty("main", true);
    done_->setToolTip(tr("Space or Page Down"));
    done_->setMinimumWidth(sideWidth);
    connect(back_, &QPushButton::clicked, this, &BindPlace::goBack);
    connect(done_, &QPushButton::clicked, this, &BindPlace::goOn);
    row->addWidget(back_);
    auto* said = new QVBoxLayout;
    said->setSpacing(0);
    time_ = benchLabel(bottom, "bindTime", 1.2);
    kept_ = benchLabel(bottom, "bindKept", 1.2);
    kept_->setProperty("quiet", true);
    said->addStretch();
    said->addWidget(time_);
    said->addWidget(kept_);
    said->addStretch();
    row->addLayout(said, 1);
    row->addWidget(done_);
    return bottom;
}

} // namespace stemwright

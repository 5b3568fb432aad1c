#include "app/dialogs/new_plan_dialog.h"

#include "app/dialogs/colour_choice.h"
#include "app/leaves/leaf_pictures.h"
#include "app/look.h"
#include "app/messages.h"
#include "app/wording.h"
#include "core/document/leaf_presets.h"

#include <QComboBox>
#include <QDate>
#include <QFormLayout>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QRadioButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

namespace {

QString presetName(LeafPreset preset) {
    switch (preset) {
    case LeafPreset::tiny:
        return NewPlanDialog::tr("Tiny round");
    case LeafPreset::small:
        return NewPlanDialog::tr("Small round");
    case LeafPreset::broad:
        return NewPlanDialog::tr("Broad round");
    case LeafPreset::longPointed:
        return NewPlanDialog::tr("Long pointed");
    case LeafPreset::large:
        return NewPlanDialog::tr("Large pointed");
    case LeafPreset::blade:
        return NewPlanDialog::tr("Narrow blade");
    }
    return {};
}

QLabel* heading(const QString& text, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(look::font(look::Type::heading));
    return label;
}

} // namespace

NewPlanDialog::NewPlanDialog(const Units& units, QWidget* parent)
    : FormDialog(QStringLiteral("newPlanDialog"), tr("New plan"), tr("Begin"), parent),
      units_(units),
      colours_(new ColourChoice(this)),
      made_(nullptr),
      sum_(new QLabel(this)),
      pictures_(new QLabel(this)) {
    QFormLayout* rows = addForm();
    title_ = add(rows, new NameField(this), QStringLiteral("newTitle"), tr("Title"));
    title_->setText(tr("New plant"));
    title_->selectAll();

    const auto spin = [this](int most, int value) {
        auto* box = new QSpinBox(this);
        box->setRange(1, most);
        box->setValue(value);
        return box;
    };
    const NewPlan usual;
    stems_ = spin(new_plan_limits::stems, usual.stems);
    tiers_ = spin(new_plan_limits::tiers, usual.tiers);
    nameField(stems_, QStringLiteral("newStems"), tr("Stems"));
    nameField(tiers_, QStringLiteral("newTiers"), tr("Tiers on a stem"));
    tiers_->setToolTip(
        tr("On a middling stem: the others get some more or fewer, so that their heights differ"));
    QList<QPair<QString, int>> arrangements;
    for (const Arrangement each : {Arrangement::decussate, Arrangement::onePlane, Arrangement::alternate,
                                   Arrangement::whorled, Arrangement::spiral})
        arrangements += {arrangementText(each), static_cast<int>(each)};
    arrangement_ = choiceOf(arrangements, this);
    nameField(arrangement_, QStringLiteral("newArrangement"), tr("Leaf arrangement"));
    auto* counts = new QHBoxLayout;
    counts->setSpacing(2 * look::unit);
    counts->addWidget(stems_);
    counts->addWidget(new QLabel(tr("with about"), this));
    counts->addWidget(tiers_);
    counts->addWidget(new QLabel(tr("tiers, leaves"), this));
    counts->addWidget(arrangement_, 1);
    rows->addRow(tr("Stems"), counts);

    body()->addWidget(heading(tr("Kinds of leaf"), this));
    body()->addWidget(buildKinds());
    body()->addWidget(heading(tr("Colours"), this));
    body()->addWidget(colours_, 1);
    watch(tr("Colours"), colours_->findChild<QWidget*>(QStringLiteral("palette0")),
          [this] { return colours_->refusal(); });

    auto* toMake = new QRadioButton(tr("still to make"), this);
    made_ = new QRadioButton(tr("made already"), this);
    nameField(toMake, QStringLiteral("newToMake"), tr("The leaves are still to make"));
    nameField(made_, QStringLiteral("newMade"), tr("The leaves are made already"));
    toMake->setChecked(true);
    auto* state = new QHBoxLayout;
    state->addWidget(new QLabel(tr("The leaves are"), this));
    state->addWidget(toMake);
    state->addWidget(made_);
    state->addStretch(1);
    body()->addLayout(state);

    pictures_->setObjectName(QStringLiteral("newPictures"));
    pictures_->setMinimumHeight(40);
    sum_->setObjectName(QStringLiteral("newSum"));
    sum_->setProperty("quiet", true);
    body()->addWidget(pictures_);
    body()->addWidget(sum_);
    body()->addWidget(pictures_);

    for (QSpinBox* box : {stems_, tiers_})
        connect(box, &QSpinBox::valueChanged, this, &NewPlanDialog::follow);
    connect(arrangement_, &QComboBox::currentIndexChanged, this, &NewPlanDialog::follow);
    connect(colours_, &ColourChoice::changed, this, &NewPlanDialog::follow);
    title_->setFocus();
    follow();
    setMinimumWidth(780);
}

QWidget* NewPlanDialog::buildKinds() {
    auto* box = new QWidget(this);
    auto* grid = new QGridLayout(box);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(2 * look::unit);
    grid->setVerticalSpacing(look::unit);
    grid->setColumnStretch(0, 2);
    grid->setColumnStretch(1, 2);
    grid->setColumnStretch(2, 2);
    LeafPictures pictures;
    for (int row = 0; row < kindRows; ++row) {
        KindRow& kind = kinds_[static_cast<std::size_t>(row)];
        kind.preset = new QComboBox(box);
        kind.preset->setIconSize({44, 22});
        if (row > 0)
            kind.preset->addItem(tr("no further kind"), -1);
        for (const LeafPreset preset : leafPresets) {
            const KindForm form = presetForm(preset);
            const LeafLook leaf{
                inMillimetres(form.length), inMillimetres(form.width), form.beads, form.tipEnd, form.baseEnd,
                {{look::stem, 1}}};
            kind.preset->addItem(
                QIcon(pictures.picture(leaf, {44, 22})),
                tr("%1, %2 × %3", "a sort of leaf, its length and width")
                    .arg(presetName(preset), sizeText(form.length, units_), sizeText(form.width, units_)),
                static_cast<int>(preset));
        }
        kind.name = new NameField(box);
        kind.leaves = new QSpinBox(box);
        kind.leaves->setRange(-1, new_plan_limits::leaves);
        kind.leaves->setSpecialValueText(tr("as many as the stems need"));
        kind.leaves->setSuffix(tr(" leaves"));
        kind.leaves->setValue(-1);
        nameField(kind.preset, QStringLiteral("newKind%1").arg(row), tr("Kind %1").arg(row + 1));
        nameField(kind.name, QStringLiteral("newKindName%1").arg(row), tr("Name of kind %1").arg(row + 1));
        nameField(kind.leaves, QStringLiteral("newKindLeaves%1").arg(row),
                  tr("Leaves of kind %1").arg(row + 1));
        grid->addWidget(kind.preset, row, 0);
        grid->addWidget(kind.name, row, 1);
        grid->addWidget(kind.leaves, row, 2);
        watch(tr("Name of kind %1").arg(row + 1), kind.name, [field = kind.name] { return field->refusal(); });
        connect(kind.preset, &QComboBox::currentIndexChanged, this, [this, row] { presetChosen(row); });
        connect(kind.leaves, &QSpinBox::valueChanged, this, &NewPlanDialog::follow);
    }
    choose(kinds_[0].preset, static_cast<int>(LeafPreset::small));
    choose(kinds_[1].preset, static_cast<int>(LeafPreset::broad));
    for (int row = 0; row < kindRows; ++row)
        presetChosen(row);
    return box;
}

void NewPlanDialog::presetChosen(int row) {
    KindRow& kind = kinds_[static_cast<std::size_t>(row)];
    const int preset = kind.preset->currentData().toInt();
    // A name that the maker gave stays; one that came with another sort of leaf goes with it.
    if (!kind.name->isModified())
        kind.name->setText(preset < 0 ? QString() : presetName(static_cast<LeafPreset>(preset)));
    kind.name->setEnabled(preset >= 0);
    kind.leaves->setEnabled(preset >= 0);
    follow();
}

NewPlan NewPlanDialog::wanted() const {
    NewPlan wanted;
    wanted.title = title_->text().trimmed().toStdString();
    wanted.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
    wanted.units = units_;
    wanted.stems = stems_->value();
    wanted.tiers = tiers_->value();
    wanted.arrangement = static_cast<Arrangement>(arrangement_->currentData().toInt());
    for (const KindRow& row : kinds_) {
        const int preset = row.preset->currentData().toInt();
        if (preset < 0)
            continue;
        NewPlan::NewKind kind{presetForm(static_cast<LeafPreset>(preset)), std::nullopt};
        kind.form.name = row.name->text().trimmed().toStdString();
        if (row.leaves->value() >= 0)
            kind.leaves = row.leaves->value();
        wanted.kinds.push_back(std::move(kind));
    }
    wanted.colours = colours_->colours();
    wanted.made = made_ && made_->isChecked();
    wanted.words.stem = tr("Stem %1").toStdString();
    wanted.words.mix = tr("%1 on %2", "a mix: its outer colour on its inner one").toStdString();
    return wanted;
}

void NewPlanDialog::follow() {
    if (!made_)
        return;
    const Result<Plan> trial = planFrom(wanted());
    if (!trial) {
        sum_->setText({});
        pictures_->setPixmap({});
        return;
    }
    const Plan& plan = trial.value();
    qint64 places = 0, leaves = 0;
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            places += static_cast<qint64>(tier.slots.size());
    for (const Kind& kind : plan.kinds)
        for (const StockLine& line : kind.stock)
            leaves += line.total();
    sum_->setText(tr("%1 stems with %2 places for leaves, %3 leaves in %4 mixes, from tip to base:")
                      .arg(countText(static_cast<qint64>(plan.stems.size())), countText(places),
                           countText(leaves), countText(static_cast<qint64>(plan.mixes.size()))));
    LeafPictures painted;
    constexpr QSize size(40, 34);
    QPixmap strip(QSize(size.width() * static_cast<int>(plan.mixes.size()), size.height()) *
                  devicePixelRatio());
    strip.setDevicePixelRatio(devicePixelRatio());
    strip.fill(Qt::transparent);
    QPainter painter(&strip);
    for (std::size_t i = 0; i < plan.mixes.size(); ++i)
        painter.drawPixmap(static_cast<int>(i) * size.width(), 0,
                           painted.picture(lookOf(plan, {plan.kinds.back().id, plan.mixes[i].id}), size));
    painter.end();
    pictures_->setPixmap(strip);
    pictures_->setAccessibleName(tr("How the mixes will look"));
}

QString NewPlanDialog::problem() {
    Result<Plan> made = planFrom(wanted());
    if (!made)
        return sentence(made.problem());
    plan_ = std::move(made).value();
    return {};
}

} // namespace stemwright

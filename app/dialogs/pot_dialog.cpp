#include "app/dialogs/pot_dialog.h"

#include "app/wording.h"
#include "core/plan/limits.h"
#include "core/plan/lookup.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QLocale>

#include <algorithm>

namespace stemwright {

namespace {

/// Whether a filling of her own says the density, so that the field beside it has no say.
bool saysDensity(const QComboBox* fillings) {
    return fillings && fillings->currentIndex() > 0;
}

/// What a choice of fillings leaves of a clay or a cover; without a choice it stays as it was.
std::string ownOf(const QComboBox* fillings, const std::string& before) {
    return fillings ? fillings->currentData().toString().toStdString() : before;
}

} // namespace

QComboBox* PotDialog::addFillings(QFormLayout* rows, const std::vector<OwnFilling>& own,
                                  const std::string& chosen, const QString& name, const QString& label) {
    if (own.empty())
        return nullptr;
    auto* box = new QComboBox(this);
    box->addItem(tr("as the density below says"), QString());
    for (const OwnFilling& filling : own)
        box->addItem(tr("%1 ✎ yours, %2 kg/m³", "a filling of the maker's own")
                         .arg(text(filling.name), QLocale().toString(filling.density, 'f', 0)),
                     text(filling.name));
    addPlain(rows, box, name, label);
    box->setCurrentIndex(std::max(0, box->findData(text(chosen))));
    connect(box, &QComboBox::currentIndexChanged, this, &PotDialog::follow);
    return box;
}

PotDialog::PotDialog(const Pot& pot, const Units& units, QWidget* parent, const OwnTables& own)
    : FormDialog(QStringLiteral("potDialog"), tr("Pot"), tr("OK"), parent),
      before_(pot),
      units_(units),
      own_(own) {
    QFormLayout* rows = addForm();
    const auto length = [&](double least, Length value, const QString& name, const QString& label) {
        auto* field =
            add(rows, new LengthField(units.length, millimetres(least), millimetres(limits::longest), this),
                name, label);
        field->setValue(value);
        return field;
    };
    name_ = add(rows, new NameField(this), QStringLiteral("potName"), tr("Name"));
    name_->setText(text(pot.name));
    QList<QPair<QString, int>> shapes;
    for (const PotShape shape : {PotShape::cylinder, PotShape::frustum, PotShape::bowl})
        shapes += {shapeText(shape), static_cast<int>(shape)};
    shape_ = choiceOf(shapes, this);
    addPlain(rows, shape_, QStringLiteral("potShape"), tr("Shape"));
    choose(shape_, static_cast<int>(pot.shape));
    QList<QPair<QString, int>> openings;
    for (const PotOpening opening : {PotOpening::round, PotOpening::oval, PotOpening::rectangular})
        openings += {openingText(opening), static_cast<int>(opening)};
    opening_ = choiceOf(openings, this);
    addPlain(rows, opening_, QStringLiteral("potOpening"), tr("Opening"));
    choose(opening_, static_cast<int>(pot.opening));
    top_ = length(limits::smallestPot, pot.topDiameter, QStringLiteral("potTop"),
                  tr("Inside at the rim, side to side"));
    breadth_ = length(limits::smallestPot, pot.topBreadth, QStringLiteral("potBreadth"),
                      tr("Inside at the rim, front to back"));
    bottom_ = length(limits::smallestPot, pot.bottomDiameter, QStringLiteral("potBottom"),
                     tr("Inside at the floor, side to side"));
    depth_ = length(limits::smallestPot, pot.depth, QStringLiteral("potDepth"), tr("Depth inside"));
    planting_ =
        length(0, pot.plantingDepth, QStringLiteral("potPlanting"), tr("Tail below the clay's surface"));
    clayDepth_ = length(0, pot.clay.depth, QStringLiteral("potClay"), tr("Depth of the clay"));
    clay_ = addFillings(rows, own_.clays, pot.clay.own, QStringLiteral("potClayOwn"), tr("Clay"));
    density_ = add(rows, new NumberField(limits::lightest, limits::densest, 0, this),
                   QStringLiteral("potDensity"), tr("Density of the clay, kg/m³"));
    density_->setValue(pot.clay.density);
    // A maker's table gives plaster; the clay is from memory, no source.
    density_->setToolTip(
        tr("Set plaster, dry: about 1060 to 1440. Air-dry clay, dry: about 1300 to 1600. Sand and "
           "gravel: about 1520 to 1680."));
    hasCover_ = new QCheckBox(tr("lies on the clay"), this);
    addPlain(rows, hasCover_, QStringLiteral("potHasCover"), tr("Cover: sand, pebbles, moss"));
    hasCover_->setChecked(pot.cover.has_value());
    const Cover cover = pot.cover.value_or(Cover{});
    coverDepth_ = length(0, cover.depth, QStringLiteral("potCover"), tr("Depth of the cover"));
    cover_ = addFillings(rows, own_.covers, cover.own, QStringLiteral("potCoverOwn"), tr("Cover of"));
    coverDensity_ = add(rows, new NumberField(limits::lightest, limits::densest, 0, this),
                        QStringLiteral("potCoverDensity"), tr("Density of the cover, kg/m³"));
    coverDensity_->setValue(cover.density);
    mass_ = add(rows, new NumberField(0, limits::heaviest, 1, this), QStringLiteral("potMass"),
                tr("Empty pot, grams (0: not weighed)"));
    mass_->setValue(inGrams(pot.mass));
    foot_ = length(0, pot.footDiameter, QStringLiteral("potFoot"),
                   tr("Across its foot or feet (0: stands on its floor)"));
    QList<QPair<QString, int>> feet{{QLocale().toString(0), 0}};
    for (int count = limits::leastFeet; count <= limits::feet; ++count)
        feet += {QLocale().toString(count), count};
    feet_ = choiceOf(feet, this);
    addPlain(rows, feet_, QStringLiteral("potFeet"), tr("Feet under it (0: a ring or its floor)"));
    choose(feet_, pot.feet);
    stake_ = add(rows, new WireField(this), QStringLiteral("potStake"), tr("Stake wire"));
    stake_->setValue(pot.stake.diameter, pot.stake.gauge);
    metal_ = metalChoice(own_, metalNameOf(pot.stake), this);
    addPlain(rows, metal_, QStringLiteral("potMetal"), tr("Stake metal"));
    overlap_ = length(0, pot.stake.overlap, QStringLiteral("potOverlap"),
                      tr("Stake bound to the stem, above the clay"));
    connect(hasCover_, &QCheckBox::toggled, this, &PotDialog::follow);
    connect(shape_, &QComboBox::currentIndexChanged, this, &PotDialog::follow);
    connect(opening_, &QComboBox::currentIndexChanged, this, &PotDialog::follow);
    follow();
    setMinimumWidth(580);
}

void PotDialog::follow() {
    // A round opening is as wide from front to back; a cylinder is as wide at the floor, and a bowl is round
    // there.
    breadth_->setEnabled(opening_->currentData().toInt() != static_cast<int>(PotOpening::round));
    coverDepth_->setEnabled(hasCover_->isChecked());
    density_->setEnabled(!saysDensity(clay_));
    if (cover_)
        cover_->setEnabled(hasCover_->isChecked());
    coverDensity_->setEnabled(hasCover_->isChecked() && !saysDensity(cover_));
    bottom_->setEnabled(shape_->currentData().toInt() == static_cast<int>(PotShape::frustum));
}

QString PotDialog::problem() {
    const Pot now = pot();
    if (now.clay.depth > now.depth)
        return tr("%1: %2 is more than the pot is deep inside, %3.")
            .arg(clayDepth_->accessibleName(), sizeText(now.clay.depth, units_), sizeText(now.depth, units_));
    return {};
}

Pot PotDialog::pot() const {
    Pot pot = before_;
    pot.name = name_->text().trimmed().toStdString();
    pot.shape = static_cast<PotShape>(shape_->currentData().toInt());
    pot.topDiameter = top_->value().value_or(before_.topDiameter);
    pot.opening = static_cast<PotOpening>(opening_->currentData().toInt());
    if (breadth_->isEnabled())
        pot.topBreadth = breadth_->value().value_or(before_.topBreadth);
    if (bottom_->isEnabled())
        pot.bottomDiameter = bottom_->value().value_or(before_.bottomDiameter);
    pot.depth = depth_->value().value_or(before_.depth);
    pot.plantingDepth = planting_->value().value_or(before_.plantingDepth);
    pot.clay.depth = clayDepth_->value().value_or(before_.clay.depth);
    pot.clay.own = ownOf(clay_, before_.clay.own);
    pot.clay.density = density_->value().value_or(before_.clay.density);
    if (hasCover_->isChecked()) {
        Cover cover = before_.cover.value_or(Cover{});
        cover.depth = coverDepth_->value().value_or(cover.depth);
        cover.own = ownOf(cover_, cover.own);
        cover.density = coverDensity_->value().value_or(cover.density);
        pot.cover = cover;
    } else {
        pot.cover.reset();
    }
    if (const auto mass = mass_->value())
        pot.mass = grams(*mass);
    pot.footDiameter = foot_->value().value_or(before_.footDiameter);
    pot.feet = feet_->currentData().toInt();
    pot.stake.diameter = stake_->diameter().value_or(before_.stake.diameter);
    pot.stake.gauge = stake_->gauge();
    if (const MetalName metal = chosenMetal(metal_, own_); metal != metalNameOf(before_.stake)) {
        pot.stake.ownMetal = metal.own;
        if (metal.own.empty())
            pot.stake.metal = metal.metal;
    }
    pot.stake.overlap = overlap_->value().value_or(before_.stake.overlap);
    return pot;
}

} // namespace stemwright

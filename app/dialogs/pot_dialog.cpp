#include "app/dialogs/pot_dialog.h"

#include "app/dialogs/stem_dialog.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QComboBox>
#include <QFormLayout>

namespace stemwright {

PotDialog::PotDialog(const Pot& pot, const Units& units, QWidget* parent)
    : FormDialog(QStringLiteral("potDialog"), tr("Pot"), tr("OK"), parent), before_(pot) {
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
    top_ = length(limits::smallestPot, pot.topDiameter, QStringLiteral("potTop"),
                  tr("Diameter inside, at the rim"));
    bottom_ = length(limits::smallestPot, pot.bottomDiameter, QStringLiteral("potBottom"),
                     tr("Diameter inside, at the floor"));
    depth_ = length(limits::smallestPot, pot.depth, QStringLiteral("potDepth"), tr("Depth inside"));
    planting_ =
        length(0, pot.plantingDepth, QStringLiteral("potPlanting"), tr("Tail below the clay's surface"));
    clayDepth_ = length(0, pot.clay.depth, QStringLiteral("potClay"), tr("Depth of the clay"));
    density_ = add(rows, new NumberField(limits::lightest, limits::densest, 0, this),
                   QStringLiteral("potDensity"), tr("Density of the clay, kg/m³"));
    density_->setValue(pot.clay.density);
    // A maker's table gives plaster; the clay is from memory, no source.
    density_->setToolTip(
        tr("Set plaster, dry: about 1060 to 1440. Air-dry clay, dry: about 1300 to 1600. Sand and "
           "gravel: about 1520 to 1680."));
    stake_ = add(rows, new WireField(this), QStringLiteral("potStake"), tr("Stake wire"));
    stake_->setValue(pot.stake.diameter, pot.stake.gauge);
    metal_ = choiceOf(metals(), this);
    addPlain(rows, metal_, QStringLiteral("potMetal"), tr("Stake metal"));
    choose(metal_, static_cast<int>(pot.stake.metal));
    overlap_ = length(0, pot.stake.overlap, QStringLiteral("potOverlap"),
                      tr("Stake bound to the stem, above the clay"));
    connect(shape_, &QComboBox::currentIndexChanged, this, &PotDialog::follow);
    follow();
    setMinimumWidth(580);
}

void PotDialog::follow() {
    // A cylinder is as wide at the floor, and a bowl is round there.
    bottom_->setEnabled(shape_->currentData().toInt() == static_cast<int>(PotShape::frustum));
}

Pot PotDialog::pot() const {
    Pot pot = before_;
    pot.name = name_->text().trimmed().toStdString();
    pot.shape = static_cast<PotShape>(shape_->currentData().toInt());
    pot.topDiameter = top_->value().value_or(before_.topDiameter);
    if (bottom_->isEnabled())
        pot.bottomDiameter = bottom_->value().value_or(before_.bottomDiameter);
    pot.depth = depth_->value().value_or(before_.depth);
    pot.plantingDepth = planting_->value().value_or(before_.plantingDepth);
    pot.clay.depth = clayDepth_->value().value_or(before_.clay.depth);
    pot.clay.density = density_->value().value_or(before_.clay.density);
    pot.stake.diameter = stake_->diameter().value_or(before_.stake.diameter);
    pot.stake.gauge = stake_->gauge();
    pot.stake.metal = static_cast<Metal>(metal_->currentData().toInt());
    pot.stake.overlap = overlap_->value().value_or(before_.stake.overlap);
    return pot;
}

} // namespace stemwright

#include "app/dialogs/stem_dialog.h"

#include "app/wording.h"
#include "core/plan/limits.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QSpinBox>

namespace stemwright {

StemDialog::StemDialog(const StemForm& stem, const Units& units, QWidget* parent, const OwnTables& own)
    : FormDialog(QStringLiteral("stemDialog"), tr("Stem"), tr("OK"), parent), before_(stem), own_(own) {
    const auto longest = millimetres(limits::longest);
    QFormLayout* rows = addForm();
    name_ = add(rows, new NameField(this), QStringLiteral("stemName"), tr("Name"));
    name_->setText(text(stem.name));

    QList<QPair<QString, int>> arrangements;
    for (const Arrangement each : {Arrangement::decussate, Arrangement::onePlane, Arrangement::alternate,
                                   Arrangement::whorled, Arrangement::spiral})
        arrangements += {arrangementText(each), static_cast<int>(each)};
    arrangement_ = choiceOf(arrangements, this);
    addPlain(rows, arrangement_, QStringLiteral("stemArrangement"), tr("Arrangement"));
    choose(arrangement_, static_cast<int>(stem.arrangement));
    whorl_ = new QSpinBox(this);
    whorl_->setRange(limits::leastWhorl, limits::whorl);
    whorl_->setValue(stem.whorl);
    addPlain(rows, whorl_, QStringLiteral("stemWhorl"), tr("Leaves in a whorl"));

    spacing_ = add(rows, new LengthField(units.length, millimetres(0), longest, this),
                   QStringLiteral("stemSpacing"), tr("Spacing of the tiers"));
    spacing_->setValue(stem.spacing);
    tail_ = add(rows, new LengthField(units.length, millimetres(0), longest, this), QStringLiteral("stemTail"),
                tr("Tail below the last tier"));
    tail_->setValue(stem.tail);

    hasCore_ = new QCheckBox(tr("runs through the stem"), this);
    addPlain(rows, hasCore_, QStringLiteral("stemHasCore"), tr("Core wire"));
    hasCore_->setChecked(stem.core.has_value());
    core_ = add(rows, new WireField(this), QStringLiteral("stemCore"), tr("Core wire size"));
    // AWG 18, as stems are commonly made (common practice: blogs of the craft).
    const CoreWire core = stem.core.value_or(
        CoreWire{millimetres(1.024), GaugeNumber{GaugeSystem::awg, 18}, Metal::softSteel, ""});
    core_->setValue(core.diameter, core.gauge);
    metal_ = metalChoice(own_, metalNameOf(core), this);
    addPlain(rows, metal_, QStringLiteral("stemMetal"), tr("Core wire metal"));

    locked_ = new QCheckBox(tr("no suggestion may touch it"), this);
    addPlain(rows, locked_, QStringLiteral("stemLocked"), tr("Pinned"));
    locked_->setChecked(stem.locked);

    connect(arrangement_, &QComboBox::currentIndexChanged, this, &StemDialog::follow);
    connect(hasCore_, &QCheckBox::toggled, this, &StemDialog::follow);
    follow();
    setMinimumWidth(520);
}

void StemDialog::follow() {
    whorl_->setEnabled(arrangement_->currentData().toInt() == static_cast<int>(Arrangement::whorled));
    core_->setEnabled(hasCore_->isChecked());
    metal_->setEnabled(hasCore_->isChecked());
}

StemForm StemDialog::form() const {
    StemForm form = before_;
    form.name = name_->text().trimmed().toStdString();
    form.arrangement = static_cast<Arrangement>(arrangement_->currentData().toInt());
    form.whorl = whorl_->isEnabled() ? whorl_->value() : before_.whorl;
    form.spacing = spacing_->value().value_or(before_.spacing);
    form.tail = tail_->value().value_or(before_.tail);
    form.locked = locked_->isChecked();
    if (hasCore_->isChecked()) {
        CoreWire core = before_.core.value_or(CoreWire{});
        core.diameter = core_->diameter().value_or(core.diameter);
        core.gauge = core_->gauge();
        if (const MetalName metal = chosenMetal(metal_, own_); metal != metalNameOf(core)) {
            core.ownMetal = metal.own;
            if (metal.own.empty())
                core.metal = metal.metal;
        }
        form.core = core;
    } else {
        form.core.reset();
    }
    return form;
}

} // namespace stemwright

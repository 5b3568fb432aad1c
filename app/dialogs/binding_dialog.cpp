#include "app/dialogs/binding_dialog.h"

#include "app/look.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

WrapPage::WrapPage(const Wrap& wrap, int origin, const Units& units, const OwnTables& own, QWidget* parent)
    : QWidget(parent), before_(wrap), origin_(origin), own_(own), rows_(new QFormLayout(this)) {
    setObjectName(QStringLiteral("wrapPage"));
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    rows_->setHorizontalSpacing(4 * look::unit);
    rows_->setVerticalSpacing(2 * look::unit);
    const auto row = [&](QWidget* field, const QString& name, const QString& label) {
        nameField(field, name, label);
        rows_->addRow(label, field);
    };
    const auto length = [&](LengthUnit unit, double least, double most, Length value, const QString& name,
                            const QString& label) {
        auto* field = new LengthField(unit, millimetres(least), millimetres(most), this);
        field->setValue(value);
        row(field, name, label);
        return field;
    };
    constexpr auto mm = LengthUnit::millimetre; // thin things are measured in it everywhere
    with_ = choiceOf({{wrapText(WrapWith::wire), static_cast<int>(WrapWith::wire)},
                      {wrapText(WrapWith::floss), static_cast<int>(WrapWith::floss)},
                      {wrapText(WrapWith::tape), static_cast<int>(WrapWith::tape)}},
                     this);
    row(with_, QStringLiteral("wrapWith"), tr("Wound with"));
    choose(with_, static_cast<int>(wrap.with));
    name_ = new NameField(this);
    name_->setText(text(wrap.name));
    row(name_, QStringLiteral("wrapName"), tr("What you call it"));
    which_ = new QComboBox(this);
    row(which_, QStringLiteral("wrapWhich"), tr("Which"));
    metal_ = metalChoice(own_, metalNameOf(wrap), this);
    row(metal_, QStringLiteral("wrapMetal"), tr("Metal"));
    wire_ = new WireField(this);
    wire_->setValue(wrap.width, wrap.gauge);
    row(wire_, QStringLiteral("wrapWire"), tr("Wire"));
    wire_->setObjectNames(QStringLiteral("wrapWire"), tr("Wire"));
    strands_ = new QSpinBox(this);
    strands_->setRange(1, limits::strands);
    strands_->setValue(wrap.strands);
    row(strands_, QStringLiteral("wrapStrands"), tr("Strands side by side"));
    width_ = length(mm, limits::thinnestWire, limits::widest, wrap.width, QStringLiteral("wrapWidth"),
                    tr("Width of a strand or tape"));
    thickness_ = length(mm, limits::thinnestWrap, limits::thickest, wrap.thickness,
                        QStringLiteral("wrapThickness"), tr("Thickness of a layer"));
    overlap_ = new NumberField(0, 100 * limits::mostOverlap, 1, this);
    overlap_->setValue(100 * wrap.overlap);
    if (wrap.overlapMeasured)
        overlap_->setToolTip(tr("Fitted to what your bound stems took."));
    row(overlap_, QStringLiteral("wrapOverlap"), tr("Overlap of the turns, %"));
    stretch_ = new NumberField(1, limits::mostStretch, 2, this);
    stretch_->setValue(wrap.stretch);
    row(stretch_, QStringLiteral("wrapStretch"), tr("Stretched to, times its length"));
    startTail_ = length(units.length, 0, limits::longest, wrap.startTail, QStringLiteral("wrapStart"),
                        tr("Laid in at the start"));
    finish_ = length(units.length, 0, limits::longest, wrap.finish, QStringLiteral("wrapFinish"),
                     tr("For the finish"));
    hold_ = length(units.length, 0, limits::longest, wrap.hold, QStringLiteral("wrapHold"),
                   tr("Held in the hand, cut off"));
    sold_ =
        length(units.length, limits::shortestSold, limits::longestWire, wrap.sold.value_or(millimetres(8000)),
               QStringLiteral("wrapSold"), tr("Length of a skein, spool or roll"));
    sold_->setOptional(true);
    sold_->setPlaceholderText(tr("not known"));
    if (!wrap.sold)
        sold_->clearValue();
    fillOwn();
    which_->setCurrentIndex(std::max(0, which_->findData(text(wrap.own))));
    connect(which_, &QComboBox::currentIndexChanged, this, &WrapPage::takeOwn);
    connect(with_, &QComboBox::currentIndexChanged, this, [this] {
        fillOwn();
        suggest();
        follow();
        Q_EMIT kindChanged();
    });
    follow();
}

void WrapPage::follow() {
    const auto with = static_cast<WrapWith>(with_->currentData().toInt());
    rows_->setRowVisible(wire_, with == WrapWith::wire);
    rows_->setRowVisible(metal_, with == WrapWith::wire);
    rows_->setRowVisible(which_, which_->count() > 1);
    rows_->setRowVisible(strands_, with == WrapWith::floss);
    rows_->setRowVisible(width_, with != WrapWith::wire);
    rows_->setRowVisible(thickness_, with != WrapWith::wire);
    rows_->setRowVisible(stretch_, with == WrapWith::tape);
}

void WrapPage::fillOwn() {
    const QSignalBlocker quiet(which_);
    which_->clear();
    const auto with = static_cast<WrapWith>(with_->currentData().toInt());
    if (with == WrapWith::wire)
        return;
    which_->addItem(tr("the handbook's"), QString());
    if (with == WrapWith::floss)
        for (const OwnFloss& floss : own_.flosses)
            which_->addItem(tr("%1 ✎ yours", "an entry of the maker's own").arg(text(floss.name)),
                            text(floss.name));
    else
        for (const OwnTape& tape : own_.tapes)
            which_->addItem(tr("%1 ✎ yours", "an entry of the maker's own").arg(text(tape.name)),
                            text(tape.name));
}

void WrapPage::takeOwn() {
    const QString name = which_->currentData().toString();
    if (name.isEmpty())
        return suggest();
    for (const OwnFloss& floss : own_.flosses)
        if (static_cast<WrapWith>(with_->currentData().toInt()) == WrapWith::floss &&
            text(floss.name) == name) {
            strands_->setValue(floss.strands);
            width_->setValue(floss.strandWidth);
            thickness_->setValue(floss.strandWidth);
            if (floss.skein)
                sold_->setValue(*floss.skein);
        }
    for (const OwnTape& tape : own_.tapes)
        if (static_cast<WrapWith>(with_->currentData().toInt()) == WrapWith::tape && text(tape.name) == name) {
            width_->setValue(tape.width);
            thickness_->setValue(tape.thickness);
            stretch_->setValue(tape.stretch);
            if (tape.roll)
                sold_->setValue(*tape.roll);
        }
}

void WrapPage::suggest() {
    // What such a layer commonly is (common practice; the tape's thickness is from memory, no source).
    switch (static_cast<WrapWith>(with_->currentData().toInt())) {
    case WrapWith::wire:
        wire_->setValue(millimetres(0.32), GaugeNumber{GaugeSystem::awg, 28});
        overlap_->setValue(0);
        break;
    case WrapWith::floss: {
        const Wrap floss;
        strands_->setValue(floss.strands);
        width_->setValue(floss.width);
        thickness_->setValue(floss.thickness);
        overlap_->setValue(100 * floss.overlap);
        break;
    }
    case WrapWith::tape:
        width_->setValue(millimetres(12.5));
        thickness_->setValue(millimetres(0.1));
        overlap_->setValue(50);
        stretch_->setValue(1.5);
        break;
    }
}

Wrap WrapPage::wrap() const {
    Wrap wrap = before_;
    wrap.with = static_cast<WrapWith>(with_->currentData().toInt());
    wrap.name = name_->text().trimmed().toStdString();
    wrap.own = which_->currentData().toString().toStdString();
    if (const MetalName metal = chosenMetal(metal_, own_);
        wrap.with == WrapWith::wire && metal != metalNameOf(before_)) {
        wrap.ownMetal = metal.own;
        if (metal.own.empty())
            wrap.metal = metal.metal;
    }
    if (wrap.with == WrapWith::wire) {
        const Length diameter = wire_->diameter().value_or(before_.width);
        // An unchanged wire stays as it was to the last bit.
        if (before_.with != WrapWith::wire || diameter != before_.width) {
            wrap.width = diameter;
            wrap.thickness = diameter;
        }
        wrap.gauge = wire_->gauge();
        wrap.strands = before_.with == WrapWith::wire ? before_.strands : 1;
    } else {
        wrap.width = width_->value().value_or(before_.width);
        wrap.thickness = thickness_->value().value_or(before_.thickness);
        wrap.gauge.reset();
        wrap.strands = wrap.with == WrapWith::floss     ? strands_->value()
                       : before_.with == WrapWith::tape ? before_.strands
                                                        : 1;
    }
    if (const auto percent = overlap_->value(); percent && *percent != 100 * before_.overlap) {
        wrap.overlap = *percent / 100;
        wrap.overlapMeasured = false;
    }
    if (wrap.with == WrapWith::tape)
        wrap.stretch = stretch_->value().value_or(before_.stretch);
    else if (before_.with == WrapWith::tape)
        wrap.stretch = 1;
    wrap.startTail = startTail_->value().value_or(before_.startTail);
    wrap.finish = finish_->value().value_or(before_.finish);
    wrap.hold = hold_->value().value_or(before_.hold);
    wrap.sold = sold_->value();
    // What was measured of another layer, or is overruled by hand, is no measure of this one.
    if (wrap.overlap != before_.overlap || wrap.with != before_.with || wrap.width != before_.width ||
        wrap.strands != before_.strands)
        wrap.overlapMeasured = false;
    return wrap;
}

WrapPage::Refusal WrapPage::refusal() const {
    for (EntryField* field : std::initializer_list<EntryField*>{
             name_, wire_->field(), width_, thickness_, overlap_, stretch_, startTail_, finish_, hold_, sold_})
        if (field->isVisibleTo(this))
            if (const QString why = field->refusal(); !why.isEmpty())
                return {field->accessibleName(), why, field};
    return {};
}

BindingDialog::BindingDialog(const Binding& binding, const Units& units, QWidget* parent, const OwnTables& own)
    : FormDialog(QStringLiteral("bindingDialog"), tr("Binding"), tr("OK"), parent),
      before_(binding),
      units_(units),
      own_(own),
      list_(new QListWidget(this)),
      pages_(new QStackedWidget(this)) {
    nameField(list_, QStringLiteral("wrapList"), tr("Layers, from the wires outward"));
    list_->setMinimumWidth(130);
    const auto button = [&](const QString& label, const QString& name, const QString& accessible) {
        auto* made = new QPushButton(label, this);
        nameField(made, name, accessible);
        made->setToolTip(accessible);
        made->setAutoDefault(false);
        return made;
    };
    add_ = button(tr("Add"), QStringLiteral("wrapAdd"), tr("Add a layer outside the others"));
    remove_ = button(tr("Remove"), QStringLiteral("wrapRemove"), tr("Remove the layer"));
    up_ = button(QStringLiteral("↑"), QStringLiteral("wrapUp"), tr("Move the layer inward"));
    down_ = button(QStringLiteral("↓"), QStringLiteral("wrapDown"), tr("Move the layer outward"));
    auto* keys = new QGridLayout;
    keys->setSpacing(look::unit);
    keys->addWidget(add_, 0, 0);
    keys->addWidget(remove_, 0, 1);
    keys->addWidget(up_, 1, 0);
    keys->addWidget(down_, 1, 1);
    auto* left = new QVBoxLayout;
    left->setSpacing(look::unit);
    auto* title = new QLabel(tr("Layers, from the wires outward"), this);
    title->setBuddy(list_);
    title->setWordWrap(true);
    left->addWidget(title);
    left->addWidget(list_, 1);
    left->addLayout(keys);
    auto* sides = new QHBoxLayout;
    sides->setSpacing(5 * look::unit);
    sides->addLayout(left, 2);
    sides->addWidget(pages_, 5);
    body()->addLayout(sides);
    minutes_ = add(addForm(), new NumberField(0, limits::minutes, 2, this), QStringLiteral("minutesPerTier"),
                   tr("Minutes a tier, until you have timed some (0: not known)"));
    minutes_->setValue(binding.minutesPerTier);

    for (const Wrap& wrap : binding.wraps)
        addPage(wrap, pages_->count());
    connect(list_, &QListWidget::currentRowChanged, pages_, &QStackedWidget::setCurrentIndex);
    connect(add_, &QPushButton::clicked, this, [this] {
        addPage(Wrap{}, -1);
        list_->setCurrentRow(list_->count() - 1);
    });
    connect(remove_, &QPushButton::clicked, this, &BindingDialog::removePage);
    connect(up_, &QPushButton::clicked, this, [this] { movePage(-1); });
    connect(down_, &QPushButton::clicked, this, [this] { movePage(1); });
    list_->setCurrentRow(0);
    relabel();
    setMinimumSize(660, 540);
}

WrapPage* BindingDialog::page(int at) const {
    return static_cast<WrapPage*>(pages_->widget(at));
}

void BindingDialog::addPage(const Wrap& wrap, int origin) {
    auto* made = new WrapPage(wrap, origin, units_, own_, pages_);
    connect(made, &WrapPage::kindChanged, this, &BindingDialog::relabel);
    pages_->addWidget(made);
    list_->addItem(QString());
    relabel();
}

void BindingDialog::removePage() {
    const int at = list_->currentRow();
    if (at < 0)
        return;
    QWidget* gone = page(at);
    pages_->removeWidget(gone);
    gone->deleteLater();
    delete list_->takeItem(at);
    relabel();
    pages_->setCurrentIndex(list_->currentRow());
}

void BindingDialog::movePage(int by) {
    const int at = list_->currentRow(), to = at + by;
    if (at < 0 || to < 0 || to >= list_->count())
        return;
    QWidget* moved = page(at);
    pages_->removeWidget(moved);
    pages_->insertWidget(to, moved);
    relabel();
    list_->setCurrentRow(to);
    pages_->setCurrentIndex(to);
}

void BindingDialog::relabel() {
    for (int i = 0; i < list_->count(); ++i)
        list_->item(i)->setText(
            tr("%1. %2", "a layer's number and what it is").arg(i + 1).arg(wrapText(page(i)->wrap().with)));
    add_->setEnabled(list_->count() < static_cast<int>(limits::wraps));
    remove_->setEnabled(list_->count() > 0);
    up_->setEnabled(list_->count() > 1);
    down_->setEnabled(list_->count() > 1);
}

QString BindingDialog::problem() {
    for (int i = 0; i < pages_->count(); ++i)
        if (const WrapPage::Refusal refusal = page(i)->refusal(); refusal.field) {
            list_->setCurrentRow(i);
            refusal.field->setFocus(Qt::OtherFocusReason);
            return tr("Layer %1, %2: %3").arg(i + 1).arg(refusal.where, refusal.why);
        }
    return {};
}

Binding BindingDialog::binding() const {
    Binding binding = before_;
    binding.wraps.clear();
    for (int i = 0; i < pages_->count(); ++i)
        binding.wraps.push_back(page(i)->wrap());
    binding.minutesPerTier = minutes_->value().value_or(before_.minutesPerTier);
    return binding;
}

std::vector<int> BindingDialog::origins() const {
    std::vector<int> origins;
    for (int i = 0; i < pages_->count(); ++i)
        origins.push_back(page(i)->origin());
    return origins;
}

} // namespace stemwright

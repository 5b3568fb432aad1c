#include "app/dialogs/buying_dialog.h"

#include "app/look.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QFormLayout>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

namespace {

/// A mass as the maker counts it.
double shownMass(double inGram, MassUnit unit) {
    return unit == MassUnit::ounce ? inGram / gramsPerOunce : inGram;
}
double storedMass(double shown, MassUnit unit) {
    return unit == MassUnit::ounce ? shown * gramsPerOunce : shown;
}

QLabel* heading(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setFont(look::font(look::Type::heading));
    return label;
}

/// The length of wire in one, where it is known.
std::optional<Length> lengthOn(const Pack& pack) {
    return pack.amount > 0 ? std::optional(millimetres(pack.amount)) : std::nullopt;
}

/// How one of a layer is sold.
QString soldAs(WrapWith with) {
    switch (with) {
    case WrapWith::wire:
        return BuyingDialog::tr("a spool of binding wire");
    case WrapWith::floss:
        return BuyingDialog::tr("a skein of floss");
    case WrapWith::tape:
        return BuyingDialog::tr("a roll of tape");
    }
    return {};
}

} // namespace

BuyingDialog::BuyingDialog(const Plan& plan, QWidget* parent)
    : FormDialog(QStringLiteral("buyingDialog"), tr("How things are sold"), tr("OK"), parent),
      plan_(plan),
      spare_(nullptr),
      packs_(new QGridLayout),
      bars_(new QGridLayout),
      byColour_(new QGridLayout),
      addBar_(new QPushButton(tr("Add a length"), this)) {
    auto* page = new QWidget(this);
    auto* rows = new QVBoxLayout(page);
    rows->setContentsMargins(0, 0, 3 * look::unit, 0);
    rows->setSpacing(2 * look::unit);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setWidget(page);
    scroll->setFocusPolicy(Qt::NoFocus);
    body()->addWidget(scroll, 1);

    auto* form = addForm();
    body()->removeItem(form);
    rows->addLayout(form);
    spare_ = add(form, new NumberField(0, 100 * limits::mostSpare, 1, this), QStringLiteral("buyingSpare"),
                 tr("Spare of beads and leaf wire, %"));
    spare_->setValue(100 * plan.buying.spare);

    rows->addWidget(heading(tr("Sold in packs"), page));
    for (QGridLayout* grid : {packs_, bars_}) {
        grid->setHorizontalSpacing(3 * look::unit);
        grid->setVerticalSpacing(2 * look::unit);
        rows->addLayout(grid);
        if (grid == packs_) {
            rows->addWidget(heading(tr("Stake and core wire, by the straight length"), page));
            auto* how =
                new QLabel(tr("The cutting plan uses the fewest of these. With none, the wire is cut from "
                              "a coil."),
                           page);
            how->setProperty("quiet", true);
            how->setWordWrap(true);
            rows->addWidget(how);
        }
    }
    const auto head = [page](QGridLayout* grid, int column, const QString& words) {
        auto* label = new QLabel(words, page);
        label->setProperty("quiet", true);
        grid->addWidget(label, 0, column);
    };
    head(packs_, 1, tr("How much in one"));
    head(packs_, 2, tr("Price of one"));
    head(bars_, 0, tr("Length"));
    head(bars_, 1, tr("Of wire"));
    head(bars_, 2, tr("Price of one"));
    packs_->setColumnStretch(0, 5);
    packs_->setColumnStretch(1, 4);
    packs_->setColumnStretch(2, 3);
    bars_->setColumnStretch(0, 4);
    bars_->setColumnStretch(1, 3);
    bars_->setColumnStretch(2, 3);
    bars_->setColumnStretch(3, 2);

    const Buying& buying = plan.buying;
    // Colours that say nothing themselves are sold like this.
    const QString loose = tr("sold loose");
    beads_ = addMass(packs_, tr("a pack of beads of one colour"), QStringLiteral("buyingBeads"), buying.beads,
                     loose);
    leafWire_ = addLength(tr("a spool of leaf wire"), QStringLiteral("buyingLeafWire"),
                          lengthOn(buying.leafWire), buying.leafWire.price, tr("length not known"));
    addLeafWires();
    for (std::size_t i = 0; i < plan.binding.wraps.size(); ++i)
        wraps_.push_back(addLength(soldAs(plan.binding.wraps[i].with), QStringLiteral("buyingWrap%1").arg(i),
                                   plan.binding.wraps[i].sold,
                                   i < buying.wraps.size() ? buying.wraps[i].price : 0,
                                   tr("length not known")));
    clay_ = addMass(packs_, tr("a pack of clay"), QStringLiteral("buyingClay"), buying.clay, loose);
    cover_ = addMass(packs_, tr("a bag of cover"), QStringLiteral("buyingCover"), buying.cover, loose);

    for (std::size_t i = 0; i < plan.colours.size(); ++i)
        colours_.push_back(addMass(byColour_, text(plan.colours[i].name),
                                   QStringLiteral("buyingColour%1").arg(i), plan.colours[i].sold,
                                   tr("as all colours")));

    nameField(addBar_, QStringLiteral("buyingAddBar"), tr("Add a length that stake and core wire is sold in"));
    addBar_->setAutoDefault(false);
    connect(addBar_, &QPushButton::clicked, this, [this] {
        addBar(Bar{});
        barRows_.back().length->setFocus(Qt::OtherFocusReason);
        barRows_.back().length->selectAll();
    });
    rows->addWidget(addBar_, 0, Qt::AlignLeft);
    rows->addWidget(heading(tr("Colours that are sold in another way"), page));
    rows->addLayout(byColour_);
    byColour_->setHorizontalSpacing(3 * look::unit);
    byColour_->setVerticalSpacing(2 * look::unit);
    byColour_->setColumnStretch(0, 5);
    byColour_->setColumnStretch(1, 4);
    byColour_->setColumnStretch(2, 3);
    rows->addStretch(1);
    for (const Bar& bar : buying.bars)
        addBar(bar);
    nameBars();
    resize(620, 620);
}

NumberField* BuyingDialog::priceField(double price, const QString& name, const QString& accessible) {
    auto* field = new NumberField(0, limits::dearest, 2, this);
    nameField(field, name, accessible);
    field->setOptional(true);
    field->setPlaceholderText(tr("not known"));
    if (price > 0)
        field->setValue(price);
    watch(accessible, field, [field] { return field->refusal(); });
    return field;
}

BuyingDialog::PackRow BuyingDialog::addMass(QGridLayout* grid, const QString& what, const QString& name,
                                            const Pack& pack, const QString& unsaid) {
    PackRow row;
    row.what = what;
    const MassUnit unit = plan_.units.mass;
    const QString accessible =
        unit == MassUnit::ounce ? tr("%1, ounces in one").arg(what) : tr("%1, grams in one").arg(what);
    row.mass = new NumberField(0, shownMass(limits::heaviest, unit), 2, this);
    nameField(row.mass, name + QStringLiteral("Amount"), accessible);
    row.mass->setOptional(true);
    row.mass->setPlaceholderText(unsaid);
    if (pack.amount > 0)
        row.mass->setValue(shownMass(pack.amount, unit));
    NumberField* field = row.mass;
    watch(accessible, field, [field] { return field->refusal(); });
    row.price = priceField(pack.price, name + QStringLiteral("Price"), tr("%1, price of one").arg(what));
    const int at = grid->rowCount();
    grid->addWidget(new QLabel(unit == MassUnit::ounce ? tr("%1, ounces", "a pack, and its unit").arg(what)
                                                       : tr("%1, grams", "a pack, and its unit").arg(what),
                               this),
                    at, 0);
    grid->addWidget(row.mass, at, 1);
    grid->addWidget(row.price, at, 2);
    return row;
}

BuyingDialog::PackRow BuyingDialog::addLength(const QString& what, const QString& name,
                                              std::optional<Length> length, double price,
                                              const QString& unsaid) {
    PackRow row;
    row.what = what;
    const QString accessible = tr("%1, length on one").arg(what);
    row.length = new LengthField(plan_.units.length, millimetres(limits::shortestSold),
                                 millimetres(limits::longestWire), this);
    nameField(row.length, name + QStringLiteral("Amount"), accessible);
    row.length->setOptional(true);
    row.length->setPlaceholderText(unsaid);
    if (length)
        row.length->setValue(*length);
    LengthField* field = row.length;
    watch(accessible, field, [field] { return field->refusal(); });
    row.price = priceField(price, name + QStringLiteral("Price"), tr("%1, price of one").arg(what));
    const int at = packs_->rowCount();
    packs_->addWidget(new QLabel(what, this), at, 0);
    packs_->addWidget(row.length, at, 1);
    packs_->addWidget(row.price, at, 2);
    return row;
}

void BuyingDialog::addLeafWires() {
    // Where all leaves are on one wire, the line above says it all.
    std::vector<LeafWirePack> wires = plan_.buying.leafWires;
    for (const Kind& kind : plan_.kinds)
        if (std::none_of(wires.begin(), wires.end(),
                         [&](const LeafWirePack& each) { return sameWire(each.wire, kind.wireDiameter); }))
            wires.push_back({kind.wireDiameter, {}, {}});
    if (wires.size() < 2 && plan_.buying.leafWires.empty())
        return;
    std::stable_sort(wires.begin(), wires.end(),
                     [](const LeafWirePack& a, const LeafWirePack& b) { return a.wire < b.wire; });
    for (const LeafWirePack& each : wires) {
        const QString name = QStringLiteral("buyingLeafWire%1").arg(leafWires_.size());
        leafWires_.emplace_back(each,
                                addLength(tr("a spool of leaf wire %1").arg(wireText(each.wire, {})), name,
                                          lengthOn(each.sold), each.sold.price, tr("as all leaf wire")));
    }
}

double BuyingDialog::priceOf(const NumberField* field) const {
    return field->value().value_or(0);
}

Pack BuyingDialog::massPack(const PackRow& row, const Pack& before) const {
    Pack pack = before;
    const auto amount = row.mass->value();
    // What nobody has touched stays as it was to the last bit.
    if (!amount)
        pack.amount = 0;
    else if (*amount != shownMass(before.amount, plan_.units.mass))
        pack.amount = storedMass(*amount, plan_.units.mass);
    pack.price = priceOf(row.price);
    return pack;
}

Pack BuyingDialog::lengthPack(const PackRow& row, const Pack& before) const {
    Pack pack = before;
    const auto length = row.length->value();
    if (!length || inMillimetres(*length) != before.amount)
        pack.amount = length ? inMillimetres(*length) : 0;
    pack.price = priceOf(row.price);
    return pack;
}

Buying BuyingDialog::buying() const {
    Buying buying = plan_.buying;
    if (const auto spare = spare_->value(); spare && *spare != 100 * plan_.buying.spare)
        buying.spare = *spare / 100;
    buying.beads = massPack(beads_, buying.beads);
    buying.clay = massPack(clay_, buying.clay);
    buying.cover = massPack(cover_, buying.cover);
    buying.leafWire = lengthPack(leafWire_, buying.leafWire);
    buying.leafWires.clear();
    for (const auto& [before, row] : leafWires_) {
        LeafWirePack now = before;
        now.sold = lengthPack(row, before.sold);
        // A line that says nothing is kept only where it stood so in the plan.
        const auto& stood = plan_.buying.leafWires;
        if (now.sold.amount > 0 || now.sold.price > 0 ||
            std::find(stood.begin(), stood.end(), now) != stood.end())
            buying.leafWires.push_back(std::move(now));
    }
    for (std::size_t i = 0; i < wraps_.size(); ++i) {
        const double price = priceOf(wraps_[i].price);
        if (i >= buying.wraps.size() && !(price > 0))
            continue;
        buying.wraps.resize(std::max(buying.wraps.size(), i + 1));
        buying.wraps[i].price = price;
    }
    buying.bars.clear();
    for (const BarRow& row : barRows_) {
        Bar bar = row.before;
        bar.length = row.length->value().value_or(bar.length);
        bar.price = priceOf(row.price);
        // What nobody has touched stays as it was to the last bit.
        if (const Length now = wireOf(row); !sameWire(now, bar.wire))
            bar.wire = now;
        buying.bars.push_back(std::move(bar));
    }
    return buying;
}

Binding BuyingDialog::binding() const {
    Binding binding = plan_.binding;
    for (std::size_t i = 0; i < wraps_.size(); ++i)
        binding.wraps[i].sold = wraps_[i].length->value();
    return binding;
}

QString BuyingDialog::problem() {
    std::vector<const PackRow*> rows{&beads_, &leafWire_, &clay_, &cover_};
    for (const auto& [before, row] : leafWires_)
        rows.push_back(&row);
    for (const std::vector<PackRow>* more : {&wraps_, &colours_})
        for (const PackRow& row : *more)
            rows.push_back(&row);
    for (const PackRow* row : rows) {
        const bool amount = row->mass ? row->mass->value().value_or(0) > 0 : row->length->value().has_value();
        if (priceOf(row->price) > 0 && !amount) {
            QWidget* field = row->mass ? static_cast<QWidget*>(row->mass) : row->length;
            field->setFocus(Qt::OtherFocusReason);
            return tr("%1: a price is given but not for how much, so nothing can be reckoned from it.")
                .arg(row->what);
        }
    }
    for (std::size_t i = 0; i < barRows_.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (barRows_[i].length->value() == barRows_[j].length->value() &&
                sameWire(wireOf(barRows_[i]), wireOf(barRows_[j]))) {
                barRows_[i].length->setFocus(Qt::OtherFocusReason);
                return tr("%1 stands there twice; give each length once, at its best price.")
                    .arg(barRows_[i].length->text());
            }
    return {};
}

std::optional<Edit> BuyingDialog::edit() const {
    Batch batch;
    if (Buying now = buying(); now != plan_.buying)
        batch.edits.push_back(Set<Buying>{std::move(now)});
    if (Binding now = binding(); now != plan_.binding)
        batch.edits.push_back(Set<Binding>{std::move(now)});
    for (std::size_t i = 0; i < colours_.size(); ++i) {
        Colour now = plan_.colours[i];
        now.sold = massPack(colours_[i], now.sold);
        if (now != plan_.colours[i])
            batch.edits.push_back(Replace<Colour>{std::move(now)});
    }
    if (batch.edits.empty())
        return std::nullopt;
    return batch.edits.size() == 1 ? batch.edits.front() : Edit(std::move(batch));
}

} // namespace stemwright

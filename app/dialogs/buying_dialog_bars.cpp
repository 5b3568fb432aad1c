// The straight lengths that stake and core wire is sold in: the lines of the dialog that come and go.
#include "app/dialogs/buying_dialog.h"
#include "app/look.h"
#include "app/wording.h"
#include "core/plan/limits.h"

#include <QComboBox>
#include <QGridLayout>
#include <QPushButton>

#include <algorithm>

namespace stemwright {

std::vector<Length> BuyingDialog::barWires() const {
    std::vector<Length> wires{plan_.pot.stake.diameter};
    for (const Stem& stem : plan_.stems)
        if (stem.core)
            wires.push_back(stem.core->diameter);
    for (const Bar& bar : plan_.buying.bars)
        if (bar.wire > Length{})
            wires.push_back(bar.wire);
    std::sort(wires.begin(), wires.end());
    wires.erase(std::unique(wires.begin(), wires.end(), sameWire), wires.end());
    return wires;
}

std::vector<QWidget*> BuyingDialog::BarRow::widgets() const {
    return {length, wire, price, remove};
}

void BuyingDialog::addBar(const Bar& bar) {
    if (barRows_.size() >= limits::bars)
        return;
    BarRow row{bar, new LengthField(plan_.units.length, millimetres(1), millimetres(limits::longest), this),
               new QComboBox(this), priceField(bar.price, QString(), QString()),
               new QPushButton(tr("Remove"), this)};
    row.wire->addItem(tr("of any"), 0.0);
    for (const Length wire : barWires()) {
        row.wire->addItem(wireText(wire, {}), inMillimetres(wire));
        if (bar.wire > Length{} && sameWire(bar.wire, wire))
            row.wire->setCurrentIndex(row.wire->count() - 1);
    }
    row.wire->setMinimumHeight(look::target);
    row.length->setValue(bar.length);
    row.length->setMinimumHeight(look::target);
    LengthField* field = row.length;
    watch(tr("A length of stake and core wire"), field, [field] { return field->refusal(); });
    row.remove->setAutoDefault(false);
    row.remove->setMinimumHeight(look::target);
    QPushButton* button = row.remove;
    connect(button, &QPushButton::clicked, this, [this, button] { removeBar(button); });
    const int at = bars_->rowCount();
    int column = 0;
    for (QWidget* each : row.widgets()) {
        bars_->addWidget(each, at, column++);
        each->show(); // at once, so that the hand can go there
    }
    barRows_.push_back(row);
    nameBars();
}

void BuyingDialog::removeBar(const QPushButton* button) {
    const auto row = std::find_if(barRows_.begin(), barRows_.end(),
                                  [&](const BarRow& each) { return each.remove == button; });
    if (row == barRows_.end())
        return;
    forget(row->length);
    forget(row->price);
    for (QWidget* gone : row->widgets()) {
        bars_->removeWidget(gone);
        gone->setObjectName({});
        gone->hide();
        gone->deleteLater();
    }
    barRows_.erase(row);
    nameBars();
    addBar_->setFocus(Qt::OtherFocusReason);
}

void BuyingDialog::nameBars() {
    for (std::size_t i = 0; i < barRows_.size(); ++i) {
        const QString name = QStringLiteral("buyingBar%1").arg(i);
        nameField(barRows_[i].length, name + QStringLiteral("Length"), tr("Length %1").arg(i + 1));
        nameField(barRows_[i].wire, name + QStringLiteral("Wire"), tr("Length %1, of which wire").arg(i + 1));
        nameField(barRows_[i].price, name + QStringLiteral("Price"), tr("Length %1, price of one").arg(i + 1));
        nameField(barRows_[i].remove, name + QStringLiteral("Remove"), tr("Remove length %1").arg(i + 1));
    }
    addBar_->setEnabled(barRows_.size() < limits::bars);
    // By keys as by eye: the packs, the lengths one after the other, the button that adds one, the colours.
    QWidget* before = cover_.price;
    for (const BarRow& row : barRows_)
        for (QWidget* each : row.widgets()) {
            setTabOrder(before, each);
            before = each;
        }
    setTabOrder(before, addBar_);
}

Length BuyingDialog::wireOf(const BarRow& row) {
    return millimetres(row.wire->currentData().toDouble());
}

} // namespace stemwright

#include "app/dialogs/heights_dialog.h"

#include "app/dialogs/kind_ranges.h"
#include "app/messages.h"
#include "core/figures/findings.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QVBoxLayout>

namespace stemwright {

HeightsDialog::HeightsDialog(const Plan& plan, QWidget* parent)
    : FormDialog(QStringLiteral("heights"), tr("Vary the heights"), tr("Show"), parent),
      plan_(plan),
      ranges_(new KindRanges(QStringLiteral("heights"), plan, this)),
      fill_(new QCheckBox(tr("from the tray, as evenly as can be"), this)),
      pairs_(new QCheckBox(tr("as few unmatched pairs as can be"), this)),
      outlook_(new FeasibleLabel(QStringLiteral("heightsState"), this)) {
    ranges_->setRanges(usualRanges(plan, static_cast<int>(plan.stems.size())));
    body()->addWidget(ranges_);
    QFormLayout* rows = addForm();
    difference_ = add(rows, new LengthField(plan.units.length, {}, millimetres(1000), this),
                      QStringLiteral("heightsDifference"), tr("No two closer than"));
    difference_->setOptional(true);
    difference_->setValue(nearTwin);
    addPlain(rows, fill_, QStringLiteral("heightsFill"), tr("Fill the places"));
    fill_->setChecked(true);
    addPlain(rows, pairs_, QStringLiteral("heightsPairs"), tr("Matched pairs"));
    pairs_->setChecked(true);
    body()->addWidget(outlook_);
    connect(ranges_, &KindRanges::edited, this, &HeightsDialog::refresh);
    connect(fill_, &QCheckBox::toggled, pairs_, &QWidget::setEnabled);
    setMinimumWidth(640);
    refresh();
}

HeightsOptions HeightsDialog::options() const {
    return {ranges_->ranges(), difference_->value()};
}

bool HeightsDialog::fills() const {
    return fill_->isChecked();
}

bool HeightsDialog::matchedPairs() const {
    return pairs_->isChecked();
}

QString HeightsDialog::problem() {
    const auto outlook = heightsOutlook(plan_, options());
    return outlook ? QString() : sentence(outlook.problem());
}

void HeightsDialog::refresh() {
    const auto outlook = heightsOutlook(plan_, options());
    ranges_->showOutlook(outlook ? outlook.value() : std::vector<KindOutlook>{});
    outlook_->say(outlook);
    say({});
}

} // namespace stemwright

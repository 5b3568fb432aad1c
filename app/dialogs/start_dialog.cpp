#include "app/dialogs/start_dialog.h"

#include "app/dialogs/kind_ranges.h"
#include "app/messages.h"
#include "app/wording.h"
#include "core/document/new_plan.h"
#include "core/figures/findings.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

StartDialog::StartDialog(const Plan& plan, QWidget* parent)
    : FormDialog(QStringLiteral("start"), tr("Start me off"), tr("Show"), parent),
      plan_(plan),
      stems_(new QSpinBox(this)),
      ranges_(new KindRanges(QStringLiteral("start"), plan, this)),
      pairs_(new QCheckBox(tr("as few unmatched pairs as can be"), this)),
      outlook_(new FeasibleLabel(QStringLiteral("startState"), this)) {
    const int now = static_cast<int>(plan.stems.size());
    QFormLayout* first = addForm();
    stems_->setRange(std::max(1, now), std::max(now, new_plan_limits::stems));
    stems_->setValue(now > 0 ? now : NewPlan{}.stems);
    addPlain(first, stems_, QStringLiteral("startStems"), tr("Stems"));
    QList<QPair<QString, int>> arrangements;
    for (const Arrangement each : {Arrangement::decussate, Arrangement::onePlane, Arrangement::alternate,
                                   Arrangement::whorled, Arrangement::spiral})
        arrangements += {arrangementText(each), static_cast<int>(each)};
    arrangement_ = choiceOf(arrangements, this);
    addPlain(first, arrangement_, QStringLiteral("startArrangement"), tr("New stems are"));
    choose(arrangement_, static_cast<int>(startForm(plan, {}).arrangement));
    // Stems of one pot are shared out by tiers, so new ones have to be as those that are there.
    arrangement_->setEnabled(now == 0);
    body()->addWidget(ranges_);
    QFormLayout* rows = addForm();
    difference_ = add(rows, new LengthField(plan.units.length, {}, millimetres(1000), this),
                      QStringLiteral("startDifference"), tr("No two closer than"));
    difference_->setOptional(true);
    difference_->setValue(nearTwin);
    addPlain(rows, pairs_, QStringLiteral("startPairs"), tr("Matched pairs"));
    pairs_->setChecked(true);
    body()->addWidget(outlook_);
    connect(stems_, &QSpinBox::valueChanged, this, &StartDialog::followStems);
    connect(arrangement_, &QComboBox::currentIndexChanged, this, &StartDialog::followStems);
    connect(ranges_, &KindRanges::edited, this, [this] {
        ownRanges_ = true;
        refresh();
    });
    setMinimumWidth(640);
    followStems();
}

StartOptions StartDialog::options() const {
    StartOptions options;
    options.stems = stems_->value();
    options.form = startForm(plan_, tr("Stem").toStdString());
    options.form.arrangement = static_cast<Arrangement>(arrangement_->currentData().toInt());
    options.heights = {ranges_->ranges(), difference_->value()};
    options.spread.matchedPairs = pairs_->isChecked();
    return options;
}

QString StartDialog::problem() {
    const StartOptions wanted = options();
    const auto outlook = heightsOutlook(withNewStems(plan_, wanted), wanted.heights);
    return outlook ? QString() : sentence(outlook.problem());
}

void StartDialog::followStems() {
    if (!ownRanges_)
        ranges_->setRanges(usualRanges(withNewStems(plan_, options()), stems_->value()));
    refresh();
}

void StartDialog::refresh() {
    const StartOptions wanted = options();
    const auto outlook = heightsOutlook(withNewStems(plan_, wanted), wanted.heights);
    ranges_->showOutlook(outlook ? outlook.value() : std::vector<KindOutlook>{});
    outlook_->say(outlook);
    say({});
}

} // namespace stemwright

#include "app/dialogs/kind_ranges.h"

#include "app/fields/form_dialog.h"
#include "app/look.h"
#include "app/messages.h"
#include "app/wording.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QSpinBox>
#include <QStyle>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int mostLeaves = 9999;
/// Stands for "as few as can be".
constexpr int anyRest = -1;

} // namespace

KindRanges::KindRanges(const QString& name, const Plan& plan, QWidget* parent) : QWidget(parent) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(3 * look::unit);
    grid->setVerticalSpacing(2 * look::unit);
    int column = 0;
    for (const QString& heading :
         {tr("Leaves a stem"), tr("at least"), tr("at most"), tr("rest in the tray")}) {
        auto* label = new QLabel(heading, this);
        label->setProperty("quiet", true);
        grid->addWidget(label, 0, column++);
    }
    grid->setColumnStretch(4, 1);
    const int step = plan.stems.empty() ? leavesPerTier(StemForm{}) : leavesPerTier(plan.stems.front());
    for (const Kind& kind : plan.kinds) {
        const int at = static_cast<int>(rows_.size()) + 1;
        const QString kindName = text(kind.name);
        const auto named = [&](QWidget* widget, const char* what, const QString& accessible) {
            nameField(widget, name + QLatin1String(what) + QString::number(at), accessible);
        };
        const auto spin = [&](const char* what, const QString& accessible, int least) {
            auto* box = new QSpinBox(this);
            box->setRange(least, mostLeaves);
            box->setSingleStep(step);
            named(box, what, accessible);
            connect(box, &QSpinBox::valueChanged, this, [this] {
                if (!setting_)
                    Q_EMIT edited();
            });
            return box;
        };
        Row row{kind.id,
                new QCheckBox(kindName, this),
                spin("Least", tr("%1 leaves a stem, at least").arg(kindName), 0),
                spin("Most", tr("%1 leaves a stem, at most").arg(kindName), 0),
                spin("Rest", tr("%1 leaves that rest in the tray").arg(kindName), anyRest),
                new QLabel(this)};
        row.rest->setSpecialValueText(tr("as few as can be"));
        row.rest->setSingleStep(1);
        row.rest->setMinimumWidth(140);
        row.rest->setValue(anyRest);
        named(row.varies, "Varies", tr("%1 varies").arg(kindName));
        row.varies->setToolTip(tr("A kind that is not chosen keeps the tiers it has."));
        row.outlook->setObjectName(name + QStringLiteral("Outlook") + QString::number(at));
        row.outlook->setProperty("quiet", true);
        row.outlook->setMinimumWidth(190);
        connect(row.varies, &QCheckBox::toggled, this, [this, row](bool on) {
            for (QWidget* field : {row.least, row.most, row.rest})
                field->setEnabled(on);
            if (!setting_)
                Q_EMIT edited();
        });
        grid->addWidget(row.varies, at, 0);
        grid->addWidget(row.least, at, 1);
        grid->addWidget(row.most, at, 2);
        grid->addWidget(row.rest, at, 3);
        grid->addWidget(row.outlook, at, 4);
        rows_.push_back(row);
    }
}

void KindRanges::setRanges(const std::vector<KindRange>& ranges) {
    setting_ = true;
    for (const Row& row : rows_) {
        const auto range = std::find_if(ranges.begin(), ranges.end(),
                                        [&](const KindRange& each) { return each.kind == row.kind; });
        const bool varies = range != ranges.end();
        // Told even where it was so before, so that the fields follow.
        row.varies->setChecked(!varies);
        row.varies->setChecked(varies);
        if (!varies)
            continue;
        row.least->setValue(range->least);
        row.most->setValue(range->most);
        row.rest->setValue(range->rest.value_or(anyRest));
    }
    setting_ = false;
}

std::vector<KindRange> KindRanges::ranges() const {
    std::vector<KindRange> ranges;
    for (const Row& row : rows_)
        if (row.varies->isChecked())
            ranges.push_back({row.kind, row.least->value(), row.most->value(),
                              row.rest->value() == anyRest ? std::nullopt : std::optional(row.rest->value())});
    return ranges;
}

void KindRanges::showOutlook(const std::vector<KindOutlook>& outlook) {
    for (const Row& row : rows_) {
        const auto known = std::find_if(outlook.begin(), outlook.end(),
                                        [&](const KindOutlook& each) { return each.kind == row.kind; });
        QString said;
        if (known != outlook.end())
            said = known->placed == known->leaves
                       ? tr("all %1 find a place").arg(countText(known->leaves))
                       : tr("%1 of %2 find a place").arg(countText(known->placed), countText(known->leaves));
        row.outlook->setText(said);
    }
}

FeasibleLabel::FeasibleLabel(const QString& name, QWidget* parent) : QLabel(parent) {
    setObjectName(name);
    setWordWrap(true);
    setMinimumHeight(2 * look::target);
}

void FeasibleLabel::say(const Result<std::vector<KindOutlook>>& outlook) {
    setText(outlook ? tr("These ranges can be met.") : sentence(outlook.problem()));
    setProperty("refusal", !outlook.ok());
    style()->unpolish(this);
    style()->polish(this);
}

} // namespace stemwright

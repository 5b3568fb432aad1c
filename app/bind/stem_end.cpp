#include "app/bind/stem_end.h"

#include "app/bind/bench_label.h"
#include "app/fields/fields.h"
#include "app/look.h"
#include "app/session.h"
#include "app/sheet_words.h"
#include "app/wording.h"
#include "core/document/bench.h"
#include "core/plan/limits.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

namespace {
constexpr int mostStemsShown = 8;
} // namespace

StemEnd::StemEnd(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    setObjectName(QStringLiteral("stemEnd"));
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(2 * look::unit);
    heading_ = benchLabel(this, "measureHeading", 1.35);
    heading_->setText(tr("How much did it really take? What was cut, less what was left over in the end. Leave "
                         "empty what you did not measure."));
    rows->addWidget(heading_);
    fields_ = new QWidget(this);
    rows->addWidget(fields_);
    change_ = benchLabel(this, "measureChange", 1.2);
    take_ = new QPushButton(tr("&Take it as my measure"), this);
    take_->setObjectName(QStringLiteral("takeMeasure"));
    take_->setProperty("tall", true);
    take_->setFont(benchFont(1.35, true));
    take_->setEnabled(false);
    rows->addWidget(take_);
    // Below what is pressed, since it is as long as there are stems.
    rows->addWidget(change_);
    connect(take_, &QPushButton::clicked, this, &StemEnd::take);
}

void StemEnd::setStem(StemId stem) {
    stem_ = stem;
    build();
}

void StemEnd::build() {
    // A field that is typed in is only ever rebuilt for another stem.
    delete fields_->layout();
    qDeleteAll(fields_->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly));
    rows_.clear();
    auto* grid = new QGridLayout(fields_);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(2 * look::unit);
    const Plan& plan = session_.plan();
    const Stem* stem = stemwright::find(plan, stem_);
    if (!stem)
        return;
    const auto place = static_cast<std::size_t>(stem - plan.stems.data());
    const std::vector<WrapFigures>& wraps = session_.figures().stems[place].wraps;
    const TranslatedWords words(plan.units);
    for (std::size_t w = 0; w < wraps.size(); ++w) {
        Row row;
        row.what = benchLabel(fields_, "measuredOf", 1.35);
        const Length took = tookOf(*stem, w);
        const QString wound = text(words.wrap(plan.binding.wraps[w]));
        // Once it is measured, the plan's figures rest on the measure and say nothing of what was cut.
        row.what->setText(took > Length{} ? tr("%1: really used").arg(wound)
                                          : tr("%1: cut %2, planned to use %3. Really used")
                                                .arg(wound, cutText(wraps[w].toCut, plan.units),
                                                     cutText(wraps[w].used, plan.units)));
        row.used = new LengthField(plan.units.length, Length{}, millimetres(limits::longestWire), fields_);
        row.used->setObjectName(QStringLiteral("measured%1").arg(w));
        row.used->setAccessibleName(tr("Really used of %1").arg(text(words.wrap(plan.binding.wraps[w]))));
        row.used->setOptional(true);
        row.used->setFont(benchFont(1.35));
        row.used->setFixedWidth(130);
        row.used->setMinimumHeight(40);
        if (took > Length{})
            row.used->setValue(took);
        else
            row.used->clearValue();
        row.said = benchLabel(fields_, "measuredSaid", 1.2);
        row.said->setProperty("quiet", true);
        const int line = static_cast<int>(w);
        grid->addWidget(row.what, 2 * line, 0);
        grid->addWidget(row.used, 2 * line, 1);
        grid->addWidget(row.said, 2 * line + 1, 0, 1, 2);
        connect(row.used, &QLineEdit::textChanged, this, &StemEnd::preview);
        // Later: the field that Enter was pressed in is made anew by what is taken.
        connect(
            row.used, &QLineEdit::returnPressed, this,
            [this] {
                if (take_->isEnabled())
                    take();
            },
            Qt::QueuedConnection);
        rows_.push_back(row);
    }
    grid->setColumnStretch(0, 1);
    setVisible(!rows_.empty());
    preview();
}

std::vector<Length> StemEnd::used() const {
    std::vector<Length> out;
    for (const Row& row : rows_)
        out.push_back(row.used->value().value_or(Length{}));
    return out;
}

void StemEnd::preview() {
    const Plan& plan = session_.plan();
    const std::vector<Length> took = used();
    const bool any = std::any_of(took.begin(), took.end(), [](Length used) { return used > Length{}; });
    take_->setEnabled(false);
    change_->clear();
    for (std::size_t w = 0; w < rows_.size(); ++w) {
        const QString refusal =
            rows_[w].used->text().trimmed().isEmpty() ? QString() : rows_[w].used->refusal();
        rows_[w].said->setText(refusal);
        if (!refusal.isEmpty())
            return;
    }
    if (!any)
        return;
    const MeasureTaken calibration = calibrated(plan, stem_, took);
    for (const std::size_t w : calibration.unfitted)
        if (w < rows_.size())
            rows_[w].said->setText(
                tr("No overlap of the turns explains %1: measure again. The plan keeps its own figure.")
                    .arg(cutText(took[w], plan.units)));
    Plan after = plan;
    if (!apply(after, calibration.edit))
        return;
    const Figures then = figures(after);
    QStringList lines;
    int more = 0;
    for (std::size_t i = 0; i < plan.stems.size(); ++i) {
        const Stem& stem = plan.stems[i];
        if (stem.id == stem_)
            continue;
        QStringList parts;
        for (std::size_t w = 0; w < then.stems[i].wraps.size(); ++w) {
            const QString before = cutText(session_.figures().stems[i].wraps[w].toCut, plan.units);
            const QString now = cutText(then.stems[i].wraps[w].toCut, plan.units);
            if (before != now)
                parts << tr("%1 → %2").arg(before, now);
        }
        if (parts.isEmpty())
            continue;
        if (lines.size() < mostStemsShown)
            lines << tr("%1: cut %2").arg(text(stem.name), parts.join(QStringLiteral(", ")));
        else
            ++more;
    }
    if (more > 0)
        lines << tr("… and %1 more").arg(more);
    change_->setText(lines.isEmpty() ? tr("The other stems’ lengths stay as they are.")
                                     : lines.join(QLatin1Char('\n')));
    take_->setEnabled(true);
}

void StemEnd::take() {
    const MeasureTaken calibration = calibrated(session_.plan(), stem_, used());
    if (session_.make(calibration.edit)) {
        take_->setEnabled(false);
        change_->setText(tr("Taken: the lengths of the other stems rest on your own measure now."));
    }
    Q_EMIT done();
}

} // namespace stemwright

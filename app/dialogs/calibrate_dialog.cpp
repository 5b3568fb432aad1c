#include "app/dialogs/calibrate_dialog.h"

#include "app/look.h"
#include "app/wording.h"
#include "core/document/bench.h"
#include "core/figures/figures.h"
#include "core/plan/edit.h"
#include "core/plan/limits.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QScopedValueRollback>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

enum Column { stemName, reckoned, took, after, columns };

/// A measured stem further from its figure than this is worth a word: own choice, no source.
constexpr double doubtful = 0.1;

QString tr(const char* source) {
    return QCoreApplication::translate("CalibrateDialog", source);
}

QString percent(double part) {
    return tr("%1 %").arg(QLocale().toString(100 * part, 'f', 1));
}

Plan withOverlap(const Plan& plan, std::size_t wrap, double overlap) {
    Plan changed = plan;
    changed.binding.wraps[wrap].overlap = overlap;
    return changed;
}

std::vector<Length> usedBy(const Plan& plan, std::size_t wrap) {
    std::vector<Length> used;
    for (const StemFigures& stem : figures(plan).stems)
        used.push_back(wrap < stem.wraps.size() ? stem.wraps[wrap].used : Length{});
    return used;
}

Length sumOf(const Plan& plan, const std::vector<Length>& used, const std::vector<MeasuredStem>& measured) {
    Length sum;
    for (const MeasuredStem& each : measured)
        for (std::size_t i = 0; i < plan.stems.size(); ++i)
            if (plan.stems[i].id == each.stem)
                sum += used[i];
    return sum;
}

} // namespace

Calibration calibration(const Plan& plan, std::size_t wrap, const std::vector<MeasuredStem>& measured) {
    Calibration out;
    out.after = usedBy(plan, wrap);
    if (measured.empty() || wrap >= plan.binding.wraps.size())
        return out;
    out.overlap = fittedOverlap(plan, wrap, measured);
    if (!out.overlap) {
        Length wanted;
        for (const MeasuredStem& each : measured)
            wanted += each.used;
        const Length least = sumOf(plan, usedBy(withOverlap(plan, wrap, 0), wrap), measured);
        const Length most = sumOf(plan, usedBy(withOverlap(plan, wrap, limits::mostOverlap), wrap), measured);
        if (!(most > Length{}))
            out.why = tr("Nothing is bound on this stem in the plan, so "
                         "there is nothing to compare with.");
        else if (wanted < least)
            out.why = tr("%1 is less than turns that lie edge to edge take, which is %2: "
                         "either the turns lie apart, or another layer was measured.")
                          .arg(cutText(wanted, plan.units), cutText(least, plan.units));
        else
            out.why =
                tr("%1 is more than turns that overlap by %2 take, which is %3: was "
                   "what is left over taken off, and is the unit the right one?")
                    .arg(cutText(wanted, plan.units), percent(limits::mostOverlap), cutText(most, plan.units));
        return out;
    }
    out.after = usedBy(withOverlap(plan, wrap, *out.overlap), wrap);
    double worst = doubtful;
    for (const MeasuredStem& each : measured)
        for (std::size_t i = 0; i < plan.stems.size(); ++i) {
            if (plan.stems[i].id != each.stem || !(out.after[i] > Length{}))
                continue;
            const double off = each.used / out.after[i] - 1;
            if (measured.size() > 1 && std::abs(off) > worst) {
                worst = std::abs(off);
                out.doubt = (off > 0 ? tr("%1 took %2 more than goes with the "
                                          "others: look at its measure again.")
                                     : tr("%1 took %2 less than goes with the "
                                          "others: look at its measure again."))
                                .arg(nameText(plan, each.stem), percent(std::abs(off)));
            }
        }
    return out;
}

Edit calibrationEdit(const Plan& plan, std::size_t wrap, double overlap,
                     const std::vector<MeasuredStem>& measured) {
    Batch batch;
    for (const Stem& stem : plan.stems) {
        StemForm form = stem;
        const auto found = std::find_if(measured.begin(), measured.end(),
                                        [&](const MeasuredStem& each) { return each.stem == stem.id; });
        setTook(form, wrap, found != measured.end() ? found->used : Length{});
        if (!(form == static_cast<const StemForm&>(stem)))
            batch.edits.push_back(ReformStem{stem.id, std::move(form)});
    }
    Binding binding = plan.binding;
    binding.wraps[wrap].overlap = overlap;
    binding.wraps[wrap].overlapMeasured = true;
    batch.edits.push_back(Set<Binding>{std::move(binding)});
    return batch.edits.size() == 1 ? batch.edits.front() : Edit(std::move(batch));
}

CalibrateDialog::CalibrateDialog(const Plan& plan, QWidget* parent)
    : FormDialog(QStringLiteral("calibrateDialog"), tr("Calibrate the binding"), tr("Take this overlap"),
                 parent),
      plan_(plan),
      wrap_(choiceOf({}, this)),
      table_(new QTableWidget(this)),
      outcome_(new QLabel(this)) {
    auto* how =
        new QLabel(tr("Write beside a stem that is bound what its binding really took: what you cut, less "
                      "what was left over. The figures of all other stems follow."),
                   this);
    how->setWordWrap(true);
    how->setProperty("quiet", true);
    body()->addWidget(how);
    QFormLayout* rows = addForm();
    for (std::size_t i = 0; i < plan.binding.wraps.size(); ++i)
        wrap_->addItem(tr("%1. %2", "a layer's number and what it is")
                           .arg(i + 1)
                           .arg(wrapText(plan.binding.wraps[i].with)));
    addPlain(rows, wrap_, QStringLiteral("calibrateWrap"), tr("Layer"));
    rows->setRowVisible(wrap_, plan.binding.wraps.size() > 1);

    nameField(table_, QStringLiteral("calibrateTable"), tr("Stems with what they take and took"));
    table_->setColumnCount(columns);
    table_->setHorizontalHeaderLabels({tr("Stem"), tr("Reckoned now"), tr("Really took"), tr("Reckoned then")});
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    table_->horizontalHeader()->setMinimumHeight(look::target);
    table_->verticalHeader()->setVisible(false);
    table_->verticalHeader()->setDefaultSectionSize(look::target + look::unit);
    table_->setRowCount(static_cast<int>(plan.stems.size()));
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                            QAbstractItemView::AnyKeyPressed);
    table_->setTabKeyNavigation(false);
    body()->addWidget(table_, 1);
    outcome_->setObjectName(QStringLiteral("calibrateOutcome"));
    outcome_->setWordWrap(true);
    outcome_->setMinimumHeight(2 * look::target);
    body()->addWidget(outcome_);

    typed_.assign(plan.binding.wraps.size(), std::vector<QString>(plan.stems.size()));
    // What she measured before stands there already.
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        for (const Took& took : plan.stems[i].took)
            if (took.wrap >= 0 && static_cast<std::size_t>(took.wrap) < typed_.size())
                typed_[static_cast<std::size_t>(took.wrap)][i] = entryText(took.used, plan.units.length);
    fill();
    connect(wrap_, &QComboBox::currentIndexChanged, this, &CalibrateDialog::fill);
    connect(table_, &QTableWidget::itemChanged, this, [this](const QTableWidgetItem* item) {
        if (filling_ || item->column() != took)
            return;
        keep();
        refresh();
    });
    resize(600, 570);
}

std::size_t CalibrateDialog::wrap() const {
    return static_cast<std::size_t>(std::max(0, wrap_->currentIndex()));
}

void CalibrateDialog::fill() {
    const QScopedValueRollback quiet(filling_, true);
    now_ = usedBy(plan_, wrap());
    for (int row = 0; row < table_->rowCount(); ++row) {
        const auto at = static_cast<std::size_t>(row);
        const auto put = [&](int column, const QString& words) {
            auto* item = new QTableWidgetItem(words);
            item->setFlags(column == took ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable
                                          : Qt::ItemIsEnabled | Qt::ItemIsSelectable);
            if (column != stemName)
                item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            table_->setItem(row, column, item);
        };
        const Stem& stem = plan_.stems[at];
        const bool bound = !stem.tiers.empty() && std::all_of(stem.tiers.begin(), stem.tiers.end(),
                                                              [](const Tier& t) { return t.progress.bound; });
        put(stemName, bound ? tr("%1, bound").arg(nameText(plan_, stem.id)) : nameText(plan_, stem.id));
        put(reckoned, cutText(now_[at], plan_.units));
        put(took, wrap() < typed_.size() ? typed_[wrap()][at] : QString());
        put(after, QString());
    }
    if (table_->rowCount() > 0)
        table_->setCurrentCell(std::max(0, table_->currentRow()), took);
    refresh();
}

void CalibrateDialog::keep() {
    if (wrap() >= typed_.size())
        return;
    for (int row = 0; row < table_->rowCount(); ++row)
        typed_[wrap()][static_cast<std::size_t>(row)] = table_->item(row, took)->text();
}

std::vector<MeasuredStem> CalibrateDialog::measured(QString* why) const {
    std::vector<MeasuredStem> all;
    if (wrap() >= typed_.size())
        return all;
    for (std::size_t i = 0; i < plan_.stems.size(); ++i) {
        const QString& words = typed_[wrap()][i];
        if (words.trimmed().isEmpty())
            continue;
        const Entry<Length> read =
            readLength(words, plan_.units.length, millimetres(1), millimetres(limits::longestWire));
        if (read.value)
            all.push_back({plan_.stems[i].id, *read.value});
        else if (why && why->isEmpty())
            *why = tr("%1: %2", "a stem and what is wrong with its measure")
                       .arg(nameText(plan_, plan_.stems[i].id), read.refusal);
    }
    return all;
}

void CalibrateDialog::refresh() {
    const QScopedValueRollback quiet(filling_, true);
    QString unread;
    const std::vector<MeasuredStem> all = measured(&unread);
    const Calibration fit = calibration(plan_, wrap(), all);
    for (int row = 0; row < table_->rowCount(); ++row)
        table_->item(row, after)
            ->setText(fit.overlap ? cutText(fit.after[static_cast<std::size_t>(row)], plan_.units) : QString());
    FormDialog::say(!unread.isEmpty() ? unread : fit.why);
    if (plan_.binding.wraps.empty()) {
        outcome_->setText(tr("This plan has no binding yet; set it first."));
        return;
    }
    const QString before = percent(plan_.binding.wraps[wrap()].overlap);
    if (!fit.overlap) {
        outcome_->setText(all.empty() ? tr("Overlap of the turns: %1.").arg(before) : QString());
        return;
    }
    Length sumNow, sumThen;
    for (std::size_t i = 0; i < now_.size(); ++i) {
        sumNow += now_[i];
        sumThen += fit.after[i];
    }
    QString words =
        tr("Overlap of the turns: %1 → %2. All stems: %3 → %4.")
            .arg(before, percent(*fit.overlap), cutText(sumNow, plan_.units), cutText(sumThen, plan_.units));
    if (!fit.doubt.isEmpty())
        words += QLatin1Char(' ') + fit.doubt;
    outcome_->setText(words);
}

void CalibrateDialog::setMeasured(std::size_t wrap, StemId stem, Length used) {
    if (wrap >= typed_.size())
        return;
    for (std::size_t i = 0; i < plan_.stems.size(); ++i)
        if (plan_.stems[i].id == stem) {
            typed_[wrap][i] = entryText(used, plan_.units.length);
            wrap_->setCurrentIndex(static_cast<int>(wrap));
            fill();
            table_->setCurrentCell(static_cast<int>(i), took);
        }
}

QString CalibrateDialog::problem() {
    QString why;
    const std::vector<MeasuredStem> all = measured(&why);
    if (!why.isEmpty())
        return why;
    if (all.empty())
        return tr("Write down what one stem really took first.");
    return calibration(plan_, wrap(), all).why;
}

std::optional<Edit> CalibrateDialog::edit() const {
    const std::vector<MeasuredStem> all = measured();
    const Calibration fit = calibration(plan_, wrap(), all);
    if (!fit.overlap)
        return std::nullopt;
    return calibrationEdit(plan_, wrap(), *fit.overlap, all);
}

} // namespace stemwright

#include "app/panels/supplies_panel.h"

#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <cmath>
#include <numeric>

namespace stemwright {

namespace {

struct Row {
    QString what;
    QString amount;
    QString explanation;
};

QString wrapName(const Wrap& wrap) {
    switch (wrap.with) {
    case WrapWith::wire:
        return SuppliesPanel::tr("Binding wire %1").arg(wireText(wrap.width, wrap.gauge));
    case WrapWith::floss:
        return SuppliesPanel::tr("Floss, %n strand(s)", nullptr, wrap.strands);
    case WrapWith::tape:
        return SuppliesPanel::tr("Tape");
    }
    return {};
}

QString wrapAmount(const Wrap& wrap, Length length, const Units& units) {
    const QString amount = cutText(length, units);
    if (!wrap.sold || inMillimetres(*wrap.sold) <= 0)
        return amount;
    const int pieces = static_cast<int>(std::ceil(length / *wrap.sold));
    switch (wrap.with) {
    case WrapWith::wire:
        return SuppliesPanel::tr("%1 · %2").arg(amount, SuppliesPanel::tr("%n spool(s)", nullptr, pieces));
    case WrapWith::floss:
        return SuppliesPanel::tr("%1 · %2").arg(amount, SuppliesPanel::tr("%n skein(s)", nullptr, pieces));
    case WrapWith::tape:
        return SuppliesPanel::tr("%1 · %2").arg(amount, SuppliesPanel::tr("%n roll(s)", nullptr, pieces));
    }
    return amount;
}

std::vector<Row> rowsOf(const Plan& plan, const Figures& figures) {
    const PotFigures& pot = figures.pot;
    std::vector<Row> rows;
    for (std::size_t i = 0; i < pot.wraps.size(); ++i)
        rows.push_back(
            {wrapName(plan.binding.wraps[i]), wrapAmount(plan.binding.wraps[i], pot.wraps[i].toCut, plan.units),
             SuppliesPanel::tr("What to cut for all stems: the turns, the tail laid in, the finish and what "
                               "the hand must hold.")});
    rows.push_back({SuppliesPanel::tr("Leaf wire"), cutText(pot.allLeafWire, plan.units),
                    SuppliesPanel::tr("For every leaf in stock, made and to make: %1 of it in leaves on stems.")
                        .arg(cutText(pot.leafWire, plan.units))});
    rows.push_back({SuppliesPanel::tr("Leaves to make"), countText(pot.toMake),
                    SuppliesPanel::tr("Stock that is not made yet.")});
    rows.push_back({SuppliesPanel::tr("Seed beads"),
                    countText(std::accumulate(pot.allBeads.begin(), pot.allBeads.end(), std::int64_t{0})),
                    SuppliesPanel::tr("In every leaf in stock, made and to make.")});
    for (std::size_t i = 0; i < plan.colours.size(); ++i)
        rows.push_back({QStringLiteral("    ") + text(plan.colours[i].name), countText(pot.allBeads[i]), {}});
    return rows;
}

} // namespace

SuppliesPanel::SuppliesPanel(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), rows_(new QGridLayout) {
    setObjectName(QStringLiteral("supplies"));
    setAccessibleName(tr("Supplies"));
    auto* heading = new QLabel(tr("Supplies"), this);
    heading->setFont(look::font(look::Type::heading));
    auto* note = new QLabel(tr("for the whole plan"), this);
    note->setProperty("quiet", true);
    auto* top = new QHBoxLayout;
    top->addWidget(heading);
    top->addStretch();
    top->addWidget(note);
    rows_->setColumnStretch(0, 1);
    rows_->setHorizontalSpacing(look::unit * 2);
    rows_->setVerticalSpacing(3);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(look::unit);
    layout->addLayout(top);
    layout->addLayout(rows_);
    layout->addStretch();
    connect(&session_, &Session::changed, this, &SuppliesPanel::refresh);
    refresh();
}

void SuppliesPanel::refresh() {
    const std::vector<Row> rows = rowsOf(session_.plan(), session_.figures());
    const auto labelAt = [&](int row, int column) {
        QLayoutItem* item = rows_->itemAtPosition(row, column);
        auto* label = item ? qobject_cast<QLabel*>(item->widget()) : nullptr;
        if (!label) {
            label = new QLabel(this);
            // The amounts are never cut; long names wrap.
            label->setWordWrap(column == 0);
            rows_->addWidget(label, row, column, column == 1 ? Qt::AlignRight : Qt::Alignment());
            if (column == 1)
                label->setFont(look::font(look::Type::strong));
        }
        return label;
    };
    int r = 0;
    for (const Row& row : rows) {
        QLabel* what = labelAt(r, 0);
        QLabel* amount = labelAt(r, 1);
        what->setText(row.what);
        amount->setText(row.amount);
        for (QLabel* label : {what, amount}) {
            label->setToolTip(row.explanation);
            label->show();
        }
        ++r;
    }
    for (; rows_->itemAtPosition(r, 0); ++r)
        for (int column = 0; column < 2; ++column)
            labelAt(r, column)->hide();
}

} // namespace stemwright

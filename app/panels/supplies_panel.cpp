#include "app/panels/supplies_panel.h"

#include "app/ask.h"
#include "app/explanation_dialog.h"
#include "app/file_store.h"
#include "app/look.h"
#include "app/session.h"
#include "app/supplies_csv.h"
#include "app/supply_lines.h"

#include <QContextMenuEvent>
#include <QFileInfo>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>
#include <QtConcurrent>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int minimumRoom = 220; ///< px of the panel before it has been laid out

/// The parts of "1,830 · 17 g · 2 packets · 5.00" in as many lines as they need to be no wider than `room`, the
/// last line the fullest: so much as it is sold, and its price, belong together.
QString inLines(const QString& amount, const QFontMetrics& metrics, int room) {
    static const QString between = QStringLiteral(" · ");
    QString lines, line;
    const QStringList parts = amount.split(between);
    for (auto part = parts.rbegin(); part != parts.rend(); ++part) {
        const QString longer = line.isEmpty() ? *part : *part + between + line;
        if (!line.isEmpty() && metrics.horizontalAdvance(longer) > room) {
            lines.prepend(QLatin1Char('\n') + line);
            line = *part;
        } else {
            line = longer;
        }
    }
    return line + lines;
}

} // namespace

SuppliesPanel::SuppliesPanel(Session& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      rows_(new QGridLayout),
      timer_(new QTimer(this)),
      watcher_(new QFutureWatcher<std::vector<SupplyLine>>(this)) {
    setObjectName(QStringLiteral("supplies"));
    setAccessibleName(tr("Supplies"));
    auto* heading = new QLabel(tr("Supplies"), this);
    heading->setFont(look::font(look::Type::heading));
    heading->setToolTip(tr("For the whole plan. A right click on a line asks how it is reckoned."));
    auto* top = new QHBoxLayout;
    top->addWidget(heading);
    top->addStretch();
    auto* save = new QPushButton(tr("Save as &CSV…"), this);
    save->setObjectName(QStringLiteral("saveSupplies"));
    save->setToolTip(tr("All of the list as a table for a spreadsheet, in the units that are shown."));
    save->setMinimumHeight(look::target + 4);
    connect(save, &QPushButton::clicked, this, &SuppliesPanel::exportCsv);
    top->addWidget(save);
    rows_->setColumnStretch(0, 1);
    rows_->setHorizontalSpacing(look::unit * 2);
    rows_->setVerticalSpacing(3);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(look::unit);
    layout->addLayout(top);
    layout->addLayout(rows_);
    layout->addStretch();
    // A proved cutting plan can take a while on a large board: it is worked out beside the window, for the last
    // of several edits and not for each.
    timer_->setSingleShot(true);
    timer_->setInterval(120);
    connect(timer_, &QTimer::timeout, this, &SuppliesPanel::reckon);
    connect(&session_, &Session::changed, timer_, qOverload<>(&QTimer::start));
    connect(watcher_, &QFutureWatcherBase::finished, this, [this] {
        if (!watcher_->isCanceled())
            list(watcher_->result());
    });
    reckon();
}

SuppliesPanel::~SuppliesPanel() {
    watcher_->waitForFinished();
}

void SuppliesPanel::reckon() {
    if (watcher_->isRunning()) {
        timer_->start();
        return;
    }
    watcher_->setFuture(QtConcurrent::run(
        [plan = session_.plan(), all = session_.figures()] { return supplyLines(plan, supplies(plan, all)); }));
}

void SuppliesPanel::exportCsv() {
    const QString beside = session_.path().isEmpty()
                               ? tr("supplies.csv")
                               : QFileInfo(session_.path()).path() + QLatin1Char('/') +
                                     QFileInfo(session_.path()).completeBaseName() + QStringLiteral(".csv");
    const QString path = ask::fileToSave(this, beside, tr("Tables (*.csv)"), QStringLiteral("csv"));
    if (path.isEmpty())
        return;
    const std::string table = suppliesCsv(session_.plan(), supplies(session_.plan(), session_.figures()));
    QString why;
    if (!writeBytes(QByteArray::fromStdString(table), path, &why))
        ask::tell(this, why);
}

void SuppliesPanel::contextMenuEvent(QContextMenuEvent* event) {
    for (int row = 0; row < static_cast<int>(refs_.size()); ++row)
        if (rows_->cellRect(row, 0).united(rows_->cellRect(row, 1)).contains(event->pos())) {
            QMenu menu;
            const QAction* how = menu.addAction(tr("How is this reckoned?"));
            if (menu.exec(event->globalPos()) == how)
                ExplanationDialog(session_, refs_[static_cast<std::size_t>(row)], this).exec();
            return;
        }
}

int SuppliesPanel::amountRoom() const {
    return std::max(width(), minimumRoom) * 11 / 20;
}

void SuppliesPanel::list(const std::vector<SupplyLine>& rows) {
    const auto labelAt = [&](int row, int column) {
        QLayoutItem* item = rows_->itemAtPosition(row, column);
        auto* label = item ? qobject_cast<QLabel*>(item->widget()) : nullptr;
        if (!label) {
            label = new QLabel(this);
            // The amounts are never cut; long names wrap.
            label->setWordWrap(column == 0);
            rows_->addWidget(label, row, column, column == 1 ? Qt::AlignRight | Qt::AlignTop : Qt::AlignTop);
            if (column == 1) {
                label->setFont(look::font(look::Type::strong));
                label->setAlignment(Qt::AlignRight);
            }
        }
        return label;
    };
    int r = 0;
    refs_.clear();
    for (const SupplyLine& row : rows) {
        QLabel* what = labelAt(r, 0);
        QLabel* amount = labelAt(r, 1);
        what->setText(row.part ? QStringLiteral("    ") + row.what : row.what);
        amount->setText(inLines(row.amount, amount->fontMetrics(), amountRoom()));
        for (QLabel* label : {what, amount}) {
            label->setToolTip(row.explanation);
            label->setVisible(true);
        }
        refs_.push_back(row.ref);
        ++r;
    }
    for (; rows_->itemAtPosition(r, 0); ++r)
        for (int column = 0; column < 2; ++column)
            labelAt(r, column)->hide();
}

} // namespace stemwright

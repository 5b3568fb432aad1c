#include "app/explanation_dialog.h"

#include "app/explanations.h"
#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QPushButton>
#include <QSplitter>
#include <QTextBrowser>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace stemwright {

namespace {
constexpr int refRole = Qt::UserRole;
}

ExplanationDialog::ExplanationDialog(const Session& session, FigureRef first, QWidget* parent)
    : QDialog(parent),
      session_(session),
      needs_(supplies(session.plan(), session.figures())),
      tree_(new QTreeWidget(this)),
      text_(new QTextBrowser(this)) {
    setObjectName(QStringLiteral("explanationDialog"));
    setWindowTitle(tr("How is this reckoned?"));
    resize(980, 640);
    tree_->setObjectName(QStringLiteral("explainedFigures"));
    tree_->setAccessibleName(tr("Figures"));
    tree_->setColumnCount(2);
    tree_->setHeaderLabels({tr("Figure"), tr("Value")});
    // The names in full; what is long among the values stands in full beside the list.
    tree_->header()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    tree_->header()->setSectionResizeMode(1, QHeaderView::Stretch);
    text_->setObjectName(QStringLiteral("explanation"));
    text_->setAccessibleName(tr("How it is reckoned"));
    connect(tree_, &QTreeWidget::currentItemChanged, this, [this](QTreeWidgetItem* now) { show(now); });

    const Plan& plan = session_.plan();
    for (std::size_t stem = 0; stem < plan.stems.size(); ++stem)
        list(text(plan.stems[stem].name), figuresOfStem(session_.figures(), stem), first);
    list(tr("The pot"), figuresOfPot(plan, session_.figures()), first);
    list(tr("Supplies"), figuresOfSupplies(needs_), first);
    if (!tree_->currentItem() && tree_->topLevelItemCount() > 0)
        tree_->setCurrentItem(tree_->topLevelItem(0)->child(0));

    auto* split = new QSplitter(this);
    split->addWidget(tree_);
    split->addWidget(text_);
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 1);
    split->setChildrenCollapsible(false);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    for (QAbstractButton* button : buttons->buttons())
        button->setMinimumHeight(look::target + 4);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(split, 1);
    layout->addWidget(buttons);
    tree_->setFocus();
}

void ExplanationDialog::list(const QString& heading, const std::vector<FigureRef>& refs, FigureRef first) {
    const Plan& plan = session_.plan();
    auto* top = new QTreeWidgetItem(tree_, {heading});
    bool holdsFirst = false;
    for (const FigureRef ref : refs) {
        auto* item = new QTreeWidgetItem(top, {figureTitle(plan, session_.figures(), needs_, ref),
                                               figureValue(plan, session_.figures(), needs_, ref)});
        item->setTextAlignment(1, Qt::AlignRight | Qt::AlignVCenter);
        item->setData(0, refRole, static_cast<int>(refs_.size()));
        refs_.push_back(ref);
        if (ref == first) {
            tree_->setCurrentItem(item);
            holdsFirst = true;
        }
    }
    top->setExpanded(holdsFirst);
}

void ExplanationDialog::show(const QTreeWidgetItem* item) {
    const QVariant number = item ? item->data(0, refRole) : QVariant();
    if (!number.isValid()) {
        text_->clear();
        return;
    }
    const FigureRef ref = refs_[static_cast<std::size_t>(number.toInt())];
    const Plan& plan = session_.plan();
    QString html = explanationHtml(explain(plan, session_.figures(), needs_, ref), item->text(0), item->text(1),
                                   plan.units);
    if (ref.figure == FigureName::hold)
        html +=
            QStringLiteral("<p>%1</p>").arg(holdText(session_.figures().stems[ref.stem].hold).toHtmlEscaped());
    text_->setHtml(html);
}

} // namespace stemwright

#include "app/leaves/panel.h"

#include "app/leaves/grid_view.h"
#include "app/leaves/table_model.h"
#include "app/look.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

Panel::Panel(const QString& name, const QString& title, QWidget* parent)
    : QFrame(parent),
      title_(new QLabel(title, this)),
      note_(new QLabel(this)),
      rows_(new QVBoxLayout(this)),
      head_(new QHBoxLayout) {
    setObjectName(name);
    title_->setObjectName(name + QStringLiteral("Title"));
    title_->setFont(look::font(look::Type::heading));
    note_->setObjectName(name + QStringLiteral("Note"));
    note_->setProperty("quiet", true);
    note_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setSpacing(look::unit);
    head_->setSpacing(look::unit);
    head_->addWidget(title_);
    head_->addWidget(note_, 1);
    rows_->addLayout(head_);
}

void Panel::setNote(const QString& note) {
    note_->setText(note);
    note_->setToolTip(note);
}

QPushButton* Panel::addButton(const QString& name, const QString& label, const QString& accessible) {
    auto* button = new QPushButton(label, this);
    button->setObjectName(name);
    button->setAccessibleName(accessible);
    button->setToolTip(accessible);
    button->setProperty("small", true);
    // As wide as its word at least, however narrow the window is.
    button->ensurePolished();
    button->setMinimumSize(std::max(look::target + 2 * look::unit, button->sizeHint().width()), look::target);
    head_->addWidget(button);
    return button;
}

void Panel::setTable(GridView* view) {
    view_ = view;
    title_->setBuddy(view);
    view->setAccessibleName(title_->text());
    rows_->addWidget(view, 1);
}

void Panel::setTable(GridView* view, const QString& what) {
    const QString name = objectName();
    const bool across = view->table()->transposed();
    adder_ = addButton(name + QStringLiteral("Add"), tr("Add"), tr("Add a %1").arg(what));
    auto* remove = addButton(name + QStringLiteral("Remove"), tr("Remove"), tr("Remove the %1").arg(what));
    auto* back = addButton(name + QStringLiteral("Back"), across ? QStringLiteral("←") : QStringLiteral("↑"),
                           across ? tr("Move the %1 left (Alt+Left)").arg(what)
                                  : tr("Move the %1 up (Alt+Up)").arg(what));
    auto* on = addButton(name + QStringLiteral("On"), across ? QStringLiteral("→") : QStringLiteral("↓"),
                         across ? tr("Move the %1 right (Alt+Right)").arg(what)
                                : tr("Move the %1 down (Alt+Down)").arg(what));
    connect(adder_, &QPushButton::clicked, view, &GridView::addLine);
    connect(remove, &QPushButton::clicked, view, &GridView::removeLines);
    connect(back, &QPushButton::clicked, view, [view] { view->moveLine(-1); });
    connect(on, &QPushButton::clicked, view, [view] { view->moveLine(1); });
    setTable(view);
}

void Panel::setEmptyText(const QString& sentence) {
    empty_ = new QLabel(sentence, view_->viewport());
    empty_->setObjectName(objectName() + QStringLiteral("Empty"));
    empty_->setProperty("quiet", true);
    empty_->setWordWrap(true);
    empty_->setMargin(3 * look::unit);
    auto* over = new QVBoxLayout(view_->viewport());
    over->addWidget(empty_, 0, Qt::AlignTop);
    const auto show = [this] { empty_->setVisible(view_->table()->lines() == 0); };
    connect(view_->table(), &QAbstractItemModel::modelReset, this, show);
    show();
}

} // namespace stemwright

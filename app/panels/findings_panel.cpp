#include "app/panels/findings_panel.h"

#include "app/look.h"
#include "app/messages.h"
#include "app/session.h"
#include "app/wording.h"

#include <QAbstractListModel>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include <memory>

namespace stemwright {

/// The session's findings in words.
class FindingsPanel::Model : public QAbstractListModel {
public:
    static constexpr int detailRole = Qt::UserRole;

    Model(Session& session, QObject* parent) : QAbstractListModel(parent), session_(session) {}

    void reload() {
        beginResetModel();
        swaps_.reset();
        endResetModel();
    }
    int rowCount(const QModelIndex& parent = {}) const override {
        return parent.isValid() ? 0 : static_cast<int>(session_.findings().size());
    }
    QVariant data(const QModelIndex& index, int role) const override {
        const FindingWords said = words(session_.plan(), at(index));
        switch (role) {
        case Qt::DisplayRole:
            return said.title;
        case detailRole:
        case Qt::AccessibleDescriptionRole:
            return at(index).code == FindingCode::leans ? said.detail + QLatin1Char(' ') + swapText(at(index))
                                                        : said.detail;
        case Qt::ToolTipRole:
            return said.remedy.isEmpty()
                       ? QString()
                       : FindingsPanel::tr("Enter goes there; Alt+R offers: %1").arg(said.remedy);
        default:
            return {};
        }
    }
    const Finding& at(const QModelIndex& index) const {
        return session_.findings()[static_cast<std::size_t>(index.row())];
    }

private:
    /// The leaves are counted once for all stems that lean, and only when one is shown.
    QString swapText(const Finding& finding) const {
        if (!swaps_)
            swaps_ = std::make_unique<Swaps>(session_.plan());
        return bestSwapText(session_.plan(), session_.figures(), finding, swaps_->finder);
    }

    struct Swaps {
        PlanTables tables;
        SwapFinder finder;
        explicit Swaps(const Plan& plan) : tables(plan), finder(plan, tables) {}
    };

    Session& session_;
    mutable std::unique_ptr<Swaps> swaps_;
};

/// A white card with a mark at its left edge, its title above its detail.
class FindingsPanel::Card : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const int width = textWidth(option.widget ? option.widget->width() : option.rect.width());
        const auto height = [&](look::Type type, const QString& text) {
            return QFontMetrics(look::font(type))
                .boundingRect(0, 0, width, 1000, Qt::TextWordWrap, text)
                .height();
        };
        return {option.rect.width(), height(look::Type::strong, index.data().toString()) +
                                         height(look::Type::small, index.data(Model::detailRole).toString()) +
                                         28};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        const QRectF card = QRectF(option.rect).adjusted(1.5, 3.5, -3.5, -3.5);
        const bool chosen = option.state & QStyle::State_Selected;
        painter->setPen(QPen(chosen ? look::accent : look::line, chosen ? 1.6 : 1));
        painter->setBrush(chosen ? look::accentSoft : look::card);
        painter->drawRoundedRect(card, look::corner * 0.6, look::corner * 0.6);
        painter->setPen(Qt::NoPen);
        painter->setBrush(look::accent);
        painter->drawRoundedRect(QRectF(card.left(), card.top(), 4, card.height()), 2, 2);
        QRectF text = card.adjusted(14, 7, -8, -7);
        painter->setFont(look::font(look::Type::strong));
        painter->setPen(look::ink);
        QRectF used;
        painter->drawText(text, Qt::TextWordWrap, index.data().toString(), &used);
        text.setTop(used.bottom() + 2);
        painter->setFont(look::font(look::Type::small));
        painter->setPen(look::quiet);
        painter->drawText(text, Qt::TextWordWrap, index.data(Model::detailRole).toString());
        painter->restore();
    }

private:
    static int textWidth(int widget) { return std::max(60, widget - 44); }
};

FindingsPanel::FindingsPanel(Session& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      model_(new Model(session, this)),
      list_(new QListView(this)),
      count_(new QLabel(this)),
      calm_(new QLabel(tr("Nothing to mend."), this)),
      remedy_(new QPushButton(this)) {
    setObjectName(QStringLiteral("findings"));
    auto* heading = new QLabel(tr("Findings"), this);
    heading->setFont(look::font(look::Type::heading));
    count_->setObjectName(QStringLiteral("findingsCount"));
    count_->setProperty("quiet", true);
    calm_->setProperty("quiet", true);

    list_->setObjectName(QStringLiteral("findingsList"));
    list_->setAccessibleName(tr("Findings"));
    list_->setModel(model_);
    list_->setItemDelegate(new Card(list_));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setUniformItemSizes(false);
    list_->setResizeMode(QListView::Adjust);
    list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->viewport()->setAutoFillBackground(false);

    remedy_->setObjectName(QStringLiteral("offerRemedy"));
    remedy_->setMinimumHeight(look::target + 4);

    auto* top = new QHBoxLayout;
    top->addWidget(heading);
    top->addStretch();
    top->addWidget(count_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(look::unit);
    layout->addLayout(top);
    layout->addWidget(calm_);
    layout->addWidget(list_, 1);
    layout->addWidget(remedy_);

    connect(&session_, &Session::changed, this, &FindingsPanel::refresh);
    connect(&session_, &Session::offerChanged, this, [this] {
        if (session_.offer())
            remedy_->hide();
    });
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& now) { choose(now); });
    // A click on the card that is chosen already goes there again.
    connect(list_, &QListView::clicked, this, &FindingsPanel::choose);
    connect(list_, &QListView::activated, this, &FindingsPanel::choose);
    connect(remedy_, &QPushButton::clicked, this, &FindingsPanel::offerRemedy);
    refresh();
}

void FindingsPanel::refresh() {
    // Remember what was chosen by its place, so that mending one finding does not throw the list back to its
    // top.
    const int row = list_->currentIndex().row();
    {
        const QSignalBlocker quiet(list_->selectionModel());
        model_->reload();
    }
    const int count = model_->rowCount();
    count_->setText(countText(count));
    calm_->setVisible(count == 0);
    list_->setVisible(count > 0);
    remedy_->hide();
    if (row >= 0 && count > 0) {
        const QSignalBlocker quiet(list_->selectionModel());
        list_->setCurrentIndex(model_->index(std::min(row, count - 1)));
        list_->clearSelection();
    }
}

void FindingsPanel::choose(const QModelIndex& index) {
    if (!index.isValid())
        return;
    const Finding& finding = model_->at(index);
    session_.dropOffer();
    Q_EMIT placeChosen(finding.stem.value, finding.tier, finding.slot);
    const bool mendable = remedyFor(session_.plan(), session_.figures(), finding).has_value();
    const QString what = words(session_.plan(), finding).remedy;
    remedy_->setToolTip(what);
    const int room = width() - 6 * look::unit;
    remedy_->setText(remedy_->fontMetrics().elidedText(tr("Show &remedy: %1").arg(what), Qt::ElideRight, room,
                                                       Qt::TextShowMnemonic));
    remedy_->setVisible(mendable && !what.isEmpty());
}

void FindingsPanel::offerRemedy() {
    const QModelIndex index = list_->currentIndex();
    if (!index.isValid())
        return;
    const Finding finding = model_->at(index);
    const std::optional<Edit> remedy = remedyFor(session_.plan(), session_.figures(), finding);
    if (!remedy)
        return;
    const Result<WhatIf> whatIf = session_.whatIf(*remedy);
    if (!whatIf)
        return;
    const WhatIf& w = whatIf.value();
    const Units& units = session_.plan().units;
    QStringList lines;
    for (const StemWhatIf& stem : w.stems) {
        QString said = tr("%1: drift %2 → %3")
                           .arg(nameText(session_.plan(), stem.stem), driftText(stem.driftBefore),
                                driftText(stem.driftAfter));
        if (stem.heightBefore != stem.heightAfter)
            said += tr(", height %1 → %2")
                        .arg(sizeText(stem.heightBefore, units), sizeText(stem.heightAfter, units));
        lines << said;
    }
    lines << tr("Pot: drift %1 → %2, unevenness %3 → %4")
                 .arg(driftText(w.potDriftBefore), driftText(w.potDriftAfter), shareText(w.potUnevennessBefore),
                      shareText(w.potUnevennessAfter));
    session_.showOffer({*remedy, words(session_.plan(), finding).remedy, lines.join(QLatin1Char('\n'))});
}

} // namespace stemwright

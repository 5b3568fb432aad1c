#include "app/dialogs/colour_choice.h"

#include "app/fields/form_dialog.h"
#include "app/leaves/leaf_pictures.h"
#include "app/look.h"

#include <QColorDialog>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include <array>

namespace stemwright {

namespace {

struct PaletteEntry {
    const char* name;
    QColor colour;
    bool first; ///< chosen to begin with
};

/// Our own colours and names, picked to go together: reds, pales, greens and earths.
const std::array<PaletteEntry, 16>& entries() {
    static const std::array<PaletteEntry, 16> all{
        {{QT_TRANSLATE_NOOP("ColourChoice", "Plum"), QColor(122, 68, 98), true},
         {QT_TRANSLATE_NOOP("ColourChoice", "Rose"), QColor(190, 110, 124), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Blush"), QColor(228, 180, 172), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Rust"), QColor(168, 92, 58), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Honey"), QColor(217, 164, 65), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Straw"), QColor(222, 203, 142), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Cream"), QColor(240, 231, 208), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Frost"), QColor(203, 214, 204), true},
         {QT_TRANSLATE_NOOP("ColourChoice", "Lichen"), QColor(168, 186, 146), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Meadow"), QColor(128, 156, 82), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Moss"), QColor(92, 112, 62), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Sea"), QColor(106, 154, 134), true},
         {QT_TRANSLATE_NOOP("ColourChoice", "Deep"), QColor(58, 100, 86), true},
         {QT_TRANSLATE_NOOP("ColourChoice", "Dusk"), QColor(112, 116, 152), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Bark"), QColor(104, 82, 62), false},
         {QT_TRANSLATE_NOOP("ColourChoice", "Night"), QColor(48, 50, 60), false}}};
    return all;
}

constexpr int entryRole = Qt::UserRole;      // the palette's entry, −1 for another colour
constexpr int colourRole = Qt::UserRole + 1; // QColor

} // namespace

ColourChoice::ColourChoice(QWidget* parent) : QWidget(parent), chosen_(new QListWidget(this)) {
    setObjectName(QStringLiteral("colourChoice"));
    auto* grid = new QGridLayout;
    grid->setSpacing(look::unit);
    const auto button = [this](const QString& label, const QString& name, const QString& accessible) {
        auto* made = new QPushButton(label, this);
        nameField(made, name, accessible);
        made->setToolTip(accessible);
        made->setAutoDefault(false);
        made->setProperty("small", true);
        return made;
    };
    constexpr int columns = 4;
    for (int i = 0; i < static_cast<int>(entries().size()); ++i) {
        const PaletteEntry& entry = entries()[static_cast<std::size_t>(i)];
        const QString name = tr(entry.name);
        auto* swatchButton = button(name, QStringLiteral("palette%1").arg(i), tr("Colour %1").arg(name));
        swatchButton->setCheckable(true);
        swatchButton->setIcon(swatch(entry.colour));
        swatchButton->setIconSize({18, 18});
        swatchButton->setProperty("swatch", true);
        connect(swatchButton, &QPushButton::clicked, this, [this, i](bool on) { toggle(i, on); });
        grid->addWidget(swatchButton, i / columns, i % columns);
        palette_ += swatchButton;
    }
    other_ = button(tr("Another colour…"), QStringLiteral("paletteOther"), tr("Choose any other colour"));
    connect(other_, &QPushButton::clicked, this, &ColourChoice::addOther);
    grid->addWidget(other_, static_cast<int>(entries().size()) / columns, 0, 1, columns);

    nameField(chosen_, QStringLiteral("chosenColours"), tr("Chosen colours, from tip to base; F2 renames"));
    chosen_->setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::DoubleClicked);
    chosen_->setMinimumSize(150, 168);
    remove_ = button(tr("Remove"), QStringLiteral("chosenRemove"), tr("Remove the colour"));
    up_ = button(QStringLiteral("↑"), QStringLiteral("chosenUp"), tr("Move the colour towards the tip"));
    down_ = button(QStringLiteral("↓"), QStringLiteral("chosenDown"), tr("Move the colour towards the base"));
    connect(remove_, &QPushButton::clicked, this, &ColourChoice::removeChosen);
    connect(up_, &QPushButton::clicked, this, [this] { moveChosen(-1); });
    connect(down_, &QPushButton::clicked, this, [this] { moveChosen(1); });
    connect(chosen_, &QListWidget::itemChanged, this, &ColourChoice::changed);
    connect(chosen_, &QListWidget::currentRowChanged, this, &ColourChoice::follow);

    auto* title = new QLabel(tr("From tip to base"), this);
    title->setBuddy(chosen_);
    title->setProperty("quiet", true);
    auto* keys = new QHBoxLayout;
    keys->setSpacing(look::unit);
    keys->addWidget(remove_, 1);
    keys->addWidget(up_);
    keys->addWidget(down_);
    auto* right = new QVBoxLayout;
    right->setSpacing(look::unit);
    right->addWidget(title);
    right->addWidget(chosen_, 1);
    right->addLayout(keys);
    auto* sides = new QHBoxLayout(this);
    sides->setContentsMargins(0, 0, 0, 0);
    sides->setSpacing(4 * look::unit);
    auto* left = new QVBoxLayout;
    left->addLayout(grid);
    left->addStretch(1);
    sides->addLayout(left, 3);
    sides->addLayout(right, 2);

    for (int i = 0; i < static_cast<int>(entries().size()); ++i)
        if (entries()[static_cast<std::size_t>(i)].first) {
            palette_[i]->setChecked(true);
            toggle(i, true);
        }
    chosen_->setCurrentRow(0);
}

void ColourChoice::append(const QString& name, const QColor& colour, int entry) {
    const QSignalBlocker quiet(chosen_);
    auto* item = new QListWidgetItem(swatch(colour), name, chosen_);
    item->setFlags(item->flags() | Qt::ItemIsEditable);
    item->setData(entryRole, entry);
    item->setData(colourRole, colour);
    item->setSizeHint({0, look::target + 2});
    chosen_->setCurrentItem(item);
}

void ColourChoice::toggle(int entry, bool on) {
    if (on) {
        const PaletteEntry& chosen = entries()[static_cast<std::size_t>(entry)];
        append(tr(chosen.name), chosen.colour, entry);
    } else {
        for (int row = 0; row < chosen_->count(); ++row)
            if (chosen_->item(row)->data(entryRole).toInt() == entry) {
                delete chosen_->takeItem(row);
                break;
            }
    }
    follow();
    Q_EMIT changed();
}

void ColourChoice::addOther() {
    const QColor colour = QColorDialog::getColor(QColor(150, 150, 150), this, tr("Colour of the beads"));
    if (!colour.isValid())
        return;
    append(tr("Colour %1").arg(chosen_->count() + 1), colour, -1);
    follow();
    Q_EMIT changed();
}

void ColourChoice::removeChosen() {
    const int row = chosen_->currentRow();
    if (row < 0)
        return;
    if (const int entry = chosen_->item(row)->data(entryRole).toInt(); entry >= 0)
        palette_[entry]->setChecked(false);
    delete chosen_->takeItem(row);
    follow();
    Q_EMIT changed();
}

void ColourChoice::moveChosen(int by) {
    const int row = chosen_->currentRow(), to = row + by;
    if (row < 0 || to < 0 || to >= chosen_->count())
        return;
    {
        const QSignalBlocker quiet(chosen_);
        chosen_->insertItem(to, chosen_->takeItem(row));
    }
    chosen_->setCurrentRow(to);
    follow();
    Q_EMIT changed();
}

void ColourChoice::follow() {
    const int count = chosen_->count(), row = chosen_->currentRow();
    for (QPushButton* button : palette_)
        button->setEnabled(button->isChecked() || count < most);
    other_->setEnabled(count < most);
    remove_->setEnabled(row >= 0);
    up_->setEnabled(row > 0);
    down_->setEnabled(row >= 0 && row + 1 < count);
}

std::vector<NewPlan::NewColour> ColourChoice::colours() const {
    std::vector<NewPlan::NewColour> all;
    for (int row = 0; row < chosen_->count(); ++row) {
        const QColor colour = chosen_->item(row)->data(colourRole).value<QColor>();
        all.push_back({chosen_->item(row)->text().trimmed().toStdString(),
                       {static_cast<std::uint8_t>(colour.red()), static_cast<std::uint8_t>(colour.green()),
                        static_cast<std::uint8_t>(colour.blue())}});
    }
    return all;
}

QString ColourChoice::refusal() const {
    if (chosen_->count() < least)
        return tr("choose two at least; colour moves from the one to the other.");
    for (int row = 0; row < chosen_->count(); ++row)
        if (const QString why = nameRefusal(chosen_->item(row)->text()); !why.isEmpty())
            return why;
    return {};
}

} // namespace stemwright

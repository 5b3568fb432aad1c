#include "app/leaves/pattern_dialog.h"

#include "app/leaves/leaf_drawing.h"
#include "app/leaves/leaf_pictures.h"
#include "app/leaves/row_lines.h"
#include "app/look.h"
#include "app/messages.h"
#include "app/wording.h"
#include "core/plan/edit.h"
#include "core/plan/limits.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int mostRowsHigh = 8; ///< of the table of counts, before it scrolls

QTableWidget* tableOf(const QString& name, const QString& accessible, QWidget* parent) {
    auto* table = new QTableWidget(parent);
    nameField(table, name, accessible);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    table->setTabKeyNavigation(false);
    table->setWordWrap(false);
    table->verticalHeader()->setDefaultSectionSize(look::target);
    table->verticalHeader()->setMinimumSectionSize(look::target);
    table->horizontalHeader()->setMinimumHeight(look::target);
    table->horizontalHeader()->setHighlightSections(false);
    table->verticalHeader()->setHighlightSections(false);
    return table;
}

void put(QTableWidget* table, int row, int column, const QString& text, bool strong = false) {
    auto* item = new QTableWidgetItem(text);
    item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    if (strong)
        item->setFont(look::font(look::Type::strong));
    table->setItem(row, column, item);
}

} // namespace

PatternDialog::PatternDialog(const Plan& plan, KindId kind, MixId mix, QWidget* parent)
    : FormDialog(QStringLiteral("patternDialog"), tr("Measured or made"), tr("Take the leaf"), parent),
      plan_(plan),
      kind_(kind) {
    if (const Kind* found = stemwright::find(plan, kind))
        before_ = *found;
    build();
    if (const int at = mix_->findData(mix.value); at >= 0)
        mix_->setCurrentIndex(at);
    follow();
    refresh();
    resize(900, 620);
}

void PatternDialog::build() {
    auto* sides = new QHBoxLayout;
    sides->setSpacing(5 * look::unit);
    body()->addLayout(sides, 1);
    auto* left = new QVBoxLayout;
    sides->addLayout(left, 5);
    fields_ = addForm();
    body()->removeItem(fields_);
    left->addLayout(fields_);

    const LeafMake make = before_.make.value_or(LeafMake{});
    origin_ = choiceOf({}, this);
    for (const auto& [words, each] : {std::pair{tr("measured by you"), Origin::measured},
                                      std::pair{tr("made: one loop of beads"), Origin::oneLoop},
                                      std::pair{tr("made: loops round a loop"), Origin::loops},
                                      std::pair{tr("made: rows around a basic"), Origin::rows}})
        origin_->addItem(words, static_cast<int>(each));
    addPlain(fields_, origin_, QStringLiteral("patternOrigin"), tr("This leaf is"));
    const Origin was = !before_.make                 ? Origin::measured
                       : make.making == Making::rows ? Origin::rows
                       : make.rows == 1              ? Origin::oneLoop
                                                     : Origin::loops;
    choose(origin_, static_cast<int>(was));
    beads_ = add(fields_, new NumberField(1, limits::beads, 0, this), QStringLiteral("patternBeads"),
                 tr("Beads on the basic"));
    beads_->setValue(make.beads);
    rows_ = add(fields_, new NumberField(1, limits::rows, 0, this), QStringLiteral("patternRows"),
                tr("Rows, the basic among them"));
    rows_->setValue(make.rows);
    const QList<QPair<QString, int>> ends{{endText(LeafEnd::round), static_cast<int>(LeafEnd::round)},
                                          {endText(LeafEnd::pointed), static_cast<int>(LeafEnd::pointed)}};
    tip_ = choiceOf(ends, this);
    addPlain(fields_, tip_, QStringLiteral("patternTip"), tr("Tip end"));
    choose(tip_, static_cast<int>(before_.tipEnd));
    base_ = choiceOf(ends, this);
    addPlain(fields_, base_, QStringLiteral("patternBase"), tr("Base end"));
    choose(base_, static_cast<int>(before_.baseEnd));
    point_ = add(fields_, new NumberField(10, 170, 1, this), QStringLiteral("patternPoint"),
                 tr("Angle of the point, degrees"));
    point_->setValue(2 * inDegrees(make.point));
    size_ = choiceOf({}, this);
    const auto addSize = [this](const QString& name, Length pitch) {
        if (size_->findData(name) < 0)
            size_->addItem(tr("%1, %2 along the wire", "a bead size and its length")
                               .arg(name, entryText(pitch, LengthUnit::millimetre)),
                           name);
    };
    // Her own before the handbook's of the same name, as they are looked up.
    for (const OwnBead& each : plan_.own.beads)
        addSize(text(each.name), each.pitch);
    for (const BeadSize& each : beadSizes())
        addSize(QString::fromUtf8(each.name.data(), static_cast<qsizetype>(each.name.size())), each.pitch);
    if (size_->findData(text(before_.beadSize)) < 0)
        size_->insertItem(0, text(before_.beadSize), text(before_.beadSize));
    size_->setCurrentIndex(size_->findData(text(before_.beadSize)));
    addPlain(fields_, size_, QStringLiteral("patternSize"), tr("Bead size"));
    wires_ = add(fields_, new NumberField(1, limits::wiresAtBase, 0, this), QStringLiteral("patternWires"),
                 tr("Wires left at the base"));
    wires_->setValue(before_.wiresAtBase);
    wires_->setToolTip(tr("A leaf of loops has two, one of rows three; many makers cut one or two away."));

    figures_ = tableOf(QStringLiteral("patternFigures"), tr("What one leaf takes, now and as set here"), this);
    figures_->setColumnCount(2);
    figures_->setHorizontalHeaderLabels({tr("Now"), tr("As set here")});
    figures_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    figures_->setRowCount(6);
    figures_->setVerticalHeaderLabels(
        {tr("Beads"), tr("Length"), tr("Width"), tr("Wire to cut"), tr("Mass"), tr("Wires at the base")});
    figures_->setFixedHeight(7 * look::target + 2 * look::unit);
    figures_->setFocusPolicy(Qt::TabFocus);
    left->addWidget(figures_);
    left->addStretch(1);

    auto* right = new QVBoxLayout;
    right->setSpacing(2 * look::unit);
    sides->addLayout(right, 6);
    mix_ = choiceOf({}, this);
    for (const Mix& each : plan_.mixes)
        mix_->addItem(nameText(plan_, each.id), each.id.value);
    nameField(mix_, QStringLiteral("patternMix"), tr("Mix that the leaf is shown in"));
    auto* shownIn = new QLabel(tr("Shown in"), this);
    shownIn->setBuddy(mix_);
    auto* mixRow = new QHBoxLayout;
    mixRow->addWidget(shownIn);
    mixRow->addWidget(mix_, 1);
    right->addLayout(mixRow);
    drawing_ = new LeafDrawing(plan_.units, this);
    right->addWidget(drawing_, 1);
    counts_ = tableOf(QStringLiteral("patternCounts"), tr("Beads of each row, outer row inward"), this);
    right->addWidget(counts_);

    connect(origin_, &QComboBox::currentIndexChanged, this, [this] {
        // A pattern that nobody has set begins with the wires that such a leaf has.
        if (origin() != Origin::measured)
            wires_->setValue(origin() == Origin::rows ? 3 : 2);
        if (origin() == Origin::rows && rows_->value().value_or(0) == 1)
            rows_->setValue(5);
        if (origin() == Origin::loops && rows_->value().value_or(0) == 1)
            rows_->setValue(3);
        follow();
        refresh();
    });
    for (QComboBox* box : {tip_, base_})
        connect(box, &QComboBox::currentIndexChanged, this, [this] {
            follow();
            refresh();
        });
    for (QComboBox* box : {size_, mix_})
        connect(box, &QComboBox::currentIndexChanged, this, &PatternDialog::refresh);
    for (NumberField* field : {beads_, rows_, point_, wires_})
        connect(field, &QLineEdit::textChanged, this, &PatternDialog::refresh);
    connect(counts_, &QTableWidget::itemSelectionChanged, this, [this] {
        const auto row = static_cast<std::size_t>(std::max(0, counts_->currentRow()));
        const std::vector<RowLine> lines = rowLines(form(), nullptr);
        drawing_->markRow(!counts_->selectedItems().isEmpty() && row < lines.size()
                              ? MarkedRow{lines[row].ring, lines[row].side}
                              : MarkedRow{});
    });
}

PatternDialog::Origin PatternDialog::origin() const {
    return static_cast<Origin>(origin_->currentData().toInt());
}

void PatternDialog::follow() {
    const Origin now = origin();
    const bool ofRows = now == Origin::rows;
    const auto label = [this](QWidget* field, const QString& words) {
        if (auto* made = qobject_cast<QLabel*>(fields_->labelForField(field)))
            made->setText(words);
        field->setAccessibleName(words);
    };
    label(beads_, ofRows                   ? tr("Beads on the basic")
                  : now == Origin::oneLoop ? tr("Beads in the loop")
                                           : tr("Beads in the first loop"));
    label(rows_, ofRows ? tr("Rows, the basic among them") : tr("Loops in all"));
    fields_->setRowVisible(beads_, now != Origin::measured);
    fields_->setRowVisible(rows_, now == Origin::loops || ofRows);
    for (QWidget* end : {static_cast<QWidget*>(tip_), static_cast<QWidget*>(base_)})
        fields_->setRowVisible(end, ofRows);
    const auto pointed = static_cast<int>(LeafEnd::pointed);
    fields_->setRowVisible(
        point_, ofRows && (tip_->currentData().toInt() == pointed || base_->currentData().toInt() == pointed));
    fields_->setRowVisible(size_, now != Origin::measured);
    fields_->setRowVisible(wires_, now != Origin::measured);
}

std::optional<BeadSize> PatternDialog::size() const {
    return beadSizeNamed(plan_, size_->currentData().toString().toStdString());
}

std::optional<LeafMake> PatternDialog::make() const {
    const auto beads = beads_->value(), count = rows_->value();
    const auto point = point_->value();
    if (origin() == Origin::measured || !beads || (origin() != Origin::oneLoop && !count))
        return std::nullopt;
    LeafMake made = before_.make.value_or(LeafMake{});
    made.making = origin() == Origin::rows ? Making::rows : Making::loops;
    made.beads = static_cast<int>(*beads);
    made.rows = origin() == Origin::oneLoop ? 1 : static_cast<int>(*count);
    // What she counted of the rows that are still there stays hers.
    if (before_.make && before_.make->making != made.making)
        made.counted.clear();
    std::erase_if(made.counted, [&](const CountedRow& each) {
        return each.row >= made.rows || (each.row == 0 && before_.make->beads != made.beads);
    });
    // A point that nobody sees keeps its angle; an unchanged one keeps it to the last bit.
    if (point && *point != 2 * inDegrees(made.point))
        made.point = degrees(*point / 2);
    return made;
}

QString PatternDialog::fault() const {
    if (origin() == Origin::measured)
        return {};
    for (NumberField* field : {beads_, rows_, point_, wires_})
        if (field->isVisibleTo(this))
            if (const QString why = field->refusal(); !why.isEmpty())
                return tr("%1: %2", "a field and what is wrong with it").arg(field->accessibleName(), why);
    const auto made = make();
    if (!made)
        return {};
    if (!size())
        return tr("Bead size: how long a bead of %1 is on the wire is not known here, so measure this leaf "
                  "yourself or choose another size.")
            .arg(text(before_.beadSize));
    const MakeFault found = faultOf(*made, *size());
    if (const QString why = faultText(found, made->rows); !why.isEmpty()) {
        const QWidget* at = found == MakeFault::noBeads    ? static_cast<QWidget*>(beads_)
                            : found == MakeFault::evenRows ? static_cast<QWidget*>(rows_)
                                                           : size_;
        return tr("%1: %2", "a field and what is wrong with it").arg(at->accessibleName(), why);
    }
    const MadeLeaf leaf = madeLeaf(*made, static_cast<LeafEnd>(tip_->currentData().toInt()),
                                   static_cast<LeafEnd>(base_->currentData().toInt()), *size());
    if (leaf.beads > limits::beads)
        return tr("%1: such a leaf would have %2 beads; %3 are the most.")
            .arg(beads_->accessibleName(), countText(leaf.beads), countText(limits::beads));
    if (inMillimetres(leaf.wire) > limits::longestWire || inMillimetres(leaf.length) > limits::longest ||
        inMillimetres(leaf.width) > limits::longest)
        return tr("%1: such a leaf would be %2 long, which no stem carries.")
            .arg(beads_->accessibleName(), sizeText(leaf.length, plan_.units));
    return {};
}

QString PatternDialog::problem() {
    return fault();
}

KindForm PatternDialog::form() const {
    KindForm now = before_;
    if (origin() == Origin::measured) {
        now.make.reset();
        now.own = OwnMeasures{false, false, false, false, false, now.own.extra};
        return now;
    }
    const auto made = make();
    if (!made || !fault().isEmpty())
        return before_;
    if (origin() == Origin::rows) {
        now.tipEnd = static_cast<LeafEnd>(tip_->currentData().toInt());
        now.baseEnd = static_cast<LeafEnd>(base_->currentData().toInt());
    }
    now.beadSize = size_->currentData().toString().toStdString();
    now.make = made;
    const bool asBefore = before_.make == made && before_.tipEnd == now.tipEnd &&
                          before_.baseEnd == now.baseEnd && before_.beadSize == now.beadSize;
    if (!before_.make)
        now.own = OwnMeasures{false, false, false, false, false, now.own.extra};
    // A look at the pattern changes nothing; a change of it leaves alone what is hers.
    if (!asBefore)
        now = followPattern(plan_, now);
    if (const auto wires = wires_->value(); wires && static_cast<int>(*wires) != now.wiresAtBase) {
        now.wiresAtBase = static_cast<int>(*wires);
        now.own.wiresAtBase = now.wiresAtBase != patternWires();
    }
    return now;
}

int PatternDialog::patternWires() const {
    const auto made = make();
    return made && size() ? madeLeaf(*made, LeafEnd::round, LeafEnd::round, *size()).wiresAtBase : 0;
}

std::optional<Edit> PatternDialog::edit() const {
    KindForm now = form();
    if (now == before_)
        return std::nullopt;
    return Edit(ReformKind{kind_, std::move(now)});
}

void PatternDialog::refresh() {
    for (NumberField* field : {beads_, rows_, point_, wires_})
        field->mark();
    const QString why = fault();
    say(why);
    const KindForm now = form();
    showFigures(now);
    showRows(now);
}

void PatternDialog::showFigures(const KindForm& now) {
    const Units& units = plan_.units;
    const bool can = fault().isEmpty();
    const auto line = [&](int row, const QString& was, const QString& is, bool hers = false) {
        put(figures_, row, 0, was);
        put(figures_, row, 1, !can ? tr("–") : hers && now.make ? hersText(is) : is, can && was != is);
    };
    line(0, countText(before_.beads), countText(now.beads), now.own.beads);
    line(1, sizeText(before_.length, units), sizeText(now.length, units), now.own.length);
    line(2, sizeText(before_.width, units), sizeText(now.width, units), now.own.width);
    line(3, cutText(before_.wire, units), cutText(now.wire, units), now.own.wire);
    line(4, leafMassText(plan_, before_), leafMassText(plan_, now));
    line(5, countText(before_.wiresAtBase), countText(now.wiresAtBase), now.own.wiresAtBase);
}

void PatternDialog::showRows(const KindForm& now) {
    const Mix* mix = stemwright::find(plan_, MixId{mix_->currentData().toUInt()});
    const LeafLook leaf = lookOf(plan_, now, mix ? mix->id : MixId{});
    drawing_->setLook(leaf);
    const std::vector<RowLine> lines = rowLines(now, mix);
    const int colours = mix ? static_cast<int>(mix->colours.size()) : 0, count = static_cast<int>(lines.size());
    counts_->clear();
    counts_->setColumnCount(colours + 1);
    counts_->setRowCount(count + 1);
    QStringList heads{tr("Beads")}, sides;
    for (int i = 0; i < colours; ++i) {
        const Colour* colour = stemwright::find(plan_, mix->colours[static_cast<std::size_t>(i)].colour);
        heads += colour ? text(colour->name) : QString();
    }
    std::vector<int> sums(static_cast<std::size_t>(colours) + 1);
    for (int row = 0; row < count; ++row) {
        const RowLine& each = lines[static_cast<std::size_t>(row)];
        sides += each.name;
        put(counts_, row, 0, each.counted ? hersText(countText(each.beads)) : countText(each.beads));
        sums[0] += each.beads;
        for (int i = 0; i < colours; ++i) {
            const int beads = each.colours[static_cast<std::size_t>(i)];
            put(counts_, row, i + 1, beads > 0 ? countText(beads) : QString());
            sums[static_cast<std::size_t>(i) + 1] += beads;
        }
    }
    sides += tr("all", "the sum of all rows");
    for (int i = 0; i <= colours; ++i)
        put(counts_, count, i, countText(sums[static_cast<std::size_t>(i)]), true);
    counts_->setHorizontalHeaderLabels(heads);
    counts_->setVerticalHeaderLabels(sides);
    for (int i = 0; i < colours && i < static_cast<int>(leaf.bands.size()); ++i)
        counts_->horizontalHeaderItem(i + 1)->setIcon(swatch(leaf.bands[static_cast<std::size_t>(i)].colour));
    counts_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    counts_->setFixedHeight((std::min(count + 1, mostRowsHigh) + 1) * look::target + 3 * look::unit);
}

} // namespace stemwright

#include "app/leaves/kinds_model.h"

#include "app/fields/entry.h"
#include "app/fields/fields.h"
#include "app/leaves/row_lines.h"
#include "app/look.h"
#include "app/wording.h"
#include "core/document/leaf_presets.h"
#include "core/figures/leaf_make.h"
#include "core/plan/limits.h"
#include "core/plan/lookup.h"
#include "core/quantity/bead.h"

#include <cmath>

namespace stemwright {

namespace {

/// Puts what was read where it belongs, or hands on the refusal.
template <class T, class Target> QString take(Entry<T> entry, Target& target) {
    if (entry.value)
        target = *entry.value;
    return entry.refusal;
}

bool isMeasure(int field) {
    using Field = KindsModel::Field;
    return field == Field::beads || field == Field::length || field == Field::width || field == Field::wire ||
           field == Field::wiresAtBase;
}

/// Whether the measure is the maker's own; of a kind without a pattern all are, and that is not said.
bool* ownOf(KindForm& kind, int field) {
    using Field = KindsModel::Field;
    switch (field) {
    case Field::beads:
        return &kind.own.beads;
    case Field::length:
        return &kind.own.length;
    case Field::width:
        return &kind.own.width;
    case Field::wire:
        return &kind.own.wire;
    case Field::wiresAtBase:
        return &kind.own.wiresAtBase;
    default:
        return nullptr;
    }
}

QString makingText(const KindForm& kind) {
    if (!kind.make)
        return KindsModel::tr("measured");
    const LeafMake& make = *kind.make;
    return make.making == Making::rows
               ? KindsModel::tr("%1 rows, basic %2", "rows of beads around so many on the basic")
                     .arg(make.rows)
                     .arg(make.beads)
           : make.rows == 1 ? KindsModel::tr("one loop of %1").arg(make.beads)
                            : KindsModel::tr("%1 loops round %2", "loops, and the beads of the first")
                                  .arg(make.rows)
                                  .arg(make.beads);
}

} // namespace

KindsModel::KindsModel(Session& session, QObject* parent) : PartsModel(session, parent) {
    refresh();
}

QString KindsModel::fieldName(int field) const {
    switch (field) {
    case Field::name:
        return tr("Name");
    case Field::making:
        return tr("Measured or made");
    case Field::beads:
        return tr("Beads in a leaf");
    case Field::beadSize:
        return tr("Bead size");
    case Field::length:
        return tr("Length");
    case Field::width:
        return tr("Width");
    case Field::tipEnd:
        return tr("Tip end");
    case Field::baseEnd:
        return tr("Base end");
    case Field::wire:
        return tr("Wire for a leaf");
    case Field::wireDiameter:
        return tr("Wire diameter");
    case Field::gauge:
        return tr("Wire number");
    case Field::metal:
        return tr("Wire metal");
    case Field::wiresAtBase:
        return tr("Wires at the base");
    case Field::angle:
        return tr("Angle to the stem");
    case Field::minutes:
        return tr("Minutes to make");
    case Field::mass:
        return tr("Mass of a leaf");
    default:
        return {};
    }
}

bool KindsModel::editable(int, int field) const {
    return field != Field::making && field != Field::mass;
}

QStringList KindsModel::choices(int, int field) const {
    QStringList all;
    if (field == Field::tipEnd || field == Field::baseEnd)
        all = {endText(LeafEnd::round), endText(LeafEnd::pointed)};
    else if (field == Field::metal)
        all = metalWords(plan().own);
    else if (field == Field::beadSize) {
        // Her own first; one of a handbook name stands in its place.
        for (const OwnBead& size : plan().own.beads)
            all += text(size.name);
        for (const BeadSize& size : beadSizes())
            if (const auto name = QString::fromUtf8(size.name.data(), static_cast<qsizetype>(size.name.size()));
                !all.contains(name))
                all += name;
    } else if (field == Field::gauge)
        for (const GaugeSystem system : {GaugeSystem::awg, GaugeSystem::swg, GaugeSystem::steel})
            for (int number = 20; number <= thinnestGauge; number += 2)
                all += gaugeText({system, number});
    return all;
}

std::optional<QString> KindsModel::emptied(int field) const {
    if (field == Field::gauge)
        return QString();
    if (field == Field::minutes)
        return QStringLiteral("0");
    // A measure that is hers goes back to the pattern, where there is one.
    return isMeasure(field) ? std::optional(QString()) : std::nullopt;
}

bool KindsModel::hers(int line, int field) const {
    KindForm form = part(line);
    const bool* own = form.make ? ownOf(form, field) : nullptr;
    return own && *own;
}

QString KindsModel::shown(int line, int field) const {
    const Kind& kind = part(line);
    if (hers(line, field))
        return hersText(typed(line, field));
    switch (field) {
    case Field::making:
        return makingText(kind);
    case Field::mass:
        return leafMassText(plan(), kind);
    case Field::gauge:
        return kind.gauge ? gaugeText(*kind.gauge) : QStringLiteral("–");
    case Field::angle:
        return tr("%1°").arg(entryText(inDegrees(kind.angle), 2));
    case Field::minutes:
        return kind.minutes > 0 ? entryText(kind.minutes, 2) : QStringLiteral("–");
    default:
        return typed(line, field);
    }
}

QString KindsModel::typed(int line, int field) const {
    const Kind& kind = part(line);
    const LengthUnit unit = plan().units.length;
    switch (field) {
    case Field::name:
        return text(kind.name);
    case Field::beads:
        return countText(kind.beads);
    case Field::beadSize:
        return text(kind.beadSize);
    case Field::length:
        return entryText(kind.length, unit);
    case Field::width:
        return entryText(kind.width, unit);
    case Field::tipEnd:
        return endText(kind.tipEnd);
    case Field::baseEnd:
        return endText(kind.baseEnd);
    case Field::wire:
        return entryText(kind.wire, unit);
    case Field::wireDiameter:
        // Wires are measured in millimetres whatever the rest is measured in.
        return entryText(kind.wireDiameter, LengthUnit::millimetre);
    case Field::gauge:
        return kind.gauge ? gaugeText(*kind.gauge) : QString();
    case Field::metal:
        return metalText(metalNameOf(kind));
    case Field::wiresAtBase:
        return countText(kind.wiresAtBase);
    case Field::angle:
        return entryText(inDegrees(kind.angle), 2);
    case Field::minutes:
        return entryText(kind.minutes, 2);
    default:
        return {};
    }
}

QVariant KindsModel::more(int line, int field, int role) const {
    if (role == Qt::FontRole && hers(line, field))
        return look::font(look::Type::strong);
    if (role != Qt::ToolTipRole)
        return {};
    if (part(line).make && isMeasure(field))
        return hers(line, field) ? tr("You measured this on a real leaf. Delete gives it back to the pattern.")
                                 : tr("From the pattern. Write here what you measured on a real leaf.");
    switch (field) {
    case Field::making:
        return tr("Enter or a double click chooses whether this leaf is measured or made from a pattern");
    case Field::mass:
        return tr("Its beads and its wire as it is cut");
    case Field::wire:
        return tr("Wire to cut for one leaf");
    case Field::wireDiameter:
        return tr("Counts for the stem's thickness; always in millimetres");
    case Field::gauge:
        return tr("The number it was bought by, such as AWG 28; setting it sets the diameter");
    case Field::wiresAtBase:
        return tr("Wires that leave the leaf and join the stem");
    case Field::angle:
        return tr("0° stands straight up, 90° is level, more hangs");
    case Field::minutes:
        return tr("Time to make one leaf; 0 where you do not know it");
    default:
        return {};
    }
}

QString KindsModel::write(Plan& draft, int line, int field, const QString& typed) const {
    namespace most = limits;
    Kind& kind = part(draft, line);
    const LengthUnit unit = draft.units.length;
    const auto length = [&](double from, double to) {
        return readLength(typed, unit, millimetres(from), millimetres(to));
    };
    if (kind.make && isMeasure(field)) {
        // What is typed over the pattern's measure is hers; emptied, it is the pattern's again.
        *ownOf(kind, field) = !typed.trimmed().isEmpty();
        if (typed.trimmed().isEmpty()) {
            static_cast<KindForm&>(kind) = followPattern(draft, kind);
            return {};
        }
    }
    const auto follow = [&](const QString& why) {
        if (why.isEmpty())
            static_cast<KindForm&>(kind) = followPattern(draft, kind);
        return why;
    };
    switch (field) {
    case Field::name:
        kind.name = typed.trimmed().toStdString();
        return nameRefusal(typed.trimmed());
    case Field::beads:
        return take(readCount(typed, 1, most::beads), kind.beads);
    case Field::beadSize: {
        const std::string size = typed.trimmed().toStdString();
        kind.beadSize = size;
        return follow(size.size() > 20
                          ? tr("“%1” is too long for a bead size, such as 11/0.").arg(typed.left(40))
                          : QString());
    }
    case Field::length:
        return take(length(most::shortestLeaf, most::longest), kind.length);
    case Field::width:
        return take(length(most::shortestLeaf, most::longest), kind.width);
    case Field::tipEnd:
    case Field::baseEnd: {
        LeafEnd& end = field == Field::tipEnd ? kind.tipEnd : kind.baseEnd;
        for (const LeafEnd each : {LeafEnd::round, LeafEnd::pointed})
            if (endText(each).compare(typed.trimmed(), Qt::CaseInsensitive) == 0) {
                end = each;
                return follow({});
            }
        return tr("“%1” is no end of a leaf: it is %2 or %3.")
            .arg(typed.trimmed().left(40), endText(LeafEnd::round), endText(LeafEnd::pointed));
    }
    case Field::wire:
        return take(length(0, most::longestWire), kind.wire);
    case Field::wireDiameter: {
        const QString why = take(readWire(typed), kind.wireDiameter);
        if (why.isEmpty() && kind.gauge && !agrees(kind.wireDiameter, *kind.gauge))
            kind.gauge.reset();
        return why;
    }
    case Field::gauge: {
        const auto read = readGauge(typed.trimmed() == QStringLiteral("–") ? QString() : typed,
                                    kind.gauge ? kind.gauge->system : GaugeSystem::awg);
        if (!read.value)
            return read.refusal;
        if (*read.value == kind.gauge)
            return {};
        kind.gauge = *read.value;
        if (kind.gauge)
            kind.wireDiameter = millimetres(std::round(inMillimetres(*diameterOf(*kind.gauge)) * 1000) / 1000);
        return {};
    }
    case Field::metal:
        if (const auto found = metalNamed(draft.own, typed)) {
            kind.metal = found->own.empty() ? found->metal : kind.metal;
            kind.ownMetal = found->own;
            return {};
        }
        return tr("“%1” is no metal that is known here.").arg(typed.trimmed().left(40));
    case Field::wiresAtBase:
        return take(readCount(typed, 1, most::wiresAtBase), kind.wiresAtBase);
    case Field::angle: {
        QString plain = typed;
        const Entry<double> read = readNumber(plain.remove(QChar(0x00b0)), 0, most::steepest, 2);
        if (read.value)
            kind.angle = degrees(*read.value);
        return read.refusal;
    }
    case Field::minutes:
        return typed.trimmed() == QStringLiteral("–")
                   ? take(Entry<double>{0.0, {}}, kind.minutes)
                   : take(readNumber(typed, 0, most::minutes, 2), kind.minutes);
    default:
        return {};
    }
}

QString KindsModel::addTo(Plan& draft) const {
    Kind kind;
    static_cast<KindForm&>(kind) = presetForm(draft.kinds.empty() ? LeafPreset::small : LeafPreset::broad);
    kind.id = freeKindId(draft);
    kind.name = tr("Kind %1").arg(draft.kinds.size() + 1).toStdString();
    // The mixes of the other kinds in their order, or all there are: none of it has been made or is wanted yet.
    if (!draft.kinds.empty())
        for (const StockLine& line : draft.kinds.back().stock)
            kind.stock.push_back({line.mix, 0, 0, ""});
    else
        for (const Mix& mix : draft.mixes)
            kind.stock.push_back({mix.id, 0, 0, ""});
    draft.kinds.push_back(std::move(kind));
    return {};
}

} // namespace stemwright

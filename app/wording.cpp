#include "app/wording.h"

#include <QCoreApplication>
#include <QLocale>

#include <cmath>

namespace stemwright {

namespace {

QString tr(const char* source, const char* note = nullptr) {
    return QCoreApplication::translate("Wording", source, note);
}

QString decimals(double value, int places) {
    // A figure that rounds to nothing has no sign.
    const double unit = std::pow(10.0, -places);
    return QLocale().toString(std::abs(value) < unit / 2 ? 0.0 : value, 'f', places);
}

/// Sixteenths of an inch in lowest terms: `2 3/8 in`.
QString inchText(double inches) {
    const QString sign = inches < 0 ? QStringLiteral("−") : QString();
    const auto sixteenths = std::llround(std::abs(inches) * 16);
    const auto whole = sixteenths / 16;
    auto over = sixteenths % 16;
    if (over == 0)
        return tr("%1 in").arg(sign + QLocale().toString(static_cast<qlonglong>(whole)));
    qint64 under = 16;
    while (over % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    const QString fraction = QStringLiteral("%1/%2").arg(over).arg(under);
    return tr("%1 in").arg(
        sign +
        (whole ? QLocale().toString(static_cast<qlonglong>(whole)) + QLatin1Char(' ') + fraction : fraction));
}

} // namespace

QString sizeText(Length length, const Units& units) {
    if (units.length == LengthUnit::inch)
        return inchText(inInches(length));
    const double mm = inMillimetres(length);
    return tr("%1 mm").arg(decimals(mm, std::abs(mm) < 20 && std::abs(mm - std::round(mm)) >= 0.05 ? 1 : 0));
}

QString cutText(Length length, const Units& units) {
    if (units.length == LengthUnit::inch) {
        const double all = inInches(length);
        if (all < 36)
            return inchText(all);
        // From a yard up the odd sixteenths mean nothing.
        const auto whole = std::llround(all);
        return whole % 12 == 0 ? tr("%1 ft").arg(QLocale().toString(whole / 12))
                               : tr("%1 ft %2 in").arg(QLocale().toString(whole / 12)).arg(whole % 12);
    }
    const double mm = inMillimetres(length);
    if (mm < 99.5)
        return tr("%1 mm").arg(decimals(mm, 0));
    if (mm < 995)
        return tr("%1 cm").arg(decimals(mm / 10, 0));
    return tr("%1 m").arg(decimals(mm / 1000, mm < 9'995 ? 2 : 1));
}

QString wireText(Length diameter, const std::optional<GaugeNumber>& gauge) {
    const QString size = tr("%1 mm").arg(decimals(inMillimetres(diameter), 2));
    if (!gauge)
        return size;
    return tr("%1 (%2)").arg(size, gaugeText(*gauge));
}

QString gaugeText(GaugeNumber gauge) {
    return tr("%1 %2", "gauge system and number").arg(systemText(gauge.system)).arg(gauge.number);
}

QString systemText(GaugeSystem system) {
    switch (system) {
    case GaugeSystem::awg:
        return tr("AWG");
    case GaugeSystem::swg:
        return tr("SWG");
    case GaugeSystem::steel:
        return tr("steel gauge");
    }
    return {};
}

QString metalText(const MetalName& metal) {
    return metal.own.empty() ? metalText(metal.metal) : QString::fromStdString(metal.own);
}

QString metalText(Metal metal) {
    switch (metal) {
    case Metal::softCopper:
        return tr("copper, soft");
    case Metal::hardCopper:
        return tr("copper, hard");
    case Metal::softBrass:
        return tr("brass, soft");
    case Metal::hardBrass:
        return tr("brass, hard");
    case Metal::mildSteel:
        return tr("mild steel");
    case Metal::softSteel:
        return tr("steel, soft (annealed)");
    case Metal::aluminium:
        return tr("aluminium");
    }
    return {};
}

QString massText(Mass mass, const Units& units) {
    if (units.mass == MassUnit::ounce)
        return tr("%1 oz").arg(decimals(inOunces(mass), inOunces(mass) < 10 ? 2 : 1));
    return tr("%1 g").arg(decimals(inGrams(mass), inGrams(mass) < 10 ? 1 : 0));
}

QString countText(qint64 count) {
    return QLocale().toString(count);
}
QString partlyKnownTimeText() {
    return tr("Work whose time is not known yet is not counted.");
}

QString driftText(double drift) {
    return decimals(drift, 1);
}

QString shareText(double value) {
    QString text = decimals(value, 2);
    const QString point = QLocale().decimalPoint();
    // Only what stands behind the point: a lone 0 stays.
    while (text.contains(point) && (text.endsWith(QLatin1Char('0')) || text.endsWith(point)))
        text.chop(1);
    return text;
}

QString arrangementText(Arrangement arrangement) {
    switch (arrangement) {
    case Arrangement::decussate:
        return tr("opposite, a quarter turn each (decussate)");
    case Arrangement::onePlane:
        return tr("opposite, in one plane");
    case Arrangement::alternate:
        return tr("alternate");
    case Arrangement::whorled:
        return tr("whorled");
    case Arrangement::spiral:
        return tr("spiral");
    }
    return {};
}

QString endText(LeafEnd end) {
    return end == LeafEnd::round ? tr("round") : tr("pointed");
}

QString shapeText(PotShape shape) {
    switch (shape) {
    case PotShape::cylinder:
        return tr("cylinder");
    case PotShape::frustum:
        return tr("tapering");
    case PotShape::bowl:
        return tr("bowl");
    }
    return {};
}

QString openingText(PotOpening opening) {
    switch (opening) {
    case PotOpening::round:
        return tr("round");
    case PotOpening::oval:
        return tr("oval");
    case PotOpening::rectangular:
        return tr("rectangular");
    }
    return {};
}

QString wrapText(WrapWith with) {
    switch (with) {
    case WrapWith::wire:
        return tr("wire");
    case WrapWith::floss:
        return tr("floss");
    case WrapWith::tape:
        return tr("tape");
    }
    return {};
}

QString sideText(Side side) {
    switch (side) {
    case Side::left:
        return tr("left");
    case Side::front:
        return tr("front");
    case Side::right:
        return tr("right");
    case Side::back:
        return tr("back");
    }
    return {};
}

QString planeText(Plane plane) {
    return plane == Plane::sideToSide ? tr("side to side") : tr("front to back");
}

QString slotText(const Plan& plan, const Slot& slot) {
    const QString kind = nameText(plan, slot.leaf.kind);
    QString said;
    if (slot.filled()) {
        const Mix* mix = find(plan, slot.leaf.mix);
        said = tr("%1 leaf, %2 (%3)")
                   .arg(kind, nameText(plan, slot.leaf.mix), mix ? lineText(mix->code) : QString());
    } else {
        said = kind.isEmpty() ? tr("empty") : tr("empty, waits for a %1 leaf").arg(kind);
    }
    return slot.pinned ? tr("%1, pinned").arg(said) : said;
}

QString placeText(const Plan& plan, SlotRef at) {
    const Stem* stem = find(plan, at.stem);
    if (!stem)
        return {};
    const QString name = lineText(stem->name);
    if (at.tier < 0 || static_cast<std::size_t>(at.tier) >= stem->tiers.size())
        return name;
    const Tier& tier = stem->tiers[static_cast<std::size_t>(at.tier)];
    if (at.slot < 0 || static_cast<std::size_t>(at.slot) >= tier.slots.size())
        return tr("%1, tier %2").arg(name).arg(at.tier + 1);
    return tr("%1, tier %2, %3")
        .arg(name)
        .arg(at.tier + 1)
        .arg(sideText(sideOf(slotTurn(tier, static_cast<std::size_t>(at.slot)))));
}

QString lineText(const QString& said) {
    QString line;
    line.reserve(said.size());
    bool broken = false;
    for (const QChar c : said) {
        const QChar::Category category = c.category();
        const bool breaks = category == QChar::Other_Control || category == QChar::Separator_Line ||
                            category == QChar::Separator_Paragraph;
        if (!breaks)
            line += c;
        else if (!broken)
            line += QLatin1Char(' ');
        broken = breaks;
    }
    return line;
}
QString lineText(const std::string& utf8) {
    return lineText(text(utf8));
}

QString nameText(const Plan& plan, KindId kind) {
    const Kind* found = find(plan, kind);
    return found ? lineText(found->name) : QString();
}
QString nameText(const Plan& plan, MixId mix) {
    const Mix* found = find(plan, mix);
    return found ? lineText(found->name) : QString();
}
QString nameText(const Plan& plan, StemId stem) {
    const Stem* found = find(plan, stem);
    return found ? lineText(found->name) : QString();
}

} // namespace stemwright

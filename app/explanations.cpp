#include "app/explanations.h"

#include "app/wording.h"
#include "core/figures/pot_figures.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Explanations", source);
}

/// Numbers in a tooltip; more are only counted.
constexpr std::size_t mostInTip = 8;

QString inputLine(const Input& input, const Units& units) {
    const QString what =
        input.of.empty() ? termText(input.term) : tr("%1, %2").arg(termText(input.term), text(input.of));
    return tr("%1: %2").arg(what, inputValue(input, units));
}

QStringList sourceLines(const Explanation& explanation) {
    QStringList lines;
    for (const SourceName source : explanation.sources)
        lines << sourceText(source);
    return lines;
}

QString wrapNamed(const Plan& plan, std::size_t index) {
    if (index >= plan.binding.wraps.size())
        return {};
    const Wrap& wrap = plan.binding.wraps[index];
    return wrap.name.empty() ? wrapText(wrap.with) : lineText(wrap.name);
}

QString lineNamed(const Plan& plan, const Figures& figures, std::size_t index) {
    if (index >= figures.lines.size())
        return {};
    const Leaf leaf = figures.lines[index].leaf;
    return tr("%1, %2").arg(nameText(plan, leaf.mix), nameText(plan, leaf.kind));
}

QString decimalText(double value, int places) {
    return QLocale().toString(value, 'f', places);
}

QString stemValue(const Plan& plan, const StemFigures& of, FigureRef ref) {
    const Units& units = plan.units;
    const auto beads = [&] { return ref.index < of.beads.size() ? of.beads[ref.index] : 0; };
    const WrapFigures wrap = ref.index < of.wraps.size() ? of.wraps[ref.index] : WrapFigures{};
    switch (ref.figure) {
    case FigureName::height:
        return sizeText(of.height, units);
    case FigureName::tiers:
        return countText(of.tiers);
    case FigureName::slots:
        return countText(of.slots);
    case FigureName::leaves:
        return countText(of.leaves);
    case FigureName::held:
        return countText(ref.index < of.held.size() ? of.held[ref.index] : 0);
    case FigureName::fairShare:
        return shareText(ref.index < of.fairShare.size() ? of.fairShare[ref.index] : 0);
    case FigureName::unevenness:
        return shareText(of.unevenness);
    case FigureName::drift:
        return tr("ΔE00 %1").arg(driftText(of.drift));
    case FigureName::beads:
        return countText(beads());
    case FigureName::inversions:
        return countText(of.inversions);
    case FigureName::unmatchedPairs:
        return countText(of.unmatchedPairs);
    case FigureName::wires:
        return countText(of.wires);
    case FigureName::bundle:
        return wireText(of.bundle, std::nullopt);
    case FigureName::leafWire:
        return cutText(of.leafWire, units);
    case FigureName::wrapUsed:
        return cutText(wrap.used, units);
    case FigureName::wrapToCut:
        return cutText(wrap.toCut, units);
    case FigureName::mass:
        return massText(of.hold.mass, units);
    case FigureName::moment:
        return tr("%1 N·mm").arg(decimalText(of.hold.moment, 1));
    case FigureName::plasticMoment:
        return tr("%1 N·mm").arg(decimalText(of.hold.plasticMoment, 1));
    case FigureName::hold:
        return of.hold.moment > 0 ? driftText(of.hold.hold) : tr("nothing to hold");
    case FigureName::sag:
        return of.hold.sagBeyondFormula
                   ? tr("about %1, more than the formula is good for").arg(sizeText(of.hold.sag, units))
                   : sizeText(of.hold.sag, units);
    case FigureName::centre:
        return sizeText(of.hold.centre, units);
    default:
        return {};
    }
}

QString potValue(const Plan& plan, const Figures& figures, FigureRef ref) {
    const Units& units = plan.units;
    const PotFigures& pot = figures.pot;
    const auto beadsIn = [&](const std::vector<std::int64_t>& list) {
        return countText(ref.index < list.size() ? list[ref.index] : 0);
    };
    const WrapFigures wrap = ref.index < pot.wraps.size() ? pot.wraps[ref.index] : WrapFigures{};
    switch (ref.figure) {
    case FigureName::potStems:
        return countText(pot.stems);
    case FigureName::potSlots:
        return countText(pot.slots);
    case FigureName::potLeaves:
        return countText(pot.leaves);
    case FigureName::potInTray:
        return countText(pot.inTray);
    case FigureName::potUnevenness:
        return shareText(pot.unevenness);
    case FigureName::potDrift:
        return tr("ΔE00 %1").arg(driftText(pot.drift));
    case FigureName::potShortest:
        return sizeText(pot.shortest, units);
    case FigureName::potTallest:
        return sizeText(pot.tallest, units);
    case FigureName::potMeanHeight:
        return sizeText(pot.meanHeight, units);
    case FigureName::potHeightVariation:
        return tr("%1 %").arg(decimalText(pot.heightVariation * 100, 0));
    case FigureName::potNearTwins:
        return countText(pot.nearTwins);
    case FigureName::potBeads:
        return beadsIn(pot.beads);
    case FigureName::potAllBeads:
        return beadsIn(pot.allBeads);
    case FigureName::potLeafWire:
        return cutText(pot.leafWire, units);
    case FigureName::potAllLeafWire:
        return cutText(pot.allLeafWire, units);
    case FigureName::potToMake:
        return countText(pot.toMake);
    case FigureName::potWrapUsed:
        return cutText(wrap.used, units);
    case FigureName::potWrapToCut:
        return cutText(wrap.toCut, units);
    case FigureName::potMass:
        return massText(pot.mass, units);
    case FigureName::potStake:
        return sizeText(stakeLength(plan.pot), units);
    default:
        break;
    }
    const PotBalance balance = potBalance(plan, figures);
    switch (ref.figure) {
    case FigureName::potClay:
        return massText(balance.clay, units);
    case FigureName::potCover:
        return massText(balance.cover, units);
    case FigureName::potWhole:
        return massText(balance.whole, units);
    case FigureName::potCentre:
        return sizeText(balance.centre, units);
    case FigureName::potTilt:
        return balance.stands ? tr("%1°").arg(decimalText(inDegrees(balance.tilt), 0))
                              : tr("it falls by itself");
    case FigureName::potWeightToAdd:
        return balance.steady ? tr("none") : massText(balance.weightToAdd, units);
    default:
        return {};
    }
}

QString supplyValue(const Plan& plan, const Supplies& needs, FigureRef ref) {
    const Units& units = plan.units;
    const std::size_t i = ref.index;
    switch (ref.figure) {
    case FigureName::buyLeaves:
        return countText(needs.leavesToMake);
    case FigureName::buyBeads:
        return i < needs.beads.size() ? countText(needs.beads[i].withSpare) : QString();
    case FigureName::buyLeafWire:
        return i < needs.leafWire.size() ? cutText(needs.leafWire[i].length, units) : QString();
    case FigureName::buyWrap:
        return i < needs.wraps.size() ? cutText(needs.wraps[i].toCut, units) : QString();
    case FigureName::buyBars:
        return i < needs.bars.size() ? cutText(needs.bars[i].length, units) : QString();
    case FigureName::buyClay:
        return massText(needs.clay, units);
    case FigureName::buyCover:
        return massText(needs.cover, units);
    case FigureName::buyHours:
        return tr("%1 h").arg(decimalText(needs.minutesLeft / 60, needs.minutesLeft < 600 ? 1 : 0));
    case FigureName::buyCost:
        return decimalText(needs.cost, 2);
    default:
        return {};
    }
}

} // namespace

QString figureTitle(const Plan& plan, const Figures& figures, const Supplies& needs, FigureRef ref) {
    const QString name = figureName(ref.figure);
    const auto of = [&](const QString& part) { return part.isEmpty() ? name : tr("%1: %2").arg(name, part); };
    const auto colour = [&] {
        return ref.index < plan.colours.size() ? lineText(plan.colours[ref.index].name) : QString();
    };
    switch (ref.figure) {
    case FigureName::held:
    case FigureName::fairShare:
        return of(lineNamed(plan, figures, ref.index));
    case FigureName::beads:
    case FigureName::potBeads:
    case FigureName::potAllBeads:
        return of(colour());
    case FigureName::wrapUsed:
    case FigureName::wrapToCut:
    case FigureName::potWrapUsed:
    case FigureName::potWrapToCut:
    case FigureName::buyWrap:
        return of(wrapNamed(plan, ref.index));
    case FigureName::buyBeads:
        if (ref.index < needs.beads.size())
            if (const Colour* found = find(plan, needs.beads[ref.index].colour))
                return of(tr("%1 %2").arg(lineText(found->name), lineText(needs.beads[ref.index].size)));
        return name;
    case FigureName::buyLeafWire:
        if (ref.index < needs.leafWire.size())
            return of(tr("%1, %2").arg(wireText(needs.leafWire[ref.index].diameter, std::nullopt),
                                       metalText(needs.leafWire[ref.index].metal)));
        return name;
    case FigureName::buyBars:
        if (ref.index < needs.bars.size())
            return of(tr("%1, %2").arg(wireText(needs.bars[ref.index].diameter, std::nullopt),
                                       metalText(needs.bars[ref.index].metal)));
        return name;
    default:
        return name;
    }
}

QString figureValue(const Plan& plan, const Figures& figures, const Supplies& needs, FigureRef ref) {
    if (isOfSupplies(ref.figure))
        return supplyValue(plan, needs, ref);
    if (!isOfStem(ref.figure))
        return potValue(plan, figures, ref);
    return ref.stem < figures.stems.size() ? stemValue(plan, figures.stems[ref.stem], ref) : QString();
}

QString inputValue(const Input& input, const Units& units) {
    const double v = input.value;
    switch (input.unit) {
    case TermUnit::count:
        return countText(qRound64(v));
    case TermUnit::decimal:
        return shareText(v);
    case TermUnit::percent:
        return tr("%1 %").arg(decimalText(v * 100, 0));
    case TermUnit::size:
        return sizeText(millimetres(v), units);
    case TermUnit::cut:
        return cutText(millimetres(v), units);
    case TermUnit::wire:
        return wireText(millimetres(v), std::nullopt);
    case TermUnit::mass:
        return massText(grams(v), units);
    case TermUnit::angle:
        return tr("%1°").arg(decimalText(v, 0));
    case TermUnit::moment:
        return tr("%1 N·mm").arg(decimalText(v, 1));
    case TermUnit::volume:
        return tr("%1 cm³").arg(decimalText(v / 1000, 0));
    case TermUnit::density:
        return tr("%1 kg/m³").arg(decimalText(v, 0));
    case TermUnit::money:
        return decimalText(v, 2);
    case TermUnit::minutes:
        return tr("%1 min").arg(decimalText(v, 0));
    }
    return {};
}

QString explanationText(const Explanation& explanation, const Units& units) {
    QStringList lines{formulaText(explanation.figure)};
    for (std::size_t i = 0; i < explanation.inputs.size() && i < mostInTip; ++i)
        lines << inputLine(explanation.inputs[i], units);
    if (explanation.inputs.size() > mostInTip)
        lines << tr("and %1 more").arg(explanation.inputs.size() - mostInTip);
    if (explanation.estimate)
        lines << estimateText();
    lines << tr("Source: %1").arg(sourceLines(explanation).join(tr("; ")));
    return lines.join(QLatin1Char('\n'));
}

QString explanationHtml(const Explanation& explanation, const QString& title, const QString& value,
                        const Units& units) {
    QString out =
        QStringLiteral("<h3>%1: %2</h3><p>%3</p>")
            .arg(title.toHtmlEscaped(), value.toHtmlEscaped(), formulaText(explanation.figure).toHtmlEscaped());
    if (!explanation.inputs.empty()) {
        out +=
            QStringLiteral("<p><b>%1</b></p><table cellspacing='4'>").arg(tr("What went in").toHtmlEscaped());
        for (const Input& input : explanation.inputs) {
            const QString what = input.of.empty() ? termText(input.term)
                                                  : tr("%1, %2").arg(termText(input.term), text(input.of));
            out += QStringLiteral("<tr><td>%1</td><td align='right'>%2</td></tr>")
                       .arg(what.toHtmlEscaped(), inputValue(input, units).toHtmlEscaped());
        }
        out += QStringLiteral("</table>");
    }
    if (explanation.estimate)
        out += QStringLiteral("<p>%1</p>").arg(estimateText().toHtmlEscaped());
    out += QStringLiteral("<p><b>%1</b></p><ul>").arg(tr("Where it comes from").toHtmlEscaped());
    for (const QString& source : sourceLines(explanation))
        out += QStringLiteral("<li>%1</li>").arg(source.toHtmlEscaped());
    return out + QStringLiteral("</ul>");
}

QString holdText(const HoldFigures& hold) {
    if (!(hold.moment > 0))
        return tr("There is nothing to hold yet.");
    const QString said = hold.hold >= wantedHold
                             ? tr("It holds its pose even laid level, with as much again to spare.")
                         : hold.hold >= 1        ? tr("It holds its pose, and just bears being laid level.")
                         : hold.hold >= weakHold ? tr("It stands, but would bend if it were laid level.")
                                                 : tr("It may not hold its pose: it would bend when it leans.");
    return tr("%1 %2").arg(said, estimateText());
}

} // namespace stemwright

#include "app/supply_lines.h"

#include "app/wording.h"

#include <QCoreApplication>
#include <QLocale>

#include <numeric>

namespace stemwright {

namespace {

QString tr(const char* source, int count = -1) {
    return QCoreApplication::translate("SupplyLines", source, nullptr, count);
}

QString joined(const QString& amount, const QString& packs) {
    return packs.isEmpty() ? amount : QStringLiteral("%1 · %2").arg(amount, packs);
}

QString packsOf(WrapWith with, int packs) {
    if (packs <= 0)
        return {};
    switch (with) {
    case WrapWith::wire:
        return tr("%n spool(s)", packs);
    case WrapWith::floss:
        return tr("%n skein(s)", packs);
    case WrapWith::tape:
        return tr("%n roll(s)", packs);
    }
    return {};
}

QString wrapName(const Wrap& wrap) {
    switch (wrap.with) {
    case WrapWith::wire:
        return tr("Binding wire %1").arg(wireText(wrap.width, wrap.gauge));
    case WrapWith::floss:
        return tr("Floss, %n strand(s)", wrap.strands);
    case WrapWith::tape:
        return tr("Tape");
    }
    return {};
}

/// "9 × 60 mm", or where they differ their count and all of it.
QString piecesText(const BarSupply& bar, const Units& units) {
    const bool alike = std::all_of(bar.pieces.begin(), bar.pieces.end(),
                                   [&](const CutPiece& p) { return p.length == bar.pieces.front().length; });
    const int count = static_cast<int>(bar.pieces.size());
    return alike ? QStringLiteral("%1 × %2").arg(countText(count), sizeText(bar.pieces.front().length, units))
                 : QStringLiteral("%1, %2").arg(tr("%n piece(s)", count), cutText(bar.length, units));
}

} // namespace

std::vector<SupplyLine> supplyLines(const Plan& plan, const Supplies& needs) {
    const Units& units = plan.units;
    std::vector<SupplyLine> lines;
    lines.push_back(
        {tr("Leaves to make"), countText(needs.leavesToMake), tr("Stock that is not made yet."), false});
    if (!needs.beads.empty()) {
        std::int64_t beads = 0;
        Mass mass;
        for (const BeadSupply& bead : needs.beads) {
            beads += bead.withSpare;
            mass += bead.mass;
        }
        lines.push_back({tr("Seed beads"), joined(countText(beads), massText(mass, units)),
                         tr("In the leaves to make, with the spare that the plan asks for."), false});
        for (const BeadSupply& bead : needs.beads)
            lines.push_back({QStringLiteral("%1 %2").arg(text(find(plan, bead.colour)->name), text(bead.size)),
                             joined(countText(bead.withSpare), massText(bead.mass, units)),
                             tr("Strung: %1.").arg(cutText(bead.strung, units)), true});
    }
    for (const LeafWireSupply& wire : needs.leafWire)
        lines.push_back({tr("Leaf wire %1").arg(wireText(wire.diameter, std::nullopt)),
                         joined(cutText(wire.length, units), packsOf(WrapWith::wire, wire.buy.packs)),
                         tr("For the leaves to make, with the spare that the plan asks for."), false});
    for (std::size_t i = 0; i < needs.wraps.size(); ++i)
        if (inMillimetres(needs.wraps[i].toCut) > 0)
            lines.push_back(
                {wrapName(plan.binding.wraps[i]),
                 joined(cutText(needs.wraps[i].toCut, units),
                        packsOf(plan.binding.wraps[i].with, needs.wraps[i].buy.packs)),
                 tr("What to cut for the stems that are not bound yet: turns of √((π(D + t))² + advance²) "
                    "around the bundle, the tail laid in, the finish and what the hand must hold. A stem "
                    "is bound in one piece."),
                 false});
    for (const BarSupply& bar : needs.bars)
        if (!bar.pieces.empty())
            lines.push_back(
                {tr("Straight wire %1").arg(wireText(bar.diameter, std::nullopt)),
                 joined(piecesText(bar, units),
                        bar.cutting.barCount > 0 ? tr("%n length(s)", bar.cutting.barCount) : QString()),
                 tr("Stakes and cores, cut from the fewest lengths on sale with the least waste."), false});
    if (inGrams(needs.clay) > 0)
        lines.push_back({tr("Clay"), massText(needs.clay, units),
                         tr("The pot's shape filled to the clay's depth."), false});
    if (inGrams(needs.cover) > 0)
        lines.push_back({tr("Cover"), massText(needs.cover, units), tr("What lies on the clay."), false});
    if (needs.minutesLeft > 0)
        lines.push_back(
            {tr("Hours left"),
             (needs.minutesPartly ? tr("%1 and more") : QStringLiteral("%1"))
                 .arg(QLocale().toString(needs.minutesLeft / 60, 'f', needs.minutesLeft < 600 ? 1 : 0)),
             tr("Of the leaves to make by their kinds' minutes, and of the tiers to bind by those that "
                "are bound."),
             false});
    if (needs.cost > 0)
        lines.push_back(
            {tr("Cost"), QLocale().toString(needs.cost, 'f', 2), tr("Of all that has a price."), false});
    return lines;
}

} // namespace stemwright

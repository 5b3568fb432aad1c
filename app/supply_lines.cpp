#include "app/supply_lines.h"

#include "app/explanations.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include <algorithm>
#include <cstdint>
#include <limits>
#include <map>

namespace stemwright {

namespace {

QString tr(const char* source, std::int64_t count = -1) {
    // Qt counts in ints; what is more is of the same form in every language that has one for so many.
    constexpr int most = std::numeric_limits<int>::max();
    if (count <= most)
        return QCoreApplication::translate("SupplyLines", source, nullptr, static_cast<int>(count));
    return QCoreApplication::translate("SupplyLines", source, nullptr, most)
        .replace(QString::number(most), countText(count));
}

QString money(double cost) {
    return QLocale().toString(cost, 'f', 2);
}

QString packsOf(WrapWith with, std::int64_t packs) {
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

/// Amount, what to buy of it, and what that costs.
QString joined(const QString& amount, const QString& packs, double cost = 0) {
    QStringList parts{amount};
    if (!packs.isEmpty())
        parts << packs;
    if (cost > 0)
        parts << money(cost);
    return parts.join(QStringLiteral(" · "));
}

/// "9 × 60 mm", or where they differ their count and all of it.
QString piecesText(const BarSupply& bar, const Units& units) {
    const bool alike = std::all_of(bar.pieces.begin(), bar.pieces.end(),
                                   [&](const CutPiece& p) { return p.length == bar.pieces.front().length; });
    const int count = static_cast<int>(bar.pieces.size());
    return alike ? QStringLiteral("%1 × %2").arg(countText(count), sizeText(bar.pieces.front().length, units))
                 : QStringLiteral("%1, %2").arg(tr("%n piece(s)", count), cutText(bar.length, units));
}

class Lister {
public:
    Lister(const Plan& plan, const Supplies& needs) : plan_(plan), needs_(needs), units_(plan.units) {}

    std::vector<SupplyLine> run() {
        line(FigureName::buyLeaves, 0, tr("Leaves to make"), countText(needs_.leavesToMake));
        beads();
        for (std::size_t i = 0; i < needs_.leafWire.size(); ++i) {
            const LeafWireSupply& wire = needs_.leafWire[i];
            line(FigureName::buyLeafWire, i,
                 tr("Leaf wire %1, %2").arg(wireText(wire.diameter, std::nullopt), metalText(wire.metal)),
                 joined(tr("%1, %2").arg(cutText(wire.length, units_), massText(wire.mass, units_)),
                        packsOf(WrapWith::wire, wire.buy.packs), wire.buy.cost));
        }
        for (std::size_t i = 0; i < needs_.wraps.size(); ++i)
            if (needs_.wraps[i].toCut > Length{})
                wrap(i);
        for (std::size_t i = 0; i < needs_.bars.size(); ++i)
            if (!needs_.bars[i].pieces.empty())
                bar(i);
        rest();
        return std::move(lines_);
    }

private:
    void line(FigureName figure, std::size_t index, const QString& what, const QString& amount,
              bool part = false) {
        const FigureRef ref{figure, 0, index};
        lines_.push_back({what, amount, explanationText(explain(plan_, {}, needs_, ref), units_), part, ref});
    }
    /// A part that is no figure of its own.
    void note(const QString& what, const QString& amount = {}) {
        const SupplyLine& above = lines_.back();
        lines_.push_back({what, amount, above.explanation, true, above.ref});
    }

    void beads() {
        if (needs_.beads.empty())
            return;
        std::int64_t beads = 0;
        Mass mass;
        double cost = 0;
        for (const BeadSupply& bead : needs_.beads) {
            beads += bead.withSpare;
            mass += bead.mass;
            cost += bead.buy.cost;
        }
        line(FigureName::buyBeads, 0, tr("Seed beads"), joined(countText(beads), massText(mass, units_), cost));
        lines_.back().explanation = tr("In the leaves to make, with %1 % to spare.")
                                        .arg(QLocale().toString(plan_.buying.spare * 100, 'f', 0));
        for (std::size_t i = 0; i < needs_.beads.size(); ++i) {
            const BeadSupply& bead = needs_.beads[i];
            const QString weighed = bead.mass > Mass{} ? massText(bead.mass, units_) : QString();
            line(FigureName::buyBeads, i,
                 tr("%1 %2").arg(lineText(find(plan_, bead.colour)->name), lineText(bead.size)),
                 joined(joined(countText(bead.withSpare), weighed),
                        bead.buy.packs > 0 ? tr("%n packet(s)", bead.buy.packs) : QString(), bead.buy.cost),
                 true);
            if (bead.strung > Length{})
                lines_.back().explanation.prepend(tr("Strung: %1.").arg(cutText(bead.strung, units_)) +
                                                  QLatin1Char('\n'));
        }
    }

    void cutting(const CuttingPlan& plan, const auto& pieces) {
        for (const CutBar& cut : plan.bars)
            note(tr("%1 × %2: %3").arg(countText(cut.times), cutText(cut.bar, units_), pieces(cut)),
                 cut.left > Length{} ? tr("%1 left").arg(cutText(cut.left, units_)) : QString());
        if (!plan.bars.empty())
            note(proofText(plan, units_));
    }

    void wrap(std::size_t i) {
        const WrapSupply& supply = needs_.wraps[i];
        const Wrap& wrap = plan_.binding.wraps[i];
        line(FigureName::buyWrap, i, wrapName(wrap),
             joined(cutText(supply.toCut, units_), packsOf(wrap.with, supply.buy.packs), supply.buy.cost));
        if (wrap.overlapMeasured)
            note(tr("By the overlap that your own bound stems took."));
        cutting(supply.cutting, [&](const CutBar& cut) { return skeinPiecesText(plan_, supply, cut); });
        QStringList stems;
        for (const std::size_t piece : supply.cutting.tooLong)
            stems << nameText(plan_, supply.stems[piece]);
        if (!stems.isEmpty())
            note(tr("Longer than one as it is sold: %1").arg(stems.join(tr(", "))));
    }

    void bar(std::size_t i) {
        const BarSupply& supply = needs_.bars[i];
        line(FigureName::buyBars, i,
             tr("Straight wire %1, %2").arg(wireText(supply.diameter, std::nullopt), metalText(supply.metal)),
             joined(piecesText(supply, units_),
                    supply.cutting.barCount > 0 ? tr("%n length(s)", supply.cutting.barCount) : QString(),
                    supply.buy.cost));
        cutting(supply.cutting, [&](const CutBar& cut) { return barPiecesText(plan_, supply, cut); });
        QStringList stems;
        for (const std::size_t piece : supply.cutting.tooLong)
            stems << nameText(plan_, supply.stems[piece]);
        if (!stems.isEmpty() && !plan_.buying.bars.empty())
            note(tr("Longer than any length on sale: %1").arg(stems.join(tr(", "))));
    }

    void rest() {
        const auto filling = [&](FigureName figure, const QString& what, Mass mass, const Purchase& buy) {
            if (mass > Mass{})
                line(figure, 0, what,
                     joined(massText(mass, units_), buy.packs > 0 ? tr("%n pack(s)", buy.packs) : QString(),
                            buy.cost));
        };
        filling(FigureName::buyClay, tr("Clay"), needs_.clay, needs_.clayToBuy);
        filling(FigureName::buyCover, tr("Cover"), needs_.cover, needs_.coverToBuy);
        if (needs_.minutesLeft > 0 || needs_.minutesPartly) {
            const QString hours =
                QLocale().toString(needs_.minutesLeft / 60, 'f', needs_.minutesLeft < 600 ? 1 : 0);
            line(FigureName::buyHours, 0, tr("Hours left"),
                 needs_.minutesLeft <= 0 ? tr("not known")
                 : needs_.minutesPartly  ? tr("%1 and more").arg(hours)
                                         : hours);
        }
        if (needs_.cost > 0)
            line(FigureName::buyCost, 0, tr("Cost"), money(needs_.cost));
    }

    const Plan& plan_;
    const Supplies& needs_;
    const Units& units_;
    std::vector<SupplyLine> lines_;
};

} // namespace

std::vector<SupplyLine> supplyLines(const Plan& plan, const Supplies& needs) {
    return Lister(plan, needs).run();
}

QString wrapName(const Wrap& wrap) {
    if (!wrap.name.empty())
        return lineText(wrap.name);
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

QString barPiecesText(const Plan& plan, const BarSupply& supply, const CutBar& bar) {
    // Alike pieces together, the longest first.
    std::map<std::pair<Length, bool>, QStringList> alike;
    for (std::size_t i = 0; i < bar.pieces.size(); ++i)
        if (bar.pieces[i] > 0)
            alike[{-supply.pieces[i].length, supply.stakes[i]}] << nameText(plan, supply.stems[i]);
    QStringList parts;
    for (const auto& [what, stems] : alike)
        parts << (what.second ? tr("stake of %1 for %2") : tr("core of %1 for %2"))
                     .arg(sizeText(-what.first, plan.units), stems.join(tr(", ")));
    return parts.join(tr("; "));
}

QString skeinPiecesText(const Plan& plan, const WrapSupply& supply, const CutBar& bar) {
    QStringList stems;
    for (std::size_t i = 0; i < bar.pieces.size(); ++i)
        if (bar.pieces[i] > 0)
            stems << nameText(plan, supply.stems[i]);
    return stems.join(tr(", "));
}

QString proofText(const CuttingPlan& cutting, const Units& units) {
    if (cutting.proved)
        return tr("Proved: no plan takes fewer, and none of as few wastes less.");
    if (cutting.fewestBars < cutting.barCount)
        return tr("Not proved the best: %1 are taken, and fewer than %2 cannot be enough.")
            .arg(countText(cutting.barCount), countText(cutting.fewestBars));
    return tr("Proved the fewest; up to %1 less might be left over.")
        .arg(cutText(cutting.bought - cutting.leastBought, units));
}

} // namespace stemwright

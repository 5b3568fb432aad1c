#include "app/figures_text.h"

#include "app/explanations.h"
#include "app/supply_lines.h"
#include "app/wording.h"
#include "core/figures/leaf_mass.h"
#include "core/figures/pot_figures.h"
#include "core/figures/supplies.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <QStringList>

#include <nlohmann/json.hpp>

#include <cmath>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("FiguresText", source);
}

using Json = nlohmann::ordered_json;

/// Six significant digits are more than any figure here deserves, and keep 0.1 + 0.2 out of scripts' sight.
double tidy(double value) {
    if (value == 0 || !std::isfinite(value))
        return 0;
    const double scale = std::pow(10.0, 5 - std::floor(std::log10(std::abs(value))));
    return std::round(value * scale) / scale;
}
double mm(Length length) {
    return tidy(inMillimetres(length));
}

const char* word(WrapWith with) {
    switch (with) {
    case WrapWith::wire:
        return "wire";
    case WrapWith::floss:
        return "floss";
    case WrapWith::tape:
        return "tape";
    }
    return "";
}

Json wrapsJson(const Plan& plan, const std::vector<WrapFigures>& wraps) {
    Json list = Json::array();
    for (std::size_t i = 0; i < wraps.size(); ++i)
        list.push_back({{"with", word(plan.binding.wraps[i].with)},
                        {"used_mm", mm(wraps[i].used)},
                        {"to_cut_mm", mm(wraps[i].toCut)}});
    return list;
}

Json beadsJson(const Plan& plan, const std::vector<std::int64_t>& beads) {
    Json list = Json::array();
    for (std::size_t i = 0; i < beads.size(); ++i)
        list.push_back(
            {{"colour", plan.colours[i].id.value}, {"name", plan.colours[i].name}, {"beads", beads[i]}});
    return list;
}

/// What runs on below in a list keeps within a terminal of 80 columns.
constexpr qsizetype widestWhat = 46; ///< beside an amount
constexpr qsizetype widestNote = 78; ///< alone

/// In lines of at most `most` characters where a piece is not longer than that, all but the first set in. A
/// list breaks between its names and not within them.
QStringList folded(const QString& said, qsizetype most, const QString& indent) {
    static const QRegularExpression between(QStringLiteral("(?<=[,;:]) ")), space(QStringLiteral(" "));
    QStringList lines;
    QString line = indent;
    for (const QString& word : said.split(said.contains(QLatin1String(", ")) ? between : space)) {
        if (line.size() > indent.size() && line.size() + 1 + word.size() > most) {
            lines << line;
            line = indent + QStringLiteral("  ");
            line += word;
            continue;
        }
        line += (line.size() > indent.size() ? QStringLiteral(" ") : QString()) + word;
    }
    return lines << line;
}

/// Columns that line up in any fixed-width type: text to the left, figures to the right. A row of one cell runs
/// on over the columns and widens none.
QString table(const std::vector<QStringList>& rows) {
    std::vector<qsizetype> widths(1, 0);
    for (const QStringList& row : rows)
        for (qsizetype c = 0; c < row.size() && row.size() > 1; ++c) {
            if (static_cast<std::size_t>(c) >= widths.size())
                widths.push_back(0);
            widths[static_cast<std::size_t>(c)] = std::max(widths[static_cast<std::size_t>(c)], row[c].size());
        }
    QString text;
    for (const QStringList& row : rows) {
        QString lineText;
        for (qsizetype c = 0; c < row.size(); ++c) {
            const qsizetype width = widths[static_cast<std::size_t>(c)];
            lineText +=
                c == 0 ? row[c].leftJustified(width) : QStringLiteral("  ") + row[c].rightJustified(width);
        }
        while (lineText.endsWith(QLatin1Char(' ')))
            lineText.chop(1);
        text += lineText + QLatin1Char('\n');
    }
    return text;
}

/// Over a column.
QString wrapHead(const Wrap& wrap) {
    switch (wrap.with) {
    case WrapWith::wire:
        return tr("binding wire");
    case WrapWith::floss:
        return tr("floss");
    case WrapWith::tape:
        return tr("tape");
    }
    return {};
}

} // namespace

QString suppliesText(const Plan& plan, const Supplies& needs) {
    std::vector<QStringList> rows;
    for (const SupplyLine& line : supplyLines(plan, needs)) {
        const QStringList what = folded(line.what, line.amount.isEmpty() ? widestNote : widestWhat,
                                        line.part ? QStringLiteral("  ") : QString());
        for (const QString& one : what)
            rows.push_back(line.amount.isEmpty() ? QStringList{one} : QStringList{one, QString()});
        if (!line.amount.isEmpty())
            rows.back()[1] = line.amount;
    }
    return tr("Supplies") + QLatin1Char('\n') + table(rows);
}

QString figuresText(const Plan& plan, const Figures& figures) {
    const Units& units = plan.units;
    const PotFigures& pot = figures.pot;
    QString out = lineText(plan.about.title) + QLatin1Char('\n') + QLatin1Char('\n');

    QStringList head{tr("stem"),  tr("height"), tr("tiers"), tr("leaves"), tr("uneven"),   tr("drift"),
                     tr("wires"), tr("foot"),   tr("mass"),  tr("hold"),   tr("leaf wire")};
    for (const Wrap& wrap : plan.binding.wraps)
        head << wrapHead(wrap);
    std::vector<QStringList> rows{head};
    for (const StemFigures& stem : figures.stems) {
        QStringList row{nameText(plan, stem.stem),
                        sizeText(stem.height, units),
                        countText(stem.tiers),
                        countText(stem.leaves),
                        shareText(stem.unevenness),
                        driftText(stem.drift),
                        countText(stem.wires),
                        sizeText(stem.bundle, units),
                        massText(stem.hold.mass, units),
                        stem.hold.moment > 0 ? driftText(stem.hold.hold) : QStringLiteral("–"),
                        cutText(stem.leafWire, units)};
        for (const WrapFigures& wrap : stem.wraps)
            row << cutText(wrap.toCut, units);
        rows.push_back(row);
    }
    out += table(rows) + QLatin1Char('\n');

    std::vector<QStringList> all{
        {tr("leaves on stems"), countText(pot.leaves)},
        {tr("leaves in the tray"), countText(pot.inTray)},
        {tr("leaves to make"), countText(pot.toMake)},
        {tr("places for leaves"), countText(pot.slots)},
        {tr("heights"), tr("%1 to %2, variation %3 %")
                            .arg(sizeText(pot.shortest, units), sizeText(pot.tallest, units),
                                 QLocale().toString(pot.heightVariation * 100, 'f', 0))},
        {tr("near twins"), countText(pot.nearTwins)},
        {tr("unevenness"), shareText(pot.unevenness)},
        {tr("drift, ΔE00"), driftText(pot.drift)},
        {tr("leaf wire, on stems"), cutText(pot.leafWire, units)},
        {tr("leaf wire, all leaves"), cutText(pot.allLeafWire, units)}};
    for (std::size_t i = 0; i < pot.wraps.size(); ++i)
        all.push_back(
            {tr("%1, to cut").arg(wrapHead(plan.binding.wraps[i])), cutText(pot.wraps[i].toCut, units)});
    for (std::size_t i = 0; i < plan.colours.size(); ++i)
        all.push_back({tr("beads, %1").arg(lineText(plan.colours[i].name)),
                       tr("%1 on stems, %2 in all").arg(countText(pot.beads[i]), countText(pot.allBeads[i]))});
    out += table(all) + QLatin1Char('\n');
    out += suppliesText(plan, supplies(plan, figures)) + QLatin1Char('\n') +
           tr("Hold: %1 %2").arg(formulaText(FigureName::hold), estimateText()) + QLatin1Char('\n');
    for (const Kind& kind : plan.kinds)
        if (beadsUnweighed(plan, kind))
            out += tr("Not in mass and hold: the beads of %1 leaves, %2, since nobody knows what they weigh.")
                       .arg(text(kind.name), text(kind.beadSize)) +
                   QLatin1Char('\n');
    return out;
}

namespace {

Json buyJson(const Purchase& buy) {
    return {{"packs", buy.packs}, {"cost", tidy(buy.cost)}};
}

/// How each bar is cut: what pieces, by their place in the list of pieces, and what is left.
Json cutsJson(const CuttingPlan& cutting) {
    Json bars = Json::array();
    for (const CutBar& bar : cutting.bars) {
        Json pieces = Json::array();
        for (std::size_t i = 0; i < bar.pieces.size(); ++i)
            for (int k = 0; k < bar.pieces[i]; ++k)
                pieces.push_back(i);
        bars.push_back({{"times", bar.times},
                        {"length_mm", mm(bar.bar)},
                        {"pieces", std::move(pieces)},
                        {"left_mm", mm(bar.left)}});
    }
    return {{"bars", std::move(bars)},
            {"count", cutting.barCount},
            {"fewest_possible", cutting.fewestBars},
            {"bought_mm", mm(cutting.bought)},
            {"least_possible_mm", mm(cutting.leastBought)},
            {"waste_mm", mm(cutting.waste)},
            {"proved", cutting.proved},
            {"too_long", cutting.tooLong}};
}

Json barsJson(const std::vector<BarSupply>& bars) {
    Json list = Json::array();
    for (const BarSupply& bar : bars) {
        Json pieces = Json::array();
        for (std::size_t i = 0; i < bar.pieces.size(); ++i)
            pieces.push_back({{"stem", bar.stems[i].value},
                              {"use", bar.stakes[i] ? "stake" : "core"},
                              {"length_mm", mm(bar.pieces[i].length)}});
        list.push_back({{"diameter_mm", mm(bar.diameter)},
                        {"length_mm", mm(bar.length)},
                        {"bars", bar.cutting.barCount},
                        {"cutting", cutsJson(bar.cutting)},
                        {"buy", buyJson(bar.buy)},
                        {"pieces", std::move(pieces)}});
    }
    return list;
}

Json suppliesJson(const Plan& plan, const Supplies& needs) {
    Json beads = Json::array();
    for (const BeadSupply& bead : needs.beads)
        beads.push_back({{"colour", bead.colour.value},
                         {"name", find(plan, bead.colour)->name},
                         {"size", bead.size},
                         {"beads", bead.beads},
                         {"with_spare", bead.withSpare},
                         {"mass_g", tidy(inGrams(bead.mass))},
                         {"strung_mm", mm(bead.strung)},
                         {"buy", buyJson(bead.buy)}});
    Json leafWire = Json::array();
    for (const LeafWireSupply& wire : needs.leafWire)
        leafWire.push_back({{"diameter_mm", mm(wire.diameter)},
                            {"length_mm", mm(wire.length)},
                            {"mass_g", tidy(inGrams(wire.mass))},
                            {"buy", buyJson(wire.buy)}});
    Json wraps = Json::array();
    for (std::size_t i = 0; i < needs.wraps.size(); ++i)
        wraps.push_back({{"with", word(plan.binding.wraps[i].with)},
                         {"to_cut_mm", mm(needs.wraps[i].toCut)},
                         {"cutting", cutsJson(needs.wraps[i].cutting)},
                         {"buy", buyJson(needs.wraps[i].buy)}});
    return {{"leaves_to_make", needs.leavesToMake},
            {"tiers_to_bind", needs.tiersToBind},
            {"beads", std::move(beads)},
            {"leaf_wire", std::move(leafWire)},
            {"wraps", std::move(wraps)},
            {"straight_wire", barsJson(needs.bars)},
            {"clay_g", tidy(inGrams(needs.clay))},
            {"clay_buy", buyJson(needs.clayToBuy)},
            {"cover_g", tidy(inGrams(needs.cover))},
            {"cover_buy", buyJson(needs.coverToBuy)},
            {"minutes_left", tidy(needs.minutesLeft)},
            {"minutes_partly_known", needs.minutesPartly},
            {"cost", tidy(needs.cost)}};
}

} // namespace

std::string figuresJson(const Plan& plan, const Figures& figures) {
    const PotBalance balance = potBalance(plan, figures);
    const PotFigures& pot = figures.pot;
    Json unweighed = Json::array();
    for (const Kind& kind : plan.kinds)
        if (beadsUnweighed(plan, kind))
            unweighed.push_back(kind.id.value);
    Json stems = Json::array();
    for (const StemFigures& stem : figures.stems) {
        Json leaves = Json::array();
        for (std::size_t i = 0; i < figures.lines.size(); ++i)
            if (stem.held[i] || stem.fairShare[i] > 0)
                leaves.push_back({{"kind", figures.lines[i].leaf.kind.value},
                                  {"mix", figures.lines[i].leaf.mix.value},
                                  {"held", stem.held[i]},
                                  {"fair_share", tidy(stem.fairShare[i])}});
        stems.push_back({{"id", stem.stem.value},
                         {"name", find(plan, stem.stem)->name},
                         {"height_mm", mm(stem.height)},
                         {"tiers", stem.tiers},
                         {"slots", stem.slots},
                         {"leaves", stem.leaves},
                         {"leaves_by_mix", std::move(leaves)},
                         {"unevenness", tidy(stem.unevenness)},
                         {"drift_de00", tidy(stem.drift)},
                         {"inversions", stem.inversions},
                         {"wires", stem.wires},
                         {"bundle_mm", mm(stem.bundle)},
                         {"mass_g", tidy(inGrams(stem.hold.mass))},
                         {"moment_n_mm", tidy(stem.hold.moment)},
                         {"plastic_moment_n_mm", tidy(stem.hold.plasticMoment)},
                         {"hold", tidy(stem.hold.hold)},
                         {"centre_mm", mm(stem.hold.centre)},
                         {"sag_mm", mm(stem.hold.sag)},
                         {"sag_beyond_formula", stem.hold.sagBeyondFormula},
                         {"leaf_wire_mm", mm(stem.leafWire)},
                         {"wraps", wrapsJson(plan, stem.wraps)},
                         {"beads", beadsJson(plan, stem.beads)}});
    }
    const Json all{{"title", plan.about.title},
                   {"stems", std::move(stems)},
                   {"pot",
                    {{"stems", pot.stems},
                     {"slots", pot.slots},
                     {"leaves", pot.leaves},
                     {"leaves_in_tray", pot.inTray},
                     {"leaves_to_make", pot.toMake},
                     {"unevenness", tidy(pot.unevenness)},
                     {"drift_de00", tidy(pot.drift)},
                     {"shortest_mm", mm(pot.shortest)},
                     {"tallest_mm", mm(pot.tallest)},
                     {"mean_height_mm", mm(pot.meanHeight)},
                     {"height_variation", tidy(pot.heightVariation)},
                     {"near_twins", pot.nearTwins},
                     {"mass_g", tidy(inGrams(pot.mass))},
                     {"kinds_of_unweighed_beads", std::move(unweighed)},
                     {"clay_g", tidy(inGrams(balance.clay))},
                     {"cover_g", tidy(inGrams(balance.cover))},
                     {"stake_mm", mm(stakeLength(plan.pot))},
                     {"whole_mass_g", tidy(inGrams(balance.whole))},
                     {"centre_mm", mm(balance.centre)},
                     {"tilt_deg", tidy(inDegrees(balance.tilt))},
                     {"stands", balance.stands},
                     {"weight_to_add_g", tidy(inGrams(balance.weightToAdd))},
                     {"leaf_wire_mm", mm(pot.leafWire)},
                     {"all_leaf_wire_mm", mm(pot.allLeafWire)},
                     {"wraps", wrapsJson(plan, pot.wraps)},
                     {"beads", beadsJson(plan, pot.beads)},
                     {"all_beads", beadsJson(plan, pot.allBeads)}}},
                   {"supplies", suppliesJson(plan, supplies(plan, figures))}};
    return all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace stemwright

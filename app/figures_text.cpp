#include "app/figures_text.h"

#include "app/wording.h"

#include <QCoreApplication>
#include <QLocale>
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

/// Columns that line up in any fixed-width type: text to the left, figures to the right.
QString table(const std::vector<QStringList>& rows) {
    std::vector<qsizetype> widths;
    for (const QStringList& row : rows)
        for (qsizetype c = 0; c < row.size(); ++c) {
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

QString wrapName(const Wrap& wrap) {
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

QString figuresText(const Plan& plan, const Figures& figures) {
    const Units& units = plan.units;
    const PotFigures& pot = figures.pot;
    QString out = text(plan.about.title) + QLatin1Char('\n') + QLatin1Char('\n');

    QStringList head{tr("stem"),  tr("height"), tr("tiers"), tr("leaves"),   tr("uneven"),
                     tr("drift"), tr("wires"),  tr("foot"),  tr("leaf wire")};
    for (const Wrap& wrap : plan.binding.wraps)
        head << wrapName(wrap);
    std::vector<QStringList> rows{head};
    for (const StemFigures& stem : figures.stems) {
        QStringList row{nameText(plan, stem.stem), sizeText(stem.height, units), countText(stem.tiers),
                        countText(stem.leaves),    shareText(stem.unevenness),   driftText(stem.drift),
                        countText(stem.wires),     sizeText(stem.bundle, units), cutText(stem.leafWire, units)};
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
            {tr("%1, to cut").arg(wrapName(plan.binding.wraps[i])), cutText(pot.wraps[i].toCut, units)});
    for (std::size_t i = 0; i < plan.colours.size(); ++i)
        all.push_back({tr("beads, %1").arg(text(plan.colours[i].name)),
                       tr("%1 on stems, %2 in all").arg(countText(pot.beads[i]), countText(pot.allBeads[i]))});
    return out + table(all);
}

std::string figuresJson(const Plan& plan, const Figures& figures) {
    const PotFigures& pot = figures.pot;
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
                     {"leaf_wire_mm", mm(pot.leafWire)},
                     {"all_leaf_wire_mm", mm(pot.allLeafWire)},
                     {"wraps", wrapsJson(plan, pot.wraps)},
                     {"beads", beadsJson(plan, pot.beads)},
                     {"all_beads", beadsJson(plan, pot.allBeads)}}}};
    return all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace stemwright

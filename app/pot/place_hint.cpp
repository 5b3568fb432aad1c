#include "app/pot/place_hint.h"

#include "app/wording.h"

#include "core/figures/pot_findings.h"
#include "core/figures/pot_shape.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("PlaceHint", source);
}

std::optional<Lab> colourOf(const Plan& plan, const StemFigures& stem) {
    std::vector<WeightedSrgb> parts;
    for (std::size_t c = 0; c < stem.beads.size(); ++c)
        parts.push_back({plan.colours[c].srgb, static_cast<double>(stem.beads[c])});
    const auto mean = mixed(parts);
    return mean ? std::optional(toLab(*mean)) : std::nullopt;
}

} // namespace

QStringList placeHint(const Plan& plan, const Figures& figures, const PlantBody& body,
                      std::span<const PlaceMm> at, std::size_t stem) {
    const Units& units = plan.units;
    const StemFigures& own = figures.stems[stem];
    QStringList lines{tr("%1, %2 high").arg(text(plan.stems[stem].name), sizeText(own.height, units))};
    const auto far = [&](std::size_t other) {
        return std::hypot(at[other].x - at[stem].x, at[other].y - at[stem].y);
    };
    std::vector<std::size_t> others;
    for (std::size_t i = 0; i < at.size(); ++i)
        if (i != stem)
            others.push_back(i);
    std::sort(others.begin(), others.end(), [&](std::size_t a, std::size_t b) { return far(a) < far(b); });
    const double foot = footRadius(plan, body.stems[stem]);
    const auto colour = colourOf(plan, own);
    for (std::size_t k = 0; k < std::min<std::size_t>(2, others.size()); ++k) {
        const std::size_t i = others[k];
        const StemFigures& other = figures.stems[i];
        const Length apart = millimetres(std::abs(inMillimetres(own.height - other.height)));
        QString line =
            tr("%1: %2 away, %3 in height")
                .arg(text(plan.stems[i].name), sizeText(millimetres(far(i)), units), sizeText(apart, units));
        if (const auto theirs = colourOf(plan, other); theirs && colour)
            line += tr(", ΔE00 %1").arg(driftText(difference(*colour, *theirs)));
        lines << line;
        if (const double room = body.stems[stem].clearance + body.stems[i].clearance - far(i); room > 0.5)
            lines << tr("   their leaves share %1").arg(sizeText(millimetres(room), units));
    }
    for (const std::size_t i : others)
        if (far(i) < foot + footRadius(plan, body.stems[i]) - 0.05)
            lines << tr("The stakes of %1 and %2 collide")
                         .arg(text(plan.stems[stem].name), text(plan.stems[i].name));
    if (beyondClay(plan.pot, at[stem].x, at[stem].y) + foot > 0.05)
        lines << tr("Outside the clay");
    return lines;
}

} // namespace stemwright

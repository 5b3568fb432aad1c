#include "core/document/leaf_presets.h"

#include "core/quantity/bead.h"

#include <cmath>

namespace stemwright {

namespace {

/// A leaf as it is made: `basic` beads in the middle row, `pairs` of rows around it.
struct Make {
    int basic;
    int pairs;
    LeafEnd tip;
    LeafEnd base;
    double minutes; ///< own guess, no source
};

Make makeOf(LeafPreset preset) {
    switch (preset) {
    case LeafPreset::tiny:
        return {3, 1, LeafEnd::round, LeafEnd::round, 6};
    case LeafPreset::small:
        return {4, 2, LeafEnd::round, LeafEnd::round, 12};
    case LeafPreset::broad:
        return {6, 3, LeafEnd::round, LeafEnd::round, 20};
    case LeafPreset::longPointed:
        return {12, 2, LeafEnd::pointed, LeafEnd::round, 20};
    case LeafPreset::large:
        return {14, 3, LeafEnd::pointed, LeafEnd::round, 30};
    case LeafPreset::blade:
        return {20, 1, LeafEnd::pointed, LeafEnd::pointed, 15};
    }
    return {4, 2, LeafEnd::round, LeafEnd::round, 12};
}

constexpr const char* size = "11/0";
/// Bare wire beyond the beads: the loop of the basic and the ends (common practice, no source).
constexpr double spareWire = 200;

double endLength(LeafEnd end) {
    constexpr double quarterTurn = 1.5707963267948966;
    constexpr double alpha = 0.5235987755982988; // 30°
    return end == LeafEnd::round ? quarterTurn : alpha + 1 / std::tan(alpha);
}

/// How far a row's end stands out for each pitch it is away from the basic.
double endReach(LeafEnd end) {
    return end == LeafEnd::round ? 1.0 : 2.0; // 1 / sin 30°
}

double tenth(double v) {
    return std::round(v * 10) / 10;
}

} // namespace

KindForm presetForm(LeafPreset preset) {
    const Make make = makeOf(preset);
    const BeadSize bead = *beadSizeNamed(size);
    const double along = inMillimetres(bead.pitch), pitch = inMillimetres(bead.diameter);
    const double ends = endLength(make.tip) + endLength(make.base);
    int beads = make.basic;
    for (int k = 1; k <= make.pairs; ++k)
        beads += 2 * (make.basic + static_cast<int>(std::lround(k * pitch * ends / along)));
    KindForm form;
    form.beads = beads;
    form.beadSize = size;
    form.length = millimetres(
        tenth(make.basic * along + make.pairs * pitch * (endReach(make.tip) + endReach(make.base))));
    form.width = millimetres(tenth((2 * make.pairs + 1) * pitch));
    form.tipEnd = make.tip;
    form.baseEnd = make.base;
    // To the next centimetre: nobody cuts finer.
    form.wire = millimetres(std::ceil((beads * along + make.basic * along + spareWire) / 10) * 10);
    form.gauge = GaugeNumber{GaugeSystem::awg, 28};
    form.wireDiameter = millimetres(std::round(inMillimetres(*diameterOf(*form.gauge)) * 100) / 100);
    form.minutes = make.minutes;
    return form;
}

} // namespace stemwright

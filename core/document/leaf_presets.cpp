#include "core/document/leaf_presets.h"

#include "core/figures/leaf_make.h"
#include "core/quantity/bead.h"

#include <cmath>

namespace stemwright {

namespace {

/// A leaf as it is made.
struct Make {
    int basic; ///< beads in the middle row
    int rows;
    LeafEnd tip;
    LeafEnd base;
    double minutes; ///< own guess, no source
};

Make makeOf(LeafPreset preset) {
    switch (preset) {
    case LeafPreset::tiny:
        return {3, 3, LeafEnd::round, LeafEnd::round, 6};
    case LeafPreset::small:
        return {4, 5, LeafEnd::round, LeafEnd::round, 12};
    case LeafPreset::broad:
        return {6, 7, LeafEnd::round, LeafEnd::round, 20};
    case LeafPreset::longPointed:
        return {12, 5, LeafEnd::pointed, LeafEnd::round, 20};
    case LeafPreset::large:
        return {14, 7, LeafEnd::pointed, LeafEnd::round, 30};
    case LeafPreset::blade:
        return {20, 3, LeafEnd::pointed, LeafEnd::pointed, 15};
    }
    return {4, 5, LeafEnd::round, LeafEnd::round, 12};
}

} // namespace

KindForm presetForm(LeafPreset preset) {
    const Make make = makeOf(preset);
    KindForm form;
    form.beadSize = "11/0";
    form.tipEnd = make.tip;
    form.baseEnd = make.base;
    form.make = LeafMake{Making::rows, make.basic, make.rows, degrees(30), ""};
    const MadeLeaf leaf = madeLeaf(*form.make, make.tip, make.base, *beadSizeNamed(form.beadSize));
    takeMeasures(form, leaf);
    form.gauge = GaugeNumber{GaugeSystem::awg, 28};
    form.wireDiameter = millimetres(std::round(inMillimetres(*diameterOf(*form.gauge)) * 100) / 100);
    form.minutes = make.minutes;
    return form;
}

} // namespace stemwright

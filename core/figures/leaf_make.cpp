#include "core/figures/leaf_make.h"

#include "core/figures/leaf_beads.h"
#include "core/plan/lookup.h"

#include <cmath>
#include <numbers>
#include <numeric>

namespace stemwright {

namespace {

constexpr double pi = std::numbers::pi;

/// What going around an end adds to a row for each pitch that it lies further out.
double endLength(LeafEnd end, Angle point) {
    const double alpha = inRadians(point);
    return end == LeafEnd::round ? pi / 2 : alpha + 1 / std::tan(alpha);
}

/// How far an end reaches for each pitch.
double endReach(LeafEnd end, Angle point) {
    return end == LeafEnd::round ? 1 : 1 / std::sin(inRadians(point));
}

} // namespace

std::vector<int> ringsOf(const std::vector<int>& rows, Making making) {
    if (making == Making::loops || rows.empty())
        return {rows.rbegin(), rows.rend()};
    std::vector<int> all;
    for (std::size_t row = rows.size(); row > 2; row -= 2)
        all.push_back(rows[row - 1] + rows[row - 2]);
    all.push_back(rows.front());
    return all;
}

MakeFault faultOf(const LeafMake& make, const BeadSize& size) {
    if (make.beads < 1 || make.rows < 1)
        return MakeFault::noBeads;
    if (make.making == Making::rows && make.rows % 2 == 0)
        return MakeFault::evenRows;
    if (size.pitch > longestBead * size.diameter)
        return MakeFault::longBead;
    return MakeFault::none;
}

MadeLeaf madeLeaf(const LeafMake& make, LeafEnd tip, LeafEnd base, const BeadSize& size) {
    MadeLeaf leaf;
    const bool loops = make.making == Making::loops;
    // In beads; a bead is one long.
    const double gain = loops ? 2 * pi * rowPitchInBeads
                              : rowPitchInBeads * (endLength(tip, make.point) + endLength(base, make.point));
    for (int row = 0; row < make.rows; ++row) {
        const int steps = loops ? row : (row + 1) / 2;
        leaf.rows.push_back(static_cast<int>(std::lround(make.beads + steps * gain)));
    }
    leaf.counted.assign(leaf.rows.size(), false);
    for (const CountedRow& count : make.counted)
        if (count.row >= 0 && count.row < make.rows) {
            leaf.rows[static_cast<std::size_t>(count.row)] = count.beads;
            leaf.counted[static_cast<std::size_t>(count.row)] = true;
        }
    leaf.beads = std::accumulate(leaf.rows.begin(), leaf.rows.end(), 0);

    if (leaf.rows.empty())
        return leaf;
    const Length pitch = rowPitchInBeads * size.pitch;
    const double steps = loops ? make.rows - 1 : make.rows / 2;
    const Length strung = leaf.beads * size.pitch;
    if (loops) {
        leaf.length = leaf.rows.front() / 2.0 * size.pitch + 2 * steps * pitch;
        leaf.width = 2 * size.diameter + 2 * steps * pitch;
        leaf.wire = strung + 2 * loopTail;
        leaf.wiresAtBase = 2;
    } else {
        leaf.length = leaf.rows.front() * size.pitch +
                      steps * (endReach(tip, make.point) + endReach(base, make.point)) * pitch;
        leaf.width = size.diameter + 2 * steps * pitch;
        leaf.wire = strung + leaf.length + basicTop + bottomLoop;
        leaf.wiresAtBase = 3;
    }
    return leaf;
}

void takeMeasures(KindForm& form, const MadeLeaf& leaf) {
    const auto tenth = [](Length length) { return millimetres(std::round(inMillimetres(length) * 10) / 10); };
    if (!form.own.beads)
        form.beads = leaf.beads;
    if (!form.own.length)
        form.length = tenth(leaf.length);
    if (!form.own.width)
        form.width = tenth(leaf.width);
    if (!form.own.wire)
        form.wire = millimetres(std::ceil(inMillimetres(leaf.wire) / 10) * 10);
    if (!form.own.wiresAtBase)
        form.wiresAtBase = leaf.wiresAtBase;
}

std::vector<int> patternRows(const KindForm& form) {
    // Rows are counted in beads, so any bead does whose length is no fault.
    const BeadSize any = beadSizes().front();
    if (!form.make || faultOf(*form.make, any) != MakeFault::none)
        return {};
    const MadeLeaf made = madeLeaf(*form.make, form.tipEnd, form.baseEnd, any);
    if (made.beads == form.beads)
        return made.rows;
    std::vector<double> weights;
    int left = form.beads, free = 0;
    for (std::size_t i = 0; i < made.rows.size(); ++i) {
        weights.push_back(made.counted[i] ? 0 : made.rows[i]);
        left -= made.counted[i] ? made.rows[i] : 0;
        free += made.counted[i] ? 0 : 1;
    }
    if (free == 0 || left < free)
        return apportioned(form.beads, std::vector<double>(made.rows.begin(), made.rows.end()));
    std::vector<int> rows = apportioned(left, weights);
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (made.counted[i])
            rows[i] = made.rows[i];
    return rows;
}

MakeFault faultOf(const Plan& plan, const KindForm& form) {
    const std::optional<BeadSize> size = beadSizeNamed(plan, form.beadSize);
    return form.make && size ? faultOf(*form.make, *size) : MakeFault::none;
}

KindForm followPattern(const Plan& plan, KindForm form) {
    const std::optional<BeadSize> size = beadSizeNamed(plan, form.beadSize);
    if (form.make && size && faultOf(*form.make, *size) == MakeFault::none)
        takeMeasures(form, madeLeaf(*form.make, form.tipEnd, form.baseEnd, *size));
    return form;
}

} // namespace stemwright

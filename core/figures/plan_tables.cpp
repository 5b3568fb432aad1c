#include "core/figures/plan_tables.h"

#include "core/figures/height.h"
#include "core/figures/leaf_beads.h"
#include "core/figures/leaf_mass.h"
#include "core/plan/lookup.h"
#include "core/quantity/wire_strength.h"

#include <algorithm>

namespace stemwright {

namespace {
constexpr std::uint32_t smallIds = 4096;
}

void PlanTables::Places::put(std::uint32_t id, std::size_t place) {
    if (id >= smallIds) {
        large.emplace(id, static_cast<int>(place));
        return;
    }
    if (small.size() <= id)
        small.resize(id + 1, none);
    small[id] = static_cast<int>(place);
}

int PlanTables::placeOf(const Places& places, std::uint32_t id) {
    if (id < places.small.size())
        return places.small[id];
    if (id < smallIds)
        return none;
    const auto it = places.large.find(id);
    return it == places.large.end() ? none : it->second;
}

int PlanTables::lineOf(Leaf leaf) const {
    const int kind = placeOf(kinds_, leaf.kind.value);
    const int mix = placeOf(mixes_, leaf.mix.value);
    if (kind == none || mix == none)
        return none;
    return lineOf_[static_cast<std::size_t>(kind) * mixCount_ + static_cast<std::size_t>(mix)];
}

PlanTables::PlanTables(const Plan& plan, const PlanTables* before) : mixCount_(plan.mixes.size()) {
    for (std::size_t i = 0; i < plan.colours.size(); ++i) {
        colours_.put(plan.colours[i].id.value, i);
        shades_.push_back(plan.colours[i].srgb);
    }
    for (std::size_t i = 0; i < plan.mixes.size(); ++i)
        mixes_.put(plan.mixes[i].id.value, i);

    lineOf_.assign(plan.kinds.size() * mixCount_, none);
    for (std::size_t k = 0; k < plan.kinds.size(); ++k) {
        const Kind& kind = plan.kinds[k];
        kinds_.put(kind.id.value, k);
        const MetalFigures metal = figuresOf(plan, metalNameOf(kind));
        kindRows_.push_back({lines_.size(), kind.stock.size(), kind.beads, kind.wiresAtBase, kind.wire,
                             kind.wireDiameter, reachAbove(kind), leafMass(plan, kind),
                             wireStiffness(metal, kind.wireDiameter), plasticMoment(metal, kind.wireDiameter)});
        for (const StockLine& stock : kind.stock) {
            const auto mix = static_cast<std::size_t>(placeOf(mixes_, stock.mix.value));
            lineOf_[k * mixCount_ + mix] = static_cast<int>(lines_.size());
            Line line{{kind.id, stock.mix},
                      k,
                      static_cast<int>(lines_.size() - kindRows_.back().firstLine),
                      {},
                      stock.made,
                      stock.toMake};
            const Mix& parts = plan.mixes[mix];
            const std::vector<int> beads = leafBeads(kind.beads, parts);
            for (std::size_t i = 0; i < beads.size(); ++i)
                if (beads[i] > 0)
                    line.beads.push_back(
                        {static_cast<std::size_t>(placeOf(colours_, parts.colours[i].colour.value)), beads[i]});
            lines_.push_back(std::move(line));
        }
    }

    if (before && before->shades_ == shades_) {
        differences_ = before->differences_;
        return;
    }
    const std::size_t count = shades_.size();
    std::vector<Lab> seen;
    seen.reserve(count);
    for (const Srgb shade : shades_)
        seen.push_back(toLab(shade));
    differences_.assign(count * count, 0);
    for (std::size_t i = 0; i < count; ++i)
        for (std::size_t j = i + 1; j < count; ++j)
            differences_[i * count + j] = differences_[j * count + i] = difference(seen[i], seen[j]);
}

} // namespace stemwright

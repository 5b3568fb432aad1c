#include "core/plan/lookup.h"

#include "core/quantity/floss.h"
#include "core/quantity/tape.h"

#include <algorithm>

namespace stemwright {

namespace {

template <class Entry> const Entry* named(const std::vector<Entry>& entries, std::string_view name) {
    if (name.empty())
        return nullptr;
    const auto it =
        std::find_if(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.name == name; });
    return it == entries.end() ? nullptr : &*it;
}

} // namespace

MetalFigures figuresOf(const Plan& plan, const MetalName& name) {
    if (const OwnMetal* own = named(plan.own.metals, name.own))
        return {own->density, own->modulus, own->yield, own->yield};
    return figuresOf(name.metal);
}

std::optional<BeadSize> beadSizeNamed(const Plan& plan, std::string_view name) {
    if (const OwnBead* own = named(plan.own.beads, name))
        return BeadSize{own->name, own->diameter, own->pitch, own->mass};
    return beadSizeNamed(name);
}

double densityOf(const Plan& plan, const Clay& clay) {
    const OwnFilling* own = named(plan.own.clays, clay.own);
    return own ? own->density : clay.density;
}

double densityOf(const Plan& plan, const Cover& cover) {
    const OwnFilling* own = named(plan.own.covers, cover.own);
    return own ? own->density : cover.density;
}

double gramsPerMetre(const Plan& plan, const Wrap& wrap) {
    switch (wrap.with) {
    case WrapWith::wire:
        return inGrams(massOfWire(figuresOf(plan, metalNameOf(wrap)), wrap.width, millimetres(1000)));
    case WrapWith::floss: {
        const OwnFloss* own = named(plan.own.flosses, wrap.own);
        return own ? own->gramsPerMetre : flossGramsPerMetre;
    }
    case WrapWith::tape:
        break;
    }
    const OwnTape* own = named(plan.own.tapes, wrap.own);
    return own ? own->gramsPerMetre : 0;
}

std::optional<Problem> missingOwn(const Plan& plan, const OwnTables& tables) {
    // Only what the plan has now can go missing.
    const auto gone = [](const auto& before, const auto& after, const std::string& name) {
        return named(before, name) && !named(after, name);
    };
    const auto inUse = [](const std::string& entry, const char* sort, const std::string& name) {
        return Problem{ProblemCode::ownInUse, "", {entry, sort, name}};
    };
    const auto metalGone = [&](const std::string& name) { return gone(plan.own.metals, tables.metals, name); };
    for (const Kind& kind : plan.kinds) {
        if (metalGone(kind.ownMetal))
            return inUse(kind.ownMetal, "kind", kind.name);
        if (gone(plan.own.beads, tables.beads, kind.beadSize) && !beadSizeNamed(kind.beadSize))
            return inUse(kind.beadSize, "kind", kind.name);
    }
    for (const Wrap& wrap : plan.binding.wraps) {
        if (metalGone(wrap.ownMetal))
            return inUse(wrap.ownMetal, "binding", wrap.name);
        if ((wrap.with == WrapWith::floss && gone(plan.own.flosses, tables.flosses, wrap.own)) ||
            (wrap.with == WrapWith::tape && gone(plan.own.tapes, tables.tapes, wrap.own)))
            return inUse(wrap.own, "binding", wrap.name);
    }
    const Pot& pot = plan.pot;
    if (metalGone(pot.stake.ownMetal))
        return inUse(pot.stake.ownMetal, "pot", pot.name);
    if (gone(plan.own.clays, tables.clays, pot.clay.own))
        return inUse(pot.clay.own, "pot", pot.name);
    if (pot.cover && gone(plan.own.covers, tables.covers, pot.cover->own))
        return inUse(pot.cover->own, "pot", pot.name);
    for (const Stem& stem : plan.stems)
        if (stem.core && metalGone(stem.core->ownMetal))
            return inUse(stem.core->ownMetal, "stem", stem.name);
    return std::nullopt;
}

} // namespace stemwright

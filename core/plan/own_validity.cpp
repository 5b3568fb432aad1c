// The rules of a plan's own tables, and of what names their entries.
#include "core/plan/inspector.h"
#include "core/plan/limits.h"

#include <algorithm>
#include <set>

namespace stemwright {

namespace {

/// `values` looks at one entry.
template <class Entry, class Values>
void table(Inspector& inspector, const std::vector<Entry>& entries, const char* list, const Values& values) {
    const std::string place = std::string("own.") + list;
    inspector.count(entries.size(), place, limits::ownEntries);
    std::set<std::string_view> names;
    for (std::size_t i = 0; i < entries.size() && !inspector.failed(); ++i) {
        const std::string at = item(place, i);
        if (entries[i].name.empty())
            inspector.fail(ProblemCode::missingKey, at + ".name", {"name"});
        inspector.text(entries[i].name, at + ".name", limits::nameLength);
        if (!names.insert(entries[i].name).second)
            inspector.fail(ProblemCode::duplicateId, at + ".name", {entries[i].name});
        values(entries[i], at);
    }
}

template <class Entry>
void named(Inspector& inspector, const std::string& name, const std::vector<Entry>& entries, const char* sort,
           const std::string& place) {
    if (!name.empty() &&
        std::none_of(entries.begin(), entries.end(), [&](const Entry& entry) { return entry.name == name; }))
        inspector.fail(ProblemCode::noSuchId, place, {sort, name});
}

} // namespace

void inspectOwnTables(Inspector& inspector, const OwnTables& own) {
    table(inspector, own.metals, "metals", [&](const OwnMetal& e, const std::string& at) {
        inspector.range(e.density, at + ".density_kg_m3", limits::lightest, limits::densest);
        inspector.range(e.modulus, at + ".modulus_n_mm2", 1, limits::stiffest);
        inspector.range(e.yield, at + ".yield_n_mm2", 0.1, limits::stiffest);
    });
    table(inspector, own.beads, "beads", [&](const OwnBead& e, const std::string& at) {
        inspector.length(e.diameter, at + ".diameter_mm", 0.1, limits::largestBead);
        inspector.length(e.pitch, at + ".pitch_mm", 0.1, limits::largestBead);
        inspector.range(inGrams(e.mass), at + ".mass_g", 0, limits::heaviestBead);
    });
    table(inspector, own.flosses, "flosses", [&](const OwnFloss& e, const std::string& at) {
        inspector.range(e.strands, at + ".strands", 1, limits::strands);
        inspector.length(e.strandWidth, at + ".strand_width_mm", limits::thinnestWire, limits::widest);
        if (e.skein)
            inspector.length(*e.skein, at + ".skein_mm", limits::shortestSold, limits::longestWire);
        inspector.range(e.gramsPerMetre, at + ".strand_g_m", 0, limits::heaviestMetre);
    });
    table(inspector, own.tapes, "tapes", [&](const OwnTape& e, const std::string& at) {
        inspector.length(e.width, at + ".width_mm", limits::thinnestWire, limits::widest);
        inspector.length(e.thickness, at + ".thickness_mm", limits::thinnestWrap, limits::thickest);
        inspector.range(e.stretch, at + ".stretch", 1, limits::mostStretch);
        if (e.roll)
            inspector.length(*e.roll, at + ".roll_mm", limits::shortestSold, limits::longestWire);
        inspector.range(e.gramsPerMetre, at + ".tape_g_m", 0, limits::heaviestMetre);
    });
    const auto filling = [&](const OwnFilling& e, const std::string& at) {
        inspector.range(e.density, at + ".density_kg_m3", limits::lightest, limits::densest);
    };
    table(inspector, own.clays, "clays", filling);
    table(inspector, own.covers, "covers", filling);
}

void inspectOwnNames(Inspector& inspector, const Plan& plan) {
    const OwnTables& own = plan.own;
    for (std::size_t i = 0; i < plan.kinds.size(); ++i)
        if (!plan.kinds[i].ownMetal.empty())
            named(inspector, plan.kinds[i].ownMetal, own.metals, "metal", item("kinds", i) + ".own_metal");
    for (std::size_t i = 0; i < plan.binding.wraps.size(); ++i) {
        const Wrap& wrap = plan.binding.wraps[i];
        const std::string at = item("binding.wraps", i);
        named(inspector, wrap.ownMetal, own.metals, "metal", at + ".own_metal");
        if (wrap.with == WrapWith::floss)
            named(inspector, wrap.own, own.flosses, "floss", at + ".own");
        if (wrap.with == WrapWith::tape)
            named(inspector, wrap.own, own.tapes, "tape", at + ".own");
    }
    named(inspector, plan.pot.clay.own, own.clays, "clay", "pot.clay.own");
    named(inspector, plan.pot.stake.ownMetal, own.metals, "metal", "pot.stake.own_metal");
    if (plan.pot.cover)
        named(inspector, plan.pot.cover->own, own.covers, "cover", "pot.cover.own");
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        if (const auto& core = plan.stems[i].core; core && !core->ownMetal.empty())
            named(inspector, core->ownMetal, own.metals, "metal", item("stems", i) + ".core.own_metal");
}

} // namespace stemwright

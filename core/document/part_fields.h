#pragma once

#include "core/plan/edit.h"
#include "core/plan/limits.h"

#include <concepts>
#include <type_traits>

namespace stemwright {

// The keys of every part of a plan and of every edit, in the order of the file: one list for reading and
// writing, since `Io` is a JsonWriter with constant parts or a JsonReader with others. An Io has
//   need(key, value)         always written; must be there when reading
//   keep(key, value)         always written; where it is not there the part keeps its default
//   may(key, value, absent)  left out where it equals `absent` (its type's default), and so when not there
//   list(key, values, most)  always written; an absent list is empty
//   mayList(key, …)          the same, but left out where it is empty
//   extra(text)              the keys that nobody asked for; last

template <class T, class Part>
concept Of = std::same_as<std::remove_const_t<T>, Part>;

template <class Io, Of<GaugeNumber> T> void fields(Io& io, T& gauge) {
    io.need("system", gauge.system);
    io.need("number", gauge.number);
    io.extra(gauge.extra);
}

template <class Io, Of<Pack> T> void fields(Io& io, T& pack) {
    io.keep("amount", pack.amount);
    io.may("price", pack.price);
    io.extra(pack.extra);
}

template <class Io, Of<Colour> T> void fields(Io& io, T& colour) {
    io.need("id", colour.id);
    io.keep("name", colour.name);
    io.need("srgb", colour.srgb);
    io.may("sold", colour.sold);
    io.extra(colour.extra);
}

template <class Io, Of<BeadShare> T> void fields(Io& io, T& share) {
    io.need("colour", share.colour);
    io.keep("share", share.share);
    io.extra(share.extra);
}

template <class Io, Of<Mix> T> void fields(Io& io, T& mix) {
    io.need("id", mix.id);
    io.keep("name", mix.name);
    io.need("code", mix.code);
    io.list("colours", mix.colours, limits::coloursInMix);
    io.extra(mix.extra);
}

template <class Io, Of<StockLine> T> void fields(Io& io, T& line) {
    io.need("mix", line.mix);
    io.keep("made", line.made);
    io.keep("to_make", line.toMake);
    io.extra(line.extra);
}

template <class Io, Of<CountedRow> T> void fields(Io& io, T& count) {
    io.need("row", count.row);
    io.need("beads", count.beads);
    io.extra(count.extra);
}

template <class Io, Of<LeafMake> T> void fields(Io& io, T& make) {
    io.need("making", make.making);
    io.need("beads", make.beads);
    io.need("rows", make.rows);
    io.keep("point_deg", make.point);
    io.mayList("counted", make.counted, limits::rows);
    io.extra(make.extra);
}

template <class Io, Of<OwnMeasures> T> void fields(Io& io, T& own) {
    io.may("beads", own.beads);
    io.may("wire", own.wire);
    io.may("length", own.length);
    io.may("width", own.width);
    io.may("wires_at_base", own.wiresAtBase);
    io.extra(own.extra);
}

template <class Io, class T> void kindFormFields(Io& io, T& form) {
    io.keep("name", form.name);
    io.need("beads", form.beads);
    io.need("bead_size", form.beadSize);
    io.need("length_mm", form.length);
    io.need("width_mm", form.width);
    io.keep("tip_end", form.tipEnd);
    io.keep("base_end", form.baseEnd);
    io.need("wire_mm", form.wire);
    io.need("wire_diameter_mm", form.wireDiameter);
    io.may("gauge", form.gauge);
    io.keep("wires_at_base", form.wiresAtBase);
    io.keep("angle_deg", form.angle);
    io.may("minutes", form.minutes);
    io.may("metal", form.metal, KindForm{}.metal);
    io.may("own_metal", form.ownMetal);
    io.may("make", form.make);
    io.may("own_measures", form.own);
}

template <class Io, Of<KindForm> T> void fields(Io& io, T& form) {
    kindFormFields(io, form);
    io.extra(form.extra);
}

template <class Io, Of<Kind> T> void fields(Io& io, T& kind) {
    io.need("id", kind.id);
    kindFormFields(io, kind);
    io.list("stock", kind.stock, limits::mixes);
    io.extra(kind.extra);
}

template <class Io, Of<Wrap> T> void fields(Io& io, T& wrap) {
    io.need("with", wrap.with);
    io.need("strands", wrap.strands);
    io.need("width_mm", wrap.width);
    io.need("thickness_mm", wrap.thickness);
    io.may("gauge", wrap.gauge);
    io.keep("overlap", wrap.overlap);
    io.keep("stretch", wrap.stretch);
    io.keep("start_tail_mm", wrap.startTail);
    io.keep("finish_mm", wrap.finish);
    io.keep("hold_mm", wrap.hold);
    io.may("sold_mm", wrap.sold);
    io.may("name", wrap.name);
    io.may("metal", wrap.metal, Wrap{}.metal);
    io.may("own_metal", wrap.ownMetal);
    io.may("own", wrap.own);
    io.may("overlap_measured", wrap.overlapMeasured);
    io.extra(wrap.extra);
}

template <class Io, Of<Binding> T> void fields(Io& io, T& binding) {
    io.list("wraps", binding.wraps, limits::wraps);
    io.may("minutes_per_tier", binding.minutesPerTier);
    io.extra(binding.extra);
}

template <class Io, Of<Clay> T> void fields(Io& io, T& clay) {
    io.need("depth_mm", clay.depth);
    io.need("density_kg_m3", clay.density);
    io.may("own", clay.own);
    io.extra(clay.extra);
}

template <class Io, Of<Stake> T> void fields(Io& io, T& stake) {
    io.need("diameter_mm", stake.diameter);
    io.may("gauge", stake.gauge);
    io.need("metal", stake.metal);
    io.may("own_metal", stake.ownMetal);
    io.need("overlap_mm", stake.overlap);
    io.extra(stake.extra);
}

template <class Io, Of<Cover> T> void fields(Io& io, T& cover) {
    io.need("depth_mm", cover.depth);
    io.need("density_kg_m3", cover.density);
    io.may("own", cover.own);
    io.extra(cover.extra);
}

template <class Io, Of<Pot> T> void fields(Io& io, T& pot) {
    io.keep("name", pot.name);
    io.need("shape", pot.shape);
    io.may("opening", pot.opening);
    io.need("top_diameter_mm", pot.topDiameter);
    io.may("top_breadth_mm", pot.topBreadth, Pot{}.topBreadth);
    io.need("bottom_diameter_mm", pot.bottomDiameter);
    io.need("depth_mm", pot.depth);
    io.keep("planting_depth_mm", pot.plantingDepth);
    io.keep("clay", pot.clay);
    io.keep("stake", pot.stake);
    io.may("mass_g", pot.mass);
    io.may("foot_diameter_mm", pot.footDiameter);
    io.may("feet", pot.feet);
    io.may("cover", pot.cover);
    io.may("viewed_from", pot.viewedFrom);
    io.extra(pot.extra);
}

template <class Io, Of<Bar> T> void fields(Io& io, T& bar) {
    io.need("length_mm", bar.length);
    io.may("price", bar.price);
    io.may("wire_mm", bar.wire);
    io.extra(bar.extra);
}

template <class Io, Of<LeafWirePack> T> void fields(Io& io, T& wire) {
    io.need("wire_mm", wire.wire);
    io.need("sold", wire.sold);
    io.extra(wire.extra);
}

template <class Io, Of<Buying> T> void fields(Io& io, T& buying) {
    io.keep("spare", buying.spare);
    io.list("bars", buying.bars, limits::bars);
    io.may("beads", buying.beads);
    io.may("leaf_wire", buying.leafWire);
    io.list("leaf_wires", buying.leafWires, limits::leafWires);
    io.may("clay", buying.clay);
    io.may("cover", buying.cover);
    io.list("wraps", buying.wraps, limits::wraps);
    io.extra(buying.extra);
}

template <class Io, Of<OwnMetal> T> void fields(Io& io, T& own) {
    io.need("name", own.name);
    io.need("density_kg_m3", own.density);
    io.need("modulus_n_mm2", own.modulus);
    io.need("yield_n_mm2", own.yield);
    io.extra(own.extra);
}

template <class Io, Of<OwnBead> T> void fields(Io& io, T& own) {
    io.need("name", own.name);
    io.need("diameter_mm", own.diameter);
    io.need("pitch_mm", own.pitch);
    io.keep("mass_g", own.mass);
    io.extra(own.extra);
}

template <class Io, Of<OwnFloss> T> void fields(Io& io, T& own) {
    io.need("name", own.name);
    io.need("strands", own.strands);
    io.need("strand_width_mm", own.strandWidth);
    io.may("skein_mm", own.skein);
    io.keep("strand_g_m", own.gramsPerMetre);
    io.extra(own.extra);
}

template <class Io, Of<OwnTape> T> void fields(Io& io, T& own) {
    io.need("name", own.name);
    io.need("width_mm", own.width);
    io.need("thickness_mm", own.thickness);
    io.need("stretch", own.stretch);
    io.may("roll_mm", own.roll);
    io.may("tape_g_m", own.gramsPerMetre);
    io.extra(own.extra);
}

template <class Io, Of<OwnFilling> T> void fields(Io& io, T& own) {
    io.need("name", own.name);
    io.need("density_kg_m3", own.density);
    io.extra(own.extra);
}

template <class Io, Of<OwnTables> T> void fields(Io& io, T& own) {
    io.mayList("metals", own.metals, limits::ownEntries);
    io.mayList("beads", own.beads, limits::ownEntries);
    io.mayList("flosses", own.flosses, limits::ownEntries);
    io.mayList("tapes", own.tapes, limits::ownEntries);
    io.mayList("clays", own.clays, limits::ownEntries);
    io.mayList("covers", own.covers, limits::ownEntries);
    io.extra(own.extra);
}

template <class Io, Of<Slot> T> void fields(Io& io, T& slot) {
    io.may("kind", slot.leaf.kind);
    io.may("mix", slot.leaf.mix);
    io.may("pinned", slot.pinned);
    io.extra(slot.extra);
}

template <class Io, Of<Progress> T> void fields(Io& io, T& progress) {
    io.may("bound", progress.bound);
    io.may("minutes", progress.minutes);
    io.extra(progress.extra);
}

template <class Io, Of<Tier> T> void fields(Io& io, T& tier) {
    io.need("turn_deg", tier.turn);
    io.may("spacing_mm", tier.spacing);
    io.may("progress", tier.progress);
    io.list("slots", tier.slots, limits::slots);
    io.extra(tier.extra);
}

template <class Io, Of<CoreWire> T> void fields(Io& io, T& core) {
    io.need("diameter_mm", core.diameter);
    io.may("gauge", core.gauge);
    io.need("metal", core.metal);
    io.may("own_metal", core.ownMetal);
    io.extra(core.extra);
}

template <class Io, Of<Standing> T> void fields(Io& io, T& standing) {
    io.need("x_mm", standing.x);
    io.need("y_mm", standing.y);
    io.extra(standing.extra);
}

template <class Io, Of<Pose> T> void fields(Io& io, T& pose) {
    io.need("lean_deg", pose.lean);
    io.may("bend_deg", pose.bend);
    io.need("toward_deg", pose.toward);
    io.extra(pose.extra);
}

template <class Io, Of<Took> T> void fields(Io& io, T& took) {
    io.need("wrap", took.wrap);
    io.need("used_mm", took.used);
    io.extra(took.extra);
}

template <class Io, Of<Bench> T> void fields(Io& io, T& bench) {
    io.may("steps", bench.steps);
    io.extra(bench.extra);
}

template <class Io, class T> void stemFormFields(Io& io, T& form) {
    io.keep("name", form.name);
    io.need("arrangement", form.arrangement);
    io.may("whorl", form.whorl, StemForm{}.whorl);
    io.need("spacing_mm", form.spacing);
    io.need("tail_mm", form.tail);
    io.may("core", form.core);
    io.may("locked", form.locked);
    io.may("standing", form.standing);
    io.may("pose", form.pose);
    io.mayList("took", form.took, limits::wraps);
    io.may("bench", form.bench);
}

template <class Io, Of<StemForm> T> void fields(Io& io, T& form) {
    stemFormFields(io, form);
    io.extra(form.extra);
}

template <class Io, Of<Stem> T> void fields(Io& io, T& stem) {
    io.need("id", stem.id);
    stemFormFields(io, stem);
    io.list("tiers", stem.tiers, limits::tiers);
    io.extra(stem.extra);
}

template <class Io, class T> void aboutFields(Io& io, T& about) {
    io.keep("title", about.title);
    io.may("note", about.note);
    io.may("date", about.date);
}

template <class Io, Of<About> T> void fields(Io& io, T& about) {
    aboutFields(io, about);
    io.extra(about.extra);
}

template <class Io, Of<Units> T> void fields(Io& io, T& units) {
    io.need("length", units.length);
    io.need("mass", units.mass);
    io.extra(units.extra);
}

/// Without "format" and "version", which go before. What the plan says of itself stands at the top of the file,
/// so unknown keys there are the plan's.
template <class Io, Of<Plan> T> void fields(Io& io, T& plan) {
    aboutFields(io, plan.about);
    io.keep("units", plan.units);
    io.list("colours", plan.colours, limits::colours);
    io.list("mixes", plan.mixes, limits::mixes);
    io.list("kinds", plan.kinds, limits::kinds);
    io.keep("binding", plan.binding);
    io.keep("pot", plan.pot);
    io.may("buying", plan.buying);
    io.may("own", plan.own);
    io.list("stems", plan.stems, limits::stems);
    io.extra(plan.extra, plan.about.extra);
}

} // namespace stemwright

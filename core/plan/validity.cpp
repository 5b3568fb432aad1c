// The rules of a valid plan: firstProblem() of plan.h.
#include "core/plan/inspector.h"
#include "core/plan/limits.h"
#include "core/plan/plan.h"
#include "core/quantity/digits.h"

#include <algorithm>
#include <chrono>
#include <set>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace stemwright {

namespace {

/// A day of the Gregorian calendar as YYYY-MM-DD, from the year 1 on.
bool isDay(std::string_view v) {
    const auto number = [&](std::size_t from, std::size_t digits) {
        int value = 0;
        for (const char c : v.substr(from, digits))
            value = c >= '0' && c <= '9' && value >= 0 ? value * 10 + (c - '0') : -1;
        return value;
    };
    if (v.size() != 10 || v[4] != '-' || v[7] != '-')
        return false;
    const int year = number(0, 4), month = number(5, 2), day = number(8, 2);
    return year > 0 && month > 0 && day > 0 &&
           std::chrono::year_month_day(std::chrono::year(year),
                                       std::chrono::month(static_cast<unsigned>(month)),
                                       std::chrono::day(static_cast<unsigned>(day)))
               .ok();
}

/// Walks the plan in the order of its file and keeps the first problem it meets.
class PlanInspector : Inspector {
public:
    explicit PlanInspector(const Plan& plan) : plan_(plan) {}

    std::optional<Problem> run() {
        text(plan_.about.title, "title", limits::nameLength);
        text(plan_.about.note, "note", limits::noteLength);
        date(plan_.about.date, "date");
        colours();
        mixes();
        kinds();
        binding();
        pot();
        buying();
        inspectOwnTables(*this, plan_.own);
        stems();
        inspectOwnNames(*this, plan_);
        stock();
        return std::move(problem_);
    }

private:
    void date(const std::string& v, const std::string& place) {
        if (!v.empty() && !isDay(v))
            fail(ProblemCode::badDate, place, {v.substr(0, 40)});
    }
    template <class AnyId>
    bool takeId(std::unordered_set<std::uint32_t>& seen, AnyId id, const std::string& place) {
        if (!id)
            fail(ProblemCode::outOfRange, place + ".id", {"0", "1", shortestDigits(4294967294.0)});
        else if (id.value == 0xffffffffu)
            fail(ProblemCode::outOfRange, place + ".id",
                 {std::to_string(id.value), "1", shortestDigits(4294967294.0)});
        else if (!seen.insert(id.value).second)
            fail(ProblemCode::duplicateId, place + ".id", {std::to_string(id.value)});
        return !problem_;
    }

    void colours() {
        count(plan_.colours.size(), "colours", limits::colours);
        for (std::size_t i = 0; i < plan_.colours.size() && !problem_; ++i) {
            const Colour& colour = plan_.colours[i];
            const std::string at = item("colours", i);
            takeId(colourIds_, colour.id, at);
            text(colour.name, at + ".name", limits::nameLength);
            pack(colour.sold, at + ".sold");
        }
    }

    void mixes() {
        count(plan_.mixes.size(), "mixes", limits::mixes);
        std::set<std::string> codes;
        for (std::size_t i = 0; i < plan_.mixes.size() && !problem_; ++i) {
            const Mix& mix = plan_.mixes[i];
            const std::string at = item("mixes", i);
            takeId(mixIds_, mix.id, at);
            text(mix.name, at + ".name", limits::nameLength);
            code(mix.code, at + ".code");
            if (!codes.insert(mix.code).second)
                fail(ProblemCode::duplicateId, at + ".code", {mix.code});
            if (mix.colours.empty())
                fail(ProblemCode::missingKey, at + ".colours", {"colours"});
            count(mix.colours.size(), at + ".colours", limits::coloursInMix);
            for (std::size_t j = 0; j < mix.colours.size() && !problem_; ++j) {
                const std::string share = item(at + ".colours", j);
                if (!colourIds_.contains(mix.colours[j].colour.value))
                    fail(ProblemCode::noSuchId, share + ".colour",
                         {"colour", std::to_string(mix.colours[j].colour.value)});
                range(mix.colours[j].share, share + ".share", 1e-6, 1e6);
            }
        }
    }

    /// One or two characters of UTF-8, none of them a space or a control.
    void code(const std::string& v, const std::string& place) {
        std::size_t characters = 0;
        bool odd = false;
        for (const char c : v) {
            const auto byte = static_cast<unsigned char>(c);
            characters += (byte & 0xc0u) != 0x80u;
            odd = odd || byte <= 0x20u || byte == 0x7fu;
        }
        if (odd || characters < 1 || characters > 2)
            fail(ProblemCode::unknownWord, place, {v.substr(0, 40), "one or two letters"});
    }

    void kinds() {
        count(plan_.kinds.size(), "kinds", limits::kinds);
        for (std::size_t i = 0; i < plan_.kinds.size() && !problem_; ++i) {
            const Kind& kind = plan_.kinds[i];
            const std::string at = item("kinds", i);
            takeId(kindIds_, kind.id, at);
            text(kind.name, at + ".name", limits::nameLength);
            text(kind.beadSize, at + ".bead_size", 20);
            range(kind.beads, at + ".beads", 1, limits::beads);
            length(kind.length, at + ".length_mm", limits::shortestLeaf, limits::longest);
            length(kind.width, at + ".width_mm", limits::shortestLeaf, limits::longest);
            length(kind.wire, at + ".wire_mm", 0, limits::longestWire);
            wire(kind.wireDiameter, at + ".wire_diameter_mm");
            gauge(kind.gauge, at + ".gauge");
            range(kind.wiresAtBase, at + ".wires_at_base", 1, limits::wiresAtBase);
            range(inDegrees(kind.angle), at + ".angle_deg", 0, limits::steepest);
            range(kind.minutes, at + ".minutes", 0, limits::minutes);
            if (kind.make)
                make(*kind.make, at + ".make");
            count(kind.stock.size(), at + ".stock", limits::mixes);
            std::unordered_set<std::uint32_t> lines;
            for (std::size_t j = 0; j < kind.stock.size() && !problem_; ++j) {
                const StockLine& line = kind.stock[j];
                const std::string where = item(at + ".stock", j);
                if (!mixIds_.contains(line.mix.value))
                    fail(ProblemCode::noSuchId, where + ".mix", {"mix", std::to_string(line.mix.value)});
                else if (!lines.insert(line.mix.value).second)
                    fail(ProblemCode::duplicateId, where + ".mix", {std::to_string(line.mix.value)});
                range(line.made, where + ".made", 0, limits::stock);
                range(line.toMake, where + ".to_make", 0, limits::stock);
            }
        }
    }

    void make(const LeafMake& make, const std::string& at) {
        range(make.beads, at + ".beads", 1, limits::beads);
        range(make.rows, at + ".rows", 1, limits::rows);
        range(inDegrees(make.point), at + ".point_deg", 5, 85);
        count(make.counted.size(), at + ".counted", limits::rows);
        std::unordered_set<int> rows;
        for (std::size_t i = 0; i < make.counted.size() && !problem_; ++i) {
            const CountedRow& row = make.counted[i];
            const std::string where = item(at + ".counted", i);
            range(row.row, where + ".row", 0, make.rows - 1);
            range(row.beads, where + ".beads", 1, limits::beads);
            if (!rows.insert(row.row).second)
                fail(ProblemCode::duplicateId, where + ".row", {std::to_string(row.row)});
        }
    }

    void binding() {
        count(plan_.binding.wraps.size(), "binding.wraps", limits::wraps);
        range(plan_.binding.minutesPerTier, "binding.minutes_per_tier", 0, limits::minutes);
        for (std::size_t i = 0; i < plan_.binding.wraps.size() && !problem_; ++i) {
            const Wrap& wrap = plan_.binding.wraps[i];
            const std::string at = item("binding.wraps", i);
            range(wrap.strands, at + ".strands", 1, limits::strands);
            if (wrap.with == WrapWith::wire)
                noGauge(wrap.width, at + ".width_mm");
            length(wrap.width, at + ".width_mm", limits::thinnestWire, limits::widest);
            length(wrap.thickness, at + ".thickness_mm", limits::thinnestWrap, limits::thickest);
            gauge(wrap.gauge, at + ".gauge");
            range(wrap.overlap, at + ".overlap", 0, limits::mostOverlap);
            range(wrap.stretch, at + ".stretch", 1, limits::mostStretch);
            length(wrap.startTail, at + ".start_tail_mm", 0, limits::longest);
            length(wrap.finish, at + ".finish_mm", 0, limits::longest);
            length(wrap.hold, at + ".hold_mm", 0, limits::longest);
            if (wrap.sold)
                length(*wrap.sold, at + ".sold_mm", limits::shortestSold, limits::longestWire);
            text(wrap.name, at + ".name", limits::nameLength);
        }
    }

    void pot() {
        const Pot& pot = plan_.pot;
        text(pot.name, "pot.name", limits::nameLength);
        length(pot.topDiameter, "pot.top_diameter_mm", limits::smallestPot, limits::longest);
        length(pot.topBreadth, "pot.top_breadth_mm", limits::smallestPot, limits::longest);
        length(pot.bottomDiameter, "pot.bottom_diameter_mm", limits::smallestPot, limits::longest);
        length(pot.depth, "pot.depth_mm", limits::smallestPot, limits::longest);
        length(pot.plantingDepth, "pot.planting_depth_mm", 0, limits::longest);
        length(pot.clay.depth, "pot.clay.depth_mm", 0, limits::longest);
        range(pot.clay.density, "pot.clay.density_kg_m3", limits::lightest, limits::densest);
        wire(pot.stake.diameter, "pot.stake.diameter_mm");
        gauge(pot.stake.gauge, "pot.stake.gauge");
        length(pot.stake.overlap, "pot.stake.overlap_mm", 0, limits::longest);
        range(inGrams(pot.mass), "pot.mass_g", 0, limits::heaviest);
        length(pot.footDiameter, "pot.foot_diameter_mm", 0, limits::longest);
        if (pot.feet != 0)
            range(pot.feet, "pot.feet", limits::leastFeet, limits::feet);
        if (pot.cover) {
            length(pot.cover->depth, "pot.cover.depth_mm", 0, limits::longest);
            range(pot.cover->density, "pot.cover.density_kg_m3", 1, limits::densest);
        }
    }

    void buying() {
        const Buying& buying = plan_.buying;
        range(buying.spare, "buying.spare", 0, limits::mostSpare);
        count(buying.bars.size(), "buying.bars", limits::bars);
        for (std::size_t i = 0; i < buying.bars.size() && !problem_; ++i) {
            const std::string at = item("buying.bars", i);
            length(buying.bars[i].length, at + ".length_mm", 1, limits::longest);
            range(buying.bars[i].price, at + ".price", 0, limits::dearest);
            length(buying.bars[i].wire, at + ".wire_mm", 0, limits::thickestWire);
        }
        pack(buying.beads, "buying.beads");
        pack(buying.leafWire, "buying.leaf_wire");
        count(buying.leafWires.size(), "buying.leaf_wires", limits::leafWires);
        for (std::size_t i = 0; i < buying.leafWires.size() && !problem_; ++i) {
            const std::string at = item("buying.leaf_wires", i);
            length(buying.leafWires[i].wire, at + ".wire_mm", limits::thinnestWire, limits::thickestWire);
            pack(buying.leafWires[i].sold, at + ".sold");
        }
        pack(buying.clay, "buying.clay");
        pack(buying.cover, "buying.cover");
        count(buying.wraps.size(), "buying.wraps", limits::wraps);
        for (std::size_t i = 0; i < buying.wraps.size() && !problem_; ++i)
            pack(buying.wraps[i], item("buying.wraps", i));
    }
    void pack(const Pack& pack, const std::string& place) {
        range(pack.amount, place + ".amount", 0, limits::longestWire);
        range(pack.price, place + ".price", 0, limits::dearest);
    }

    void stems() {
        count(plan_.stems.size(), "stems", limits::stems);
        std::unordered_set<std::uint32_t> ids;
        for (std::size_t i = 0; i < plan_.stems.size() && !problem_; ++i) {
            const Stem& stem = plan_.stems[i];
            const std::string at = item("stems", i);
            takeId(ids, stem.id, at);
            text(stem.name, at + ".name", limits::nameLength);
            if (stem.arrangement == Arrangement::whorled)
                range(stem.whorl, at + ".whorl", limits::leastWhorl, limits::whorl);
            length(stem.spacing, at + ".spacing_mm", 0, limits::longest);
            length(stem.tail, at + ".tail_mm", 0, limits::longest);
            if (stem.core) {
                wire(stem.core->diameter, at + ".core.diameter_mm");
                gauge(stem.core->gauge, at + ".core.gauge");
            }
            if (stem.standing) {
                length(stem.standing->x, at + ".standing.x_mm", -limits::longest, limits::longest);
                length(stem.standing->y, at + ".standing.y_mm", -limits::longest, limits::longest);
            }
            range(stem.bench.steps, at + ".bench.steps", 0, limits::benchSteps);
            if (stem.pose) {
                range(inDegrees(stem.pose->lean), at + ".pose.lean_deg", 0, limits::mostLean);
                range(inDegrees(stem.pose->bend), at + ".pose.bend_deg", -limits::mostBend, limits::mostBend);
                if (const double toward = inDegrees(stem.pose->toward); !(toward >= 0 && toward < 360))
                    fail(ProblemCode::outOfRange, at + ".pose.toward_deg",
                         {shortestDigits(toward), "0", "360"});
            }
            took(stem, at + ".took");
            count(stem.tiers.size(), at + ".tiers", limits::tiers);
            for (std::size_t j = 0; j < stem.tiers.size() && !problem_; ++j)
                tier(stem.tiers[j], at, j);
        }
    }

    void took(const Stem& stem, const std::string& place) {
        count(stem.took.size(), place, limits::wraps);
        std::unordered_set<int> wraps;
        for (std::size_t j = 0; j < stem.took.size() && !problem_; ++j) {
            const Took& took = stem.took[j];
            const std::string at = item(place, j);
            // A file may name a wrap that the binding does not have; nothing is reckoned from it.
            range(took.wrap, at + ".wrap", 0, limits::wraps - 1);
            length(took.used, at + ".used_mm", 0, limits::longestWire);
            if (!wraps.insert(took.wrap).second)
                fail(ProblemCode::duplicateId, at + ".wrap", {std::to_string(took.wrap)});
        }
    }

    /// The path of a tier is only put together when something is wrong: a large board has tens of thousands.
    void tier(const Tier& tier, const std::string& stem, std::size_t index) {
        const double turn = inDegrees(tier.turn);
        const bool good = turn >= 0 && turn < 360 && tier.slots.size() <= limits::slots &&
                          tier.progress.minutes >= 0 && tier.progress.minutes <= limits::minutes &&
                          (!tier.spacing || (inMillimetres(*tier.spacing) >= 0 &&
                                             inMillimetres(*tier.spacing) <= limits::longest));
        if (!good) {
            const std::string at = item(stem + ".tiers", index);
            if (!(turn >= 0 && turn < 360))
                fail(ProblemCode::outOfRange, at + ".turn_deg", {shortestDigits(turn), "0", "360"});
            if (tier.spacing)
                length(*tier.spacing, at + ".spacing_mm", 0, limits::longest);
            range(tier.progress.minutes, at + ".progress.minutes", 0, limits::minutes);
            count(tier.slots.size(), at + ".slots", limits::slots);
            return;
        }
        for (std::size_t k = 0; k < tier.slots.size(); ++k)
            if (!slot(tier.slots[k], stem, index, k))
                return;
    }

    bool slot(const Slot& slot, const std::string& stem, std::size_t tier, std::size_t index) {
        const auto at = [&] { return item(item(stem + ".tiers", tier) + ".slots", index); };
        if (slot.leaf.kind && !kindIds_.contains(slot.leaf.kind.value))
            fail(ProblemCode::noSuchId, at() + ".kind", {"kind", std::to_string(slot.leaf.kind.value)});
        else if (slot.leaf.mix && !mixIds_.contains(slot.leaf.mix.value))
            fail(ProblemCode::noSuchId, at() + ".mix", {"mix", std::to_string(slot.leaf.mix.value)});
        else if (slot.leaf.mix && !slot.leaf.kind)
            fail(ProblemCode::missingKey, at(), {"kind"});
        return !problem_;
    }

    /// Last, since it needs every reference to be good: no more leaves on the stems than there are.
    void stock() {
        if (problem_)
            return;
        const std::vector<TrayLine> lines = tray(plan_);
        std::size_t all = 0;
        for (const TrayLine& line : lines) {
            all += static_cast<std::size_t>(line.placed);
            if (line.left() < 0)
                fail(ProblemCode::overdrawnStock, placeOfStock(line.leaf),
                     {find(plan_, line.leaf.kind)->name, find(plan_, line.leaf.mix)->name,
                      std::to_string(line.placed), std::to_string(line.stock)});
        }
        std::size_t filled = 0;
        for (const Stem& stem : plan_.stems)
            for (const Tier& tier : stem.tiers)
                filled += static_cast<std::size_t>(std::count_if(tier.slots.begin(), tier.slots.end(),
                                                                 [](const Slot& s) { return s.filled(); }));
        if (filled != all)
            reportStrayLeaf();
    }

    std::string placeOfStock(Leaf leaf) const {
        for (std::size_t i = 0; i < plan_.kinds.size(); ++i)
            for (std::size_t j = 0; j < plan_.kinds[i].stock.size(); ++j)
                if (plan_.kinds[i].id == leaf.kind && plan_.kinds[i].stock[j].mix == leaf.mix)
                    return item(item("kinds", i) + ".stock", j);
        return {};
    }

    /// A placed leaf whose kind has no line of stock for its mix.
    void reportStrayLeaf() {
        for (std::size_t i = 0; i < plan_.stems.size(); ++i)
            for (std::size_t j = 0; j < plan_.stems[i].tiers.size(); ++j)
                for (std::size_t k = 0; k < plan_.stems[i].tiers[j].slots.size(); ++k) {
                    const Slot& slot = plan_.stems[i].tiers[j].slots[k];
                    if (!slot.filled())
                        continue;
                    const Kind* kind = find(plan_, slot.leaf.kind);
                    if (!stockLine(*kind, slot.leaf.mix))
                        return fail(ProblemCode::mixNotOfKind,
                                    item(item(item("stems", i) + ".tiers", j) + ".slots", k) + ".mix",
                                    {kind->name, find(plan_, slot.leaf.mix)->name});
                }
    }

    const Plan& plan_;
    std::unordered_set<std::uint32_t> colourIds_, mixIds_, kindIds_;
};

} // namespace

std::optional<Problem> firstProblem(const Plan& plan) {
    return PlanInspector(plan).run();
}

} // namespace stemwright

#include "core/document/sheet_flow.h"
#include "core/figures/supplies.h"

#include <algorithm>

namespace stemwright {

namespace {

constexpr double barTall = 6;
constexpr double barGap = 1.4;   ///< between the bar and the words below it
constexpr double timesRoom = 28; ///< for "3 × 600 mm" beside a bar

std::string packs(const SheetContext& context, const Purchase& buy) {
    return buy.packs > 0 ? context.words.count(buy.packs) : "";
}
std::string cost(const SheetContext& context, const Purchase& buy) {
    return buy.cost > 0 ? context.words.cost(buy.cost) : "";
}

/// A table without the columns that have nothing in them, such as prices that nobody gave.
void table(SheetFlow& flow, const SheetContext& context, const std::vector<std::string>& head,
           const std::vector<std::vector<std::string>>& rows, std::size_t leftColumns) {
    std::vector<std::vector<std::string>> all(rows.size() + 1);
    std::vector<Align> aligns;
    for (std::size_t c = 0; c < head.size(); ++c) {
        if (std::all_of(rows.begin(), rows.end(), [&](const auto& row) { return row[c].empty(); }))
            continue;
        aligns.push_back(c < leftColumns ? Align::left : Align::right);
        all[0].push_back(head[c]);
        for (std::size_t r = 0; r < rows.size(); ++r)
            all[r + 1].push_back(rows[r][c]);
    }
    flow.table(Table::fitted(context, all, aligns, type::text, type::smallStrong, flow.room().width), all[0],
               {all.begin() + 1, all.end()});
}

void beads(SheetFlow& flow, const SheetContext& context, const Supplies& all) {
    const SheetWords& words = context.words;
    flow.heading(words.word(SheetWord::beadsHeading), 20);
    if (all.beads.empty()) {
        flow.paragraph(words.word(SheetWord::nothingToBuy), type::text, Ink::quiet);
        return;
    }
    std::vector<std::vector<std::string>> rows;
    for (const BeadSupply& bead : all.beads) {
        const Colour* colour = find(context.plan, bead.colour);
        rows.push_back({colour ? colour->name : "", bead.size, words.count(bead.beads),
                        words.count(bead.withSpare), bead.mass > Mass{} ? words.mass(bead.mass) : "",
                        bead.strung > Length{} ? words.cut(bead.strung) : "", packs(context, bead.buy),
                        cost(context, bead.buy)});
    }
    table(flow, context,
          {words.word(SheetWord::columnColour), words.word(SheetWord::columnSize),
           words.word(SheetWord::columnBeads), words.word(SheetWord::columnWithSpare),
           words.word(SheetWord::columnMass), words.word(SheetWord::columnStrung),
           words.word(SheetWord::columnPacks), words.word(SheetWord::columnCost)},
          rows, 2);
}

void wires(SheetFlow& flow, const SheetContext& context, const Supplies& all) {
    const SheetWords& words = context.words;
    std::vector<std::vector<std::string>> rows;
    for (const LeafWireSupply& wire : all.leafWire)
        rows.push_back({words.word(SheetWord::leafWireLine,
                                   {words.wire(wire.diameter, std::nullopt), words.metal(wire.metal)}),
                        words.cut(wire.length), words.mass(wire.mass), packs(context, wire.buy),
                        cost(context, wire.buy)});
    for (std::size_t i = 0; i < all.wraps.size(); ++i)
        rows.push_back({words.atStart(words.wrap(context.plan.binding.wraps[i])), words.cut(all.wraps[i].toCut),
                        "", packs(context, all.wraps[i].buy), cost(context, all.wraps[i].buy)});
    for (const BarSupply& bar : all.bars)
        rows.push_back(
            {words.word(SheetWord::barLine, {words.wire(bar.diameter, std::nullopt), words.metal(bar.metal)}),
             words.cut(bar.length), "", packs(context, bar.buy), cost(context, bar.buy)});
    if (rows.empty())
        return;
    flow.heading(words.word(SheetWord::wireHeading), 20);
    table(flow, context,
          {words.word(SheetWord::columnWhat), words.word(SheetWord::columnLength),
           words.word(SheetWord::columnMass), words.word(SheetWord::columnPacks),
           words.word(SheetWord::columnCost)},
          rows, 1);
    if (const std::string own = context.ownMeasure(); !own.empty())
        flow.paragraph(own, type::text);
}

void pot(SheetFlow& flow, const SheetContext& context, const Supplies& all) {
    const SheetWords& words = context.words;
    std::vector<std::vector<std::string>> rows;
    if (all.clay > Mass{})
        rows.push_back({words.word(SheetWord::clayLineSupply), words.mass(all.clay),
                        packs(context, all.clayToBuy), cost(context, all.clayToBuy)});
    if (all.cover > Mass{})
        rows.push_back({words.word(SheetWord::coverLine), words.mass(all.cover), packs(context, all.coverToBuy),
                        cost(context, all.coverToBuy)});
    if (rows.empty())
        return;
    flow.heading(words.word(SheetWord::clayHeading), 15);
    table(flow, context,
          {words.word(SheetWord::columnWhat), words.word(SheetWord::columnMass),
           words.word(SheetWord::columnPacks), words.word(SheetWord::columnCost)},
          rows, 1);
}

/// What one piece is called, and how long each is.
struct Piece {
    std::string label; ///< short, for the bar
    std::string words; ///< whole
    Length length;
};

/// How many bars there are, what is left of them, and how near to the best that is known to be.
std::string proofLine(const SheetWords& words, const CuttingPlan& plan) {
    std::vector<std::string> values{words.count(plan.barCount), words.cut(plan.waste)};
    if (plan.proved)
        return words.word(SheetWord::barProved, values);
    if (plan.fewestBars < plan.barCount) {
        values.push_back(words.count(plan.fewestBars));
        return words.word(SheetWord::barUnproved, values);
    }
    values.push_back(words.cut(plan.bought - plan.leastBought));
    return words.word(SheetWord::barUnprovedWaste, values);
}

/// The bars to scale, the longest across the page, each with its pieces and in words what they are.
void cutting(SheetFlow& flow, const SheetContext& context, const CuttingPlan& plan, const std::string& what,
             const std::vector<Piece>& pieces) {
    const SheetWords& words = context.words;
    if (plan.bars.empty() && plan.tooLong.empty())
        return;
    flow.heading(words.word(SheetWord::cuttingHeading, {what}), 18);
    Length longest = millimetres(1);
    for (const CutBar& bar : plan.bars)
        longest = std::max(longest, bar.bar);
    const double width = flow.room().width - timesRoom;
    for (const CutBar& bar : plan.bars) {
        std::string said;
        const auto list = [&](const std::string& one) { said += (said.empty() ? "" : ", ") + one; };
        for (std::size_t i = 0; i < bar.pieces.size(); ++i)
            for (int k = 0; k < bar.pieces[i]; ++k)
                list(pieces[i].words);
        if (bar.left > Length{})
            list(words.word(SheetWord::barRest, {words.cut(bar.left)}));
        Canvas measure = flow.canvas();
        const double height = barTall + barGap + measure.paragraphHeight(width, said, type::small) + 2;
        flow.need(height);
        Canvas canvas = flow.canvas();
        const double left = flow.room().x + timesRoom, scale = width / inMillimetres(longest);
        canvas.text({flow.room().x, flow.y() + barTall / 2 + 1},
                    words.word(SheetWord::barTimes, {words.count(bar.times), words.cut(bar.bar)}), type::text);
        double x = left;
        for (std::size_t i = 0; i < bar.pieces.size(); ++i)
            for (int k = 0; k < bar.pieces[i]; ++k) {
                const double wide = inMillimetres(pieces[i].length) * scale;
                canvas.fill({x, flow.y(), wide, barTall}, Ink::wire);
                canvas.box({x, flow.y(), wide, barTall}, 0.2, Ink::black);
                if (canvas.width(pieces[i].label, type::small) < wide - 1)
                    canvas.text({x + wide / 2, flow.y() + barTall / 2 + 0.9}, pieces[i].label, type::small,
                                Align::middle);
                x += wide;
            }
        canvas.box({left, flow.y(), inMillimetres(bar.bar) * scale, barTall}, 0.2, Ink::quiet);
        canvas.paragraph({left, flow.y() + barTall + barGap}, width, said, type::small, Align::left,
                         Ink::quiet);
        flow.skip(height);
    }
    if (!plan.bars.empty())
        flow.paragraph(proofLine(words, plan), type::text);
    std::string tooLong;
    for (const std::size_t i : plan.tooLong)
        tooLong += (tooLong.empty() ? "" : ", ") + pieces[i].words;
    if (!tooLong.empty())
        flow.paragraph(words.word(SheetWord::barTooLong, {tooLong}), type::text, Ink::accent);
}

std::string nameOf(const Plan& plan, StemId id) {
    const Stem* stem = find(plan, id);
    return stem ? stem->name : "";
}
std::string numberOf(const Plan& plan, StemId id) {
    const Stem* stem = find(plan, id);
    return stem ? std::to_string(stem - plan.stems.data() + 1) : "";
}

/// What is cut from the coil, pieces of one use and length together.
std::string fromTheCoil(const SheetContext& context, const BarSupply& bar) {
    const SheetWords& words = context.words;
    struct Alike {
        bool stake;
        std::string length, names;
        int count;
    };
    std::vector<Alike> groups;
    for (std::size_t i = 0; i < bar.pieces.size(); ++i) {
        const std::string length = words.size(bar.pieces[i].length), name = nameOf(context.plan, bar.stems[i]);
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const Alike& group) {
            return group.stake == bar.stakes[i] && group.length == length;
        });
        if (same == groups.end()) {
            groups.push_back({bar.stakes[i], length, name, 1});
            continue;
        }
        same->names += ", " + name;
        ++same->count;
    }
    std::string list;
    for (const Alike& group : groups) {
        list += list.empty() ? "" : "; ";
        list += group.count == 1 ? words.word(group.stake ? SheetWord::barStake : SheetWord::barCore,
                                              {group.names, group.length})
                                 : words.word(group.stake ? SheetWord::barStakes : SheetWord::barCores,
                                              {words.count(group.count), group.length, group.names});
    }
    return list;
}

void cuttings(SheetFlow& flow, const SheetContext& context, const Supplies& all) {
    const SheetWords& words = context.words;
    for (const BarSupply& bar : all.bars) {
        std::vector<Piece> pieces;
        for (std::size_t i = 0; i < bar.pieces.size(); ++i)
            pieces.push_back(
                {numberOf(context.plan, bar.stems[i]),
                 words.word(bar.stakes[i] ? SheetWord::barStake : SheetWord::barCore,
                            {nameOf(context.plan, bar.stems[i]), words.size(bar.pieces[i].length)}),
                 bar.pieces[i].length});
        const std::string what =
            words.word(SheetWord::barLine, {words.wire(bar.diameter, std::nullopt), words.metal(bar.metal)});
        if (bar.cutting.bars.empty() && bar.cutting.tooLong.empty() && !pieces.empty()) {
            flow.heading(words.word(SheetWord::cuttingHeading, {what}), 10);
            flow.paragraph(words.word(SheetWord::noBars, {fromTheCoil(context, bar)}), type::text);
            continue;
        }
        cutting(flow, context, bar.cutting, what, pieces);
    }
    for (std::size_t w = 0; w < all.wraps.size(); ++w) {
        const WrapSupply& wrap = all.wraps[w];
        std::vector<Piece> pieces;
        for (const StemId stem : wrap.stems) {
            const auto place = static_cast<std::size_t>(find(context.plan, stem) - context.plan.stems.data());
            const Length length = context.figures.stems[place].wraps[w].toCut;
            pieces.push_back({numberOf(context.plan, stem),
                              words.word(SheetWord::barWrap, {nameOf(context.plan, stem), words.cut(length)}),
                              length});
        }
        cutting(flow, context, wrap.cutting, words.atStart(words.wrap(context.plan.binding.wraps[w])), pieces);
    }
}

} // namespace

std::vector<Page> suppliesPages(const SheetContext& context, const Supplies& all) {
    const SheetFrame frame(context, SheetPage::supplies,
                           {SheetCaution::oldGlass, SheetCaution::plated, SheetCaution::cutWire});
    const SheetWords& words = context.words;
    SheetFlow flow(context, frame, words.word(SheetWord::suppliesTitle));
    beads(flow, context, all);
    wires(flow, context, all);
    pot(flow, context, all);
    if (all.minutesLeft > 0 || all.cost > 0) {
        flow.heading(words.word(SheetWord::workHeading), 12);
        if (all.minutesLeft > 0)
            flow.paragraph(words.word(SheetWord::hoursLeft, {words.hours(all.minutesLeft)}) +
                               (all.minutesPartly ? " " + words.word(SheetWord::hoursPartly) : ""),
                           type::text);
        if (all.cost > 0)
            flow.paragraph(words.word(SheetWord::allCost, {words.cost(all.cost)}), type::text);
    }
    cuttings(flow, context, all);
    return flow.take();
}

} // namespace stemwright

#include "tests/support/random_edits.h"

namespace stemwright::test {

Edit RandomEdits::next(const Plan& plan, int depth) {
    switch (below(depth < 2 ? 12 : 10)) {
    case 0:
    case 1:
        return FillSlot{slot(plan), leaf(plan)};
    case 2:
    case 3:
        return SwapSlots{slot(plan), slot(plan)};
    case 4:
    case 5:
    case 6:
        return ofTiers(plan);
    case 7:
    case 8:
        return ofStems(plan);
    case 9:
        return ofLists(plan);
    default: {
        Batch batch;
        for (int i = below(5); i >= 0; --i)
            batch.edits.push_back(next(plan, depth + 1));
        return batch;
    }
    }
}

Edit RandomEdits::ofTiers(const Plan& plan) {
    switch (below(9)) {
    case 0:
        return PinSlot{slot(plan), below(2) == 0};
    case 1:
    case 2: {
        const Stem& at = stem(plan);
        Tier tier = newTier(at, nullptr, KindId{1});
        for (Slot& s : tier.slots)
            s.leaf = leaf(plan);
        return OpenTier{at.id, index(at.tiers.size()), tier};
    }
    case 3: {
        const Stem& at = stem(plan);
        return CloseTier{at.id, index(at.tiers.size())};
    }
    case 4:
    case 5: {
        const Stem& from = stem(plan);
        const Stem& to = stem(plan);
        return MoveTiers{from.id, index(from.tiers.size()), below(4), to.id, index(to.tiers.size())};
    }
    case 6:
        return TurnTier{stem(plan).id, below(6), degrees(137.50776405003785 * below(9) / 4)};
    case 7:
        return SpaceTier{stem(plan).id, below(6),
                         below(2) ? std::optional(millimetres(0.1 * below(90))) : std::nullopt};
    default:
        return MarkTier{stem(plan).id, below(6), {below(2) == 0, 0.1 * below(50), ""}};
    }
}

Edit RandomEdits::ofStems(const Plan& plan) {
    switch (below(5)) {
    case 0:
    case 1: {
        StemForm form = stem(plan);
        form.name += "'";
        form.tail = millimetres(below(60) - 5);
        form.arrangement = static_cast<Arrangement>(below(5));
        if (below(3) == 0)
            form.core = CoreWire{millimetres(0.1 * below(20)), std::nullopt, Metal::softSteel, ""};
        if (below(4) == 0)
            form.took = {{below(5), millimetres(below(900)), ""}};
        if (form.name.size() > 20)
            form.name = "Stem";
        return ReformStem{stem(plan).id, form};
    }
    case 2:
        return Remove<StemId>{stem(plan).id};
    case 3: {
        Stem copy = stem(plan);
        copy.id = below(4) ? freeStemId(plan) : copy.id;
        if (below(2))
            for (Tier& tier : copy.tiers)
                for (Slot& s : tier.slots)
                    s.leaf.mix = {};
        return Insert<Stem>{below(5), copy};
    }
    default:
        return Move<StemId>{stem(plan).id, below(6)};
    }
}

Edit RandomEdits::ofLists(const Plan& plan) {
    switch (below(11)) {
    case 9: {
        OwnTables own = plan.own;
        if (!own.metals.empty() && below(2))
            own.metals.clear();
        else
            own.metals.push_back({below(3) ? "bronze" : "brass", 100.0 * below(90), 1e5, 100, ""});
        return Set<OwnTables>{own};
    }
    case 0: {
        const Kind& kind = plan.kinds[static_cast<std::size_t>(below(2))];
        std::vector<StockLine> stock = kind.stock;
        if (!stock.empty())
            stock[static_cast<std::size_t>(below(static_cast<int>(stock.size())))].made += below(5) - 2;
        if (below(3) == 0)
            stock = {stock.rbegin(), stock.rend()};
        return SetStock{kind.id, stock};
    }
    case 1: {
        const Kind& kind = plan.kinds[static_cast<std::size_t>(below(2))];
        KindForm form = kind;
        form.beads = below(120);
        form.length = millimetres(below(40));
        form.wireDiameter = millimetres(0.1 * below(6));
        form.angle = degrees(15 * below(12));
        form.ownMetal = below(4) ? "" : "bronze";
        if (below(3) == 0)
            form.make =
                LeafMake{Making::rows, below(9), below(9), degrees(30), "", {{below(9), below(30), ""}}};
        return ReformKind{kind.id, form};
    }
    case 2:
        return Move<MixId>{MixId{static_cast<std::uint32_t>(below(5))}, below(6)};
    case 3:
        return Move<KindId>{KindId{static_cast<std::uint32_t>(below(3))}, below(3)};
    case 4:
        return Move<ColourId>{ColourId{static_cast<std::uint32_t>(below(4))}, below(4)};
    case 5: {
        Colour colour = plan.colours[0];
        colour.srgb.red = static_cast<std::uint8_t>(below(256));
        return Replace<Colour>{colour};
    }
    case 6: {
        Mix mix = plan.mixes[static_cast<std::size_t>(below(static_cast<int>(plan.mixes.size())))];
        mix.colours.front().share = below(5);
        mix.colours.push_back({plan.colours.back().id, 0.5 + below(3), ""});
        return Replace<Mix>{mix};
    }
    case 7: {
        if (below(2))
            return Remove<ColourId>{plan.colours[static_cast<std::size_t>(below(2))].id};
        Colour colour{freeColourId(plan), "New", {10, 20, static_cast<std::uint8_t>(below(256))}, ""};
        return Insert<Colour>{below(4), colour};
    }
    case 8: {
        Binding binding = plan.binding;
        if (below(3) == 0)
            binding.wraps.clear();
        else
            binding.wraps.push_back({WrapWith::wire, 1, millimetres(0.3), millimetres(0.3), std::nullopt,
                                     0.1 * below(11), 1, millimetres(20), millimetres(20), millimetres(80),
                                     std::nullopt, ""});
        return Set<Binding>{binding};
    }
    default: {
        Pot pot = plan.pot;
        pot.plantingDepth = millimetres(below(30) - 2);
        pot.feet = below(6);
        return Set<Pot>{pot};
    }
    }
}

const Stem& RandomEdits::stem(const Plan& plan) {
    return plan.stems[static_cast<std::size_t>(below(static_cast<int>(plan.stems.size())))];
}

Leaf RandomEdits::leaf(const Plan& plan) {
    return {KindId{static_cast<std::uint32_t>(below(3))},
            MixId{static_cast<std::uint32_t>(below(static_cast<int>(plan.mixes.size()) + 2))}};
}

} // namespace stemwright::test

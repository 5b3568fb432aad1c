#include "tests/support/boards.h"

#include <random>

namespace stemwright::test {

namespace {

Slot slotWith(KindId kind, MixId mix) {
    Slot slot;
    slot.leaf = {kind, mix};
    return slot;
}

Tier pair(const Stem& stem, Slot left, Slot right) {
    Tier tier = newTier(stem, stem.tiers.empty() ? nullptr : &stem.tiers.back(), KindId{1});
    tier.slots = {std::move(left), std::move(right)};
    return tier;
}

Srgb spreadColour(int i) {
    // Any set of well separated colours does.
    return {static_cast<std::uint8_t>(40 + (i * 83) % 200), static_cast<std::uint8_t>(40 + (i * 47) % 200),
            static_cast<std::uint8_t>(40 + (i * 131) % 200)};
}

} // namespace

Plan smallBoard() {
    Plan plan;
    plan.about.title = "Small board";
    plan.colours = {{ColourId{1}, "Plum", {122, 68, 98}, ""}, {ColourId{2}, "Sea", {104, 152, 132}, ""}};
    plan.mixes = {{MixId{1}, "Plum", "P", {{ColourId{1}, 1, ""}}, ""},
                  {MixId{2}, "Plum on sea", "O", {{ColourId{1}, 1, ""}, {ColourId{2}, 1, ""}}, ""},
                  {MixId{3}, "Sea", "S", {{ColourId{2}, 1, ""}}, ""}};
    for (std::uint32_t k = 1; k <= 2; ++k) {
        Kind kind;
        kind.id = KindId{k};
        kind.name = k == 1 ? "Small" : "Broad";
        kind.beads = k == 1 ? 40 : 90;
        kind.length = millimetres(k == 1 ? 14 : 22);
        kind.width = millimetres(k == 1 ? 9 : 14);
        for (std::uint32_t m = 1; m <= 3; ++m)
            kind.stock.push_back({MixId{m}, 2, 2, ""});
        plan.kinds.push_back(std::move(kind));
    }
    plan.binding.wraps.push_back({});
    const std::vector<std::vector<std::pair<std::uint32_t, std::uint32_t>>> mixes = {
        {{1, 1}, {2, 2}, {3, 3}}, {{1, 3}, {2, 2}}, {}};
    for (std::uint32_t s = 1; s <= 3; ++s) {
        Stem stem;
        stem.id = StemId{s};
        stem.name = "Stem " + std::to_string(s);
        for (const auto& [left, right] : mixes[s - 1])
            stem.tiers.push_back(
                pair(stem, slotWith(KindId{1}, MixId{left}), slotWith(KindId{1}, MixId{right})));
        plan.stems.push_back(std::move(stem));
    }
    return plan;
}

Plan randomBoard(std::uint32_t seed, int stems, int leaves, int mixes, int kinds) {
    std::mt19937 random(seed);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<std::uint32_t>(n)); };
    Plan plan;
    plan.about.title = "Board " + std::to_string(seed);
    const int colours = std::max(2, mixes * 2 / 3);
    for (int c = 0; c < colours; ++c)
        plan.colours.push_back({ColourId{static_cast<std::uint32_t>(c + 1)}, "Colour " + std::to_string(c + 1),
                                spreadColour(c), ""});
    for (int m = 0; m < mixes; ++m) {
        Mix mix{MixId{static_cast<std::uint32_t>(m + 1)}, "Mix " + std::to_string(m + 1), "", {}, ""};
        mix.code = m < 26 ? std::string(1, static_cast<char>('A' + m))
                          : std::string{static_cast<char>('A' + m / 26 - 1), static_cast<char>('a' + m % 26)};
        mix.colours.push_back({ColourId{static_cast<std::uint32_t>(m % colours + 1)}, 2, ""});
        if (m % 3 != 0)
            mix.colours.push_back({ColourId{static_cast<std::uint32_t>((m + 1) % colours + 1)}, 1, ""});
        plan.mixes.push_back(std::move(mix));
    }
    for (int k = 0; k < kinds; ++k) {
        Kind kind;
        kind.id = KindId{static_cast<std::uint32_t>(k + 1)};
        kind.name = "Kind " + std::to_string(k + 1);
        kind.beads = 40 + 30 * k;
        kind.length = millimetres(14 + 6 * k);
        kind.width = millimetres(8 + 4 * k);
        for (int m = 0; m < mixes; ++m)
            kind.stock.push_back({MixId{static_cast<std::uint32_t>(m + 1)}, 0, 0, ""});
        plan.kinds.push_back(std::move(kind));
    }
    plan.binding.wraps.push_back({});
    for (int s = 0; s < stems; ++s) {
        Stem stem;
        stem.id = StemId{static_cast<std::uint32_t>(s + 1)};
        stem.name = "Stem " + std::to_string(s + 1);
        stem.tail = millimetres(20 + below(40));
        for (int t = 0; t < leaves / 2; ++t) {
            const int kind = t * kinds / std::max(1, leaves / 2);
            Tier tier = pair(stem, {}, {});
            for (Slot& slot : tier.slots) {
                slot.leaf.kind = KindId{static_cast<std::uint32_t>(kind + 1)};
                slot.pinned = below(12) == 0;
                if (below(10) == 0)
                    continue;
                const int mix = below(mixes);
                slot.leaf.mix = MixId{static_cast<std::uint32_t>(mix + 1)};
                ++plan.kinds[static_cast<std::size_t>(kind)].stock[static_cast<std::size_t>(mix)].made;
            }
            stem.tiers.push_back(std::move(tier));
        }
        plan.stems.push_back(std::move(stem));
    }
    for (Kind& kind : plan.kinds)
        for (StockLine& line : kind.stock)
            line.toMake = below(4);
    return plan;
}

Plan largeBoard(int stems, int leaves) {
    Plan plan = randomBoard(7, stems, leaves, 12);
    for (Stem& stem : plan.stems)
        for (Tier& tier : stem.tiers)
            for (Slot& slot : tier.slots)
                if (slot.pinned = false; !slot.filled()) {
                    slot.leaf.mix = MixId{1};
                    ++find(plan, slot.leaf.kind)->stock[0].made;
                }
    return plan;
}

} // namespace stemwright::test

#include "core/suggest/best_swap.h"

#include "core/suggest/shares.h"

#include <limits>

namespace stemwright {

namespace {

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// M·d for every stem and mix, in whole numbers.
Grid<std::int64_t> offsets(const Shares& shares, std::int64_t& all) {
    std::vector<std::int64_t> leaves(index(shares.rows()), 0), mixes(index(shares.columns()), 0);
    all = 0;
    for (int r = 0; r < shares.rows(); ++r)
        for (int c = 0; c < shares.columns(); ++c) {
            const int held = shares.fixed(r, c) + shares.now(r, c);
            leaves[index(r)] += held;
            mixes[index(c)] += held;
            all += held;
        }
    Grid<std::int64_t> off(shares.rows(), shares.columns());
    for (int r = 0; r < shares.rows(); ++r)
        for (int c = 0; c < shares.columns(); ++c)
            off(r, c) = all * (shares.fixed(r, c) + shares.now(r, c)) - leaves[index(r)] * mixes[index(c)];
    return off;
}

struct CountSwap {
    std::int64_t gain = 0; ///< M·(change − 4) / 2
    int a = -1, b = -1, i = -1, j = -1;
};

constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 4;

/// By row and column: M·d where the stem has a leaf of the mix to give, and a number that rules it out else.
Grid<std::int64_t> offered(const Shares& shares, const Grid<std::int64_t>& off) {
    Grid<std::int64_t> grid = off;
    for (int r = 0; r < shares.rows(); ++r)
        for (int c = 0; c < shares.columns(); ++c)
            if (shares.now(r, c) == 0)
                grid(r, c) = -never;
    return grid;
}

CountSwap bestOf(const Shares& shares, std::int64_t& all, StemId stem) {
    const Grid<std::int64_t> off = offsets(shares, all);
    const Grid<std::int64_t> offer = offered(shares, off);
    CountSwap best;
    best.gain = -2 * all; // what gains nothing
    const int columns = shares.columns();
    for (int a = 0; a < shares.rows(); ++a)
        for (int b = a + 1; b < shares.rows(); ++b) {
            if (stem && shares.stems[index(a)] != stem && shares.stems[index(b)] != stem)
                continue;
            std::int64_t give = never, take = never;
            for (int c = 0; c < columns; ++c) {
                give = std::min(give, off(b, c) - offer(a, c));
                take = std::min(take, off(a, c) - offer(b, c));
            }
            if (give + take >= best.gain)
                continue;
            best = {give + take, a, b, -1, -1};
            for (int c = columns - 1; c >= 0; --c) {
                if (off(b, c) - offer(a, c) == give)
                    best.i = c;
                if (off(a, c) - offer(b, c) == take)
                    best.j = c;
            }
        }
    return best;
}

SlotRef slotOf(const Plan& plan, const Shares& shares, int row, int column) {
    const std::vector<OpenSlot>& open = shares.open[index(row)];
    const Stem& stem = *find(plan, shares.stems[index(row)]);
    std::optional<SlotRef> any;
    for (std::size_t i = open.size(); i-- > 0;) {
        if (open[i].now != column)
            continue;
        const std::vector<Slot>& slots = stem.tiers[index(open[i].at.tier)].slots;
        if (slots.size() != 2 || !(slots[0].leaf == slots[1].leaf))
            return open[i].at;
        if (!any)
            any = open[i].at;
    }
    return *any;
}

} // namespace

std::optional<Swap> bestSwap(const Plan& plan, StemId stem) {
    std::optional<Swap> best;
    for (const Shares& shares : sharesOf(plan)) {
        std::int64_t all = 0;
        const CountSwap swap = bestOf(shares, all, stem);
        if (swap.a < 0)
            continue;
        const double change = 4 + 2 * static_cast<double>(swap.gain) / static_cast<double>(all);
        if (!best || change < best->change)
            best = Swap{slotOf(plan, shares, swap.a, swap.i), slotOf(plan, shares, swap.b, swap.j), change};
    }
    return best;
}

} // namespace stemwright

// Remedies that put a stem's own leaves in another order.
#include "core/figures/remedies.h"

#include <algorithm>
#include <map>

namespace stemwright {

namespace {

/// A slot of the stem, what is in it and what shall be.
struct Place {
    SlotRef at;
    Leaf now;
    Leaf wanted;
};

/// Swaps that bring every place what it wants, which is what they hold in another order. Leaves that are alike
/// are one as good as the other, so as many as can stay.
std::vector<Edit> swapsFor(std::vector<Place> places) {
    std::vector<Edit> edits;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (places[i].now == places[i].wanted)
            continue;
        std::size_t from = places.size();
        for (std::size_t j = i + 1; j < places.size(); ++j) {
            if (!(places[j].now == places[i].wanted) || places[j].now == places[j].wanted)
                continue;
            if (from == places.size())
                from = j;
            // One that wants what is here is put right by the same swap.
            if (places[j].wanted == places[i].now) {
                from = j;
                break;
            }
        }
        if (from == places.size())
            return {};
        edits.push_back(SwapSlots{places[i].at, places[from].at});
        std::swap(places[i].now, places[from].now);
    }
    return edits;
}

/// Within a tier, leaves that stay on it stay where they are.
void settleTier(std::vector<Place>::iterator first, std::vector<Place>::iterator last) {
    std::vector<Leaf> wanted;
    for (auto it = first; it != last; ++it)
        wanted.push_back(it->wanted);
    std::vector<std::vector<Place>::iterator> open;
    for (auto it = first; it != last; ++it) {
        const auto same = std::find(wanted.begin(), wanted.end(), it->now);
        if (same == wanted.end()) {
            open.push_back(it);
            continue;
        }
        it->wanted = it->now;
        wanted.erase(same);
    }
    for (std::size_t i = 0; i < open.size(); ++i)
        open[i]->wanted = wanted[i];
}

} // namespace

/// Sorting the free leaves of a kind over the places they have leaves as few inversions as the others allow: to
/// exchange two free leaves that stand against the order never makes more of them, whatever stands between.
std::vector<Edit> orderColours(const Remedying& about, const Stem& stem) {
    std::map<std::size_t, std::vector<Place>> byKind;
    for (std::size_t t = 0; t < stem.tiers.size(); ++t)
        for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s) {
            const Slot& slot = stem.tiers[t].slots[s];
            if (slot.filled() && isFree(stem, stem.tiers[t], slot))
                byKind[about.tables.lines()[about.line(slot.leaf)].kind].push_back(
                    {{stem.id, static_cast<int>(t), static_cast<int>(s)}, slot.leaf, {}});
        }
    std::vector<Edit> edits;
    for (auto& [kind, places] : byKind) {
        std::vector<std::size_t> lines;
        for (const Place& place : places)
            lines.push_back(about.line(place.now));
        std::sort(lines.begin(), lines.end());
        for (std::size_t i = 0; i < places.size(); ++i)
            places[i].wanted = about.figures.lines[lines[i]].leaf;
        for (auto first = places.begin(); first != places.end();) {
            const auto last = std::find_if(first, places.end(),
                                           [&](const Place& place) { return place.at.tier != first->at.tier; });
            settleTier(first, last);
            first = last;
        }
        const std::vector<Edit> swaps = swapsFor(places);
        edits.insert(edits.end(), swaps.begin(), swaps.end());
    }
    return edits;
}

/// Tiers that are free, and alike in their number of slots, exchange what they hold until the small leaves are
/// at the tip; nothing where fewer tiers would not be larger than the next.
std::vector<Edit> orderSizes(const Plan& plan, const Stem& stem) {
    const auto countLarger = [](const std::vector<Length>& sizes) {
        int count = 0;
        for (std::size_t i = 1; i < sizes.size(); ++i)
            count += sizes[i] > Length{} && sizes[i - 1] > sizes[i];
        return count;
    };
    std::vector<Length> sizes;
    std::map<std::size_t, std::vector<std::size_t>> bySlots;
    for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
        const Tier& tier = stem.tiers[t];
        sizes.push_back(sizeOfTier(plan, tier));
        if (sizes.back() > Length{} && std::all_of(tier.slots.begin(), tier.slots.end(),
                                                   [&](const Slot& slot) { return isFree(stem, tier, slot); }))
            bySlots[tier.slots.size()].push_back(t);
    }
    const int before = countLarger(sizes);
    std::vector<Edit> edits;
    for (const auto& [slots, tiers] : bySlots) {
        std::vector<std::size_t> sorted = tiers;
        std::stable_sort(sorted.begin(), sorted.end(),
                         [&](std::size_t a, std::size_t b) { return sizes[a] < sizes[b]; });
        const std::vector<Length> was = sizes;
        // Where each of the tiers' contents is now, as the swaps move them.
        std::vector<std::size_t> content = tiers;
        for (std::size_t i = 0; i < tiers.size(); ++i) {
            sizes[tiers[i]] = was[sorted[i]];
            const auto from = static_cast<std::size_t>(std::find(content.begin(), content.end(), sorted[i]) -
                                                       content.begin());
            if (from == i)
                continue;
            for (std::size_t s = 0; s < slots; ++s)
                edits.push_back(SwapSlots{{stem.id, static_cast<int>(tiers[i]), static_cast<int>(s)},
                                          {stem.id, static_cast<int>(tiers[from]), static_cast<int>(s)}});
            std::swap(content[i], content[from]);
        }
    }
    return countLarger(sizes) < before ? edits : std::vector<Edit>{};
}

} // namespace stemwright

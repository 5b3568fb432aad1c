#include "core/suggest/exchange.h"

#include <cstdint>
#include <map>

namespace stemwright {

namespace {

using Key = std::uint64_t;

Key keyOf(Leaf leaf) {
    return (Key{leaf.kind.value} << 32) | leaf.mix.value;
}

} // namespace

std::vector<Edit> exchanges(std::vector<Change> changes) {
    std::erase_if(changes, [](const Change& change) { return change.now == change.wanted; });
    // Waiting changes by what their slot holds now and what it wants, latest first.
    std::map<Key, std::map<Key, std::vector<std::size_t>>> waiting;
    for (std::size_t i = changes.size(); i-- > 0;)
        waiting[keyOf(changes[i].now)][keyOf(changes[i].wanted)].push_back(i);
    const auto take = [&](Key now, Key wanted) {
        auto& byWanted = waiting[now];
        auto& list = byWanted[wanted];
        const std::size_t i = list.back();
        list.pop_back();
        if (list.empty())
            byWanted.erase(wanted);
        return i;
    };
    std::vector<Edit> edits;
    std::vector<bool> done(changes.size(), false);
    for (std::size_t i = 0; i < changes.size(); ++i) {
        if (done[i])
            continue;
        Change& here = changes[i];
        const Key now = keyOf(here.now), wanted = keyOf(here.wanted);
        auto& mine = waiting[now][wanted];
        std::erase(mine, i);
        if (mine.empty())
            waiting[now].erase(wanted);
        const auto holders = waiting.find(wanted);
        if (!here.wanted.mix || holders == waiting.end() || holders->second.empty()) {
            edits.push_back(FillSlot{here.at, here.wanted});
            continue;
        }
        const auto other = take(wanted, holders->second.contains(now) ? now : holders->second.begin()->first);
        edits.push_back(SwapSlots{here.at, changes[other].at});
        changes[other].now = here.now;
        if (changes[other].now == changes[other].wanted)
            done[other] = true;
        else
            waiting[keyOf(changes[other].now)][keyOf(changes[other].wanted)].push_back(other);
    }
    return edits;
}

} // namespace stemwright

#include "core/suggest/suggestion.h"

#include <algorithm>
#include <cassert>

namespace stemwright {

namespace {

/// A slot that the suggestion changes, as it is while edits are found, and as it shall be.
struct Open {
    SlotRef at;
    Leaf now;
    Leaf wanted;
};

bool sameTiers(const Plan& before, const Plan& after) {
    return std::equal(before.stems.begin(), before.stems.end(), after.stems.begin(), after.stems.end(),
                      [](const Stem& a, const Stem& b) {
                          return a.id == b.id && std::equal(a.tiers.begin(), a.tiers.end(), b.tiers.begin(),
                                                            b.tiers.end(), [](const Tier& x, const Tier& y) {
                                                                return x.slots.size() == y.slots.size();
                                                            });
                      });
}

std::vector<Open> changedSlots(const Plan& before, const Plan& after) {
    std::vector<Open> changed;
    for (std::size_t s = 0; s < before.stems.size(); ++s)
        for (std::size_t t = 0; t < before.stems[s].tiers.size(); ++t)
            for (std::size_t i = 0; i < before.stems[s].tiers[t].slots.size(); ++i) {
                const Leaf& now = before.stems[s].tiers[t].slots[i].leaf;
                const Leaf& wanted = after.stems[s].tiers[t].slots[i].leaf;
                if (!(now == wanted))
                    changed.push_back(
                        {{before.stems[s].id, static_cast<int>(t), static_cast<int>(i)}, now, wanted});
            }
    return changed;
}

} // namespace

Plan taken(const Plan& plan, const Suggestion& suggestion) {
    Plan after = plan;
    [[maybe_unused]] const auto back = apply(after, suggestion.edits);
    assert(back.ok());
    return after;
}

Result<Batch> takenForStem(const Plan& plan, const Suggestion& suggestion, StemId stem) {
    const Stem* at = find(plan, stem);
    if (!at)
        return Problem{ProblemCode::noSuchStem, "", {std::to_string(stem.value)}};
    const Plan after = taken(plan, suggestion);
    if (!sameTiers(plan, after))
        return Problem{ProblemCode::noSuchTier, "", {at->name, "1"}};
    std::vector<Open> changed = changedSlots(plan, after);
    Batch batch{Deed::suggestion, {}};
    Plan now = plan;
    const auto make = [&](const Edit& edit) {
        [[maybe_unused]] const auto back = apply(now, edit);
        assert(back.ok());
        batch.edits.push_back(edit);
    };
    for (Open& here : changed) {
        if (here.at.stem != stem || here.now == here.wanted)
            continue;
        const auto holder = [&](const auto& suits) {
            return std::find_if(changed.begin(), changed.end(), [&](const Open& other) {
                return other.now == here.wanted && !(other.now == other.wanted) && suits(other);
            });
        };
        auto other = changed.end();
        if (here.wanted.mix) {
            other = holder([&](const Open& o) { return o.at.stem == stem; });
            if (other == changed.end())
                other = holder([&](const Open& o) { return o.wanted == here.now; });
            if (other == changed.end() && inTray(now, here.wanted) == 0)
                other = holder([](const Open&) { return true; });
        }
        if (other != changed.end()) {
            make(SwapSlots{here.at, other->at});
            std::swap(here.now, other->now);
        } else {
            make(FillSlot{here.at, here.wanted});
            here.now = here.wanted;
        }
    }
    return batch;
}

} // namespace stemwright

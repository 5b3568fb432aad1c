#include "app/leaves/draft.h"

#include "core/document/new_plan.h"

#include <algorithm>

namespace stemwright {

namespace {

template <class Part>
void addChanged(std::vector<Edit>& edits, const Plan& before, const std::vector<Part>& after) {
    for (std::size_t i = 0; i < after.size(); ++i) {
        const Part* was = find(before, after[i].id);
        if (!was)
            edits.push_back(Insert<Part>{static_cast<int>(i), after[i]});
        else if (!(*was == after[i]))
            edits.push_back(Replace<Part>{after[i]});
    }
}

/// Two mixes may exchange their codes; since no two may ever share one, they pass through free ones.
void freeCodes(std::vector<Edit>& edits, const Plan& before, const Plan& after) {
    std::vector<std::string> taken;
    for (const Plan* plan : {&before, &after})
        for (const Mix& mix : plan->mixes)
            taken.push_back(mix.code);
    for (const Mix& mix : before.mixes) {
        const Mix* becomes = find(after, mix.id);
        const bool wanted = std::any_of(after.mixes.begin(), after.mixes.end(), [&](const Mix& other) {
            return other.id != mix.id && other.code == mix.code;
        });
        if (!becomes || becomes->code == mix.code || !wanted)
            continue;
        Mix between = mix;
        between.code = freeCode({}, taken);
        taken.push_back(between.code);
        edits.push_back(Replace<Mix>{std::move(between)});
    }
}

} // namespace

std::optional<Edit> difference(const Plan& before, const Plan& after, Deed deed) {
    std::vector<Edit> edits;
    addChanged(edits, before, after.colours);
    freeCodes(edits, before, after);
    addChanged(edits, before, after.mixes);
    for (std::size_t i = 0; i < after.kinds.size(); ++i) {
        const Kind& kind = after.kinds[i];
        const Kind* was = find(before, kind.id);
        if (!was) {
            edits.push_back(Insert<Kind>{static_cast<int>(i), kind});
            continue;
        }
        if (!(static_cast<const KindForm&>(*was) == static_cast<const KindForm&>(kind)))
            edits.push_back(ReformKind{kind.id, kind});
        if (!(was->stock == kind.stock))
            edits.push_back(SetStock{kind.id, kind.stock});
    }
    if (edits.empty())
        return std::nullopt;
    if (edits.size() == 1)
        return std::move(edits.front());
    return Edit(Batch{deed, std::move(edits)});
}

} // namespace stemwright

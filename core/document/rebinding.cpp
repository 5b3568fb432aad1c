#include "core/document/rebinding.h"

#include <algorithm>

namespace stemwright {

namespace {

/// Where the layer of that place stands now; -1 where it is gone.
int placeNow(const Plan& plan, const Binding& now, const std::vector<int>& from, int before) {
    const auto found = std::find(from.begin(), from.end(), before);
    if (found == from.end() || before < 0 || static_cast<std::size_t>(before) >= plan.binding.wraps.size())
        return -1;
    const auto at = static_cast<std::size_t>(found - from.begin());
    const bool same = at < now.wraps.size() &&
                      now.wraps[at].with == plan.binding.wraps[static_cast<std::size_t>(before)].with;
    return same ? static_cast<int>(at) : -1;
}

} // namespace

std::optional<Edit> rebinding(const Plan& plan, const Binding& now, const std::vector<int>& from) {
    const auto moved = [&](std::size_t before) { return placeNow(plan, now, from, static_cast<int>(before)); };
    Batch batch{Deed::changeBinding, {}};
    if (now != plan.binding)
        batch.edits.push_back(Set<Binding>{now});

    Buying buying = plan.buying;
    buying.wraps.clear();
    for (std::size_t w = 0; w < plan.buying.wraps.size(); ++w)
        if (const int to = moved(w); to >= 0) {
            buying.wraps.resize(std::max(buying.wraps.size(), static_cast<std::size_t>(to) + 1));
            buying.wraps[static_cast<std::size_t>(to)] = plan.buying.wraps[w];
        }
    if (buying != plan.buying)
        batch.edits.push_back(Set<Buying>{std::move(buying)});

    for (const Stem& stem : plan.stems) {
        StemForm form = stem;
        form.took.clear();
        for (Took took : stem.took)
            if (const int to = moved(static_cast<std::size_t>(took.wrap)); to >= 0) {
                took.wrap = to;
                form.took.push_back(std::move(took));
            }
        std::stable_sort(form.took.begin(), form.took.end(),
                         [](const Took& a, const Took& b) { return a.wrap < b.wrap; });
        if (form.took != stem.took)
            batch.edits.push_back(ReformStem{stem.id, std::move(form)});
    }
    if (batch.edits.empty())
        return std::nullopt;
    return batch.edits.size() == 1 ? batch.edits.front() : Edit(std::move(batch));
}

} // namespace stemwright

#include "core/suggest/pot_placing.h"

#include "core/suggest/pot_placer.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace stemwright {

namespace {

/// The place nearest to where each locked stem stands; −1 for the others.
std::vector<int> heldPlaces(const Plan& plan, const std::vector<PlaceMm>& now,
                            const std::vector<PlaceMm>& places) {
    std::vector<int> held(plan.stems.size(), -1);
    std::vector<char> taken(places.size(), 0);
    for (std::size_t s = 0; s < plan.stems.size(); ++s) {
        if (!plan.stems[s].locked)
            continue;
        int nearest = -1;
        double least = std::numeric_limits<double>::max();
        for (std::size_t p = 0; p < places.size(); ++p)
            if (const double far = std::hypot(places[p].x - now[s].x, places[p].y - now[s].y);
                !taken[p] && far < least)
                least = far, nearest = static_cast<int>(p);
        held[s] = nearest;
        taken[nth(nearest)] = 1;
    }
    return held;
}

} // namespace

double placingCost(const Plan& plan, const std::vector<PlaceMm>& standing, ViewedFrom viewedFrom) {
    const PottedStems stems(plan);
    const PotPlaces places(standing, viewedFrom);
    const PlacingOptions options;
    std::vector<int> stemAt(standing.size());
    std::iota(stemAt.begin(), stemAt.end(), 0);
    return PotPlacer(stems, places, std::vector<int>(standing.size(), -1), options).costOf(stemAt);
}

Suggestion placeInPot(const Plan& plan, const PlacingOptions& options) {
    Suggestion out;
    out.aim = Aim::places;
    if (plan.stems.empty())
        return out;
    const PottedStems stems(plan);
    const std::vector<PlaceMm> now = standings(plan);
    std::vector<PlaceMm> list = placesInPot(plan);
    const std::vector<int> held = heldPlaces(plan, now, list);
    for (std::size_t s = 0; s < held.size(); ++s)
        if (held[s] >= 0)
            list[nth(held[s])] = now[s];
    const PotPlaces places(std::move(list), options.viewedFrom);
    PotPlacer placer(stems, places, held, options);
    placer.run();
    out.before = placingCost(plan, now, options.viewedFrom);
    out.after = placer.cost;
    out.bound = placer.bound;
    out.proved = placer.proved;
    out.stopped = placer.stopped();
    out.steps = placer.steps();
    // Places of her own may be better than any order on even ones.
    if (out.before < out.after - placingHair) {
        out.after = out.before;
        out.bound = std::min(out.bound, out.before);
        return out;
    }
    for (int p = 0; p < stems.count; ++p) {
        const Stem& stem = plan.stems[nth(placer.best[nth(p)])];
        if (stem.locked)
            continue;
        ReformStem edit{stem.id, stem};
        Standing standing = stem.standing.value_or(Standing{});
        const PlaceMm& place = places.list[nth(p)];
        // Tenths of a millimetre are finer than a hand plants.
        standing.x = millimetres(std::round(place.x * 10) / 10 + 0.0);
        standing.y = millimetres(std::round(place.y * 10) / 10 + 0.0);
        edit.form.standing = standing;
        if (stem.standing == edit.form.standing)
            continue;
        out.edits.edits.emplace_back(std::move(edit));
        ++out.moved;
    }
    return out;
}

} // namespace stemwright

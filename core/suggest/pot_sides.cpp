#include "core/suggest/pot_sides.h"

#include "core/figures/figures.h"
#include "core/suggest/pot_placing.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

namespace {

constexpr double sameHeight = 0.01; ///< mm
constexpr double samePlaceMm = 0.2; ///< standings are kept to tenths

/// Places in the order of `key`, from 0; neighbours whose keys differ by less than `same` share their mean.
template <class Key> std::vector<double> ranks(int count, double same, const Key& key) {
    std::vector<int> order(nth(count));
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return key(a) < key(b); });
    std::vector<double> rank(nth(count), 0);
    for (int i = 0; i < count;) {
        int end = i + 1;
        while (end < count && key(order[nth(end)]) - key(order[nth(end - 1)]) < same)
            ++end;
        for (int k = i; k < end; ++k)
            rank[nth(order[nth(k)])] = (i + end - 1) / 2.0;
        i = end;
    }
    return rank;
}

} // namespace

PottedStems::PottedStems(const Plan& plan)
    : count(static_cast<int>(plan.stems.size())), likeness(count, count) {
    const Figures figures = stemwright::figures(plan);
    rank = ranks(count, sameHeight, [&](int i) { return -inMillimetres(figures.stems[nth(i)].height); });
    double tallest = 0;
    for (const StemFigures& stem : figures.stems)
        tallest = std::max(tallest, inMillimetres(stem.height));
    std::vector<std::optional<Lab>> colours;
    for (const StemFigures& stem : figures.stems) {
        std::vector<WeightedSrgb> parts;
        for (std::size_t c = 0; c < stem.beads.size(); ++c)
            parts.push_back({plan.colours[c].srgb, static_cast<double>(stem.beads[c])});
        const auto mean = mixed(parts);
        colours.push_back(mean ? std::optional(toLab(*mean)) : std::nullopt);
    }
    for (int i = 0; i < count; ++i)
        for (int j = i + 1; j < count; ++j) {
            const double apart =
                std::abs(inMillimetres(figures.stems[nth(i)].height - figures.stems[nth(j)].height));
            double like = heightLikenessWeight *
                          std::max(0.0, 1 - apart / std::max(unlikeHeights * tallest, placingHair));
            if (colours[nth(i)] && colours[nth(j)])
                like += colourLikenessWeight *
                        std::max(0.0, 1 - difference(*colours[nth(i)], *colours[nth(j)]) / unlikeColours);
            likeness(i, j) = likeness(j, i) = like;
        }
}

PotPlaces::PotPlaces(std::vector<PlaceMm> places, ViewedFrom viewedFrom) : list(std::move(places)) {
    const int count = static_cast<int>(list.size());
    rank = ranks(count, samePlaceMm, [&](int i) {
        const PlaceMm& p = list[nth(i)];
        return viewedFrom == ViewedFrom::front ? -p.y : std::hypot(p.x, p.y);
    });
    const double reach = neighbourReach * nearestApart(list) + placingHair;
    neighbours.resize(nth(count));
    for (int i = 0; i < count; ++i)
        for (int j = i + 1; j < count; ++j)
            if (std::hypot(list[nth(i)].x - list[nth(j)].x, list[nth(i)].y - list[nth(j)].y) <= reach) {
                neighbours[nth(i)].push_back(j);
                neighbours[nth(j)].push_back(i);
            }
}

} // namespace stemwright

#include "core/figures/standings.h"

#include "core/figures/pot_shape.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;

/// The rings for places `apart` from each other: how many each holds, the outermost first.
std::vector<int> ringsFor(double apart, double radius) {
    std::vector<int> rings;
    for (double r = radius; r >= 0; r -= apart) {
        if (r < apart / 2) {
            rings.push_back(1);
            break;
        }
        rings.push_back(
            std::max(1, static_cast<int>(std::floor(pi / std::asin(std::min(1.0, apart / (2 * r)))))));
    }
    return rings;
}

int sum(const std::vector<int>& rings) {
    int all = 0;
    for (const int n : rings)
        all += n;
    return all;
}

double far(const PlaceMm& a, const PlaceMm& b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

} // namespace

std::vector<PlaceMm> evenPlaces(int count, double radius) {
    std::vector<PlaceMm> places;
    if (count < 1)
        return places;
    if (count == 1 || !(radius > 0))
        return std::vector<PlaceMm>(static_cast<std::size_t>(count));
    double low = 0, high = 2 * radius;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (middle > 0 && sum(ringsFor(middle, radius)) >= count ? low : high) = middle;
    }
    const double apart = std::max(low, 1e-9);
    std::vector<int> rings = ringsFor(apart, radius);
    // What is too many leaves the rings where places are closest, so that those that stay spread out.
    for (int over = sum(rings) - count; over > 0; --over) {
        std::size_t dense = 0;
        double least = std::numeric_limits<double>::max();
        for (std::size_t i = 0; i < rings.size(); ++i) {
            const double r = radius - static_cast<double>(i) * apart;
            const double gap =
                rings[i] > 1 ? 2 * r * std::sin(pi / rings[i]) : std::numeric_limits<double>::max();
            if (gap < least)
                least = gap, dense = i;
        }
        --rings[dense];
    }
    for (std::size_t i = rings.size(); i-- > 0;) {
        const bool inner = i + 1 == rings.size();
        const double r = inner && rings[i] == 1 ? 0 : radius - static_cast<double>(i) * apart;
        // Each second ring is turned by half a step, so that nobody stands straight behind another.
        const double first = -pi / 2 + (i % 2 == 1 ? pi / std::max(1, rings[i]) : 0);
        for (int k = 0; k < rings[i]; ++k) {
            const double angle = first + 2 * pi * k / rings[i];
            places.push_back({r * std::cos(angle), r * std::sin(angle)});
        }
    }
    return places;
}

double nearestApart(const std::vector<PlaceMm>& places) {
    double least = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < places.size(); ++i)
        for (std::size_t j = i + 1; j < places.size(); ++j)
            least = std::min(least, far(places[i], places[j]));
    return places.size() < 2 ? 0 : least;
}

double placingRadius(const Plan& plan) {
    const double clay = inMillimetres(clayRadius(plan.pot));
    const double stake = inMillimetres(plan.pot.stake.diameter) / 2;
    return std::max(0.0, std::min(clay * placingPart, clay - stake));
}

namespace {

/// The part of an oval's or rectangle's clay that places are spread over, so that leaves find room inside the
/// rim: more than a round one's, since these places keep away from the edge themselves (own choice, no source).
constexpr double spreadPart = 0.86;

std::vector<PlaceMm> spreadOver(const Pot& pot, int count, double a, double b) {
    const auto within = [&](double x, double y) {
        if (pot.opening == PotOpening::rectangular)
            return std::abs(x) <= a && std::abs(y) <= b;
        return x * x / (a * a) + y * y / (b * b) <= 1;
    };
    // So much work that standings of a usual plan take well below a millisecond.
    constexpr double mostWork = 3e6;
    const double wanted = std::clamp(16.0 * count, 400.0, 1600.0);
    const double step = std::sqrt(4 * a * b / wanted);
    std::vector<PlaceMm> samples;
    const int columns = std::max(1, static_cast<int>(std::ceil(2 * a / step)));
    const int rows = std::max(1, static_cast<int>(std::ceil(2 * b / step)));
    for (int j = 0; j < rows; ++j)
        for (int i = 0; i < columns; ++i)
            if (const PlaceMm p{-a + 2 * a * (i + 0.5) / columns, -b + 2 * b * (j + 0.5) / rows};
                within(p.x, p.y))
                samples.push_back(p);
    std::vector<PlaceMm> places;
    const double golden = pi * (3 - std::sqrt(5.0));
    for (int i = 0; i < count; ++i) {
        const double r = std::sqrt((i + 0.5) / count), angle = -pi / 2 + golden * i;
        places.push_back({a * r * std::cos(angle), b * r * std::sin(angle)});
    }
    const int rounds = static_cast<int>(
        std::clamp(mostWork / (static_cast<double>(samples.size()) * std::max(1, count)), 4.0, 30.0));
    std::vector<PlaceMm> sums(places.size());
    std::vector<int> hits(places.size());
    for (int round = 0; round < rounds; ++round) {
        std::fill(sums.begin(), sums.end(), PlaceMm{});
        std::fill(hits.begin(), hits.end(), 0);
        for (const PlaceMm& p : samples) {
            std::size_t nearest = 0;
            double least = std::numeric_limits<double>::max();
            for (std::size_t i = 0; i < places.size(); ++i) {
                const double dx = places[i].x - p.x, dy = places[i].y - p.y;
                if (const double square = dx * dx + dy * dy; square < least)
                    least = square, nearest = i;
            }
            sums[nearest].x += p.x;
            sums[nearest].y += p.y;
            ++hits[nearest];
        }
        for (std::size_t i = 0; i < places.size(); ++i)
            if (hits[i] > 0)
                places[i] = {sums[i].x / hits[i], sums[i].y / hits[i]};
    }
    std::stable_sort(places.begin(), places.end(), [](const PlaceMm& one, const PlaceMm& other) {
        return std::hypot(one.x, one.y) < std::hypot(other.x, other.y);
    });
    return places;
}

} // namespace

std::vector<PlaceMm> placesInPot(const Plan& plan) {
    const auto count = static_cast<int>(plan.stems.size());
    if (plan.pot.opening == PotOpening::round)
        return evenPlaces(count, placingRadius(plan));
    const double clay = inMillimetres(clayRadius(plan.pot)), part = breadthPart(plan.pot);
    const double stake = inMillimetres(plan.pot.stake.diameter) / 2;
    const double a = std::min(clay * spreadPart, clay - stake),
                 b = std::min(clay * part * spreadPart, clay * part - stake);
    if (!(a > 0) || !(b > 0))
        return std::vector<PlaceMm>(plan.stems.size());
    return spreadOver(plan.pot, count, a, b);
}

std::vector<PlaceMm> standings(const Plan& plan) {
    std::vector<PlaceMm> out(plan.stems.size());
    std::vector<std::size_t> open;
    std::vector<PlaceMm> taken;
    for (std::size_t i = 0; i < plan.stems.size(); ++i) {
        if (const auto& own = plan.stems[i].standing) {
            out[i] = {inMillimetres(own->x), inMillimetres(own->y)};
            taken.push_back(out[i]);
        } else {
            open.push_back(i);
        }
    }
    if (open.empty())
        return out;
    std::vector<PlaceMm> places = placesInPot(plan);
    if (taken.empty())
        return places;
    std::vector<double> free(places.size(), std::numeric_limits<double>::max());
    const auto take = [&](const PlaceMm& at) {
        for (std::size_t p = 0; p < places.size(); ++p)
            free[p] = std::min(free[p], far(places[p], at));
    };
    for (const PlaceMm& at : taken)
        take(at);
    for (const std::size_t stem : open) {
        const auto best = static_cast<std::size_t>(std::max_element(free.begin(), free.end()) - free.begin());
        out[stem] = places[best];
        take(places[best]);
        free[best] = -1;
    }
    return out;
}

} // namespace stemwright

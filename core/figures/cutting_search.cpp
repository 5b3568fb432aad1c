#include "core/figures/cutting_search.h"

#include <algorithm>

namespace stemwright {

namespace {
constexpr std::size_t mostRemembered = 200'000;
} // namespace

std::size_t CutSearch::Hash::operator()(const std::vector<int>& v) const {
    std::uint64_t hash = 1469598103934665603u;
    for (const int x : v)
        hash = (hash ^ static_cast<std::uint32_t>(x)) * 1099511628211u;
    return hash;
}

CutSearch::CutSearch(const CutProblem& problem, const std::vector<std::int64_t>& costs, const CutPrices& prices,
                     std::int64_t scale, std::int64_t steps)
    : problem_(problem),
      costs_(costs),
      prices_(prices),
      scale_(scale),
      steps_(steps),
      density_(problem.pieces.size() + 1, 0) {
    for (std::size_t i = problem.pieces.size(); i-- > 0;)
        density_[i] = std::max(density_[i + 1],
                               static_cast<double>(prices.piece[i]) / static_cast<double>(problem.pieces[i]));
}

std::int64_t CutSearch::worthOf(const std::vector<int>& counts) const {
    std::int64_t worth = 0;
    for (std::size_t i = 0; i < counts.size(); ++i)
        worth += counts[i] * prices_.piece[i];
    return worth;
}

std::optional<std::vector<CutPattern>> CutSearch::find(const std::vector<int>& demand, int bars,
                                                       std::int64_t mostCost, std::size_t mostWays) {
    mostWays_ = mostWays;
    chosen_.clear();
    hopeless_.clear();
    complete_ = true;
    std::vector<int> rest = demand;
    // Every bar costs its regret beyond what its pieces are worth, so the regrets of a plan add up to its cost
    // less the worth of all pieces.
    const std::int64_t regret = mostCost * scale_ - worthOf(demand);
    if (regret < 0 || !visit(rest, bars, regret))
        return std::nullopt;
    return chosen_;
}

bool CutSearch::visit(std::vector<int>& rest, int bars, std::int64_t regret) {
    if (std::all_of(rest.begin(), rest.end(), [](int count) { return count == 0; }))
        return true;
    if (bars == 0 || regret < 0)
        return false;
    // By length alone, which the prices may see less sharply.
    std::int64_t length = 0;
    for (std::size_t i = 0; i < rest.size(); ++i)
        length += rest[i] * problem_.pieces[i];
    if (length > bars * problem_.bars.back())
        return false;
    rest.push_back(bars);
    const auto known = hopeless_.find(rest);
    const bool hopeless = known != hopeless_.end() && regret <= known->second;
    rest.pop_back();
    if (hopeless)
        return false;

    std::vector<Way> ways;
    listWays(rest, regret, ways);
    std::stable_sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
        return a.regret != b.regret ? a.regret < b.regret : a.content > b.content;
    });
    for (const Way& way : ways) {
        for (std::size_t i = 0; i < rest.size(); ++i)
            rest[i] -= way.pattern.counts[i];
        chosen_.push_back(way.pattern);
        const bool found = visit(rest, bars - 1, regret - way.regret);
        for (std::size_t i = 0; i < rest.size(); ++i)
            rest[i] += way.pattern.counts[i];
        if (found)
            return true;
        chosen_.pop_back();
        if (steps_ <= 0) {
            complete_ = false;
            return false;
        }
    }
    if (hopeless_.size() < mostRemembered) {
        std::vector<int> key = rest;
        key.push_back(bars);
        auto& within = hopeless_.try_emplace(std::move(key), regret).first->second;
        within = std::max(within, regret);
    }
    return false;
}

/// The ways to cut the bar that the longest piece left comes from, which some bar must be. Only ways into which
/// nothing more fits: a piece more in this bar never makes the rest dearer.
void CutSearch::listWays(const std::vector<int>& rest, std::int64_t regret, std::vector<Way>& ways) {
    std::size_t first = 0;
    while (rest[first] == 0)
        ++first;
    std::vector<int> counts(rest.size(), 0);
    counts[first] = 1;
    extend(rest, first, problem_.pieces[first], prices_.piece[first], counts, regret, ways);
}

void CutSearch::extend(const std::vector<int>& rest, std::size_t at, std::int64_t content, std::int64_t worth,
                       std::vector<int>& counts, std::int64_t regret, std::vector<Way>& ways) {
    if (ways.size() >= mostWays_ || steps_-- <= 0) {
        complete_ = false;
        return;
    }
    const auto bar = static_cast<std::size_t>(
        std::lower_bound(problem_.bars.begin(), problem_.bars.end(), content) - problem_.bars.begin());
    if (at == rest.size()) {
        for (std::size_t i = 0; i < rest.size(); ++i)
            if (rest[i] > counts[i] && problem_.pieces[i] <= problem_.bars[bar] - content)
                return;
        const std::int64_t own = costs_[bar] * scale_ - worth;
        if (own <= regret)
            ways.push_back({{counts, bar}, own, content});
        return;
    }
    // Whichever bar it becomes, what is still to come is worth no more than its best by length.
    const bool hopeless =
        std::all_of(problem_.bars.begin() + static_cast<std::ptrdiff_t>(bar), problem_.bars.end(),
                    [&](const std::int64_t& length) {
                        const std::int64_t cost =
                            costs_[static_cast<std::size_t>(&length - problem_.bars.data())] * scale_;
                        const double most = density_[at] * static_cast<double>(length - content);
                        return static_cast<double>(cost - worth - regret) > most * (1 + 1e-12) + 1;
                    });
    if (hopeless)
        return;
    const std::int64_t room = problem_.bars.back() - content;
    const int had = counts[at];
    const auto fits = static_cast<int>(std::min<std::int64_t>(room / problem_.pieces[at], rest[at] - had));
    for (int count = fits; count >= 0; --count) {
        counts[at] = had + count;
        extend(rest, at + 1, content + count * problem_.pieces[at], worth + count * prices_.piece[at], counts,
               regret, ways);
    }
    counts[at] = had;
}

} // namespace stemwright

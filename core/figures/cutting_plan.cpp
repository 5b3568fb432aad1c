#include "core/figures/cutting_plan.h"

#include "core/figures/cutting_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <optional>

namespace stemwright {

namespace {

constexpr double unitsPerMillimetre = 10;
/// Prices are whole numbers of these parts of a bar, and of a unit of length.
constexpr std::int64_t barScale = std::int64_t{1} << 28;
constexpr std::int64_t lengthScale = std::int64_t{1} << 16;
/// A search that starts from the relaxation's own patterns, before everything is tried: its steps, and how many
/// ways to cut a bar it weighs.
constexpr std::int64_t shortSearch = 20'000;
constexpr std::size_t fewWays = 40;
constexpr std::size_t allWays = 20'000;

std::int64_t ceilDivide(std::int64_t a, std::int64_t b) {
    return a / b + (a % b > 0 ? 1 : 0);
}

std::int64_t worthOf(const CutPrices& prices, const std::vector<int>& demand) {
    std::int64_t worth = 0;
    for (std::size_t i = 0; i < demand.size(); ++i)
        worth += demand[i] * prices.piece[i];
    return worth;
}

bool isEmpty(const std::vector<int>& demand) {
    return std::all_of(demand.begin(), demand.end(), [](int count) { return count == 0; });
}

/// Every bar gets the longest pieces that still fit.
std::vector<CutPattern> firstFit(const CutProblem& problem) {
    std::vector<CutPattern> bars;
    for (std::vector<int> rest = problem.demand; !isEmpty(rest);) {
        CutPattern pattern{std::vector<int>(rest.size(), 0), problem.bars.size() - 1};
        std::int64_t room = problem.bars.back();
        for (std::size_t i = 0; i < rest.size(); ++i) {
            const auto count = static_cast<int>(std::min<std::int64_t>(room / problem.pieces[i], rest[i]));
            pattern.counts[i] = count;
            rest[i] -= count;
            room -= count * problem.pieces[i];
        }
        bars.push_back(std::move(pattern));
    }
    return bars;
}

/// Each bar the shortest that its pieces come from.
std::int64_t shorten(const CutProblem& problem, std::vector<CutPattern>& bars) {
    std::int64_t bought = 0;
    for (CutPattern& pattern : bars) {
        std::int64_t content = 0;
        for (std::size_t i = 0; i < pattern.counts.size(); ++i)
            content += pattern.counts[i] * problem.pieces[i];
        pattern.bar = static_cast<std::size_t>(
            std::lower_bound(problem.bars.begin(), problem.bars.end(), content) - problem.bars.begin());
        bought += problem.bars[pattern.bar];
    }
    return bought;
}

/// What to pay for: the bars' costs, and the prices that go with them.
struct Costs {
    std::vector<std::int64_t> bars;
    CutPrices prices;
    std::int64_t scale = 1;
};

struct Found {
    std::optional<std::vector<CutPattern>> bars;
    bool complete = false;
};

/// A plan of so many bars within that cost: first by keeping what the relaxation takes whole and searching for
/// the rest, then by trying everything.
Found search(const CutProblem& problem, const Costs& costs, int bars, std::int64_t mostCost,
             std::int64_t& steps) {
    const CutPrices& prices = costs.prices;
    if (worthOf(prices, problem.demand) > mostCost * costs.scale)
        return {std::nullopt, true};
    for (int less = 0; less <= 4 && steps > 0; ++less) {
        std::vector<CutPattern> kept;
        std::vector<int> rest = problem.demand;
        std::int64_t cost = mostCost;
        for (std::size_t p = 0; p < prices.patterns.size(); ++p) {
            const int times = static_cast<int>(std::floor(prices.times[p] + 1e-6)) - less;
            for (int k = 0; k < times && static_cast<int>(kept.size()) < bars; ++k) {
                CutPattern pattern = prices.patterns[p];
                for (std::size_t i = 0; i < rest.size(); ++i) {
                    pattern.counts[i] = std::min(pattern.counts[i], rest[i]);
                    rest[i] -= pattern.counts[i];
                }
                cost -= costs.bars[pattern.bar];
                kept.push_back(std::move(pattern));
            }
        }
        if (kept.empty())
            break;
        const std::int64_t allowed = std::min(steps, shortSearch);
        CutSearch local(problem, costs.bars, prices, costs.scale, allowed);
        auto more = local.find(rest, bars - static_cast<int>(kept.size()), cost, fewWays);
        steps -= allowed - std::max<std::int64_t>(0, local.stepsLeft());
        if (more) {
            kept.insert(kept.end(), more->begin(), more->end());
            return {std::move(kept), true};
        }
    }
    CutSearch all(problem, costs.bars, prices, costs.scale, steps);
    auto found = all.find(problem.demand, bars, mostCost, allWays);
    steps = std::max<std::int64_t>(0, all.stepsLeft());
    return {std::move(found), all.complete()};
}

struct Solution {
    std::vector<CutPattern> bars;
    int fewest = 0;
    bool proved = true;
    std::int64_t leastBought = 0; ///< 0 where there is one sort of bar
};

/// Fewest bars, all of the longest sort.
Solution fewestBars(const CutProblem& problem, std::int64_t& steps) {
    CutProblem longest = problem;
    longest.bars = {problem.bars.back()};
    Solution solution;
    solution.bars = firstFit(longest);
    const Costs costs{{1}, cutPrices(longest, {1}, barScale), barScale};
    std::int64_t length = 0;
    for (std::size_t i = 0; i < longest.pieces.size(); ++i)
        length += longest.demand[i] * longest.pieces[i];
    solution.fewest = static_cast<int>(std::max(ceilDivide(worthOf(costs.prices, longest.demand), barScale),
                                                ceilDivide(length, longest.bars[0])));
    for (int bars = solution.fewest; bars < static_cast<int>(solution.bars.size()); ++bars) {
        Found found = search(longest, costs, bars, bars, steps);
        if (found.bars) {
            solution.bars = std::move(*found.bars);
            break;
        }
        if (found.complete && solution.proved)
            solution.fewest = bars + 1;
        else
            solution.proved = false;
    }
    return solution;
}

/// The lengths that so many bars can have together: only few of all lengths between the least and the most.
class Totals {
public:
    Totals(const CutProblem& problem, int bars) : least_(problem.bars.front() * bars) {
        for (const std::int64_t bar : problem.bars)
            step_ = std::gcd(step_, bar - problem.bars.front());
        const std::int64_t most = (problem.bars.back() - problem.bars.front()) * bars / step_;
        constexpr std::int64_t mostTabled = 1'000'000;
        if (most > mostTabled)
            return;
        // The fewest bars longer than the shortest that make up so much more; coins in change.
        constexpr int never = std::numeric_limits<int>::max() - 1;
        std::vector<int> fewest(static_cast<std::size_t>(most) + 1, never);
        fewest[0] = 0;
        for (std::size_t more = 1; more < fewest.size(); ++more)
            for (const std::int64_t bar : problem.bars)
                if (const auto by = static_cast<std::size_t>((bar - problem.bars.front()) / step_);
                    by > 0 && by <= more)
                    fewest[more] = std::min(fewest[more], fewest[more - by] + 1);
        for (const int count : fewest)
            possible_.push_back(count <= bars);
    }

    /// The greatest such length up to that one; below the least of all where there is none.
    std::int64_t atMost(std::int64_t length) const {
        if (length < least_)
            return least_ - 1;
        std::int64_t more = (length - least_) / step_;
        while (more > 0 && static_cast<std::size_t>(more) < possible_.size() &&
               !possible_[static_cast<std::size_t>(more)])
            --more;
        return least_ + more * step_;
    }

private:
    std::int64_t least_;
    std::int64_t step_ = 0;
    std::vector<bool> possible_;
};

/// Of as many bars the cheapest by length. A bar costs its length and something on top; what is on top times
/// the bars comes off the bound again, and the best such bound is taken.
void leastWaste(const CutProblem& problem, Solution& solution, std::int64_t& steps) {
    std::int64_t bought = shorten(problem, solution.bars);
    const auto bars = static_cast<int>(solution.bars.size());
    const std::int64_t longest = problem.bars.back();
    Costs costs;
    std::int64_t least = 0;
    std::int64_t onTop = 0;
    const auto tryOnTop = [&](std::int64_t more) {
        std::vector<std::int64_t> with;
        for (const std::int64_t bar : problem.bars)
            with.push_back(bar + more);
        CutPrices prices = cutPrices(problem, with, lengthScale);
        const std::int64_t bound = ceilDivide(worthOf(prices, problem.demand), lengthScale) - more * bars;
        if (costs.bars.empty() || bound > least) {
            least = bound;
            onTop = more;
            costs = {std::move(with), std::move(prices), lengthScale};
        }
    };
    for (std::int64_t more = 0; more <= 4 * longest; more = more == 0 ? longest / 8 + 1 : more * 2)
        tryOnTop(more);
    // The bound bends down on both sides of its best.
    for (std::int64_t by = std::max(onTop, longest / 8) / 2; by > longest / 64; by /= 2) {
        const std::int64_t middle = onTop;
        tryOnTop(middle + by);
        if (middle >= by)
            tryOnTop(middle - by);
    }
    const Totals totals(problem, bars);
    for (;;) {
        const std::int64_t target = totals.atMost(bought - 1);
        if (target < least) {
            solution.leastBought = bought;
            return;
        }
        Found found = search(problem, costs, bars, target + onTop * bars, steps);
        if (!found.bars) {
            solution.proved = solution.proved && found.complete;
            solution.leastBought = found.complete ? bought : least;
            return;
        }
        solution.bars = std::move(*found.bars);
        bought = shorten(problem, solution.bars);
    }
}

struct Wanted {
    std::map<std::int64_t, std::vector<std::size_t>, std::greater<>> byLength;
    /// What the problem counts lengths in, millimetres.
    double unit = 1 / unitsPerMillimetre;
};

/// Counts in the largest unit that all lengths are whole numbers of: whole millimetres make a problem a tenth
/// as large as tenths do.
void coarsen(CutProblem& problem, Wanted& wanted) {
    std::int64_t common = 0;
    for (const std::int64_t bar : problem.bars)
        common = std::gcd(common, bar);
    for (const auto& [length, places] : wanted.byLength)
        common = std::gcd(common, length);
    if (common <= 1)
        return;
    for (std::int64_t& bar : problem.bars)
        bar /= common;
    std::map<std::int64_t, std::vector<std::size_t>, std::greater<>> byLength;
    for (auto& [length, places] : wanted.byLength)
        byLength[length / common] = std::move(places);
    wanted.byLength = std::move(byLength);
    wanted.unit *= static_cast<double>(common);
}

void write(CuttingPlan& plan, const CutProblem& problem, const Wanted& wanted, std::span<const CutPiece> pieces,
           std::vector<CutPattern> bars) {
    std::sort(bars.begin(), bars.end(), [](const CutPattern& a, const CutPattern& b) {
        return a.counts != b.counts ? a.counts > b.counts : a.bar > b.bar;
    });
    std::vector<int> left;
    for (const CutPiece& piece : pieces)
        left.push_back(piece.count);
    for (const CutPattern& pattern : bars) {
        CutBar bar;
        bar.pieces.assign(pieces.size(), 0);
        std::int64_t room = problem.bars[pattern.bar];
        std::size_t i = 0;
        for (const auto& [length, places] : wanted.byLength) {
            int count = pattern.counts[i++];
            room -= count * length;
            for (const std::size_t place : places) {
                const int here = std::min(count, left[place]);
                bar.pieces[place] += here;
                left[place] -= here;
                count -= here;
            }
        }
        bar.bar = millimetres(static_cast<double>(problem.bars[pattern.bar]) * wanted.unit);
        bar.left = millimetres(static_cast<double>(room) * wanted.unit);
        plan.bought += bar.bar;
        plan.waste += bar.left;
        ++plan.barCount;
        if (plan.bars.empty() || plan.bars.back().pieces != bar.pieces || plan.bars.back().bar != bar.bar)
            plan.bars.push_back(std::move(bar));
        ++plan.bars.back().times;
    }
}

} // namespace

CuttingPlan cuttingPlan(std::span<const CutPiece> pieces, std::span<const Length> bars, CuttingLimits limits) {
    CuttingPlan plan;
    CutProblem problem;
    for (const Length bar : bars)
        if (const double units = std::floor(inMillimetres(bar) * unitsPerMillimetre + 1e-6); units >= 1)
            problem.bars.push_back(static_cast<std::int64_t>(units));
    std::sort(problem.bars.begin(), problem.bars.end());
    problem.bars.erase(std::unique(problem.bars.begin(), problem.bars.end()), problem.bars.end());

    Wanted wanted;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const double units = std::ceil(inMillimetres(pieces[i].length) * unitsPerMillimetre - 1e-6);
        if (!(units >= 1) || pieces[i].count <= 0)
            continue;
        if (problem.bars.empty() || units > static_cast<double>(problem.bars.back()))
            plan.tooLong.push_back(i);
        else
            wanted.byLength[static_cast<std::int64_t>(units)].push_back(i);
    }
    coarsen(problem, wanted);
    for (const auto& [length, places] : wanted.byLength) {
        problem.pieces.push_back(length);
        problem.demand.push_back(
            std::accumulate(places.begin(), places.end(), 0,
                            [&](int sum, std::size_t place) { return sum + pieces[place].count; }));
    }
    plan.proved = true;
    if (problem.pieces.empty())
        return plan;

    std::int64_t steps = limits.steps;
    Solution solution = fewestBars(problem, steps);
    if (problem.bars.size() > 1) {
        steps = std::max(steps, limits.steps / 2);
        leastWaste(problem, solution, steps);
    }
    plan.proved = solution.proved;
    plan.fewestBars = solution.fewest;
    const std::int64_t least = solution.leastBought;
    write(plan, problem, wanted, pieces, std::move(solution.bars));
    plan.leastBought = least > 0 ? millimetres(static_cast<double>(least) * wanted.unit) : plan.bought;
    return plan;
}

} // namespace stemwright

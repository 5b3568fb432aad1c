#pragma once

#include "core/figures/cutting_bound.h"

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

namespace stemwright {

/// Looks for a way to cut everything from so many bars within so much, by prices that tell what is hopeless.
/// For cutting_plan.cpp.
class CutSearch {
public:
    /// `costs` are the bars' costs in whole units; `prices` those of cutPrices().
    CutSearch(const CutProblem& problem, const std::vector<std::int64_t>& costs, const CutPrices& prices,
              std::int64_t scale, std::int64_t steps);

    /// The bars, or nothing. With `complete` nothing means that there is no such way. Only so many ways to cut
    /// each bar are weighed against each other.
    std::optional<std::vector<CutPattern>> find(const std::vector<int>& demand, int bars, std::int64_t mostCost,
                                                std::size_t mostWays);
    bool complete() const { return complete_; }
    std::int64_t stepsLeft() const { return steps_; }

private:
    struct Way {
        CutPattern pattern;
        std::int64_t regret = 0; ///< what the pattern costs beyond the worth of its pieces
        std::int64_t content = 0;
    };

    bool visit(std::vector<int>& rest, int bars, std::int64_t regret);
    void listWays(const std::vector<int>& rest, std::int64_t regret, std::vector<Way>& ways);
    void extend(const std::vector<int>& rest, std::size_t at, std::int64_t content, std::int64_t worth,
                std::vector<int>& counts, std::int64_t regret, std::vector<Way>& ways);
    std::int64_t worthOf(const std::vector<int>& counts) const;

    const CutProblem& problem_;
    const std::vector<std::int64_t>& costs_;
    const CutPrices& prices_;
    std::int64_t scale_;
    std::int64_t steps_;
    bool complete_ = true;
    std::size_t mostWays_ = 0;
    std::vector<double> density_; ///< the best worth by length of this piece and all shorter ones
    std::vector<CutPattern> chosen_;
    struct Hash {
        std::size_t operator()(const std::vector<int>& v) const;
    };
    /// Demands, with the bars left, that led nowhere, and within how much.
    std::unordered_map<std::vector<int>, std::int64_t, Hash> hopeless_;
};

} // namespace stemwright

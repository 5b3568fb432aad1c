#pragma once

#include <cstdint>
#include <vector>

namespace stemwright {

// The linear relaxation of a cutting problem, for cutting_plan.cpp.

/// Whole numbers throughout. Pieces from the longest to the shortest, no two alike, none longer than the
/// longest bar; bars from the shortest to the longest.
struct CutProblem {
    std::vector<std::int64_t> pieces;
    std::vector<int> demand;
    std::vector<std::int64_t> bars;
};

/// What is cut from one bar, and from which.
struct CutPattern {
    std::vector<int> counts;
    std::size_t bar = 0;
};

/// Prices of the pieces, as whole numbers of 1 / scale, such that what can be cut from a bar is never worth
/// more than the bar costs. Whatever is cut then costs at least Σ price × demand, and no rounding spoils that.
struct CutPrices {
    std::vector<std::int64_t> piece;
    /// The relaxation's own patterns and how often it takes each.
    std::vector<CutPattern> patterns;
    std::vector<double> times;
};

/// Solves the relaxation that pays `costs` for the bars, whole numbers above 0; cost × scale stays below 2^50.
CutPrices cutPrices(const CutProblem& problem, const std::vector<std::int64_t>& costs, std::int64_t scale);

/// The most that the pieces of one bar can be worth, taking no more of each than `demand`, and how.
std::int64_t bestPattern(const CutProblem& problem, const std::vector<std::int64_t>& values,
                         const std::vector<int>& demand, std::int64_t bar, std::vector<int>* counts = nullptr);

} // namespace stemwright

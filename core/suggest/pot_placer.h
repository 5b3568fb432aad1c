#pragma once

#include "core/suggest/budget.h"
#include "core/suggest/pot_placing.h"
#include "core/suggest/pot_sides.h"

#include <limits>
#include <random>
#include <utility>
#include <vector>

namespace stemwright {

/// Searches for the best assignment; a stem that is held keeps its place.
class PotPlacer {
public:
    PotPlacer(const PottedStems& stems, const PotPlaces& places, std::vector<int> held,
              const PlacingOptions& options)
        : stems_(stems),
          places_(places),
          count_(stems.count),
          held_(std::move(held)),
          options_(options),
          budget_(options.search) {}

    std::vector<int> best; ///< the stem of each place
    double cost = std::numeric_limits<double>::max();
    double bound = 0;
    bool proved = false;

    void run();

    bool stopped() const { return budget_.ended(); }
    std::uint64_t steps() const { return budget_.steps(); }

    double costOf(const std::vector<int>& stemAt) const;

private:
    double own(int stem, int place) const;

    /// What one place costs with that stem, its neighbours as they are but for `except`.
    double around(const std::vector<int>& stemAt, int place, int stem, int except) const;

    void keep(const std::vector<int>& stemAt, double now);

    /// The best exchange of two stems, again and again until none helps.
    void exchange(std::vector<int> stemAt);

    /// Every arrangement of the loose stems over the open places, but for those that a bound rules out.
    void enumerate(std::vector<int> open, std::vector<int> loose, std::mt19937& random);

    void descend(const std::vector<int>& open, const std::vector<int>& loose, std::vector<char>& used,
                 std::vector<int>& stemAt, std::size_t depth, double sum);

    /// Gilmore and Lawler: each stem at each place with the neighbours it likes best, half of each pair's
    /// likeness to either side, and the cheapest assignment of that.
    double lowerBound(const std::vector<int>& start) const;

    const PottedStems& stems_;
    const PotPlaces& places_;
    int count_;
    std::vector<int> held_;
    const PlacingOptions& options_;
    Budget budget_;
    double least_ = 0;
    bool whole_ = true;
    std::vector<double> pairsLeft_;
    std::vector<double> stemRanks_;
};

} // namespace stemwright

#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>

namespace stemwright {

/// The earth mover's distance (Rubner, Tomasi & Guibas, IJCV 40, 2000, 99–121): the least cost, a unit moved,
/// of moving as much as both sides have from the supplies to the demands. Exact up to the rounding of the
/// costs: a transportation problem solved by shortest augmenting paths with potentials.
///
/// Costs are row-major, a row a supply, finite and not negative; they need be no metric. Masses are finite and
/// not negative. Anything else is a bug of the caller.
///
/// An object keeps its buffers from call to call: make one a thread and use it for every stem. A stem of 40
/// leaves against its pot takes about 2 µs with 12 mixes and 30 µs with 40 (measured on one machine).
class EarthMover {
public:
    EarthMover();
    ~EarthMover();
    EarthMover(EarthMover&&) noexcept;
    EarthMover& operator=(EarthMover&&) noexcept;

    /// The distance between two weightings of the same points, each as shares of its own total: {1, 2} and {2,
    /// 4} are 0 apart. `costs` has a row and a column a point, its diagonal normally 0. Nothing where either
    /// side has no mass at all.
    ///
    /// Weights are multiplied by the other side's total (less what the totals have in common), which keeps
    /// masses exact integers while the least common multiple of the totals is below 2^63; above, they are
    /// handled as doubles. The weights of a side must add up to less than 2^63.
    std::optional<double> betweenWeightings(std::span<const std::int64_t> one,
                                            std::span<const std::int64_t> other, std::span<const double> costs);

    /// The general form: the totals may differ, then the smaller one is moved whole, from or to wherever that
    /// is cheapest. Nothing where either side has no mass at all.
    std::optional<double> between(std::span<const double> supplies, std::span<const double> demands,
                                  std::span<const double> costs);

private:
    struct Buffers;
    std::unique_ptr<Buffers> buffers_;
};

/// EarthMover::between() with buffers of its own, for single questions.
std::optional<double> earthMoversDistance(std::span<const double> supplies, std::span<const double> demands,
                                          std::span<const double> costs);

} // namespace stemwright

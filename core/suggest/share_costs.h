#pragma once

#include "core/suggest/shares.h"
#include "core/suggest/transport.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace stemwright {

/// Costs of sharing out the leaves of one kind, in whole numbers. One cell's part of the unevenness is
/// (x − n·m/M)² = (M·x − n·m)² / M², so with M fixed (it is settled before the colours, see sharesOf) the whole
/// numbers (M·x − n·m)² compare any two answers exactly, whatever leaves stay in the tray. A second, lesser
/// wish is counted in units too small to outweigh one of the first.
struct Scale {
    Cost leaves = 0;    ///< M
    Cost weight = 1;    ///< what the first wish is multiplied by; above every possible sum of the second
    bool second = true; ///< false on boards too large for both to fit the numbers

    /// With room for sums that are `room` times a whole answer's cost. Nothing where even the first wish alone
    /// does not fit: see spread.h for how many leaves that is.
    static std::optional<Scale> of(const Shares& shares, Cost greatestSecond, Cost room = 1);

    /// What every sum must stay below so that it can be counted in a Cost, with room to spare.
    static constexpr double greatestCost = 1e18;
    /// The greatest cost of the first wish that a whole answer can have: no stem is off by more than its
    /// leaves, in either direction.
    static double greatestFirst(const Shares& shares);

    double unevenness(Cost cost) const {
        return static_cast<double>(cost / weight) / (static_cast<double>(leaves) * static_cast<double>(leaves));
    }
};

/// The cells of a sharing-out problem with `placed` leaves of each mix on the board: rows are stems, columns
/// mixes, and y counts the leaves in open slots. The second wish is that few leaves leave their stem, which
/// costs max(0, now − y) and is convex, or where a whim is given that number for each leaf instead.
class ShareCells {
public:
    ShareCells(const Shares& shares, const Scale& scale, const Grid<int>* whim)
        : shares_(shares),
          scale_(scale),
          whim_(whim),
          base_(shares.rows(), shares.columns()),
          placed_(static_cast<std::size_t>(shares.columns()), -1) {}

    void setPlaced(const std::vector<int>& placed) {
        for (int c = 0; c < columns(); ++c)
            setPlaced(c, placed[static_cast<std::size_t>(c)]);
    }
    void setPlaced(int column, int placed) {
        if (placed_[static_cast<std::size_t>(column)] == placed)
            return;
        placed_[static_cast<std::size_t>(column)] = placed;
        for (int r = 0; r < rows(); ++r)
            base_(r, column) = scale_.leaves * shares_.fixed(r, column) -
                               Cost{shares_.leaves[static_cast<std::size_t>(r)]} * placed;
    }

    int rows() const { return shares_.rows(); }
    int columns() const { return shares_.columns(); }
    int most(int r, int) const { return shares_.free[static_cast<std::size_t>(r)]; }
    /// The fair share of free leaves, rounded.
    int guess(int r, int c) const {
        const Cost wanted = -base_(r, c);
        return wanted <= 0 ? 0 : static_cast<int>((2 * wanted + scale_.leaves) / (2 * scale_.leaves));
    }
    Cost at(int r, int c, int y) const {
        const Cost off = base_(r, c) + scale_.leaves * y;
        return scale_.weight * off * off + second(r, c, y);
    }
    Cost step(int r, int c, int y) const {
        const Cost off = 2 * (base_(r, c) + scale_.leaves * y) + scale_.leaves;
        return scale_.weight * scale_.leaves * off + second(r, c, y + 1) - second(r, c, y);
    }

private:
    Cost second(int r, int c, int y) const {
        if (!scale_.second)
            return 0;
        return whim_ ? Cost{(*whim_)(r, c)} * y : std::max(0, shares_.now(r, c) - y);
    }

    const Shares& shares_;
    Scale scale_;
    const Grid<int>* whim_;
    Grid<Cost> base_; ///< M·fixed − n·m
    std::vector<int> placed_;
};

inline double Scale::greatestFirst(const Shares& shares) {
    double most = 0;
    for (int n : shares.leaves)
        most += 2.0 * n * n;
    const double leaves = std::max(1, shares.total);
    return most * leaves * leaves;
}

inline std::optional<Scale> Scale::of(const Shares& shares, Cost greatestSecond, Cost room) {
    Scale scale;
    scale.leaves = std::max(1, shares.total);
    const double most = greatestFirst(shares);
    // Paths may add a few of them up.
    const double greatest = greatestCost / static_cast<double>(room);
    scale.weight = greatestSecond + 1;
    if (most * static_cast<double>(scale.weight) + static_cast<double>(greatestSecond) > greatest) {
        scale.weight = 1;
        scale.second = false;
    }
    if (most > greatest)
        return std::nullopt;
    return scale;
}

} // namespace stemwright

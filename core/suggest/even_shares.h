#pragma once

#include "core/suggest/leaf_choice.h"

namespace stemwright {

/// Shares out for the least unevenness alone: one minimum-cost flow for each m.
class EvenShares : public ShareSolver {
public:
    /// `whim`, if there is one, must outlive the solver; see ShareCells.
    EvenShares(const Shares& shares, const Scale& scale, const Grid<int>* whim);

    Cost improve(const std::vector<int>& placed, ShareAnswer& best, Budget& budget) override;
    Cost columnBound(int column, int placed) override;

private:
    const Shares& shares_;
    ShareCells cells_;
    std::vector<int> columnFixed_;
    std::vector<int> demand_;
    std::vector<int> units_;
    Transport<ShareCells> flow_;
    Transport<Transposed<ShareCells>> flowAcross_;
};

/// Where the board holds a full answer already: its cost. Nothing where open slots are empty.
std::optional<ShareAnswer> asItStands(const Shares& shares, const Scale& scale, const Grid<int>* whim);

} // namespace stemwright

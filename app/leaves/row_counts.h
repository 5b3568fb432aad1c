#pragma once

#include "app/leaf_painter.h"

#include <vector>

namespace stemwright {

/// The beads of one row by colour, in the order of the look's bands.
struct RowColours {
    int beads = 0;
    std::vector<int> colours;
};

/// Row by row from the outer one inward, exactly as the leaf is drawn; the last one is the centre row, unless
/// all are loops.
std::vector<RowColours> rowCounts(const LeafLook& look);

/// "outer", "2.", …, "basic" for the centre row.
QString rowName(std::size_t row, std::size_t rows, bool loops);

} // namespace stemwright

#pragma once

#include "core/document/mat_stem.h"
#include "core/document/sheet_canvas.h"

#include <vector>

namespace stemwright {

/// A stem's mat, or a part of one that is longer than the paper: marks with their upper left at the origin, to
/// be put where there is room.
struct MatBlock {
    std::size_t stem = 0; ///< place in plan.stems
    int sheet = 1;        ///< of the stem's sheets
    int sheets = 1;
    double width = 0; ///< mm
    double height = 0;
    bool landscape = false;
    /// Where the heading stands beside the stem: from there to the right only so much at the top is taken, and
    /// another mat may stand below. 0 where the block is a plain rectangle.
    double besideFrom = 0;
    double besideHeight = 0;
    std::vector<Mark> marks;
};

/// On both sides of where a mat is carried over the stem is drawn so much further; mm.
inline constexpr double joinOverlap = 12;

/// The mat of one stem, upright or, where that takes fewer sheets, lying. The rooms are those of the page.
std::vector<MatBlock> matBlocks(const SheetContext& context, std::size_t stem, const BoxMm& upright,
                                const BoxMm& lying);

} // namespace stemwright

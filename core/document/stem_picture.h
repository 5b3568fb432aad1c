#pragma once

#include "core/document/sheet_canvas.h"

namespace stemwright {

/// A stem as it stands, seen from the front and a little from above: leaves that point to the viewer come down,
/// those at the back go up, both shorter by the way they point.
struct StemPicture {
    std::vector<Mark> marks; ///< millimetres of the real stem, the middle of its foot at the origin
    double left = 0, right = 0, up = 0, down = 0; ///< what they cover
};

/// Heights count from the clay line: what is planted is not shown.
StemPicture stemPicture(const SheetContext& context, std::size_t stem);

} // namespace stemwright

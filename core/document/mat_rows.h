#pragma once

#include "core/document/mat_stem.h"
#include "core/document/sheet_canvas.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

/// One line of the list beside a mat: what is at that place of the stem.
struct MatRow {
    double along = 0; ///< mm from the first joint
    int tier = -1;    ///< none for the tail, the clay line and the foot
    std::vector<std::string> cells;
    double height = 0; ///< mm
    double top = 0;    ///< where it stands at last
};

/// The columns of the list: number, drawing of how the tier faces, the same in words unless the views' headings
/// say it, leaves, wrap below unless it is the same everywhere.
class MatRows {
public:
    MatRows(const SheetContext& context, const Stem& stem, const MatStem& mat);

    double width() const { return table_.width(); }
    /// What is wrapped from each tier to the next, where it is the same everywhere; the list has no column
    /// then.
    const std::optional<Length>& evenWrap() const { return evenWrap_; }
    /// Every tier is a pair, and the headings of the views have room for which way those face.
    bool facesInViews() const { return facesInViews_; }
    double headHeight() const { return headHeight_; }
    const std::vector<MatRow>& rows() const { return rows_; }

    void drawHead(Canvas& canvas, PointMm top) const;
    /// The row with its upper left at (x, row.top).
    void draw(Canvas& canvas, double x, const MatRow& row) const;

private:
    /// Where a row that belongs to no tier begins: right of the drawings, or at the left of a narrow list.
    double bareLeft() const;

    Table table_;
    std::vector<std::string> head_;
    std::vector<MatRow> rows_;
    double headHeight_ = 0;
    std::optional<Length> evenWrap_;
    bool facesInViews_ = false;
    const Stem& stem_;
};

/// Moves rows apart, in their order, so that none lies on another and all are between `top` and `bottom`, each
/// as near to where it wants its middle as that lets it. Rows must fit in all.
void spreadRows(std::vector<MatRow>& rows, const std::vector<double>& wanted, double top, double bottom);

} // namespace stemwright

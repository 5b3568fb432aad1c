#pragma once

#include "core/document/mat_block.h"
#include "core/document/mat_measures.h"
#include "core/document/mat_rows.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stemwright {

/// A part of a stem between two cuts.
struct MatPart {
    double from = 0, to = 0; ///< along: the cuts, or the stem's ends
    bool first = true, last = true;
    double top = 0, bottom = 0; ///< along: what the sheet shows, leaves and overlap included
    std::vector<MatRow> rows;

    double rowsHeight() const {
        double sum = 0;
        for (const MatRow& row : rows)
            sum += row.height;
        return sum + (first ? 0 : mat::joinLine) + (last ? 0 : mat::joinLine);
    }
};

/// Which of the two views a sheet shows.
struct MatViews {
    bool front = true;
    bool side = true;
};

/// One stem's mat on paper held one way: mat_layout.cpp cuts it into sheets, mat_drawing.cpp draws them.
class MatLayout {
public:
    MatLayout(const SheetContext& context, std::size_t place, const BoxMm& room, bool landscape);

    std::size_t sheets() const;
    /// The views share a sheet and no leaf had to give way.
    bool whole() const { return parts_.size() == 1 && !mat_.steeper && !mat_.tooLong; }

    std::vector<MatBlock> blocks() const;

private:
    double half(bool side) const {
        return std::max((side ? mat_.halfSide : mat_.halfFront) + mat::viewEdge, mat::leastHalf);
    }

    std::string says(SheetWord word, std::vector<std::string> values = {}) const {
        return context_.words.word(word, values);
    }

    std::vector<std::pair<std::string, TextStyle>> heading() const;
    double headHeight(double width, int remarks) const;
    /// How wide a sheet with these views is, without a heading beside them.
    double widthOf(const MatViews& shown) const;
    double viewHead() const { return 2 * lineHeight(type::small) + 1; }

    /// Whether a view that is shown has leaves of the tier; without any the tier belongs to the first one.
    bool shows(const MatViews& shown, const MatTier& tier) const;
    /// Cuts the stem where the paper ends, between tiers where it can.
    std::vector<MatPart> cut(const MatViews& shown) const;

    MatBlock block(const MatViews& shown, const MatPart& part, int sheet) const;
    void drawStem(Canvas& canvas, double axis, const MatPart& part, double y0) const;
    void drawViewHead(Canvas& canvas, bool side, double left, double top) const;
    void drawScale(Canvas& canvas, double x, const MatPart& part, double y0) const;
    void drawView(Canvas& canvas, bool side, double left, const MatPart& part, double headTop, double y0,
                  double bottom) const;
    void drawLeaf(Canvas& canvas, const MatLeaf& leaf, PointMm joint, int tierPlace, LeafStyle style) const;
    void drawCodes(Canvas& canvas, bool side, double axis, const MatPart& part, double y0) const;
    /// Whether a leaf of a tier further down, which lies above it, hides any of a text about `middle`, in
    /// millimetres from the stem's middle and along it.
    bool coversBelow(int tier, bool side, PointMm middle, double wide, double tall) const;
    /// Of the words at a join, with the widest letter.
    double joinWidth(const Canvas& canvas, int other) const;
    void drawJoin(Canvas& canvas, double left, double right, double listLeft, double y, double textY,
                  char letter, int other) const;

    const SheetContext& context_;
    std::size_t place_;
    const Stem& stem_;
    BoxMm room_;
    bool landscape_;
    double list_ = 0;
    double beside_ = 0; ///< width of a heading that stands beside the list, so that the stem has all the height
    std::optional<Length> even_;
    bool facesInViews_ = false;
    MatStem mat_;
    std::vector<std::pair<MatViews, std::vector<MatPart>>> parts_;
};

} // namespace stemwright

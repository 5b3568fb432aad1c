#pragma once

#include "core/plan/plan.h"

#include <QString>

#include <vector>

namespace stemwright {

/// One row of a leaf as it is shown: with its beads, by colour of a mix, and where it lies in the drawing.
struct RowLine {
    QString name;
    int beads = 0;
    bool counted = false;     ///< by the maker, on a real leaf
    int row = -1;             ///< of the pattern, from the innermost; none for a kind without a pattern
    int ring = 0;             ///< of LeafRows, from the outer one inward
    int side = 0;             ///< of the ring: −1 left, 1 right, 0 all of it
    std::vector<int> colours; ///< by colour of the mix
};

/// The leaf's rows from the outer one inward: those of its pattern, or as a leaf of its measures is drawn.
/// Beads and colours add up to those of the kind.
std::vector<RowLine> rowLines(const KindForm& form, const Mix* mix);

/// A figure that is the maker's own: with a mark and a word, so that it is known without colour.
QString hersText(const QString& figure);
/// What a leaf of the kind weighs; where nobody knows what its beads do, its wire alone, and that it is so.
QString leafMassText(const Plan& plan, const KindForm& form);

} // namespace stemwright

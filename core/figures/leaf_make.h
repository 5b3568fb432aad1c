#pragma once

#include "core/plan/plan.h"
#include "core/quantity/bead.h"

#include <vector>

namespace stemwright {

// A leaf from its pattern. The geometry is our own; published counts of loops round loops agree with it to a
// bead or two a loop, and no published row-by-row count for rows around a basic was found. A leaf measured on
// the bench always counts for more.

/// Rows lie so many bead lengths apart: fitted to published loop patterns, where a loop gains 9 to 11 beads
/// over the one inside it (10 / 2π). Touching beads would give 1.45 to 1.5.
inline constexpr double rowPitchInBeads = 1.6;
/// A bead longer than this part of its breadth cannot follow a row's curve: bugle beads gain 4 a loop where the
/// geometry says 10.
inline constexpr double longestBead = 1.0;

/// Why a pattern cannot be made.
enum class MakeFault {
    none,
    noBeads,  ///< not one bead, or not one row
    evenRows, ///< rows around a basic that are even in number end at the tip, where no stem is
    longBead, ///< a bead too long for its breadth: the geometry does not apply
};
MakeFault faultOf(const LeafMake& make, const BeadSize& size);

struct MadeLeaf {
    std::vector<int> rows;     ///< beads of each loop or row, from the innermost outward, the basic first
    std::vector<bool> counted; ///< of each, whether it is what the maker counted
    int beads = 0;
    Length length;
    Length width;
    /// To cut: all rows, and what stays bare.
    Length wire;
    int wiresAtBase = 2;
};

/// The beads of each ring that is seen, from the outer one inward: a loop, or the two rows that run up one side
/// of the basic and down the other; the basic comes last. `rows` are those of a leaf, the innermost first.
std::vector<int> ringsOf(const std::vector<int>& rows, Making making);

/// Bare wire to either side of a loop leaf (vintage patterns and how-to articles: 3 inches).
inline constexpr Length loopTail = inches(3);
/// Of a leaf of rows: bare above the basic, at least (a how-to article: 1/4 inch beyond the finished length),
/// and the loop below it (4 to 6 inches of doubled wire, from memory).
inline constexpr Length basicTop = inches(0.25);
inline constexpr Length bottomLoop = inches(10);

/// With p the row pitch and L the innermost row: loop k is L + 2πpk long; rows 2k and 2k + 1 of a basic are
/// L + kp(e_tip + e_base) long each, e being π/2 around a round end and α + cot α around one that is pointed
/// with α on either side. Beads are whole ones that fit best. A loop lies flat, half its beads on either side.
/// Every pair of rows is p further out at the sides and at a round end, p / sin α at a point. A row that the
/// maker counted has her beads, and the leaf's beads and wire follow; counts of rows that there are not are
/// ignored.
///
/// Wires at the base: two of loops; three of rows, of which many makers cut one or two away.
MadeLeaf madeLeaf(const LeafMake& make, LeafEnd tip, LeafEnd base, const BeadSize& size);

/// Puts a pattern's measures into the form as a maker would write them down: its beads, length and width to a
/// tenth of a millimetre, the wire to the next centimetre, its wires at the base. What is the maker's own
/// (KindForm::own) stays, and so do the form's other parts, its pattern among them.
void takeMeasures(KindForm& form, const MadeLeaf& leaf);

/// The form with the measures of its pattern (takeMeasures); unchanged where there is no pattern, the plan has
/// no such bead, or the pattern has a fault.
KindForm followPattern(const Plan& plan, KindForm form);

/// The beads of each row of a kind with a pattern, the innermost first, so that they add up to the kind's
/// beads: where she counted another sum, the rows that she did not count share what is left in proportion (all
/// do where nothing is left for them). Empty without a pattern, or with one that has no rows or ends at the
/// tip.
std::vector<int> patternRows(const KindForm& form);

/// A fault of the kind's pattern; none without a pattern or for beads of a size that is in no table.
MakeFault faultOf(const Plan& plan, const KindForm& form);

} // namespace stemwright

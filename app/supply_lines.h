#pragma once

#include "core/figures/explain.h"
#include "core/figures/supplies.h"

#include <QString>

#include <vector>

namespace stemwright {

/// One thing to buy or make, as the panel and the terminal list it.
struct SupplyLine {
    QString what;
    QString amount;
    /// How it is reckoned, as plain lines.
    QString explanation;
    /// Belongs to the line above it.
    bool part = false;
    /// Which figure it is; a part that is none has that of the line above it.
    FigureRef ref{};
};

/// The supplies in the order of the work: leaves, their beads and wire, binding, straight wire with how each
/// length is cut, clay, hours, cost.
std::vector<SupplyLine> supplyLines(const Plan& plan, const Supplies& needs);

/// What a wrap is called in lists: by its maker, or by what it is.
QString wrapName(const Wrap& wrap);
/// The leaves, stems or stakes of one cut length: "stakes of 60 mm: Stem 1, Stem 2".
QString barPiecesText(const Plan& plan, const BarSupply& supply, const CutBar& bar);
/// The same of a skein or spool: "Stem 1, Stem 2".
QString skeinPiecesText(const Plan& plan, const WrapSupply& supply, const CutBar& bar);
/// Whether no plan takes fewer or wastes less, and else how much less there could be.
QString proofText(const CuttingPlan& cutting, const Units& units);

} // namespace stemwright

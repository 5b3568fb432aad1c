#pragma once

#include "core/document/bound_tiers.h"
#include "core/figures/best_swap.h"
#include "core/figures/findings.h"
#include "core/figures/leaf_make.h"
#include "core/plan/problem.h"

#include <QString>

namespace stemwright {

/// One sentence that says what is wrong and where.
QString sentence(const Problem& problem);

/// Why a pattern of so many rows cannot be made, and what was probably meant; empty for none.
QString faultText(MakeFault fault, int rows);

/// A finding in two parts, as the board shows it: "Stem 6 leans plum" and "5 of Plum where 3.2 is fair."
struct FindingWords {
    QString title;
    QString detail;
    /// What its remedy does, as a command: "Swap two leaves"; empty where the code has none.
    QString remedy;
};
FindingWords words(const Plan& plan, const Finding& finding);

/// Which swap would mend most of a stem that leans: "Best swap: one Plum for a Frost of Stem 5." Empty where no
/// swap helps, and for other findings.
QString bestSwapText(const Plan& plan, const Figures& figures, const Finding& finding, const SwapFinder& swaps);

/// What is asked before an edit changes tiers that are bound; `touched` is not empty.
QString boundTiersQuestion(const Plan& plan, const std::vector<BoundTier>& touched);
/// The same told beforehand, while the thing is still held.
QString boundTiersWarning(const Plan& plan, const std::vector<BoundTier>& touched);

} // namespace stemwright

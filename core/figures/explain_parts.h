#pragma once

#include "core/figures/explain.h"

namespace stemwright {

// The parts of explain() of explain.h: which numbers went into a stem's, the pot's and the supplies' figures,
// and where their formulas come from. A part that is not there adds nothing.

void explainStem(const Plan& plan, const Figures& figures, FigureRef ref, std::vector<Input>& inputs);
void explainPot(const Plan& plan, const Figures& figures, FigureRef ref, std::vector<Input>& inputs);
void explainSupplies(const Plan& plan, const Supplies& needs, FigureRef ref, std::vector<Input>& inputs);
std::vector<SourceName> sourcesOf(const Plan& plan, FigureRef ref);

} // namespace stemwright

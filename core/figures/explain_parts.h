#pragma once

#include "core/figures/explain.h"
#include "core/figures/leaf_mass.h"

namespace stemwright {

// The parts of explain() of explain.h: which numbers went into a stem's, the pot's and the supplies' figures,
// and where their formulas come from. A part that is not there adds nothing.

void explainStem(const Plan& plan, const Figures& figures, FigureRef ref, std::vector<Input>& inputs);
void explainPot(const Plan& plan, const Figures& figures, FigureRef ref, std::vector<Input>& inputs);
void explainSupplies(const Plan& plan, const Supplies& needs, FigureRef ref, std::vector<Input>& inputs);
/// The beads of these leaves that weigh nothing in a figure, since nobody knows what they do: a number a kind.
/// `leavesOf` gives how many leaves of a kind count.
template <class LeavesOf>
void explainUnweighed(const Plan& plan, const LeavesOf& leavesOf, std::vector<Input>& inputs) {
    for (const Kind& kind : plan.kinds)
        if (beadsUnweighed(plan, kind))
            if (const int leaves = leavesOf(kind); leaves > 0)
                inputs.push_back({Term::beadsUnweighed, TermUnit::count,
                                  static_cast<double>(leaves) * kind.beads, kind.name + ", " + kind.beadSize});
}
std::vector<SourceName> sourcesOf(const Plan& plan, FigureRef ref);

} // namespace stemwright

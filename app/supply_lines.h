#pragma once

#include "core/figures/supplies.h"

#include <QString>

#include <vector>

namespace stemwright {

/// One thing to buy or make, as the panel and the terminal list it.
struct SupplyLine {
    QString what;
    QString amount;
    /// The formula in words.
    QString explanation;
    /// Belongs to the line above it.
    bool part = false;
};

/// The supplies in the order of the work: leaves, their beads and wire, binding, straight wire, clay, hours,
/// cost.
std::vector<SupplyLine> supplyLines(const Plan& plan, const Supplies& needs);

} // namespace stemwright

#pragma once

#include "core/figures/figures.h"
#include "core/figures/supplies.h"
#include "core/plan/plan.h"

#include <QString>

#include <string>

namespace stemwright {

/// Every figure of a plan for a person at a terminal: the stems in a table, then the pot.
QString figuresText(const Plan& plan, const Figures& figures);

/// What to buy and to make, in a table.
QString suppliesText(const Plan& plan, const Supplies& needs);

/// The same for scripts: JSON with the unit in each key (`height_mm`), for each stem and for the pot. Always in
/// millimetres and grams, whatever the plan shows.
std::string figuresJson(const Plan& plan, const Figures& figures);

} // namespace stemwright

#pragma once

#include "core/plan/plan.h"

#include <vector>

namespace stemwright {

/// How many leaves of each line of stock are still to be made, in the order of tray(plan): those that the stock
/// calls so, but for the bound ones that its made leaves do not cover, for a leaf that is bound has been made,
/// whatever the stock says. The stock itself is not changed by binding.
std::vector<int> stillToMake(const Plan& plan);
/// The same by kind, in the plan's order.
std::vector<int> stillToMakeByKind(const Plan& plan);

} // namespace stemwright

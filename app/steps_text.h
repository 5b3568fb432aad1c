#pragma once

#include "core/figures/figures.h"

#include <QString>

#include <optional>
#include <string>

namespace stemwright {

// The order of work for a terminal and for other programs, from the same steps and sentences as the binding
// cards and the place Bind.

/// A line a step, of one stem (its place in the plan) or of all.
QString stepsText(const Plan& plan, const Figures& figures, std::optional<std::size_t> stem);

/// The same as JSON, lengths in millimetres, stems and tiers counted from 1.
std::string stepsJson(const Plan& plan, const Figures& figures, std::optional<std::size_t> stem);

} // namespace stemwright

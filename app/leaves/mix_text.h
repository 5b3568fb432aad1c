#pragma once

#include "core/plan/plan.h"

#include <QString>

#include <vector>

namespace stemwright {

/// A mix's colours as one line, outer row inward, shares where they are not all 1: "Plum 2 + Frost 1".
QString mixText(const Plan& plan, const std::vector<BeadShare>& colours);

/// Reads such a line, colours by their names in either case; "+", ";", "/" and "·" part them alike, and a
/// colour without a share has 1. Empty, or the reason why it cannot be read.
QString readMix(const Plan& plan, const QString& line, std::vector<BeadShare>& colours);

} // namespace stemwright

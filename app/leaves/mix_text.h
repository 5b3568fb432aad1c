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

/// The mix's name after one of its colours has been given another: the colour's old name, where it stands there
/// as whole words in either case, becomes the new one. The same name where it does not stand there, or only as
/// a part of another of the mix's colours ("Sea" in "Deep sea").
QString renamedMix(const Plan& plan, const Mix& mix, const Colour& colour, const QString& newName);

} // namespace stemwright

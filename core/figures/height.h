#pragma once

#include "core/plan/kind.h"
#include "core/plan/stem.h"
#include "core/quantity/quantity.h"

#include <span>

namespace stemwright {

/// How far a leaf rises above the place where it joins the stem: length × cos(angle), and 0 for one that hangs.
Length reachAbove(const KindForm& kind);

/// From a tier down to the next: its own spacing or the stem's. The last tier's is never asked for.
Length spacingBelow(const StemForm& form, const Tier& tier);

/// Along the stem from its foot to its topmost joint: the tail and the spacings. That of the tail without
/// tiers.
Length lengthOfStem(const Stem& stem);

/// From the clay line to the highest point of a stem that stands straight up, whatever its pose. The joints of
/// the tiers stand at tail − planting depth and, upward, the spacings; the highest point is the highest joint
/// plus reach of all tiers, mostly the tip's, but a long leaf below may stand higher. `reach` has a tier's
/// highest leaf each, tip to base, 0 for a tier without leaves. Without tiers it is the top of the tail; never
/// below 0, where all is under the clay.
Length heightOf(const Stem& stem, std::span<const Length> reach, Length plantingDepth);

} // namespace stemwright

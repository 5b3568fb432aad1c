#pragma once

#include "core/plan/kind.h"
#include "core/quantity/quantity.h"

namespace stemwright {

/// Of one leaf: its beads, and its wire as it was cut. Beads of a size that is in no table weigh nothing.
Mass leafMass(const KindForm& kind);

} // namespace stemwright

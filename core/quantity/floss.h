#pragma once

#include "core/quantity/quantity.h"

namespace stemwright {

// Stranded cotton floss, the handbook's one entry.

/// It divides into six strands (published: a thread guide's page).
inline constexpr int flossStrands = 6;
/// Of one strand: 0.203 mm by Peirce's formula, d = 1 / (28 √Ne) inches, for Ne 20 (Peirce 1937, from memory;
/// recomputed). Wrapped it flattens: measure it.
inline constexpr Length flossStrandWidth = millimetres(0.2);
/// Of one strand: 29.5 tex (from memory).
inline constexpr double flossGramsPerMetre = 0.0295;
/// The two lengths that skeins are sold in (published: a thread guide's page).
inline constexpr Length shortSkein = millimetres(8'000);
inline constexpr Length longSkein = millimetres(10'000);

} // namespace stemwright

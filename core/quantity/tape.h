#pragma once

#include "core/quantity/quantity.h"

namespace stemwright {

// Waxed crepe florist tape, the handbook's one entry. No standard; what it weighs nobody states.

/// Half an inch; also sold an inch wide, and commonly split to half its width (common practice, no source).
inline constexpr Length tapeWidth = millimetres(12.7);
/// On the stem, stretched (from memory).
inline constexpr Length tapeThickness = millimetres(0.15);
/// It sticks only when stretched, to 1.3 to 2 times its length (from memory; pages disagree).
inline constexpr double tapeStretch = 1.5;
/// Thirty yards (common practice, no source).
inline constexpr Length tapeRoll = millimetres(27'000);

} // namespace stemwright

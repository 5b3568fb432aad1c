#pragma once

#include "core/quantity/colour.h"

namespace stemwright {

/// How a colour is looked at: by full colour vision, by the three kinds of colour blindness in their full
/// strength, or on paper printed in grey.
enum class ColourVision { full, protan, deutan, tritan, grey };

/// The colour as it looks to such eyes, for a viewer with full colour vision. Machado, Oliveira & Fernandes
/// 2009, severity 1, applied to linear light and then clamped; the model for tritan is approximate. Grey keeps
/// the relative luminance. White, black and greys stay as they are in all of them.
Srgb seenBy(ColourVision vision, Srgb colour);

} // namespace stemwright

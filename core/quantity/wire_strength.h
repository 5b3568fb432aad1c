#pragma once

#include "core/quantity/metal.h"
#include "core/quantity/quantity.h"

namespace stemwright {

/// The moment at which all of a round wire yields, N·mm: yield · d³ / 6 (textbook; 16/(3π) = 1.698 times the
/// moment at which its skin begins to). By the lowest yield of the metal's sources.
double plasticMoment(const MetalFigures& metal, Length diameter);
double plasticMoment(Metal metal, Length diameter);

/// Modulus times second moment of area of a round wire, π d⁴ / 64, N·mm² (textbook).
double wireStiffness(const MetalFigures& metal, Length diameter);
double wireStiffness(Metal metal, Length diameter);

} // namespace stemwright

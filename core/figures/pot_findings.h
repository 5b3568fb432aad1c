#pragma once

#include "core/figures/findings.h"
#include "core/figures/plant_shape.h"

namespace stemwright {

/// What would go wrong in the pot: stems outside the clay, stakes that collide, leaves that run into each other
/// (one finding for two stems), leaves of another scale than the plant, stakes that together need more room
/// than there is. A leaf is of another scale where it is longer than twice the tallest stem and twice the pot's
/// width: our own measure, for lengths typed in the wrong unit. Stems in the plan's order, each with the stems
/// after it; the pot's own come last. Apart from findings() of findings.h, since leaves are compared in space,
/// which takes longer and matters only once the stems' places do.
///
/// A foot is as thick as the stem or its stake, the thicker of the two; it is outside where any of it is.
/// Stakes need the smallest circle that holds so many equal ones (core/quantity/circle_packing.h).
std::vector<Finding> potFindings(const Plan& plan, const PlantBody& plant);

/// The radius of a stem's foot in the clay, mm.
double footRadius(const Plan& plan, const StemBody& stem);

} // namespace stemwright

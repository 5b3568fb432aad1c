#pragma once

#include "core/figures/figures.h"
#include "core/figures/plant_shape.h"

#include <QStringList>

#include <span>

namespace stemwright {

/// What a place in the pot means for a stem, a line each: its name and height; its nearest two neighbours with
/// how far they are, how unlike in height and in colour, and whether their leaves' room overlaps; and what is
/// wrong with the place, if anything.
QStringList placeHint(const Plan& plan, const Figures& figures, const PlantBody& body,
                      std::span<const PlaceMm> at, std::size_t stem);

} // namespace stemwright

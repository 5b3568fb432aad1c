#pragma once

#include "app/pot/plant_scene.h"

class QPainter;

namespace stemwright {

/// Paints the plant in its pot as shapes, for SVG and print: leaves as rows of their colours, in an order that
/// is right everywhere (core/figures/panes.h). On the current coordinates: pixels of `framing`.
void paintPlant(QPainter& painter, const PlantScene& scene, const View& view, const Framing& framing);

} // namespace stemwright

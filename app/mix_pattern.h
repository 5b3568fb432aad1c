#pragma once

#include "core/plan/plan.h"

#include <QPolygonF>

class QPainter;
class QPen;

namespace stemwright {

// What tells the mixes apart on paper that has no colour, besides their codes: lines, crosses, dots. Patterns
// keep their direction on the page however the leaf is turned, so that one mix looks the same everywhere.

/// Which pattern a mix has: its place in the plan's list of mixes; -1 for a mix that is not there.
int patternOf(const Plan& plan, MixId mix);

/// Draws the pattern into the polygon with that pen, `unitsPerMm` of the painter's units to a millimetre. The
/// first sixteen differ in their marks; further ones are the same again, drawn wider. Nothing for -1. No
/// clipping is asked of the painter, since an SVG has none.
void paintPattern(QPainter& painter, const QPolygonF& outline, int pattern, double unitsPerMm, const QPen& pen);

} // namespace stemwright

#pragma once

#include "core/document/sheet.h"

#include <QImage>

namespace stemwright {

/// The plant of a page's mark on white paper. The same plan gives the same pixels, by however many threads.
QImage plantOnPaper(const Plan& plan, const PlantMark& mark, double pixelsPerMm, bool grey);

} // namespace stemwright

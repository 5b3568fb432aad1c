#pragma once

#include "core/figures/explain.h"

#include <QPointF>
#include <QRectF>
#include <QString>

namespace stemwright {

class Session;

/// Which figure of the stem's card is there: height, share of colour, drift or what is wound around, from the
/// top down as paintCard of board_cards.h puts them.
FigureRef cardFigureAt(const QRectF& card, QPointF at, std::size_t stem, std::size_t wraps);

/// How that figure came about, with what the stem's hold means below.
QString cardTip(const Session& session, const QRectF& card, QPointF at, std::size_t stem);

} // namespace stemwright

#pragma once

#include "app/pot/plant_render.h"

#include <QByteArray>
#include <QStringList>

namespace stemwright {

struct CommandStreams;

/// The plant as a finished picture, ground and all: PNG bytes, or the text of an SVG.
QByteArray plantPng(const PlantScene& scene, const View& view, QSize size, Ground ground);
QByteArray plantSvg(const PlantScene& scene, const View& view, QSize size, Ground ground);

/// `picture PLAN -o FILE.png|svg [--turn DEG] [--tilt DEG] [--size WxH] [--ground light|dark]
/// [--eyes full|protan|deutan|tritan|grey]`: writes the picture.
int pictureCommand(const QStringList& arguments, const CommandStreams& streams);

/// `place PLAN -o PLAN [--seed N] [--json]`: writes the plan with its stems placed, and says the figures before
/// and after, the bound, and whether it is proved.
int placeCommand(const QStringList& arguments, const CommandStreams& streams);

} // namespace stemwright

#pragma once

#include "app/pot/plant_scene.h"

#include <QImage>
#include <QSize>

#include <stop_token>
#include <vector>

namespace stemwright {

enum class PlantDetail {
    moving, ///< each leaf a flat picture of its beads: quick enough to turn
    full,   ///< every bead round, with its light and the shadows of what is above it
};

/// Pictures of leaves lying flat, and of the cover from above, kept from frame to frame of a scene in motion.
/// For one thread at a time.
struct LeafTextures {
    double scale = 0; ///< samples a millimetre
    std::vector<QImage> pictures;
    QImage cover;
};

struct PlantPicture {
    View view;
    Framing framing;
    QSize size;
    PlantDetail detail = PlantDetail::full;
    /// Samples a pixel each way.
    int fineness = 2;
    std::stop_token stop;
    /// Where the textures of leaves in motion are kept; without it they are painted afresh.
    LeafTextures* textures = nullptr;
};

/// The plant in its pot, painted by depth, on a transparent ground (premultiplied). A null picture once
/// stopped. May run in any thread, and uses as many as there are.
QImage renderPlant(const PlantScene& scene, const PlantPicture& picture);

/// Light and dark grounds to look at it on.
enum class Ground { light, dark };

/// The ground with the shadow at the pot's foot, for the same view.
QImage plantGround(const PlantScene& scene, const PlantPicture& picture, Ground ground);

} // namespace stemwright

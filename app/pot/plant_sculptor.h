#pragma once

#include "app/pot/depth_raster.h"
#include "app/pot/plant_render.h"
#include "app/pot/shadow_map.h"

namespace stemwright {

/// Turns a scene into solids for one view, in samples of its picture.
class Sculptor {
public:
    Sculptor(const PlantScene& scene, const PlantPicture& picture);

    /// Everything: the pot, the clay, the stems, and the leaves bead by bead or, in motion, as flat pictures
    /// that are kept in `textures`.
    Solids solids(LeafTextures& textures);

private:
    void pot();
    void ground(LeafTextures& kept);
    void stones();
    void flatStones(LeafTextures& kept);
    void stems();
    void beads();
    void beadsOf(std::size_t leaf, BeadSolid* out) const;
    void flatLeaves(LeafTextures& kept);

    bool moving() const { return picture_.detail == PlantDetail::moving; }
    Vec3f place(const Point3& p) const;
    Vec3f arrow(const Point3& v) const;
    Vec3f normal(const Point3& v) const;
    Lit litAt(const Point3& p, double slack = 2.2) const;
    const PlantScene::Look& look(std::size_t leaf) const { return scene_.looks[scene_.lookOf[leaf]]; }

    const PlantScene& scene_;
    const PlantPicture& picture_;
    double scale_; ///< samples a millimetre
    ShadowMap lamp_;
    Solids out_;
};

/// A colour as the raster counts it.
Tint tintOf(const QColor& colour);

} // namespace stemwright

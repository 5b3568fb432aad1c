#include "app/pot/plant_sculptor.h"

#include <QtConcurrent>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;
/// Textures of leaves in motion have at most so many texels a side.
constexpr int mostTexels = 160;
/// How finely the lamp's shadows are sampled, mm; in motion nobody sees their edges.
constexpr double shadowStep = 0.7, movingShadowStep = 2;
constexpr std::size_t leavesAtOnce = 16;
constexpr int textureFineness = 2;

/// A direction on the picture back in the plan's space.
Point3 fromPicture(const View& view, const Vec3f& v) {
    const Point3 x = view.direction({1, 0, 0}), y = view.direction({0, 1, 0}), z = view.direction({0, 0, 1});
    return {v.x * x.x + v.y * x.y + v.z * x.z, v.x * y.x + v.y * y.y + v.z * y.z,
            v.x * z.x + v.y * z.y + v.z * z.z};
}

/// How bright round beads look that lie in a plane: the mean over the sides of a bead that the eye sees.
float beadLight(Vec3f face, const Vec3f& right, const Vec3f& along, Lit lit) {
    if (face.z < 0)
        face = face * -1;
    const Tint grey{0.5F, 0.5F, 0.5F};
    float sum = 0, weights = 0;
    for (const Vec3f& side : {face, face * 0.7F + right * 0.7F, face * 0.7F - right * 0.7F,
                              face * 0.7F + along * 0.7F, face * 0.7F - along * 0.7F}) {
        const float weight = std::max(0.05F, side.z);
        sum += weight * shaded(grey, side, lit, 0).x;
        weights += weight;
    }
    return sum / weights;
}

float dotSeen(const Vec3f& v) {
    return v.x * v.x + v.y * v.y;
}

/// A leaf seen edge-on is still as thick as its beads.
void thicken(LeafSolid& leaf, float thick) {
    Vec3f& longer = dotSeen(leaf.along) >= dotSeen(leaf.across) ? leaf.along : leaf.across;
    Vec3f& other = &longer == &leaf.along ? leaf.across : leaf.along;
    const float long_ = std::sqrt(std::max(1e-6F, dotSeen(longer)));
    const Vec3f aside{-longer.y / long_, longer.x / long_, 0};
    const float now = other.x * aside.x + other.y * aside.y;
    if (std::abs(now) < thick)
        other = other + aside * ((now < 0 ? -thick : thick) - now);
}
/// The beads of a leaf that faces the eye and fills a picture.
Solids lying(const PlantScene::Look& look, QSize size) {
    Solids out;
    const float sx = static_cast<float>(size.width() / look.look.width);
    const float sy = static_cast<float>(size.height() / look.look.length);
    for (const BeadMark& bead : look.rows.beads) {
        const auto a = static_cast<float>(bead.degrees * pi / 180);
        // A little larger than they are: gaps as fine as a sample would flicker while the plant turns.
        const auto along = static_cast<float>(bead.along * 0.56),
                   across = static_cast<float>(bead.across * 0.6);
        BeadSolid solid;
        solid.middle = {static_cast<float>(size.width()) / 2 + static_cast<float>(bead.middle.x) * sx,
                        static_cast<float>(size.height()) + static_cast<float>(bead.middle.y) * sy, 0};
        solid.axes[0] = {std::sin(a) * along * sx, -std::cos(a) * along * sy, 0};
        solid.axes[1] = {std::cos(a) * across * sx, std::sin(a) * across * sy, 0};
        solid.axes[2] = {0, 0, across * sx};
        solid.tint = tintOf(look.look.bands[static_cast<std::size_t>(bead.band)].colour);
        solid.bound();
        out.beads.push_back(solid);
    }
    return out;
}

} // namespace

Tint tintOf(const QColor& colour) {
    return {colour.redF(), colour.greenF(), colour.blueF()};
}

Sculptor::Sculptor(const PlantScene& scene, const PlantPicture& picture)
    : scene_(scene),
      picture_(picture),
      scale_(picture.framing.scale * picture.fineness),
      lamp_(scene.body, fromPicture(picture.view, lampDirection()),
            picture.detail == PlantDetail::moving ? movingShadowStep : shadowStep) {}

Solids Sculptor::solids(LeafTextures& textures) {
    // Textures are made anew only for a size that plainly differs.
    if (moving() && !(textures.scale > 0.8 * scale_ && textures.scale < 1.3 * scale_)) {
        textures = {};
        textures.scale = scale_;
    }
    pot();
    ground(textures);
    stems();
    if (moving())
        flatLeaves(textures);
    else
        beads();
    return std::move(out_);
}

Vec3f Sculptor::place(const Point3& p) const {
    const SeenPoint seen = picture_.view.point(p);
    return {static_cast<float>(seen.x * scale_ + picture_.framing.origin.x() * picture_.fineness),
            static_cast<float>(seen.y * scale_ + picture_.framing.origin.y() * picture_.fineness),
            static_cast<float>(seen.near * scale_)};
}

Vec3f Sculptor::arrow(const Point3& v) const {
    const Point3 seen = picture_.view.direction(v);
    return {static_cast<float>(seen.x * scale_), static_cast<float>(seen.y * scale_),
            static_cast<float>(seen.z * scale_)};
}

Vec3f Sculptor::normal(const Point3& v) const {
    const Point3 seen = picture_.view.direction(v);
    return {static_cast<float>(seen.x), static_cast<float>(seen.y), static_cast<float>(seen.z)};
}

Lit Sculptor::litAt(const Point3& p, double slack) const {
    return {static_cast<float>(0.35 + 0.65 * lamp_.light(p, 2.5, slack)),
            static_cast<float>(0.62 + 0.38 * scene_.sky->light(p, 7, slack))};
}

void Sculptor::beads() {
    const std::size_t leaves = scene_.body.leaves.size();
    std::vector<std::size_t> first(leaves + 1, out_.beads.size());
    for (std::size_t i = 0; i < leaves; ++i)
        first[i + 1] = first[i] + look(i).rows.beads.size();
    out_.beads.resize(first[leaves]);
    std::vector<std::size_t> parts;
    for (std::size_t i = 0; i < leaves; i += leavesAtOnce)
        parts.push_back(i);
    QtConcurrent::blockingMap(parts, [&](std::size_t from) {
        for (std::size_t i = from; i < std::min(from + leavesAtOnce, leaves); ++i)
            if (!picture_.stop.stop_requested())
                beadsOf(i, out_.beads.data() + first[i]);
    });
}

void Sculptor::beadsOf(std::size_t index, BeadSolid* out) const {
    const LeafBody& leaf = scene_.body.leaves[index];
    for (const BeadMark& bead : look(index).rows.beads) {
        const double a = bead.degrees * pi / 180;
        // The row runs `degrees` clockwise from the tip's direction.
        const Point3 run = leaf.right * std::sin(a) + leaf.along * std::cos(a);
        const Point3 side = leaf.right * std::cos(a) - leaf.along * std::sin(a);
        const Point3 middle = leaf.at3(bead.middle.x, bead.middle.y);
        BeadSolid& solid = *out++;
        solid.middle = place(middle);
        solid.axes[0] = arrow(run * (bead.along * 0.5));
        solid.axes[1] = arrow(side * (bead.across * 0.5));
        // As thick as broad: a bead is round about its hole.
        solid.axes[2] = arrow(leaf.face * (bead.across * 0.5));
        solid.tint = tintOf(look(index).look.bands[static_cast<std::size_t>(bead.band)].colour);
        solid.lit = litAt(middle);
        solid.bound();
    }
}

/// Each leaf as a picture of its beads, painted once a look and size.
void Sculptor::flatLeaves(LeafTextures& kept) {
    std::vector<QImage>& textures = kept.pictures;
    for (std::size_t i = textures.size(); i < scene_.looks.size(); ++i) {
        const PlantScene::Look& look = scene_.looks[i];
        const double texels = std::min(kept.scale, mostTexels / std::max(look.look.length, look.look.width));
        QImage texture(std::max(1, static_cast<int>(std::ceil(look.look.width * texels))),
                       std::max(1, static_cast<int>(std::ceil(look.look.length * texels))),
                       QImage::Format_ARGB32_Premultiplied);
        texture.fill(Qt::transparent);
        const Solids flat = lying(look, texture.size() * textureFineness);
        fillRows(texture, 0, texture.height(), textureFineness, flat);
        textures.push_back(std::move(texture));
    }
    for (std::size_t i = 0; i < scene_.body.leaves.size(); ++i) {
        const LeafBody& leaf = scene_.body.leaves[i];
        LeafSolid solid;
        solid.base = place(leaf.base);
        solid.across = arrow(leaf.right * leaf.width);
        solid.along = arrow(leaf.along * leaf.length);
        solid.texture = &textures[scene_.lookOf[i]];
        thicken(solid, static_cast<float>(look(i).rows.pitch * scale_));
        // Textures are lit as if they faced the eye; the leaf's own plane is the rest.
        solid.light = beadLight(normal(leaf.face), normal(leaf.right), normal(leaf.along),
                                litAt(leaf.at3(0, -leaf.length * 0.6))) /
                      beadLight({0, 0, 1}, {1, 0, 0}, {0, -1, 0}, {});
        out_.leaves.push_back(solid);
    }
}

void Sculptor::stems() {
    // Long pieces are lit in parts, so that a shadow falls on them where it falls.
    const double partLength = moving() ? 12 : 4;
    for (const StemBody& stem : scene_.body.stems)
        for (const StemPiece& piece : stem.pieces) {
            const double long_ = length(piece.to - piece.from);
            const int parts = std::clamp(static_cast<int>(long_ / partLength), 1, 100);
            for (int k = 0; k < parts; ++k) {
                const Point3 from = piece.from + (piece.to - piece.from) * (static_cast<double>(k) / parts);
                const Point3 to = piece.from + (piece.to - piece.from) * (static_cast<double>(k + 1) / parts);
                RodSolid rod;
                rod.from = place(from);
                rod.to = place(to);
                rod.radius = static_cast<float>(std::max(piece.radius * scale_, 0.6));
                rod.tint = tintOf(scene_.stemColour);
                rod.lit = litAt((from + to) * 0.5);
                // Turns finer than three samples would only flicker.
                if (scene_.wrapAdvance * scale_ > 3)
                    rod.turns =
                        static_cast<float>(std::max(1.0, std::round(long_ / parts / scene_.wrapAdvance)));
                out_.rods.push_back(rod);
            }
        }
}

} // namespace stemwright

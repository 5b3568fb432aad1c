#pragma once

#include <QImage>

#include <cstdint>
#include <vector>

namespace stemwright {

// A picture with a depth for every sample, filled by small solid shapes; whatever is nearer to the eye wins, so
// no order of painting is needed. Everything is in samples (`fineness` a pixel each way), y down, near towards
// the eye.

struct Vec3f {
    float x = 0, y = 0, z = 0;
    friend Vec3f operator+(Vec3f a, Vec3f b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
    friend Vec3f operator-(Vec3f a, Vec3f b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
    friend Vec3f operator*(Vec3f a, float k) { return {a.x * k, a.y * k, a.z * k}; }
};
inline float dot(Vec3f a, Vec3f b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

/// A colour's channels from 0 to 1, as sRGB has them.
using Tint = Vec3f;

/// How much light reaches a shape: from the lamp, and from all around.
struct Lit {
    float lamp = 1;
    float sky = 1;
};

/// A bead: an ellipsoid by its three half axes, at right angles to each other.
struct BeadSolid {
    Vec3f middle;
    Vec3f axes[3];
    Tint tint;
    Lit lit;
    float gloss = 0.5F;
    float halfWidth = 0, halfHeight = 0; ///< of its outline, set by bound()
    void bound();
};

/// A round rod.
struct RodSolid {
    Vec3f from, to;
    float radius = 1;
    Tint tint;
    Lit lit;
    float turns = 0; ///< of a wrap over its length, shown as a groove each; 0 for none
};

/// A flat leaf: its base, and the two directions in which its texture runs.
struct LeafSolid {
    Vec3f base;
    Vec3f across;                    ///< one whole width to the right
    Vec3f along;                     ///< from base to tip
    const QImage* texture = nullptr; ///< its base at the bottom; transparent outside the leaf
    float light = 1;
};

/// A triangle whose colour runs evenly between its corners.
struct TriangleSolid {
    Vec3f corner[3];
    Tint tint[3];
};

struct Solids {
    std::vector<BeadSolid> beads;
    std::vector<RodSolid> rods;
    std::vector<LeafSolid> leaves;
    std::vector<TriangleSolid> triangles;
};

/// Where the lamp stands, seen from the picture: up and to the left, before it.
Vec3f lampDirection();
/// The colour of a surface that faces `normal` (length 1).
Tint shaded(Tint tint, Vec3f normal, Lit lit, float gloss);

/// Fills rows `top` to `bottom` (in pixels, bottom excluded) of a premultiplied picture, leaving transparent
/// what no shape covers. `fineness` samples a pixel each way are averaged. Shapes that do not reach these rows
/// cost little; different rows may be filled by different threads.
void fillRows(QImage& picture, int top, int bottom, int fineness, const Solids& solids);

} // namespace stemwright

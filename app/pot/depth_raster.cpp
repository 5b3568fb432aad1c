#include "app/pot/depth_raster.h"

#include "app/pot/depth_band.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

std::uint32_t packed(Tint tint) {
    const auto channel = [](float v) {
        return static_cast<std::uint32_t>(std::clamp(v, 0.0F, 1.0F) * 255.0F + 0.5F);
    };
    return 0xff000000U | channel(tint.x) << 16U | channel(tint.y) << 8U | channel(tint.z);
}

void fill(Band& band, const BeadSolid& bead) {
    Band::Part part;
    if (!band.meet(bead.middle.x - bead.halfWidth, bead.middle.x + bead.halfWidth,
                   bead.middle.y - bead.halfHeight, bead.middle.y + bead.halfHeight, part))
        return;
    // The ellipsoid as pᵀQp = 1, Q the sum over its half axes a of aaᵀ/|a|⁴.
    float q11 = 0, q22 = 0, q33 = 0, q12 = 0, q13 = 0, q23 = 0;
    for (const Vec3f& a : bead.axes) {
        const float square = std::max(dot(a, a), 1e-6F), k = 1 / (square * square);
        q11 += k * a.x * a.x;
        q22 += k * a.y * a.y;
        q33 += k * a.z * a.z;
        q12 += k * a.x * a.y;
        q13 += k * a.x * a.z;
        q23 += k * a.y * a.z;
    }
    const float over = 1 / q33;
    for (int y = part.top; y <= part.bottom; ++y) {
        float* near = band.near(y);
        std::uint32_t* colour = band.colour(y);
        const float dy = static_cast<float>(y) + 0.5F - bead.middle.y;
        for (int x = part.left; x <= part.right; ++x) {
            const float dx = static_cast<float>(x) + 0.5F - bead.middle.x;
            const float b = q13 * dx + q23 * dy;
            const float c = q11 * dx * dx + 2 * q12 * dx * dy + q22 * dy * dy - 1;
            const float inside = b * b - q33 * c;
            if (inside < 0)
                continue;
            const float d = (std::sqrt(inside) - b) * over;
            if (bead.middle.z + d <= near[x])
                continue;
            near[x] = bead.middle.z + d;
            Vec3f normal{q11 * dx + q12 * dy + q13 * d, q12 * dx + q22 * dy + q23 * d,
                         q13 * dx + q23 * dy + q33 * d};
            normal = normal * (1 / std::sqrt(std::max(dot(normal, normal), 1e-12F)));
            colour[x] = packed(shaded(bead.tint, normal, bead.lit, bead.gloss));
        }
        band.reached(y, part.left, part.right);
    }
}

/// What a rod looks like across, from one edge to the other: every place along it is alike but for the grooves.
struct RodShades {
    static constexpr int count = 33;
    struct Shade {
        Tint lit;        ///< the tint in its light
        float white = 0; ///< of the highlight
        float rise = 0;  ///< how far it stands out, of the radius
        float lag = 0;   ///< of a turn, by which a groove lags there
    };
    Shade shades[count];

    RodShades(const RodSolid& rod, Vec3f along) {
        for (int i = 0; i < count; ++i) {
            const float part = static_cast<float>(2 * i) / static_cast<float>(count - 1) - 1;
            Shade& shade = shades[i];
            shade.rise = std::sqrt(std::max(0.0F, 1 - part * part));
            const Vec3f normal{along.y * part, -along.x * part, shade.rise};
            constexpr float gloss = 0.12F;
            // Black shows the highlight alone, and white what the light is besides.
            shade.white = shaded({}, normal, rod.lit, gloss).x;
            shade.lit = shaded(rod.tint, normal, rod.lit, gloss) - Tint{shade.white, shade.white, shade.white};
            shade.lag = std::asin(part) * 0.159F;
        }
    }
    const Shade& at(float part) const {
        return shades[static_cast<int>((part + 1) * (0.5F * (count - 1)) + 0.5F)];
    }
};

void fill(Band& band, const RodSolid& rod) {
    const float r = rod.radius;
    Band::Part part;
    if (!band.meet(std::min(rod.from.x, rod.to.x) - r, std::max(rod.from.x, rod.to.x) + r,
                   std::min(rod.from.y, rod.to.y) - r, std::max(rod.from.y, rod.to.y) + r, part))
        return;
    const float dx = rod.to.x - rod.from.x, dy = rod.to.y - rod.from.y;
    const float long_ = std::sqrt(dx * dx + dy * dy);
    const Vec3f along = long_ > 1e-4F ? Vec3f{dx / long_, dy / long_, 0} : Vec3f{0, -1, 0};
    const float slope = long_ > 1e-4F ? (rod.to.z - rod.from.z) / long_ : 0;
    const float overlap = 0.35F; // pieces run into each other by so much, so that no gap shows
    const bool grooved = rod.turns > 0 && long_ > 1e-4F;
    const float turns = grooved ? rod.turns / long_ : 0;
    const RodShades shades(rod, along);
    for (int y = part.top; y <= part.bottom; ++y) {
        float* near = band.near(y);
        std::uint32_t* colour = band.colour(y);
        for (int x = part.left; x <= part.right; ++x) {
            const float px = static_cast<float>(x) + 0.5F - rod.from.x,
                        py = static_cast<float>(y) + 0.5F - rod.from.y;
            const float run = px * along.x + py * along.y;
            const float side = px * along.y - py * along.x;
            if (std::abs(side) > r || run < -overlap || run > long_ + overlap) {
                // Seen from its end it is a disc.
                if (long_ > r || px * px + py * py > r * r)
                    continue;
            }
            const RodShades::Shade& shade = shades.at(std::clamp(side / r, -1.0F, 1.0F));
            const float here =
                std::max(rod.from.z + slope * std::clamp(run, 0.0F, long_), long_ > r ? nowhere : rod.to.z) +
                shade.rise * r;
            if (here <= near[x])
                continue;
            near[x] = here;
            Tint tint = shade.lit;
            if (grooved) {
                const float turn = turns * run + shade.lag;
                const float groove = std::abs(turn - std::floor(turn) - 0.5F) * 2; // 1 between two turns
                tint = tint * (1.06F - 0.3F * groove * groove * groove);
            }
            colour[x] = packed(tint + Tint{shade.white, shade.white, shade.white});
        }
        band.reached(y, part.left, part.right);
    }
}

void fill(Band& band, const LeafSolid& leaf) {
    const Vec3f half = leaf.across * 0.5F;
    const Vec3f corner[4] = {leaf.base - half, leaf.base + half, leaf.base + half + leaf.along,
                             leaf.base - half + leaf.along};
    float left = corner[0].x, right = left, top = corner[0].y, bottom = top;
    for (const Vec3f& c : corner) {
        left = std::min(left, c.x), right = std::max(right, c.x);
        top = std::min(top, c.y), bottom = std::max(bottom, c.y);
    }
    Band::Part part;
    if (!band.meet(left, right, top, bottom, part))
        return;
    const float det = leaf.across.x * leaf.along.y - leaf.across.y * leaf.along.x;
    if (std::abs(det) < 1)
        return; // edge-on
    const int width = leaf.texture->width(), height = leaf.texture->height();
    const float ux = leaf.along.y / det, uy = -leaf.along.x / det;
    const float vx = -leaf.across.y / det, vy = leaf.across.x / det;
    const auto light = static_cast<std::uint32_t>(std::clamp(leaf.light, 0.0F, 2.0F) * 256);
    const auto* texels = reinterpret_cast<const std::uint32_t*>(leaf.texture->constBits());
    const auto stride = static_cast<std::ptrdiff_t>(leaf.texture->bytesPerLine() / 4);
    const float tw = static_cast<float>(width), th = static_cast<float>(height);
    for (int y = part.top; y <= part.bottom; ++y) {
        // The stretch of this row that lies within the parallelogram.
        const float py = static_cast<float>(y) + 0.5F - leaf.base.y;
        const float u0 = uy * py + 0.5F - ux * leaf.base.x, v0 = vy * py - vx * leaf.base.x;
        float from = static_cast<float>(part.left), to = static_cast<float>(part.right);
        const auto within = [&](float slope, float start) {
            if (std::abs(slope) < 1e-9F) {
                if (start < 0 || start >= 1)
                    to = from - 1;
                return;
            }
            float a = -start / slope - 0.5F, b = (1 - start) / slope - 0.5F;
            if (a > b)
                std::swap(a, b);
            from = std::max(from, a);
            to = std::min(to, b);
        };
        within(ux, u0);
        within(vx, v0);
        const int first = static_cast<int>(std::ceil(from)), last = static_cast<int>(std::floor(to));
        if (first > last)
            continue;
        float* near = band.near(y);
        std::uint32_t* colour = band.colour(y);
        const float u = u0 + ux * (static_cast<float>(first) + 0.5F);
        const float v = v0 + vx * (static_cast<float>(first) + 0.5F);
        float z = leaf.base.z + (u - 0.5F) * leaf.across.z + v * leaf.along.z;
        const float dz = ux * leaf.across.z + vx * leaf.along.z;
        // Texels in steps of 1/65536, which a texture of any use holds many times over.
        auto fx = static_cast<std::int64_t>(u * tw * 65536);
        auto fy = static_cast<std::int64_t>((1 - v) * th * 65536);
        const auto stepX = static_cast<std::int64_t>(ux * tw * 65536);
        const auto stepY = static_cast<std::int64_t>(-vx * th * 65536);
        for (int x = first; x <= last; ++x, fx += stepX, fy += stepY, z += dz) {
            if (z <= near[x])
                continue;
            const int tx = std::clamp(static_cast<int>(fx >> 16), 0, width - 1);
            const int ty = std::clamp(static_cast<int>(fy >> 16), 0, height - 1);
            const std::uint32_t texel = texels[ty * stride + tx];
            if ((texel >> 24U) < 128)
                continue;
            near[x] = z;
            const std::uint32_t r = std::min(255U, ((texel >> 16U) & 255U) * light >> 8U);
            const std::uint32_t g = std::min(255U, ((texel >> 8U) & 255U) * light >> 8U);
            const std::uint32_t b = std::min(255U, (texel & 255U) * light >> 8U);
            colour[x] = 0xff000000U | r << 16U | g << 8U | b;
        }
        band.reached(y, first, last);
    }
}

void fill(Band& band, const TriangleSolid& triangle) {
    const Vec3f &a = triangle.corner[0], &b = triangle.corner[1], &c = triangle.corner[2];
    Band::Part part;
    if (!band.meet(std::min({a.x, b.x, c.x}), std::max({a.x, b.x, c.x}), std::min({a.y, b.y, c.y}),
                   std::max({a.y, b.y, c.y}), part))
        return;
    const float det = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    if (std::abs(det) < 1e-4F)
        return;
    constexpr float slack = 0.002F; // neighbours share their edge
    // How far to b and how far to c a place is, both even over the picture.
    const float ux = (c.y - a.y) / det, uy = -(c.x - a.x) / det;
    const float vx = -(b.y - a.y) / det, vy = (b.x - a.x) / det;
    const float zx = (b.z - a.z) * ux + (c.z - a.z) * vx;
    const Tint toB = (triangle.tint[1] - triangle.tint[0]) * 255,
               toC = (triangle.tint[2] - triangle.tint[0]) * 255;
    const Tint step = toB * ux + toC * vx;
    const auto channel = [](float v) { return static_cast<std::uint32_t>(std::clamp(v, 0.0F, 255.0F)); };
    for (int y = part.top; y <= part.bottom; ++y) {
        const float py = static_cast<float>(y) + 0.5F - a.y;
        const float u0 = uy * py - ux * a.x, v0 = vy * py - vx * a.x;
        float from = static_cast<float>(part.left) + 0.5F, to = static_cast<float>(part.right) + 0.5F;
        // Where `start + slope x` is not below −slack.
        const auto within = [&](float slope, float start) {
            if (slope > 1e-12F)
                from = std::max(from, (-slack - start) / slope);
            else if (slope < -1e-12F)
                to = std::min(to, (-slack - start) / slope);
            else if (start < -slack)
                to = from - 1;
        };
        within(ux, u0);
        within(vx, v0);
        within(-ux - vx, 1 - u0 - v0);
        const int first = static_cast<int>(std::ceil(from - 0.5F)),
                  last = static_cast<int>(std::floor(to - 0.5F));
        if (first > last)
            continue;
        float* near = band.near(y);
        std::uint32_t* colour = band.colour(y);
        const float x0 = static_cast<float>(first) + 0.5F;
        const float u = u0 + ux * x0, v = v0 + vx * x0;
        float z = a.z + (b.z - a.z) * u + (c.z - a.z) * v;
        Tint tint = triangle.tint[0] * 255 + toB * u + toC * v + Tint{0.5F, 0.5F, 0.5F};
        for (int x = first; x <= last; ++x, z += zx, tint = tint + step) {
            if (z <= near[x])
                continue;
            near[x] = z;
            colour[x] = 0xff000000U | channel(tint.x) << 16U | channel(tint.y) << 8U | channel(tint.z);
        }
        band.reached(y, first, last);
    }
}

} // namespace

void BeadSolid::bound() {
    halfWidth = std::sqrt(axes[0].x * axes[0].x + axes[1].x * axes[1].x + axes[2].x * axes[2].x);
    halfHeight = std::sqrt(axes[0].y * axes[0].y + axes[1].y * axes[1].y + axes[2].y * axes[2].y);
}

Vec3f lampDirection() {
    return {-0.477F, -0.715F, 0.511F};
}

Tint shaded(Tint tint, Vec3f normal, Lit lit, float gloss) {
    static const Vec3f lamp = lampDirection();
    // Half way between the lamp and the eye, where a highlight sits.
    static const Vec3f half = [] {
        const Vec3f sum = lampDirection() + Vec3f{0, 0, 1};
        return sum * (1 / std::sqrt(dot(sum, sum)));
    }();
    const float diffuse = std::max(0.0F, dot(normal, lamp));
    const float around = 0.5F - 0.5F * normal.y; // more comes from above
    const float light = (0.45F + 0.24F * around) * lit.sky + 0.56F * diffuse * lit.lamp;
    float shine = std::max(0.0F, dot(normal, half));
    shine *= shine, shine *= shine, shine *= shine, shine *= shine;
    const float white = gloss * shine * (0.25F + 0.75F * lit.lamp);
    return {tint.x * light + (1 - tint.x * light) * white, tint.y * light + (1 - tint.y * light) * white,
            tint.z * light + (1 - tint.z * light) * white};
}

void fillRows(QImage& picture, int top, int bottom, int fineness, const Solids& solids) {
    Band band(picture.width() * fineness, top * fineness, bottom * fineness);
    for (const TriangleSolid& triangle : solids.triangles)
        fill(band, triangle);
    for (const LeafSolid& leaf : solids.leaves)
        fill(band, leaf);
    for (const RodSolid& rod : solids.rods)
        fill(band, rod);
    for (const BeadSolid& bead : solids.beads)
        fill(band, bead);

    const auto samples = static_cast<unsigned>(fineness * fineness);
    const std::uint32_t scale = 65536U / samples;
    for (int y = top; y < bottom; ++y) {
        int first = picture.width() * fineness, last = -1;
        for (int k = 0; k < fineness; ++k) {
            first = std::min(first, band.first(y * fineness + k));
            last = std::max(last, band.last(y * fineness + k));
        }
        auto* line = reinterpret_cast<std::uint32_t*>(picture.scanLine(y));
        std::fill(line, line + picture.width(), 0U);
        if (last < 0)
            continue;
        if (fineness == 1) {
            const std::uint32_t* from = band.colour(y);
            std::copy(from + first, from + last + 1, line + first);
            continue;
        }
        for (int x = first / fineness; x <= last / fineness; ++x) {
            std::uint32_t a = 0, r = 0, g = 0, b = 0;
            for (int k = 0; k < fineness; ++k) {
                const std::uint32_t* from = band.colour(y * fineness + k) + x * fineness;
                for (int i = 0; i < fineness; ++i) {
                    const std::uint32_t c = from[i];
                    a += c >> 24U, r += (c >> 16U) & 255U, g += (c >> 8U) & 255U, b += c & 255U;
                }
            }
            if (a == 0)
                continue;
            const auto mean = [scale](std::uint32_t sum) { return (sum * scale + 32768U) >> 16U; };
            line[x] = mean(a) << 24U | mean(r) << 16U | mean(g) << 8U | mean(b);
        }
    }
}

} // namespace stemwright

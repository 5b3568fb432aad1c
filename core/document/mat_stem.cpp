#include "core/document/mat_stem.h"

#include "core/figures/bundle.h"
#include "core/figures/height.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double stackStep = 2.5; ///< mm between the bases of leaves that share a place
constexpr double steepStep = 2;   ///< degrees

void measure(MatLeaf& leaf, const LeafShape& shape) {
    const double turn = leaf.degrees * pi / 180;
    const double c = std::cos(turn), s = std::sin(turn);
    leaf.left = leaf.right = leaf.up = leaf.down = 0;
    for (const PointMm& p : leafOutline(shape)) {
        const double x = p.x * c - (p.y - leaf.out) * s, y = p.x * s + (p.y - leaf.out) * c;
        leaf.left = std::max(leaf.left, -x);
        leaf.right = std::max(leaf.right, x);
        leaf.up = std::max(leaf.up, -y);
        leaf.down = std::max(leaf.down, y);
    }
}

} // namespace

double MatTier::up() const {
    double most = 0;
    for (const MatLeaf& leaf : leaves)
        most = std::max(most, leaf.tooLong ? 0 : leaf.up);
    return most;
}
double MatTier::down() const {
    double most = 0;
    for (const MatLeaf& leaf : leaves)
        most = std::max(most, leaf.tooLong ? 0 : leaf.down);
    return most;
}

MatStem layFlat(const Plan& plan, const Stem& stem, MatRoom room) {
    MatStem mat;
    double wraps = 0;
    for (const Wrap& wrap : plan.binding.wraps)
        wraps += 2 * inMillimetres(wrap.thickness);
    Bundle bundle;
    double along = 0;
    mat.frontView = stem.tiers.empty();
    for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
        const Tier& tier = stem.tiers[t];
        MatTier out;
        out.along = along;
        int taken[4] = {}; // leaves that point to each side already
        for (std::size_t i = 0; i < tier.slots.size(); ++i) {
            const Kind* kind = find(plan, tier.slots[i].leaf.kind);
            const KindForm form = kind ? static_cast<const KindForm&>(*kind) : KindForm{};
            if (kind && tier.slots[i].filled())
                bundle.add(form.wiresAtBase, form.wireDiameter);
            const Side side = sideOf(slotTurn(tier, i));
            MatLeaf leaf;
            leaf.slot = static_cast<int>(i);
            leaf.leaf = tier.slots[i].leaf;
            leaf.sideView = side == Side::front || side == Side::back;
            const double sign = side == Side::left || side == Side::front ? -1 : 1;
            leaf.out = stackStep * taken[static_cast<int>(side)]++;
            const double angle = inDegrees(form.angle);
            const LeafShape shape = shapeOf(form);
            leaf.degrees = sign * angle;
            measure(leaf, shape);
            if (shape.length > room.tall || shape.width > room.tall || shape.width > 2 * room.half) {
                leaf.tooLong = mat.tooLong = true;
            } else {
                for (double steep = angle; std::max(leaf.left, leaf.right) > room.half;) {
                    const double next =
                        angle <= 90 ? std::max(steep - steepStep, 0.0) : std::min(steep + steepStep, 180.0);
                    if (next == steep)
                        break;
                    steep = next;
                    leaf.degrees = sign * steep;
                    measure(leaf, shape);
                    mat.steeper = true;
                }
                if (std::max(leaf.left, leaf.right) > room.half || leaf.up + leaf.down > room.tall)
                    leaf.tooLong = mat.tooLong = true;
            }
            (leaf.sideView ? mat.sideView : mat.frontView) = true;
            if (!leaf.tooLong) {
                double& half = leaf.sideView ? mat.halfSide : mat.halfFront;
                half = std::max({half, leaf.left, leaf.right});
            }
            out.leaves.push_back(leaf);
        }
        out.thick = inMillimetres(bundle.diameter(stem.core)) + wraps;
        const bool last = t + 1 == stem.tiers.size();
        out.wrap = inMillimetres(last ? stem.tail : spacingBelow(stem, tier));
        along += out.wrap;
        mat.tiers.push_back(std::move(out));
    }
    mat.length = stem.tiers.empty() ? inMillimetres(stem.tail) : along;
    mat.clay = mat.length - inMillimetres(plan.pot.plantingDepth);
    return mat;
}

} // namespace stemwright

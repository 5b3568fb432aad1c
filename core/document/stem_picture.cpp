#include "core/document/stem_picture.h"

#include "core/document/mat_stem.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {
constexpr double pi = 3.14159265358979323846;
constexpr double fromAbove = 32 * pi / 180; ///< how much the viewer looks down, so that front and back differ
} // namespace

StemPicture stemPicture(const SheetContext& context, std::size_t place) {
    const Stem& stem = context.plan.stems[place];
    const MatStem mat = layFlat(context.plan, stem, {1e9, 1e9});
    StemPicture out;
    std::vector<Mark> front;
    const auto cover = [&](const Mark& mark) {
        const BoxMm box = boxOf(mark, context.plan);
        out.left = std::max(out.left, -box.x);
        out.right = std::max(out.right, box.right());
        out.up = std::max(out.up, -box.y);
        out.down = std::max(out.down, box.bottom());
    };
    for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
        const double joint = -(mat.clay - mat.tiers[t].along);
        for (std::size_t i = 0; i < stem.tiers[t].slots.size(); ++i) {
            const Slot& slot = stem.tiers[t].slots[i];
            const Kind* kind = find(context.plan, slot.leaf.kind);
            if (!slot.filled() || !kind)
                continue;
            const double angle = inDegrees(kind->angle) * pi / 180;
            const double turn = inDegrees(slotTurn(stem.tiers[t], i)) * pi / 180;
            const double across = -std::sin(angle) * std::cos(turn);
            const double near = std::sin(angle) * std::sin(turn);
            const double rise = std::cos(angle) * std::cos(fromAbove) - near * std::sin(fromAbove);
            LeafMark mark;
            mark.leaf = slot.leaf;
            mark.base = {0, joint};
            mark.degrees = std::atan2(across, rise) * 180 / pi;
            // Never so short that its colours cannot be told.
            mark.shorten = std::max(std::hypot(across, rise), 0.45);
            mark.slot = {stem.id, static_cast<int>(t), static_cast<int>(i)};
            cover(mark);
            (near < -1e-6 ? out.marks : front).push_back(std::move(mark));
        }
    }
    const auto stretch = [&](double top, double bottom, double thick) {
        ShapeMark shape;
        const double half = std::max(thick, 0.8) / 2;
        shape.points = {{-half, top}, {half, top}, {half, bottom}, {-half, bottom}};
        shape.filled = true;
        shape.fill = Ink::wire;
        cover(shape);
        out.marks.push_back(std::move(shape));
    };
    if (stem.tiers.empty() && mat.clay > 0)
        stretch(-mat.clay, 0, stem.core ? inMillimetres(stem.core->diameter) : 0);
    for (std::size_t t = 0; t < mat.tiers.size(); ++t) {
        const double top = -(mat.clay - mat.tiers[t].along);
        const double bottom = t + 1 < mat.tiers.size() ? -(mat.clay - mat.tiers[t + 1].along) : 0;
        if (top < 0)
            stretch(top, std::min(bottom, 0.0), mat.tiers[t].thick);
    }
    std::move(front.begin(), front.end(), std::back_inserter(out.marks));
    return out;
}

} // namespace stemwright

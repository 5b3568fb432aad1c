#include "core/figures/plant_shape.h"

#include "core/figures/bundle.h"
#include "core/figures/height.h"

#include <algorithm>
#include <unordered_map>

namespace stemwright {

namespace {

/// A posed stem is cut into pieces of at most this length, mm.
constexpr double longestPiece = 4;

double wrapsAround(const Binding& binding) {
    double thick = 0;
    for (const Wrap& wrap : binding.wraps)
        thick += inMillimetres(wrap.thickness);
    return thick;
}

/// Builds one stem after another.
class Builder {
public:
    explicit Builder(const Plan& plan) : plan_(plan), skin_(wrapsAround(plan.binding)) {
        for (std::size_t i = 0; i < plan.kinds.size(); ++i)
            kinds_.emplace(plan.kinds[i].id.value, i);
    }

    void add(std::size_t index, const PlaceMm& place, PlantBody& out) {
        const Stem& stem = plan_.stems[index];
        StemBody body;
        body.stem = stem.id;
        body.foot = {place.x, place.y, 0};
        joints(stem);
        const double whole = heights_.empty() ? tail(stem) : heights_.front();
        const auto frame = [&](double height) { return stemFrame(stem.pose, body.foot, whole, height); };
        body.tip = frame(whole).at;
        body.top = std::max(0.0, body.tip.z);

        // From the clay up: the tail, then the stretches between the joints.
        double below = 0;
        for (std::size_t i = heights_.size(); i-- > 0;) {
            pieces(below, heights_[i], radii_[i], frame, body);
            below = std::max(below, heights_[i]);
        }
        if (heights_.empty())
            pieces(0, whole, bundleRadius(Bundle{}, stem), frame, body);

        for (std::size_t i = 0; i < stem.tiers.size(); ++i)
            leaves(index, i, frame(heights_[i]), body, out);
        out.stems.push_back(std::move(body));
    }

private:
    double tail(const Stem& stem) const { return inMillimetres(stem.tail - plan_.pot.plantingDepth); }

    double bundleRadius(const Bundle& bundle, const Stem& stem) const {
        const double bare = inMillimetres(bundle.diameter(stem.core)) / 2;
        return bare > 0 ? bare + skin_ : 0;
    }

    /// The heights of the tiers' joints along the stem, and how thick the stem is below each.
    void joints(const Stem& stem) {
        const std::size_t count = stem.tiers.size();
        heights_.assign(count, 0);
        radii_.assign(count, 0);
        double height = tail(stem);
        for (std::size_t i = count; i-- > 0;) {
            if (i + 1 < count)
                height += inMillimetres(spacingBelow(stem, stem.tiers[i]));
            heights_[i] = height;
        }
        Bundle bundle;
        for (std::size_t i = 0; i < count; ++i) {
            for (const Slot& slot : stem.tiers[i].slots)
                if (slot.filled())
                    if (const Kind* kind = kindOf(slot.leaf.kind))
                        bundle.add(kind->wiresAtBase, kind->wireDiameter);
            radii_[i] = bundleRadius(bundle, stem);
        }
    }

    const Kind* kindOf(KindId id) const {
        const auto found = kinds_.find(id.value);
        return found == kinds_.end() ? nullptr : &plan_.kinds[found->second];
    }

    template <class Frame>
    static void pieces(double from, double to, double radius, const Frame& frame, StemBody& body) {
        if (to <= from || radius <= 0)
            return;
        const bool straight = frame(from).sine == frame(to).sine;
        const int count = straight ? 1 : std::min(200, static_cast<int>(std::ceil((to - from) / longestPiece)));
        Point3 low = frame(from).at;
        for (int i = 1; i <= count; ++i) {
            const Point3 high = frame(from + (to - from) * i / count).at;
            body.pieces.push_back({low, high, radius});
            low = high;
        }
    }

    void leaves(std::size_t index, std::size_t tierIndex, const StemFrame& frame, StemBody& body,
                PlantBody& out) {
        const Tier& tier = plan_.stems[index].tiers[tierIndex];
        for (std::size_t s = 0; s < tier.slots.size(); ++s) {
            const Slot& slot = tier.slots[s];
            const Kind* kind = slot.filled() ? kindOf(slot.leaf.kind) : nullptr;
            if (!kind)
                continue;
            LeafBody leaf;
            leaf.at = {body.stem, static_cast<int>(tierIndex), static_cast<int>(s)};
            leaf.stem = index;
            leaf.kind = kinds_.at(slot.leaf.kind.value);
            leaf.leaf = slot.leaf;
            leaf.length = inMillimetres(kind->length);
            leaf.width = inMillimetres(kind->width);
            const Point3 out_ = towards(slotTurn(tier, s));
            const double angle = inRadians(kind->angle);
            const Point3 across{-out_.y, out_.x, 0};
            leaf.base = frame.at + frame.turned(out_) * radii_[tierIndex];
            leaf.along = frame.turned(out_ * std::sin(angle) + Point3{0, 0, std::cos(angle)});
            // Who looks at the face with the tip up sees the counter-clockwise side at the left.
            leaf.right = frame.turned(across * -1.0);
            leaf.face = cross(leaf.right, leaf.along);
            for (const Point3& corner : out.corners(leaf)) {
                body.clearance =
                    std::max(body.clearance, std::hypot(corner.x - body.foot.x, corner.y - body.foot.y));
                body.top = std::max(body.top, corner.z);
            }
            out.leaves.push_back(leaf);
        }
    }

    const Plan& plan_;
    double skin_;
    std::unordered_map<std::uint32_t, std::size_t> kinds_;
    std::vector<double> heights_;
    std::vector<double> radii_;
};

std::vector<PointMm> fewCorners(const std::vector<PointMm>& fine) {
    constexpr std::size_t wanted = 16;
    std::vector<PointMm> out;
    for (std::size_t i = 0; i < wanted; ++i)
        out.push_back(fine[i * fine.size() / wanted]);
    return out;
}

} // namespace

Point3 towards(Angle turn) {
    const double a = inRadians(turn);
    return {-std::cos(a), -std::sin(a), 0};
}

Point3 StemFrame::turned(const Point3& v) const {
    if (sine == 0 && cosine == 1)
        return v;
    // A rotation in the plane of the bow and the upright; what lies across it stays.
    const double out = dot(v, bow);
    const Point3 rest = v - bow * out - Point3{0, 0, v.z};
    return rest + bow * (out * cosine + v.z * sine) + Point3{0, 0, v.z * cosine - out * sine};
}

StemFrame stemFrame(const std::optional<Pose>& pose, const Point3& foot, double whole, double height) {
    StemFrame frame;
    frame.at = foot + Point3{0, 0, height};
    frame.along = {0, 0, 1};
    if (!pose || height <= 0)
        return frame;
    frame.bow = towards(pose->toward);
    const double lean = inRadians(pose->lean);
    const double curve = whole > 0 ? inRadians(pose->bend) / whole : 0; // per mm of stem
    const double end = lean + curve * height;
    double out = height * std::sin(lean), up = height * std::cos(lean);
    if (std::abs(curve) > 1e-9) {
        out = (std::cos(lean) - std::cos(end)) / curve;
        up = (std::sin(end) - std::sin(lean)) / curve;
    }
    frame.at = foot + frame.bow * out + Point3{0, 0, up};
    frame.sine = std::sin(end);
    frame.cosine = std::cos(end);
    frame.along = frame.bow * frame.sine + Point3{0, 0, frame.cosine};
    return frame;
}

std::vector<Point3> PlantBody::corners(const LeafBody& leaf) const {
    std::vector<Point3> out;
    out.reserve(outlines[leaf.kind].size());
    for (const PointMm& p : outlines[leaf.kind])
        out.push_back(leaf.at3(p.x, p.y));
    return out;
}

PlantBody plantBody(const Plan& plan) {
    return plantBody(plan, standings(plan));
}

PlantBody plantBody(const Plan& plan, std::span<const PlaceMm> at) {
    PlantBody out;
    for (const Kind& kind : plan.kinds)
        out.outlines.push_back(fewCorners(leafOutline(shapeOf(kind))));
    Builder builder(plan);
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        builder.add(i, at[i], out);
    return out;
}

} // namespace stemwright

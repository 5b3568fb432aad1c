#include "app/board/board_layout.h"

#include "app/look.h"
#include "core/figures/bundle.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stemwright {

namespace {

// Sizes at zoom 1, in pixels.
constexpr double longestLeaf = 35;
constexpr double lane = 24;
constexpr double gapHeight = 12;
constexpr double topMargin = 20;
constexpr double bottomMargin = 28;
constexpr double tailPerMillimetre = 0.8;
constexpr double leastTail = 26, mostTail = 70;
constexpr double leastScale = 0.5, mostScale = 3;
/// A leaf that points straight at the viewer or away still shows this much of its length.
constexpr double headOn = 0.62;
/// How much of a leaf's lift from level is kept: the board lays the plant flat.
constexpr double keptLift = 0.35;
/// The bundle of wires is drawn wider than life, or a stem of a few wires would hardly be seen.
constexpr double stemWidening = 1.5;
constexpr double thinnestStem = 1.3;

double largestKind(const Plan& plan) {
    double longest = 10;
    for (const Kind& kind : plan.kinds)
        longest = std::max(longest, inMillimetres(kind.length));
    return longest;
}

void join(Bundle& bundle, const Plan& plan, const Tier& tier) {
    for (const Slot& slot : tier.slots)
        if (const Kind* kind = slot.filled() ? find(plan, slot.leaf.kind) : nullptr)
            bundle.add(kind->wiresAtBase, kind->wireDiameter);
}

} // namespace

void BoardLayout::arrange(const Plan& plan, double zoom) {
    zoom_ = zoom;
    scale_ = zoom * std::clamp(longestLeaf / largestKind(plan), leastScale, mostScale);
    const double half = std::max(longestLeaf * zoom, largestKind(plan) * scale_) + 4 * zoom;
    laneWidth_ = lane * zoom;
    columnWidth_ = 2 * half + laneWidth_ + 2 * zoom;
    stems_.clear();
    stems_.reserve(plan.stems.size());
    double bottom = 0;
    for (std::size_t i = 0; i < plan.stems.size(); ++i) {
        StemSpot& spot = stems_.emplace_back();
        spot.id = plan.stems[i].id;
        const double left = columnWidth_ * static_cast<double>(i);
        spot.axis = left + laneWidth_ + half;
        spot.column = QRectF(left, 0, columnWidth_, 0);
        arrangeStem(plan, plan.stems[i], spot);
        bottom = std::max(bottom, spot.foot);
    }
    size_ = QSizeF(columnWidth_ * static_cast<double>(stems_.size()), bottom + bottomMargin * zoom_);
    for (StemSpot& spot : stems_)
        spot.column.setHeight(size_.height());
}

void BoardLayout::arrangeStem(const Plan& plan, const Stem& stem, StemSpot& spot) const {
    const double least = look::target * zoom_;
    double above = topMargin * zoom_; // the lowest point taken so far
    spot.tip = above;
    Bundle bundle;
    spot.tiers.reserve(stem.tiers.size());
    for (const Tier& tier : stem.tiers) {
        TierSpot& at = spot.tiers.emplace_back();
        join(bundle, plan, tier);
        at.thickness = std::max(thinnestStem * std::max(zoom_, 0.6),
                                inMillimetres(bundle.diameter(stem.core)) * scale_ * stemWidening);
        double up = least / 2, down = least / 2;
        at.leaves.reserve(tier.slots.size());
        for (std::size_t s = 0; s < tier.slots.size(); ++s) {
            const Kind* kind = stemwright::find(plan, tier.slots[s].leaf.kind);
            const double length = (kind ? inMillimetres(kind->length) : 15) * scale_;
            const double width = (kind ? inMillimetres(kind->width) : 9) * scale_;
            const double turn = inRadians(slotTurn(tier, s));
            const double sideways = -std::cos(turn), forward = std::sin(turn);
            const double lift = inRadians((kind ? degrees(90) - kind->angle : degrees(30)) * keptLift);
            const double dx = sideways * std::cos(lift);
            const double dy = forward - std::abs(sideways) * std::sin(lift);
            LeafSpot leaf;
            leaf.degrees = std::atan2(dx, -dy) * 180 / std::numbers::pi;
            leaf.reach = headOn + (1 - headOn) * std::abs(sideways);
            leaf.back = forward < -0.3;
            const double norm = std::max(std::hypot(dx, dy), 1e-6);
            const QPointF along(dx / norm, dy / norm);
            const double seen = length * leaf.reach;
            leaf.base = along * (std::abs(sideways) * 1.5 * zoom_);
            // The box around the leaf as it lies, widened to a target that a hand can hit.
            const double boxWidth = std::max(least, std::abs(along.x()) * seen + std::abs(along.y()) * width);
            const double boxHeight = std::max(least, std::abs(along.y()) * seen + std::abs(along.x()) * width);
            const QPointF middle(along.x() * std::max(seen, least) / 2, along.y() * std::max(seen, least) / 2);
            leaf.zone = QRectF(middle.x() - boxWidth / 2, middle.y() - boxHeight / 2, boxWidth, boxHeight);
            up = std::max(up, -leaf.zone.top());
            down = std::max(down, leaf.zone.bottom());
            at.leaves.push_back(leaf);
        }
        at.y = above + up;
        for (LeafSpot& leaf : at.leaves) {
            leaf.base += QPointF(spot.axis, at.y);
            leaf.zone.translate(spot.axis, at.y);
        }
        at.band = QRectF(spot.column.left(), at.y - up, columnWidth_, up + down);
        above = at.band.bottom() + gapHeight * zoom_;
    }
    if (!spot.tiers.empty())
        spot.tip = spot.tiers.front().y;
    const double tail = std::clamp(inMillimetres(stem.tail) * tailPerMillimetre, leastTail, mostTail) * zoom_;
    spot.foot = spot.tiers.empty() ? spot.tip + 2 * least + tail : spot.tiers.back().band.bottom() + tail;
}

int BoardLayout::indexOf(StemId id) const {
    const auto it = std::find_if(stems_.begin(), stems_.end(), [&](const StemSpot& s) { return s.id == id; });
    return it == stems_.end() ? -1 : static_cast<int>(it - stems_.begin());
}

const StemSpot* BoardLayout::find(StemId id) const {
    const int index = indexOf(id);
    return index < 0 ? nullptr : &stems_[static_cast<std::size_t>(index)];
}

Place BoardLayout::at(QPointF point) const {
    const auto index = static_cast<std::ptrdiff_t>(std::floor(point.x() / columnWidth_));
    if (index < 0 || index >= static_cast<std::ptrdiff_t>(stems_.size()) || point.y() < 0)
        return {};
    return inStem(stems_[static_cast<std::size_t>(index)], point);
}

Place BoardLayout::inStem(const StemSpot& spot, QPointF point) const {
    // The first tier whose band ends below the point.
    const auto it = std::partition_point(spot.tiers.begin(), spot.tiers.end(),
                                         [&](const TierSpot& t) { return t.band.bottom() <= point.y(); });
    const int tier = static_cast<int>(it - spot.tiers.begin());
    const double reach = look::target * zoom_;
    if (it == spot.tiers.end()) {
        const double end = spot.tiers.empty() ? spot.tip : spot.tiers.back().band.bottom();
        if (point.y() < end + reach * (spot.tiers.empty() ? 2 : 1))
            return Place::ofGap(spot.id, tier);
        if (point.y() < spot.foot && std::abs(point.x() - spot.axis) < reach)
            return Place::of(spot.id);
        return {};
    }
    if (point.y() < it->band.top()) {
        // Between bands; above the tip only near it.
        return Place::ofGap(spot.id, tier);
    }
    int best = -1;
    double nearest = 0;
    for (std::size_t s = 0; s < it->leaves.size(); ++s) {
        if (!it->leaves[s].zone.contains(point))
            continue;
        const QPointF off = point - it->leaves[s].zone.center();
        const double distance = std::hypot(off.x(), off.y());
        if (best < 0 || distance < nearest) {
            best = static_cast<int>(s);
            nearest = distance;
        }
    }
    if (best >= 0)
        return Place::of(SlotRef{spot.id, tier, best});
    // A gap is drawn narrower than a hand can hit, so beside the leaves it reaches into its tiers. The tiers'
    // numbers stay whole.
    const double reachIn = std::max(0.0, look::target - gapHeight) / 2 * zoom_;
    if (point.x() >= spot.column.left() + laneWidth_) {
        if (tier > 0 && point.y() < it->band.top() + reachIn)
            return Place::ofGap(spot.id, tier);
        if (it + 1 != spot.tiers.end() && point.y() >= it->band.bottom() - reachIn)
            return Place::ofGap(spot.id, tier + 1);
    }
    return Place::ofTier(spot.id, tier);
}

QRectF BoardLayout::gapRect(const StemSpot& spot, int index) const {
    const double least = look::target * zoom_;
    const auto i = static_cast<std::size_t>(index);
    double top = 0, bottom = 0;
    if (spot.tiers.empty()) {
        top = spot.tip;
        bottom = top + 2 * least;
    } else if (i == spot.tiers.size()) {
        top = spot.tiers.back().band.bottom();
        bottom = top + least;
    } else {
        bottom = spot.tiers[i].band.top();
        top = i == 0 ? bottom - topMargin * zoom_ : spot.tiers[i - 1].band.bottom();
    }
    return QRectF(spot.column.left() + laneWidth_, top, columnWidth_ - laneWidth_, bottom - top);
}

QRectF BoardLayout::rect(const Place& place) const {
    const StemSpot* spot = find(place.stem);
    if (!spot)
        return {};
    const auto tier = static_cast<std::size_t>(place.tier);
    const auto slot = static_cast<std::size_t>(place.slot);
    switch (place.sort) {
    case Place::Sort::slot:
        if (place.tier < 0 || tier >= spot->tiers.size() || place.slot < 0 ||
            slot >= spot->tiers[tier].leaves.size())
            return {};
        return spot->tiers[tier].leaves[slot].zone;
    case Place::Sort::tier:
        return place.tier < 0 || tier >= spot->tiers.size() ? QRectF() : spot->tiers[tier].band;
    case Place::Sort::gap:
        return place.tier < 0 || tier > spot->tiers.size() ? QRectF() : gapRect(*spot, place.tier);
    case Place::Sort::stem:
        return spot->column;
    default:
        return {};
    }
}

std::pair<int, int> BoardLayout::columnsIn(double left, double right) const {
    const int count = static_cast<int>(stems_.size());
    const int first = std::clamp(static_cast<int>(std::floor(left / columnWidth_)), 0, count);
    const int last = std::clamp(static_cast<int>(std::floor(right / columnWidth_)) + 1, first, count);
    return {first, last};
}

std::vector<SlotRef> BoardLayout::slotsIn(const QRectF& rect) const {
    std::vector<SlotRef> slots;
    const auto [first, last] = columnsIn(rect.left(), rect.right());
    for (int i = first; i < last; ++i) {
        const StemSpot& spot = stems_[static_cast<std::size_t>(i)];
        for (std::size_t t = 0; t < spot.tiers.size(); ++t) {
            if (!spot.tiers[t].band.intersects(rect))
                continue;
            for (std::size_t s = 0; s < spot.tiers[t].leaves.size(); ++s)
                // A leaf is caught when its middle is.
                if (rect.contains(spot.tiers[t].leaves[s].zone.center()))
                    slots.push_back({spot.id, static_cast<int>(t), static_cast<int>(s)});
        }
    }
    return slots;
}

} // namespace stemwright

#include "app/board/board_steps.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace stemwright {

namespace {

constexpr int tiersAPage = 5;
constexpr double level = 5; ///< pixels within which leaves lie side by side or above one another

int tiersOf(const StemSpot& spot) {
    return static_cast<int>(spot.tiers.size());
}

/// The slot of a tier that lies nearest to a point; a tier without slots is taken as a whole.
Place nearestIn(const StemSpot& spot, int tier, QPointF point) {
    const std::vector<LeafSpot>& leaves = spot.tiers[static_cast<std::size_t>(tier)].leaves;
    if (leaves.empty())
        return Place::ofTier(spot.id, tier);
    const auto off = [&](const LeafSpot& leaf) {
        const QPointF d = leaf.zone.center() - point;
        return std::hypot(d.x(), d.y());
    };
    const auto it = std::min_element(leaves.begin(), leaves.end(),
                                     [&](const LeafSpot& a, const LeafSpot& b) { return off(a) < off(b); });
    return Place::of(SlotRef{spot.id, tier, static_cast<int>(it - leaves.begin())});
}

/// The leaf of the same tier that lies next in a direction.
std::optional<Place> beside(const StemSpot& spot, const Place& from, QPointF direction) {
    const std::vector<LeafSpot>& leaves = spot.tiers[static_cast<std::size_t>(from.tier)].leaves;
    const QPointF here = leaves[static_cast<std::size_t>(from.slot)].zone.center();
    std::optional<Place> best;
    double nearest = 0;
    for (std::size_t s = 0; s < leaves.size(); ++s) {
        const QPointF d = leaves[s].zone.center() - here;
        const double ahead = QPointF::dotProduct(d, direction);
        const double aside = std::abs(QPointF::dotProduct(d, QPointF(direction.y(), direction.x())));
        if (ahead <= level || aside > ahead)
            continue;
        if (!best || ahead < nearest) {
            nearest = ahead;
            best = Place::of(SlotRef{from.stem, from.tier, static_cast<int>(s)});
        }
    }
    return best;
}

/// The next of a whorl's leaves from left to right: by their directions alone some would never be met.
std::optional<Place> alongWhorl(const StemSpot& spot, const Place& from, int by) {
    const std::vector<LeafSpot>& leaves = spot.tiers[static_cast<std::size_t>(from.tier)].leaves;
    std::vector<std::size_t> order(leaves.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const QPointF p = leaves[a].zone.center(), q = leaves[b].zone.center();
        return std::pair(std::lround(p.x()), std::lround(p.y())) <
               std::pair(std::lround(q.x()), std::lround(q.y()));
    });
    const auto here =
        std::find(order.begin(), order.end(), static_cast<std::size_t>(from.slot)) - order.begin() + by;
    if (here < 0 || here >= std::ssize(order))
        return std::nullopt;
    return Place::of(SlotRef{from.stem, from.tier, static_cast<int>(order[static_cast<std::size_t>(here)])});
}

Place upOrDown(const Place& from, int by, const StemSpot& spot, const BoardLayout& layout, bool gaps) {
    const QPointF here = layout.rect(from).center();
    if (from.sort == Place::Sort::stem)
        return by < 0 || spot.tiers.empty() ? (gaps && by > 0 ? Place::ofGap(spot.id, 0) : from)
                                            : nearestIn(spot, 0, QPointF(here.x(), 0));
    if (from.sort == Place::Sort::gap) {
        const int tier = by > 0 ? from.tier : from.tier - 1;
        if (tier < 0)
            return from;
        return tier < tiersOf(spot) ? nearestIn(spot, tier, QPointF(here.x(), here.y())) : from;
    }
    if (from.onSlot())
        if (const auto next = beside(spot, from, QPointF(0, by)))
            return *next;
    if (gaps)
        return Place::ofGap(spot.id, by > 0 ? from.tier + 1 : from.tier);
    const int tier = from.tier + by;
    if (tier < 0)
        return Place::of(spot.id);
    if (tier >= tiersOf(spot))
        return from;
    const double y = by > 0 ? -1e6 : 1e6; // coming from above, the upper of two leaves is met first
    const Place near = nearestIn(spot, tier, here);
    const Place edge = nearestIn(spot, tier, QPointF(here.x(), y));
    return std::abs(layout.rect(near).center().x() - layout.rect(edge).center().x()) < level ? edge : near;
}

Place onStem(const StemSpot& spot, const Place& like, QPointF near, const BoardLayout& layout, bool gaps) {
    if (like.sort == Place::Sort::stem)
        return Place::of(spot.id);
    if (like.sort == Place::Sort::gap)
        return Place::ofGap(spot.id, std::min(like.tier, tiersOf(spot)));
    if (spot.tiers.empty())
        return gaps ? Place::ofGap(spot.id, 0) : Place::of(spot.id);
    const double height = layout.rect(like).center().y();
    int best = 0;
    for (int t = 1; t < tiersOf(spot); ++t)
        if (std::abs(spot.tiers[static_cast<std::size_t>(t)].band.center().y() - height) <
            std::abs(spot.tiers[static_cast<std::size_t>(best)].band.center().y() - height))
            best = t;
    return nearestIn(spot, best, near);
}

Place sideways(const Place& from, int by, const BoardLayout& layout, const BoardTray& tray, bool gaps) {
    const int index = layout.indexOf(from.stem);
    const StemSpot& spot = layout.stems()[static_cast<std::size_t>(index)];
    if (from.onSlot()) {
        const bool whorl = spot.tiers[static_cast<std::size_t>(from.tier)].leaves.size() > 2;
        if (const auto next = whorl ? alongWhorl(spot, from, by) : beside(spot, from, QPointF(by, 0)))
            return *next;
    }
    const int other = index + by;
    const QRectF here = layout.rect(from);
    if (other < 0) {
        const Leaf line = tray.nearest(static_cast<int>(here.center().y()));
        return line.kind ? Place::of(line) : from;
    }
    if (other >= static_cast<int>(layout.stems().size()))
        return from;
    const StemSpot& next = layout.stems()[static_cast<std::size_t>(other)];
    const QPointF near(by > 0 ? next.column.left() : next.column.right(), here.center().y());
    return onStem(next, from, near, layout, gaps);
}

} // namespace

Place firstPlace(const BoardLayout& layout, const BoardTray& tray) {
    for (const StemSpot& spot : layout.stems())
        if (!spot.tiers.empty())
            return nearestIn(spot, 0, QPointF(spot.column.left(), 0));
    if (!layout.stems().empty())
        return Place::of(layout.stems().front().id);
    const Leaf line = tray.nearest(0);
    return line.kind ? Place::of(line) : Place{};
}

Place stepFrom(const Place& from, Qt::Key key, const BoardLayout& layout, const BoardTray& tray, bool gaps) {
    if (from.sort == Place::Sort::paper)
        return firstPlace(layout, tray);
    if (from.onTray()) {
        switch (key) {
        case Qt::Key_Up:
            return Place::of(tray.next(from.leaf, -1));
        case Qt::Key_Down:
            return Place::of(tray.next(from.leaf, 1));
        case Qt::Key_PageUp:
        case Qt::Key_Home:
            return Place::of(tray.next(from.leaf, -1000000));
        case Qt::Key_PageDown:
        case Qt::Key_End:
            return Place::of(tray.next(from.leaf, 1000000));
        case Qt::Key_Right: {
            if (layout.stems().empty())
                return from;
            const StemSpot& first = layout.stems().front();
            if (first.tiers.empty())
                return gaps ? Place::ofGap(first.id, 0) : Place::of(first.id);
            const double y = tray.rect(from.leaf).center().y();
            int best = 0;
            for (int t = 1; t < tiersOf(first); ++t)
                if (std::abs(first.tiers[static_cast<std::size_t>(t)].y - y) <
                    std::abs(first.tiers[static_cast<std::size_t>(best)].y - y))
                    best = t;
            return nearestIn(first, best, QPointF(first.column.left(), y));
        }
        default:
            return from;
        }
    }
    const StemSpot* spot = layout.find(from.stem);
    if (!spot)
        return firstPlace(layout, tray);
    const QPointF here = layout.rect(from).center();
    switch (key) {
    case Qt::Key_Up:
        return upOrDown(from, -1, *spot, layout, gaps);
    case Qt::Key_Down:
        return upOrDown(from, 1, *spot, layout, gaps);
    case Qt::Key_Left:
        return sideways(from, -1, layout, tray, gaps);
    case Qt::Key_Right:
        return sideways(from, 1, layout, tray, gaps);
    case Qt::Key_Home:
        return spot->tiers.empty() ? from : nearestIn(*spot, 0, here);
    case Qt::Key_End:
        return spot->tiers.empty() ? from : nearestIn(*spot, tiersOf(*spot) - 1, here);
    case Qt::Key_PageUp:
    case Qt::Key_PageDown: {
        if (spot->tiers.empty())
            return from;
        const int by = key == Qt::Key_PageUp ? -tiersAPage : tiersAPage;
        const int tier = std::clamp(std::max(from.tier, 0) + by, 0, tiersOf(*spot) - 1);
        const double y = spot->tiers[static_cast<std::size_t>(tier)].y;
        return nearestIn(*spot, tier, QPointF(here.x(), y));
    }
    default:
        return from;
    }
}

} // namespace stemwright

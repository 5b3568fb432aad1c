#include "app/board/board_offer.h"

#include "app/look.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace stemwright {

namespace {

/// More arrows than this are a tangle; the frames still say what changes.
constexpr std::size_t mostArrows = 24;

using Origin = std::pair<StemId, int>; ///< where a tier stood before; index −1 for one that is new
using Trace = std::map<StemId, std::vector<Origin>>;

/// Follows the tiers through an edit.
struct Tracer {
    Trace trace;
    std::set<Origin> turned, closed, moved;
    std::vector<std::pair<SlotRef, SlotRef>> swaps;

    std::optional<SlotRef> origin(SlotRef at) const {
        const auto it = trace.find(at.stem);
        if (it == trace.end() || at.tier < 0 || static_cast<std::size_t>(at.tier) >= it->second.size())
            return std::nullopt;
        const Origin from = it->second[static_cast<std::size_t>(at.tier)];
        if (from.second < 0)
            return std::nullopt;
        return SlotRef{from.first, from.second, at.slot};
    }

    void operator()(const Batch& batch) {
        for (const Edit& edit : batch.edits)
            std::visit(*this, edit.what);
    }
    void operator()(const SwapSlots& e) {
        const auto a = origin(e.a), b = origin(e.b);
        if (a && b)
            swaps.emplace_back(*a, *b);
    }
    void operator()(const OpenTier& e) {
        std::vector<Origin>& tiers = trace[e.stem];
        tiers.insert(tiers.begin() + e.index, Origin{e.stem, -1});
    }
    void operator()(const CloseTier& e) {
        std::vector<Origin>& tiers = trace[e.stem];
        closed.insert(tiers[static_cast<std::size_t>(e.index)]);
        tiers.erase(tiers.begin() + e.index);
    }
    void operator()(const MoveTiers& e) {
        std::vector<Origin>& from = trace[e.from];
        const std::vector<Origin> run(from.begin() + e.index, from.begin() + e.index + e.count);
        from.erase(from.begin() + e.index, from.begin() + e.index + e.count);
        std::vector<Origin>& to = trace[e.to];
        to.insert(to.begin() + e.toIndex, run.begin(), run.end());
        moved.insert(run.begin(), run.end());
    }
    void operator()(const TurnTier& e) {
        const std::vector<Origin>& tiers = trace[e.stem];
        turned.insert(tiers[static_cast<std::size_t>(e.index)]);
    }
    template <class Other> void operator()(const Other&) {}
};

void paintArrow(QPainter& painter, QPointF from, QPointF to, bool bothWays) {
    const QPointF way = to - from;
    const double length = std::hypot(way.x(), way.y());
    if (length < 12)
        return;
    const QPointF side(-way.y() / length, way.x() / length);
    const QPointF bend = (from + to) / 2 + side * std::min(36.0, length * 0.18);
    QPainterPath path(from);
    path.quadTo(bend, to);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look::paper, 4.2, Qt::SolidLine, Qt::RoundCap));
    painter.drawPath(path);
    painter.setPen(QPen(look::accent, 1.8, Qt::SolidLine, Qt::RoundCap));
    painter.drawPath(path);
    const auto head = [&](QPointF at, QPointF before) {
        const QPointF back = before - at;
        const double norm = std::max(std::hypot(back.x(), back.y()), 1e-6);
        const QPointF u = back / norm, v(-u.y(), u.x());
        QPolygonF point;
        point << at << at + u * 8 + v * 4 << at + u * 8 - v * 4;
        painter.setPen(Qt::NoPen);
        painter.setBrush(look::accent);
        painter.drawPolygon(point);
    };
    head(to, bend);
    if (bothWays)
        head(from, bend);
}

} // namespace

void BoardOffer::clear() {
    slots_.clear();
    tiers_.clear();
    gaps_.clear();
    swaps_.clear();
    moves_.clear();
}

void BoardOffer::show(const Plan& before, const Edit& edit) {
    clear();
    Plan after = before;
    if (!apply(after, edit))
        return;
    Tracer tracer;
    for (const Stem& stem : before.stems) {
        std::vector<Origin>& tiers = tracer.trace[stem.id];
        for (int t = 0; t < static_cast<int>(stem.tiers.size()); ++t)
            tiers.emplace_back(stem.id, t);
    }
    std::visit(tracer, edit.what);
    for (const Stem& stem : before.stems) {
        const Stem* now = find(after, stem.id);
        if (!now)
            continue;
        const std::vector<Origin>& tiers = tracer.trace[stem.id];
        int gap = 0; // below the last tier that stays where it is
        for (std::size_t t = 0; t < tiers.size() && t < now->tiers.size(); ++t) {
            const Origin from = tiers[t];
            if (from.second < 0) {
                gaps_.emplace_back(stem.id, gap);
                continue;
            }
            if (tracer.moved.contains(from))
                moves_.push_back({{from.first, from.second, 0}, {stem.id, gap}});
            else
                gap = from.second + 1;
            const Tier& was = find(before, from.first)->tiers[static_cast<std::size_t>(from.second)];
            for (std::size_t s = 0; s < was.slots.size() && s < now->tiers[t].slots.size(); ++s)
                if (!(was.slots[s].leaf == now->tiers[t].slots[s].leaf))
                    slots_.push_back(
                        {{from.first, from.second, static_cast<int>(s)}, now->tiers[t].slots[s].leaf});
        }
    }
    for (const Origin& at : tracer.turned)
        if (at.second >= 0 && !tracer.closed.contains(at))
            tiers_.push_back({at.first, at.second, TierMark::What::turned});
    for (const Origin& at : tracer.moved)
        if (at.second >= 0 && !tracer.closed.contains(at))
            tiers_.push_back({at.first, at.second, TierMark::What::moved});
    for (const Origin& at : tracer.closed)
        if (at.second >= 0)
            tiers_.push_back({at.first, at.second, TierMark::What::closed});
    if (tracer.swaps.size() <= mostArrows)
        swaps_ = std::move(tracer.swaps);
}

Place BoardOffer::first() const {
    if (!slots_.empty())
        return Place::of(slots_.front().at);
    if (!tiers_.empty())
        return Place::ofTier(tiers_.front().stem, tiers_.front().tier);
    if (!gaps_.empty())
        return Place::ofGap(gaps_.front().first, gaps_.front().second);
    return {};
}

void BoardOffer::paint(QPainter& painter, const Plan& before, const BoardLayout& layout,
                       BoardPainter& leaves) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const NewLeaf& slot : slots_) {
        const StemSpot* stem = layout.find(slot.at.stem);
        if (!stem || static_cast<std::size_t>(slot.at.tier) >= stem->tiers.size())
            continue;
        const LeafSpot& spot =
            stem->tiers[static_cast<std::size_t>(slot.at.tier)].leaves[static_cast<std::size_t>(slot.at.slot)];
        painter.setPen(Qt::NoPen);
        painter.setBrush(look::accentSoft);
        painter.drawRoundedRect(spot.zone, 7, 7);
        leaves.paintLeafAt(painter, before, spot, slot.leaf, layout.scale());
        paintFrame(painter, spot.zone, look::accent, Qt::DashLine);
    }
    for (const TierMark& tier : tiers_) {
        QRectF band = layout.rect(Place::ofTier(tier.stem, tier.tier));
        band.setLeft(band.left() + layout.laneWidth() - 2);
        paintFrame(painter, band, look::accent, Qt::DashLine);
        painter.setPen(QPen(look::accent, 1.8));
        painter.setBrush(Qt::NoBrush);
        if (tier.what == TierMark::What::turned) {
            const QRectF circle(band.right() - 17, band.center().y() - 7, 14, 14);
            painter.setBrush(look::paper);
            painter.drawArc(circle, 40 * 16, 280 * 16);
            const QPointF end = circle.center() + QPointF(7 * std::cos(0.7), -7 * std::sin(0.7));
            painter.drawLine(end, end + QPointF(1, -6));
            painter.drawLine(end, end + QPointF(-6, -1));
        } else if (tier.what == TierMark::What::closed) {
            painter.drawLine(band.topLeft() + QPointF(6, 6), band.bottomRight() - QPointF(6, 6));
        }
    }
    for (const auto& [stem, index] : gaps_) {
        const QRectF gap = layout.rect(Place::ofGap(stem, index));
        const QPointF at = gap.center();
        painter.setPen(QPen(look::paper, 2));
        painter.setBrush(look::accent);
        painter.drawEllipse(at, 9, 9);
        painter.setPen(QPen(look::paper, 2));
        painter.drawLine(at - QPointF(4, 0), at + QPointF(4, 0));
        painter.drawLine(at - QPointF(0, 4), at + QPointF(0, 4));
    }
    for (const auto& [a, b] : swaps_)
        paintArrow(painter, layout.rect(Place::of(a)).center(), layout.rect(Place::of(b)).center(), true);
    if (moves_.size() <= mostArrows)
        for (const auto& [from, to] : moves_)
            paintArrow(painter, layout.rect(Place::ofTier(from.stem, from.tier)).center(),
                       layout.rect(Place::ofGap(to.first, to.second)).center(), false);
    painter.restore();
}

} // namespace stemwright

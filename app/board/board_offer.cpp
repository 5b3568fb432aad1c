#include "app/board/board_offer.h"

#include "app/look.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace stemwright {

namespace {

/// More arrows than this are a tangle; then numbers say which leaf goes where.
constexpr std::size_t mostArrows = 24;

using Origin = std::pair<StemId, int>; ///< where a tier stood before; index −1 for one that is new
using Trace = std::map<StemId, std::vector<Origin>>;

/// Where what is in a tier's slots stood before; nothing for what comes from the tray or is empty.
using Contents = std::vector<std::optional<SlotRef>>;

/// Follows the tiers, and the leaves in them, through an edit.
struct Tracer {
    Trace trace;
    std::map<StemId, std::vector<Contents>> contents;
    std::set<Origin> turned, closed, moved;

    std::optional<SlotRef>* contentAt(SlotRef at) {
        const auto stem = contents.find(at.stem);
        if (stem == contents.end() || at.tier < 0 || static_cast<std::size_t>(at.tier) >= stem->second.size())
            return nullptr;
        Contents& tier = stem->second[static_cast<std::size_t>(at.tier)];
        return at.slot >= 0 && static_cast<std::size_t>(at.slot) < tier.size()
                   ? &tier[static_cast<std::size_t>(at.slot)]
                   : nullptr;
    }

    void operator()(const Batch& batch) {
        for (const Edit& edit : batch.edits)
            std::visit(*this, edit.what);
    }
    void operator()(const SwapSlots& e) {
        auto *a = contentAt(e.a), *b = contentAt(e.b);
        if (a && b)
            std::swap(*a, *b);
    }
    void operator()(const FillSlot& e) {
        if (auto* at = contentAt(e.at))
            at->reset();
    }
    void operator()(const OpenTier& e) {
        std::vector<Origin>& tiers = trace[e.stem];
        tiers.insert(tiers.begin() + e.index, Origin{e.stem, -1});
        std::vector<Contents>& own = contents[e.stem];
        own.insert(own.begin() + e.index, Contents(e.tier.slots.size()));
    }
    void operator()(const CloseTier& e) {
        std::vector<Origin>& tiers = trace[e.stem];
        closed.insert(tiers[static_cast<std::size_t>(e.index)]);
        tiers.erase(tiers.begin() + e.index);
        std::vector<Contents>& own = contents[e.stem];
        own.erase(own.begin() + e.index);
    }
    void operator()(const MoveTiers& e) {
        std::vector<Origin>& from = trace[e.from];
        const std::vector<Origin> run(from.begin() + e.index, from.begin() + e.index + e.count);
        from.erase(from.begin() + e.index, from.begin() + e.index + e.count);
        std::vector<Origin>& to = trace[e.to];
        to.insert(to.begin() + e.toIndex, run.begin(), run.end());
        moved.insert(run.begin(), run.end());
        std::vector<Contents>& out = contents[e.from];
        const std::vector<Contents> held(out.begin() + e.index, out.begin() + e.index + e.count);
        out.erase(out.begin() + e.index, out.begin() + e.index + e.count);
        std::vector<Contents>& in = contents[e.to];
        in.insert(in.begin() + e.toIndex, held.begin(), held.end());
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

/// A small mark at a place's corner.
void paintBadge(QPainter& painter, QPointF at, const QString& text, bool filled) {
    painter.setFont(look::font(look::Type::small));
    const double width = std::max(15.0, painter.fontMetrics().horizontalAdvance(text) + 6.0);
    const QRectF badge(at.x() - width / 2, at.y() - 7.5, width, 15);
    painter.setPen(QPen(look::accent, 1.2));
    painter.setBrush(filled ? look::accent : look::card);
    painter.drawRoundedRect(badge, 7.5, 7.5);
    painter.setPen(filled ? look::card : look::accent);
    painter.drawText(badge, Qt::AlignCenter, text);
}

} // namespace

void BoardOffer::paintTrips(QPainter& painter, const BoardLayout& layout) const {
    const auto rect = [&](SlotRef at) { return layout.rect(Place::of(at)); };
    // On a board that is filled from the tray a mark at every leaf says nothing.
    const auto filled = static_cast<std::size_t>(
        std::count_if(slots_.begin(), slots_.end(), [](const NewLeaf& slot) { return slot.fromTray; }));
    for (const NewLeaf& slot : slots_)
        if (slot.fromTray && filled <= mostArrows)
            paintBadge(painter, rect(slot.at).topRight() + QPointF(-3, 3), QStringLiteral("+"), true);
    if (trips_.size() <= mostArrows) {
        for (const Trip& trip : trips_)
            paintArrow(painter, rect(trip.from).center(), rect(trip.to).center(), trip.bothWays);
        return;
    }
    // The same number stands where a leaf leaves (pale) and where it arrives (dark).
    int number = 0;
    for (const Trip& trip : trips_) {
        const QString text = QString::number(++number);
        paintBadge(painter, rect(trip.to).topRight() + QPointF(-3, 3), text, true);
        paintBadge(painter,
                   trip.bothWays ? rect(trip.from).topRight() + QPointF(-3, 3)
                                 : rect(trip.from).bottomLeft() + QPointF(3, -3),
                   text, trip.bothWays);
    }
}

void BoardOffer::clear() {
    slots_.clear();
    tiers_.clear();
    gaps_.clear();
    trips_.clear();
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
        for (int t = 0; t < static_cast<int>(stem.tiers.size()); ++t) {
            tiers.emplace_back(stem.id, t);
            Contents& own = tracer.contents[stem.id].emplace_back();
            for (int s = 0; s < static_cast<int>(stem.tiers[static_cast<std::size_t>(t)].slots.size()); ++s)
                own.push_back(SlotRef{stem.id, t, s});
        }
    }
    std::visit(tracer, edit.what);
    std::vector<std::pair<SlotRef, SlotRef>> trips;
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
                if (const Leaf leaf = now->tiers[t].slots[s].leaf; !(was.slots[s].leaf == leaf)) {
                    const SlotRef here{from.first, from.second, static_cast<int>(s)};
                    const auto came = tracer.contents[stem.id][t][s];
                    slots_.push_back({here, leaf, leaf.mix && !came});
                    if (leaf.mix && came && !(*came == here))
                        trips.emplace_back(*came, here);
                }
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
    // Two leaves that change places share an arrow.
    const std::set<std::pair<SlotRef, SlotRef>> all(trips.begin(), trips.end());
    for (const auto& [from, to] : trips)
        if (const bool both = all.contains({to, from}); !both || from < to)
            trips_.push_back({from, to, both});
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
    paintTrips(painter, layout);
    if (moves_.size() <= mostArrows)
        for (const auto& [from, to] : moves_)
            paintArrow(painter, layout.rect(Place::ofTier(from.stem, from.tier)).center(),
                       layout.rect(Place::ofGap(to.first, to.second)).center(), false);
    painter.restore();
}

} // namespace stemwright

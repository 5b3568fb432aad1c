#include "app/bind/bind_picture.h"

#include "app/look.h"
#include "app/session.h"
#include "app/wording.h"
#include "core/figures/height.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double fromAbove = 32 * pi / 180; ///< how much she looks down on it, so that front and back differ
constexpr double leastShorten = 0.45;       ///< never so short that its colours cannot be told
constexpr double labelRoom = 44;            ///< px around the leaves for their codes
constexpr double mostScale = 26;            ///< px a millimetre
constexpr double insetSize = 168;           ///< px, of the view from above

QPointF pointing(double degrees, double length) {
    const double turn = degrees * pi / 180;
    return {std::sin(turn) * length, -std::cos(turn) * length};
}

KindForm formOf(const Plan& plan, KindId id) {
    const Kind* kind = stemwright::find(plan, id);
    return kind ? static_cast<const KindForm&>(*kind) : KindForm{};
}

} // namespace

BindPicture::BindPicture(Session& session, QWidget* parent) : QWidget(parent), session_(session) {
    setObjectName(QStringLiteral("bindPicture"));
    setAccessibleName(tr("The tier in her hands"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void BindPicture::setStep(StemId stem, int tier, Length wrap) {
    stem_ = stem;
    tier_ = tier;
    wrap_ = wrap;
    update();
}

void BindPicture::setAsHeld(bool on) {
    asHeld_ = on;
    update();
}

Angle BindPicture::turned() const {
    const Stem* stem = stemwright::find(session_.plan(), stem_);
    if (!asHeld_ || !stem || tier_ < 0 || static_cast<std::size_t>(tier_) >= stem->tiers.size())
        return degrees(0);
    return stem->tiers[static_cast<std::size_t>(tier_)].turn;
}

BindPicture::Seen BindPicture::seen(const Stem& stem, int tier, std::size_t slot) const {
    const Tier& at = stem.tiers[static_cast<std::size_t>(tier)];
    const double turn = inDegrees(wrapped(slotTurn(at, slot) - turned(), degrees(360))) * pi / 180;
    const double angle = inDegrees(formOf(session_.plan(), at.slots[slot].leaf.kind).angle) * pi / 180;
    const double across = -std::sin(angle) * std::cos(turn);
    const double near = std::sin(angle) * std::sin(turn);
    const double rise = std::cos(angle) * std::cos(fromAbove) - near * std::sin(fromAbove);
    return {std::atan2(across, rise) * 180 / pi, std::max(std::hypot(across, rise), leastShorten),
            near < -1e-6};
}

double BindPicture::directionOf(int tier, int slot) const {
    const Stem* stem = stemwright::find(session_.plan(), stem_);
    return stem ? seen(*stem, tier, static_cast<std::size_t>(slot)).degrees : 0;
}

void BindPicture::paintStretch(QPainter& painter, double x, double from, double to, double thick,
                               bool wound) const {
    const QRectF stretch(x - thick / 2, from, thick, to - from);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look::stem);
    painter.drawRect(stretch);
    if (!wound)
        return;
    // Turns of the binding, as slanting lines.
    painter.save();
    painter.setClipRect(stretch, Qt::IntersectClip);
    painter.setPen(QPen(look::accentSoft, std::max(1.0, thick / 8)));
    for (double y = from - thick; y < to + thick; y += std::max(4.0, thick / 2.2))
        painter.drawLine(QPointF(x - thick / 2, y + thick / 3), QPointF(x + thick / 2, y));
    painter.restore();
}

void BindPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Stem* stem = stemwright::find(session_.plan(), stem_);
    if (!stem)
        return;
    if (tier_ >= 0 && static_cast<std::size_t>(tier_) < stem->tiers.size())
        paintTier(painter, *stem);
    else
        paintWhole(painter, *stem);
}

void BindPicture::paintTier(QPainter& painter, const Stem& stem) {
    const Plan& plan = session_.plan();
    const auto at = static_cast<std::size_t>(tier_);
    const Tier& tier = stem.tiers[at];
    QRectF around(-6, -6, 12, 12);
    for (std::size_t s = 0; s < tier.slots.size(); ++s) {
        const Seen view = seen(stem, tier_, s);
        LeafLook look = lookOf(plan, tier.slots[s].leaf);
        look.length *= view.shorten;
        QTransform turn;
        turn.rotate(view.degrees);
        around |= turn.map(leafOutline(look, 1)).boundingRect();
    }
    // Room for what was bound last above, and for the stretch to wrap below.
    const double below = std::max(inMillimetres(wrap_), 6.0);
    if (at > 0)
        around.setTop(std::min(around.top(), -inMillimetres(spacingBelow(stem, stem.tiers[at - 1])) - 3));
    around.setBottom(std::max(around.bottom(), std::min(below, 3 * around.height()) + 3));
    const double scale = std::clamp(
        std::min((width() - 2 * labelRoom) / around.width(), (height() - 2 * labelRoom) / around.height()),
        0.05, mostScale);
    const QPointF joint(width() / 2.0 - around.center().x() * scale,
                        height() / 2.0 - around.center().y() * scale);
    // What is above: outlines only, so that nothing but this tier has colours.
    double y = joint.y();
    const double thick = std::clamp(1.6 * scale, 4.0, 22.0);
    for (std::size_t t = at; t-- > 0 && y > -height();) {
        y -= inMillimetres(spacingBelow(stem, stem.tiers[t])) * scale;
        painter.setPen(QPen(look::faint, 1.4));
        painter.setBrush(Qt::NoBrush);
        for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s) {
            if (!stem.tiers[t].slots[s].filled())
                continue;
            const Seen view = seen(stem, static_cast<int>(t), s);
            LeafLook look = lookOf(plan, stem.tiers[t].slots[s].leaf);
            look.length *= view.shorten;
            QTransform turn;
            turn.translate(joint.x(), y);
            turn.rotate(view.degrees);
            painter.drawPath(turn.map(leafOutline(look, scale)));
        }
    }
    const auto leaves = [&](bool back) {
        for (std::size_t s = 0; s < tier.slots.size(); ++s) {
            const Seen view = seen(stem, tier_, s);
            if (view.back != back)
                continue;
            LeafLook look = lookOf(plan, tier.slots[s].leaf);
            look.length *= view.shorten;
            sprites_.draw(painter, look, joint, view.degrees, scale);
        }
    };
    leaves(true);
    if (at > 0)
        paintStretch(painter, joint.x(), y, joint.y(), thick * 0.9, true);
    paintStretch(painter, joint.x(), joint.y(), height(), thick, false);
    if (wrap_ > Length{}) {
        const double to = joint.y() + inMillimetres(wrap_) * scale;
        paintStretch(painter, joint.x(), joint.y(), std::min<double>(to, height()), thick, true);
    }
    leaves(false);
    paintLabels(painter, stem, joint, scale);
    if (wrap_ > Length{}) {
        QFont font = look::font(look::Type::title);
        painter.setFont(font);
        const QString said = tr("wrap %1").arg(sizeText(wrap_, plan.units));
        const QFontMetricsF metrics(font);
        const double to = std::min<double>(joint.y() + inMillimetres(wrap_) * scale, height());
        // A bracket beside the stretch that is wrapped now, clear of a leaf that hangs before it.
        const double x = besideFront(stem, joint, scale, thick, to);
        painter.setPen(QPen(look::accent, 2.4));
        painter.drawLine(QPointF(x, joint.y()), QPointF(x, to));
        for (const double end : {joint.y(), to})
            painter.drawLine(QPointF(x - 5, end), QPointF(x + 5, end));
        const QRectF plate(x + 10, (joint.y() + to) / 2 - metrics.height() / 2 - 2,
                           metrics.horizontalAdvance(said) + 12, metrics.height() + 4);
        painter.setPen(Qt::NoPen);
        painter.setBrush(look::accentSoft);
        painter.drawRoundedRect(plate, 5, 5);
        painter.setPen(look::ink);
        painter.drawText(plate, Qt::AlignCenter, said);
    }
    const double inset = std::min<double>(insetSize, std::min(width(), height()) * 0.34);
    paintFromAbove(painter, stem, QRectF(8, height() - inset - 8, inset, inset));
}

double BindPicture::besideFront(const Stem& stem, QPointF joint, double scale, double thick, double to) const {
    const Tier& tier = stem.tiers[static_cast<std::size_t>(tier_)];
    const double near = joint.x() + thick / 2 + 10;
    double x = near;
    const QRectF stretch(joint.x(), joint.y() + thick, near - joint.x(), std::max(1.0, to - joint.y() - thick));
    for (std::size_t s = 0; s < tier.slots.size(); ++s) {
        const Seen view = seen(stem, tier_, s);
        LeafLook look = lookOf(session_.plan(), tier.slots[s].leaf);
        look.length *= view.shorten;
        QTransform turn;
        turn.translate(joint.x(), joint.y());
        turn.rotate(view.degrees);
        // One that hangs down before the stem, not one that spreads to a side.
        const QPainterPath outline = turn.map(leafOutline(look, scale));
        if (!view.back && std::abs(std::abs(view.degrees) - 180) < 45 && outline.intersects(stretch))
            x = std::max(x, outline.boundingRect().right() + 12);
    }
    return std::min(x, std::max(near, width() - 140.0));
}

void BindPicture::paintLabels(QPainter& painter, const Stem& stem, QPointF joint, double scale) {
    const Plan& plan = session_.plan();
    const Tier& tier = stem.tiers[static_cast<std::size_t>(tier_)];
    QFont font = look::font(look::Type::title);
    font.setPointSizeF(font.pointSizeF() * 1.25);
    painter.setFont(font);
    const QFontMetricsF metrics(font);
    for (std::size_t s = 0; s < tier.slots.size(); ++s) {
        const Seen view = seen(stem, tier_, s);
        const Mix* mix = stemwright::find(plan, tier.slots[s].leaf.mix);
        const QString said = mix ? text(mix->code) : tr("empty");
        const double length =
            inMillimetres(formOf(plan, tier.slots[s].leaf.kind).length) * view.shorten * scale;
        const QPointF tip = joint + pointing(view.degrees, length + 22);
        QRectF plate(0, 0, metrics.horizontalAdvance(said) + 16, metrics.height() + 4);
        plate.moveCenter(tip);
        plate.moveLeft(std::clamp(plate.left(), 2.0, std::max(2.0, width() - plate.width() - 2)));
        plate.moveTop(std::clamp(plate.top(), 2.0, std::max(2.0, height() - plate.height() - 2)));
        painter.setPen(Qt::NoPen);
        painter.setBrush(look::night);
        painter.drawRoundedRect(plate, 6, 6);
        painter.setPen(look::onNight);
        painter.drawText(plate, Qt::AlignCenter, said);
    }
}

void BindPicture::paintFromAbove(QPainter& painter, const Stem& stem, const QRectF& room) {
    const Plan& plan = session_.plan();
    const Tier& tier = stem.tiers[static_cast<std::size_t>(tier_)];
    painter.setPen(QPen(look::line, 1.2));
    painter.setBrush(look::card);
    painter.drawRoundedRect(room, look::corner, look::corner);
    painter.setFont(look::font(look::Type::small));
    painter.setPen(look::quiet);
    const double line = QFontMetricsF(painter.font()).height();
    painter.drawText(room.adjusted(4, 3, -4, 0), Qt::AlignTop | Qt::AlignHCenter, tr("from above"));
    painter.drawText(room.adjusted(4, 0, -4, -3), Qt::AlignBottom | Qt::AlignHCenter, tr("towards you"));
    const QRectF ground = room.adjusted(8, line + 6, -8, -line - 6);
    double longest = 1;
    for (const Slot& slot : tier.slots)
        longest = std::max(longest, inMillimetres(formOf(plan, slot.leaf.kind).length));
    const double scale = (std::min(ground.width(), ground.height()) / 2 - 2) / (longest * 1.06);
    for (std::size_t s = 0; s < tier.slots.size(); ++s) {
        const double turn = inDegrees(slotTurn(tier, s) - turned());
        const double way = -90 - turn;
        sprites_.draw(painter, lookOf(plan, tier.slots[s].leaf), ground.center() + pointing(way, 4), way,
                      scale);
    }
    painter.setPen(QPen(look::card, 1.5));
    painter.setBrush(look::stem);
    painter.drawEllipse(ground.center(), 5, 5);
}

void BindPicture::paintWhole(QPainter& painter, const Stem& stem) {
    const Plan& plan = session_.plan();
    QRectF around(-4, -4, 8, 8);
    double y = 0;
    std::vector<double> joints;
    for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
        joints.push_back(y);
        for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s) {
            const Seen view = seen(stem, static_cast<int>(t), s);
            LeafLook look = lookOf(plan, stem.tiers[t].slots[s].leaf);
            look.length *= view.shorten;
            QTransform turn;
            turn.translate(0, y);
            turn.rotate(view.degrees);
            around |= turn.map(leafOutline(look, 1)).boundingRect();
        }
        if (t + 1 < stem.tiers.size())
            y += inMillimetres(spacingBelow(stem, stem.tiers[t]));
    }
    const double base = y, foot = y + inMillimetres(stem.tail);
    around.setBottom(std::max(around.bottom(), foot + 2));
    const double scale = std::clamp(
        std::min((width() - 24) / around.width(), (height() - 24) / around.height()), 0.01, mostScale);
    const QPointF origin(width() / 2.0 - around.center().x() * scale,
                         height() / 2.0 - around.center().y() * scale);
    const auto leaves = [&](bool back) {
        for (std::size_t t = 0; t < stem.tiers.size(); ++t)
            for (std::size_t s = 0; s < stem.tiers[t].slots.size(); ++s) {
                const Seen view = seen(stem, static_cast<int>(t), s);
                if (view.back != back || !stem.tiers[t].slots[s].filled())
                    continue;
                LeafLook look = lookOf(plan, stem.tiers[t].slots[s].leaf);
                look.length *= view.shorten;
                sprites_.draw(painter, look, origin + QPointF(0, joints[t] * scale), view.degrees, scale);
            }
    };
    const double thick = std::clamp(1.8 * scale, 2.5, 16.0);
    leaves(true);
    const bool tail = wrap_ > Length{};
    paintStretch(painter, origin.x(), origin.y(), origin.y() + base * scale, thick, false);
    paintStretch(painter, origin.x(), origin.y() + base * scale, origin.y() + foot * scale, thick, tail);
    leaves(false);
    if (!tail)
        return;
    painter.setPen(QPen(look::accent, 2.4));
    const double x = origin.x() + thick / 2 + 8;
    painter.drawLine(QPointF(x, origin.y() + base * scale), QPointF(x, origin.y() + foot * scale));
    painter.setFont(look::font(look::Type::title));
    painter.setPen(look::accent);
    painter.drawText(QPointF(x + 8, origin.y() + (base + foot) / 2 * scale + 5),
                     sizeText(stem.tail, plan.units));
}

} // namespace stemwright

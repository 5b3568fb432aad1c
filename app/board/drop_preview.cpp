#include "app/board/drop_preview.h"

#include "app/messages.h"
#include "app/wording.h"

#include <QCoreApplication>

#include <algorithm>

namespace stemwright {

namespace {

/// More stems than this are told as a number.
constexpr int mostStems = 4;

QString tr(const char* source) {
    return QCoreApplication::translate("Board", source);
}

/// The gap's place, to stand after "at" or "to".
QString gapText(const Plan& plan, const IntoGap& gap) {
    const Stem* stem = find(plan, gap.stem);
    const QString name = nameText(plan, gap.stem);
    if (!stem || stem->tiers.empty())
        return name;
    if (gap.index <= 0)
        return tr("the tip of %1").arg(name);
    if (static_cast<std::size_t>(gap.index) >= stem->tiers.size())
        return tr("the foot of %1").arg(name);
    return tr("%1, above tier %2").arg(name).arg(gap.index + 1);
}

QString tiersText(const Plan& plan, StemId stem, int first, int count) {
    if (count == 1)
        return tr("%1, tier %2").arg(nameText(plan, stem)).arg(first + 1);
    return tr("%1, tiers %2 to %3").arg(nameText(plan, stem)).arg(first + 1).arg(first + count);
}

QString titleOf(const Plan& plan, const Held& held, const Target& target) {
    const auto* slot = std::get_if<OntoSlot>(&target);
    const auto* gap = std::get_if<IntoGap>(&target);
    if (const auto* leaves = std::get_if<HeldLeaves>(&held)) {
        const auto count = static_cast<int>(leaves->from.size());
        if (slot) {
            const bool filled = find(plan, slot->at) && find(plan, slot->at)->filled();
            const QString where = placeText(plan, slot->at);
            if (count == 1)
                return filled ? tr("swap with %1").arg(where) : tr("move to %1").arg(where);
            return tr("%1 leaves to %2").arg(count).arg(where);
        }
        if (gap)
            return tr("open a tier at %1").arg(gapText(plan, *gap));
        return count == 1 ? tr("back to the tray") : tr("%1 leaves back to the tray").arg(count);
    }
    if (const auto* tiers = std::get_if<HeldTiers>(&held)) {
        if (slot)
            return tr("swap with %1")
                .arg(tiersText(plan, slot->at.stem, slot->at.tier - tiers->grabbed, tiers->count));
        if (gap)
            return tr("move to %1").arg(gapText(plan, *gap));
        return tiers->count == 1 ? tr("the tier back to the tray")
                                 : tr("%1 tiers back to the tray").arg(tiers->count);
    }
    if (slot) {
        const Slot* there = find(plan, slot->at);
        const QString where = placeText(plan, slot->at);
        return there && there->filled()
                   ? tr("instead of %1, which goes back to the tray").arg(slotText(plan, *there))
                   : tr("fill %1").arg(where);
    }
    return gap ? tr("open a tier at %1").arg(gapText(plan, *gap)) : tr("back to the tray");
}

DropPreview::Figure figure(const QString& pattern, const QString& before, const QString& after) {
    const bool changes = before != after;
    return {pattern.arg(changes ? QStringLiteral("%1 → %2").arg(before, after) : after), changes, false};
}

/// Of a figure that is better the less it is.
DropPreview::Figure less(const QString& pattern, double before, double after, QString (*said)(double)) {
    DropPreview::Figure all = figure(pattern, said(before), said(after));
    all.better = all.changes && after < before;
    return all;
}

} // namespace

QString DropPreview::Line::figures() const {
    QStringList all;
    for (const Figure& part : parts)
        all << part.text;
    return all.join(QStringLiteral(" · "));
}

QString DropPreview::text() const {
    QString all = title;
    if (!warning.isEmpty())
        all += QLatin1Char('\n') + warning;
    for (const Line& line : lines)
        all += line.who.isEmpty() ? QStringLiteral("\n") + line.figures()
                                  : QStringLiteral("\n%1 %2").arg(line.who, line.figures());
    return all;
}

QVector<DropPreview::Line> whatIfLines(const Plan& plan, const WhatIf& whatIf) {
    QVector<DropPreview::Line> lines;
    const int count = static_cast<int>(whatIf.stems.size());
    // One more is told as itself rather than as "1 more".
    const int shown = count == mostStems + 1 ? count : std::min(count, mostStems);
    const auto size = [&](Length length) { return sizeText(length, plan.units); };
    for (int i = 0; i < shown; ++i) {
        const StemWhatIf& stem = whatIf.stems[static_cast<std::size_t>(i)];
        lines.push_back({nameText(plan, stem.stem),
                         {less(tr("drift %1"), stem.driftBefore, stem.driftAfter, driftText),
                          figure(tr("height %1"), size(stem.heightBefore), size(stem.heightAfter))}});
    }
    if (count > shown)
        lines.push_back({QString(), {{tr("and %1 more stems").arg(count - shown), false}}});
    const auto faults = [](double all) { return countText(static_cast<std::int64_t>(all)); };
    const auto range = [&](Length shortest, Length tallest) {
        return tr("%1 to %2").arg(size(shortest), size(tallest));
    };
    lines.push_back({tr("Pot"),
                     {less(tr("drift %1"), whatIf.potDriftBefore, whatIf.potDriftAfter, driftText),
                      figure(tr("heights %1"), range(whatIf.shortestBefore, whatIf.tallestBefore),
                             range(whatIf.shortestAfter, whatIf.tallestAfter))}});
    lines.push_back(
        {QString(),
         {less(tr("unevenness %1"), whatIf.potUnevennessBefore, whatIf.potUnevennessAfter, shareText)}});
    // Pairs and order are told where the drop touches them.
    DropPreview::Line order;
    if (whatIf.unmatchedBefore != whatIf.unmatchedAfter)
        order.parts.push_back(less(tr("unmatched pairs %1"), static_cast<double>(whatIf.unmatchedBefore),
                                   static_cast<double>(whatIf.unmatchedAfter), faults));
    if (whatIf.inversionsBefore != whatIf.inversionsAfter)
        order.parts.push_back(less(tr("against the order %1"), static_cast<double>(whatIf.inversionsBefore),
                                   static_cast<double>(whatIf.inversionsAfter), faults));
    if (!order.parts.isEmpty())
        lines.push_back(order);
    return lines;
}

std::optional<DropPreview> previewDrop(const Session& session, const Held& held, const Place& place) {
    const Plan& plan = session.plan();
    std::optional<Target> target = targetOf(plan, place);
    if (!target)
        return std::nullopt;
    // On the stem between a tier's leaves, a leaf goes to the side that it came from.
    if (place.sort == Place::Sort::tier)
        if (const auto* leaves = std::get_if<HeldLeaves>(&held)) {
            const auto slots = static_cast<int>(
                find(plan, place.stem)->tiers[static_cast<std::size_t>(place.tier)].slots.size());
            auto& at = std::get<OntoSlot>(*target).at;
            at.slot = std::clamp(leaves->from[leaves->grabbed].slot, 0, std::max(0, slots - 1));
        }
    DropPreview preview;
    preview.place = place;
    Result<Put> done = put(plan, held, *target);
    if (!done) {
        preview.title = sentence(done.problem());
        return preview;
    }
    const Result<WhatIf> whatIf = session.whatIf(done.value().edit);
    if (!whatIf) {
        preview.title = sentence(whatIf.problem());
        return preview;
    }
    preview.title = titleOf(plan, held, *target);
    preview.lines = whatIfLines(plan, whatIf.value());
    if (const std::vector<BoundTier> bound = boundTouched(plan, done.value().edit); !bound.empty())
        preview.warning = boundTiersWarning(plan, bound);
    preview.edit = std::move(done.value().edit);
    preview.landed = std::move(done.value().landed);
    return preview;
}

QString heldText(const Plan& plan, const Held& held) {
    if (const auto* leaves = std::get_if<HeldLeaves>(&held)) {
        if (leaves->from.size() != 1)
            return tr("%1 leaves").arg(leaves->from.size());
        const Slot* slot = find(plan, leaves->from.front());
        return slot ? slotText(plan, *slot) : QString();
    }
    if (const auto* tiers = std::get_if<HeldTiers>(&held))
        return tiersText(plan, tiers->stem, tiers->first, tiers->count);
    Slot slot;
    slot.leaf = std::get<HeldFromTray>(held).leaf;
    return slotText(plan, slot);
}

} // namespace stemwright

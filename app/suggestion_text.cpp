#include "app/suggestion_text.h"

#include "app/wording.h"

#include <QCoreApplication>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Suggestion", source);
}

Plan changed(Plan plan, const Edit& edit) {
    // An edit that cannot be made changes nothing.
    static_cast<void>(apply(plan, edit).ok());
    return plan;
}

const StemFigures* figuresOf(const Figures& all, StemId stem) {
    const auto at = std::find_if(all.stems.begin(), all.stems.end(),
                                 [&](const StemFigures& figures) { return figures.stem == stem; });
    return at == all.stems.end() ? nullptr : &*at;
}

double inThousandths(double value) {
    return std::round(value * 1000) / 1000;
}

} // namespace

BeforeAfter::BeforeAfter(const Plan& plan, const Edit& edit)
    : before(plan), after(changed(plan, edit)), figuresBefore(figures(before)), figuresAfter(figures(after)) {}

QString heightsText(const PotFigures& pot, const Units& units) {
    if (pot.stems == 0)
        return tr("none");
    return tr("%1 to %2").arg(sizeText(pot.shortest, units), sizeText(pot.tallest, units));
}

QString beforeAfterText(const QString& before, const QString& after) {
    return before == after ? after : QStringLiteral("%1 → %2").arg(before, after);
}

QStringList potLines(const BeforeAfter& plans) {
    const PotFigures& a = plans.figuresBefore.pot;
    const PotFigures& b = plans.figuresAfter.pot;
    QStringList lines;
    lines << tr("Unevenness %1").arg(beforeAfterText(shareText(a.unevenness), shareText(b.unevenness)));
    lines << tr("Pot drift %1").arg(beforeAfterText(driftText(a.drift), driftText(b.drift)));
    const Units& units = plans.before.units;
    if (const QString was = heightsText(a, units), now = heightsText(b, units); was != now)
        lines << tr("Heights %1").arg(beforeAfterText(was, now));
    if (a.nearTwins != b.nearTwins)
        lines << tr("Near twins %1").arg(beforeAfterText(countText(a.nearTwins), countText(b.nearTwins)));
    if (a.inTray != b.inTray)
        lines << tr("In the tray %1").arg(beforeAfterText(countText(a.inTray), countText(b.inTray)));
    return lines;
}

QString proofText(const Suggestion& found) {
    if (!found.proved) {
        if (found.closeAfter > found.closeBound)
            return tr("Not proved: perhaps fewer than %1 neighbours in height need be as close as that.")
                .arg(countText(found.closeAfter));
        if (found.unmatchedAfter > found.unmatchedBound && found.bound <= 0)
            return tr("Not proved the best: %1 unmatched pairs at least are proved.")
                .arg(countText(found.unmatchedBound));
        return tr("Not proved the best: nothing below %1 is possible, so it is %2 off at most.")
            .arg(shareText(found.bound), shareText(std::max(0.0, found.after - found.bound)));
    }
    switch (found.aim) {
    case Aim::unevenness:
        return tr("Proved: these leaves allow no less unevenness.");
    case Aim::pairs:
        return tr("Proved: no fewer unmatched pairs, and with so few no less unevenness.");
    case Aim::order:
        return tr("Proved: no stem's leaves allow fewer steps against the colour order.");
    case Aim::pairsOrder:
        return tr("Proved: no fewer unmatched pairs on any stem, and with so few no fewer steps against the "
                  "colour order.");
    case Aim::heights:
        return tr("Proved: these ranges allow no evener heights.");
    case Aim::places:
        return tr("Proved: no other order on even places is better.");
    case Aim::several:
        return tr("Proved: each step is the best that the steps before it allow.");
    }
    return {};
}

QStringList suggestionLines(const BeforeAfter& plans, const Suggestion& found) {
    QStringList lines = potLines(plans);
    if (found.unmatchedBefore || found.unmatchedAfter)
        lines.insert(
            1, tr("Unmatched pairs %1")
                   .arg(beforeAfterText(countText(found.unmatchedBefore), countText(found.unmatchedAfter))));
    if (found.inversionsBefore || found.inversionsAfter)
        lines << tr("Steps against the colour order %1")
                     .arg(beforeAfterText(countText(found.inversionsBefore), countText(found.inversionsAfter)));
    // Where no stem stood there was nothing to be close to.
    const bool stood = !plans.before.stems.empty();
    if ((stood && found.closeBefore) || found.closeAfter)
        lines << tr("Neighbours closer in height than asked %1")
                     .arg(stood ? beforeAfterText(countText(found.closeBefore), countText(found.closeAfter))
                                : countText(found.closeAfter));
    if (found.moved || found.filled)
        lines << tr("Leaves that change place %1, empty places filled %2")
                     .arg(countText(found.moved), countText(found.filled));
    lines << proofText(found);
    for (const Shortage& shortage : found.shortages)
        lines << tr("%1 places stay empty for want of %2 leaves.")
                     .arg(countText(shortage.emptySlots), nameText(plans.after, shortage.kind));
    return lines;
}

std::vector<StemChange> stemChanges(const BeforeAfter& plans) {
    std::vector<StemChange> changes;
    const Units& units = plans.before.units;
    for (const Stem& stem : plans.after.stems) {
        const StemFigures& now = *figuresOf(plans.figuresAfter, stem.id);
        const StemFigures* known = figuresOf(plans.figuresBefore, stem.id);
        const StemFigures was = known ? *known : StemFigures{};
        StemChange change;
        change.stem = stem.id;
        change.name = lineText(stem.name);
        change.height =
            beforeAfterText(known ? sizeText(was.height, units) : tr("new"), sizeText(now.height, units));
        change.leaves = beforeAfterText(countText(was.leaves), countText(now.leaves));
        change.drift = beforeAfterText(driftText(was.drift), driftText(now.drift));
        change.unevenness = beforeAfterText(shareText(was.unevenness), shareText(now.unevenness));
        const Stem* before = find(plans.before, stem.id);
        change.heightDiffers = !known || was.height != now.height;
        change.differs = !before || !(*before == stem);
        changes.push_back(std::move(change));
    }
    return changes;
}

std::string suggestionJson(const BeforeAfter& plans, const Suggestion& s, double milliseconds) {
    nlohmann::ordered_json out{{"unevenness_before", s.before},
                               {"unevenness_after", s.after},
                               {"unevenness_bound", s.bound},
                               {"proved", s.proved},
                               {"stopped", s.stopped},
                               {"drift_before", inThousandths(plans.figuresBefore.pot.drift)},
                               {"drift_after", inThousandths(plans.figuresAfter.pot.drift)},
                               {"unmatched_pairs_before", s.unmatchedBefore},
                               {"unmatched_pairs_after", s.unmatchedAfter},
                               {"unmatched_pairs_bound", s.unmatchedBound},
                               {"inversions_before", s.inversionsBefore},
                               {"inversions_after", s.inversionsAfter},
                               {"inversions_bound", s.inversionsBound}};
    if (s.differenceAsked) {
        out["close_in_height_before"] = s.closeBefore;
        out["close_in_height_after"] = s.closeAfter;
        out["close_in_height_bound"] = s.closeBound;
    }
    out["moved"] = s.moved;
    out["filled"] = s.filled;
    nlohmann::ordered_json& shortages = out["empty_places"] = nlohmann::ordered_json::array();
    for (const Shortage& shortage : s.shortages)
        shortages.push_back(
            {{"kind", find(plans.after, shortage.kind)->name}, {"places", shortage.emptySlots}});
    nlohmann::ordered_json& stems = out["stems"] = nlohmann::ordered_json::array();
    for (const Stem& stem : plans.after.stems) {
        const StemFigures& now = *figuresOf(plans.figuresAfter, stem.id);
        const StemFigures* was = figuresOf(plans.figuresBefore, stem.id);
        nlohmann::ordered_json entry{{"name", stem.name}};
        const auto pair = [&](const char* key, auto value) {
            entry[std::string(key) + "_before"] =
                was ? nlohmann::ordered_json(value(*was)) : nlohmann::ordered_json(nullptr);
            entry[std::string(key) + "_after"] = value(now);
        };
        pair("leaves", [](const StemFigures& f) { return f.leaves; });
        pair("tiers", [](const StemFigures& f) { return f.tiers; });
        pair("height_mm", [](const StemFigures& f) { return inThousandths(inMillimetres(f.height)); });
        pair("drift", [](const StemFigures& f) { return inThousandths(f.drift); });
        pair("unevenness", [](const StemFigures& f) { return inThousandths(f.unevenness); });
        stems.push_back(std::move(entry));
    }
    out["time_ms"] = milliseconds;
    return out.dump(2) + "\n";
}

} // namespace stemwright

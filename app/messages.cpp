#include "app/messages.h"

#include "app/explanations.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QStringList>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Messages", source);
}

/// The nth value, or a mark that something is missing: a sentence with a hole is still a sentence.
QString value(const std::vector<std::string>& values, std::size_t n) {
    return n < values.size() ? lineText(values[n]) : QStringLiteral("?");
}

/// The sorts of JSON values that problem.h names; anything else, such as a number, stands for itself.
QString sortOfValue(const QString& name) {
    static const std::pair<const char*, const char*> sorts[] = {
        {"object", QT_TRANSLATE_NOOP("Messages", "an object in braces")},
        {"list", QT_TRANSLATE_NOOP("Messages", "a list in brackets")},
        {"text", QT_TRANSLATE_NOOP("Messages", "a text in quotes")},
        {"number", QT_TRANSLATE_NOOP("Messages", "a number")},
        {"whole number", QT_TRANSLATE_NOOP("Messages", "a whole number")},
        {"true or false", QT_TRANSLATE_NOOP("Messages", "true or false")},
        {"nothing", QT_TRANSLATE_NOOP("Messages", "nothing (null)")},
    };
    for (const auto& [known, words] : sorts)
        if (name == QLatin1String(known))
            return tr(words);
    return name;
}

/// "0.32 mm in AWG, 0.38 mm in SWG, 0.41 mm in steel gauge".
QString gaugeInMillimetres(int number) {
    QStringList all;
    for (const GaugeSystem system : {GaugeSystem::awg, GaugeSystem::swg, GaugeSystem::steel})
        if (const auto diameter = diameterOf({system, number}))
            all << tr("%1 in %2").arg(wireText(*diameter, std::nullopt), systemText(system));
    return all.join(tr(", "));
}

QString bare(const Problem& problem) {
    const auto v = [&](std::size_t n) { return value(problem.values, n); };
    switch (problem.code) {
    case ProblemCode::notJson:
        return problem.values.empty() || problem.values[0].empty()
                   ? tr("This is not JSON: the text ends too soon.")
                   : tr("This is not JSON: “%1” does not belong here.").arg(v(0));
    case ProblemCode::notUtf8:
        return tr("The text is not UTF-8.");
    case ProblemCode::tooDeep:
        return tr("This is nested more than %1 levels deep, which no plan is.").arg(v(0));
    case ProblemCode::tooLarge:
        return tr("The text has %1 bytes; a plan has %2 at most.").arg(v(0), v(1));
    case ProblemCode::unknownKey:
        return tr("No edit has a key “%1”.").arg(v(0));
    case ProblemCode::duplicateKey:
        return tr("The key “%1” stands here twice.").arg(v(0));
    case ProblemCode::notAPlan:
        return tr("This is no Stemwright plan: its “format” is not “stemplan”.");
    case ProblemCode::newerVersion:
        return tr("This plan is of version %1, written by a newer Stemwright; this one knows versions up to "
                  "%2.")
            .arg(v(0), v(1));
    case ProblemCode::missingKey:
        return tr("“%1” is missing here.").arg(v(0));
    case ProblemCode::wrongType:
        return tr("Here must be %1, not %2.").arg(sortOfValue(v(0)), sortOfValue(v(1)));
    case ProblemCode::outOfRange:
        return tr("%1 is outside what is possible here, %2 to %3.").arg(v(0), v(1), v(2));
    case ProblemCode::unknownWord:
        return tr("“%1” is not one of: %2.").arg(v(0), v(1));
    case ProblemCode::duplicateId:
        return tr("%1 stands here a second time.").arg(v(0));
    case ProblemCode::noSuchId:
        return tr("There is no %1 %2 in this plan.").arg(v(0), v(1));
    case ProblemCode::tooMany:
        return tr("%1 are too many here: %2 is the most.").arg(v(0), v(1));
    case ProblemCode::badColour:
        return tr("“%1” is no colour; one is written #rrggbb.").arg(v(0));
    case ProblemCode::badDate:
        return tr("“%1” is no day of the calendar; one is written YYYY-MM-DD, such as 2025-01-31.").arg(v(0));
    case ProblemCode::overdrawnStock:
        return tr("%3 leaves of %1 in %2 stand on the stems, but the stock has only %4.")
            .arg(v(0), v(1), v(2), v(3));
    case ProblemCode::gaugeForMillimetres:
        return tr("A wire of %1 mm is as thick as a finger, so gauge %1 was probably meant: that is %2.")
            .arg(v(0), gaugeInMillimetres(v(0).toInt()));
    case ProblemCode::mixNotOfKind:
        return tr("The stock of %1 has no leaves in %2.").arg(v(0), v(1));
    case ProblemCode::noSuchStem:
        return tr("There is no such stem any more.");
    case ProblemCode::noSuchTier:
        return tr("%1 has no tier %2.").arg(v(0), v(1));
    case ProblemCode::noSuchSlot:
        return tr("Tier %2 of %1 has no place %3.").arg(v(0), v(1), v(2));
    case ProblemCode::noSuchPlace:
        return tr("There is no place %1 here; the last is %2.").arg(v(0), v(1));
    case ProblemCode::trayEmpty:
        return tr("The tray has no %1 leaf in %2 left.").arg(v(0), v(1));
    case ProblemCode::slotPinned:
        return tr("This place of %1, tier %2, is pinned: unpin it first.").arg(v(0), v(1));
    case ProblemCode::stemLocked:
        return tr("%1 is pinned: unpin the stem first.").arg(v(0));
    case ProblemCode::stillUsed:
        return tr("%1 cannot go while %2 uses it.").arg(v(0), v(1));
    case ProblemCode::ownInUse:
        if (v(2).isEmpty())
            return v(1) == u"pot" ? tr("%1 cannot go while the pot uses it.").arg(v(0))
                                  : tr("%1 cannot go while the binding uses it.").arg(v(0));
        return tr("%1 cannot go while %2 uses it.").arg(v(0), v(2));
    case ProblemCode::idTaken:
        return tr("There is a %1 %2 already.").arg(v(0), v(1));
    case ProblemCode::badRange:
        return v(1).toInt() > v(2).toInt()
                   ? tr("%1: %2 at least and %3 at most contradict each other. From %4 to %5 would do.")
                         .arg(v(0), v(1), v(2), v(4), v(5))
                   : tr("%1: tiers of %4 leaves make no number from %2 to %3. From %5 to %6 would do.")
                         .arg(v(0), v(1), v(2), v(3), v(4), v(5));
    case ProblemCode::rangeTooHigh:
        return tr("%1: the stems ask for %2 leaves at least and there are %3, which is %5 too few. At least %4 "
                  "a stem would do.")
            .arg(v(0), v(1), v(2), v(3), v(4));
    case ProblemCode::rangeTooLow:
        return tr("%1: there are %2 leaves to place and the stems take %3 at most, which leaves %5 over. At "
                  "most %4 a stem would do.")
            .arg(v(0), v(1), v(2), v(3), v(4));
    case ProblemCode::pinsBeyondRange:
        return tr("%1: its pinned and bound tiers hold %3 %2 leaves, and at most %4 are asked for. At most %3 "
                  "a stem would do.")
            .arg(v(0), v(1), v(2), v(3));
    case ProblemCode::rangeTwice:
        return tr("%1 has two ranges; one is enough.").arg(v(0));
    case ProblemCode::rangesCollide:
        return tr("No heights fit all these ranges and numbers of leaves at once.");
    case ProblemCode::mixedTiers:
        return tr("%1 has %2 leaves in a tier and %3 has %4: heights are shared out only among stems that have "
                  "as many. Pin the stems that shall stay as they are.")
            .arg(v(0), v(1), v(2), v(3));
    case ProblemCode::beyondExact:
        return v(3).isEmpty() ? tr("%1 leaves of %2 are more than can be shared out exactly; on stems like "
                                   "these it is about %3 at most.")
                                    .arg(v(0), v(1), v(2))
                              : tr("%1 leaves of %2 are more than can be shared out exactly in matched pairs; "
                                   "on stems like "
                                   "these it is about %3 at most, and more without matched pairs.")
                                    .arg(v(0), v(1), v(2));
    case ProblemCode::nothingToShare:
        return tr("There is no stem, or no range of leaves, to share heights out by.");
    case ProblemCode::stockBelowPlaced:
        return tr("%3 leaves of %1 in %2 stand on the stems, so the stock cannot be %4.")
            .arg(v(0), v(1), v(2), v(3));
    case ProblemCode::samePlace:
        return tr("It is here already.");
    case ProblemCode::leavesAlike:
        return tr("Both are %1 leaves in %2: nothing would change.").arg(v(0), v(1));
    case ProblemCode::noRoom:
        return tr("%1 has no room here for all that is held.").arg(v(0));
    case ProblemCode::slotEmpty:
        return tr("There is no leaf here.");
    }
    return tr("Something is wrong here.");
}

} // namespace

QString faultText(MakeFault fault, int rows) {
    switch (fault) {
    case MakeFault::none:
        return {};
    case MakeFault::noBeads:
        return tr("A leaf has one bead and one row at least: was a number left out?");
    case MakeFault::evenRows:
        return rows > 1
                   ? tr("Rows around a basic run up and down by turns, so %1 rows would end at the tip, where "
                        "no stem is: %2 or %3 was probably meant.")
                         .arg(rows)
                         .arg(rows - 1)
                         .arg(rows + 1)
                   : tr("Rows around a basic are odd in number, the basic among them.");
    case MakeFault::longBead:
        return tr("Beads longer than they are broad cannot follow the curve of a row, so the pattern does not "
                  "apply to them: measure a leaf and enter what you find.");
    }
    return {};
}

QString sentence(const Problem& problem) {
    if (problem.place.empty())
        return bare(problem);
    return tr("%1: %2").arg(lineText(problem.place), bare(problem));
}

FindingWords words(const Plan& plan, const Finding& finding) {
    const auto v = [&](std::size_t n) { return value(finding.values, n); };
    const auto lengthText = [&](std::size_t n) {
        return n < finding.values.size() ? sizeText(millimetres(v(n).toDouble()), plan.units) : QString();
    };
    const QString stem = nameText(plan, finding.stem);
    switch (finding.code) {
    case FindingCode::sameFacing:
        return {tr("%1, tiers %2 and %3 face the same way").arg(stem, v(1), v(0)),
                tr("The arrangement turns each tier from the one above."), tr("Turn tier %1").arg(v(0))};
    case FindingCode::outOfPlane:
        return {tr("%1, tier %2 is out of plane").arg(stem, v(0)),
                tr("All tiers of this stem face the same way, but not this one."),
                tr("Turn tier %1").arg(v(0))};
    case FindingCode::shortTier:
        return {tr("%1, tier %2 is short of a place").arg(stem, v(0)),
                tr("It has %1 where its arrangement has %2.").arg(v(1), v(2)), tr("Open the place")};
    case FindingCode::longTier:
        return {tr("%1, tier %2 has a place too many").arg(stem, v(0)),
                tr("It has %1 where its arrangement has %2.").arg(v(1), v(2)), tr("Close the empty place")};
    case FindingCode::emptySlot:
        return {tr("%1, tier %2 lacks a leaf").arg(stem, v(0)), tr("A place is empty."),
                tr("Fill it from the tray")};
    case FindingCode::unmatchedPair:
        return {tr("%1, tier %2 is no matched pair").arg(stem, v(0)), tr("Its leaves are unlike."),
                tr("Swap for a match")};
    case FindingCode::largerAbove:
        return {tr("%1, tier %2 is larger than tier %3").arg(stem, v(0), v(1)),
                tr("Smaller leaves usually stand nearer the tip."), tr("Put its tiers in order of size")};
    case FindingCode::outOfOrder:
        return {tr("%1 is out of colour order").arg(stem),
                tr("%1 steps against the order from tip to base.").arg(v(0)), tr("Put its leaves in order")};
    case FindingCode::leans:
        return {tr("%1 leans %2").arg(stem, v(0)), tr("%1 %2 leaves where %3 is fair.").arg(v(2), v(1), v(3)),
                tr("Make the best swap")};
    case FindingCode::drifts:
        return {tr("%1 drifts in colour").arg(stem), tr("ΔE00 %1 from the pot as a whole.").arg(v(0)),
                tr("Make the best swap")};
    case FindingCode::nearTwins:
        return {tr("%1 and %2 are near twins").arg(stem, v(0)),
                tr("Their heights differ by %1.").arg(lengthText(1)), tr("Change the tail")};
    case FindingCode::noLeaves:
        return {tr("%1 has no leaves").arg(stem), tr("Drag some onto it, or remove it."), {}};
    case FindingCode::holdsTooLittle:
        return {
            tr("%1 may not hold its pose").arg(stem),
            v(1).isEmpty()
                ? tr("Laid level, its wires bear %1 of its weight; no core wire that we know mends it. %2")
                      .arg(v(0), estimateText())
                : tr("Laid level, its wires bear %1 of its weight; a core wire of %2 mm would bear twice. %3")
                      .arg(v(0), v(1), estimateText()),
            v(1).isEmpty() ? QString() : tr("Put in a core wire")};
    case FindingCode::leavesTouch:
        if (v(0) == stem)
            return {tr("%1 runs into itself").arg(stem),
                    v(1) == QLatin1String("1")
                        ? tr("Two of its leaves meet, by %1.").arg(lengthText(2))
                        : tr("%1 pairs of its leaves meet, by up to %2.").arg(v(1), lengthText(2)),
                    {}};
        return {tr("%1 and %2 run into each other").arg(stem, v(0)),
                v(1) == QLatin1String("1")
                    ? tr("Two leaves meet, by %1.").arg(lengthText(2))
                    : tr("%1 pairs of leaves meet, by up to %2.").arg(v(1), lengthText(2)),
                {}};
    case FindingCode::outsideClay:
        return {
            tr("%1 stands outside the clay").arg(stem), tr("By %1. Move it inward.").arg(lengthText(0)), {}};
    case FindingCode::stakesTouch:
        return {tr("The stakes of %1 and %2 collide").arg(stem, v(0)),
                tr("%1 apart where %2 is needed.").arg(lengthText(1), lengthText(2)),
                {}};
    case FindingCode::potTooSmall:
        return {tr("The pot is too small for its stakes"),
                tr("They need %1 across, the clay has %2.").arg(lengthText(0), lengthText(1)),
                {}};
    case FindingCode::leafOutOfScale:
        return {
            tr("%1 leaves are out of all scale").arg(v(0)),
            tr("One is %1 long, more than twice as much as the tallest stem, %2, and the pot. Its length was "
               "probably meant in another unit.")
                .arg(lengthText(1), lengthText(2)),
            {}};
    case FindingCode::threadRunsOut: {
        const std::size_t wrap = static_cast<std::size_t>(v(0).toInt()) - 1;
        const Wrap none;
        const Wrap& bound = wrap < plan.binding.wraps.size() ? plan.binding.wraps[wrap] : none;
        const QString where = finding.tier < 0 ? tr("The layer takes %1, and one has %2: %3 are needed.")
                                               : tr("In the wrap below tier %4: it takes %1, and one has %2. "
                                                    "%3 are needed; join the second there.");
        QString said = where.arg(lengthText(1), lengthText(2), v(3));
        if (finding.tier >= 0)
            said = said.arg(finding.tier + 1);
        return {tr("%1: the %2 runs out")
                    .arg(stem, bound.name.empty() ? wrapText(bound.with) : lineText(bound.name)),
                said,
                {}};
    }
    case FindingCode::tooThickForPot:
        return {
            tr("%1 is thicker than the pot").arg(stem),
            tr("Its foot measures %1 across, with its core, and the pot %2 inside: a thinner core or a wider "
               "pot was probably meant.")
                .arg(lengthText(0), lengthText(1)),
            {}};
    case FindingCode::cannotBeMade:
        return {tr("%1 leaves cannot be made so").arg(v(0)),
                faultText(static_cast<MakeFault>(v(1).toInt()), v(2).toInt()),
                {}};
    case FindingCode::plantTips: {
        const QString weight = massText(grams(v(1).toDouble()), plan.units);
        return v(0).toDouble() <= 0
                   ? FindingWords{tr("The plant falls by itself"),
                                  tr("Its weight is not over its foot. %1 in the middle of the pot's floor "
                                     "would mend it, or stems nearer the middle or more upright.")
                                      .arg(weight),
                                  {}}
                   : FindingWords{
                         tr("The plant tips easily"),
                         tr("Tilted by %1° it falls. %2 in the middle of the pot's floor would mend it.")
                             .arg(v(0), weight),
                         {}};
    }
    case FindingCode::beadsUnweighed:
        return {tr("What the beads of %1 leaves weigh is not known").arg(v(0)),
                v(2).isEmpty()
                    ? tr("No table has a size “%1”: its beads count as nothing in weight, hold and tilt, and "
                         "stems look safer than they are. Choose another size, or weigh some and write it "
                         "down in Materials.")
                          .arg(v(1))
                    : tr("Your size “%1” has no weight in Materials: its beads count as nothing in weight, "
                         "hold and tilt, and stems look safer than they are. Weigh some and write it down "
                         "there.")
                          .arg(v(1)),
                {}};
    case FindingCode::tooFewLeaves:
        return {tr("Too few %1 leaves").arg(v(1)),
                tr("%1 places wait for one, %2 are in the tray.").arg(v(0), v(2)),
                {}};
    }
    return {};
}

QString bestSwapText(const Plan& plan, const Figures& figures, const Finding& finding,
                     const SwapFinder& swaps) {
    const auto leaf = leaningLeaf(plan, figures, finding);
    const auto trade = leaf ? swaps.bestTrade({finding.stem, leaf}) : std::nullopt;
    if (!trade)
        return {};
    const bool first = trade->a == finding.stem;
    return tr("Best swap: one for %1 of %2.")
        .arg(nameText(plan, first ? trade->bGives.mix : trade->aGives.mix),
             nameText(plan, first ? trade->b : trade->a));
}

namespace {

QString boundPlaces(const Plan& plan, const std::vector<BoundTier>& touched) {
    QStringList places;
    for (const BoundTier& bound : touched) {
        if (places.size() == 4) {
            places << QStringLiteral("…");
            break;
        }
        places << tr("%1, tier %2").arg(nameText(plan, bound.stem)).arg(bound.tier + 1);
    }
    return places.join(QStringLiteral("; "));
}

} // namespace

QString boundTiersQuestion(const Plan& plan, const std::vector<BoundTier>& touched) {
    return tr("This changes what is bound already: %1.").arg(boundPlaces(plan, touched));
}

QString boundTiersWarning(const Plan& plan, const std::vector<BoundTier>& touched) {
    return tr("Bound already: %1. You are asked first.").arg(boundPlaces(plan, touched));
}

} // namespace stemwright

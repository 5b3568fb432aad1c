// Where each figure's formula comes from.
#include "core/figures/explain_parts.h"

#include <algorithm>

namespace stemwright {

namespace {

/// What says how a wrap lies and what it weighs.
SourceName tableOf(const Plan& plan, std::size_t wrap) {
    if (wrap >= plan.binding.wraps.size())
        return SourceName::maker;
    switch (plan.binding.wraps[wrap].with) {
    case WrapWith::wire:
        return SourceName::metalTable;
    case WrapWith::floss:
        return SourceName::flossTable;
    case WrapWith::tape:
        break;
    }
    return SourceName::tapeTable;
}

} // namespace

std::vector<SourceName> sourcesOf(const Plan& plan, FigureRef ref) {
    using S = SourceName;
    switch (ref.figure) {
    case FigureName::tiers:
    case FigureName::slots:
    case FigureName::leaves:
    case FigureName::held:
    case FigureName::inversions:
    case FigureName::unmatchedPairs:
    case FigureName::wires:
    case FigureName::potStems:
    case FigureName::potSlots:
    case FigureName::potLeaves:
    case FigureName::potInTray:
    case FigureName::potToMake:
    case FigureName::buyLeaves:
        return {S::plan};
    case FigureName::height:
    case FigureName::potShortest:
    case FigureName::potTallest:
        return {S::maker, S::ownGeometry};
    case FigureName::potMeanHeight:
    case FigureName::potHeightVariation:
        return {S::textbook};
    case FigureName::potNearTwins:
        return {S::ownChoice};
    case FigureName::fairShare:
    case FigureName::unevenness:
    case FigureName::potUnevenness:
        return {S::plan, S::ownChoice};
    case FigureName::drift:
    case FigureName::potDrift:
        return {S::colourNorm, S::earthMover};
    case FigureName::beads:
    case FigureName::potBeads:
    case FigureName::potAllBeads:
        return {S::maker, S::textbook};
    case FigureName::bundle:
        return {S::packingTable, S::ownGeometry};
    case FigureName::leafWire:
    case FigureName::potLeafWire:
    case FigureName::potAllLeafWire:
        return {S::maker};
    case FigureName::wrapUsed:
    case FigureName::wrapToCut:
    case FigureName::potWrapUsed:
    case FigureName::potWrapToCut:
    case FigureName::buyWrap: {
        std::vector<S> out{S::textbook, S::packingTable};
        const bool hers =
            ref.index < plan.binding.wraps.size() && plan.binding.wraps[ref.index].overlapMeasured;
        out.push_back(hers ? S::maker : tableOf(plan, ref.index));
        if (ref.figure == FigureName::buyWrap)
            out.push_back(S::cuttingProof);
        return out;
    }
    case FigureName::mass:
    case FigureName::potMass: {
        std::vector<S> out{S::beadTable, S::metalTable};
        for (std::size_t w = 0; w < plan.binding.wraps.size(); ++w)
            if (const S table = tableOf(plan, w); std::find(out.begin(), out.end(), table) == out.end())
                out.push_back(table);
        return out;
    }
    case FigureName::moment:
    case FigureName::centre:
        return {S::textbook, S::beadTable, S::metalTable, S::gravityNorm};
    case FigureName::plasticMoment:
        return {S::textbook, S::metalTable};
    case FigureName::hold:
    case FigureName::sag:
        return {S::textbook, S::metalTable, S::beadTable, S::ownChoice};
    case FigureName::potClay:
    case FigureName::potCover:
    case FigureName::buyClay:
    case FigureName::buyCover:
        return {S::textbook, S::maker};
    case FigureName::potWhole:
    case FigureName::potCentre:
    case FigureName::potTilt:
        return {S::textbook};
    case FigureName::potWeightToAdd:
        return {S::textbook, S::ownChoice};
    case FigureName::potStake:
        return {S::ownGeometry, S::maker};
    case FigureName::buyBeads:
        return {S::maker, S::beadTable};
    case FigureName::buyLeafWire:
        return {S::maker, S::metalTable};
    case FigureName::buyBars:
        return {S::cuttingProof};
    case FigureName::buyHours:
    case FigureName::buyCost:
        return {S::maker};
    }
    return {};
}

} // namespace stemwright

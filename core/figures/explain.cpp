#include "core/figures/explain.h"

#include "core/figures/explain_parts.h"

#include <array>

namespace stemwright {

namespace {

constexpr std::size_t figureCount = static_cast<std::size_t>(FigureName::buyCost) + 1;

constexpr std::array<FigureName, figureCount> names = [] {
    std::array<FigureName, figureCount> all{};
    for (std::size_t i = 0; i < figureCount; ++i)
        all[i] = static_cast<FigureName>(i);
    return all;
}();

} // namespace

std::span<const FigureName> allFigures() {
    return names;
}

bool isOfStem(FigureName figure) {
    return figure < FigureName::potStems;
}

bool isOfSupplies(FigureName figure) {
    return figure >= FigureName::buyLeaves;
}

Explanation explain(const Plan& plan, const Figures& figures, const Supplies& needs, FigureRef ref) {
    Explanation out;
    out.figure = ref.figure;
    out.sources = sourcesOf(plan, ref);
    out.estimate = ref.figure == FigureName::hold || ref.figure == FigureName::sag ||
                   ref.figure == FigureName::plasticMoment || ref.figure == FigureName::potTilt ||
                   ref.figure == FigureName::potWeightToAdd;
    if (isOfSupplies(ref.figure))
        explainSupplies(plan, needs, ref, out.inputs);
    else if (isOfStem(ref.figure))
        explainStem(plan, figures, ref, out.inputs);
    else
        explainPot(plan, figures, ref, out.inputs);
    return out;
}

std::vector<FigureRef> figuresOfStem(const Figures& figures, std::size_t stem) {
    std::vector<FigureRef> out;
    if (stem >= figures.stems.size())
        return out;
    const StemFigures& of = figures.stems[stem];
    for (const FigureName name : names) {
        if (!isOfStem(name))
            break;
        switch (name) {
        case FigureName::held:
        case FigureName::fairShare:
            for (std::size_t i = 0; i < of.held.size(); ++i)
                if (of.held[i] > 0 || of.fairShare[i] > 0)
                    out.push_back({name, stem, i});
            break;
        case FigureName::beads:
            for (std::size_t i = 0; i < of.beads.size(); ++i)
                if (of.beads[i] > 0)
                    out.push_back({name, stem, i});
            break;
        case FigureName::wrapUsed:
        case FigureName::wrapToCut:
            for (std::size_t i = 0; i < of.wraps.size(); ++i)
                out.push_back({name, stem, i});
            break;
        default:
            out.push_back({name, stem, 0});
        }
    }
    return out;
}

std::vector<FigureRef> figuresOfPot(const Plan& plan, const Figures& figures) {
    std::vector<FigureRef> out;
    for (const FigureName name : names) {
        if (isOfStem(name))
            continue;
        if (isOfSupplies(name))
            break;
        switch (name) {
        case FigureName::potBeads:
        case FigureName::potAllBeads:
            for (std::size_t i = 0; i < figures.pot.allBeads.size(); ++i)
                if (figures.pot.allBeads[i] > 0)
                    out.push_back({name, 0, i});
            break;
        case FigureName::potWrapUsed:
        case FigureName::potWrapToCut:
            for (std::size_t i = 0; i < figures.pot.wraps.size(); ++i)
                out.push_back({name, 0, i});
            break;
        case FigureName::potCover:
            if (plan.pot.cover)
                out.push_back({name, 0, 0});
            break;
        default:
            out.push_back({name, 0, 0});
        }
    }
    return out;
}

std::vector<FigureRef> figuresOfSupplies(const Supplies& needs) {
    std::vector<FigureRef> out;
    const auto each = [&](FigureName name, std::size_t count) {
        for (std::size_t i = 0; i < count; ++i)
            out.push_back({name, 0, i});
    };
    each(FigureName::buyLeaves, 1);
    each(FigureName::buyBeads, needs.beads.size());
    each(FigureName::buyLeafWire, needs.leafWire.size());
    each(FigureName::buyWrap, needs.wraps.size());
    each(FigureName::buyBars, needs.bars.size());
    each(FigureName::buyClay, inGrams(needs.clay) > 0);
    each(FigureName::buyCover, inGrams(needs.cover) > 0);
    each(FigureName::buyHours, needs.minutesLeft > 0);
    each(FigureName::buyCost, needs.cost > 0);
    return out;
}

} // namespace stemwright

// The numbers that go into a stem's figures.
#include "core/figures/bundle.h"
#include "core/figures/explain_parts.h"
#include "core/figures/height.h"
#include "core/figures/hold.h"
#include "core/figures/leaf_beads.h"
#include "core/figures/leaf_mass.h"
#include "core/plan/lookup.h"
#include "core/quantity/circle_packing.h"
#include "core/quantity/wire_strength.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

namespace {

class StemExplainer {
public:
    StemExplainer(const Plan& plan, const Figures& figures, FigureRef ref, std::vector<Input>& out)
        : plan_(plan),
          figures_(figures),
          stem_(plan.stems[ref.stem]),
          of_(figures.stems[ref.stem]),
          ref_(ref),
          out_(out) {
        for (std::size_t i = 0; i + 1 < stem_.tiers.size(); ++i)
            spacings_ += spacingBelow(stem_, stem_.tiers[i]);
    }

    void run() {
        figure();
        switch (ref_.figure) {
        case FigureName::mass:
        case FigureName::moment:
        case FigureName::hold:
        case FigureName::sag:
        case FigureName::centre:
            return explainUnweighed(
                plan_, [&](const Kind& kind) { return leavesOf(kind); }, out_);
        default:
            return;
        }
    }

private:
    void figure() {
        switch (ref_.figure) {
        case FigureName::height:
            add(Term::tail, TermUnit::size, inMillimetres(stem_.tail));
            add(Term::plantingDepth, TermUnit::size, inMillimetres(plan_.pot.plantingDepth));
            add(Term::spacings, TermUnit::size, inMillimetres(spacings_));
            if (of_.tiers > 0)
                add(Term::reach, TermUnit::size,
                    inMillimetres(of_.height - (stem_.tail - plan_.pot.plantingDepth) - spacings_));
            return;
        case FigureName::tiers:
            return add(Term::tiersOfStem, TermUnit::count, of_.tiers);
        case FigureName::slots:
            add(Term::tiersOfStem, TermUnit::count, of_.tiers);
            return add(Term::placesATier, TermUnit::count, leavesPerTier(stem_));
        case FigureName::leaves:
            return add(Term::leavesOfStem, TermUnit::count, of_.leaves);
        case FigureName::held:
        case FigureName::fairShare:
            return shares();
        case FigureName::unevenness:
            for (std::size_t i = 0; i < of_.held.size(); ++i)
                if (of_.held[i] > 0 || of_.fairShare[i] > 0) {
                    add(Term::heldLeaves, TermUnit::count, of_.held[i], nameOfLine(i));
                    add(Term::fairLeaves, TermUnit::decimal, of_.fairShare[i], nameOfLine(i));
                }
            return;
        case FigureName::drift:
            add(Term::beadsOfStem, TermUnit::count, static_cast<double>(sum(of_.beads)));
            add(Term::beadsOfPot, TermUnit::count, static_cast<double>(sum(figures_.pot.beads)));
            return add(Term::coloursCompared, TermUnit::count, static_cast<double>(plan_.colours.size()));
        case FigureName::beads:
            return beads();
        case FigureName::inversions:
            return add(Term::orderedLeaves, TermUnit::count, of_.leaves);
        case FigureName::unmatchedPairs:
            return add(Term::tiersOfStem, TermUnit::count, of_.tiers);
        case FigureName::wires:
        case FigureName::leafWire:
            return byKind();
        case FigureName::bundle:
            return bundle();
        case FigureName::wrapUsed:
        case FigureName::wrapToCut:
            return wrap();
        case FigureName::mass:
            return masses();
        case FigureName::moment:
            add(Term::stemMass, TermUnit::mass, inGrams(of_.hold.mass));
            add(Term::centreHeight, TermUnit::size, inMillimetres(of_.hold.centre));
            return add(Term::gravityTerm, TermUnit::decimal, gravity);
        case FigureName::plasticMoment:
            return strengths();
        case FigureName::hold:
            add(Term::plasticMomentOfWires, TermUnit::moment, of_.hold.plasticMoment - coreMoment());
            if (stem_.core)
                add(Term::plasticMomentOfCore, TermUnit::moment, coreMoment());
            return add(Term::momentOfWeight, TermUnit::moment, of_.hold.moment);
        case FigureName::sag:
            add(Term::bareLength, TermUnit::size,
                std::max(0.0, inMillimetres(stem_.tail - plan_.pot.plantingDepth + spacings_)));
            return add(Term::momentOfWeight, TermUnit::moment, of_.hold.moment);
        case FigureName::centre:
            add(Term::momentOfWeight, TermUnit::moment, of_.hold.moment);
            return add(Term::stemMass, TermUnit::mass, inGrams(of_.hold.mass));
        default:
            return;
        }
    }

    void add(Term term, TermUnit unit, double value, std::string of = {}) {
        out_.push_back({term, unit, value, std::move(of)});
    }
    static std::int64_t sum(const std::vector<std::int64_t>& values) {
        return std::accumulate(values.begin(), values.end(), std::int64_t{0});
    }
    std::string nameOfLine(std::size_t line) const {
        const Leaf leaf = figures_.lines[line].leaf;
        return find(plan_, leaf.mix)->name + ", " + find(plan_, leaf.kind)->name;
    }

    void shares() {
        if (ref_.index >= figures_.lines.size())
            return;
        const TrayLine& line = figures_.lines[ref_.index];
        const std::string name = nameOfLine(ref_.index);
        if (ref_.figure == FigureName::held)
            return add(Term::heldLeaves, TermUnit::count, of_.held[ref_.index], name);
        int onStem = 0, ofKind = 0;
        for (std::size_t i = 0; i < figures_.lines.size(); ++i)
            if (figures_.lines[i].leaf.kind == line.leaf.kind) {
                onStem += of_.held[i];
                ofKind += figures_.lines[i].placed;
            }
        add(Term::leavesOfKindOnStem, TermUnit::count, onStem);
        add(Term::leavesOfMix, TermUnit::count, line.placed, name);
        add(Term::leavesOfKind, TermUnit::count, ofKind);
    }

    void beads() {
        if (ref_.index >= plan_.colours.size())
            return;
        for (std::size_t i = 0; i < figures_.lines.size(); ++i) {
            if (of_.held[i] == 0)
                continue;
            const Mix& mix = *find(plan_, figures_.lines[i].leaf.mix);
            const std::vector<int> each = leafBeads(find(plan_, figures_.lines[i].leaf.kind)->beads, mix);
            for (std::size_t c = 0; c < each.size(); ++c)
                if (mix.colours[c].colour == plan_.colours[ref_.index].id) {
                    add(Term::heldLeaves, TermUnit::count, of_.held[i], nameOfLine(i));
                    add(Term::beadsALeaf, TermUnit::count, each[c], nameOfLine(i));
                }
        }
    }

    template <class Each> void eachKind(const Each& each) const {
        for (const Kind& kind : plan_.kinds)
            if (const int leaves = leavesOf(kind); leaves > 0)
                each(kind, leaves);
    }
    int leavesOf(const Kind& kind) const {
        int leaves = 0;
        for (std::size_t i = 0; i < figures_.lines.size(); ++i)
            if (figures_.lines[i].leaf.kind == kind.id)
                leaves += of_.held[i];
        return leaves;
    }

    void byKind() {
        const bool wires = ref_.figure == FigureName::wires;
        eachKind([&](const Kind& kind, int leaves) {
            add(Term::heldLeaves, TermUnit::count, leaves, kind.name);
            if (wires)
                add(Term::wiresALeaf, TermUnit::count, kind.wiresAtBase, kind.name);
            else
                add(Term::wireALeaf, TermUnit::cut, inMillimetres(kind.wire), kind.name);
        });
    }

    void bundle() {
        double squares = 0;
        eachKind([&](const Kind& kind, int leaves) {
            squares += leaves * kind.wiresAtBase * std::pow(inMillimetres(kind.wireDiameter), 2);
        });
        add(Term::wiresInBundle, TermUnit::count, of_.wires);
        if (of_.wires > 0) {
            add(Term::wireDiameter, TermUnit::wire, std::sqrt(squares / of_.wires));
            add(Term::packing, TermUnit::decimal, packingRatio(of_.wires));
        }
        if (stem_.core)
            add(Term::coreDiameter, TermUnit::wire, inMillimetres(stem_.core->diameter));
    }

    void wrap() {
        if (ref_.index >= of_.wraps.size())
            return;
        const Wrap& wrap = plan_.binding.wraps[ref_.index];
        if (ref_.figure == FigureName::wrapToCut) {
            add(Term::used, TermUnit::cut, inMillimetres(of_.wraps[ref_.index].used));
            return add(Term::handHold, TermUnit::size, inMillimetres(wrap.hold));
        }
        add(Term::lengthWrapped, TermUnit::size, inMillimetres(stem_.tail + spacings_));
        add(Term::bundleAtFoot, TermUnit::wire, inMillimetres(of_.bundle));
        add(Term::widthLaid, TermUnit::wire, wrap.strands * inMillimetres(wrap.width));
        add(Term::overlap, TermUnit::percent, wrap.overlap);
        add(Term::thickness, TermUnit::wire, inMillimetres(wrap.thickness));
        if (wrap.stretch > 1)
            add(Term::stretch, TermUnit::decimal, wrap.stretch);
        add(Term::startTail, TermUnit::size, inMillimetres(wrap.startTail));
        add(Term::finish, TermUnit::size, inMillimetres(wrap.finish));
    }

    void masses() {
        eachKind([&](const Kind& kind, int leaves) {
            add(Term::leafMasses, TermUnit::mass, leaves * inGrams(leafMass(plan_, kind)), kind.name);
        });
        const double whole = inMillimetres(stem_.tail + spacings_);
        const double above = std::max(0.0, inMillimetres(stem_.tail - plan_.pot.plantingDepth + spacings_));
        if (stem_.core)
            add(Term::coreMass, TermUnit::mass,
                inGrams(massOfWire(figuresOf(plan_, metalNameOf(*stem_.core)), stem_.core->diameter,
                                   millimetres(above))));
        double binding = 0;
        for (std::size_t i = 0; i < of_.wraps.size(); ++i)
            binding += plan_.binding.wraps[i].strands * gramsPerMetre(plan_, plan_.binding.wraps[i]) *
                       inMetres(of_.wraps[i].used);
        if (whole > 0)
            add(Term::bindingMass, TermUnit::mass, binding * above / whole);
    }

    double coreMoment() const {
        return stem_.core ? plasticMoment(figuresOf(plan_, metalNameOf(*stem_.core)), stem_.core->diameter) : 0;
    }

    void strengths() {
        eachKind([&](const Kind& kind, int leaves) {
            const double each = plasticMoment(figuresOf(plan_, metalNameOf(kind)), kind.wireDiameter);
            add(Term::plasticMomentOfWires, TermUnit::moment, leaves * kind.wiresAtBase * each, kind.name);
        });
        if (stem_.core)
            add(Term::plasticMomentOfCore, TermUnit::moment, coreMoment());
    }

    const Plan& plan_;
    const Figures& figures_;
    const Stem& stem_;
    const StemFigures& of_;
    FigureRef ref_;
    std::vector<Input>& out_;
    Length spacings_;
};

} // namespace

void explainStem(const Plan& plan, const Figures& figures, FigureRef ref, std::vector<Input>& inputs) {
    if (ref.stem < plan.stems.size() && ref.stem < figures.stems.size())
        StemExplainer(plan, figures, ref, inputs).run();
}

} // namespace stemwright

#pragma once

#include "core/figures/figures.h"
#include "core/figures/supplies.h"
#include "core/plan/plan.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace stemwright {

// How each figure is reckoned, as data: which formula, the numbers that went in, where the formula and its
// constants come from. The words stand in app/explanations.

/// Every figure that is shown, each with one formula.
enum class FigureName {
    // of a stem
    height,
    tiers,
    slots,
    leaves,
    held,      ///< by line
    fairShare, ///< by line
    unevenness,
    drift,
    beads, ///< by colour
    inversions,
    unmatchedPairs,
    wires,
    bundle,
    leafWire,
    wrapUsed,  ///< by wrap
    wrapToCut, ///< by wrap
    mass,
    moment,
    plasticMoment,
    hold,
    sag,
    centre,
    // of the pot
    potStems,
    potSlots,
    potLeaves,
    potInTray,
    potUnevenness,
    potDrift,
    potShortest,
    potTallest,
    potMeanHeight,
    potHeightVariation,
    potNearTwins,
    potBeads,    ///< by colour
    potAllBeads, ///< by colour
    potLeafWire,
    potAllLeafWire,
    potToMake,
    potWrapUsed,  ///< by wrap
    potWrapToCut, ///< by wrap
    potMass,
    potClay,
    potCover,
    potWhole,
    potCentre,
    potTilt,
    potWeightToAdd,
    potStake,
    // of the supplies
    buyLeaves,
    buyBeads,    ///< by Supplies::beads
    buyLeafWire, ///< by Supplies::leafWire
    buyWrap,     ///< by Supplies::wraps
    buyBars,     ///< by Supplies::bars
    buyClay,
    buyCover,
    buyHours,
    buyCost,
};

/// What a number that went in is; `of` may say of which part.
enum class Term {
    tail,
    plantingDepth,
    spacings,
    reach, ///< of the highest leaf above its joint
    tiersOfStem,
    placesATier,
    leavesOfStem,
    leavesOfKindOnStem,
    leavesOfMix,  ///< on the whole board, of the kind
    leavesOfKind, ///< on the whole board
    heldLeaves,
    fairLeaves,
    beadsOfStem,
    beadsOfPot,
    coloursCompared,
    beadsALeaf,
    wireALeaf,
    wiresALeaf,
    orderedLeaves,
    wiresInBundle,
    wireDiameter, ///< of wires of unlike thickness, that of as many equal ones of the same area
    packing,      ///< bundle over wire
    coreDiameter,
    widthLaid, ///< strands × width
    overlap,
    stretch,
    thickness,
    bundleAtFoot,
    lengthWrapped,
    startTail,
    finish,
    used,
    handHold,
    leafMasses,
    coreMass,
    bindingMass,
    stemMass,
    centreHeight,
    gravityTerm,
    momentOfWeight,
    plasticMomentOfWires,
    plasticMomentOfCore,
    bareLength, ///< from the clay line to the topmost joint
    stems,
    standardDeviation,
    meanHeight,
    twinDistance,
    stock,
    placed,
    topDiameter,
    topBreadth,
    bottomDiameter,
    depth,
    volume,
    density,
    potMassTerm,
    clayMass,
    coverMass,
    aside,
    foot,
    wantedTilt,
    clayDepth,
    stakeOverlap,
    toMake,
    neededBeads,
    spare,
    beadMass,
    beadPitch,
    sold,
    price,
    packs,
    pieces,
    barsCut,
    fewestBars,
    waste,
    minutesOfLeaves,
    tiersToBind,
    minutesATier,
    placesOfStem,
    driftOfStem,
    unevennessOfStem,
    heightOfStem,
    beadsCost,
    leafWireCost,
    bindingCost,
    barsCost,
    fillingCost,
    standsOn, ///< across the circle of a pot's feet
    feet,
    beadsUnweighed, ///< beads that are left out of a mass; `of` names their kind and size
};

enum class TermUnit {
    count,
    decimal, ///< a plain number
    percent, ///< of 1
    size,    ///< mm
    cut,     ///< mm, of wire and thread
    wire,    ///< mm, of a wire's diameter
    mass,    ///< g
    angle,   ///< degrees
    moment,  ///< N·mm
    volume,  ///< mm³
    density, ///< kg/m³
    money,
    minutes,
};

struct Input {
    Term term{};
    TermUnit unit{};
    double value = 0;
    std::string of; ///< the part's name where there are several
};

/// Where a formula, or a constant in it, comes from.
enum class SourceName {
    plan,         ///< counted in the plan
    maker,        ///< the maker's own measure
    textbook,     ///< geometry and mechanics of any textbook
    ownGeometry,  ///< our own, no source
    ownChoice,    ///< a limit that we chose, no source
    packingTable, ///< equal circles in a circle
    colourNorm,   ///< CIELAB and CIEDE2000
    earthMover,
    metalTable,
    beadTable,
    flossTable,
    tapeTable,
    cuttingProof,
    gravityNorm,
};

struct Explanation {
    FigureName figure{};
    std::vector<Input> inputs;
    std::vector<SourceName> sources;
    /// Wire temper and binding move it by up to a few times.
    bool estimate = false;
};

/// One figure of a plan: `stem` by its place in the plan's list for a stem's figures, `index` for those that go
/// by line, colour, wrap or supply.
struct FigureRef {
    FigureName figure{};
    std::size_t stem = 0;
    std::size_t index = 0;

    friend bool operator==(const FigureRef&, const FigureRef&) = default;
};

/// All names, in their order.
std::span<const FigureName> allFigures();
bool isOfStem(FigureName figure);
bool isOfSupplies(FigureName figure);

/// How that figure came about. `needs` are the plan's supplies, for theirs. A reference to a part that is not
/// there explains without numbers.
Explanation explain(const Plan& plan, const Figures& figures, const Supplies& needs, FigureRef ref);

/// Every figure of that stem, or of the pot, or of the supplies, in their order, those that go by line, colour,
/// wrap or supply once for each that is not nothing.
std::vector<FigureRef> figuresOfStem(const Figures& figures, std::size_t stem);
std::vector<FigureRef> figuresOfPot(const Plan& plan, const Figures& figures);
std::vector<FigureRef> figuresOfSupplies(const Supplies& needs);

} // namespace stemwright

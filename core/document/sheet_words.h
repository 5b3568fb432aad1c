#pragma once

#include "core/document/sheet.h"
#include "core/plan/lookup.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

inline constexpr double millimetresPerPoint = 25.4 / 72;

/// How wide text is and where it breaks: asked of the fonts that will paint it.
class TextMeasure {
public:
    TextMeasure() = default;
    virtual ~TextMeasure() = default;
    TextMeasure(const TextMeasure&) = delete;
    TextMeasure& operator=(const TextMeasure&) = delete;

    virtual double width(const std::string& utf8, TextStyle style) const = 0; ///< mm
    /// The lines of a text that may be `width` mm wide; a word that is longer breaks anywhere. At least one.
    virtual std::vector<std::string> lines(const std::string& utf8, TextStyle style, double width) const = 0;
};

/// What the pages say. Those with values have them in the order given here.
enum class SheetWord {
    untitled,
    glanceTitle,
    matsTitle,
    cardsTitle,
    leavesTitle,
    suppliesTitle,
    potTitle,
    pageOf,    ///< page, pages
    ruleMm,    ///< the name of the 100 mm rule
    ruleInch,  ///< of the 4 in rule
    ruleCheck, ///< measure the rules before using the page
    // the plant at a glance
    summary, ///< stems, leaves on them, leaves in the tray
    heights, ///< shortest, tallest
    columnStem,
    columnHeight,
    columnTiers,
    columnLeaves,
    columnDrift,
    columnThick,
    columnLeafWire,
    columnCore,
    columnMat,
    columnCard,
    columnCode,
    columnMix,
    columnKind,
    columnOnStems,
    columnInTray,
    allStems,
    mixesHeading,
    stemsHeading,
    noStems,
    // mats
    matOf,    ///< stem's name
    matSheet, ///< sheet, sheets of the stem
    seenFromFront,
    seenFromSide,    ///< the stem turned a quarter
    arrangementLine, ///< the arrangement in words, tiers, leaves, height
    cutWrap,         ///< the wrap in words, its length to cut
    coreLine,        ///< core wire in words
    evenWrap,        ///< the length wrapped from each tier to the next
    columnTier,
    columnFaces,
    columnLeavesOf,
    columnWrap,
    tail,
    tailBelow, ///< length of the tail
    foot,
    clayLine,
    heightScale,
    join, ///< the letter, sheet
    noLeaves,
    emptySlot,
    around,       ///< leaves in the tier, where the first points
    drawnSteeper, ///< leaves stand flatter than the paper is wide
    leafTooLong,
    // binding cards
    continued, ///< stem's name
    columnDone,
    columnStep,
    columnDo,
    columnUsed,
    columnLeft,
    cardCut,         ///< what is cut, in a list
    cardBegin,       ///< length laid in, the wrap in words
    cardTier,        ///< tier, how it faces, its leaves
    cardTierOne,     ///< tier, its leaf
    cardAround,      ///< leaves in a whorl
    cardTurn,        ///< a quarter
    cardHalfTurn,    ///< half
    cardTurnBy,      ///< degrees
    cardStake,       ///< the stake in words, the overlap
    cardTail,        ///< length
    cardFinishWire,  ///< length kept for it
    cardFinishFloss, ///< the same
    cardFinishTape,
    cardCover,     ///< the wrap in words
    cardTape,      ///< the same
    cardPiece,     ///< what is cut, its length
    cardTook,      ///< what was wound, how much of it was really used
    cardCore,      ///< core wire in words
    cardStakeWire, ///< the stake in words
    cardLayCore,
    ownMeasure,   ///< stems that were measured
    ownMeasureOf, ///< where the plan does not say which
    cardLeaf,     ///< side, code, kind
    cardNothing,
    // leaves to make
    nothingToMake,
    columnToMake,
    columnBeads,
    columnWire,
    columnAllWire,
    columnTally,
    rowsLine,  ///< beads by row
    beadsLine, ///< beads by colour
    tallyTens, ///< how many leaves a box stands for
    allToMake,
    // supplies
    beadsHeading,
    wireHeading,
    clayHeading,
    cuttingHeading, ///< what is cut
    workHeading,
    columnColour,
    columnSize,
    columnWithSpare,
    columnMass,
    columnStrung,
    columnPacks,
    columnCost,
    columnWhat,
    columnLength,
    leafWireLine, ///< diameter, metal
    barLine,      ///< diameter, metal
    clayLineSupply,
    coverLine,
    barTimes,         ///< how many bars are cut so, length of a bar
    barCore,          ///< stem, length
    barStake,         ///< stem, length
    barCores,         ///< how many, length, stems
    barStakes,        ///< the same
    barWrap,          ///< stem, length
    barRest,          ///< what is left of the bar
    barProved,        ///< bars in all, waste
    barUnproved,      ///< bars in all, waste, fewest that could be
    barUnprovedWaste, ///< bars in all, which are the fewest, waste, how much less that might be
    barTooLong,       ///< pieces
    noBars,           ///< pieces
    hoursLeft,        ///< hours
    hoursPartly,
    allCost, ///< money
    nothingToBuy,
    // the pot
    potLine,  ///< name, opening, depth
    potSpots, ///< how the marks are used
    potFront,
    potBack,
    potNotPlaced, ///< stems that stand nowhere yet
    potJoin,      ///< how the sheets of a large pot are joined
};

enum class SheetCaution { cutWire, sharpEnds, smallParts, oldGlass, plated, tallPlant, wetClay, estimate };

/// The words of the pages, in the maker's language, and figures as she reads them.
class SheetWords {
public:
    SheetWords() = default;
    virtual ~SheetWords() = default;
    SheetWords(const SheetWords&) = delete;
    SheetWords& operator=(const SheetWords&) = delete;

    virtual std::string word(SheetWord which, const std::vector<std::string>& values = {}) const = 0;
    virtual std::string size(Length length) const = 0; ///< of a thing
    virtual std::string cut(Length length) const = 0;  ///< to cut or buy
    virtual std::string wire(Length diameter, const std::optional<GaugeNumber>& gauge) const = 0;
    virtual std::string mass(Mass mass) const = 0;
    virtual std::string metal(const MetalName& metal) const = 0;
    virtual std::string cost(double cost) const = 0;
    virtual std::string hours(double minutes) const = 0;
    virtual std::string count(std::int64_t count) const = 0;
    virtual std::string drift(double drift) const = 0;
    virtual std::string wrap(const Wrap& wrap) const = 0; ///< "floss (6 strands)"
    virtual std::string arrangement(Arrangement arrangement) const = 0;
    virtual std::string plane(Plane plane) const = 0;
    virtual std::string side(Side side) const = 0;
    virtual std::string caution(SheetCaution caution) const = 0;
    /// What begins a row or a heading, as this language writes it there: with a capital.
    virtual std::string atStart(const std::string& said) const = 0;
};

} // namespace stemwright

#pragma once

#include "core/plan/id.h"
#include "core/quantity/gauge.h"
#include "core/quantity/metal.h"
#include "core/quantity/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

enum class LeafEnd { round, pointed };

/// How a leaf's wire runs: loops, each around the one before, or rows up and down around a basic.
enum class Making { loops, rows };

/// The beads of one loop or row as its maker counted them on a real leaf: they stand in place of the reckoned
/// ones.
struct CountedRow {
    int row = 0; ///< from 0, the innermost loop or the basic, outward
    int beads = 1;
    std::string extra{};

    friend bool operator==(const CountedRow&, const CountedRow&) = default;
};

/// How a leaf is made, kept beside its measures for makers who work from the pattern.
struct LeafMake {
    Making making = Making::rows;
    /// In the first loop, or on the basic.
    int beads = 5;
    /// Loops in all, or rows in all with the basic among them: then odd, so that the wire ends at the base.
    int rows = 5;
    /// Half the angle of its pointed ends.
    Angle point = degrees(30);
    std::string extra{};
    /// The rows that are hers, by `row`, each once, none beyond `rows`.
    std::vector<CountedRow> counted{};

    friend bool operator==(const LeafMake&, const LeafMake&) = default;
};

/// Which measures of a kind with a pattern are the maker's own, from a real leaf: a change of the pattern
/// leaves them alone (followPattern of core/figures/leaf_make.h), and they are shown as hers. Without a pattern
/// all measures are hers, whatever stands here.
struct OwnMeasures {
    bool beads = false;
    bool wire = false;
    bool length = false;
    bool width = false;
    bool wiresAtBase = false;
    std::string extra{};

    friend bool operator==(const OwnMeasures&, const OwnMeasures&) = default;
};

/// What a leaf of a kind is, as its maker measured one.
struct KindForm {
    std::string name;
    /// Beads in one leaf, at least 1.
    int beads = 60;
    /// The bead's size as makers write it, such as "11/0", or the name of one of the plan's own.
    std::string beadSize = "11/0";
    Length length = millimetres(18);
    Length width = millimetres(10);
    LeafEnd tipEnd = LeafEnd::round;
    LeafEnd baseEnd = LeafEnd::round;
    /// Wire to cut for one leaf.
    Length wire = millimetres(300);
    Length wireDiameter = millimetres(0.32);
    std::optional<GaugeNumber> gauge;
    /// How many wires leave the leaf's base and join the stem.
    int wiresAtBase = 2;
    /// Between the leaf and the stem above it: 0 stands straight up, 90 level, more hangs.
    Angle angle = degrees(60);
    /// Time to make one leaf; 0 where it is not known.
    double minutes = 0;
    /// What its wire is of: a metal of the handbook, or the plan's own of that name (core/plan/lookup.h).
    Metal metal = Metal::softCopper;
    std::string ownMetal;
    /// The pattern that the measures above were reckoned from, where they were.
    std::optional<LeafMake> make;
    OwnMeasures own;
    std::string extra;

    friend bool operator==(const KindForm&, const KindForm&) = default;
};

/// How many leaves there are of one kind in one mix.
struct StockLine {
    MixId mix;
    int made = 0;
    int toMake = 0;
    std::string extra;

    int total() const { return made + toMake; }
    friend bool operator==(const StockLine&, const StockLine&) = default;
};

/// A sort of leaf with its stock. The lines of the stock stand in the order that the maker wants the colours to
/// take from tip to base; a mix stands there once at most.
struct Kind : KindForm {
    KindId id;
    std::vector<StockLine> stock;

    friend bool operator==(const Kind&, const Kind&) = default;
};

} // namespace stemwright

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

/// How a leaf is made, kept beside its measures for makers who work from the pattern.
struct LeafMake {
    Making making = Making::rows;
    /// In the first loop, or on the basic.
    int beads = 5;
    /// Loops in all, or rows in all with the basic among them: then odd, so that the wire ends at the base.
    int rows = 5;
    /// Half the angle of its pointed ends.
    Angle point = degrees(30);
    std::string extra;

    friend bool operator==(const LeafMake&, const LeafMake&) = default;
};

/// What a leaf of a kind is, as its maker measured one.
struct KindForm {
    std::string name;
    /// Beads in one leaf, at least 1.
    int beads = 60;
    /// The bead's size as makers write it, such as "11/0".
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
    /// What its wire is of.
    Metal metal = Metal::softCopper;
    /// The pattern that the measures above were reckoned from, where they were.
    std::optional<LeafMake> make;
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

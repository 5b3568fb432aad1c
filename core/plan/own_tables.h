#pragma once

#include "core/quantity/floss.h"
#include "core/quantity/metal.h"
#include "core/quantity/quantity.h"
#include "core/quantity/tape.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

// What a maker adds to the handbook tables of core/quantity, kept in her plan so that it travels with it. Every
// list is looked up by name, and before the handbook's (core/plan/lookup.h): an entry of a handbook name stands
// in its place, as does one for "11/0" beads that she measured herself. Names are not empty and stand once in
// their list.

/// A wire that no handbook entry fits. Kinds, cores, stakes and wraps name it in `ownMetal`.
struct OwnMetal {
    std::string name;
    double density = figuresOf(Metal::mildSteel).density; ///< kg/m³
    double modulus = figuresOf(Metal::mildSteel).modulus; ///< Young's modulus, N/mm²
    double yield = figuresOf(Metal::mildSteel).yield; ///< 0.2 % proof stress, N/mm², the lowest that is likely
    std::string extra;

    friend bool operator==(const OwnMetal&, const OwnMetal&) = default;
};

/// A size of bead as she measured it; `name` is what KindForm::beadSize says.
struct OwnBead {
    std::string name;
    // To begin with as the handbook's 11/0, rounded.
    Length diameter = millimetres(2); ///< across the hole's axis
    Length pitch = millimetres(1.4);  ///< what one bead takes of the wire it is strung on
    Mass mass = grams(0.0095);        ///< of one bead; 0 where nobody weighed any
    std::string extra;

    friend bool operator==(const OwnBead&, const OwnBead&) = default;
};

/// A floss. Choosing it for a wrap gives the wrap its strands, width and skein, which may then be changed
/// there; its weight is asked of this entry for as long as the wrap names it in `own`.
struct OwnFloss {
    std::string name;
    int strands = flossStrands;
    Length strandWidth = flossStrandWidth;     ///< and thickness
    std::optional<Length> skein;               ///< length of one as sold
    double gramsPerMetre = flossGramsPerMetre; ///< of one strand
    std::string extra;

    friend bool operator==(const OwnFloss&, const OwnFloss&) = default;
};

/// A tape; likewise.
struct OwnTape {
    std::string name;
    Length width = tapeWidth; ///< as it comes off the roll
    Length thickness = tapeThickness;
    double stretch = tapeStretch; ///< how many times its length it is stretched to
    std::optional<Length> roll;   ///< length of one as sold
    double gramsPerMetre = 0;     ///< as it comes off the roll; 0 where nobody weighed any
    std::string extra;

    friend bool operator==(const OwnTape&, const OwnTape&) = default;
};

/// A clay, or what lies on it; Clay::own and Cover::own name it.
struct OwnFilling {
    std::string name;
    double density = 1600; ///< kg/m³ as it stands or lies
    std::string extra;

    friend bool operator==(const OwnFilling&, const OwnFilling&) = default;
};

/// All of them. Changed as one by Set<OwnTables>; an entry that is in use cannot go (ProblemCode::ownInUse).
struct OwnTables {
    std::vector<OwnMetal> metals;
    std::vector<OwnBead> beads;
    std::vector<OwnFloss> flosses;
    std::vector<OwnTape> tapes;
    std::vector<OwnFilling> clays;
    std::vector<OwnFilling> covers;
    std::string extra;

    friend bool operator==(const OwnTables&, const OwnTables&) = default;
};

} // namespace stemwright

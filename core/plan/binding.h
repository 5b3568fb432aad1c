#pragma once

#include "core/quantity/floss.h"
#include "core/quantity/gauge.h"
#include "core/quantity/metal.h"
#include "core/quantity/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

enum class WrapWith { wire, floss, tape };

/// One layer wound around the stem from tip to base.
struct Wrap {
    WrapWith with = WrapWith::floss;
    /// How many lie side by side: the strands of a floss, 1 for a single wire or tape.
    int strands = flossStrands;
    /// Width of one strand; the diameter of a wire; the width of a tape as it comes off the roll.
    Length width = flossStrandWidth;
    /// How much a layer stands out from the stem; a wire's diameter.
    Length thickness = flossStrandWidth;
    /// The number a wire was bought by.
    std::optional<GaugeNumber> gauge;
    /// The part of a turn that lies on the turn before: 0 is edge to edge, below 1. To begin with a third,
    /// about (own choice, no source): a stem that was measured says what it is under her hands.
    double overlap = 0.3;
    /// How many times its length a tape is stretched to; 1 for wire and floss.
    double stretch = 1;
    /// Laid in under the first turns.
    Length startTail = millimetres(40);
    /// Knotted, or twisted off, at the end.
    Length finish = millimetres(50);
    /// What the hand must hold, and is cut off in the end.
    Length hold = millimetres(100);
    /// How it is sold: the length of one skein, spool or roll; nothing where it is not known.
    std::optional<Length> sold;
    std::string extra{};
    /// What the maker calls it, such as a floss by its colour; empty where she does not.
    std::string name{};
    /// What a wire is of, as for kinds; floss and tape heed it not.
    Metal metal = Metal::softCopper;
    std::string ownMetal{};
    /// The plan's own floss or tape that this is, which says what it weighs; empty for the handbook's.
    std::string own{};
    /// Whether `overlap` was fitted to what her own bound stems took (StemForm::took).
    bool overlapMeasured = false;

    friend bool operator==(const Wrap&, const Wrap&) = default;
};

/// The layers from the wires outward, none to a few: often wire, or floss, or wire with floss over it.
struct Binding {
    std::vector<Wrap> wraps;
    /// How long the maker thinks a tier takes her, until she has timed some; 0 where she does not say.
    double minutesPerTier = 0;
    std::string extra;

    friend bool operator==(const Binding&, const Binding&) = default;
};

} // namespace stemwright

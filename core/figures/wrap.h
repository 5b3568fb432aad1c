#pragma once

#include "core/plan/binding.h"
#include "core/quantity/quantity.h"

#include <span>
#include <vector>

namespace stemwright {

/// What one layer of the binding takes.
struct WrapFigures {
    /// What ends up on the stem: the turns, the tail that is laid in and the finish.
    Length used;
    /// What to cut before binding: used, and what the hand must hold.
    Length toCut;

    friend bool operator==(const WrapFigures&, const WrapFigures&) = default;
};

/// A length of a stem that is as thick from end to end.
struct Stretch {
    Length along;
    /// The bare bundle, without wraps.
    Length bundle;
};

/// What each layer of the binding takes over a stem's stretches, layers from the wires outward, each making the
/// stem two of its thicknesses thicker for those outside it. Turns by core/quantity/helix.h: on every stretch
/// along / (strands × width × (1 − overlap)) of them, each √((π(D + t))² + advance²) long; a tape takes that
/// divided by its stretch. The length is that of all strands laid together, as floss is cut.
///
/// Stretches without length or without anything in them take nothing, and where that is all there is nothing is
/// cut either.
std::vector<WrapFigures> wrapFigures(const Binding& binding, std::span<const Stretch> stretches);

} // namespace stemwright

#pragma once

#include "core/quantity/quantity.h"

namespace stemwright {

/// The length of a wire wound `turns` times on a cylinder, by the radius of its own centre line and its advance
/// along the cylinder a turn: turns · √((2π·radius)² + pitch²). Textbook: a helix unrolls into a straight line.
Length helixLength(double turns, Length radius, Length pitch);

/// How a layer is laid around something round.
struct Layer {
    /// Of what is wrapped.
    Length core;
    /// How much the layer stands out from it on one side: a wire's diameter.
    Length thickness;
    /// What one turn covers: a wire's diameter, a tape's width, the strands of a floss side by side.
    Length width;
    /// The part of a turn that lies on the turn before: 0 is edge to edge, below 1.
    double overlap = 0;

    friend bool operator==(const Layer&, const Layer&) = default;
};

/// What wrapping a stretch takes.
struct Winding {
    double turns = 0;
    /// Along the layer, as it lies: a stretched tape comes shorter off its roll.
    Length length;
};

/// One layer over a stretch of a stem: the advance a turn is width × (1 − overlap), turns = along / advance,
/// and the layer's middle runs at radius (core + thickness) / 2. Turns are not rounded, so that stretches add
/// up. Nothing to wrap, or a width of 0 or an overlap of 1 that never would advance, gives no turns and no
/// length.
///
/// For a flat band the exact length that covers edge to edge is π(core + thickness) · along / advance
/// (textbook); this is longer by √(1 + (advance / circumference)²): half a hundredth at most for floss, more
/// for a tape as wide as the stem is round, whose edges in truth lean to the stem.
Winding wound(const Layer& layer, Length along);

/// What a layer adds up to: the diameter of the core with it on.
constexpr Length wrappedDiameter(const Layer& layer) {
    return layer.core + 2 * layer.thickness;
}

} // namespace stemwright

#pragma once

#include "core/quantity/quantity.h"

namespace stemwright {

/// The wires a maker meets; their figures stand in metal.cpp, each with its source.
enum class Metal { softCopper, hardCopper, softBrass, hardBrass, mildSteel, softSteel, aluminium };

/// What a metal weighs and bears.
struct MetalFigures {
    /// kg/m³
    double density = 0;
    /// Young's modulus, N/mm².
    double modulus = 0;
    /// 0.2 % proof stress, N/mm², the lowest of its sources: whether a stem stands is asked of its weakest
    /// wire.
    double yield = 0;
    /// The highest of its sources, N/mm²; the same as `yield` where there is one. Bending by hand hardens
    /// copper beyond either.
    double yieldAtMost = 0;
};

const MetalFigures& figuresOf(Metal metal);

/// The mass of a round wire of a metal with these figures; a diameter or length below 0 counts as 0.
Mass massOfWire(const MetalFigures& metal, Length diameter, Length length);
Mass massOfWire(Metal metal, Length diameter, Length length);

} // namespace stemwright

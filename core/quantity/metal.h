#pragma once

namespace stemwright {

/// The wires a maker meets; their figures stand in metal.cpp, each with its source.
enum class Metal { softCopper, hardCopper, softBrass, hardBrass, mildSteel, softSteel, aluminium };

} // namespace stemwright

#include "core/quantity/wire_strength.h"

#include <cmath>
#include <numbers>

namespace stemwright {

double plasticMoment(const MetalFigures& metal, Length diameter) {
    return metal.yield * std::pow(inMillimetres(diameter), 3) / 6;
}

double plasticMoment(Metal metal, Length diameter) {
    return plasticMoment(figuresOf(metal), diameter);
}

double wireStiffness(const MetalFigures& metal, Length diameter) {
    return metal.modulus * std::numbers::pi * std::pow(inMillimetres(diameter), 4) / 64;
}

double wireStiffness(Metal metal, Length diameter) {
    return wireStiffness(figuresOf(metal), diameter);
}

} // namespace stemwright

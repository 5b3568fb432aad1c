#include "core/quantity/wire_strength.h"

#include <cmath>
#include <numbers>

namespace stemwright {

double plasticMoment(Metal metal, Length diameter) {
    return figuresOf(metal).yield * std::pow(inMillimetres(diameter), 3) / 6;
}

double wireStiffness(Metal metal, Length diameter) {
    return figuresOf(metal).modulus * std::numbers::pi * std::pow(inMillimetres(diameter), 4) / 64;
}

} // namespace stemwright

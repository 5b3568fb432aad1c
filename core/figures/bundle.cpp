#include "core/figures/bundle.h"

#include "core/quantity/circle_packing.h"

#include <cmath>

namespace stemwright {

void Bundle::add(int wires, Length diameter) {
    wires_ += wires;
    squares_ += wires * inMillimetres(diameter) * inMillimetres(diameter);
}

Length Bundle::diameter(const std::optional<CoreWire>& core) const {
    const double thick = core ? inMillimetres(core->diameter) : 0;
    if (wires_ == 0)
        return millimetres(thick);
    const double wire = std::sqrt(squares_ / wires_);
    return millimetres(std::hypot(packingRatio(wires_) * wire, thick));
}

} // namespace stemwright

#pragma once

#include "core/plan/stem.h"
#include "core/quantity/quantity.h"

#include <optional>

namespace stemwright {

/// The leaf wires that run side by side in a stem, as they come together from tip to base.
class Bundle {
public:
    void add(int wires, Length diameter);

    int wires() const { return wires_; }

    /// What the wires and a core measure across, tightly packed and without wraps: the smallest circle that
    /// holds as many equal wires (core/quantity/circle_packing.h). Wires of unlike diameters count as so many
    /// of the one diameter that has the same area in all, √(Σd²/n). A core is added by area: √(D² + core²); a
    /// core alone measures what it is, nothing at all 0.
    Length diameter(const std::optional<CoreWire>& core) const;

private:
    int wires_ = 0;
    double squares_ = 0; ///< Σd², mm²
};

} // namespace stemwright

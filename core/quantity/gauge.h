#pragma once

namespace stemwright {

/// The numbered wire size systems. The same number is up to a quarter thicker in another system, so a number is
/// never used without its system, and the millimetres are always kept beside it.
enum class GaugeSystem { awg, swg, steel };

/// The number by which a maker bought her wire: a note beside its diameter in millimetres, which alone counts.
struct GaugeNumber {
    GaugeSystem system = GaugeSystem::awg;
    int number = 0;

    friend bool operator==(const GaugeNumber&, const GaugeNumber&) = default;
};

} // namespace stemwright

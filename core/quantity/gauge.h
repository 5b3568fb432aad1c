#pragma once

#include "core/quantity/quantity.h"

#include <optional>
#include <string>

namespace stemwright {

/// The numbered wire size systems: American (AWG), imperial standard (SWG) and US steel (Washburn & Moen). The
/// same number is up to a quarter thicker in another system, and more among the thin ones, so a number is never
/// used without its system, and the millimetres are always kept beside it. Copper craft wire goes by AWG
/// (common practice, no source); for florist stem wire sources disagree, so nothing here guesses.
enum class GaugeSystem { awg, swg, steel };

/// The number by which a maker bought her wire: a note beside its diameter in millimetres, which alone counts.
struct GaugeNumber {
    GaugeSystem system = GaugeSystem::awg;
    int number = 0;
    /// Keys of the file that this version does not know, as every part has them (core/plan/mix.h).
    std::string extra{};

    friend bool operator==(const GaugeNumber&, const GaugeNumber&) = default;
};

/// The numbers that every system here has, from the thickest wire to the thinnest.
inline constexpr int thickestGauge = 10;
inline constexpr int thinnestGauge = 34;

/// The wire's diameter; nothing for a number outside [thickestGauge, thinnestGauge]. AWG by its formula,
/// unrounded; the others by their tables.
std::optional<Length> diameterOf(GaugeNumber gauge);

/// A wire's place in a system of numbers.
struct NearestGauge {
    GaugeNumber gauge;
    /// The wire's diameter minus that of the number: above 0 where the wire is thicker than its number says.
    Length off;
};

/// The number whose diameter is nearest; of two equally near ones the thinner wire. A wire beyond either end of
/// the system gets the number at that end, and `off` says how wrong that is.
NearestGauge nearestGauge(Length diameter, GaugeSystem system);

} // namespace stemwright

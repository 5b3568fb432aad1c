#include "core/quantity/gauge.h"

#include <cmath>
#include <cstddef>

namespace stemwright {
namespace {

constexpr std::size_t numbers = thinnestGauge - thickestGauge + 1;

// Inches, from number 10 on. Imperial standard wire gauge: Order in Council 1883, BS 3737:1964 (published).
constexpr double swg[numbers] = {0.128,  0.116,  0.104,  0.092,  0.080,  0.072, 0.064, 0.056, 0.048,
                                 0.040,  0.036,  0.032,  0.028,  0.024,  0.022, 0.020, 0.018, 0.0164,
                                 0.0148, 0.0136, 0.0124, 0.0116, 0.0108, 0.010, 0.0092};

// Inches, from number 10 on. US steel wire gauge, Washburn & Moen (published: 10–20 alike in two tables, 21–34
// in one).
constexpr double steel[numbers] = {0.135,  0.1205, 0.1055, 0.0915, 0.080,  0.072,  0.0625, 0.054,  0.0475,
                                   0.041,  0.0348, 0.0318, 0.0286, 0.0258, 0.0230, 0.0204, 0.0181, 0.0173,
                                   0.0162, 0.0150, 0.0140, 0.0132, 0.0128, 0.0118, 0.0104};

/// ASTM B258 (published, as quoted in the data of GNU units 2.22): 36 is 0.005 in and 4/0 is 0.46 in, 39 equal
/// steps apart.
double awg(int number) {
    return 0.005 * std::pow(92.0, (36 - number) / 39.0);
}

Length diameter(GaugeNumber gauge) {
    const auto row = static_cast<std::size_t>(gauge.number - thickestGauge);
    switch (gauge.system) {
    case GaugeSystem::awg:
        break;
    case GaugeSystem::swg:
        return inches(swg[row]);
    case GaugeSystem::steel:
        return inches(steel[row]);
    }
    return inches(awg(gauge.number));
}

} // namespace

std::optional<Length> diameterOf(GaugeNumber gauge) {
    if (gauge.number < thickestGauge || gauge.number > thinnestGauge)
        return std::nullopt;
    return diameter(gauge);
}

NearestGauge nearestGauge(Length wire, GaugeSystem system) {
    const auto distance = [](Length off) { return std::abs(inMillimetres(off)); };
    NearestGauge best{{system, thinnestGauge}, wire - diameter({system, thinnestGauge})};
    for (int number = thinnestGauge - 1; number >= thickestGauge; --number) {
        const Length off = wire - diameter({system, number});
        if (distance(off) < distance(best.off))
            best = {{system, number}, off};
    }
    return best;
}

} // namespace stemwright
